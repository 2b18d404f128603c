package ortet.figures;

import java.util.Optional;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * The exact interval of one proportion: the shares for which neither x or fewer nor x or more successes of n are less
 * likely than (1 − confidence) / 2. The lower limit is a quantile of Beta(x, n − x + 1), 0 when nothing succeeded; the
 * upper one of Beta(x + 1, n − x), 1 when everything did.
 *
 * <p>It covers the true share at least as often as stated, for small n far more often; take {@link Wilson} unless a
 * guarantee is asked for. The trials must be independent.
 *
 * @see "Clopper & Pearson 1934, Biometrika 26:404"
 */
public final class ClopperPearson {
    private ClopperPearson() {}

    /**
     * Return the interval, within [0, 1].
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @return the interval; absent when there were no trials
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static Optional<Interval> interval(Count count, double confidence) {
        Wilson.checkConfidence(confidence);
        if (count.trials() == 0) {
            return Optional.empty();
        }
        double taken = count.successes();
        double failed = count.failures().successes();
        double tail = (1 - confidence) / 2;
        double lower = taken == 0 ? 0 : BetaDistribution.of(taken, failed + 1).inverseCumulativeProbability(tail);
        double upper = failed == 0 ? 1 : BetaDistribution.of(taken + 1, failed).inverseSurvivalProbability(tail);
        return Optional.of(new Interval(lower, upper, confidence, Interval.Method.CLOPPER_PEARSON));
    }
}
