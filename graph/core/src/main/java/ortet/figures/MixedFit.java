package ortet.figures;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import ortet.figures.Likelihood.Point;
import ortet.value.Defect;
import ortet.value.Refused;

/**
 * What a {@link MixedModel} says about data. Immutable; safe to share between threads.
 *
 * <p>{@link #convergence} says how the fit ended, and {@link #remarks} everything a reader must know besides the figures.
 */
public final class MixedFit {
    /**
     * A fixed effect.
     *
     * @param name of its column
     * @param estimate on the scale of log odds; absent where the column was left out or nothing could be fitted
     * @param isPenalized whether it is held by the weak penalty
     */
    public record Fixed(String name, Optional<Estimate> estimate, boolean isPenalized) {}

    /**
     * How much the groups of a grouping differ.
     *
     * @param grouping its name
     * @param groups how many there are
     * @param sd the standard deviation of their intercepts, on the scale of log odds; absent where it cannot be told
     * @param standardError of that standard deviation; absent besides where it is estimated as 0
     */
    public record Deviation(String grouping, int groups, Optional<Double> sd, Optional<Double> standardError) {}

    private final ModelData data;
    private final Convergence convergence;
    private final List<String> remarks;
    private final List<Fixed> fixed;
    private final List<Deviation> deviations;
    private final Optional<Double> logLikelihood;
    private final Optional<Known> known;

    /** What is known besides the figures themselves. */
    private record Known(
            List<ModelData.Column> columns,
            double[][] back,
            List<ModelData.Groups> kept,
            ModelRows rows,
            Posterior posterior) {}

    private MixedFit(
            ModelData data,
            Convergence convergence,
            List<String> remarks,
            List<Fixed> fixed,
            List<Deviation> deviations,
            Optional<Double> logLikelihood,
            Optional<Known> known) {
        this.data = data;
        this.convergence = convergence;
        this.remarks = List.copyOf(remarks);
        this.fixed = List.copyOf(fixed);
        this.deviations = List.copyOf(deviations);
        this.logLikelihood = logLikelihood;
        this.known = known;
    }

    /** Return a fit without estimates. */
    static MixedFit without(ModelData data, Convergence convergence, List<String> remarks) {
        return new MixedFit(
                data,
                convergence,
                remarks,
                data.columns.stream()
                        .map(column -> new Fixed(column.name(), Optional.empty(), false))
                        .toList(),
                data.groupings.stream()
                        .map(groups -> new Deviation(
                                groups.name(), groups.labels().size(), Optional.empty(), Optional.empty()))
                        .toList(),
                Optional.empty(),
                Optional.empty());
    }

    MixedFit(
            ModelData data,
            Convergence convergence,
            List<String> remarks,
            List<ModelData.Column> columns,
            double[][] back,
            double[] penalties,
            List<ModelData.Groups> kept,
            Point top,
            double[][] covariance,
            boolean[] frozen,
            ModelRows rows,
            double logLikelihood,
            Posterior posterior) {
        this(
                data,
                convergence,
                remarks,
                fixed(data, columns, back, penalties, top, covariance),
                deviations(data, kept, top, covariance, frozen, rows),
                Optional.of(logLikelihood),
                Optional.of(new Known(columns, back, kept, rows, posterior)));
    }

    private static List<Fixed> fixed(
            ModelData data,
            List<ModelData.Column> columns,
            double[][] back,
            double[] penalties,
            Point top,
            double[][] covariance) {
        List<Fixed> fixed = new ArrayList<>();
        for (ModelData.Column column : data.columns) {
            int at = columns.indexOf(column);
            if (at < 0) {
                fixed.add(new Fixed(column.name(), Optional.empty(), false));
                continue;
            }
            double value = 0;
            double variance = 0;
            for (int i = 0; i < columns.size(); i++) {
                value += back[at][i] * top.theta()[i];
                for (int j = 0; j < columns.size(); j++) {
                    variance += back[at][i] * covariance[i][j] * back[at][j];
                }
            }
            fixed.add(
                    new Fixed(column.name(), Optional.of(new Estimate(value, Math.sqrt(variance))), penalties[at] > 0));
        }
        return fixed;
    }

