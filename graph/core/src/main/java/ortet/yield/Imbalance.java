package ortet.yield;

import java.util.Objects;

/**
 * A circumstance in which two sides differ, so that a difference of their rates may be its doing.
 *
 * @param factor what differs: {@code season}, {@code stock age}, {@code operator}, {@code place}, {@code cultivar} or
 *     {@code method}
 * @param apart what share of the units would have to be otherwise for the sides to be alike, in [0, 1]
 * @param value where they differ most
 * @param first what share of the first side that is
 * @param second what share of the second side that is
 */
public record Imbalance(String factor, double apart, String value, double first, double second) {
    /** From what share on two sides are not alike. */
    public static final double MUCH = 0.2;

    public Imbalance {
        Objects.requireNonNull(factor);
        Objects.requireNonNull(value);
    }

    /** Tell whether so much differs that the comparison is unfair. */
    public boolean isMuch() {
        return apart > MUCH;
    }
}
