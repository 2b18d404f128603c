package ortet.seeds;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import ortet.entry.Cause;
import ortet.entry.CullReason;
import ortet.entry.EntryKind;
import ortet.entry.Purpose;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.seeds.DayBook.Draft;
import ortet.seeds.DayBook.Row;
import ortet.seeds.People.Hand;
import ortet.seeds.People.Work;
import ortet.value.When;

/**
 * Sallowfield at work: its day book, its people and places, its units and what stands where.
 *
 * <p>Every verb does what it says on the day that the agenda shows, writes the entry and remembers what has changed. A
 * verb that makes no sense at that moment is a fault of the story and stops it.
 */
final class Nursery {
    static final UnaryOperator<Draft> PLAIN = draft -> draft;
    private static final List<String> POTS = List.of("9 cm", "1.5 L", "3 L", "5 L", "10 L", "20 L");
    private static final double[] POT_STEM_MM = {6, 10, 16, 24, 36};

    final DayBook book = new DayBook();
    final People people = new People();
    final Grounds grounds = new Grounds();
    final Agenda agenda;
    private final Map<Tag, Unit> units = new LinkedHashMap<>();
    private final Map<String, Integer> numbers = new TreeMap<>();
    private int invoices;

    Nursery(Agenda agenda) {
        this.agenda = agenda;
    }

    LocalDate today() {
        return agenda.today();
    }

    int year() {
        return today().getYear();
    }

    /** Return the day, or the next Monday when it is a Sunday. */
    static LocalDate workday(LocalDate day) {
        return day.getDayOfWeek() == DayOfWeek.SUNDAY ? day.plusDays(1) : day;
    }

    /** Do something on a day, but never on a Sunday and never before tomorrow. */
    void later(LocalDate day, Runnable work) {
        LocalDate earliest = today().plusDays(1);
        agenda.on(workday(day.isBefore(earliest) ? earliest : day), work);
    }

    Hand hand(Work work, Chance chance) {
        return people.hand(work, year(), chance);
    }

    /** Begin a row of today. */
    Draft row(Hand by, EntryKind kind) {
        return book.on(When.on(today()), Optional.of(by.person()), kind);
    }

    /** Begin a row of today about some units. */
    Draft row(Hand by, EntryKind kind, Collection<Unit> about) {
        return row(by, kind).tags(tags(about));
    }

    static List<Tag> tags(Collection<Unit> about) {
        return about.stream().map(unit -> unit.tag).toList();
    }

    Collection<Unit> units() {
        return units.values();
    }

    /** Return the next tags of a series, such as L-0001. */
    List<Tag> nextTags(String letter, int count) {
        int width = "LPGY".contains(letter) ? 4 : 3;
        List<Tag> tags = new ArrayList<>();
        for (int more = 0; more < count; more++) {
            String digits = Integer.toString(numbers.merge(letter, 1, Integer::sum));
            tags.add(new Tag(letter + "-" + "0".repeat(Math.max(0, width - digits.length())) + digits));
        }
        return tags;
    }

    Unit unit(Unit.Nature nature, Tag tag, Variety variety) {
        Unit unit = new Unit(nature, tag, variety, today());
        if (units.put(tag, unit) != null) {
            throw new IllegalStateException(tag + " twice");
        }
        return unit;
    }

    private static void require(boolean holds, Object what) {
        if (!holds) {
            throw new IllegalStateException(what.toString());
        }
    }

    // ---- life -----------------------------------------------------------------------------------------------------

    /** Return the pot that suits a stem. */
    static String pot(double stemMm) {
        int size = 0;
        while (size < POT_STEM_MM.length && stemMm >= POT_STEM_MM[size]) {
            size++;
        }
        return POTS.get(size);
    }

    /** Pot plants, a row for each size of container that they need. */
    void pot(Hand by, List<Unit> plants, Purpose purpose, String medium, Optional<Place> place) {
        Map<String, List<Unit>> bySize = new TreeMap<>();
        plants.forEach(plant -> bySize.computeIfAbsent(pot(plant.stemMm), size -> new ArrayList<>())
                .add(plant));
        bySize.forEach((container, those) -> pot(by, those, container, purpose, medium, place, PLAIN));
    }

    Row pot(
            Hand by,
            List<Unit> plants,
            String container,
            Purpose purpose,
            String medium,
            Optional<Place> place,
            UnaryOperator<Draft> more) {
        plants.forEach(plant -> {
            require(!plant.isGone(), plant);
            plant.container = container;
            plant.inGround = false;
            place.ifPresent(there -> plant.place = place);
        });
        return more.apply(row(by, EntryKind.POTTED, plants)
                        .set("container", container)
                        .set("purpose", purpose)
                        .set("medium", medium)
                        .set("place", place))
                .write();
    }

