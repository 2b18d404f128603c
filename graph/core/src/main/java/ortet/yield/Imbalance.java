package ortet.yield;

import java.util.Objects;

/**
 * How far two sides differ in a circumstance, so that a difference of their rates may be its doing.
 *
 * @param factor what differs: {@code season}, {@code stock age}, {@code operator}, {@code place}, {@code cultivar} or
 *     {@code method}
 * @param apart what share of the units, of those of which it is told, would have to be otherwise for the sides to be
 *     alike, in [0, 1]
 * @param value where they differ most; empty where it is told of one side alone
 * @param first what share of the first side that is
 * @param second what share of the second side that is
 * @param firstTold of what share of the first side the factor is told
 * @param secondTold of what share of the second side
 */
public record Imbalance(
        String factor, double apart, String value, double first, double second, double firstTold, double secondTold) {
    /** From what share on two sides are not alike. */
    public static final double MUCH = 0.2;

    private static final double HALF = 0.5;

    public Imbalance {
        Objects.requireNonNull(factor);
        Objects.requireNonNull(value);
    }

    /** Tell whether the factor is told of at least half of either side, so that the sides can be held against each other. */
    public boolean isTold() {
        return firstTold >= HALF && secondTold >= HALF;
    }

    /** Tell whether so much differs that the comparison is unfair. */
    public boolean isMuch() {
        return isTold() && apart > MUCH;
    }
}
