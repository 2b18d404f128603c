package ortet.figures;

import java.util.Arrays;

/**
 * The log-likelihood of a binomial mixed model with its random intercepts integrated out by Laplace's approximation, over
 * all of them at once.
 *
 * <p>With η = X β + Z Λ u, u standard normal and Λ the standard deviation of each intercept, the approximation is
 *
 * <pre>ℓ(β, σ) = log f(r | β, σ, û) − |û|² / 2 − log det H / 2,   H = Λ Z′ W Z Λ + I,   W = diag(n p (1 − p))</pre>
 *
 * at the mode û. Its gradient is exact: the change of û with the parameters is followed through H, which needs the inverse
 * of H only where H (and its factor) is not zero.
 *
 * @see "Breslow & Clayton 1993, Journal of the American Statistical Association 88:9, equation 3"
 * @see "Bates, Mächler, Bolker & Walker 2015, Journal of Statistical Software 67(1), section 3"
 * @see "Kristensen, Nielsen, Berg, Skaug & Bell 2016, Journal of Statistical Software 70(5), section 2.1"
 */
class Laplace implements Likelihood {
    private static final int MOST_STEPS = 200;

    final ModelRows rows;
    final SparseFactor factor;
    private final int[][] places;
    final int fixed;
    final int groupings;
    /** The standardized intercepts. */
    final double[] u;
    /** The linear predictor without the random intercepts. */
    double[] base = new double[0];

    final double[] eta;
    /** Successes less their expectation. */
    final double[] residuals;
    /** n p (1 − p). */
    final double[] weights;
    /** n p (1 − p) (1 − 2 p). */
    final double[] skews;

    double[] sigma = new double[0];
    /** Whether the factor is one of some place asked about before. */
    private boolean hasFactor;

    Laplace(ModelRows rows) {
        this(rows, SparseFactor.of(rows.intercepts(), rows.nodes()), null);
    }

    private Laplace(ModelRows rows, SparseFactor factor, int[][] known) {
        this.rows = rows;
        this.factor = factor;
        fixed = rows.fixed();
        groupings = rows.groupings();
        int size = rows.size();
        u = new double[rows.intercepts()];
        eta = new double[size];
        residuals = new double[size];
        weights = new double[size];
        skews = new double[size];
        places = known == null ? places(rows, factor) : known;
    }

    /** Share the pattern of another, with memory of its own. */
    Laplace(Laplace other) {
        this(other.rows, other.factor.fork(), other.places);
        hasFactor = other.hasFactor;
    }

    private static int[][] places(ModelRows rows, SparseFactor factor) {
        int groupings = rows.groupings();
        if (groupings < 2) {
            return new int[0][];
        }
        int[][] places = new int[rows.size()][groupings * (groupings - 1) / 2];
        for (int row = 0; row < places.length; row++) {
            int[] nodes = rows.nodes()[row];
            int at = 0;
            for (int a = 1; a < groupings; a++) {
                for (int b = 0; b < a; b++) {
                    places[row][at++] = factor.place(nodes[a], nodes[b]);
                }
            }
        }
        return places;
    }

    @Override
    public int parameters() {
        return fixed + groupings;
    }

    @Override
    public Laplace fork() {
        return new Laplace(this);
    }

    @Override
    public Point at(double[] theta, double[] start) {
        if (!findModes(theta, start)) {
            return new Point(theta, Double.NaN, new double[theta.length], u.clone());
        }
        double value = logDensity() - factor.logDeterminant() / 2 - rows.penalty(theta);
        return new Point(theta.clone(), value, gradient(theta), u.clone());
    }