    void plantOut(Hand by, List<Unit> plants, Place place, UnaryOperator<Draft> more) {
        plants.forEach(plant -> {
            require(plant.isStanding(), plant);
            plant.inGround = true;
            plant.container = "";
            plant.place = Optional.of(place);
        });
        more.apply(row(by, EntryKind.PLANTED_OUT, plants).set("place", place)).write();
    }

    void lift(Hand by, List<Unit> plants, String container, Place place, UnaryOperator<Draft> more) {
        plants.forEach(plant -> {
            require(plant.isStanding(), plant);
            plant.inGround = false;
            plant.container = container;
            plant.place = Optional.of(place);
        });
        more.apply(row(by, EntryKind.LIFTED, plants).set("container", container).set("place", place))
                .write();
    }

    void move(Hand by, List<Unit> plants, Place place, UnaryOperator<Draft> more) {
        plants.forEach(plant -> {
            require(!plant.isGone(), plant);
            plant.place = Optional.of(place);
        });
        more.apply(row(by, EntryKind.MOVED, plants).set("place", place)).write();
    }

    /** Measure plants one by one: stem and height. */
    void measure(Hand by, List<Unit> plants) {
        for (Unit plant : plants) {
            require(plant.isStanding(), plant);
            row(by, EntryKind.MEASURED, List.of(plant))
                    .mm("stem_mm", plant.stemMm)
                    .set("height_mm", Math.round(plant.heightMm / 10) * 10)
                    .write();
        }
    }

    void grade(Hand by, List<Unit> plants, String size, String grade, UnaryOperator<Draft> more) {
        plants.forEach(plant -> {
            require(plant.isStanding() && !plant.held, plant);
            plant.graded = true;
        });
        more.apply(row(by, EntryKind.GRADED, plants).set("size", size).set("grade", grade))
                .write();
    }

    void keep(Hand by, List<Unit> plants, UnaryOperator<Draft> more) {
        plants.forEach(plant -> {
            require(plant.isStanding(), plant);
            plant.stock = true;
        });
        more.apply(row(by, EntryKind.KEPT_AS_STOCK, plants)).write();
    }

    /** Hold units for plant health. */
    void hold(Hand by, List<Unit> plants, String sign, String sample, String note) {
        plants.forEach(plant -> {
            require(!plant.isGone(), plant);
            plant.held = true;
        });
        row(by, EntryKind.HELD, plants)
                .set("sign", sign)
                .set("sample", sample)
                .set("note", note)
                .write();
    }

    void clear(Hand by, List<Unit> plants, String note) {
        plants.forEach(plant -> plant.held = false);
        row(by, EntryKind.CLEARED, plants).set("note", note).write();
    }

    // ---- ends -----------------------------------------------------------------------------------------------------

    /** Take single plants out of the book's reckoning, and one layer off each mother. */
    private void end(List<Unit> plants) {
        plants.forEach(plant -> {
            require(plant.isStanding() && plant.layersOn().isEmpty(), plant);
            plant.growing = 0;
        });
    }

    void lose(Hand by, List<Unit> plants, Cause cause, UnaryOperator<Draft> more) {
        end(plants);
        more.apply(row(by, EntryKind.LOST, plants).set("cause", cause)).write();
    }

    void cull(Hand by, List<Unit> plants, CullReason reason, UnaryOperator<Draft> more) {
        end(plants);
        more.apply(row(by, EntryKind.CULLED, plants).set("cull", reason)).write();
    }

    /** Sell single plants at one price each. */
    Row sell(Hand by, List<Unit> plants, Person customer, double euros, UnaryOperator<Draft> more) {
        plants.forEach(plant -> require(!plant.held, plant));
        end(plants);
        return more.apply(row(by, EntryKind.SOLD, plants)
                        .set("customer", customer)
                        .set("price", price(euros))
                        .set("passport", passport(customer))
                        .set("invoice", invoice()))
                .write();
    }

    /** Take some growing units out of a batch. */
    void takeOut(Unit batch, int count) {
        require(batch.nature == Unit.Nature.BATCH && batch.growing >= count, batch);
        batch.growing -= count;
    }

    /** Return a price to the half euro. */
    static String price(double euros) {
        long halves = Math.max(1, StrictMath.round(euros * 2));
        return halves / 2 + (halves % 2 == 0 ? ".00" : ".50") + " EUR";
    }

    /** Return the code of the passport that goes with plants for the trade; private buyers take theirs home without. */
    Optional<String> passport(Person customer) {
        if (!people.isTrade(customer)) {
            return Optional.empty();
        }
        return Optional.of("SF" + year() % 100 + "-" + (100 + today().getDayOfYear() / 7));
    }

    /** Return the number of the next invoice. */
    String invoice() {
        invoices++;
        String digits = Integer.toString(invoices);
        return "R" + "0".repeat(Math.max(0, 4 - digits.length())) + digits;
    }
}
