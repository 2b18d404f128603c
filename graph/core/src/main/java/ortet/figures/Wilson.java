package ortet.figures;

import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import ortet.value.Refused;

/**
 * Wilson's score interval of one proportion, without continuity correction.
 *
 * <p>The limits are the two shares π that the score test at the given level just does not reject: the roots of
 * (p − π)² = z² π (1 − π) / n, with p the observed share of n trials and z the two-sided quantile of the standard normal
 * distribution. With x successes the lower root is
 *
 * <pre>(x² / n) / (x + z²/2 + z √(x (n − x) / n + z²/4))</pre>
 *
 * <p>and the upper one is 1 minus the lower root for n − x. In this form nothing cancels, so that both limits are good to
 * the last digits for any n; the lower limit is exactly 0 when nothing succeeded, the upper exactly 1 when everything
 * did, and the observed share is always inside.
 *
 * <p>The true coverage swings about the nominal one and may fall below it near 0 and 1. It is the interval of
 * <em>independent</em> trials: units that share a tray or a mother are not, and need a wider one.
 *
 * @see "Wilson 1927, Journal of the American Statistical Association 22:209"
 * @see "Newcombe 1998, Statistics in Medicine 17:857, method 3"
 */
public final class Wilson {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private Wilson() {}

    /**
     * Return the interval, within [0, 1].
     *
     * @param count successes and trials
     * @param confidence above 0 and below 1, such as 0.95
     * @return the interval; absent when there were no trials
     * @throws Refused when the confidence is out of its range
     */
    public static Optional<Interval> interval(Count count, double confidence) {
        double z = quantile(confidence);
        if (count.trials() == 0) {
            return Optional.empty();
        }
        double taken = count.successes();
        double failed = count.failures().successes();
        double trials = count.trials();
        return Optional.of(new Interval(
                lower(taken, trials, z), 1 - lower(failed, trials, z), confidence, Interval.Method.WILSON));
    }

    /**
     * Return the interval of a share that was seen in an effective number of trials: as many independent ones as would
     * have told as much. It need not be whole.
     *
     * @param share in [0, 1]
     * @param effective above 0
     * @param confidence above 0 and below 1, such as 0.95
     * @throws Refused when one of them is out of its range
     */
    public static Interval interval(double share, double effective, double confidence) {
        return interval(share, effective, quantile(confidence), confidence, Interval.Method.WILSON);
    }

    /** Return the interval with z handed in, such as a quantile of Student's t. */
    static Interval interval(double share, double effective, double z, double confidence, Interval.Method method) {
        if (!(share >= 0 && share <= 1 && effective > 0 && effective < Double.POSITIVE_INFINITY)) {
            throw Refused.because(
                    "bad-share",
                    "expected a share from 0 to 1 of a number of trials above 0, found " + share + " of " + effective);
        }
        double lower = lower(share * effective, effective, z);
        double upper = 1 - lower((1 - share) * effective, effective, z);
        return new Interval(Math.min(lower, upper), upper, confidence, method);
    }

    private static double lower(double x, double n, double z) {
        double half = z * z / 2;
        double spread = z * Math.sqrt(x * ((n - x) / n) + z * z / 4);
        return x * (x / n) / (x + half + spread);
    }

    /** Return z such that a standard normal figure lies within ±z with the given probability. */
    static double quantile(double confidence) {
        checkConfidence(confidence);
        return NORMAL.inverseSurvivalProbability((1 - confidence) / 2);
    }

    /** Refuse a confidence that is none. */
    static void checkConfidence(double confidence) {
        if (!(confidence > 0 && confidence < 1)) {
            throw Refused.because(
                    "bad-confidence", "expected a confidence above 0 and below 1, such as 0.95, found " + confidence);
        }
    }
}
