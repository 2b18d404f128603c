package ortet.yield;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import ortet.book.BookView;
import ortet.book.UnitFacts.Method;
import ortet.figures.GroupDraws;
import ortet.figures.MixedFit;
import ortet.figures.MixedModel;
import ortet.figures.ModelData;
import ortet.money.Tariff;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.Turn;
import ortet.yield.Fates.Established;
import ortet.yield.Fates.Saleable;

/**
 * What the past says of how trees are raised, for those who plan: how cohorts took and established, as models to draw from;
 * when their trees became fit for sale and in which size class; what setting and growing on cost.
 *
 * <p>A row is the row of {@link Cohorts}.
 */
public final class Past {
    /** The groupings of the models: cultivars, and mothers within them. */
    public static final String CULTIVAR = "cultivar";

    /** See {@link #CULTIVAR}. */
    public static final String MOTHER = "mother";

    /** The seasons, shared by all. */
    public static final String SEASON = "season";

    private static final String YEAR = "season of a mother";
    private static final String TRAY = "tray";
    private static final int ALL = 0;
    private static final double LEAST_DEVIATION = 0.01;

    private final Snapshot snapshot;
    private final Samples samples;
    private final Cohorts cohorts;
    private final Fates fates;

    private Past(Snapshot snapshot) {
        this.snapshot = snapshot;
        this.samples = Samples.of(snapshot, Periods.DEFAULTS);
        this.cohorts = samples.cohorts();
        this.fates = Fates.of(samples, Establishment.DEFAULTS);
    }

    /** Return the parts of a snapshot that this needs. */
    public static Set<Part> parts() {
        return EnumSet.copyOf(Fates.PARTS);
    }

    /** Read the past out of a snapshot with the parts needed. */
    public static Past of(Snapshot snapshot) {
        return new Past(snapshot);
    }

    /** Return the rows of a method whose units are counted, one of those by hand. */
    public int[] rows(Method method) {
        return IntStream.range(0, cohorts.size())
                .filter(row -> cohorts.method(row) == method && samples.isThere(row) && samples.isCounted(row))
                .toArray();
    }

    /** Return who gave the wood: a unit; 0 or below where nobody knows, or it is one of several. */
    public int mother(int row) {
        return samples.mother(row);
    }

    /** Return those, one of whom gave the wood, where it is one of several. */
    public List<Integer> mothers(int row) {
        int mother = samples.mother(row);
        return mother < 0 ? samples.several(mother) : mother == 0 ? List.of() : List.of(mother);
    }

    /** Return the name as its place in {@link Snapshot#cultivars()}, negative where it is not known. */
    public int cultivar(int row) {
        return samples.cultivar(row);
    }

    /** Return the calendar year of setting. */
    public int season(int row) {
        return samples.season(row);
    }

    /** Return how many were set. */
    public int set(int row) {
        return samples.set(row);
    }

    /** Return how many are neither taken nor failed. */
    public int pending(int row) {
        return Math.max(0, samples.set(row) - cohorts.taken(row) - cohorts.failed(row) - cohorts.withdrawn(row));
    }

    /**
     * Return how many are still waited for: neither taken nor failed, and not pending for so long that it should be known.
     */
    public int awaited(int row) {
        Samples.Sums sums = new Samples.Sums();
        samples.addTo(sums, row);
        Tally tally = sums.tally();
        return tally.pending() - tally.unaccounted();
    }

    /**
     * Units of which it is known whether they took.
     *
     * @param units how many
     * @param seasons over how many seasons of setting
     */
    public record Judged(int units, int seasons) {
        /** Nothing is known. */
        public static final Judged NONE = new Judged(0, 0);
    }

    /** Return by mother of how many of her units of a method it is known whether they took; those of one of several are left out. */
    public Map<Integer, Judged> judgedByMother(Method method) {
        Map<Integer, Judged> judged = new HashMap<>();
        Map<Integer, Set<Integer>> seasons = new HashMap<>();
        for (int row : rows(method)) {
            int known = known(row);
            if (samples.mother(row) > 0 && known > 0) {
                int mother = samples.mother(row);
                Set<Integer> hers = seasons.computeIfAbsent(mother, fresh -> new HashSet<>());
                hers.add(samples.season(row));
                int before = judged.getOrDefault(mother, Judged.NONE).units();
                judged.put(mother, new Judged(before + known, hers.size()));
            }
        }
        return judged;
    }

    /** Return of how many units of a method in all it is known whether they took. */
    public Judged judged(Method method) {
        int[] known = IntStream.of(rows(method)).filter(row -> known(row) > 0).toArray();
        return new Judged(IntStream.of(known).map(this::known).sum(), (int)
                IntStream.of(known).map(samples::season).distinct().count());
    }

