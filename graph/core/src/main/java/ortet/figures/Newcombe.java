package ortet.figures;

import java.util.Optional;

/**
 * Newcombe's hybrid score interval for a difference of two proportions, first minus second, without continuity
 * correction.
 *
 * <p>With the observed shares p₁ and p₂, and the Wilson limits l and u of each, the limits are
 *
 * <pre>
 * p₁ − p₂ − √((p₁ − l₁)² + (u₂ − p₂)²)
 * p₁ − p₂ + √((u₁ − p₁)² + (p₂ − l₂)²)
 * </pre>
 *
 * <p>They stay within [−1, 1], since each Wilson limit is within [0, 1] (only rounding is cut off). Exchanging the sides
 * turns the interval over; so does exchanging success and failure. The trials must be independent: for units that came in
 * trays or from few mothers take {@link Clustered#difference}.
 *
 * @see "Newcombe 1998, Statistics in Medicine 17:873, method 10"
 */
public final class Newcombe {
    private Newcombe() {}

    /**
     * Return the interval of the first share minus the second, within [−1, 1].
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @return the interval; absent when nothing is known of one side
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static Optional<Interval> difference(Count first, Count second, double confidence) {
        Optional<Interval> one = Wilson.interval(first, confidence);
        Optional<Interval> other = Wilson.interval(second, confidence);
        if (one.isEmpty() || other.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(difference(
                first.share().orElseThrow(),
                one.get(),
                second.share().orElseThrow(),
                other.get(),
                Interval.Method.NEWCOMBE));
    }

    /** Return the interval of a difference out of the interval of either side, both at the same confidence. */
    static Interval difference(double p1, Interval first, double p2, Interval second, Interval.Method method) {
        double difference = p1 - p2;
        double down = Math.hypot(p1 - first.lower(), second.upper() - p2);
        double up = Math.hypot(first.upper() - p1, p2 - second.lower());
        return new Interval(Math.max(-1, difference - down), Math.min(1, difference + up), first.confidence(), method);
    }
}
