package ortet.yield;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import ortet.book.BookView;
import ortet.book.UnitFacts.Method;
import ortet.entry.Words;
import ortet.figures.GroupRate;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.plant.Tag;

/**
 * The take table; where it tells mothers apart, each with what is said of her with the help of the others, and in the order
 * of what is known: by the lower limits of those estimates, so that luck with a few units puts nobody first.
 *
 * @param table the take, as it is without the help of others
 * @param rows its rows, in order; those of one outer group stay together
 * @param pooled how the mothers were pooled, for each method; empty where the table does not tell them apart, or where one row
 *     of it has several methods
 * @param mixesMethods whether it tells mothers apart, but with several methods in one row, so that nothing could be pooled
 */
public record PooledTake(TakeTable table, List<Row> rows, List<Pooled> pooled, boolean mixesMethods) {
    /** In percent; per-mother intervals are those of the ranking everywhere. */
    static final double CONFIDENCE = 0.9;

    private static final Set<TakeBy> ALONG = EnumSet.of(TakeBy.MOTHER, TakeBy.CULTIVAR, TakeBy.TAXON, TakeBy.METHOD);

    /**
     * A row of the table.
     *
     * @param row the row
     * @param pooled what is said of its mother with the help of the others
     */
    public record Row(TakeRow row, Optional<GroupRate> pooled) {
        public Row {
            Objects.requireNonNull(row);
            Objects.requireNonNull(pooled);
        }
    }

    public PooledTake {
        Objects.requireNonNull(table);
        rows = List.copyOf(rows);
        pooled = List.copyOf(pooled);
    }

    /** Return the parts of a snapshot that the answer needs. */
    public static Set<Part> parts() {
        return Take.parts();
    }

    /**
     * Return the take out of a snapshot of the day asked about, with the parts needed.
     *
     * @throws ortet.value.Refused when the cultivar, mother or operator asked for is not in the book
     */
    public static PooledTake ask(BookView view, Snapshot snapshot, TakeQuestion question) {
        TakeTable table = Take.ask(view, snapshot, question);
        if (!question.by().contains(TakeBy.MOTHER) || !ALONG.containsAll(question.by())) {
            return plain(table, false);
        }
        Samples samples = Samples.of(snapshot, question.periods());
        // the others help to tell a mother, also where she alone is asked for
        Selection selection = Selection.of(view, question.filter().anyStock(), samples);
        int[] rows = IntStream.range(0, samples.cohorts().size())
                .filter(row -> selection.keeps(row) && samples.isCounted(row))
                .toArray();
        Set<Method> methods = EnumSet.noneOf(Method.class);
        IntStream.of(rows)
                .filter(row -> samples.set(row) > 0)
                .forEach(row -> methods.add(samples.cohorts().method(row)));
        if (methods.size() > 1 && !question.by().contains(TakeBy.METHOD)) {
            return plain(table, true);
        }
        Map<Method, Pooling> poolings = new EnumMap<>(Method.class);
        methods.forEach(method -> poolings.put(method, Pooling.of(samples, rows, method, CONFIDENCE)));
        Map<String, Integer> units = mothers(view, samples, rows);
        List<Row> told = table.rows().stream()
                .map(row -> new Row(row, pooled(row, poolings, units)))
                .toList();
        return new PooledTake(
                table,
                question.by().get(0) == TakeBy.MOTHER && question.by().size() > 1 ? told : sorted(told),
                poolings.values().stream().map(Pooling::pooled).toList(),
                false);
    }

    private static PooledTake plain(TakeTable table, boolean mixesMethods) {
        return new PooledTake(
                table,
                table.rows().stream().map(row -> new Row(row, Optional.empty())).toList(),
                List.of(),
                mixesMethods);
    }

    private static Map<String, Integer> mothers(BookView view, Samples samples, int[] rows) {
        Set<Integer> units = new TreeSet<>();
        IntStream.of(rows).map(samples::mother).filter(mother -> mother > 0).forEach(units::add);
        Map<String, Integer> byTag = new HashMap<>();
        Map<Integer, Tag> tags = TagsOfUnits.of(view, units, samples.snapshot().asOf());
        tags.forEach((unit, tag) -> byTag.put(tag.text(), unit));
        return byTag;
    }

    private static Optional<GroupRate> pooled(TakeRow row, Map<Method, Pooling> poolings, Map<String, Integer> units) {
        Optional<Integer> mother = value(row, TakeBy.MOTHER).map(units::get);
        Optional<Pooling> pooling = value(row, TakeBy.METHOD)
                .map(word -> Optional.ofNullable(poolings.get(Words.parse(Method.class, word))))
                .orElseGet(() -> poolings.values().stream().findFirst());
        return mother.flatMap(unit -> pooling.flatMap(all -> all.rate(unit)));
    }

    private static Optional<String> value(TakeRow row, TakeBy by) {
        return row.groups().stream()
                .filter(group -> group.by() == by)
                .findFirst()
                .flatMap(Group::value);
    }

    /** Sort rows within their outer groups, which stay where they are; those of whom nothing is said stay last, as they were. */
    private static List<Row> sorted(List<Row> rows) {
        Comparator<Row> byWhatIsKnown = Comparator.comparingDouble(
                (Row row) -> row.pooled().map(rate -> -rate.interval().lower()).orElse(1.0));
        List<Row> sorted = new ArrayList<>();
        int from = 0;
        for (int at = 1; at <= rows.size(); at++) {
            if (at == rows.size() || !outer(rows.get(at)).equals(outer(rows.get(from)))) {
                rows.subList(from, at).stream().sorted(byWhatIsKnown).forEach(sorted::add);
                from = at;
            }
        }
        return sorted;
    }

    private static List<Group> outer(Row row) {
        return row.row().groups().subList(0, row.row().groups().size() - 1);
    }
}