    private int known(int row) {
        return cohorts.taken(row) + cohorts.failed(row);
    }

    /** Return the stem of the branch at setting in hundredths of a millimetre; empty where nobody measured. */
    public Optional<Integer> stem(int row) {
        Lives lives = snapshot.lives();
        int unit = cohorts.unit(row);
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            if (lives.turn(at) == Turn.SET_ON) {
                return lives.value(at) > 0 ? Optional.of(lives.value(at)) : Optional.empty();
            }
        }
        return Optional.empty();
    }

    // ---- how they took and established ----

    /** What goes into the model as one row. */
    private record Place(int cultivar, int mother, int season, int tray) {}

    /**
     * How the units of a method took, drawn.
     *
     * @param mothers cultivars, and mothers within them
     * @param seasons the seasons
     * @param plain whether mothers and seasons were told apart in models of their own
     */
    public record Takes(GroupDraws mothers, GroupDraws seasons, boolean plain) {}

    /**
     * Draw how the units of a method took, from a binomial mixed model with cultivars, mothers within them, seasons shared by
     * all, the seasons of a mother within her, and trays within these. Rows of no mother or of one of several are left out.
     *
     * <p>Where so little is known that mothers or seasons are estimated not to differ at all, which nobody should take for
     * true, mothers and seasons are told in two plainer models, each averaged over what the deviations may be.
     *
     * @return absent where no outcome is known
     */
    public Optional<Takes> take(Method method, int draws, long seed) {
        Map<Place, long[]> sums = new LinkedHashMap<>();
        for (int row : rows(method)) {
            long known = (long) cohorts.taken(row) + cohorts.failed(row);
            if (samples.mother(row) > 0 && known > 0) {
                int mother = samples.mother(row);
                int tray = samples.isBatch(row) ? cohorts.root(row) : ALL;
                add(
                        sums,
                        new Place(samples.cultivar(row), mother, samples.season(row), tray),
                        cohorts.taken(row),
                        known);
            }
        }
        List<Place> places = List.copyOf(sums.keySet());
        ModelData mothers = data(sums)
                .withGroups(CULTIVAR, words(places, Place::cultivar))
                .withGroupsWithin(MOTHER, CULTIVAR, mothers(sums));
        ModelData seasons = data(sums).withGroups(SEASON, words(places, Place::season));
        ModelData all = mothers.withGroups(SEASON, words(places, Place::season))
                .withGroupsWithin(YEAR, MOTHER, words(places, Place::season));
        if (places.stream().anyMatch(place -> place.tray() != ALL)) {
            all = all.withGroupsWithin(TRAY, YEAR, words(places, Place::tray));
        }
        MixedFit fit = MixedModel.laplace().fit(all);
        boolean differ = fit.deviations().stream()
                .filter(one -> one.grouping().equals(MOTHER) || one.grouping().equals(SEASON))
                .allMatch(one -> one.sd().filter(sd -> sd > LEAST_DEVIATION).isPresent());
        if (differ) {
            return fit.draws(List.of(CULTIVAR, MOTHER, SEASON), draws, seed).map(one -> new Takes(one, one, false));
        }
        Optional<GroupDraws> bySeason = MixedModel.laplace().fit(seasons).draws(List.of(SEASON), draws, seed);
        return MixedModel.laplace()
                .fit(mothers)
                .draws(List.of(CULTIVAR, MOTHER), draws, seed)
                .flatMap(one -> bySeason.map(other -> new Takes(one, other, true)));
    }

    /**
     * Return the mother of each row as a word that stands in one cultivar alone: her number in the cultivar of which most is
     * known, and with the cultivar's beside it where her wood went by another name. So everybody who asks for a mother by her
     * number finds her, however the wood of others was named.
     */
    private static List<String> mothers(Map<Place, long[]> sums) {
        Map<Integer, Map<Integer, Long>> known = new LinkedHashMap<>();
        sums.forEach((place, sum) -> known.computeIfAbsent(place.mother(), mother -> new TreeMap<>())
                .merge(place.cultivar(), sum[1], Long::sum));
        Map<Integer, Integer> main = new LinkedHashMap<>();
        known.forEach((mother, cultivars) -> main.put(
                mother,
                cultivars.entrySet().stream()
                        .max(Map.Entry.comparingByValue())
                        .orElseThrow()
                        .getKey()));
        return sums.keySet().stream()
                .map(place -> main.get(place.mother()) == place.cultivar()
                        ? Integer.toString(place.mother())
                        : place.mother() + "/" + place.cultivar())
                .toList();
    }

    /**
     * Fit how what had taken established, of what is known: with cultivars, and seasons shared by all.
     */
    public MixedFit establishment(Method method) {
        Map<Place, long[]> sums = new LinkedHashMap<>();
        for (int row : rows(method)) {
            int account = fates.account(row);
            if (account != row || fates.isBlurred(account)) {
                continue;
            }
            long yes = fates.count(account, Established.YES);
            long known = yes + fates.count(account, Established.NO);
            if (known > 0) {
                add(sums, new Place(samples.cultivar(row), ALL, samples.season(row), ALL), yes, known);
            }
        }
        List<Place> places = List.copyOf(sums.keySet());
        return MixedModel.laplace()
                .fit(data(sums)
                        .withGroups(CULTIVAR, words(places, Place::cultivar))
                        .withGroups(SEASON, words(places, Place::season)));
    }

    private static void add(Map<Place, long[]> sums, Place place, long yes, long known) {
        long[] sum = sums.computeIfAbsent(place, one -> new long[2]);
        sum[0] += yes;
        sum[1] += known;
    }

    private static ModelData data(Map<Place, long[]> sums) {
        return ModelData.of(
                sums.values().stream().mapToLong(sum -> sum[0]).toArray(),
                sums.values().stream().mapToLong(sum -> sum[1]).toArray());
    }

    private static List<String> words(List<Place> places, java.util.function.ToIntFunction<Place> what) {
        return places.stream()
                .map(place -> Integer.toString(what.applyAsInt(place)))
                .toList();
    }

    // ---- what became of them ----

    /**
     * Trees of one cohort that came to one end.
     *
     * @param row where they were set
     * @param unit under whose tag they stand or stood
     * @param size their size class as its place in {@link Lives#sizes()}, after all of them where they have none
     * @param count how many; below 0 for those that came back
     * @param day on which they became fit for sale or left; of what grows on, the day of the snapshot; in days since 1970
     * @param end what became of them
     * @param established whether they had established
     */
    public record Ended(int row, int unit, int size, int count, int day, End end, boolean established) {}

    /** What became of trees. */
    public enum End {
        /** Graded in a size class, or sold. */
        SALEABLE,
        /** Lost before, or culled for quality. */
        NEVER_SALEABLE,
        /** Gone otherwise, in good health. */
        LEFT,
        /** Growing on. */
        GROWING_ON
    }

    /** Return what became of all trees whose cohort is known. */
    public List<Ended> ended() {
        List<Ended> all = new ArrayList<>();
        for (int event = 0; event < fates.events(); event++) {
            int row = fates.eventRow(event);
            if (row >= 0 && !fates.isBlurred(fates.account(row))) {
                all.add(new Ended(
                        row,
                        fates.eventUnit(event),
                        fates.eventSize(event),
                        fates.eventCount(event),
                        fates.eventEnd(event),
                        end(fates.eventSale(event)),
                        fates.eventHow(event) == Established.YES));
            }
        }
        return all;
    }

    private static End end(Saleable how) {
        return switch (how) {
            case YES -> End.SALEABLE;
            case NO -> End.NEVER_SALEABLE;
            case CENSORED -> End.LEFT;
            case GROWING_ON -> End.GROWING_ON;
        };
    }

    /** Return how an ended tree was raised. */
    public Method method(int row) {
        return cohorts.method(row);
    }

    // ---- what it costs ----

    /**
     * Return what raising by a method costs, all of it by one tariff: setting in sum, and growing on by what became of the
     * trees, on average over some of them that are looked at.
     */
    public SideCost costs(BookView view, Tariff tariff, Method method) {
        Costs costs = new Costs(
                view,
                samples,
                fates,
                new Treated(snapshot),
                new Stand(samples),
                tariff,
                account -> cohorts.method(account) == method ? 0 : -1);
        int[] rows = rows(method);
        int yes = total(rows, account -> fates.count(account, Saleable.YES));
        int open = total(
                rows, account -> fates.count(account, Saleable.CENSORED) + fates.count(account, Saleable.GROWING_ON));
        int set = IntStream.of(rows).map(samples::set).sum();
        return costs.of(0, rows, new Raised(yes, Math.max(0, set - yes - open), 0, 0, open, 0, 0));
    }

    private int total(int[] rows, IntFunction<Integer> count) {
        IntPredicate own = row -> fates.account(row) == row && !fates.isBlurred(row);
        return IntStream.of(rows).filter(own).map(count::apply).sum();
    }
}
