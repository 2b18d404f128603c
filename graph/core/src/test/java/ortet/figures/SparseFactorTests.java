package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;
import ortet.value.Refused;

class SparseFactorTests {
    /** Computed another way: with the whole matrix, by a library. */
    @Property(tries = 60)
    void agreesWithTheDenseMatrix(
            @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 60) int mothers,
            @ForAll @IntRange(min = 1, max = 30) int batches,
            @ForAll @IntRange(min = 1, max = 200) int count) {
        SplittableRandom random = new SplittableRandom(seed);
        int cultivars = 3;
        int nodes = mothers + batches + cultivars;
        int[][] rows = new int[count][];
        for (int row = 0; row < count; row++) {
            int mother = random.nextInt(mothers);
            rows[row] = new int[] {mother, mothers + random.nextInt(batches), mothers + batches + mother % cultivars};
        }
        SparseFactor factor = SparseFactor.of(nodes, rows);
        DMatrixRMaj dense = CommonOps_DDRM.identity(nodes);
        Arrays.fill(factor.diagonal, 1);
        for (int[] row : rows) {
            double weight = random.nextDouble(0.1, 3);
            for (int a = 0; a < 3; a++) {
                for (int b = 0; b < 3; b++) {
                    dense.add(row[a], row[b], weight * (a + 1) * (b + 1));
                }
                factor.diagonal[row[a]] += weight * (a + 1) * (a + 1);
                for (int b = 0; b < a; b++) {
                    factor.pairs[factor.place(row[a], row[b])] += weight * (a + 1) * (b + 1);
                }
            }
        }
        factor.factor();
        factor.invert();
        DMatrixRMaj inverse = new DMatrixRMaj(nodes, nodes);
        CommonOps_DDRM.invert(dense, inverse);
        assertEquals(Math.log(CommonOps_DDRM.det(dense)), factor.logDeterminant(), 1e-8);
        for (int node = 0; node < nodes; node++) {
            assertEquals(inverse.get(node, node), factor.inverseDiagonal[node], 1e-10);
        }
        for (int[] row : rows) {
            assertEquals(inverse.get(row[0], row[1]), factor.inversePairs[factor.place(row[0], row[1])], 1e-10);
            assertEquals(inverse.get(row[2], row[1]), factor.inversePairs[factor.place(row[2], row[1])], 1e-10);
        }
        double[] right = random.doubles(nodes).toArray();
        double[] solved = right.clone();
        factor.solve(solved);
        DMatrixRMaj expected = new DMatrixRMaj(nodes, 1);
        CommonOps_DDRM.mult(inverse, new DMatrixRMaj(nodes, 1, true, right), expected);
        for (int node = 0; node < nodes; node++) {
            assertEquals(expected.get(node), solved[node], 1e-9);
        }
        // Coloured unit vectors, side by side, are a root of the inverse.
        DMatrixRMaj root = new DMatrixRMaj(nodes, nodes);
        for (int node = 0; node < nodes; node++) {
            double[] unit = new double[nodes];
            unit[node] = 1;
            factor.colour(unit);
            for (int other = 0; other < nodes; other++) {
                root.set(other, node, unit[other]);
            }
        }
        DMatrixRMaj square = new DMatrixRMaj(nodes, nodes);
        CommonOps_DDRM.multTransB(root, root, square);
        CommonOps_DDRM.subtractEquals(square, inverse);
        assertEquals(0, CommonOps_DDRM.elementMaxAbs(square), 1e-9);
    }

    @Test
    void refusesWhatMeetsInTooManyWays() {
        // 2000 by 2000 groups, every one with 100 others at random: an elimination would fill the whole matrix
        SplittableRandom random = new SplittableRandom(1);
        int[][] rows = new int[200_000][];
        for (int row = 0; row < rows.length; row++) {
            rows[row] = new int[] {random.nextInt(2000), 2000 + random.nextInt(2000)};
        }
        Refused refused = assertThrows(Refused.class, () -> SparseFactor.of(4000, rows));
        assertEquals(
                List.of("entangled-groups"),
                refused.faults().stream().map(fault -> fault.rule()).toList());
    }
}
