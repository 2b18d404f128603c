package ortet.seeds;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.Acquired;
import ortet.entry.Carrier;
import ortet.entry.Cause;
import ortet.entry.Checked;
import ortet.entry.Condition;
import ortet.entry.CultivarListed;
import ortet.entry.CuttingsStruck;
import ortet.entry.Drawn;
import ortet.entry.Entry;
import ortet.entry.Failed;
import ortet.entry.Finding;
import ortet.entry.Form;
import ortet.entry.LayerSet;
import ortet.entry.Lost;
import ortet.entry.MakeUp;
import ortet.entry.Moved;
import ortet.entry.PlaceListed;
import ortet.entry.Potted;
import ortet.entry.Purpose;
import ortet.entry.Remainder;
import ortet.entry.Roots;
import ortet.entry.Severed;
import ortet.entry.Share;
import ortet.entry.Sold;
import ortet.entry.Wood;
import ortet.entry.Wound;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Decimal;
import ortet.value.Money;
import ortet.value.Refused;
import ortet.value.Require;
import ortet.value.Strength;

/**
 * Writes the day book of an invented nursery of any size, for benchmarks.
 *
 * <p>Each mother is bought in one year, gives five layers in each of the six years that follow and one tray of cuttings
 * of which twenty are drawn: fifty plants, of which those that take are potted, moved, potted on, and mostly sold two
 * years after they were set. Rows stand in the order of days. A year is gone through window by window and each window
 * mother by mother, and what becomes of a plant is worked out from its number alone, so that nothing is kept in memory
 * but where the writer stands. The same number of plants and the same seed give the same bytes.
 */
public final class LargeNursery {
    private static final int PLANTS_OF_A_MOTHER = 50;
    private static final int LAYERS_OF_A_MOTHER = 30;
    private static final int LAYERS_OF_A_SESSION = 5;
    private static final int SESSIONS = LAYERS_OF_A_MOTHER / LAYERS_OF_A_SESSION;
    private static final int CUTTINGS_OF_A_TRAY = 40;
    private static final int FIRST_YEAR = 1996;
    private static final int YEARS_OF_BUYING = 18;
    private static final int LAST_YEAR = FIRST_YEAR + YEARS_OF_BUYING + SESSIONS + 2;
    private static final int CUSTOMERS = 400;
    private static final long SEED = 20261031;
    private static final List<String> HANDS =
            List.of("Nessa Alderwick", "Oisín Alderwick", "Wim Elzenhof", "Yuki Hannoki");
    private static final Optional<Strength> STRENGTH = Optional.of(Strength.parse("0.3%"));
    private static final java.util.Currency EURO = java.util.Currency.getInstance("EUR");

    private static final List<String> COLUMNS = List.of(
            "tags",
            "count",
            "cultivar",
            "make_up",
            "growth_mm",
            "premises",
            "within",
            "supplier",
            "mother",
            "mothers",
            "source",
            "branch",
            "height_mm",
            "stem_mm",
            "ring_mm",
            "wound",
            "wood",
            "hormone",
            "strength",
            "carrier",
            "findings",
            "roots",
            "remainder",
            "cause",
            "container",
            "purpose",
            "medium",
            "wrap",
            "place",
            "customer",
            "price",
            "invoice");

    private final long plants;
    private final long mothers;
    private final long seed;
    private final Sink sink;
    private final List<CultivarName> cultivars;
    private final List<Place> places = new ArrayList<>();
    private long invoices;

    /** Takes the entries, in the order of days. */
    @FunctionalInterface
    interface Sink {
        /**
         * Take an entry.
         *
         * @param day its day or year
         * @param by who did it, by name; empty where nobody is named
         */
        void take(String day, String by, Entry entry) throws IOException;
    }

