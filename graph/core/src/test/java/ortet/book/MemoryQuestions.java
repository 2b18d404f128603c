package ortet.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import ortet.book.UnitFacts.Leaving;
import ortet.book.UnitFacts.Naming;
import ortet.book.UnitFacts.Outcome;
import ortet.book.UnitFacts.Reason;
import ortet.book.UnitFacts.Standing;
import ortet.entry.Acquired;
import ortet.entry.Checked;
import ortet.entry.CrossedOut;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Graded;
import ortet.entry.LayerSet;
import ortet.entry.Measured;
import ortet.entry.Recorded;
import ortet.entry.Released;
import ortet.entry.ReleasedFrom;
import ortet.entry.Words;
import ortet.nursery.Packed;
import ortet.plant.PersonNumber;
import ortet.value.Decimal;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.When;

/** Answers the named questions about all of a book from the facts of its units, one by one and plainly. */
public final class MemoryQuestions {
    private final Collection<UnitFacts> facts;
    private final Function<Long, Recorded> entries;
    private final Function<Long, List<Recorded>> amendments;
    private final long last;

    /**
     * Answer for a book.
     *
     * @param facts the facts of its units, by number
     * @param entries its entries by recorded order
     * @param amendments their amendments
     * @param last the recorded order of the last of them
     */
    public MemoryQuestions(
            Collection<UnitFacts> facts,
            Function<Long, Recorded> entries,
            Function<Long, List<Recorded>> amendments,
            long last) {
        this.facts = facts;
        this.entries = entries;
        this.amendments = amendments;
        this.last = last;
    }

    /** Return the answer to a question in words. */
    public Rows ask(QueryName name, Parameters parameters) {
        return switch (name.name()) {
            case "cultivars-in-use" -> new Rows(List.of("cultivar"), single(cultivars()));
            case "sizes-in-use" -> new Rows(List.of("size"), single(sizes()));
            case "treatments-in-use" -> new Rows(List.of("treatment"), single(treatments()));
            case "amended-signs" ->
                new Rows(
                        List.of("recorded_order"),
                        LongStream.rangeClosed(1, last)
                                .filter(order -> isSign(entries.apply(order))
                                        && !amendments.apply(order).isEmpty())
                                .mapToObj(List::<Object>of)
                                .toList());
            case "amended-treatments" ->
                new Rows(
                        List.of("unit", "recorded_order", "position"),
                        facts.stream()
                                .filter(unit -> isSetting(unit)
                                        && !amendments
                                                .apply(unit.begun().order())
                                                .isEmpty())
                                .map(unit -> List.<Object>of(
                                        (long) unit.unit().value(), unit.begun().order(), (long)
                                                unit.begun().position()))
                                .toList());
            case "places-in-use" -> new Rows(List.of("place"), single(places()));
            case "beginnings" ->
                new Rows(
                        List.of("unit", "kind", "raised", "amended"),
                        wanted(parameters).map(this::beginning).toList());
            case "tags-of-units" ->
                new Rows(
                        List.of("unit", "tag"),
                        wanted(parameters)
                                .map(unit ->
                                        Arrays.<Object>asList((long) unit.unit().value(), tag(unit, asOf(parameters))))
                                .toList());
            case "places-of-units" ->
                new Rows(
                        List.of("unit", "place"),
                        wanted(parameters)
                                .flatMap(unit -> unit.stays().stream()
                                        .filter(stay -> isPast(stay.day(), parameters))
                                        .reduce((before, after) -> after)
                                        .stream()
                                        .map(stay -> Arrays.<Object>asList(
                                                (long) unit.unit().value(),
                                                stay.place().name())))
                                .toList());
            case "stand-of-units" ->
                new Rows(
                        List.of(
                                "unit",
                                "tag",
                                "nature",
                                "pending",
                                "growing",
                                "standing_order",
                                "sold",
                                "reason",
                                "cultivar"),
                        wanted(parameters).map(unit -> stand(unit, parameters)).toList());
            case "order-by-instant" -> new Rows(List.of("recorded_order"), List.of(List.of(order(parameters))));
            default -> throw new Refused(Fault.of("unknown-question", "a book in memory cannot be asked " + name));
        };
    }

