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
        return Optional.of(
                new Interval(lower(count, z), 1 - lower(count.failures(), z), confidence, Interval.Method.WILSON));
    }

    private static double lower(Count count, double z) {
        double x = count.successes();
        double n = count.trials();
        double half = z * z / 2;
        double spread = z * Math.sqrt(x * ((n - x) / n) + z * z / 4);
        return x * (x / n) / (x + half + spread);
    }

    /** Return z such that a standard normal figure lies within ±z with the given probability. */
    static double quantile(double confidence) {
        if (!(confidence > 0 && confidence < 1)) {
            throw Refused.because(
                    "bad-confidence", "expected a confidence above 0 and below 1, such as 0.95, found " + confidence);
        }
        return NORMAL.inverseSurvivalProbability((1 - confidence) / 2);
    }
}