    private LargeNursery(long plants, long seed, Sink sink) {
        this.plants = plants;
        this.mothers = (plants + PLANTS_OF_A_MOTHER - 1) / PLANTS_OF_A_MOTHER;
        this.seed = seed;
        this.sink = sink;
        this.cultivars = java.util.Arrays.stream(Variety.values())
                .map(Variety::cultivar)
                .filter(name -> name.epithet().isPresent())
                .toList();
    }

    /**
     * Hand out the entries of a nursery.
     *
     * @param plants how many plants, at least 1 and at most 10 million
     * @param seed what decides on everything else
     */
    static void tell(long plants, long seed, Sink sink) throws IOException {
        Require.that(plants >= 1 && plants <= 10_000_000, "plants", "1 to 10000000");
        new LargeNursery(plants, seed, sink).write();
    }

    /**
     * Write the day book of a nursery.
     *
     * @param plants how many plants, at least 1 and at most 10 million
     * @param seed what decides on everything else
     * @return how many rows there are below the header
     */
    public static long write(long plants, long seed, Path file) throws IOException {
        Require.that(plants >= 1 && plants <= 10_000_000, "plants", "1 to 10000000");
        try (CsvWriter csv = CsvWriter.builder()
                .lineDelimiter(LineDelimiter.LF)
                .bufferSize(1 << 16)
                .build(file, StandardCharsets.UTF_8)) {
            DayBookRows rows = new DayBookRows(csv);
            tell(plants, seed, rows);
            return rows.count;
        }
    }

    /** Writes entries as rows of a day book. */
    private static final class DayBookRows implements Sink {
        private final CsvWriter csv;
        private final List<String> cells = new ArrayList<>();
        private final Map<String, Integer> at = new HashMap<>();
        private long count;

        DayBookRows(CsvWriter csv) {
            this.csv = csv;
            for (int column = 0; column < COLUMNS.size(); column++) {
                at.put(COLUMNS.get(column), column + 3);
            }
            List<String> header = new ArrayList<>(List.of("day", "by", "kind"));
            header.addAll(COLUMNS);
            csv.writeRecord(header);
        }

        @Override
        public void take(String day, String by, Entry entry) {
            cells.clear();
            cells.add(day);
            cells.add(by);
            cells.add(entry.kind().word());
            for (int column = 0; column < COLUMNS.size(); column++) {
                cells.add("");
            }
            Form.write(entry).forEach((column, text) -> {
                boolean isPerson = column.equals("customer") || column.equals("supplier");
                cells.set(
                        at.get(column),
                        isPerson ? person(text) : column.equals("tags") ? Tags.brief(entry.tags()) : text);
            });
            csv.writeRecord(cells);
            count++;
        }
    }

    /** Write the day book of a nursery of so many plants into a file. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 2 || !arguments[0].matches("\\d{1,8}")) {
            System.err.println("expected: ortet.seeds.LargeNursery PLANTS FILE");
            System.exit(2);
        }
        try {
            long rows = write(Long.parseLong(arguments[0]), SEED, Path.of(arguments[1]));
            System.out.println(rows + " rows");
        } catch (Refused refused) {
            System.err.println("ortet: " + refused.getMessage());
            System.exit(1);
        }
    }

    /** What is done with each mother, session or plant in a window of the year. */
    @FunctionalInterface
    private interface Work {
        void at(LocalDate day, long number) throws IOException;
    }

    private void write() throws IOException {
        registers();
        for (int year = FIRST_YEAR; year <= LAST_YEAR; year++) {
            LocalDate january = LocalDate.of(year, 1, 8);
            plantsSetIn(year - 1, january, 50, this::move);
            bought(year, LocalDate.of(year, 3, 1), 20, this::buy);
            plantsSetIn(year - 2, LocalDate.of(year, 3, 22), 40, this::potOn);
            sessions(year, LocalDate.of(year, 5, 1), 30, this::setLayers);
            bought(year - 1, LocalDate.of(year, 6, 1), 20, this::strike);
            plantsSetIn(year - 2, LocalDate.of(year, 6, 22), 8, this::lose);
            sessions(year, LocalDate.of(year, 7, 1), 25, this::check);
            sessions(year, LocalDate.of(year, 9, 1), 28, this::sever);
            bought(year - 1, LocalDate.of(year, 10, 1), 14, this::draw);
            plantsSetIn(year, LocalDate.of(year, 10, 16), 30, this::potUp);
            plantsSetIn(year - 2, LocalDate.of(year, 11, 16), 30, this::sell);
        }
    }

