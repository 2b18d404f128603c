package ortet.figures;

import java.util.Optional;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * Jeffreys' interval of one proportion: with x of n, the two quantiles of Beta(x + 1/2, n − x + 1/2) that leave
 * (1 − confidence) / 2 on either side, which is the posterior of the share under the prior Beta(1/2, 1/2).
 *
 * <p>When nothing succeeded the lower limit is 0, and when everything did the upper is 1, so that the observed share is
 * never outside ({@link #interval}); the bare quantiles are those of {@link #quantiles}. The trials must be independent.
 *
 * @see "Brown, Cai & DasGupta 2001, Statistical Science 16:101, section 4.1.1"
 */
public final class Jeffreys {
    private Jeffreys() {}

    /**
     * Return the interval, within [0, 1], with limits of 0 and 1 at the ends.
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @return the interval; absent when there were no trials
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static Optional<Interval> interval(Count count, double confidence) {
        return quantiles(count, confidence)
                .map(bare -> new Interval(
                        count.successes() == 0 ? 0 : bare.lower(),
                        count.successes() == count.trials() ? 1 : bare.upper(),
                        confidence,
                        Interval.Method.JEFFREYS));
    }

    /**
     * Return the bare quantiles of the posterior, which leave out the observed share when it is 0 or 1.
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @return the interval; absent when there were no trials
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static Optional<Interval> quantiles(Count count, double confidence) {
        Wilson.checkConfidence(confidence);
        if (count.trials() == 0) {
            return Optional.empty();
        }
        BetaDistribution posterior =
                BetaDistribution.of(count.successes() + 0.5, count.failures().successes() + 0.5);
        double tail = (1 - confidence) / 2;
        return Optional.of(new Interval(
                posterior.inverseCumulativeProbability(tail),
                posterior.inverseSurvivalProbability(tail),
                confidence,
                Interval.Method.JEFFREYS));
    }
}
