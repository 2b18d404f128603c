package ortet.figures;

import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import ortet.value.Refused;

/**
 * How many units each of two groups needs, so that two given rates can be told apart.
 *
 * <p>For independent units, with p̄ the mean of the two rates p₁ and p₂, z_a the two-sided quantile of the confidence
 * and z_b the quantile of the power,
 *
 * <pre>n = (z_a √(2 p̄ (1 − p̄)) + z_b √(p₁(1 − p₁) + p₂(1 − p₂)))² / (p₁ − p₂)²</pre>
 *
 * <p>on each side, without continuity correction, which is what R's {@code power.prop.test} solves. Units that come in
 * clusters of m, with a correlation of ρ within a cluster, tell less: n is multiplied by the design effect 1 + (m − 1)ρ,
 * and rounded up to whole clusters. Never fewer than two clusters a side, since from one alone nobody can tell how much
 * clusters differ; below ten or so add one or two for the same reason.
 *
 * @param units on each side
 * @param clusters on each side, at least 2; absent when the units are independent
 * @param designEffect by which the units were multiplied, at least 1
 * @see "Fleiss, Levin & Paik 2003, Statistical Methods for Rates and Proportions, equation 4.14; 15.3 for clusters"
 */
public record Needed(long units, Optional<Long> clusters, double designEffect) {
    /** The power when nobody asks for another: a true difference is missed one time in five. */
    public static final double POWER = 0.8;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /**
     * Return how many independent units each side needs.
     *
     * @param first rate, in [0, 1]
     * @param second rate, in [0, 1], other than the first
     * @param confidence above 0 and below 1, such as 0.95
     * @param power above 0 and below 1, such as {@link #POWER}
     * @throws Refused when one of them is out of its range, or the rates are equal
     */
    public static Needed independent(double first, double second, double confidence, double power) {
        return new Needed(whole(exactly(first, second, confidence, power)), Optional.empty(), 1);
    }

    /**
     * Return how many units each side needs when they come in clusters.
     *
     * @param first rate, in [0, 1]
     * @param second rate, in [0, 1], other than the first
     * @param size units in a cluster, at least 1
     * @param correlation of two units of one cluster, in [0, 1]
     * @param confidence above 0 and below 1, such as 0.95
     * @param power above 0 and below 1, such as {@link #POWER}
     * @return units in whole clusters
     * @throws Refused when one of them is out of its range, or the rates are equal
     */
    public static Needed clustered(
            double first, double second, int size, double correlation, double confidence, double power) {
        if (size < 1) {
            throw Refused.because("bad-size", "expected a cluster of at least 1, found " + size);
        }
        between(correlation, "a correlation from 0 to 1");
        double designEffect = 1 + (size - 1) * correlation;
        double units = exactly(first, second, confidence, power) * designEffect;
        long clusters = Math.max(2, whole(units / size));
        return new Needed(Math.multiplyExact(clusters, (long) size), Optional.of(clusters), designEffect);
    }

    /** Return the number of independent units on each side that gives just the power, not rounded. */
    static double exactly(double first, double second, double confidence, double power) {
        between(first, "a rate from 0 to 1");
        between(second, "a rate from 0 to 1");
        if (first == second) {
            throw Refused.because("equal-rates", "expected two rates that differ, found " + first + " twice");
        }
        if (!(power > 0 && power < 1)) {
            throw Refused.because("bad-power", "expected a power above 0 and below 1, such as 0.8, found " + power);
        }
        double mean = (first + second) / 2;
        double level = Wilson.quantile(confidence) * Math.sqrt(2 * mean * (1 - mean));
        double reach =
                NORMAL.inverseCumulativeProbability(power) * Math.sqrt(first * (1 - first) + second * (1 - second));
        double sum = Math.max(0, level + reach);
        return sum * sum / ((first - second) * (first - second));
    }

    private static long whole(double number) {
        if (number >= Long.MAX_VALUE) {
            throw Refused.because("equal-rates", "the rates are too near to each other to be told apart");
        }
        // a number that is whole but for rounding stays as it is
        return Math.max(1, (long) Math.ceil(number * (1 - 1e-12)));
    }

    private static void between(double number, String expected) {
        if (!(number >= 0 && number <= 1)) {
            throw Refused.because("bad-share", "expected " + expected + ", found " + number);
        }
    }
}
