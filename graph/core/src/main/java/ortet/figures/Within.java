package ortet.figures;

import ortet.value.Refused;

/**
 * A time known to lie within (left, right]: not yet at one look, done at the next.
 *
 * @param left the last time at which it had not happened, at least 0; 0 when nobody had looked
 * @param right the first time at which it had, at least the left; {@code Infinity} when it had not happened at the last look.
 *     Equal to the left for a time known exactly, which must be above 0
 */
public record Within(double left, double right) {
    public Within {
        if (!(left >= 0 && left <= right && left < Double.POSITIVE_INFINITY && right > 0)) {
            throw Refused.because(
                    "bad-time",
                    "expected a time after one of at least 0 and up to one that is not before it, found " + left
                            + " to " + right);
        }
    }

    /** Say that it happened at this very time, above 0. */
    public static Within exactly(double time) {
        return new Within(time, time);
    }

    /** Say that it had not happened by this time. */
    public static Within after(double time) {
        return new Within(time, Double.POSITIVE_INFINITY);
    }

    /** Tell whether the time is known exactly. */
    public boolean isExact() {
        return left == right;
    }

    /** Tell whether it is known to have happened. */
    public boolean hasHappened() {
        return right < Double.POSITIVE_INFINITY;
    }
}