    /** Find the modes, and leave the factor of H there. */
    final boolean findModes(double[] theta, double[] start) {
        base = rows.predictor(theta);
        sigma = Arrays.copyOfRange(theta, fixed, fixed + groupings);
        System.arraycopy(start, 0, u, 0, u.length);
        double[] step = new double[u.length];
        // Where a factorization is dear, an older one serves to find the modes as long as the steps shrink fast.
        boolean isFactored = hasFactor && factor.isDear();
        double before = isFactored ? 1 : Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_STEPS; round++) {
            predict();
            if (!isFactored) {
                if (!refactor()) {
                    return false;
                }
                isFactored = true;
                before = Double.POSITIVE_INFINITY;
            }
            slope(step);
            factor.solve(step);
            double largest = 0;
            for (double change : step) {
                largest = Math.max(largest, Math.abs(change));
            }
            if (!Double.isFinite(largest)) {
                return false;
            }
            if (largest < 1e-10) {
                // The factor may belong to a place nearby.
                return before == Double.POSITIVE_INFINITY || refactor();
            }
            double damping = round < 20 ? 1 : 0.5;
            for (int node = 0; node < u.length; node++) {
                u[node] += damping * Math.max(-2, Math.min(2, step[node]));
            }
            // An old factor serves while the steps shrink fast.
            isFactored = largest < 0.3 && largest < 0.3 * before;
            before = largest;
        }
        return false;
    }

    private void predict() {
        for (int row = 0; row < eta.length; row++) {
            double sum = base[row];
            int[] nodes = rows.nodes()[row];
            for (int k = 0; k < nodes.length; k++) {
                sum += sigma[k] * u[nodes[k]];
            }
            eta[row] = sum;
            double n = rows.trials()[row];
            double small = Math.exp(-Math.abs(sum));
            double larger = 1 / (1 + small);
            double smaller = small * larger;
            double p = sum >= 0 ? larger : smaller;
            double variance = n * larger * smaller;
            residuals[row] = rows.successes()[row] - n * p;
            weights[row] = variance;
            skews[row] = variance * (sum >= 0 ? smaller - larger : larger - smaller);
        }
    }

    private boolean refactor() {
        Arrays.fill(factor.diagonal, 1);
        Arrays.fill(factor.pairs, 0);
        for (int row = 0; row < weights.length; row++) {
            double weight = weights[row];
            int[] nodes = rows.nodes()[row];
            int at = 0;
            for (int a = 0; a < nodes.length; a++) {
                double part = weight * sigma[a];
                factor.diagonal[nodes[a]] += part * sigma[a];
                for (int b = 0; b < a; b++) {
                    factor.pairs[places[row][at++]] += part * sigma[b];
                }
            }
        }
        try {
            factor.factor();
            hasFactor = Double.isFinite(factor.logDeterminant());
        } catch (ArithmeticException notPositive) {
            hasFactor = false;
        }
        return hasFactor;
    }

    private void slope(double[] into) {
        for (int node = 0; node < into.length; node++) {
            into[node] = -u[node];
        }
        for (int row = 0; row < residuals.length; row++) {
            int[] nodes = rows.nodes()[row];
            for (int k = 0; k < nodes.length; k++) {
                into[nodes[k]] += sigma[k] * residuals[row];
            }
        }
    }

    /** Return the logarithm of the density of counts and standardized intercepts, but for constants. */
    final double logDensity() {
        double sum = 0;
        for (int row = 0; row < eta.length; row++) {
            double e = eta[row];
            sum += rows.successes()[row] * e
                    - rows.trials()[row] * (Math.max(e, 0) + Math.log1p(Math.exp(-Math.abs(e))));
        }
        for (double each : u) {
            sum -= each * each / 2;
        }
        return sum;
    }

    private double[] gradient(double[] theta) {
        factor.invert();
        double[] gradient = new double[theta.length];
        double[] charge = new double[u.length];
        double[] spread = new double[eta.length];
        for (int row = 0; row < eta.length; row++) {
            int[] nodes = rows.nodes()[row];
            double leverage = 0;
            int at = 0;
            for (int a = 0; a < nodes.length; a++) {
                double own = sigma[a] * factor.inverseDiagonal[nodes[a]];
                leverage += sigma[a] * own;
                gradient[fixed + a] -= weights[row] * own;
                for (int b = 0; b < a; b++) {
                    double z = factor.inversePairs[places[row][at++]];
                    leverage += 2 * sigma[a] * sigma[b] * z;
                    gradient[fixed + a] -= weights[row] * sigma[b] * z;
                    gradient[fixed + b] -= weights[row] * sigma[a] * z;
                }
            }
            // what a change of the predictor does to the determinant
            double moved = skews[row] * leverage / 2;
            spread[row] = residuals[row] - moved;
            for (int k = 0; k < nodes.length; k++) {
                charge[nodes[k]] -= sigma[k] * moved;
            }
        }
        factor.solve(charge);
        for (int row = 0; row < eta.length; row++) {
            int[] nodes = rows.nodes()[row];
            double along = 0;
            for (int k = 0; k < nodes.length; k++) {
                along += sigma[k] * charge[nodes[k]];
            }
            double direct = spread[row] - weights[row] * along;
            for (int j = 0; j < fixed; j++) {
                gradient[j] += direct * rows.columns()[j][row];
            }
            for (int k = 0; k < nodes.length; k++) {
                gradient[fixed + k] += direct * u[nodes[k]] + residuals[row] * charge[nodes[k]];
            }
        }
        for (int j = 0; j < fixed; j++) {
            gradient[j] -= rows.penalties()[j] * theta[j];
        }
        return gradient;
    }

    @Override
    public double[][] sensitivities() {
        double[][] all = new double[fixed + groupings][];
        for (int j = 0; j < fixed; j++) {
            double[] right = new double[u.length];
            double[] column = rows.columns()[j];
            for (int row = 0; row < eta.length; row++) {
                int[] nodes = rows.nodes()[row];
                for (int k = 0; k < nodes.length; k++) {
                    right[nodes[k]] -= weights[row] * sigma[k] * column[row];
                }
            }
            factor.solve(right);
            all[j] = right;
        }
        for (int m = 0; m < groupings; m++) {
            double[] right = new double[u.length];
            for (int row = 0; row < eta.length; row++) {
                int[] nodes = rows.nodes()[row];
                double moved = weights[row] * u[nodes[m]];
                right[nodes[m]] += residuals[row];
                for (int k = 0; k < nodes.length; k++) {
                    right[nodes[k]] -= sigma[k] * moved;
                }
            }
            factor.solve(right);
            all[fixed + m] = right;
        }
        return all;
    }

    /**
     * Return the information about the fixed effects at given standard deviations, at the place asked about last.
     *
     * @param sensitivities as {@link #sensitivities} gives them
     */
    final double[][] fixedInformation(double[][] sensitivities) {
        double[][] information = new double[fixed][fixed];
        for (int j = 0; j < fixed; j++) {
            for (int row = 0; row < eta.length; row++) {
                int[] nodes = rows.nodes()[row];
                double move = rows.columns()[j][row];
                for (int k = 0; k < nodes.length; k++) {
                    move += sigma[k] * sensitivities[j][nodes[k]];
                }
                double part = weights[row] * move;
                for (int i = 0; i < fixed; i++) {
                    information[i][j] += part * rows.columns()[i][row];
                }
            }
            information[j][j] += rows.penalties()[j];
        }
        return information;
    }
}
