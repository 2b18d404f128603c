package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.value.Refused;

/**
 * Outside values: {@code oracles/fisher.csv} (R 4.2.2, the noncentral hypergeometric distribution written out; p also from
 * {@code fisher.test}, whose ratio and limits are kept beside them and are good to some three digits).
 */
class ConditionalOddsTests {
    /** Relative, for the ratio and the limits; the note with the values puts them back to that. */
    private static final double TO_R = 1e-7;

    private static Odds odds(long a, long b, long c, long d) {
        return ConditionalOdds.of(new Count(a, a + b), new Count(c, c + d), 0.95);
    }

    private static void assertLike(double expected, double found) {
        if (Double.isInfinite(expected)) {
            assertEquals(expected, found);
        } else {
            assertEquals(expected, found, TO_R * Math.abs(expected));
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/oracles/fisher.csv", numLinesToSkip = 1)
    void agreesWithR(ArgumentsAccessor row) {
        Odds odds = odds(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4));
        if (row.getString(6) == null) {
            assertEquals(Ratio.UNDEFINED, odds.ratio());
        } else if (row.getString(6).equals("Infinity")) {
            assertEquals(Ratio.INFINITE, odds.ratio());
        } else {
            assertLike(row.getDouble(6), odds.ratio().finite().orElseThrow());
        }
        assertLike(row.getDouble(7), odds.interval().lower());
        assertLike(row.getDouble(8), odds.interval().upper());
        double sample = row.getLong(1) * row.getLong(4) == 0 && row.getLong(2) * row.getLong(3) == 0
                ? -1
                : (double) (row.getLong(1) * row.getLong(4)) / (row.getLong(2) * row.getLong(3));
        if (row.getString(5) != null) {
            assertLike(row.getDouble(5), sample);
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/oracles/fisher.csv", numLinesToSkip = 1)
    void agreesWithRsTwoSidedTest(ArgumentsAccessor row) {
        Count first = new Count(row.getLong(1), row.getLong(1) + row.getLong(2));
        Count second = new Count(row.getLong(3), row.getLong(3) + row.getLong(4));
        assertEquals(row.getDouble(9), Fisher.twoSided(first, second), 1e-9);
        assertEquals(row.getDouble(13), Fisher.twoSided(first, second), 1e-9);
        // and far into the tail, where a figure of 1e-14 means something only in parts of itself
        assertEquals(row.getDouble(9), Fisher.twoSided(first, second), 1e-10 * row.getDouble(9));
    }

    @Test
    void saysNothingOfAnEmptyMargin() {
        for (Odds odds :
                List.of(odds(0, 0, 3, 4), odds(3, 4, 0, 0), odds(0, 0, 0, 0), odds(3, 0, 4, 0), odds(0, 3, 0, 4))) {
            assertEquals(Ratio.UNDEFINED, odds.ratio());
            assertEquals(0, odds.interval().lower());
            assertEquals(Double.POSITIVE_INFINITY, odds.interval().upper());
        }
        assertEquals(1, Fisher.twoSided(new Count(0, 0), new Count(3, 7)));
        assertEquals(1, Fisher.twoSided(new Count(3, 3), new Count(4, 4)));
    }

    @Test
    void refusesAConfidenceThatIsNone() {
        assertThrows(Refused.class, () -> ConditionalOdds.of(new Count(1, 2), new Count(1, 2), 0));
    }

    /** Computed another way: for one unit a side the distribution has two points, solved by hand. */
    @Test
    void solvesOneAgainstOneByHand() {
        Odds odds = odds(1, 0, 0, 1);
        // P(1) = ω / (1 + ω) = 2.5 %
        assertEquals(0.025 / 0.975, odds.interval().lower(), 1e-12);
        assertEquals(Ratio.INFINITE, odds.ratio());
        assertEquals(1, Fisher.twoSided(new Count(1, 1), new Count(0, 1)), 1e-14);
    }

    /**
     * Of a million a side; the large-sample limits exp(log(ad/bc) ± z √(1/a + 1/b + 1/c + 1/d)) of Woolf 1955 (Annals of
     * Human Genetics 19:251) are right to the order of 1/a there, and the tails are put back.
     */
    @ParameterizedTest
    @CsvSource({
        "500000, 500000, 400000, 600000",
        "999000, 1000, 999500, 500",
        "300000, 700000, 2000, 998000",
        "999000, 1000, 1000, 999000"
    })
    void staysExactForAMillion(long a, long b, long c, long d) {
        Odds odds = odds(a, b, c, d);
        double sample = (double) a / b * d / c;
        double error = Math.sqrt(1.0 / a + 1.0 / b + 1.0 / c + 1.0 / d);
        double least = Math.min(Math.min(a, b), Math.min(c, d));
        assertEquals(Math.log(sample), Math.log(odds.ratio().finite().orElseThrow()), 1 / least);
        assertEquals(
                Math.log(sample) - 1.959963984540054 * error,
                Math.log(odds.interval().lower()),
                3 / least);
        assertEquals(
                Math.log(sample) + 1.959963984540054 * error,
                Math.log(odds.interval().upper()),
                3 / least);
        OneTable table = new OneTable(new Count(a, a + b), new Count(c, c + d));
        assertEquals(0.025, table.at(Math.log(odds.interval().lower()), a).atLeast(), 1e-9);
        assertEquals(0.025, table.at(Math.log(odds.interval().upper()), a).atMost(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"1000000, 0, 0, 1000000", "1, 999999, 0, 1000000", "1000000, 0, 999999, 1", "0, 1000000, 1, 999999"})
    void holdsItsTailsAtTheEdgesOfAMillion(long a, long b, long c, long d) {
        Odds odds = odds(a, b, c, d);
        OneTable table = new OneTable(new Count(a, a + b), new Count(c, c + d));
        if (odds.interval().lower() > 0) {
            assertEquals(0.025, table.at(Math.log(odds.interval().lower()), a).atLeast(), 1e-9);
        }
        if (odds.interval().isBounded()) {
            assertEquals(0.025, table.at(Math.log(odds.interval().upper()), a).atMost(), 1e-9);
        }
        assertTrue(odds.interval().lower() == 0 || !odds.interval().isBounded());
    }

    /** Commons Statistics knows the central distribution by another route (saddle points). */
    @Property(tries = 200)
    void sumsTheCentralDistributionAsCommonsStatisticsDoes(
            @ForAll @LongRange(min = 1, max = 3000) long m,
            @ForAll @LongRange(min = 1, max = 3000) long n,
            @ForAll @LongRange(min = 0, max = 3000) long taken,
            @ForAll @LongRange(min = 0, max = 3000) long otherTaken) {
        Count first = new Count(taken % (m + 1), m);
        Count second = new Count(otherTaken % (n + 1), n);
        Tilted.Sums sums = new OneTable(first, second).at(0, first.successes());
        HypergeometricDistribution central =
                HypergeometricDistribution.of((int) (m + n), (int) m, (int) (first.successes() + second.successes()));
        assertEquals(central.cumulativeProbability((int) first.successes()), sums.atMost(), 1e-10);
        assertEquals(central.survivalProbability((int) first.successes() - 1), sums.atLeast(), 1e-10);
        assertEquals(central.getMean() - first.successes(), sums.mean(), 1e-8);
    }

    @Property(tries = 100)
    void turnsOverWithTheSides(
            @ForAll @LongRange(min = 1, max = 500) long m,
            @ForAll @LongRange(min = 1, max = 500) long n,
            @ForAll @LongRange(min = 0, max = 500) long taken,
            @ForAll @LongRange(min = 0, max = 500) long otherTaken) {
        Count first = new Count(taken % (m + 1), m);
        Count second = new Count(otherTaken % (n + 1), n);
        Odds odds = ConditionalOdds.of(first, second, 0.95);
        Odds turned = ConditionalOdds.of(second, first, 0.95);
        Odds failures = ConditionalOdds.of(second.failures(), first.failures(), 0.95);
        assertLike(1 / odds.interval().lower(), turned.interval().upper());
        assertLike(1 / odds.interval().upper(), turned.interval().lower());
        assertLike(odds.interval().lower(), failures.interval().lower());
        assertLike(odds.interval().upper(), failures.interval().upper());
        odds.ratio().finite().ifPresent(ratio -> {
            assertTrue(odds.interval().holds(ratio));
            if (ratio > 0) {
                assertLike(1 / ratio, turned.ratio().finite().orElseThrow());
            } else {
                assertEquals(Ratio.INFINITE, turned.ratio());
            }
        });
        assertEquals(Fisher.twoSided(first, second), Fisher.twoSided(second, first), 1e-12);
        assertEquals(Fisher.twoSided(first, second), Fisher.twoSided(first.failures(), second.failures()), 1e-12);
    }

    @Property(tries = 100)
    void growsWithTheSuccessesOfTheFirst(
            @ForAll @LongRange(min = 2, max = 300) long m,
            @ForAll @LongRange(min = 1, max = 300) long n,
            @ForAll @LongRange(min = 0, max = 299) long taken,
            @ForAll @LongRange(min = 0, max = 300) long otherTaken) {
        Count fewer = new Count(taken % m, m);
        Count more = new Count(fewer.successes() + 1, m);
        Count second = new Count(otherTaken % (n + 1), n);
        Interval low = ConditionalOdds.of(fewer, second, 0.95).interval();
        Interval high = ConditionalOdds.of(more, second, 0.95).interval();
        boolean informs = second.successes() > 0 || fewer.successes() > 0;
        if (informs && more.successes() + second.successes() < m + n) {
            assertTrue(low.lower() <= high.lower() && low.upper() <= high.upper(), () -> fewer + " against " + second);
        }
    }
}
