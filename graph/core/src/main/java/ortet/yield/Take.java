package ortet.yield;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import ortet.book.BookView;
import ortet.nursery.Cohorts;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Defect;
import ortet.value.Warning;

/**
 * Answers how many took.
 *
 * <p>The take rate is taken / (taken + failed): what is pending, withdrawn or not to be found is in neither, and is
 * always shown beside it. What counts as taken and failed for each method is settled by the book (docs/rules.md); the
 * arithmetic is in docs/methods/take-rate.md. A unit that went on under another tag before anybody knew is counted
 * there, so that a total stays the same however trays are split and merged.
 */
public final class Take {
    private Take() {}

    /** Return the parts of a snapshot that the answer needs. */
    public static Set<Part> parts() {
        return Samples.PARTS;
    }

    /**
     * Return the take, told apart and filtered as asked.
     *
     * @throws ortet.value.Refused when the cultivar, mother or operator asked for is not in the book; the nearest are
     *     named
     */
    public static TakeTable ask(BookView view, TakeQuestion question) {
        return ask(view, Snapshot.of(view, question.asOf(), parts()), question);
    }

    /**
     * Return the take out of a snapshot of the day asked about, with the parts needed.
     *
     * @throws ortet.value.Refused when the cultivar, mother or operator asked for is not in the book; the nearest are
     *     named
     */
    public static TakeTable ask(BookView view, Snapshot snapshot, TakeQuestion question) {
        if (!snapshot.asOf().equals(question.asOf())) {
            throw new Defect("a snapshot of " + snapshot.asOf() + " for a question about " + question.asOf());
        }
        Samples samples = Samples.of(snapshot, question.periods());
        Selection selection = Selection.of(view, question.filter(), samples);
        int[] kept = rows(samples, selection::keeps);
        for (int row : rows(samples, row -> samples.isImpossible(row) && selection.keeps(row))) {
            int unit = samples.cohorts().unit(row);
            throw new Defect("more came of "
                    + TagsOfUnits.of(view, Set.of(unit), question.asOf()).get(unit) + " than was set");
        }
        int[] counted = IntStream.of(kept).filter(samples::isCounted).toArray();
        Stand stand = new Stand(samples);
        List<TakeRow> table = new Table(view, question, samples, stand).rows(counted);
        TakeRow total = row(question, List.of(), samples, stand, counted, 0, counted.length);
        int shared = IntStream.of(rows(samples, selection::shares))
                .filter(samples::isCounted)
                .map(samples::set)
                .sum();
        return new TakeTable(question, table, total, weighed(view, samples, kept), shared, warnings(table, total));
    }

    private static int[] rows(Samples samples, IntPredicate test) {
        return IntStream.range(0, samples.cohorts().size()).filter(test).toArray();
    }

    private static TakeRow row(
            TakeQuestion question, List<Group> groups, Samples samples, Stand stand, int[] rows, int from, int to) {
        Samples.Sums sums = new Samples.Sums();
        for (int at = from; at < to; at++) {
            samples.addTo(sums, rows[at]);
        }
        Tally tally = sums.tally();
        return new TakeRow(
                groups, tally, TakeRate.of(tally, question.confidence()), Bounds.of(tally), stand.of(rows, from, to));
    }

    /** The rows of the answer. */
    private record Table(BookView view, TakeQuestion question, Samples samples, Stand stand) {
        /** A group before it has a name: a number for each respect. */
        private record Numbers(int outer, int inner) {}

