package ortet.yield;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Link;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.plant.PersonNumber;
import ortet.plant.UnitNumber;
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
    private static final QueryName COHORTS = new QueryName("cohorts");

    private Take() {}

    /**
     * Return the take, told apart and filtered as asked.
     *
     * @throws ortet.value.Refused when the cultivar, mother or operator asked for is not in the book; the nearest are
     *     named
     */
    public static TakeTable ask(BookView view, TakeQuestion question) {
        Rows rows = view.ask(COHORTS, Parameters.NONE.with("as_of", question.asOf()));
        List<Sample> all = new ArrayList<>(rows.size());
        rows.forEach(row -> all.add(Sample.of(row)));
        Selection selection = Selection.of(view, question.filter(), all);
        List<Sample> kept = all.stream().filter(selection::keeps).toList();
        List<Sample> counted =
                kept.stream().filter(sample -> sample.count().isPresent()).toList();
        Map<UnitNumber, Set<UnitNumber>> origins = origins(view, question, counted);
        List<TakeRow> table = rows(question, counted, origins, names(view, question));
        TakeRow total = row(question, List.of(), counted, origins);
        int shared = all.stream()
                .filter(selection::shares)
                .filter(sample -> sample.count().isPresent())
                .mapToInt(Sample::set)
                .sum();
        return new TakeTable(question, table, total, weighed(kept), shared, warnings(table, total));
    }

    private static Map<PersonNumber, String> names(BookView view, TakeQuestion question) {
        Map<PersonNumber, String> names = new HashMap<>();
        if (question.by().contains(TakeBy.OPERATOR)) {
            view.persons().forEach(person -> names.put(person.number(), person.shown()));
        }
        return names;
    }

    /** Return, for every batch that another was split off or merged into, where its units were first set. */
    private static Map<UnitNumber, Set<UnitNumber>> origins(
            BookView view, TakeQuestion question, List<Sample> samples) {
        Map<UnitNumber, Set<UnitNumber>> origins = new HashMap<>();
        for (Sample sample : samples) {
            if (sample.movedOn() > 0) {
                for (Link link : view.offspring(sample.unit(), EnumSet.of(Act.SPLIT_FROM, Act.MERGED_FROM))) {
                    if (!link.day().first().isAfter(question.asOf())) {
                        origins.computeIfAbsent(link.child(), child -> new TreeSet<>())
                                .add(sample.unit());
                    }
                }
            }
        }
        return origins;
    }

    private static List<TakeRow> rows(
            TakeQuestion question,
            List<Sample> samples,
            Map<UnitNumber, Set<UnitNumber>> origins,
            Map<PersonNumber, String> names) {
        if (question.by().isEmpty()) {
            return List.of();
        }
        Map<List<GroupKey>, List<Sample>> groups =
                new TreeMap<>((one, other) -> compare(one, other, question.by().size()));
        for (Sample sample : samples) {
            List<GroupKey> key = question.by().stream()
                    .map(by -> GroupKey.of(by, sample, names))
                    .toList();
            groups.computeIfAbsent(key, group -> new ArrayList<>()).add(sample);
        }
        List<TakeRow> rows = new ArrayList<>();
        groups.forEach((key, members) -> {
            List<Group> shown = key.stream().map(GroupKey::group).toList();
            TakeRow row = row(question, shown, members, origins);
            if (row.tally().set() > 0) {
                rows.add(row);
            }
        });
        return rows;
    }

    private static int compare(List<GroupKey> one, List<GroupKey> other, int size) {
        for (int at = 0; at < size; at++) {
            int order = one.get(at).compareTo(other.get(at));
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }

    private static TakeRow row(
            TakeQuestion question, List<Group> groups, List<Sample> samples, Map<UnitNumber, Set<UnitNumber>> origins) {
        Tally tally = samples.stream()
                .map(sample -> sample.tally(question.asOf(), question.periods()))
                .reduce(Tally.NONE, Tally::plus);
        return new TakeRow(
                groups, tally, TakeRate.of(tally, question.confidence()), Bounds.of(tally), stood(samples, origins));
    }

    private static Stood stood(List<Sample> samples, Map<UnitNumber, Set<UnitNumber>> origins) {
        Map<UnitNumber, Sample> here = new HashMap<>();
        samples.forEach(sample -> here.put(sample.unit(), sample));
        Set<UnitNumber> batches = new HashSet<>();
        Set<Object> mothers = new HashSet<>();
        int singles = 0;
        int motherless = 0;
        for (Sample sample : samples) {
            if (sample.set() > 0) {
                if (sample.isBatch()) {
                    batches.addAll(first(sample.unit(), here, origins, new HashSet<>()));
                } else {
                    singles += sample.set();
                }
                mothers.addAll(sample.mothers());
                motherless += sample.mothers().isEmpty() ? sample.set() : 0;
            }
        }
        return new Stood(batches.size(), singles, mothers.size(), motherless);
    }

    /** Return the batches of the same row in which the units of a batch were first set: itself, or where it is from. */
    private static Set<UnitNumber> first(
            UnitNumber unit,
            Map<UnitNumber, Sample> here,
            Map<UnitNumber, Set<UnitNumber>> origins,
            Set<UnitNumber> seen) {
        Set<UnitNumber> found = new HashSet<>();
        for (UnitNumber origin : origins.getOrDefault(unit, Set.of())) {
            if (here.containsKey(origin) && seen.add(origin)) {
                found.addAll(first(origin, here, origins, seen));
            }
        }
        return found.isEmpty() ? Set.of(unit) : found;
    }

    private static List<WeighedSowing> weighed(List<Sample> kept) {
        return kept.stream()
                .filter(Predicate.not(sample -> sample.count().isPresent()))
                .sorted(Comparator.comparing(Sample::tag))
                .map(sample -> new WeighedSowing(
                        sample.unit(),
                        sample.tag(),
                        sample.day(),
                        sample.cultivar().map(Object::toString),
                        sample.mothers(),
                        sample.taken(),
                        sample.failed()))
                .toList();
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
