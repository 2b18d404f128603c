package ortet.nursery;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.NumberSink;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts.Nature;
import ortet.entry.EntryKind;
import ortet.entry.Raised;
import ortet.entry.Words;
import ortet.plant.CultivarName;
import ortet.plant.UnitNumber;
import ortet.value.Defect;

/** Fills columns from what the store has worked out already. */
final class Streamed {
    private static final QueryName UNITS = new QueryName("all-units");
    private static final QueryName LINKS = new QueryName("all-links");
    private static final QueryName LINK_COUNTS = new QueryName("all-link-counts");
    private static final QueryName COHORTS = new QueryName("all-cohorts");
    private static final QueryName OUTCOMES = new QueryName("all-outcomes");
    private static final QueryName STANDINGS = new QueryName("all-standings");
    private static final QueryName LEAVINGS = new QueryName("all-leavings");
    private static final QueryName NAMES = new QueryName("all-names");
    private static final QueryName CULTIVARS_IN_USE = new QueryName("cultivars-in-use");
    private static final QueryName POTTINGS = new QueryName("all-pottings");
    private static final QueryName SIGNS = new QueryName("all-signs");
    private static final QueryName AMENDED_SIGNS = new QueryName("amended-signs");
    private static final QueryName SIZES = new QueryName("sizes-in-use");
    private static final QueryName TREATMENTS = new QueryName("all-treatments");
    private static final QueryName TREATMENTS_IN_USE = new QueryName("treatments-in-use");
    private static final QueryName AMENDED_TREATMENTS = new QueryName("amended-treatments");
    private static final QueryName BEGINNINGS = new QueryName("beginnings");

    /** How many units are asked about at one go. */
    private static final int CHUNK = 10_000;

    private final BookView view;
    private final LocalDate asOf;
    private final Parameters parameters;
    private final Filling filling;

    private Streamed(BookView view, LocalDate asOf, Filling filling) {
        this.view = view;
        this.asOf = asOf;
        this.parameters = Parameters.NONE.with("as_of", asOf);
        this.filling = filling;
    }

    /** Return the columns known, and those of the parts wanted that are not among them. */
    static Columns columns(BookView view, LocalDate asOf, Set<Part> wanted, Columns known) {
        Set<Part> missing = EnumSet.noneOf(Part.class);
        missing.addAll(wanted);
        if (missing.contains(Part.BEGINNINGS)) {
            missing.add(Part.LINKS);
        }
        missing.removeIf(known::has);
        Filling filling = new Filling(view.head().lastUnit(), missing, known);
        return new Streamed(view, asOf, filling).fill(missing, known.nature().length == 0);
    }

    private Columns fill(Set<Part> missing, boolean units) {
        if (units) {
            view.stream(
                    UNITS,
                    Parameters.NONE,
                    row -> filling.unit(
                            Packed.unit(row[0]), Packed.nature(row[0]), Packed.day(row[0]), Packed.precision(row[0])));
        }
        if (missing.contains(Part.LINKS)) {
            view.stream(LINKS, parameters, row -> filling.link(row[0]));
            view.stream(LINK_COUNTS, parameters, row -> filling.linkCount(row[0], whole(row, 1)));
            filling.closeLinks();
        }
        if (missing.contains(Part.BEGINNINGS)) {
            beginnings();
        }
        if (missing.contains(Part.STANDINGS)) {
            view.stream(
                    STANDINGS,
                    parameters,
                    row -> filling.standing(whole(row, 0), whole(row, 1, Snapshot.NONE), whole(row, 2)));
        }
        int[] cohorts = missing.contains(Part.COHORTS) ? cohorts() : new int[0];
        if (missing.contains(Part.NAMES)) {
            filling.cultivars(words(CULTIVARS_IN_USE, "cultivar").stream()
                    .map(CultivarName::parse)
                    .toList());
            view.stream(NAMES, parameters, row -> filling.name(whole(row, 0), whole(row, 1), row[2] != 0));
        }
        if (missing.contains(Part.LEAVINGS)) {
            view.stream(LEAVINGS, parameters, row -> filling.leaving(whole(row, 0), whole(row, 1), whole(row, 2)));
        }
        if (missing.contains(Part.LIVES)) {
            lives();
        }
        return filling.columns(cohorts);
    }