    private static List<Deviation> deviations(
            ModelData data,
            List<ModelData.Groups> kept,
            Point top,
            double[][] covariance,
            boolean[] frozen,
            ModelRows rows) {
        List<Deviation> deviations = new ArrayList<>();
        for (ModelData.Groups groups : data.groupings) {
            int k = kept.indexOf(groups);
            Optional<Double> sd = Optional.empty();
            Optional<Double> standardError = Optional.empty();
            if (k >= 0) {
                int parameter = rows.fixed() + k;
                sd = Optional.of(top.theta()[parameter]);
                if (!frozen[parameter]) {
                    int at = 0;
                    for (int i = 0; i < parameter; i++) {
                        at += frozen[i] ? 0 : 1;
                    }
                    standardError = Optional.of(Math.sqrt(covariance[at][at]));
                }
            }
            deviations.add(new Deviation(groups.name(), groups.labels().size(), sd, standardError));
        }
        return deviations;
    }

    /** Return how the fit ended. */
    public Convergence convergence() {
        return convergence;
    }

    /** Return what a reader must know besides the figures, in plain words; mostly nothing. */
    public List<String> remarks() {
        return remarks;
    }

    /** Return the fixed effects, in the order of the columns. */
    public List<Fixed> fixed() {
        return fixed;
    }

    /** Return the standard deviations, in the order of the groupings. */
    public List<Deviation> deviations() {
        return deviations;
    }

    /** Return the logarithm of the likelihood, binomial coefficients included; absent where there are no estimates. */
    public Optional<Double> logLikelihood() {
        return logLikelihood;
    }

    /** Return how many rows and trials the fit rests on. */
    public Count count() {
        return new Count(
                Math.round(Arrays.stream(data.successes).sum()),
                Math.round(Arrays.stream(data.trials).sum()));
    }

    /**
     * Return the random intercepts of a grouping, in the order in which its groups first occur; those of a grouping that was
     * left out are 0. Empty where there are no estimates.
     */
    public List<GroupEffect> effects(String grouping) {
        ModelData.Groups groups = groups(grouping);
        if (known.isEmpty()) {
            return List.of();
        }
        Count[] counts = counts(groups);
        Posterior.Part about = known.get().posterior.about();
        List<GroupEffect> effects = new ArrayList<>();
        int k = known.get().kept.indexOf(groups);
        for (int group = 0; group < counts.length; group++) {
            String label = groups.labels().get(group);
            if (k < 0) {
                effects.add(new GroupEffect(label, counts[group], 0, 0, 0));
                continue;
            }
            int[] node = {known.get().rows.firsts()[k] + group};
            Posterior.Normal full = about.of(new double[0], node);
            effects.add(new GroupEffect(
                    label,
                    counts[group],
                    about.modes[node[0]],
                    Math.sqrt(Math.max(0, about.conditionalVariance(node))),
                    full.sd()));
        }
        return effects;
    }

    /** Return the mean of each fixed column over all trials, by its name: what rates are told for unless asked otherwise. */
    public Map<String, Double> averages() {
        Map<String, Double> averages = new LinkedHashMap<>();
        double trials = Math.max(1, Arrays.stream(data.trials).sum());
        for (ModelData.Column column : data.columns) {
            double sum = 0;
            for (int row = 0; row < data.rows(); row++) {
                sum += data.trials[row] * column.values()[row];
            }
            averages.put(column.name(), sum / trials);
        }
        return averages;
    }

    /**
     * Return the rate of every group of a grouping, at the average of the fixed columns.
     *
     * @see #rates(String, Map, double)
     */
    public List<GroupRate> rates(String grouping, double confidence) {
        return rates(grouping, averages(), confidence);
    }

    /**
     * Return the rate of every group of a grouping, in the order in which its groups first occur: its own intercept, with
     * those of the groups around it where the grouping is nested, and an average group of every other grouping.
     *
     * <p>The intervals include the uncertainty of the fixed effects and of the standard deviations. Of all groups together
     * they hold the true rate with the given probability; of groups picked for their rate they do so less often.
     *
     * @param columns the values of the fixed columns, by name; those not named are at their average
     * @param confidence above 0 and below 1, such as 0.9
     * @return empty where there are no estimates
     */
    public List<GroupRate> rates(String grouping, Map<String, Double> columns, double confidence) {
        Wilson.quantile(confidence);
        ModelData.Groups groups = groups(grouping);
        if (known.isEmpty()) {
            return List.of();
        }
        double[] reference = reference(columns);
        Count[] counts = counts(groups);
        int[][] paths = paths(groups);
        Posterior posterior = known.get().posterior;
        List<GroupRate> rates = new ArrayList<>();
        double tail = (1 - confidence) / 2;
        for (int group = 0; group < counts.length; group++) {
            List<Posterior.Normal> normals = posterior.of(reference, paths[group]);
            double lower = logistic(posterior.quantile(normals, tail));
            double middle = logistic(posterior.quantile(normals, 0.5));
            double upper = logistic(posterior.quantile(normals, 1 - tail));
            rates.add(new GroupRate(
                    groups.labels().get(group),
                    counts[group],
                    middle,
                    new Interval(
                            Math.min(lower, middle),
                            Math.max(upper, middle),
                            confidence,
                            Interval.Method.MIXED_MODEL)));
        }
        return rates;
    }

