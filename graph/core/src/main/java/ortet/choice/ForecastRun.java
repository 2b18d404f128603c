package ortet.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Draws what may become of every unit that is pending or growing, many times (docs/methods/forecast.md).
 *
 * <p>Units of one kind, age and cluster are counted together and drawn at one go. Each simulation has a generator of its own,
 * so that the same seed gives the same answer however many processors share the work. O(simulations × (kinds × ages + units))
 * time at worst.
 */
final class ForecastRun {
    private static final double SMALL = 1e-6;
    private static final int WEEK = 7;
    private static final int YEAR = 366;

    private final ForecastPast past;
    private final ForecastModel[] models;
    private final ForecastHorizon horizon;
    private final Map<Long, Integer> places = new HashMap<>();
    private final ForecastGround ground;
    private final long seed;
    private final int[][] became;
    private final int[][] standing;

    /**
     * Prepare it.
     *
     * @param months how many, the first what is left of its own
     * @param last the last day that counts, if it is before the last month ends
     * @param asked whether a cultivar is to be told of
     */
    ForecastRun(
            ForecastPast past,
            int months,
            int last,
            int simulations,
            long seed,
            ForecastSales sales,
            IntPredicate asked) {
        this.past = past;
        // clocks run to the end of the last round of grading
        int longest = ForecastHorizon.lastDay(past.asOf(), months, last) + YEAR;
        this.models = Arrays.stream(ForecastStage.values())
                .map(stage -> new ForecastModel(past, stage, longest))
                .toArray(ForecastModel[]::new);
        ForecastRounds rounds = model(ForecastStage.GRADING).clock(0).rounds();
        this.horizon = new ForecastHorizon(past.asOf(), months, last, rounds);
        ForecastSizes sizes = new ForecastSizes(past);
        ForecastTogether together = ForecastTogether.of(past, rounds, false);
        ForecastTogether soldTogether = ForecastTogether.of(past, rounds, true);
        List<ForecastBatch> pending = batches(ForecastStage.TAKING, asked);
        List<ForecastBatch> growing = batches(ForecastStage.GRADING, asked);
        // what is to take is to grow on as well
        Set<Integer> toTake = kinds(pending);
        Set<Integer> toGrow = new TreeSet<>(toTake);
        toGrow.addAll(kinds(growing));
        this.ground = new ForecastGround(
                past,
                sales,
                horizon,
                sizes,
                new ForecastLayout(told(toGrow, asked), past.cultivars().size(), sizes.classes(), months),
                together,
                List.of(
                        given(ForecastStage.TAKING, toTake, pending, 0),
                        given(ForecastStage.GRADING, toGrow, growing, together.cluster()),
                        given(ForecastStage.SELLING, toGrow, growing, soldTogether.cluster())));
        this.seed = seed;
        this.became = new int[simulations][];
        this.standing = new int[simulations][];
    }

    // ---- before ----

    /** Count together what is in a stage, by kind and week of beginning. */
    private List<ForecastBatch> batches(ForecastStage stage, IntPredicate asked) {
        Map<List<Integer>, Map<Long, Integer>> byWeek = new LinkedHashMap<>();
        Map<List<Integer>, double[]> ages = new HashMap<>();
        past.episodes().stream()
                .filter(one -> one.stage() == stage
                        && one.how() == ForecastEnd.STILL
                        && asked.test(past.kinds().get(one.kind()).cultivar()))
                .sorted(Comparator.comparingInt(ForecastEpisode::kind).thenComparingInt(ForecastEpisode::start))
                .forEach(one -> {
                    List<Integer> key = List.of(one.kind(), Math.floorDiv(one.start(), WEEK));
                    double[] sums = ages.computeIfAbsent(key, any -> new double[models.length + 1]);
                    for (int at = 0; at < models.length; at++) {
                        sums[at] += one.count() * models[at].age(one.kind(), one.start(), past.asOf());
                    }
                    sums[models.length] += one.count();
                    byWeek.computeIfAbsent(key, any -> new TreeMap<>())
                            .merge(model(stage).key(one), one.count(), Integer::sum);
                });
        List<ForecastBatch> found = new ArrayList<>();
        byWeek.forEach((key, clusters) -> {
            double[] sums = ages.get(key);
            double[] age = new double[models.length];
            for (int of = 0; of < age.length; of++) {
                age[of] = sums[of] / sums[models.length];
            }
            int[] counts = clusters.values().stream().mapToInt(count -> count).toArray();
            found.add(new ForecastBatch(
                    key.get(0),
                    age,
                    counts,
                    clusters.keySet().stream().mapToInt(ForecastModel::seasonOf).toArray(),
                    clusters.keySet().stream()
                            .map(cluster ->
                                    stage == ForecastStage.TAKING ? alongWith(cluster) : new int[] {place(cluster)})
                            .toArray(int[][]::new),
                    Arrays.stream(counts).sum()));
        });
        return found;
    }

