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
        WILSON(
                "Wilson score interval",
                "Wilson 1927, J. Am. Stat. Assoc. 22:209; Newcombe 1998, Stat. Med. 17:857, method 3"),
        /** Wilson's score interval on the effective count of a clustered sample, with a quantile of Student's t. */
        WILSON_CLUSTERED(
                "Wilson score interval on the effective count",
                "Rao & Scott 1992, Biometrics 48:577, for the effective count; t on effective clusters less 1"),
        /** Limits of a ratio of two totals over clusters, symmetric on the logarithmic scale, with Student's t. */
        RATIO_CLUSTERED(
                "ratio of totals over clusters",
                "Cochran 1977, Sampling Techniques, section 6.3; t on effective clusters less 1"),
        /** Jeffreys' interval of one proportion: quantiles of the posterior under the prior Beta(1/2, 1/2). */
        JEFFREYS("Jeffreys interval", "Brown, Cai & DasGupta 2001, Statistical Science 16:101"),
        /** The exact interval of one proportion, of Clopper and Pearson. */
        CLOPPER_PEARSON("Clopper-Pearson exact interval", "Clopper & Pearson 1934, Biometrika 26:404"),
        /** Newcombe's hybrid score interval of a difference of two proportions. */
        NEWCOMBE("Newcombe hybrid score interval", "Newcombe 1998, Stat. Med. 17:873, method 10"),
        /** Newcombe's interval built from the limits of two clustered samples. */
        NEWCOMBE_CLUSTERED(
                "Newcombe hybrid score interval on the effective counts",
                "Newcombe 1998, Stat. Med. 17:873, method 10; Rao & Scott 1992, Biometrics 48:577, for the effective counts"),
        /** The exact interval of an odds ratio, conditional on the margins. */
        CONDITIONAL(
                "conditional exact interval",
                "Fisher 1935, J. R. Stat. Soc. 98:39; Cornfield 1956, Proc. Third Berkeley Symposium 4:135"),
        /** The interval of a Mantel-Haenszel odds ratio, of Robins, Breslow and Greenland. */
        ROBINS_BRESLOW_GREENLAND(
                "Robins-Breslow-Greenland interval",
                "Mantel & Haenszel 1959, J. Natl. Cancer Inst. 22:719; Robins, Breslow & Greenland 1986, Biometrics 42:311"),
        /** The interval of a Mantel-Haenszel difference, with Sato's variance. */
        SATO("Mantel-Haenszel difference with Sato's variance", "Sato 1989, Biometrics 45:1323"),
        /** Of one group, pooled with the others by a binomial mixed model. */
        MIXED_MODEL(
                "pooled by a binomial mixed model",
                "Breslow & Clayton 1993, J. Am. Stat. Assoc. 88:9; Kass & Steffey 1989, J. Am. Stat. Assoc. 84:717"),
        /** Of one group, pooled with the others by a beta-binomial distribution. */
        BETA_BINOMIAL("pooled by a beta-binomial distribution", "Skellam 1948, J. R. Stat. Soc. B 10:257"),
        /** Limits of a share over time, symmetric on the scale log(-log). */
        LOG_LOG(
                "log-log limits",
                "Kalbfleisch & Prentice 2002, The Statistical Analysis of Failure Time Data, section 1.4"),
        /** Limits of a median: the times at which the limits of the curve pass one half. */
        BROOKMEYER_CROWLEY("Brookmeyer-Crowley interval", "Brookmeyer & Crowley 1982, Biometrics 38:29"),
        /** Quantiles of what comes out when the sample is drawn anew from itself, many times over. */
        BOOTSTRAP("percentile bootstrap", "Efron & Tibshirani 1993, An Introduction to the Bootstrap, section 13.3"),
        /** Limits symmetric on the logarithmic scale, by the delta method. */
        DELTA(
                "delta method on the logarithm",
                "Kalbfleisch & Prentice 2002, The Statistical Analysis of Failure Time Data, chapter 3");

        private final String title;
        private final String source;

        Method(String title, String source) {
            this.title = title;
            this.source = source;
        }

        /** Return what to call the method beside its figures. */
        public String title() {
            return title;
        }

        /** Return where the method is published. */
        public String source() {
            return source;
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
