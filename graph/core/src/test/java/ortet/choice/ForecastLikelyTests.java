package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** What a cluster has shown of its luck. */
class ForecastLikelyTests {
    private static final int DRAWS = 4000;

    private static double[] meanAndVariance(ForecastLikely likely, int which) {
        ForecastDice dice = new ForecastDice(3, 0);
        double[] into = new double[2];
        double sum = 0;
        double squares = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            likely.draw(0, 0, dice, into, 0);
            sum += into[which];
            squares += into[which] * into[which];
        }
        double mean = sum / DRAWS;
        return new double[] {mean, squares / DRAWS - mean * mean};
    }

    /** Normal times with a normal luck have a normal posterior in closed form: Gelman et al. 2013, Bayesian Data Analysis, 2.5. */
    @Test
    void followsTheClosedFormWhereTimesAreSharedByNearlyAll() {
        for (int many : new int[] {1, 5, 40, 400, 4000}) {
            for (double z : new double[] {-1.9, -0.31, 0, 0.87, 2.1}) {
                ForecastShared timing = new ForecastShared(0, 0.9, 1);
                ForecastSeen seen = new ForecastSeen(0, 0, 0, 0);
                seen.good(z, many);
                ForecastLikely likely = seen.likely(new ForecastShared(0, 0.3, 1), timing);
                double variance = 1 / (1 / 0.9 + many / timing.own());
                double mean = variance * many * z / timing.own();
                double[] found = meanAndVariance(likely, 1);
                String of = many + " at " + z;
                assertEquals(mean, found[0], 0.02 + 5 * Math.sqrt(variance / DRAWS), of);
                assertEquals(Math.sqrt(variance), Math.sqrt(found[1]), 0.02 + 0.15 * Math.sqrt(variance), of);
                assertTrue(Arrays.stream(likely.ofSeason(0, 0)).allMatch(Double::isFinite), of);
            }
        }
    }

    /** Units of which nothing was seen keep their chance: Φ(q) is the mean of Φ((q + δ)/√o) over a normal δ of variance 1 − o. */
    @Test
    void leavesEveryUnitItsChanceWhereNothingWasSeen() {
        for (double shared : new double[] {0.05, 0.3, 0.6, 0.9}) {
            ForecastShared fate = new ForecastShared(0, shared, 1);
            ForecastLikely likely = new ForecastSeen(0, 0, 0, 0).likely(fate, fate);
            for (double chance : new double[] {0.1, 0.5, 0.8}) {
                ForecastDice dice = new ForecastDice(5, 0);
                double[] into = new double[2];
                double sum = 0;
                for (int draw = 0; draw < DRAWS; draw++) {
                    likely.draw(0, 0, dice, into, 0);
                    sum += ForecastDice.phi((ForecastDice.quantile(chance) + into[0]) / Math.sqrt(fate.own()));
                }
                assertEquals(chance, sum / DRAWS, 0.025, chance + " with " + shared);
            }
        }
    }
}
