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
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ortet.book.BookView;
import ortet.figures.Ranking;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Names;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.nursery.Turn;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * Answers which mothers yield best by one method: what each gave, what can be said of her with the help of the others, and
 * how likely she is among the best of those that still stand (docs/methods/mothers.md).
 */
public final class Mothers {
    private Mothers() {}

    /** Return the parts of a snapshot that the answer needs. */
    public static Set<Part> parts() {
        Set<Part> parts = EnumSet.copyOf(Fates.PARTS);
        parts.add(Part.LEAVINGS);
        return parts;
    }

    /**
     * Return the table out of a snapshot of the day asked about, with the parts needed.
     *
     * @throws ortet.value.Refused when the cultivar or operator asked for is not in the book; the nearest are named
     */
    public static MothersTable ask(BookView view, Snapshot snapshot, MothersQuestion question) {
        return new Asked(view, snapshot, question).table();
    }

    /** One question being answered. */
    private static final class Asked {
        private final BookView view;
        private final Snapshot snapshot;
        private final MothersQuestion question;
        private final Samples samples;
        private final Cohorts cohorts;
        private final Names names;
        private final Fates fates;

        Asked(BookView view, Snapshot snapshot, MothersQuestion question) {
            this.view = view;
            this.snapshot = snapshot;
            this.question = question;
            this.samples = Samples.of(snapshot, question.periods());
            this.cohorts = samples.cohorts();
            this.names = Names.of(snapshot);
            this.fates = Fates.of(samples, Establishment.DEFAULTS);
        }

        MothersTable table() {
            Selection selection = Selection.of(view, question.filter(), samples);
            int[] rows = IntStream.range(0, cohorts.size())
                    .filter(row -> selection.keeps(row) && samples.isCounted(row) && samples.set(row) > 0)
                    .toArray();
            Map<Integer, List<Integer>> byMother = new TreeMap<>();
            int several = 0;
            int unknown = 0;
            for (int row : rows) {
                int mother = samples.mother(row);
                if (mother > 0) {
                    byMother.computeIfAbsent(mother, one -> new ArrayList<>()).add(row);
                } else if (mother < 0) {
                    several += samples.set(row);
                } else {
                    unknown += samples.set(row);
                }
            }
            // all mothers help to tell those asked for
            Selection all = Selection.of(view, question.filter().anyStock(), samples);
            int[] help = IntStream.range(0, cohorts.size())
                    .filter(row -> all.keeps(row) && samples.isCounted(row))
                    .toArray();
            Pooling pooling = Pooling.of(samples, help, question.method(), question.confidence());
            Set<String> standing = byMother.keySet().stream()
                    .filter(mother -> snapshot.growing(mother) > 0)
                    .map(mother -> Integer.toString(mother))
                    .collect(Collectors.toSet());
            Map<Integer, Ranking.Standing> ranks = new HashMap<>();
            pooling.fit()
                    .ranking(Pooling.MOTHER, standing, question.best(), question.draws(), question.seed())
                    .ifPresent(ranking ->
                            ranking.standings().forEach(one -> ranks.put(Integer.valueOf(one.label()), one)));
            List<Integer> untried = untried(byMother.keySet());
            Set<Integer> told = new HashSet<>(byMother.keySet());
            told.addAll(untried);
            Map<Integer, Tag> tags = TagsOfUnits.of(view, told, question.asOf());
            Progeny progeny = new Progeny(byMother);
            MotherYears years = new MotherYears(samples, new Clusters(samples, fates));
            List<MotherRow> table = new ArrayList<>();
            byMother.forEach((mother, own) -> table.add(row(
                    mother, own, tags.get(mother), pooling, Optional.ofNullable(ranks.get(mother)), progeny, years)));
            Comparator<MotherRow> byWhatIsKnown = Comparator.comparingDouble(
                    row -> row.pooled().map(rate -> -rate.interval().lower()).orElse(1.0));
            // what nobody knows the name of comes last: ~ stands after every letter
            Comparator<MotherRow> byCultivar =
                    Comparator.comparing(row -> row.cultivar().orElse("~"));
            table.sort(byCultivar.thenComparing(byWhatIsKnown).thenComparing(MotherRow::tag));
            return new MothersTable(
                    question,
                    table,
                    pooling.pooled(),
                    several,
                    unknown,
                    untried.stream().map(tags::get).sorted().toList());
        }

