package ortet.figures;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.MatrixFeatures_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import ortet.figures.Likelihood.Point;

/**
 * Climbs a log-likelihood of few parameters whose every evaluation is dear: first by quasi-Newton steps (Broyden, Fletcher,
 * Goldfarb, Shanno) from a given guess of the covariance, then by Newton steps whose second derivatives are differences of
 * the exact gradient. These second derivatives are wanted for the standard errors anyway, which is why no general optimiser
 * is used.
 *
 * @see "Nocedal & Wright 2006, Numerical Optimization, 2nd edition, chapters 3 and 6"
 */
final class Ascent {
    private static final int MOST_STEPS = 200;
    private static final int MOST_NEWTON = 30;
    /** With more intercepts than this, an evaluation is dear and the likelihood close to quadratic. */
    private static final int LARGE = 2000;

    private final Likelihood likelihood;
    private final int[] free;

    /**
     * Where the climb ended.
     *
     * @param point the highest place
     * @param covariance the inverse of the information there, by free parameter; absent where it is none
     * @param isTop whether the gradient vanishes there
     */
    record Summit(Point point, Optional<double[][]> covariance, boolean isTop) {}

    /**
     * Prepare.
     *
     * @param frozen which parameters stay as they are
     */
    Ascent(Likelihood likelihood, boolean[] frozen) {
        this.likelihood = likelihood;
        free = IntStream.range(0, frozen.length)
                .filter(parameter -> !frozen[parameter])
                .toArray();
    }

    int[] free() {
        return free;
    }

    /**
     * Climb.
     *
     * @param begin a place where the likelihood is known
     * @param guess of the covariance, by free parameter
     */
    Summit climb(Point begin, double[][] guess) {
        Point here = begin;
        if (free.length == 0) {
            return new Summit(here, Optional.of(new double[0][0]), true);
        }
        double[][] inverse = new double[free.length][];
        for (int i = 0; i < free.length; i++) {
            inverse[i] = guess[i].clone();
        }
        for (int round = 0; round < MOST_STEPS; round++) {
            double[] slope = slope(here);
            double[] step = times(inverse, slope);
            double gain = dot(slope, step);
            if (!(gain > 0)) {
                inverse = diagonal(guess);
                step = times(inverse, slope);
                gain = dot(slope, step);
            }
            if (!(gain > 1e-4)) {
                break;
            }
            Optional<Point> next = along(here, step, gain);
            if (next.isEmpty()) {
                break;
            }
            update(inverse, here, next.get());
            here = next.get();
        }
        return newton(here, inverse);
    }

    private Summit newton(Point begin, double[][] inverse) {
        Point here = begin;
        double[] scale = new double[free.length];
        for (int i = 0; i < free.length; i++) {
            scale[i] = Math.sqrt(Math.max(inverse[i][i], 1e-12));
        }
        for (int round = 0; round < MOST_NEWTON; round++) {
            DMatrixRMaj information = information(here, scale);
            if (MatrixFeatures_DDRM.hasUncountable(information)) {
                return new Summit(here, Optional.empty(), false);
            }
            Optional<double[][]> covariance = invert(information);
            double[] slope = slope(here);
            double[] step = times(covariance.orElseGet(() -> absolute(information)), slope);
            double gain = dot(slope, step);
            boolean isTop = covariance.isPresent() && gain < 1e-12;
            if (isTop) {
                return new Summit(here, covariance, true);
            }
            Optional<Point> next = along(here, step, gain);
            if (next.isEmpty()) {
                // Nothing higher can be told apart by the digits there are.
                return new Summit(here, covariance, covariance.isPresent() && gain < 1e-6);
            }
            here = next.get();
            if (covariance.isPresent()) {
                boolean isNear = Arrays.stream(step).allMatch(change -> Math.abs(change) < 1e-4);
                double rest = dot(slope(here), times(covariance.get(), slope(here)));
                if (isNear && rest < 1e-9) {
                    return new Summit(here, covariance, true);
                }
                for (int i = 0; i < free.length; i++) {
                    scale[i] = Math.sqrt(covariance.get()[i][i]);
                }
            }
        }
        return new Summit(here, Optional.empty(), false);
    }

    private Optional<Point> along(Point here, double[] step, double gain) {
        double length = 1;
        double largest = Arrays.stream(step).map(Math::abs).max().orElse(0);
        // No step of more than 3 on the scale of logits.
        length = Math.min(1, 3 / largest);
        for (int halving = 0; halving < 30; halving++) {
            double[] theta = here.theta().clone();
            for (int i = 0; i < free.length; i++) {
                theta[free[i]] += length * step[i];
            }
            Point there = likelihood.at(theta, here.modes());
            double rounding = 1e-13 * Math.abs(here.value());
            if (there.value() >= here.value() + 1e-4 * length * gain - rounding) {
                return Optional.of(there);
            }
            length /= halving < 3 ? 2 : 4;
        }
        return Optional.empty();
    }

