package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import ortet.value.Refused;

/** Outside values: {@code oracles/proportions.csv} (R 4.2.2 {@code binom.test}). */
class ClopperPearsonTests {
    private static final double TO_R = 1e-9;

    @ParameterizedTest(name = "{0} of {1} at {2}")
    @CsvFileSource(resources = "/oracles/proportions.csv", numLinesToSkip = 1)
    void agreesWithR(ArgumentsAccessor row) {
        Interval exact = ClopperPearson.interval(new Count(row.getLong(0), row.getLong(1)), row.getDouble(2))
                .orElseThrow();
        assertEquals(row.getDouble(10), exact.lower(), TO_R);
        assertEquals(row.getDouble(11), exact.upper(), TO_R);
    }

    @Test
    void isExactlyZeroOrOneAtTheEnds() {
        assertEquals(
                0, ClopperPearson.interval(new Count(0, 60), 0.95).orElseThrow().lower());
        assertEquals(
                1,
                ClopperPearson.interval(new Count(60, 60), 0.95).orElseThrow().upper());
        // nothing of n: the upper limit solves (1 − π)^n = 2.5 %, by hand
        assertEquals(
                1 - Math.pow(0.025, 1.0 / 60),
                ClopperPearson.interval(new Count(0, 60), 0.95).orElseThrow().upper(),
                1e-12);
    }

    @Test
    void isAbsentWhenNothingIsKnownAndRefusesAConfidenceThatIsNone() {
        assertTrue(ClopperPearson.interval(new Count(0, 0), 0.95).isEmpty());
        assertThrows(Refused.class, () -> ClopperPearson.interval(new Count(1, 2), 1));
    }

    /** Computed another way: the limits put back into the binomial distribution. */
    @Property(tries = 200)
    void leavesTheStatedTailsOfTheBinomial(
            @ForAll @IntRange(min = 1, max = 2000) int trials,
            @ForAll @DoubleRange(min = 0, max = 1) double part,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double confidence) {
        int taken = Math.min(trials, (int) (part * (trials + 1)));
        Interval exact =
                ClopperPearson.interval(new Count(taken, trials), confidence).orElseThrow();
        double tail = (1 - confidence) / 2;
        if (taken > 0) {
            assertEquals(tail, BinomialDistribution.of(trials, exact.lower()).survivalProbability(taken - 1), 1e-9);
        }
        if (taken < trials) {
            assertEquals(tail, BinomialDistribution.of(trials, exact.upper()).cumulativeProbability(taken), 1e-9);
        }
    }
}