    // ---- who is there when ----------------------------------------------------------------------------------------

    /** Return the first mother who is bought in that year. */
    private long firstOf(int year) {
        long since = Math.max(0, Math.min(YEARS_OF_BUYING, year - FIRST_YEAR));
        return (mothers * since + YEARS_OF_BUYING - 1) / YEARS_OF_BUYING;
    }

    private void bought(int year, LocalDate from, int days, Work work) throws IOException {
        long first = firstOf(year);
        long end = firstOf(year + 1);
        for (long mother = first; mother < end; mother++) {
            work.at(from.plusDays((mother - first) * days / (end - first)), mother);
        }
    }

    /** Go through the sessions of a year; each is numbered by its mother and its place in her life. */
    private void sessions(int year, LocalDate from, int days, Work work) throws IOException {
        long first = firstOf(year - SESSIONS);
        long end = firstOf(year);
        for (int back = SESSIONS; back >= 1; back--) {
            int session = back - 1;
            for (long mother = firstOf(year - back); mother < firstOf(year - back + 1); mother++) {
                if (!layers(mother, session).isEmpty()) {
                    work.at(from.plusDays((mother - first) * days / (end - first)), mother * SESSIONS + session);
                }
            }
        }
    }

    /** Go through the living plants that were set, or struck, in a year. */
    private void plantsSetIn(int year, LocalDate from, int days, Work work) throws IOException {
        long first = firstOf(year - SESSIONS);
        long end = firstOf(year);
        for (int back = SESSIONS; back >= 1; back--) {
            int session = back - 1;
            for (long mother = firstOf(year - back); mother < firstOf(year - back + 1); mother++) {
                LocalDate day = from.plusDays((mother - first) * days / (end - first));
                for (long plant : layers(mother, session)) {
                    if (takes(plant)) {
                        work.at(day, plant);
                    }
                }
                if (session == 0) {
                    for (long plant : drawn(mother)) {
                        work.at(day, plant);
                    }
                }
            }
        }
    }

    private List<Long> layers(long mother, int session) {
        long first = mother * PLANTS_OF_A_MOTHER + (long) session * LAYERS_OF_A_SESSION;
        return numbers(first, first + LAYERS_OF_A_SESSION);
    }

    private List<Long> drawn(long mother) {
        return numbers(mother * PLANTS_OF_A_MOTHER + LAYERS_OF_A_MOTHER, (mother + 1) * PLANTS_OF_A_MOTHER);
    }

    private List<Long> numbers(long first, long end) {
        List<Long> numbers = new ArrayList<>();
        for (long number = first; number < Math.min(end, plants); number++) {
            numbers.add(number);
        }
        return numbers;
    }

    // ---- luck, from the number alone ------------------------------------------------------------------------------

    /** Return a share from 0 up to 1 (the mixing function of Steele, Lea and Flood 2014, OOPSLA, figure 16). */
    private double share(long number, int matter) {
        long mixed = seed + (number * 64 + matter) * 0x9E3779B97F4A7C15L;
        mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
        mixed ^= mixed >>> 31;
        return (mixed >>> 11) * 0x1.0p-53;
    }

    private <T> T of(List<T> list, long number, int matter) {
        return list.get((int) (share(number, matter) * list.size()));
    }

    private boolean isLayer(long plant) {
        return plant % PLANTS_OF_A_MOTHER < LAYERS_OF_A_MOTHER;
    }

