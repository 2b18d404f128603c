package ortet.figures;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;

/**
 * The fit of fixed effects alone, and whether they are separated: whether some direction d has x′d ≥ 0 in every row with
 * successes and x′d ≤ 0 in every row with failures, and not 0 in all of them. Then the likelihood rises for ever along d.
 *
 * <p>Newton's iteration itself finds such a direction when there is one, since its steps turn into it and do not shrink; a
 * direction so found is checked against every row, so that what is called separated is.
 *
 * @param beta where the iteration ended
 * @param isSeparated by column, whether the direction involves it
 * @see "Albert & Anderson 1984, Biometrika 71:1"
 */
record Separation(double[] beta, boolean[] isSeparated) {
    private static final int MOST_STEPS = 25;

    static Separation of(ModelRows rows) {
        int fixed = rows.fixed();
        double[] beta = new double[fixed];
        double[] step = new double[fixed];
        double largest = 0;
        for (int round = 0; round < MOST_STEPS; round++) {
            Optional<double[]> next = step(rows, beta);
            if (next.isEmpty()) {
                break;
            }
            step = next.get();
            largest = 0;
            double[] change = rows.predictor(step);
            for (int row = 0; row < change.length; row++) {
                largest = Math.max(largest, rows.trials()[row] > 0 ? Math.abs(change[row]) : 0);
            }
            double length = Math.min(1, 5 / largest);
            double before = value(rows, beta);
            for (int halving = 0; halving < 20; halving++) {
                double[] there = beta.clone();
                for (int j = 0; j < fixed; j++) {
                    there[j] += length * step[j];
                }
                if (value(rows, there) >= before - 1e-12 * Math.abs(before)) {
                    beta = there;
                    break;
                }
                length /= 2;
            }
            if (largest < 1e-8) {
                return new Separation(beta, new boolean[fixed]);
            }
        }
        return new Separation(beta, largest > 0.1 ? direction(rows, step) : new boolean[fixed]);
    }

    private static boolean[] direction(ModelRows rows, double[] step) {
        double[] along = rows.predictor(step);
        double largest = 0;
        for (double value : along) {
            largest = Math.max(largest, Math.abs(value));
        }
        double nothing = 1e-4 * largest;
        boolean[] involved = new boolean[step.length];
        for (int row = 0; row < along.length; row++) {
            double r = rows.successes()[row];
            double n = rows.trials()[row];
            if (r > 0 && along[row] < -nothing || r < n && along[row] > nothing) {
                return involved;
            }
        }
        for (int j = 0; j < step.length; j++) {
            involved[j] = Math.abs(step[j]) > 1e-3 * largest;
        }
        return involved;
    }

    private static double value(ModelRows rows, double[] beta) {
        double[] eta = rows.predictor(beta);
        double sum = 0;
        for (int row = 0; row < eta.length; row++) {
            sum += rows.successes()[row] * eta[row]
                    - rows.trials()[row] * (Math.max(eta[row], 0) + Math.log1p(Math.exp(-Math.abs(eta[row]))));
        }
        return sum;
    }

    private static Optional<double[]> step(ModelRows rows, double[] beta) {
        int fixed = rows.fixed();
        double[] eta = rows.predictor(beta);
        DMatrixRMaj information = new DMatrixRMaj(fixed, fixed);
        double[] slope = new double[fixed];
        for (int row = 0; row < eta.length; row++) {
            double small = Math.exp(-Math.abs(eta[row]));
            double n = rows.trials()[row];
            double p = eta[row] >= 0 ? 1 / (1 + small) : small / (1 + small);
            double weight = n * small / ((1 + small) * (1 + small));
            double residual = rows.successes()[row] - n * p;
            for (int i = 0; i < fixed; i++) {
                double x = rows.columns()[i][row];
                slope[i] += residual * x;
                for (int j = 0; j <= i; j++) {
                    information.add(i, j, weight * x * rows.columns()[j][row]);
                }
            }
        }
        for (int i = 0; i < fixed; i++) {
            for (int j = 0; j < i; j++) {
                information.set(j, i, information.get(i, j));
            }
        }
        return Ascent.invert(information).map(inverse -> {
            double[] step = new double[fixed];
            for (int i = 0; i < fixed; i++) {
                for (int j = 0; j < fixed; j++) {
                    step[i] += inverse[i][j] * slope[j];
                }
            }
            return step;
        });
    }
}
