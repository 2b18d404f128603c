package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import ortet.value.Refused;

/** Outside values: {@code oracles/proportions.csv} (R 4.2.2 {@code qbeta}). */
class JeffreysTests {
    /** What the note with the values grants for these columns. */
    private static final double TO_R = 1e-8;

    @ParameterizedTest(name = "{0} of {1} at {2}")
    @CsvFileSource(resources = "/oracles/proportions.csv", numLinesToSkip = 1)
    void agreesWithR(ArgumentsAccessor row) {
        Count count = new Count(row.getLong(0), row.getLong(1));
        Interval bare = Jeffreys.quantiles(count, row.getDouble(2)).orElseThrow();
        assertEquals(row.getDouble(6), bare.lower(), TO_R);
        assertEquals(row.getDouble(7), bare.upper(), TO_R);
        Interval interval = Jeffreys.interval(count, row.getDouble(2)).orElseThrow();
        assertEquals(row.getDouble(8), interval.lower(), TO_R);
        assertEquals(row.getDouble(9), interval.upper(), TO_R);
        assertEquals(row.getDouble(3), count.share().orElseThrow(), 1e-14);
    }

    @Test
    void isAbsentWhenNothingIsKnownAndRefusesAConfidenceThatIsNone() {
        assertTrue(Jeffreys.interval(new Count(0, 0), 0.95).isEmpty());
        assertThrows(Refused.class, () -> Jeffreys.interval(new Count(0, 0), 95));
    }

    @Property(tries = 200)
    void holdsTheShareAndMirrorsFailures(
            @ForAll @LongRange(min = 1, max = 1_000_000) long trials,
            @ForAll @DoubleRange(min = 0, max = 1) double part,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double confidence) {
        Count count = new Count(Math.min(trials, (long) (part * (trials + 1))), trials);
        Interval interval = Jeffreys.interval(count, confidence).orElseThrow();
        assertTrue(interval.holds(count.share().orElseThrow()), () -> count + " in " + interval);
        Interval mirrored = Jeffreys.interval(count.failures(), confidence).orElseThrow();
        assertEquals(1 - interval.upper(), mirrored.lower(), 1e-10);
        assertEquals(1 - interval.lower(), mirrored.upper(), 1e-10);
    }
}