    private boolean takes(long layer) {
        return share(layer, 1) < 0.65 + 0.3 * share(layer / PLANTS_OF_A_MOTHER, 2);
    }

    private boolean isLost(long plant) {
        return share(plant, 3) < 0.04;
    }

    private boolean isSold(long plant) {
        return !isLost(plant) && share(plant, 4) < 0.85;
    }

    // ---- names ----------------------------------------------------------------------------------------------------

    private Tag tag(long plant) {
        return new Tag((isLayer(plant) ? "L-" : "P-") + (plant + 1));
    }

    private List<Tag> tags(List<Long> numbers) {
        return numbers.stream().map(this::tag).toList();
    }

    private static Tag mother(long number) {
        return new Tag("K-" + (number + 1));
    }

    private static Tag tray(long mother) {
        return new Tag("T-" + (mother + 1));
    }

    private CultivarName cultivar(long mother) {
        return of(cultivars, mother, 5);
    }

    private Optional<Place> place(long number, int matter) {
        return Optional.of(of(places, number, matter));
    }

    // ---- rows -----------------------------------------------------------------------------------------------------

    private void row(LocalDate day, long number, Entry entry) throws IOException {
        sink.take(day.toString(), of(HANDS, number, 6), entry);
    }

    /** Return the name of a person, by number. */
    static String person(String number) {
        return (number.length() < 5 ? "Buyer " : "Grower ") + number.substring(1);
    }

    private void registers() throws IOException {
        for (CultivarName name : cultivars) {
            sink.take(
                    Integer.toString(FIRST_YEAR),
                    "",
                    new CultivarListed(
                            name,
                            Optional.empty(),
                            Optional.empty(),
                            Optional.of(MakeUp.CLONAL),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.of(Decimal.of(2)),
                            Optional.empty()));
        }
        for (int house = 1; house <= 6; house++) {
            Place outer = new Place("House " + house);
            listPlace(outer, Optional.empty(), Optional.of("Alderwick"));
            for (int bench = 1; bench <= 8; bench++) {
                Place inner = new Place("House " + house + " bench " + bench);
                listPlace(inner, Optional.of(outer), Optional.empty());
                places.add(inner);
            }
        }
    }

    private void listPlace(Place place, Optional<Place> within, Optional<String> premises) throws IOException {
        sink.take(
                Integer.toString(FIRST_YEAR),
                "",
                new PlaceListed(place, within, premises, Optional.empty(), Optional.empty()));
    }

    private void buy(LocalDate day, long mother) throws IOException {
        row(
                day,
                mother,
                new Acquired(
                        List.of(mother(mother)),
                        Optional.empty(),
                        Optional.of(cultivar(mother)),
                        Optional.of(new PersonNumber(10_001 + (int) (share(mother, 7) * 20))),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(Decimal.of(25 + (long) (share(mother, 8) * 20))),
                        Optional.empty(),
                        Optional.empty(),
                        place(mother, 9),
                        Optional.empty(),
                        Optional.empty()));
    }

