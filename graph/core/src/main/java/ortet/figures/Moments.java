package ortet.figures;

import java.util.Arrays;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;

/**
 * First guesses of the standard deviations of random intercepts, from second moments.
 *
 * <p>With rates as the fixed effects have them, the sum S of a group's residuals has variance V + Σ σ² Σ V², where V is its
 * sum of n p (1 − p) and the inner sum goes over the parts into which another grouping divides the group. Adding up over
 * the groups of each grouping gives as many equations as there are deviations.
 */
final class Moments {
    private Moments() {}

    static double[] deviations(ModelRows rows, double[] beta) {
        int groupings = rows.groupings();
        if (groupings == 0) {
            return new double[0];
        }
        double[] eta = rows.predictor(beta);
        double[] residuals = new double[rows.size()];
        double[] weights = new double[rows.size()];
        for (int row = 0; row < rows.size(); row++) {
            double p = 1 / (1 + Math.exp(-eta[row]));
            residuals[row] = rows.successes()[row] - rows.trials()[row] * p;
            weights[row] = rows.trials()[row] * p * (1 - p);
        }
        double[] sums = new double[rows.intercepts()];
        double[] variances = new double[rows.intercepts()];
        for (int row = 0; row < rows.size(); row++) {
            for (int node : rows.nodes()[row]) {
                sums[node] += residuals[row];
                variances[node] += weights[row];
            }
        }
        double[] excess = new double[groupings];
        DMatrixRMaj system = new DMatrixRMaj(groupings, groupings);
        for (int k = 0; k < groupings; k++) {
            for (int node = rows.firsts()[k]; node < rows.firsts()[k + 1]; node++) {
                excess[k] += sums[node] * sums[node] - variances[node];
                system.add(k, k, variances[node] * variances[node]);
            }
            for (int other = 0; other < k; other++) {
                double crossed = crossed(rows, weights, k, other);
                system.add(k, other, crossed);
                system.add(other, k, crossed);
            }
        }
        Optional<double[]> squares = solve(system, excess);
        double[] deviations = new double[groupings];
        for (int k = 0; k < groupings; k++) {
            double square = squares.isPresent() ? squares.get()[k] : excess[k] / system.get(k, k);
            double bounded = Math.max(0.15 * 0.15, Math.min(4, square));
            deviations[k] = Double.isFinite(bounded) ? Math.sqrt(bounded) : 0.5;
        }
        return deviations;
    }

    private static Optional<double[]> solve(DMatrixRMaj system, double[] right) {
        DMatrixRMaj x = new DMatrixRMaj(right.length, 1);
        DMatrixRMaj b = new DMatrixRMaj(right.length, 1);
        System.arraycopy(right, 0, b.data, 0, right.length);
        return org.ejml.dense.row.CommonOps_DDRM.solve(system, b, x) ? Optional.of(x.data.clone()) : Optional.empty();
    }

    /** Return the sum of the squared weights of what two groups have in common. */
    private static double crossed(ModelRows rows, double[] weights, int k, int other) {
        long[] keys = new long[rows.size()];
        for (int row = 0; row < keys.length; row++) {
            int[] nodes = rows.nodes()[row];
            keys[row] = (long) nodes[k] << 32 | nodes[other];
        }
        long[] sorted = keys.clone();
        Arrays.sort(sorted);
        double[] parts = new double[sorted.length];
        for (int row = 0; row < keys.length; row++) {
            parts[first(sorted, keys[row])] += weights[row];
        }
        return Arrays.stream(parts).map(part -> part * part).sum();
    }

    private static int first(long[] sorted, long key) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = low + high >>> 1;
            if (sorted[middle] < key) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