    private int[] cohorts() {
        view.stream(
                COHORTS,
                parameters,
                row -> filling.cohort(
                        whole(row, 0),
                        whole(row, 1),
                        row[2],
                        row[3],
                        whole(row, 4, Cohorts.NONE),
                        whole(row, 5, Cohorts.NONE),
                        whole(row, 6)));
        filling.closeCohorts();
        int[] units = filling.cohortUnits();
        view.stream(
                OUTCOMES,
                parameters,
                row -> filling.outcome(units, whole(row, 0), whole(row, 1), whole(row, 2), whole(row, 3)));
        return units;
    }

    private void lives() {
        view.stream(
                OUTCOMES,
                parameters,
                row -> filling.outcomeTurn(whole(row, 0), whole(row, 1), whole(row, 2), Days.packed(row[3], row[4])));
        view.stream(
                POTTINGS, parameters, row -> filling.turn(whole(row, 0), Turn.POTTED, Days.packed(row[1], row[2]), 0));
        view.stream(
                LEAVINGS,
                parameters,
                row -> filling.leavingTurn(whole(row, 0), whole(row, 1), whole(row, 2), Days.packed(row[3], row[4])));
        words(SIZES, "size").forEach(filling::size);
        view.stream(
                SIGNS,
                parameters,
                row -> filling.turn(
                        whole(row, 0), Signs.turn(whole(row, 1)), Days.packed(row[2], row[3]), whole(row, 4, 0)));
        List<Long> amended = new ArrayList<>();
        view.ask(AMENDED_SIGNS, Parameters.NONE)
                .forEach(row -> amended.add(row.whole("recorded_order").orElseThrow()));
        History.of(view, amended, asOf).values().forEach(events -> events.forEach(event -> Signs.add(event, filling)));
        List<Integer> places = words(TREATMENTS_IN_USE, "treatment").stream()
                .map(words -> filling.treatment(Treatment.parse(words)))
                .toList();
        view.stream(
                TREATMENTS, parameters, row -> filling.set(whole(row, 0), places.get(whole(row, 1)), whole(row, 2, 0)));
        for (Rows.Row row : view.ask(AMENDED_TREATMENTS, Parameters.NONE)) {
            long order = row.whole("recorded_order").orElseThrow();
            view.entry(order)
                    .flatMap(recorded -> History.words(
                            recorded,
                            view.amendments(order),
                            row.whole("position").orElseThrow().intValue()))
                    .ifPresent(
                            entry -> Signs.set(row.whole("unit").orElseThrow().intValue(), entry, asOf, filling));
        }
    }

    private static int whole(long[] row, int at) {
        if (row[at] == NumberSink.NONE) {
            throw new Defect("no number in column " + at);
        }
        return (int) row[at];
    }

    private static int whole(long[] row, int at, int otherwise) {
        return row[at] == NumberSink.NONE ? otherwise : (int) row[at];
    }

    private List<String> words(QueryName question, String column) {
        Rows rows = view.ask(question, Parameters.NONE);
        return IntStream.range(0, rows.size())
                .mapToObj(
                        at -> (String) rows.values().get(at).get(rows.columns().indexOf(column)))
                .toList();
    }

    private void beginnings() {
        int[] founders = filling.founders(asOf.toEpochDay());
        Map<String, EntryKind> kinds = new HashMap<>();
        for (int from = 0; from < founders.length; from += CHUNK) {
            String units = IntStream.range(from, Math.min(founders.length, from + CHUNK))
                    .mapToObj(at -> Integer.toString(founders[at]))
                    .collect(Collectors.joining(","));
            for (Rows.Row row : view.ask(BEGINNINGS, Parameters.NONE.with("units", units))) {
                int unit = row.whole("unit").orElseThrow().intValue();
                Nature nature = Nature.values()[filling.nature(unit)];
                Beginning how = row.whole("amended").orElseThrow() == 0
                        ? Beginning.of(
                                kinds.computeIfAbsent(
                                        row.text("kind").orElseThrow(),
                                        word -> EntryKind.of(word).orElseThrow()),
                                row.text("raised").map(word -> Words.parse(Raised.class, word)),
                                nature)
                        : amended(unit, nature);
                filling.beginning(unit, how);
            }
        }
    }

    private Beginning amended(int unit, Nature nature) {
        Optional<Event> begun = History.of(view, new UnitNumber(unit), asOf).stream()
                .filter(Event::begins)
                .findFirst();
        return begun.map(event -> Beginning.of(event.entry(), nature)).orElse(Beginning.NOT_IN_THE_BOOK);
    }
}
