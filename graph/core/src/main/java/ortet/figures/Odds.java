package ortet.figures;

import java.util.Objects;

/**
 * An odds ratio, first group against second, with its interval. The ratio may be infinite or not defined; the interval is
 * then one-sided, or from 0 to {@code Infinity}.
 */
public record Odds(Ratio ratio, Interval interval) {
    public Odds {
        Objects.requireNonNull(ratio);
        Objects.requireNonNull(interval);
    }
}
