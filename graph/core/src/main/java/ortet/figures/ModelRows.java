package ortet.figures;

import java.util.Arrays;
import org.apache.commons.numbers.gamma.LogBeta;

/**
 * The rows of a model as columns of numbers, equal rows added up.
 *
 * @param successes of each row
 * @param trials of each row
 * @param columns fixed columns, by column and row
 * @param nodes the random intercepts of each row, by row and grouping; every grouping has numbers of its own
 * @param firsts the first number of each grouping, and in the end how many intercepts there are
 * @param penalties what the square of each fixed effect is charged, mostly 0
 */
record ModelRows(
        double[] successes, double[] trials, double[][] columns, int[][] nodes, int[] firsts, double[] penalties) {
    int size() {
        return trials.length;
    }

    int fixed() {
        return columns.length;
    }

    int groupings() {
        return firsts.length - 1;
    }

    int intercepts() {
        return firsts[firsts.length - 1];
    }

    ModelRows with(double[][] otherColumns, double[] otherPenalties) {
        return new ModelRows(successes, trials, otherColumns, nodes, firsts, otherPenalties);
    }

    /** Add up the rows that agree in all columns and groups. */
    static ModelRows of(double[] successes, double[] trials, double[][] columns, int[][] groups, int[] sizes) {
        int rows = trials.length;
        int[] firsts = new int[sizes.length + 1];
        for (int k = 0; k < sizes.length; k++) {
            firsts[k + 1] = firsts[k] + sizes[k];
        }
        int capacity = Integer.highestOneBit(Math.max(4, rows)) * 4;
        int[] table = new int[capacity];
        int[] first = new int[rows];
        int[] into = new int[rows];
        int count = 0;
        for (int row = 0; row < rows; row++) {
            long hash = 0;
            for (double[] column : columns) {
                hash = (hash + Double.doubleToLongBits(column[row] + 0.0)) * 0x9E3779B97F4A7C15L;
                hash ^= hash >>> 29;
            }
            for (int[] group : groups) {
                hash = (hash + group[row] + 1) * 0x9E3779B97F4A7C15L;
                hash ^= hash >>> 29;
            }
            int slot = (int) (hash >>> 20) & capacity - 1;
            while (table[slot] != 0 && !same(columns, groups, first[table[slot] - 1], row)) {
                slot = slot + 1 & capacity - 1;
            }
            if (table[slot] == 0) {
                first[count++] = row;
                table[slot] = count;
            }
            into[row] = table[slot] - 1;
        }
        double[] taken = new double[count];
        double[] known = new double[count];
        for (int row = 0; row < rows; row++) {
            taken[into[row]] += successes[row];
            known[into[row]] += trials[row];
        }
        double[][] some = new double[columns.length][count];
        int[][] nodes = new int[count][groups.length];
        for (int at = 0; at < count; at++) {
            for (int j = 0; j < columns.length; j++) {
                some[j][at] = columns[j][first[at]];
            }
            for (int k = 0; k < groups.length; k++) {
                nodes[at][k] = firsts[k] + groups[k][first[at]];
            }
        }
        return new ModelRows(taken, known, some, nodes, firsts, new double[columns.length]);
    }

    private static boolean same(double[][] columns, int[][] groups, int a, int b) {
        for (int[] group : groups) {
            if (group[a] != group[b]) {
                return false;
            }
        }
        for (double[] column : columns) {
            if (column[a] != column[b]) {
                return false;
            }
        }
        return true;
    }

    /** Return the sum of the logarithms of the binomial coefficients: 1 / ((n + 1) B(r + 1, n − r + 1)) for each row. */
    static double coefficients(double[] successes, double[] trials) {
        double sum = 0;
        for (int row = 0; row < trials.length; row++) {
            double r = successes[row];
            double n = trials[row];
            if (r > 0 && r < n) {
                sum -= Math.log(n + 1) + LogBeta.value(r + 1, n - r + 1);
            }
        }
        return sum;
    }

    /** Return the linear predictor of the fixed effects, by row. */
    double[] predictor(double[] theta) {
        double[] eta = new double[size()];
        for (int j = 0; j < columns.length; j++) {
            double beta = theta[j];
            double[] column = columns[j];
            for (int row = 0; row < eta.length; row++) {
                eta[row] += beta * column[row];
            }
        }
        return eta;
    }

    /** Return the penalty at the given fixed effects, to be taken off the log-likelihood. */
    double penalty(double[] theta) {
        double sum = 0;
        for (int j = 0; j < penalties.length; j++) {
            sum += penalties[j] * theta[j] * theta[j] / 2;
        }
        return sum;
    }

    boolean isPenalized() {
        return Arrays.stream(penalties).anyMatch(penalty -> penalty > 0);
    }
}
