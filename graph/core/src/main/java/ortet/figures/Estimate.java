package ortet.figures;

import ortet.value.Defect;

/**
 * A figure estimated from data.
 *
 * @param value finite
 * @param standardError above or equal to 0, on the same scale
 */
public record Estimate(double value, double standardError) {
    public Estimate {
        if (!(Double.isFinite(value) && Double.isFinite(standardError) && standardError >= 0)) {
            throw new Defect("no estimate of " + value + " with a standard error of " + standardError);
        }
    }
}