        List<TakeRow> rows(int[] counted) {
            if (question.by().isEmpty()) {
                return List.of();
            }
            Grouping grouping = new Grouping(view, samples);
            TakeBy outer = question.by().get(0);
            TakeBy inner = question.by().get(question.by().size() - 1);
            Map<Numbers, Integer> places = new HashMap<>();
            List<Numbers> groups = new ArrayList<>();
            int[] group = new int[counted.length];
            for (int at = 0; at < counted.length; at++) {
                Numbers numbers = new Numbers(grouping.number(outer, counted[at]), grouping.number(inner, counted[at]));
                Integer place = places.putIfAbsent(numbers, groups.size());
                if (place == null) {
                    place = groups.size();
                    groups.add(numbers);
                }
                group[at] = place;
            }
            int[] ends = new int[groups.size() + 1];
            int[] sorted = sorted(counted, group, ends);
            Map<Integer, GroupKey> outers =
                    keys(grouping, outer, groups.stream().map(Numbers::outer));
            Map<Integer, GroupKey> inners = outer == inner
                    ? outers
                    : keys(grouping, inner, groups.stream().map(Numbers::inner));
            return IntStream.range(0, groups.size())
                    .boxed()
                    .sorted(Comparator.comparing(
                                    (Integer at) -> outers.get(groups.get(at).outer()))
                            .thenComparing(at -> inners.get(groups.get(at).inner())))
                    .map(at -> {
                        List<Group> shown = new ArrayList<>();
                        shown.add(outers.get(groups.get(at).outer()).group());
                        if (question.by().size() > 1) {
                            shown.add(inners.get(groups.get(at).inner()).group());
                        }
                        return row(question, shown, samples, stand, sorted, ends[at], ends[at + 1]);
                    })
                    .filter(row -> row.tally().set() > 0)
                    .toList();
        }

        private static Map<Integer, GroupKey> keys(Grouping grouping, TakeBy by, Stream<Integer> numbers) {
            return grouping.keys(by, new LinkedHashSet<>(numbers.toList()));
        }

        /** Return rows sorted by their groups; {@code ends} takes where each group begins, and the end. */
        private static int[] sorted(int[] rows, int[] group, int[] ends) {
            for (int one : group) {
                ends[one + 1]++;
            }
            for (int at = 1; at < ends.length; at++) {
                ends[at] += ends[at - 1];
            }
            int[] next = ends.clone();
            int[] sorted = new int[rows.length];
            for (int at = 0; at < rows.length; at++) {
                sorted[next[group[at]]++] = rows[at];
            }
            return sorted;
        }
    }

    private static List<WeighedSowing> weighed(BookView view, Samples samples, int[] kept) {
        int[] rows = IntStream.of(kept).filter(row -> !samples.isCounted(row)).toArray();
        Cohorts cohorts = samples.cohorts();
        Set<Integer> units = new TreeSet<>();
        for (int row : rows) {
            units.add(cohorts.unit(row));
            units.addAll(mothers(samples, row));
        }
        Map<Integer, Tag> tags = TagsOfUnits.of(view, units, samples.snapshot().asOf());
        List<CultivarName> names = samples.snapshot().cultivars();
        return IntStream.of(rows)
                .mapToObj(row -> new WeighedSowing(
                        new UnitNumber(cohorts.unit(row)),
                        tags.get(cohorts.unit(row)),
                        cohorts.day(row),
                        Optional.of(samples.cultivar(row))
                                .filter(name -> name >= 0)
                                .map(name -> names.get(name).toString()),
                        mothers(samples, row).stream().map(tags::get).sorted().toList(),
                        cohorts.taken(row),
                        cohorts.failed(row)))
                .sorted(Comparator.comparing(WeighedSowing::tag))
                .toList();
    }

    private static List<Integer> mothers(Samples samples, int row) {
        int mother = samples.mother(row);
        return mother < 0 ? samples.several(mother) : mother == 0 ? List.of() : List.of(mother);
    }

    private static List<Warning> warnings(List<TakeRow> rows, TakeRow total) {
        List<Warning> warnings = new ArrayList<>();
        rows.forEach(row -> muchPending(row).ifPresent(warnings::add));
        muchPending(total).ifPresent(warnings::add);
        return warnings;
    }

    private static Optional<Warning> muchPending(TakeRow row) {
        Tally tally = row.tally();
        return tally.isMuchPending()
                ? Optional.of(new Warning(
                        "much-pending",
                        row.shown() + ": " + tally.pending() + " of " + tally.counting()
                                + " are not known yet, more than a fifth; the rate may still change much"))
                : Optional.empty();
    }
}
