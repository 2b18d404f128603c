package ortet.figures;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/** A symmetric matrix that is positive definite, taken apart by Cholesky. */
final class Positive {
    private final double[] lower;
    private final int size;

    private Positive(double[] lower, int size) {
        this.lower = lower;
        this.size = size;
    }

    /**
     * Take a matrix apart.
     *
     * @param matrix is not changed
     * @param tolerance the least pivot allowed, in parts of the diagonal element that it comes from
     * @return the parts; absent when the matrix is not positive definite, or so nearly singular that it is not safely so
     */
    static Optional<Positive> of(DMatrixRMaj matrix, double tolerance) {
        int size = matrix.getNumRows();
        for (double element : matrix.getData()) {
            if (!Double.isFinite(element)) {
                return Optional.empty();
            }
        }
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(size, true);
        if (!cholesky.decompose(matrix.copy())) {
            return Optional.empty();
        }
        DMatrixRMaj lower = cholesky.getT(null);
        for (int i = 0; i < size; i++) {
            double pivot = lower.get(i, i) * lower.get(i, i);
            if (!(pivot > tolerance * matrix.get(i, i))) {
                return Optional.empty();
            }
        }
        return Optional.of(new Positive(lower.getData(), size));
    }

    /** Return x of A x = b. */
    double[] solve(double[] right) {
        double[] x = right.clone();
        TriangularSolver_DDRM.solveL(lower, x, size);
        TriangularSolver_DDRM.solveTranL(lower, x, size);
        return x;
    }

    /** Return the inverse. */
    double[][] inverse() {
        double[][] inverse = new double[size][];
        for (int i = 0; i < size; i++) {
            double[] unit = new double[size];
            unit[i] = 1;
            inverse[i] = solve(unit);
        }
        return inverse;
    }
}