    private void setLayers(LocalDate day, long number) throws IOException {
        long mother = number / SESSIONS;
        int session = (int) (number % SESSIONS);
        long stem = 8 + (long) (share(number, 10) * 12);
        row(
                day,
                number,
                new LayerSet(
                        tags(layers(mother, session)),
                        mother(mother),
                        Optional.of("branch " + (session + 1)),
                        Optional.of(Decimal.of(300 + 100L * session)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(Decimal.of(stem)),
                        Optional.of(Decimal.of(stem + 2)),
                        Optional.of(Wound.FULL_RING),
                        Optional.of("IBA"),
                        STRENGTH,
                        Optional.of(Carrier.POWDER),
                        Optional.of("sphagnum moss"),
                        Optional.of("black film"),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
    }

    private void check(LocalDate day, long number) throws IOException {
        List<Long> layers = layers(number / SESSIONS, (int) (number % SESSIONS));
        row(
                day,
                number,
                new Checked(tags(layers), List.of(new Finding(Condition.CALLUS, Optional.empty())), Optional.empty()));
    }

    private void sever(LocalDate day, long number) throws IOException {
        List<Long> layers = layers(number / SESSIONS, (int) (number % SESSIONS));
        List<Long> taken = layers.stream().filter(this::takes).toList();
        List<Long> failed = layers.stream().filter(layer -> !takes(layer)).toList();
        if (!taken.isEmpty()) {
            row(
                    day,
                    number,
                    new Severed(
                            tags(taken),
                            Optional.of(Roots.FULL),
                            Optional.of(Remainder.KEPT),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty()));
        }
        if (!failed.isEmpty()) {
            row(day, number, new Failed(tags(failed), Optional.empty(), Optional.of(Cause.NO_ROOTS), Optional.empty()));
        }
    }

    private void strike(LocalDate day, long mother) throws IOException {
        if (drawn(mother).isEmpty()) {
            return;
        }
        row(
                day,
                mother,
                new CuttingsStruck(
                        List.of(tray(mother)),
                        List.of(new Share(mother(mother), Optional.empty())),
                        CUTTINGS_OF_A_TRAY,
                        Optional.empty(),
                        Optional.of(Wood.SOFTWOOD),
                        Optional.empty(),
                        Optional.of("IBA"),
                        STRENGTH,
                        Optional.of(Carrier.POWDER),
                        Optional.of("perlite"),
                        Optional.empty(),
                        place(mother, 11),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
    }

    private void draw(LocalDate day, long mother) throws IOException {
        List<Long> plantsDrawn = drawn(mother);
        if (plantsDrawn.isEmpty()) {
            return;
        }
        row(
                day,
                mother,
                new Drawn(
                        tags(plantsDrawn),
                        tray(mother),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
        row(
                day,
                mother,
                new Failed(List.of(tray(mother)), Optional.empty(), Optional.of(Cause.NO_ROOTS), Optional.empty()));
    }

    private void pot(LocalDate day, long plant, String container, Purpose purpose) throws IOException {
        row(
                day,
                plant,
                new Potted(
                        List.of(tag(plant)),
                        container,
                        Optional.of(purpose),
                        Optional.of("bark and grit"),
                        place(plant, purpose == Purpose.POT_UP ? 12 : 13),
                        Optional.empty()));
    }

    private void potUp(LocalDate day, long plant) throws IOException {
        pot(day, plant, isLayer(plant) ? "1.5 L" : "9 cm", Purpose.POT_UP);
    }

    private void potOn(LocalDate day, long plant) throws IOException {
        pot(day, plant, isLayer(plant) ? "3 L" : "1.5 L", Purpose.POT_ON);
    }

    private void move(LocalDate day, long plant) throws IOException {
        row(day, plant, new Moved(List.of(tag(plant)), place(plant, 14).orElseThrow(), Optional.empty()));
    }

    private void lose(LocalDate day, long plant) throws IOException {
        if (isLost(plant)) {
            row(
                    day,
                    plant,
                    new Lost(List.of(tag(plant)), Optional.empty(), Optional.of(Cause.DRIED), Optional.empty()));
        }
    }

    private void sell(LocalDate day, long plant) throws IOException {
        if (isSold(plant)) {
            invoices++;
            row(
                    day,
                    plant,
                    new Sold(
                            List.of(tag(plant)),
                            Optional.empty(),
                            Optional.of(new PersonNumber(1 + (int) (share(plant, 15) * CUSTOMERS))),
                            Optional.of(new Money(1200 + 50L * (long) (share(plant, 16) * 80), EURO)),
                            Optional.empty(),
                            Optional.of("R" + invoices),
                            Optional.empty()));
        }
    }
}
