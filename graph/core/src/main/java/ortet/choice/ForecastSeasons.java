package ortet.choice;

import java.util.Arrays;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import ortet.book.UnitFacts.Method;
import ortet.value.Defect;

/**
 * What the seasons of one stage have shown of their luck, by method, and draws of what it may be: two normal scores a season, one
 * for whether units come through and one for when.
 *
 * <p>What has been seen is a score and an information of every cluster ({@link ForecastSeen}), the cluster's own luck taken out.
 * A kind tells of seasons only by how they differ from one another: its own level is taken out as well, so that a kind with one
 * season tells nothing. Beforehand a season's luck is normal with variance s, and goes with that of the next by φ. For s and φ
 * every pair of a grid is weighed by how likely it makes what was seen, times a half-normal distribution of √s with the scale
 * {@value #SCALE}: so few seasons leave them nearly as open as nobody's guess. A draw takes one of these pairs, and then the luck
 * of all seasons at once given what was seen, the seasons that nobody has seen yet among them.
 *
 * @see "Gelman 2006, Bayesian Analysis 1:515, for the half-normal; Harville 1977, JASA 72:320, for taking levels out"
 */
final class ForecastSeasons {
    private static final double SCALE = 0.25;
    private static final double STEP = 0.04;
    private static final int STEPS = 17;
    private static final double NEARLY_NONE = 1e-6;
    private static final double[] FOLLOWS = {0, 0.6, 0.9};
    private static final double[] BEFOREHAND = {0.6, 0.2, 0.2};

    private final int years;
    private final DMatrixRMaj[] information;
    private final double[][] scores;
    private final Grid fate;
    private final Grid timing;

    /** What a variance and its following may be, and with what weight. */
    private static final class Grid {
        private final double[] weights = new double[STEPS * FOLLOWS.length];
        private double mean;

        double variance(int at) {
            double root = STEP * (at % STEPS);
            return root * root;
        }

        double follows(int at) {
            return FOLLOWS[at / STEPS];
        }

        void weigh(double[] evidence, double most) {
            double top = Arrays.stream(evidence).max().orElse(0);
            double sum = 0;
            for (int at = 0; at < weights.length; at++) {
                double root = STEP * (at % STEPS);
                weights[at] = variance(at) > most
                        ? 0
                        : BEFOREHAND[at / STEPS] * Math.exp(evidence[at] - top - root * root / (2 * SCALE * SCALE));
                sum += weights[at];
            }
            if (!(sum > 0)) {
                throw new Defect("what clusters have shown tells of no luck of seasons");
            }
            for (int at = 0; at < weights.length; at++) {
                weights[at] /= sum;
                mean += weights[at] * variance(at);
            }
        }

        int likeliest() {
            int best = 0;
            for (int at = 1; at < weights.length; at++) {
                best = weights[at] > weights[best] ? at : best;
            }
            return best;
        }

        int draw(ForecastDice dice) {
            double u = dice.uniform();
            int at = 0;
            while (at < weights.length - 1 && u >= weights[at]) {
                u -= weights[at];
                at++;
            }
            return at;
        }
    }

    /** The luck of all seasons in one simulation. */
    record Drawn(double fateVariance, double timingVariance, double[][] fate, double[][] timing) {}

    /** What units of a kind tell of a season: linear terms and information of fate and timing. */
    record Told(int kind, int method, int season, double[] terms) {}

    ForecastSeasons(Collection<Told> clusters, int years, double ofFate, double ofTiming) {
        this.years = years;
        this.information = new DMatrixRMaj[Method.values().length];
        this.scores = new double[information.length][];
        Map<Integer, Map<Integer, double[]>> kinds = new TreeMap<>();
        Map<Integer, Integer> methods = new TreeMap<>();
        for (Told cluster : clusters) {
            double[] without = cluster.terms();
            double[] sums = kinds.computeIfAbsent(cluster.kind(), one -> new TreeMap<>())
                    .computeIfAbsent(cluster.season(), one -> new double[without.length]);
            for (int at = 0; at < sums.length; at++) {
                sums[at] += without[at];
            }
            methods.put(cluster.kind(), cluster.method());
        }
        kinds.forEach((kind, seasons) -> add(methods.get(kind), seasons));
        this.fate = grid(0, 1 - ofFate);
        this.timing = grid(years, 1 - ofTiming);
    }

    /** Add what a kind tells of seasons, its own level taken out. */
    private void add(int method, Map<Integer, double[]> seasons) {
        if (information[method] == null) {
            information[method] = new DMatrixRMaj(2 * years, 2 * years);
            scores[method] = new double[2 * years];
        }
        double[] all = new double[5];
        seasons.values().forEach(one -> {
            for (int at = 0; at < all.length; at++) {
                all[at] += one[at];
            }
        });
        double ff = all[2] + NEARLY_NONE;
        double tt = all[4] + NEARLY_NONE;
        double ft = all[3];
        double det = ff * tt - ft * ft;
        double[] inverse = {tt / det, -ft / det, ff / det};
        DMatrixRMaj into = information[method];
        double[] score = scores[method];
        seasons.forEach((season, one) -> {
            double[] left = product(one, inverse);
            score[season] += one[0] - left[0] * all[0] - left[1] * all[1];
            score[years + season] += one[1] - left[2] * all[0] - left[3] * all[1];
            into.add(season, season, one[2]);
            into.add(season, years + season, one[3]);
            into.add(years + season, season, one[3]);
            into.add(years + season, years + season, one[4]);
            seasons.forEach((other, two) -> {
                into.add(season, other, -left[0] * two[2] - left[1] * two[3]);
                into.add(season, years + other, -left[0] * two[3] - left[1] * two[4]);
                into.add(years + season, other, -left[2] * two[2] - left[3] * two[3]);
                into.add(years + season, years + other, -left[2] * two[3] - left[3] * two[4]);
            });
        });
    }