    private static List<Object> stand(UnitFacts unit, Parameters parameters) {
        Optional<Standing> standing = unit.standings().stream()
                .filter(change -> isPast(change.day(), parameters))
                .reduce((before, after) -> after);
        List<Leaving> left = unit.leavings().stream()
                .filter(leaving -> isPast(leaving.day(), parameters))
                .toList();
        int sold = left.stream()
                .mapToInt(leaving -> leaving.reason() == Reason.SOLD
                        ? leaving.count()
                        : leaving.reason() == Reason.RETURNED ? -leaving.count() : 0)
                .sum();
        Optional<Leaving> last = left.stream()
                .filter(leaving -> leaving.reason() != Reason.RETURNED && leaving.reason() != Reason.UNWORKED)
                .reduce((before, after) -> after);
        return Arrays.asList(
                (long) unit.unit().value(),
                tag(unit, asOf(parameters)),
                Words.of(unit.nature()),
                standing.flatMap(Standing::pending).map(Integer::longValue).orElse(null),
                standing.map(change -> (long) change.growing()).orElse(0L),
                standing.map(Standing::order).orElse(null),
                (long) sold,
                last.map(leaving -> Words.of(leaving.reason())).orElse(null),
                name(unit, parameters)
                        .map(naming -> naming.cultivar().toString())
                        .orElse(null));
    }

    private long order(Parameters parameters) {
        Instant instant = CanonicalText.INSTANT.parse(
                (String) parameters.values().get("instant").orElseThrow(), Instant::from);
        return LongStream.rangeClosed(1, last)
                .filter(order -> !entries.apply(order).recordedAt().isAfter(instant))
                .max()
                .orElse(0);
    }

    /** Hand over the answer to a question in numbers. */
    public void stream(QueryName name, Parameters parameters, NumberSink sink) {
        for (UnitFacts unit : facts) {
            switch (name.name()) {
                case "all-units" ->
                    sink.row(new long[] {
                        Packed.unit(unit.unit(), unit.nature(), unit.begun().day())
                    });
                case "all-links" ->
                    unit.links().stream()
                            .filter(link -> isPast(link.day(), parameters))
                            .forEach(link ->
                                    sink.row(new long[] {Packed.link(link.child(), link.act(), link.mother())}));
                case "all-link-counts" ->
                    unit.links().stream()
                            .filter(link -> isPast(link.day(), parameters)
                                    && link.count().isPresent())
                            .forEach(link -> sink.row(new long[] {
                                Packed.link(link.child(), link.act(), link.mother()),
                                link.count().get()
                            }));
                case "all-cohorts" ->
                    unit.cohort()
                            .filter(cohort -> isPast(cohort.day(), parameters))
                            .ifPresent(cohort -> row(
                                    sink,
                                    unit,
                                    cohort.method().ordinal(),
                                    day(cohort.day()),
                                    cohort.day().precision().ordinal(),
                                    number(cohort.by().map(PersonNumber::value)),
                                    number(cohort.count()),
                                    cohort.root().value()));
                case "all-outcomes" ->
                    unit.outcomes().stream()
                            .filter(outcome -> isPast(outcome.day(), parameters))
                            .forEach(outcome -> row(
                                    sink,
                                    unit,
                                    outcome.fate().ordinal(),
                                    outcome.count(),
                                    day(outcome),
                                    precision(outcome.day())));
                case "all-standings" ->
                    unit.standings().stream()
                            .filter(standing -> isPast(standing.day(), parameters))
                            .forEach(standing -> row(sink, unit, number(standing.pending()), standing.growing()));
                case "all-leavings" ->
                    unit.leavings().stream()
                            .filter(leaving -> isPast(leaving.day(), parameters))
                            .forEach(leaving -> row(
                                    sink,
                                    unit,
                                    leaving.reason().ordinal(),
                                    leaving.count(),
                                    day(leaving.day()),
                                    precision(leaving.day())));
                case "all-pottings" ->
                    unit.pottings().stream()
                            .filter(potting -> isPast(potting.day(), parameters))
                            .forEach(potting -> row(sink, unit, day(potting.day()), precision(potting.day())));
                case "all-signs" ->
                    unit.entries().stream()
                            .filter(order -> amendments.apply(order).isEmpty())
                            .map(entries)
                            .filter(entry -> isPast(entry.proposed().day(), parameters))
                            .forEach(entry -> sign(sink, unit, entry));
                case "all-treatments" ->
                    treatment(unit)
                            .filter(words -> isPast(unit.begun().day(), parameters))
                            .ifPresent(words -> row(
                                    sink,
                                    unit,
                                    treatments().indexOf(words),
                                    entries.apply(unit.begun().order()).entry() instanceof LayerSet layer
                                            ? layer.stemMm()
                                                    .map(MemoryQuestions::hundredths)
                                                    .orElse(NumberSink.NONE)
                                            : NumberSink.NONE));
                case "all-last-days" ->
                    unit.entries().stream()
                            .filter(order -> amendments.apply(order).stream()
                                    .noneMatch(amendment -> amendment.entry() instanceof CrossedOut))
                            .map(order -> entries.apply(order).proposed().day())
                            .filter(day -> isPast(day, parameters))
                            .mapToLong(MemoryQuestions::day)
                            .max()
                            .ifPresent(day -> row(sink, unit, day));
                case "all-names" ->
                    name(unit, parameters)
                            .ifPresent(naming -> row(
                                    sink,
                                    unit,
                                    cultivars().indexOf(naming.cultivar().toString()),
                                    naming.isTrue() ? 1 : 0));
                default -> throw new Refused(Fault.of("unknown-question", "a book in memory cannot be asked " + name));
            }
        }
    }

