package ortet.choice;

/**
 * How likely what was seen of a cluster is by every luck that it may have, its season's in it: two normal scores, on a grid. The
 * cluster's own luck is normal beforehand.
 *
 * <p>Sums over a grid are as good as integrals as long as its step is not much longer than a standard deviation (trapezoidal
 * rule of smooth functions that vanish at both ends).
 */
final class ForecastLikely {
    /** Places a side. */
    static final int PLACES = 13;

    private static final double LEAST = 0.012;
    private static final double SEASONS = 0.15;
    private static final double REACH = 3.2;
    private static final double SCARCE = 1e-5;
    private static final double FLAT = 1 - 1e-9;
    private static final double FAR = 3.5;

    /** Luck that is told more closely than a step lies at most half a step from the place next to it. */
    private static final double NEAR = 0.75;

    private final double ofFate;
    private final double ofTiming;
    private final double fateFrom;
    private final double fateStep;
    private final double timingFrom;
    private final double timingStep;
    private boolean isFlat = true;
    private final float[] likely = new float[PLACES * PLACES];

    /** Make a grid for luck of which nothing is known but its variance. */
    ForecastLikely(double ofFate, double ofTiming) {
        this(
                ofFate,
                ofTiming,
                0,
                REACH * Math.sqrt(Math.max(LEAST, ofFate) + SEASONS),
                0,
                REACH * Math.sqrt(Math.max(LEAST, ofTiming) + SEASONS));
    }

    private ForecastLikely(
            double ofFate, double ofTiming, double fate, double fateReach, double timing, double timingReach) {
        this.ofFate = Math.max(LEAST, ofFate);
        this.ofTiming = Math.max(LEAST, ofTiming);
        this.fateFrom = fate - fateReach;
        this.fateStep = 2 * fateReach / (PLACES - 1);
        this.timingFrom = timing - timingReach;
        this.timingStep = 2 * timingReach / (PLACES - 1);
    }

    double fate(int at) {
        return fateFrom + fateStep * at;
    }

    double timing(int at) {
        return timingFrom + timingStep * at;
    }

    void set(int at, double value) {
        likely[at] = (float) value;
        isFlat &= value >= FLAT;
    }

    /** Return a grid, still to be filled, about where the luck most likely lies. */
    ForecastLikely closer() {
        double[] moments = moments(0, 0, ofFate + SEASONS, ofTiming + SEASONS);
        return new ForecastLikely(
                ofFate,
                ofTiming,
                moments[0],
                Math.min(fateStep * (PLACES - 1) / 2, FAR * Math.sqrt(moments[2]) + NEAR * fateStep),
                moments[1],
                Math.min(timingStep * (PLACES - 1) / 2, FAR * Math.sqrt(moments[4]) + NEAR * timingStep));
    }

    private static double[] normal(double from, double step, double mean, double variance) {
        double[] weights = new double[PLACES];
        double nearest = Double.POSITIVE_INFINITY;
        for (int at = 0; at < PLACES; at++) {
            double off = from + step * at - mean;
            weights[at] = off * off / (2 * variance);
            nearest = Math.min(nearest, weights[at]);
        }
        for (int at = 0; at < PLACES; at++) {
            weights[at] = Math.exp(nearest - weights[at]);
        }
        return weights;
    }

    private double[] moments(double fate, double timing, double fateVariance, double timingVariance) {
        double[] rows = normal(fateFrom, fateStep, fate, fateVariance);
        double[] columns = normal(timingFrom, timingStep, timing, timingVariance);
        double mass = 0;
        double[] sums = new double[5];
        for (int row = 0; row < PLACES; row++) {
            double x = fate(row);
            for (int column = 0; column < PLACES; column++) {
                double weight = likely[row * PLACES + column] * rows[row] * columns[column];
                double y = timing(column);
                mass += weight;
                sums[0] += weight * x;
                sums[1] += weight * y;
                sums[2] += weight * x * x;
                sums[3] += weight * x * y;
                sums[4] += weight * y * y;
            }
        }
        double x = sums[0] / mass;
        double y = sums[1] / mass;
        return new double[] {
            x,
            y,
            // where all lies at one place, rounding must not make a variance negative
            Math.max(0, sums[2] / mass - x * x),
            sums[3] / mass - x * y,
            Math.max(0, sums[4] / mass - y * y)
        };
    }

    /**
     * Return what the cluster tells of its season, near where the season's luck is thought to be: the linear terms of fate and
     * timing in the log likelihood, and the information of fate, of both, and of timing.
     */
    double[] ofSeason(double fate, double timing) {
        double[] m = moments(fate, timing, ofFate, ofTiming);
        double ff = Math.max(0, (1 - m[2] / ofFate) / ofFate);
        double tt = Math.max(0, (1 - m[4] / ofTiming) / ofTiming);
        double most = 0.99 * Math.sqrt(ff * tt);
        double ft = Math.min(most, Math.max(-most, -m[3] / ofFate / ofTiming));
        return new double[] {
            (m[0] - fate) / ofFate + ff * fate + ft * timing,
            (m[1] - timing) / ofTiming + ft * fate + tt * timing,
            ff,
            ft,
            tt
        };
    }

    /** Draw the luck of the cluster, its season's in it, given that of its season. */
    void draw(double fate, double timing, ForecastDice dice, double[] into, int at) {
        if (isFlat) {
            into[at] = fate + Math.sqrt(ofFate) * dice.normal();
            into[at + 1] = timing + Math.sqrt(ofTiming) * dice.normal();
            return;
        }
        double[] rows = normal(fateFrom, fateStep, fate, ofFate);
        double[] columns = normal(timingFrom, timingStep, timing, ofTiming);
        double mass = 0;
        double[] sums = new double[PLACES];
        for (int row = 0; row < PLACES; row++) {
            double sum = 0;
            for (int column = 0; rows[row] > SCARCE && column < PLACES; column++) {
                sum += likely[row * PLACES + column] * columns[column];
            }
            sums[row] = sum * rows[row];
            mass += sums[row];
        }
        double u = dice.uniform() * mass;
        int row = 0;
        while (row < PLACES - 1 && u >= sums[row]) {
            u -= sums[row];
            row++;
        }
        u /= rows[row];
        int column = 0;
        while (column < PLACES - 1 && u >= likely[row * PLACES + column] * columns[column]) {
            u -= likely[row * PLACES + column] * columns[column];
            column++;
        }
        into[at] = fate(row) + fateStep * (dice.uniform() - 0.5);
        into[at + 1] = timing(column) + timingStep * (dice.uniform() - 0.5);
    }
}
