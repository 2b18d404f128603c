package ortet.figures;

import java.util.Objects;
import ortet.value.Defect;

/**
 * The range in which a figure may lie, with how sure that is and how it was worked out.
 *
 * @param lower the lower limit
 * @param upper the upper limit, at least the lower
 * @param confidence how often such an interval holds the true figure in the long run, above 0 and below 1
 * @param method how it was worked out
 */
public record Interval(double lower, double upper, double confidence, Method method) {
    /** How an interval is worked out. */
    public enum Method {
        /** Wilson's score interval of one proportion. */
        WILSON("Wilson score interval"),
        /** Of one group, pooled with the others by a binomial mixed model. */
        MIXED_MODEL("pooled by a binomial mixed model"),
        /** Of one group, pooled with the others by a beta-binomial distribution. */
        BETA_BINOMIAL("pooled by a beta-binomial distribution");

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

    /** Tell whether the interval holds the figure, its limits included. */
    public boolean holds(double figure) {
        return lower <= figure && figure <= upper;
    }
}
