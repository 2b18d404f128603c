package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.value.Refused;

/**
 * Outside values: {@code oracles/proportions.csv} (R 4.2.2 {@code prop.test(correct = FALSE)}, each computed a second time
 * from the formula), with limits of Newcombe 1998, Table I, as quoted; {@code oracles/bartlett-1935-plum-cuttings.csv}
 * (Bartlett 1935, J. R. Stat. Soc. Suppl. 2:248) and {@code oracles/derived-intervals.csv} (intervals for those counts and
 * for those of Ridout, Hinde & Demétrio 1998, from R and again from Python).
 */
class WilsonTests {
    /** What R's own double arithmetic can be trusted to, as the note with the values says. */
    private static final double TO_R = 1e-9;

    private static Interval wilson(long successes, long trials, double confidence) {
        return Wilson.interval(new Count(successes, trials), confidence).orElseThrow();
    }

    @ParameterizedTest(name = "{0} of {1} at {2}")
    @CsvFileSource(resources = "/oracles/proportions.csv", numLinesToSkip = 1)
    void agreesWithR(ArgumentsAccessor row) {
        Interval wilson = wilson(row.getLong(0), row.getLong(1), row.getDouble(2));
        assertEquals(row.getDouble(4), wilson.lower(), TO_R);
        assertEquals(row.getDouble(5), wilson.upper(), TO_R);
        assertEquals(row.getDouble(2), wilson.confidence());
        if (row.getString(12) != null) {
            // printed to four decimals
            assertEquals(row.getDouble(12), wilson.lower(), 0.5e-4);
            assertEquals(row.getDouble(13), wilson.upper(), 0.5e-4);
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/oracles/derived-intervals.csv", numLinesToSkip = 1)
    void agreesWithTheIntervalsOfPublishedCounts(ArgumentsAccessor row) {
        Count count = new Count(row.getLong(1), row.getLong(2));
        Interval wilson = Wilson.interval(count, 0.95).orElseThrow();
        // percent to four decimals
        assertEquals(row.getDouble(3), 100 * count.share().orElseThrow(), 0.5e-4);
        assertEquals(row.getDouble(4), 100 * wilson.lower(), 0.5e-4);
        assertEquals(row.getDouble(5), 100 * wilson.upper(), 0.5e-4);
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvFileSource(resources = "/oracles/bartlett-1935-plum-cuttings.csv", numLinesToSkip = 1)
    void solvesTheScoreEquationForBartlettsPlumCuttings(
            String plantingTime, String length, long planted, long alive, long dead) {
        assertEquals(planted, alive + dead);
        Interval wilson = wilson(alive, planted, 0.95);
        assertScoreEquation(alive, planted, 0.95, wilson.lower());
        assertScoreEquation(alive, planted, 0.95, wilson.upper());
    }

    /** Computed another way: the limits put back into the equation that defines them. */
    private static void assertScoreEquation(long successes, long trials, double confidence, double limit) {
        double z = Wilson.quantile(confidence);
        double p = (double) successes / trials;
        double score = Math.abs(p - limit) * Math.sqrt(trials);
        double bound = z * Math.sqrt(limit * (1 - limit));
        // the left side is a difference of two numbers in [0, 1], good to 1e-16 √n
        assertEquals(bound, score, 1e-14 * Math.sqrt(trials) + 1e-12 * bound);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 17, 60, 1000, 1_000_000, 1_000_000_000_000L})
    void isExactlyZeroWhenNothingTookAndExactlyOneWhenAllDid(long trials) {
        for (double confidence : new double[] {0.5, 0.9, 0.95, 0.999}) {
            Interval none = wilson(0, trials, confidence);
            Interval all = wilson(trials, trials, confidence);
            assertEquals(0.0, none.lower());
            assertEquals(1.0, all.upper());
            double z = Wilson.quantile(confidence);
            // z² / (n + z²): the upper limit when nothing took, solved by hand; a limit near 1 has lost no more than
            // 1e-16
            double byHand = z * z / (trials + z * z);
            assertEquals(byHand, none.upper(), 1e-15);
            assertEquals(1 - byHand, all.lower(), 1e-15);
        }
    }

    @Test
    void staysExactForAMillion() {
        for (long successes : new long[] {1, 2, 500_000, 999_999}) {
            Interval wilson = wilson(successes, 1_000_000, 0.95);
            assertScoreEquation(successes, 1_000_000, 0.95, wilson.lower());
            assertScoreEquation(successes, 1_000_000, 0.95, wilson.upper());
        }
        // half of a million: z √(n/4 + z²/4) / (n + z²) to either side, by symmetry
        double z = 1.959963984540054; // Python's statistics.NormalDist().inv_cdf(0.975)
        double side = z * Math.sqrt(250_000 + z * z / 4) / (1_000_000 + z * z);
        assertEquals(z, Wilson.quantile(0.95), 1e-15);
        Interval half = wilson(500_000, 1_000_000, 0.95);
        assertEquals(0.5 - side, half.lower(), 1e-15);
        assertEquals(0.5 + side, half.upper(), 1e-15);
    }

    @Test
    void isAbsentWhenNothingIsKnown() {
        assertTrue(Wilson.interval(new Count(0, 0), 0.95).isEmpty());
        assertTrue(new Count(0, 0).share().isEmpty());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -0.1, 1.1, 95, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesAConfidenceThatIsNone(double confidence) {
        Refused refused = assertThrows(Refused.class, () -> Wilson.interval(new Count(1, 2), confidence));
        assertEquals(
                List.of("expected a confidence above 0 and below 1, such as 0.95, found " + confidence),
                refused.lines());
        assertThrows(Refused.class, () -> Wilson.interval(new Count(0, 0), confidence));
    }

    @Test
    void namesItsMethod() {
        assertEquals("Wilson score interval", wilson(1, 2, 0.95).method().title());
    }

    @Test
    void takesAnEffectiveCountThatIsNotWhole() {
        // the score equation of 0.4 of 17.5, put back: (p − π)² = z² π (1 − π) / n
        Interval wilson = Wilson.interval(0.4, 17.5, 0.95);
        double z = Wilson.quantile(0.95);
        for (double limit : new double[] {wilson.lower(), wilson.upper()}) {
            assertEquals(z * z * limit * (1 - limit) / 17.5, (0.4 - limit) * (0.4 - limit), 1e-15);
        }
        assertEquals(0, Wilson.interval(0, 0.5, 0.95).lower());
        assertEquals(1, Wilson.interval(1, 0.5, 0.95).upper());
        assertThrows(Refused.class, () -> Wilson.interval(0.4, 0, 0.95));
        assertThrows(Refused.class, () -> Wilson.interval(Double.NaN, 10, 0.95));
        assertThrows(Refused.class, () -> Wilson.interval(1.2, 10, 0.95));
    }

    @Property
    void agreesWithItselfForAnEffectiveCountThatIsWhole(
            @ForAll @LongRange(min = 1, max = 1_000_000) long trials,
            @ForAll @DoubleRange(min = 0, max = 1) double part) {
        Count count = new Count(Math.min(trials, (long) (part * (trials + 1))), trials);
        Interval whole = Wilson.interval(count, 0.95).orElseThrow();
        Interval effective = Wilson.interval(count.share().orElseThrow(), trials, 0.95);
        assertEquals(whole.lower(), effective.lower(), 1e-14);
        assertEquals(whole.upper(), effective.upper(), 1e-14);
    }

    @Property
    void holdsTheShareAndMirrorsFailures(
            @ForAll @LongRange(min = 1, max = 10_000_000) long trials,
            @ForAll @DoubleRange(min = 0, max = 1) double part,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double confidence) {
        Count count = new Count(Math.min(trials, (long) (part * (trials + 1))), trials);
        Interval wilson = Wilson.interval(count, confidence).orElseThrow();
        assertTrue(wilson.lower() >= 0 && wilson.upper() <= 1);
        assertTrue(wilson.holds(count.share().orElseThrow()), () -> count + " in " + wilson);
        Interval mirrored = Wilson.interval(count.failures(), confidence).orElseThrow();
        assertEquals(1 - wilson.upper(), mirrored.lower(), 1e-15);
        assertEquals(1 - wilson.lower(), mirrored.upper(), 1e-15);
    }

    @Property
    void narrowsWithMoreTrialsAndLessConfidence(
            @ForAll @LongRange(min = 1, max = 1000) long trials,
            @ForAll @DoubleRange(min = 0, max = 1) double part,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double confidence) {
        Count count = new Count(Math.min(trials, (long) (part * (trials + 1))), trials);
        Count tenfold = new Count(10 * count.successes(), 10 * count.trials());
        double width = width(count, confidence);
        assertTrue(width(tenfold, confidence) < width);
        assertTrue(width(count, confidence / 2) < width);
    }

    private static double width(Count count, double confidence) {
        Interval wilson = Wilson.interval(count, confidence).orElseThrow();
        return wilson.upper() - wilson.lower();
    }
}
