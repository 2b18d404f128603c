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
import ortet.book.Lookup;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Warning;

/**
 * Answers how many took from the rows of {@link CohortsOfABook}, one object for each: plainly and slowly, as it was first
 * written, for comparison.
 */
final class TakeRowByRow {
    private static final QueryName COHORTS = new QueryName("cohorts");

    private TakeRowByRow() {}

    /**
     * Return the take, told apart and filtered as asked.
     *
     * @throws ortet.value.Refused when the cultivar, mother or operator asked for is not in the book; the nearest are
     *     named
     */
    static TakeTable ask(BookView view, TakeQuestion question) {
        Rows rows = view.ask(COHORTS, Parameters.NONE.with("as_of", question.asOf()));
        List<Sample> all = new ArrayList<>(rows.size());
        rows.forEach(row -> all.add(Sample.of(row)));
        Filter selection = Filter.of(view, question.filter(), all);
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
            List<GroupKey> key =
                    question.by().stream().map(by -> key(by, sample, names)).toList();
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

    private static GroupKey key(TakeBy by, Sample sample, Map<PersonNumber, String> names) {
        return switch (by) {
            case CULTIVAR ->
                sample.cultivar()
                        .map(name -> GroupKey.named(by, name.toString()))
                        .orElseGet(() -> GroupKey.unknown(by));
            case TAXON ->
                sample.cultivar().map(name -> GroupKey.named(by, name.taxon())).orElseGet(() -> GroupKey.unknown(by));
            case MOTHER -> GroupKey.mother(by, sample.mothers());
            case METHOD -> GroupKey.method(by, sample.method());
            case SEASON -> GroupKey.season(by, sample.season());
            case OPERATOR ->
                sample.by()
                        .map(person -> GroupKey.operator(by, person, names.getOrDefault(person, person.toString())))
                        .orElseGet(() -> GroupKey.unknown(by));
        };
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
        boolean passed = false;
        for (UnitNumber origin : origins.getOrDefault(unit, Set.of())) {
            if (here.containsKey(origin)) {
                passed = true;
                if (seen.add(origin)) {
                    found.addAll(first(origin, here, origins, seen));
                }
            }
        }
        return passed ? found : Set.of(unit);
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

    /** A filter whose cultivar, mother and operator have been found in the book. */
    private static final class Filter {
        private final Predicate<Sample> others;
        private final Set<Tag> mother;

        private Filter(Predicate<Sample> others, Set<Tag> mother) {
            this.others = others;
            this.mother = mother;
        }

        static Filter of(BookView view, TakeFilter filter, List<Sample> samples) {
            List<Predicate<Sample>> tests = new ArrayList<>();
            filter.cultivar().ifPresent(name -> tests.add(cultivar(view, name, samples)));
            filter.method().ifPresent(method -> tests.add(sample -> sample.method() == method));
            filter.fromYear().ifPresent(year -> tests.add(sample -> sample.season() >= year));
            filter.toYear().ifPresent(year -> tests.add(sample -> sample.season() <= year));
            filter.operator().ifPresent(name -> {
                Optional<PersonNumber> wanted =
                        Optional.of(Lookup.person(view, name).number());
                tests.add(sample -> sample.by().equals(wanted));
            });
            Set<Tag> mother = filter.mother()
                    .map(tag -> Set.copyOf(view.tags(Lookup.unit(view, tag))))
                    .orElse(Set.of());
            return new Filter(tests.stream().reduce(sample -> true, Predicate::and), mother);
        }

        /** Tell whether a unit is asked for. */
        boolean keeps(Sample sample) {
            return others.test(sample)
                    && (mother.isEmpty()
                            || sample.mothers().size() == 1
                                    && mother.contains(sample.mothers().get(0)));
        }

        /** Tell whether a unit would be asked for, but may come from another than the mother asked for. */
        boolean shares(Sample sample) {
            return others.test(sample)
                    && sample.mothers().size() > 1
                    && sample.mothers().stream().anyMatch(mother::contains);
        }

        private static Predicate<Sample> cultivar(BookView view, String wanted, List<Sample> samples) {
            Set<CultivarName> used = new HashSet<>();
            samples.forEach(sample -> sample.cultivar().ifPresent(used::add));
            Set<CultivarName> found = Lookup.cultivars(view, wanted, used);
            return sample -> sample.cultivar().filter(found::contains).isPresent();
        }
    }
}