        private MotherRow row(
                int mother,
                List<Integer> own,
                Tag tag,
                Pooling pooling,
                Optional<Ranking.Standing> standing,
                Progeny progeny,
                MotherYears years) {
            Samples.Sums sums = new Samples.Sums();
            own.forEach(row -> samples.addTo(sums, row));
            Tally tally = sums.tally();
            int last =
                    own.stream().max(Comparator.comparingInt(cohorts::firstDay)).orElseThrow();
            return new MotherRow(
                    new UnitNumber(mother),
                    tag,
                    cultivar(mother),
                    snapshot.growing(mother) > 0,
                    tally,
                    TakeRate.of(tally, question.confidence()),
                    pooling.rate(mother),
                    standing,
                    years.count(own.stream().mapToInt(row -> row).toArray()),
                    progeny.living.getOrDefault(mother, 0),
                    progeny.sold.getOrDefault(mother, 0),
                    cohorts.day(last));
        }

        private Optional<String> cultivar(int unit) {
            return Optional.of(names.name(unit))
                    .filter(name -> name >= 0)
                    .map(name -> snapshot.cultivars().get(name).toString());
        }

        /** Return the plants kept as stock that are not among the mothers, of the cultivars asked for. */
        private List<Integer> untried(Set<Integer> mothers) {
            Set<Integer> given = new HashSet<>(mothers);
            for (int row = 0; row < cohorts.size(); row++) {
                if (samples.isThere(row) && cohorts.method(row) == question.method()) {
                    int mother = samples.mother(row);
                    (mother < 0 ? samples.several(mother) : List.of(mother)).forEach(given::add);
                }
            }
            Selection selection = Selection.of(view, TakeFilter.ALL, samples);
            Set<String> wanted = new HashSet<>();
            question.filter().cultivar().ifPresent(name -> {
                Selection only = Selection.of(view, TakeFilter.ALL.cultivar(name), samples);
                IntStream.range(0, cohorts.size())
                        .filter(row -> selection.keeps(row) && only.keeps(row))
                        .forEach(row -> wanted.add(
                                snapshot.cultivars().get(samples.cultivar(row)).toString()));
            });
            List<Integer> untried = new ArrayList<>();
            for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
                boolean asked = question.filter().cultivar().isEmpty()
                        || cultivar(unit).filter(wanted::contains).isPresent();
                if (snapshot.isThere(unit)
                        && snapshot.growing(unit) > 0
                        && !given.contains(unit)
                        && isStock(unit)
                        && asked) {
                    untried.add(unit);
                }
            }
            return untried;
        }

        private boolean isStock(int unit) {
            Lives lives = snapshot.lives();
            boolean stock = false;
            for (int at = lives.first(unit); at < lives.end(unit); at++) {
                Turn turn = lives.turn(at);
                stock = turn == Turn.STOCK || stock && turn != Turn.NO_STOCK;
            }
            return stock;
        }

        /**
         * The young plants from every mother: those growing, and those sold. Plants of whom nobody can tell which of several
         * mothers they come from count for none.
         */
        private final class Progeny {
            private static final int NOBODY = 0;

            private final Map<Integer, Integer> living = new HashMap<>();
            private final Map<Integer, Integer> sold = new HashMap<>();

            Progeny(Map<Integer, List<Integer>> byMother) {
                Map<Integer, Integer> motherOf = new HashMap<>();
                byMother.forEach((mother, rows) -> rows.forEach(row -> motherOf.put(row, mother)));
                Map<Integer, Integer> ofAccount = new HashMap<>();
                for (int row = 0; row < cohorts.size(); row++) {
                    if (samples.isThere(row) && samples.set(row) > 0) {
                        ofAccount.merge(
                                fates.account(row),
                                motherOf.getOrDefault(row, NOBODY),
                                (one, other) -> one.equals(other) ? one : NOBODY);
                    }
                }
                for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
                    int row = snapshot.isThere(unit) ? fates.row(unit) : -1;
                    int mother = row < 0 ? NOBODY : ofAccount.getOrDefault(fates.account(row), NOBODY);
                    if (mother != NOBODY) {
                        living.merge(mother, snapshot.growing(unit), Integer::sum);
                        sold.merge(mother, snapshot.sold(unit), Integer::sum);
                    }
                }
            }
        }
    }
}
