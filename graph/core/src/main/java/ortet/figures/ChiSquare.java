package ortet.figures;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import ortet.value.Defect;

/**
 * A test whose statistic has, where its hypothesis holds, about the chi-square distribution.
 *
 * @param statistic at least 0
 * @param degrees of freedom, at least 1
 */
public record ChiSquare(double statistic, int degrees) {
    public ChiSquare {
        if (!(statistic >= 0 && degrees >= 1)) {
            throw new Defect("no chi-square of " + statistic + " on " + degrees);
        }
    }

    /** Return how likely a statistic at least as great is where the hypothesis holds. */
    public double p() {
        return ChiSquaredDistribution.of(degrees).survivalProbability(statistic);
    }
}
