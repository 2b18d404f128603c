package ortet.figures;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import ortet.value.Defect;

/**
 * The log-likelihood of a binomial mixed model with one grouping, its random intercepts integrated out by adaptive
 * Gauss–Hermite quadrature: the nodes are put about each group's mode, as far apart as its curvature says. One node is
 * Laplace's approximation. The gradient is exact, the movement of the nodes included.
 *
 * @see "Pinheiro & Bates 1995, Journal of Computational and Graphical Statistics 4:12, section 2.4"
 */
final class Quadrature extends Laplace {
    private final double[] nodes;
    private final double[] logWeights;
    private final int[] begins;
    private final int[] ordered;

    /**
     * Prepare.
     *
     * @param rows with one grouping
     * @param count how many nodes, at least 1
     */
    Quadrature(ModelRows rows, int count) {
        super(rows);
        if (rows.groupings() != 1) {
            throw new Defect("quadrature over " + rows.groupings() + " groupings");
        }
        nodes = new double[count];
        logWeights = new double[count];
        hermite(nodes, logWeights);
        begins = new int[rows.intercepts() + 1];
        ordered = new int[rows.size()];
        for (int[] group : rows.nodes()) {
            begins[group[0] + 1]++;
        }
        for (int group = 0; group < rows.intercepts(); group++) {
            begins[group + 1] += begins[group];
        }
        int[] next = begins.clone();
        for (int row = 0; row < ordered.length; row++) {
            ordered[next[rows.nodes()[row][0]]++] = row;
        }
    }

    private Quadrature(Quadrature other) {
        super(other);
        nodes = other.nodes;
        logWeights = other.logWeights;
        begins = other.begins;
        ordered = other.ordered;
    }

    @Override
    public Quadrature fork() {
        return new Quadrature(this);
    }

    /**
     * Nodes and weights for the weight exp(−x²), as eigenvalues of the Jacobi matrix.
     *
     * @see "Golub & Welsch 1969, Mathematics of Computation 23:221"
     */
    static void hermite(double[] nodes, double[] logWeights) {
        int count = nodes.length;
        DMatrixRMaj jacobi = new DMatrixRMaj(count, count);
        for (int i = 1; i < count; i++) {
            jacobi.set(i, i - 1, Math.sqrt(i / 2.0));
            jacobi.set(i - 1, i, Math.sqrt(i / 2.0));
        }
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(count, true, true);
        if (!eigen.decompose(jacobi)) {
            throw new Defect("no nodes of order " + count);
        }
        for (int i = 0; i < count; i++) {
            nodes[i] = eigen.getEigenvalue(i).getReal();
            double first = eigen.getEigenVector(i).get(0);
            logWeights[i] = Math.log(first * first * Math.sqrt(Math.PI));
        }
    }

    @Override
    public Point at(double[] theta, double[] start) {
        if (!findModes(theta, start)) {
            return new Point(theta, Double.NaN, new double[theta.length], u.clone());
        }
        double s = theta[fixed];
        int count = nodes.length;
        double[] gradient = new double[theta.length];
        double value = -rows.penalty(theta);
        double[] terms = new double[count];
        double[][] direct = new double[count][fixed + 1];
        double[] inner = new double[count];
        double[] modeMoves = new double[fixed + 1];
        double[] curveMoves = new double[fixed + 1];
        for (int group = 0; group < u.length; group++) {
            double mode = u[group];
            double curvature = factor.diagonal[group];
            double width = 1 / Math.sqrt(curvature);
            moves(group, s, modeMoves, curveMoves);
            double highest = Double.NEGATIVE_INFINITY;
            for (int j = 0; j < count; j++) {
                double at = mode + Math.sqrt(2) * width * nodes[j];
                Arrays.fill(direct[j], 0);
                terms[j] = logWeights[j] + nodes[j] * nodes[j] + density(group, s, at, direct[j]);
                inner[j] = s * direct[j][fixed] - at;
                direct[j][fixed] *= at;
                highest = Math.max(highest, terms[j]);
            }
            double sum = 0;
            for (int j = 0; j < count; j++) {
                terms[j] = Math.exp(terms[j] - highest);
                sum += terms[j];
            }
            value += highest + Math.log(sum) + Math.log(width) - Math.log(Math.PI) / 2;
            for (int m = 0; m <= fixed; m++) {
                double widthMove = -width / 2 * curveMoves[m] / curvature;
                double mean = 0;
                for (int j = 0; j < count; j++) {
                    mean += terms[j] * (direct[j][m] + inner[j] * (modeMoves[m] + Math.sqrt(2) * nodes[j] * widthMove));
                }
                gradient[m] += mean / sum + widthMove / width;
            }
        }
        for (int j = 0; j < fixed; j++) {
            gradient[j] -= rows.penalties()[j] * theta[j];
        }
        return new Point(theta.clone(), value, gradient, u.clone());
    }

    /** Return the log-density of one group at one place, and add the residuals to the slopes, in the end plain ones. */
    private double density(int group, double s, double at, double[] slopes) {
        double sum = -at * at / 2;
        for (int i = begins[group]; i < begins[group + 1]; i++) {
            int row = ordered[i];
            double e = base[row] + s * at;
            double n = rows.trials()[row];
            double small = Math.exp(-Math.abs(e));
            double p = e >= 0 ? 1 / (1 + small) : small / (1 + small);
            sum += rows.successes()[row] * e - n * (Math.max(e, 0) + Math.log1p(small));
            double residual = rows.successes()[row] - n * p;
            for (int j = 0; j < fixed; j++) {
                slopes[j] += residual * rows.columns()[j][row];
            }
            slopes[fixed] += residual;
        }
        return sum;
    }

    /** Work out how the mode and the curvature of a group move with each parameter. */
    private void moves(int group, double s, double[] modeMoves, double[] curveMoves) {
        double mode = u[group];
        double curvature = factor.diagonal[group];
        Arrays.fill(modeMoves, 0);
        Arrays.fill(curveMoves, 0);
        double weight = 0;
        double skew = 0;
        double residual = 0;
        for (int i = begins[group]; i < begins[group + 1]; i++) {
            int row = ordered[i];
            weight += weights[row];
            skew += skews[row];
            residual += residuals[row];
            for (int j = 0; j < fixed; j++) {
                modeMoves[j] -= s * weights[row] * rows.columns()[j][row] / curvature;
                curveMoves[j] += s * s * skews[row] * rows.columns()[j][row];
            }
        }
        modeMoves[fixed] = (residual - s * mode * weight) / curvature;
        for (int j = 0; j < fixed; j++) {
            curveMoves[j] += s * s * s * skew * modeMoves[j];
        }
        curveMoves[fixed] = 2 * s * weight + s * s * skew * (mode + s * modeMoves[fixed]);
    }
}
