package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import ortet.figures.MixedTruth.Kind;
import ortet.figures.MixedTruth.Score;
import ortet.figures.MixedTruth.World;

/**
 * Truth under simulation: worlds invented with the model's own assumptions, and others. {@code
 * -Dortet.truth.repetitions=400} is the long run that docs/methods/mixed.md tells of; seeds are fixed.
 */
class MixedTruthTests {
    private static final int REPETITIONS = Integer.getInteger("ortet.truth.repetitions", 16);
    private static final int DRAWS = 300;

    @TestFactory
    Stream<DynamicTest> intervalsHoldTheTruthAsOftenAsTheySay() {
        return MixedTruth.right().stream()
                .map(world -> DynamicTest.dynamicTest(world.toString(), () -> {
                    Score score = MixedTruth.score(world, REPETITIONS, 0);
                    assertEquals(0, score.failed);
                    assertEquals((long) REPETITIONS * world.groups(), score.asked);
                    assertTrue(
                            score.coverage() > 0.87 && score.coverage() < 0.93,
                            () -> "held " + score.coverage() + " of the time");
                }));
    }

    @Test
    void ranksComeTrueAsOftenAsForetold() {
        Score all = new Score();
        MixedTruth.right().forEach(world -> all.add(MixedTruth.score(world, REPETITIONS, DRAWS)));
        int bins = 0;
        for (int bin = 0; bin < all.binned.length; bin++) {
            if (all.binned[bin] >= 50) {
                double n = all.binned[bin];
                double foretold = all.foretold[bin] / n;
                double happened = all.happened[bin] / n;
                // four standard errors of a share of n, and two hundredths for what is approximate in the model
                double allowed = 4 * Math.sqrt(foretold * (1 - foretold) / n) + 0.02;
                assertEquals(foretold, happened, allowed, "bin " + bin + " of " + all.binned[bin]);
                bins++;
            }
        }
        assertTrue(bins >= 6);
    }

    @Test
    void intervalsFailWhereTraysAreLeftOutAndHoldWhereTheyAreNot() {
        World naive = new World("trays", 60, 0.8, 0.4, Kind.TRAYS_LEFT_OUT);
        World honest = new World("trays", 60, 0.8, 0.4, Kind.TRAYS_MODELLED);
        double left = MixedTruth.score(naive, REPETITIONS, 0).coverage();
        double held = MixedTruth.score(honest, REPETITIONS, 0).coverage();
        assertTrue(left < 0.82, () -> "naive " + left);
        assertTrue(held > 0.87 && held < 0.93, () -> "with trays " + held);
    }
}