    private void update(double[][] inverse, Point here, Point there) {
        int size = free.length;
        double[] moved = new double[size];
        double[] turned = new double[size];
        for (int i = 0; i < size; i++) {
            moved[i] = there.theta()[free[i]] - here.theta()[free[i]];
            turned[i] = here.gradient()[free[i]] - there.gradient()[free[i]];
        }
        double curvature = dot(moved, turned);
        double[] bent = times(inverse, turned);
        double bend = dot(turned, bent);
        if (!(curvature > 1e-10 * Math.sqrt(dot(moved, moved) * dot(turned, turned)))) {
            return;
        }
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                inverse[i][j] += (1 + bend / curvature) * moved[i] * moved[j] / curvature
                        - (bent[i] * moved[j] + moved[i] * bent[j]) / curvature;
            }
        }
    }

    /**
     * Return minus the second derivatives, from differences of the gradient: central ones, or forward ones over a tenth of the
     * way where there is so much data that the likelihood is nearly quadratic over so short a way.
     */
    private DMatrixRMaj information(Point here, double[] scale) {
        int size = free.length;
        Point base = likelihood.at(here.theta(), here.modes());
        double[][] moves = likelihood.sensitivities();
        boolean isLarge = here.modes().length > LARGE;
        int sides = isLarge ? 1 : 2;
        double[][] slopes = new double[sides * size][];
        IntStream tasks = IntStream.range(0, sides * size);
        (isLarge ? tasks.parallel() : tasks).forEach(task -> {
            int i = task / sides;
            double change = (task % sides == 0 ? 1 : -1) * stride(scale[i], isLarge);
            double[] theta = base.theta().clone();
            theta[free[i]] += change;
            double[] modes = base.modes().clone();
            double[] move = moves[free[i]];
            for (int node = 0; node < move.length; node++) {
                modes[node] += change * move[node];
            }
            slopes[task] = slope((isLarge ? likelihood.fork() : likelihood).at(theta, modes));
        });
        DMatrixRMaj information = new DMatrixRMaj(size, size);
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                double one = difference(slopes, slope(base), sides, i, j) / stride(scale[i], isLarge);
                double other = difference(slopes, slope(base), sides, j, i) / stride(scale[j], isLarge);
                information.set(i, j, (one + other) / 2);
            }
        }
        return information;
    }

    /** Return how much the slope along j falls by one stride along i. */
    private static double difference(double[][] slopes, double[] base, int sides, int i, int j) {
        return sides == 1 ? base[j] - slopes[i][j] : (slopes[2 * i + 1][j] - slopes[2 * i][j]) / 2;
    }

    private static double stride(double scale, boolean isLarge) {
        return Math.max(1e-5, Math.min(0.01, (isLarge ? 0.0005 : 0.005) * scale));
    }

    static Optional<double[][]> invert(DMatrixRMaj information) {
        int size = information.numRows;
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(size, true);
        DMatrixRMaj inverse = new DMatrixRMaj(size, size);
        if (!cholesky.decompose(information.copy()) || !CommonOps_DDRM.invert(information, inverse)) {
            return Optional.empty();
        }
        double[][] result = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                result[i][j] = (inverse.get(i, j) + inverse.get(j, i)) / 2;
            }
            if (!(result[i][i] > 0) || Double.isInfinite(result[i][i])) {
                return Optional.empty();
            }
        }
        return Optional.of(result);
    }

    /** Return the inverse with every curvature taken as downward. */
    private static double[][] absolute(DMatrixRMaj information) {
        int size = information.numRows;
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(size, true, true);
        double[][] result = new double[size][size];
        if (!eigen.decompose(information.copy())) {
            for (int i = 0; i < size; i++) {
                result[i][i] = 1 / Math.max(1e-6, Math.abs(information.get(i, i)));
            }
            return result;
        }
        for (int e = 0; e < size; e++) {
            double value = 1 / Math.max(1e-6, Math.abs(eigen.getEigenvalue(e).getReal()));
            DMatrixRMaj vector = eigen.getEigenVector(e);
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    result[i][j] += value * vector.get(i) * vector.get(j);
                }
            }
        }
        return result;
    }

    private double[] slope(Point point) {
        double[] slope = new double[free.length];
        for (int i = 0; i < free.length; i++) {
            slope[i] = point.gradient()[free[i]];
        }
        return slope;
    }

    private static double[][] diagonal(double[][] matrix) {
        double[][] result = new double[matrix.length][matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            result[i][i] = matrix[i][i];
        }
        return result;
    }

    private static double[] times(double[][] matrix, double[] vector) {
        double[] result = new double[vector.length];
        for (int i = 0; i < result.length; i++) {
            result[i] = dot(matrix[i], vector);
        }
        return result;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
