package ortet.choice;

/**
 * What share has come to a good and to a bad end by every age, and what share is left: the cumulative incidences of two ends
 * that exclude one another, in steps of a quarter of a month of the stage's own clock, straight between steps.
 *
 * @see "Aalen & Johansen 1978, Scandinavian Journal of Statistics 5:141"
 */
final class ForecastCurve {
    /** Steps in a month. */
    static final int STEPS = 4;

    private final double[] good;
    private final double[] bad;
    private final double[] left;

    private ForecastCurve(double[] good, double[] bad, double[] left) {
        this.good = good;
        this.bad = bad;
        this.left = left;
    }

    /**
     * Work out the curve of so many units.
     *
     * @param good how many came to a good end in each step
     * @param bad how many came to a bad one
     * @param out how many were followed until some time in that step and no longer
     */
    static ForecastCurve of(double[] good, double[] bad, double[] out) {
        int steps = good.length;
        double atRisk = 0;
        for (int step = 0; step < steps; step++) {
            atRisk += good[step] + bad[step] + out[step];
        }
        double[] sumGood = new double[steps + 1];
        double[] sumBad = new double[steps + 1];
        double[] left = new double[steps + 1];
        left[0] = 1;
        for (int step = 0; step < steps; step++) {
            double ends = good[step] + bad[step];
            // who left within the step was there for half of it
            double there = Math.max(ends, atRisk - out[step] / 2);
            double share = ends > 0 ? left[step] / there : 0;
            sumGood[step + 1] = sumGood[step] + share * good[step];
            sumBad[step + 1] = sumBad[step] + share * bad[step];
            left[step + 1] = Math.max(0, left[step] - share * ends);
            atRisk = Math.max(0, atRisk - ends - out[step]);
        }
        return new ForecastCurve(sumGood, sumBad, left);
    }

    /** Return the number of steps. */
    int steps() {
        return good.length - 1;
    }

    /** Return the share that comes to a good end within a step. */
    double goodIn(int step) {
        return good[step + 1] - good[step];
    }

    /** Return the share that comes to a bad end within a step. */
    double badIn(int step) {
        return bad[step + 1] - bad[step];
    }

    /** Return the share that comes to a good end, as far as can be seen. */
    double good() {
        return good[good.length - 1];
    }

    /** Return the share that comes to a bad end, as far as can be seen. */
    double bad() {
        return bad[bad.length - 1];
    }

    /** Return the share of which nobody has seen how it ends. */
    double rest() {
        return left[left.length - 1];
    }

    /** Return the share that has come to a good end by an age in months. */
    double goodBy(double age) {
        return at(good, age);
    }

    /** Return the share that has come to a bad end by an age in months. */
    double badBy(double age) {
        return at(bad, age);
    }

    /** Return the share that is left at an age in months. */
    double leftAt(double age) {
        return at(left, age);
    }

    private static double at(double[] sums, double age) {
        double place = Math.max(0, age) * STEPS;
        int step = (int) place;
        if (step >= sums.length - 1) {
            return sums[sums.length - 1];
        }
        return sums[step] + (place - step) * (sums[step + 1] - sums[step]);
    }

    /** Return the share of those left at an age that will come to a good end; 0 where none was ever left at that age. */
    double chance(double age) {
        double there = leftAt(age);
        return there > 1e-9 ? Math.min(1, Math.max(0, (good() - goodBy(age)) / there)) : 0;
    }

    /** Return the age by which half of those that come to a good end have; absent (negative) where none do. */
    double median() {
        double half = good() / 2;
        for (int step = 0; half > 0 && step < steps(); step++) {
            if (good[step + 1] >= half) {
                return (step + (half - good[step]) / (good[step + 1] - good[step])) / STEPS;
            }
        }
        return -1;
    }
}