    private static final Set<EntryKind> SIGNS = EnumSet.of(
            EntryKind.CHECKED,
            EntryKind.REWORKED,
            EntryKind.LIFTED,
            EntryKind.MOVED,
            EntryKind.MEASURED,
            EntryKind.SEEN,
            EntryKind.KEPT_AS_STOCK,
            EntryKind.LEFT_LONG,
            EntryKind.CUT_BACK,
            EntryKind.GRADED,
            EntryKind.COUNTED,
            EntryKind.RELEASED);
    private static final Set<EntryKind> SETTINGS =
            EnumSet.of(EntryKind.LAYER_SET, EntryKind.CUTTINGS_STRUCK, EntryKind.GRAFT_WORKED, EntryKind.SEED_SOWN);
    private static final List<String> TREATMENT = List.of(
            "wood", "wound", "hormone", "strength", "carrier", "medium", "wrap", "place", "stock_age_years", "hedged");

    private static boolean isSign(Recorded entry) {
        return SIGNS.contains(entry.entry().kind());
    }

    private void sign(NumberSink sink, UnitFacts unit, Recorded recorded) {
        When day = recorded.proposed().day();
        if (!isSign(recorded)) {
            return;
        }
        Entry entry = recorded.entry();
        long value = NumberSink.NONE;
        long what = 0;
        if (entry instanceof Checked checked) {
            value = checked.findings().toString().contains("root") ? 1 : 2;
        } else if (entry instanceof Measured measured && measured.stemMm().isPresent()) {
            what = 1;
            value = hundredths(measured.stemMm().get());
        } else if (entry instanceof Graded graded) {
            what = 2;
            value = sizes().indexOf(graded.size());
        } else if (entry.kind() == EntryKind.KEPT_AS_STOCK) {
            what = 3;
        } else if (entry instanceof Released released) {
            if (released.from().filter(from -> from != ReleasedFrom.STOCK).isPresent()) {
                return;
            }
            what = 4;
        }
        row(sink, unit, what, day(day), precision(day), value);
    }

    private static long hundredths(Decimal stem) {
        return Math.round(Double.parseDouble(stem.toString()) * 100);
    }

    private static long precision(When day) {
        return day.precision().ordinal();
    }