    /**
     * Return how likely each group is among the best, by their rates as {@link #rates} has them.
     *
     * @param best how many are the best, at least 1
     * @param draws how many times to draw all groups together, at least 1
     * @param seed the same seed draws the same
     * @return absent where there are no estimates
     */
    public Optional<Ranking> ranking(String grouping, int best, int draws, long seed) {
        ModelData.Groups groups = groups(grouping);
        if (best < 1 || draws < 1) {
            throw Refused.because(
                    "bad-ranking", "expected at least 1 group and 1 draw, found " + best + " and " + draws);
        }
        return known.map(model -> Ranking.of(
                grouping, groups.labels(), counts(groups), model.posterior, paths(groups), best, draws, seed));
    }

    /**
     * Return how likely each of some groups is among the best of them.
     *
     * @param among the labels of these groups; others are in no draw
     * @see #ranking(String, int, int, long)
     */
    public Optional<Ranking> ranking(String grouping, Set<String> among, int best, int draws, long seed) {
        ModelData.Groups groups = groups(grouping);
        if (best < 1 || draws < 1) {
            throw Refused.because(
                    "bad-ranking", "expected at least 1 group and 1 draw, found " + best + " and " + draws);
        }
        return known.map(model -> {
            int[] kept = IntStream.range(0, groups.labels().size())
                    .filter(group -> among.contains(groups.labels().get(group)))
                    .toArray();
            Count[] counts = counts(groups);
            int[][] paths = paths(groups);
            return Ranking.of(
                    grouping,
                    IntStream.of(kept).mapToObj(groups.labels()::get).toList(),
                    IntStream.of(kept).mapToObj(group -> counts[group]).toArray(Count[]::new),
                    model.posterior,
                    IntStream.of(kept).mapToObj(group -> paths[group]).toArray(int[][]::new),
                    best,
                    draws,
                    seed);
        });
    }

    private ModelData.Groups groups(String grouping) {
        return data.grouping(grouping);
    }

    /** Return the intercepts that make up each group: its own and those around it, as far as they were fitted. */
    private int[][] paths(ModelData.Groups groups) {
        List<ModelData.Groups> chain = new ArrayList<>();
        Optional<ModelData.Groups> next = Optional.of(groups);
        while (next.isPresent()) {
            chain.add(next.get());
            next = next.get().within().map(data::grouping);
        }
        int[] rowOf = new int[groups.labels().size()];
        for (int row = data.rows() - 1; row >= 0; row--) {
            rowOf[groups.of()[row]] = row;
        }
        int[][] paths = new int[rowOf.length][];
        Known model = known.orElseThrow();
        for (int group = 0; group < paths.length; group++) {
            int row = rowOf[group];
            paths[group] = chain.stream()
                    .filter(model.kept::contains)
                    .mapToInt(around -> model.rows.firsts()[model.kept.indexOf(around)] + around.of()[row])
                    .toArray();
        }
        return paths;
    }

    private double[] reference(Map<String, Double> columns) {
        Map<String, Double> values = new LinkedHashMap<>(averages());
        columns.forEach((name, value) -> {
            if (values.put(name, value) == null) {
                throw new Defect("no column " + name);
            }
        });
        Known model = known.orElseThrow();
        int count = model.columns.size();
        double[] reference = new double[count];
        for (int j = 0; j < count; j++) {
            for (int i = 0; i < count; i++) {
                reference[j] +=
                        model.back[i][j] * values.get(model.columns.get(i).name());
            }
        }
        return reference;
    }

    private Count[] counts(ModelData.Groups groups) {
        double[] taken = new double[groups.labels().size()];
        double[] trials = new double[taken.length];
        for (int row = 0; row < data.rows(); row++) {
            taken[groups.of()[row]] += data.successes[row];
            trials[groups.of()[row]] += data.trials[row];
        }
        Count[] counts = new Count[taken.length];
        Arrays.setAll(counts, group -> new Count(Math.round(taken[group]), Math.round(trials[group])));
        return counts;
    }

    private static double logistic(double logit) {
        return 1 / (1 + Math.exp(-logit));
    }
}
