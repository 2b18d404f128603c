package ortet.choice;

import ortet.figures.Interval;

/** Reads a range off the probabilities of 0, 1, 2, … trees. */
final class PlanRange {
    private PlanRange() {}

    /** Return where the number lies with a probability of at least 90 %, at most 5 % below and at most 5 % above. */
    static Interval of(double[] distribution) {
        double tail = (1 - PlanHistory.CONFIDENCE) / 2;
        int lower = 0;
        double below = 0;
        while (lower < distribution.length - 1 && below + distribution[lower] <= tail) {
            below += distribution[lower++];
        }
        int upper = distribution.length - 1;
        double above = 0;
        while (upper > lower && above + distribution[upper] <= tail) {
            above += distribution[upper--];
        }
        return new Interval(lower, upper, PlanHistory.CONFIDENCE, Interval.Method.BETA_BINOMIAL);
    }

    /** Return the mean. */
    static double mean(double[] distribution) {
        double mean = 0;
        for (int at = 0; at < distribution.length; at++) {
            mean += at * distribution[at];
        }
        return mean;
    }

    /** Return the probability of at least so many. */
    static double atLeast(double[] distribution, int count) {
        double sum = 0;
        for (int at = distribution.length - 1; at >= count; at--) {
            sum += distribution[at];
        }
        return Math.min(1, sum);
    }
}