    private List<String> sizes() {
        return sorted(LongStream.rangeClosed(1, last)
                .mapToObj(entries::apply)
                .filter(entry -> entry.entry() instanceof Graded)
                .map(entry -> ((Graded) entry.entry()).size()));
    }

    private boolean isSetting(UnitFacts unit) {
        return SETTINGS.contains(entries.apply(unit.begun().order()).entry().kind());
    }

    private Optional<String> treatment(UnitFacts unit) {
        return isSetting(unit) && amendments.apply(unit.begun().order()).isEmpty()
                ? Optional.of(treatment(entries.apply(unit.begun().order()).entry()))
                : Optional.empty();
    }

    private static String treatment(Entry entry) {
        return TREATMENT.stream()
                .map(column -> Form.write(entry, column).orElse(""))
                .collect(Collectors.joining("\u001f"));
    }

    private List<String> treatments() {
        return sorted(LongStream.rangeClosed(1, last)
                .filter(order -> amendments.apply(order).isEmpty())
                .mapToObj(order -> entries.apply(order).entry())
                .filter(entry -> SETTINGS.contains(entry.kind()))
                .map(MemoryQuestions::treatment));
    }

    private static void row(NumberSink sink, UnitFacts unit, long... others) {
        long[] numbers = new long[others.length + 1];
        numbers[0] = unit.unit().value();
        System.arraycopy(others, 0, numbers, 1, others.length);
        sink.row(numbers);
    }

    private static long number(Optional<Integer> value) {
        return value.map(Integer::longValue).orElse(NumberSink.NONE);
    }

    private static long day(When day) {
        return day.first().toEpochDay();
    }

    private static long day(Outcome outcome) {
        return day(outcome.day());
    }

    private static LocalDate asOf(Parameters parameters) {
        return LocalDate.parse((String) parameters.values().get("as_of").orElseThrow());
    }

    private static boolean isPast(When day, Parameters parameters) {
        return !day.first().isAfter(asOf(parameters));
    }

    private static Optional<Naming> name(UnitFacts unit, Parameters parameters) {
        List<Naming> past = unit.names().stream()
                .filter(naming -> isPast(naming.day(), parameters))
                .toList();
        return past.stream()
                .filter(Naming::isTrue)
                .reduce((before, after) -> after)
                .or(() -> past.stream().reduce((before, after) -> after));
    }

    private List<String> cultivars() {
        return sorted(facts.stream()
                .flatMap(unit -> unit.names().stream())
                .map(naming -> naming.cultivar().toString()));
    }

    private List<String> places() {
        return sorted(facts.stream()
                .flatMap(unit -> unit.stays().stream())
                .map(stay -> stay.place().name()));
    }

    /** Return texts in the order of their code points, each once. */
    private static List<String> sorted(Stream<String> texts) {
        return texts.distinct()
                .sorted((one, other) -> Arrays.compare(
                        one.codePoints().toArray(), other.codePoints().toArray()))
                .toList();
    }

    private static List<List<Object>> single(List<String> texts) {
        List<List<Object>> rows = new ArrayList<>();
        texts.forEach(text -> rows.add(List.of(text)));
        return rows;
    }

    private Stream<UnitFacts> wanted(Parameters parameters) {
        List<String> units = List.of(((String) parameters.values().get("units").orElseThrow()).split(","));
        return facts.stream().filter(unit -> units.contains(unit.unit().toString()));
    }

    private List<Object> beginning(UnitFacts unit) {
        Recorded begun = entries.apply(unit.begun().order());
        Optional<String> raised =
                begun.entry() instanceof Acquired acquired ? acquired.raised().map(Words::of) : Optional.empty();
        return Arrays.asList(
                (long) unit.unit().value(),
                begun.entry().kind().word(),
                raised.orElse(null),
                amendments.apply(begun.order()).isEmpty() ? 0L : 1L);
    }

    private static String tag(UnitFacts unit, LocalDate asOf) {
        return unit.tags().stream()
                .filter(use -> !use.day().first().isAfter(asOf))
                .reduce((before, after) -> after)
                .orElse(unit.tags().get(0))
                .tag()
                .text();
    }
}