    private int place(long key) {
        return places.computeIfAbsent(key, any -> places.size());
    }

    /** Return the place of a cluster that is pending, and those that it will have in every year in which it may take. */
    private int[] alongWith(long key) {
        int[] found = new int[horizon.years() + 1];
        found[0] = place(key);
        int first = model(ForecastStage.GRADING).season(horizon.year(0));
        for (int at = 1; at < found.length; at++) {
            found[at] = place(ForecastModel.key(ForecastModel.clusterOf(key), first + at - 1));
        }
        return found;
    }

    private static Set<Integer> kinds(List<ForecastBatch> batches) {
        Set<Integer> kinds = new TreeSet<>();
        batches.forEach(batch -> kinds.add(batch.kind()));
        return kinds;
    }

    /** Return the cultivars of which is told: of what is in a stage, or stands. */
    private Set<Integer> told(Set<Integer> kinds, IntPredicate asked) {
        Set<Integer> found = new TreeSet<>();
        kinds.forEach(kind -> found.add(past.kinds().get(kind).cultivar()));
        past.stock().stream().map(ForecastStock::cultivar).filter(asked::test).forEach(found::add);
        return found;
    }

    private ForecastGiven given(ForecastStage stage, Set<Integer> kinds, List<ForecastBatch> batches, double inOneGo) {
        ForecastModel model = model(stage);
        ForecastLikely[] clusters = new ForecastLikely[places.size()];
        places.forEach((key, place) -> clusters[place] = model.likely(key));
        Map<Integer, double[]> standsOn = new HashMap<>();
        kinds.forEach(kind -> standsOn.put(kind, model.kinds().standsOn(kind)));
        return new ForecastGiven(model, kinds, batches, clusters, standsOn, inOneGo);
    }

    // ---- drawing ----

    /** Draw all simulations. */
    ForecastRun run() {
        IntStream.range(0, became.length).parallel().forEach(simulation -> {
            ForecastDrawing drawing = new ForecastDrawing(ground, new ForecastDice(seed, simulation)).draw();
            became[simulation] = drawing.became();
            standing[simulation] = drawing.standing();
        });
        return this;
    }

    // ---- answers ----

    List<Integer> cultivars() {
        return ground.layout().cultivars();
    }

    ForecastModel model(ForecastStage stage) {
        return models[stage.ordinal()];
    }

    /** Return what share of pairs of one cluster that come through in one round do so in one month, beyond what all do. */
    double inOneGo(ForecastStage stage) {
        return ground.of(stage).inOneGo();
    }

    Set<Integer> kinds(ForecastStage stage) {
        return ground.of(stage).kinds();
    }

    int waiting(ForecastStage stage, int kind) {
        return ground.of(stage).batches().stream()
                .filter(batch -> batch.kind() == kind)
                .mapToInt(ForecastBatch::units)
                .sum();
    }

    /** Return how many units are older than any of their like that came through one of the stages: nothing comes of them here. */
    int tooOld(ForecastStage... stages) {
        Map<ForecastStage, ForecastCurve[]> told = new EnumMap<>(ForecastStage.class);
        for (ForecastStage stage : stages) {
            told.put(stage, model(stage).kinds().told(kinds(stage)));
        }
        return ground.of(stages[0]).batches().stream()
                .filter(batch -> told.entrySet().stream()
                        .allMatch(one -> one.getValue()[batch.kind()].chance(batch.ageBy(one.getKey())) < SMALL))
                .mapToInt(ForecastBatch::units)
                .sum();
    }

    /** Return how many became saleable in a month in each simulation, over the cells that are wanted. */
    int[] became(IntPredicate cultivar, IntPredicate size, int from, int to) {
        return summed(became, cultivar, size, from, to);
    }

    /** Return how many stood saleable at the end of a month in each simulation, over the cells that are wanted. */
    int[] standing(IntPredicate cultivar, IntPredicate size, int month) {
        return summed(standing, cultivar, size, month, month + 1);
    }

    private int[] summed(int[][] counts, IntPredicate cultivar, IntPredicate size, int from, int to) {
        ForecastLayout layout = ground.layout();
        int[] sums = new int[counts.length];
        for (int slot = 0; slot < layout.slots(); slot++) {
            boolean isWanted = cultivar.test(layout.cultivars().get(slot));
            for (int of = 0; isWanted && of < ground.sizes().classes(); of++) {
                if (size.test(of)) {
                    int cell = layout.cell(slot, of);
                    for (int simulation = 0; simulation < counts.length; simulation++) {
                        for (int month = from; month < to; month++) {
                            sums[simulation] += counts[simulation][cell + month];
                        }
                    }
                }
            }
        }
        return sums;
    }
}
