package ortet.yield;

import java.util.Objects;
import ortet.book.UnitFacts.Method;
import ortet.figures.MixedFit;
import ortet.value.Require;

/**
 * How the mothers were told with the help of each other.
 *
 * @param method the method
 * @param mothers how many mothers something is known of
 * @param leftOut how many units whose outcome is known come from no mother known, or from one of several
 * @param confidence of the intervals, above 0 and below 1
 * @param fit the model, with its estimates and remarks
 */
public record Pooled(Method method, int mothers, int leftOut, double confidence, MixedFit fit) {
    public Pooled {
        Objects.requireNonNull(method);
        Require.atLeast(0, mothers, "mothers");
        Require.atLeast(0, leftOut, "left out");
        Objects.requireNonNull(fit);
    }
}
