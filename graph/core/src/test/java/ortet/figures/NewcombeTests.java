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

/**
 * Outside values: {@code oracles/proportion-differences.csv} (R 4.2.2, two algebraic routes), with limits of Newcombe 1998,
 * Statistics in Medicine 17:873, Table II, method 10, as quoted from memory.
 */
class NewcombeTests {
    private static final double TO_R = 1e-9;

    @ParameterizedTest(name = "{0} of {1} less {2} of {3} at {4}")
    @CsvFileSource(resources = "/oracles/proportion-differences.csv", numLinesToSkip = 1)
    void agreesWithR(ArgumentsAccessor row) {
        Count first = new Count(row.getLong(0), row.getLong(1));
        Count second = new Count(row.getLong(2), row.getLong(3));
        Interval interval = Newcombe.difference(first, second, row.getDouble(4)).orElseThrow();
        assertEquals(
                row.getDouble(5), first.share().orElseThrow() - second.share().orElseThrow(), TO_R);
        assertEquals(row.getDouble(6), interval.lower(), TO_R);
        assertEquals(row.getDouble(7), interval.upper(), TO_R);
        if (row.getString(8) != null) {
            // printed to four decimals
            assertEquals(row.getDouble(8), interval.lower(), 0.5e-4);
            assertEquals(row.getDouble(9), interval.upper(), 0.5e-4);
        }
    }

    @Test
    void isAbsentWhenNothingIsKnownOfOneSide() {
        assertTrue(Newcombe.difference(new Count(0, 0), new Count(1, 2), 0.95).isEmpty());
        assertTrue(Newcombe.difference(new Count(1, 2), new Count(0, 0), 0.95).isEmpty());
        assertThrows(Refused.class, () -> Newcombe.difference(new Count(0, 0), new Count(0, 0), 2));
    }

    @Property
    void turnsOverWithTheSidesAndWithFailures(
            @ForAll @LongRange(min = 1, max = 1_000_000) long trials,
            @ForAll @DoubleRange(min = 0, max = 1) double part,
            @ForAll @LongRange(min = 1, max = 1_000_000) long otherTrials,
            @ForAll @DoubleRange(min = 0, max = 1) double otherPart,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double confidence) {
        Count first = new Count(Math.min(trials, (long) (part * (trials + 1))), trials);
        Count second = new Count(Math.min(otherTrials, (long) (otherPart * (otherTrials + 1))), otherTrials);
        Interval interval = Newcombe.difference(first, second, confidence).orElseThrow();
        assertTrue(interval.lower() >= -1 && interval.upper() <= 1);
        assertTrue(interval.holds(first.share().orElseThrow() - second.share().orElseThrow()));
        Interval turned = Newcombe.difference(second, first, confidence).orElseThrow();
        assertEquals(-interval.upper(), turned.lower(), 1e-14);
        assertEquals(-interval.lower(), turned.upper(), 1e-14);
        Interval failures = Newcombe.difference(first.failures(), second.failures(), confidence)
                .orElseThrow();
        assertEquals(-interval.upper(), failures.lower(), 1e-14);
        assertEquals(-interval.lower(), failures.upper(), 1e-14);
    }
}
