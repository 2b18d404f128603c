package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import ortet.figures.BetaBinomial.Shapes;

/**
 * Outside values: {@code oracles/planning.csv}, R 4.2.2, for one stage; small cases by hand, and trees drawn one by one.
 */
class StagesTests {
    private static final Shapes UNIFORM = new Shapes(1, 1);
    private static final List<Shapes> THREE = List.of(new Shapes(6.5, 3.2), new Shapes(14, 2.5), new Shapes(9, 1.75));

    @ParameterizedTest(name = "{0}: {1} at {3} {4}, {5}")
    @CsvFileSource(resources = "/oracles/planning.csv", numLinesToSkip = 1)
    void isTheBetaBinomialWithOneStage(ArgumentsAccessor row) {
        if (row.getString(0).equals("binomial")) {
            return;
        }
        Planning.Outlook one = Stages.of(List.of(new Shapes(row.getDouble(3), row.getDouble(4))))
                .outlook();
        if (row.getString(6) == null) {
            assertEquals(Optional.empty(), Planning.smallest(row.getLong(1), row.getDouble(5), one, 20_000));
            return;
        }
        assertEquals(row.getDouble(7), one.atLeast(row.getLong(1), row.getLong(6)), 1e-9);
    }

    @Test
    void goesFromStageToStageAsByHand() {
        // 0, 1 or 2 of 2 pass the first, a third each; of 1 one passes the second with a half, of 2 one or more with
        // two thirds
        Planning.Outlook outlook = Stages.of(List.of(UNIFORM, UNIFORM)).outlook();
        assertEquals(7.0 / 18, outlook.atLeast(1, 2), 1e-15);
        assertEquals(1.0 / 3 / 3, outlook.atLeast(2, 2), 1e-15);
        assertEquals(1, outlook.atLeast(0, 2));
        assertEquals(0, outlook.atLeast(3, 2));
        assertEquals(1, Stages.of(List.of()).outlook().atLeast(2, 2));
        assertEquals(0.25, Stages.of(List.of(UNIFORM, UNIFORM)).mean());
    }

    @Test
    void tellsWhatIsUnderWayAsByHand() {
        // one enters the first stage, one stands before the second already, one has done with both
        double[] expected = {0, 5.0 / 12, 5.0 / 12, 2.0 / 12};
        assertArrayEquals(expected, Stages.of(List.of(UNIFORM, UNIFORM)).distribution(new long[] {1, 1}, 1), 1e-15);
        assertArrayEquals(new double[] {0, 0, 1}, Stages.of(List.of()).distribution(new long[0], 2));
    }

    @Test
    void tellsTheSameForwardsAndBackwards() {
        Stages stages = Stages.of(THREE);
        double[] forwards = stages.distribution(new long[] {120, 0, 0}, 0);
        assertEquals(1, Arrays.stream(forwards).sum(), 1e-12);
        Planning.Outlook backwards = stages.outlook();
        for (int wanted = 1; wanted <= 120; wanted += 17) {
            double above = Arrays.stream(forwards, wanted, 121).sum();
            assertEquals(above, backwards.atLeast(wanted, 120), 1e-12);
        }
    }

    @Test
    void agreesWithTreesDrawnOneByOne() {
        int repeats = 40_000;
        int trials = 60;
        int wanted = 25;
        UniformRandomProvider random = new SplittableRandom(20261)::nextLong;
        List<ContinuousDistribution.Sampler> rates = THREE.stream()
                .map(shapes ->
                        BetaDistribution.of(shapes.alpha(), shapes.beta()).createSampler(random))
                .toList();
        int enough = 0;
        for (int repeat = 0; repeat < repeats; repeat++) {
            double[] rate = rates.stream()
                    .mapToDouble(ContinuousDistribution.Sampler::sample)
                    .toArray();
            int left = 0;
            for (int tree = 0; tree < trials; tree++) {
                boolean stands = true;
                for (double one : rate) {
                    stands = stands && random.nextDouble() < one;
                }
                left += stands ? 1 : 0;
            }
            enough += left >= wanted ? 1 : 0;
        }
        double told = Stages.of(THREE).outlook().atLeast(wanted, trials);
        double error = Math.sqrt(told * (1 - told) / repeats);
        // four standard errors: one seed in sixteen thousand would fail by chance, and this one does not
        assertEquals(told, (double) enough / repeats, 4 * error);
        assertTrue(told > 0.2 && told < 0.8, "a chance that tells something: " + told);
    }

    @Test
    void needsMoreForMoreAndToBeSurer() {
        SplittableRandom random = new SplittableRandom(7);
        for (int draw = 0; draw < 20; draw++) {
            List<Shapes> stages = List.of(
                    new Shapes(1 + 9 * random.nextDouble(), 0.5 + 4 * random.nextDouble()),
                    new Shapes(2 + 9 * random.nextDouble(), 0.5 + 2 * random.nextDouble()));
            long[] byCount = LongStream.rangeClosed(1, 12)
                    .map(count -> needed(stages, count, 0.7))
                    .toArray();
            long[] bySure = Arrays.stream(new double[] {0.3, 0.5, 0.6, 0.7, 0.75})
                    .mapToLong(sure -> needed(stages, 6, sure))
                    .toArray();
            assertTrue(isRising(byCount), Arrays.toString(byCount));
            assertTrue(isRising(bySure), Arrays.toString(bySure));
        }
    }

    private static long needed(List<Shapes> stages, long count, double sure) {
        return Planning.smallest(count, sure, Stages.of(stages).outlook(), 3_000)
                .map(Planning.Plan::trials)
                .orElse(Long.MAX_VALUE);
    }

    private static boolean isRising(long[] numbers) {
        for (int at = 1; at < numbers.length; at++) {
            if (numbers[at] < numbers[at - 1]) {
                return false;
            }
        }
        return true;
    }

    @Test
    void tellsTheMostThatSomeAreEnoughFor() {
        Planning.Outlook outlook = Stages.of(THREE).outlook();
        long most = Planning.largest(60, 0.9, outlook);
        assertTrue(outlook.atLeast(most, 60) >= 0.9);
        assertTrue(outlook.atLeast(most + 1, 60) < 0.9);
        assertEquals(0, Planning.largest(0, 0.9, outlook));
    }
}