    private static double[] product(double[] seen, double[] inverse) {
        return new double[] {
            seen[2] * inverse[0] + seen[3] * inverse[1],
            seen[2] * inverse[1] + seen[3] * inverse[2],
            seen[3] * inverse[0] + seen[4] * inverse[1],
            seen[3] * inverse[1] + seen[4] * inverse[2]
        };
    }

    private Grid grid(int from, double most) {
        double[] evidence = new double[STEPS * FOLLOWS.length];
        Grid grid = new Grid();
        for (int at = 0; at < evidence.length; at++) {
            double variance = grid.variance(at);
            double follows = grid.follows(at);
            for (int method = 0; variance > 0 && variance <= most && method < information.length; method++) {
                if (information[method] != null) {
                    evidence[at] += evidence(method, from, variance, follows);
                }
            }
        }
        grid.weigh(evidence, most);
        return grid;
    }

    /** Return the logarithm of how likely what was seen is beside what it would be if seasons were all alike. */
    private double evidence(int method, int from, double variance, double follows) {
        DMatrixRMaj precision = new DMatrixRMaj(years, years);
        for (int row = 0; row < years; row++) {
            for (int column = 0; column < years; column++) {
                precision.set(row, column, information[method].get(from + row, from + column));
            }
        }
        expect(precision, 0, variance, follows);
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = factor(precision);
        double[] lower = cholesky.getT(null).data;
        double[] solved = Arrays.copyOfRange(scores[method], from, from + years);
        forward(lower, solved);
        double sum = 0;
        for (int at = 0; at < years; at++) {
            sum += solved[at] * solved[at] / 2 - Math.log(lower[at * years + at]);
        }
        return sum - (years * Math.log(variance) + (years - 1) * Math.log(1 - follows * follows)) / 2;
    }

    /** Add the precision of seasons of which nothing was seen: each goes with the next. */
    private void expect(DMatrixRMaj precision, int from, double variance, double follows) {
        double unit = 1 / (Math.max(NEARLY_NONE, variance) * (1 - follows * follows));
        for (int at = 0; at < years; at++) {
            boolean between = at > 0 && at < years - 1;
            precision.add(from + at, from + at, unit * (between ? 1 + follows * follows : 1));
            if (at > 0) {
                precision.add(from + at, from + at - 1, -unit * follows);
                precision.add(from + at - 1, from + at, -unit * follows);
            }
        }
    }

    private static CholeskyDecomposition_F64<DMatrixRMaj> factor(DMatrixRMaj precision) {
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(precision.numRows, true);
        if (!cholesky.decompose(precision)) {
            throw new Defect("what seasons have shown is no precision");
        }
        return cholesky;
    }

    private static void forward(double[] lower, double[] b) {
        TriangularSolver_DDRM.solveL(lower, b, b.length);
    }

    private static void backward(double[] lower, double[] b) {
        TriangularSolver_DDRM.solveTranL(lower, b, b.length);
    }

    /** Return the likeliest luck of all seasons, by method: of fates, and after them of times. */
    double[][] likeliest() {
        double[][] found = new double[information.length][2 * years];
        int ofFate = fate.likeliest();
        int ofTiming = timing.likeliest();
        for (int method = 0; method < information.length; method++) {
            if (information[method] != null) {
                double[] lower = lower(method, ofFate, ofTiming);
                double[] luck = scores[method].clone();
                forward(lower, luck);
                backward(lower, luck);
                found[method] = luck;
            }
        }
        return found;
    }

    private double[] lower(int method, int ofFate, int ofTiming) {
        DMatrixRMaj precision =
                information[method] == null ? new DMatrixRMaj(2 * years, 2 * years) : information[method].copy();
        expect(precision, 0, fate.variance(ofFate), fate.follows(ofFate));
        expect(precision, years, timing.variance(ofTiming), timing.follows(ofTiming));
        return factor(precision).getT(null).data;
    }

    double fateVariance() {
        return fate.mean;
    }

    double timingVariance() {
        return timing.mean;
    }

    /** Draw what the luck of all seasons may be, by method and season. */
    Drawn draw(ForecastDice dice) {
        int ofFate = fate.draw(dice);
        int ofTiming = timing.draw(dice);
        double[][] fates = new double[information.length][];
        double[][] times = new double[information.length][];
        for (int method = 0; method < information.length; method++) {
            double[] lower = lower(method, ofFate, ofTiming);
            double[] luck = information[method] == null ? new double[2 * years] : scores[method].clone();
            forward(lower, luck);
            for (int at = 0; at < luck.length; at++) {
                luck[at] += dice.normal();
            }
            backward(lower, luck);
            fates[method] = Arrays.copyOfRange(luck, 0, years);
            times[method] = Arrays.copyOfRange(luck, years, 2 * years);
        }
        return new Drawn(fate.variance(ofFate), timing.variance(ofTiming), fates, times);
    }
}
