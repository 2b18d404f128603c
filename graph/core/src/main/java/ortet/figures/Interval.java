package ortet.figures;

import java.util.Objects;
import ortet.value.Defect;

/**
 * The range in which a figure may lie, with how sure that is and how it was worked out.
 *
 * @param lower the lower limit, or {@code -Infinity} where there is none
 * @param upper the upper limit, at least the lower, or {@code Infinity} where there is none
 * @param confidence how often such an interval holds the true figure in the long run, above 0 and below 1
 * @param method how it was worked out
 */
public record Interval(double lower, double upper, double confidence, Method method) {
    /** How an interval is worked out. */
    public enum Method {
        /** Wilson's score interval of one proportion. */
        WILSON("Wilson score interval"),
        /** Wilson's score interval on the effective count of a clustered sample, with a quantile of Student's t. */
        WILSON_CLUSTERED("Wilson score interval on the effective count"),
        /** Jeffreys' interval of one proportion: quantiles of the posterior under the prior Beta(1/2, 1/2). */
        JEFFREYS("Jeffreys interval"),
        /** The exact interval of one proportion, of Clopper and Pearson. */
        CLOPPER_PEARSON("Clopper-Pearson exact interval"),
        /** Newcombe's hybrid score interval of a difference of two proportions. */
        NEWCOMBE("Newcombe hybrid score interval"),
        /** Newcombe's interval built from the limits of two clustered samples. */
        NEWCOMBE_CLUSTERED("Newcombe hybrid score interval on the effective counts"),
        /** The exact interval of an odds ratio, conditional on the margins. */
        CONDITIONAL("conditional exact interval"),
        /** The interval of a Mantel-Haenszel odds ratio, of Robins, Breslow and Greenland. */
        ROBINS_BRESLOW_GREENLAND("Robins-Breslow-Greenland interval"),
        /** The interval of a Mantel-Haenszel difference, with Sato's variance. */
        SATO("Mantel-Haenszel difference with Sato's variance"),
        /** Limits of a share over time, symmetric on the scale log(-log). */
        LOG_LOG("log-log limits"),
        /** Limits of a median: the times at which the limits of the curve pass one half. */
        BROOKMEYER_CROWLEY("Brookmeyer-Crowley interval"),
        /** Quantiles of what comes out when the sample is drawn anew from itself, many times over. */
        BOOTSTRAP("percentile bootstrap"),
        /** Limits symmetric on the logarithmic scale, by the delta method. */
        DELTA("delta method on the logarithm");

        private final String title;

        Method(String title) {
            this.title = title;
        }

        /** Return what to call the method beside its figures. */
        public String title() {
            return title;
        }
    }

    public Interval {
        Objects.requireNonNull(method);
        if (!(lower <= upper && confidence > 0 && confidence < 1)) {
            throw new Defect("no interval from " + lower + " to " + upper + " at " + confidence);
        }
    }

    /** Tell whether both limits are numbers, so that the figure is bounded on either side. */
    public boolean isBounded() {
        return Double.isFinite(lower) && Double.isFinite(upper);
    }

    /** Return how far the limits are apart, {@code Infinity} where one is missing. */
    public double width() {
        return upper - lower;
    }

    /** Tell whether the interval holds the figure, its limits included. */
    public boolean holds(double figure) {
        return lower <= figure && figure <= upper;
    }
}
