package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The parts of a forecast, worked out by hand. */
class ForecastCurveTests {
    private static ForecastCurve curve() {
        // ten units: 2 good in the first quarter of a month, 1 bad in the second, 4 left in the third, 3 good in the
        // fourth
        return ForecastCurve.of(new double[] {2, 0, 0, 3}, new double[] {0, 1, 0, 0}, new double[] {0, 0, 4, 0});
    }

    @Test
    void followsTwoEndsThatExcludeOneAnother() {
        ForecastCurve curve = curve();
        assertEquals(0.2, curve.goodBy(0.25), 1e-12);
        assertEquals(0.1, curve.goodBy(0.125), 1e-12, "straight between steps");
        assertEquals(0.8, curve.leftAt(0.25), 1e-12);
        assertEquals(0.7, curve.leftAt(0.5), 1e-12, "one of eight failed");
        assertEquals(0.7, curve.leftAt(0.75), 1e-12, "who left is not known to have ended");
        // of the three left at last all came to a good end
        assertEquals(0.9, curve.good(), 1e-12);
        assertEquals(0.1, curve.bad(), 1e-12);
        assertEquals(0, curve.rest(), 1e-12);
        assertEquals(1, curve.chance(0.5), 1e-12);
        assertEquals(0.9, curve.chance(0), 1e-12);
        assertEquals(0, curve.chance(1), 1e-12, "none was ever left at that age");
    }

    @Test
    void drawsAsOftenAsItShould() {
        ForecastDice dice = new ForecastDice(1, 0);
        for (double p : new double[] {0.01, 0.3, 0.7, 0.995}) {
            for (int n : new int[] {1, 7, 60, 5000}) {
                double sum = 0;
                double squares = 0;
                int draws = 4000;
                for (int draw = 0; draw < draws; draw++) {
                    double one = dice.binomial(n, p);
                    assertTrue(one >= 0 && one <= n);
                    sum += one;
                    squares += one * one;
                }
                double mean = sum / draws;
                double variance = squares / draws - mean * mean;
                double error = Math.sqrt(n * p * (1 - p) / draws);
                assertEquals(n * p, mean, 5 * error, n + " by " + p);
                assertEquals(1, variance / (n * p * (1 - p)), 0.3, n + " by " + p);
            }
        }
    }

    @Test
    void knowsTheNormalDistribution() {
        // Abramowitz & Stegun 1964, table 26.1
        assertEquals(0.5, ForecastDice.phi(0), 2e-6);
        assertEquals(0.841344746, ForecastDice.phi(1), 2e-6);
        assertEquals(0.977249868, ForecastDice.phi(2), 2e-6);
        assertEquals(0.022750132, ForecastDice.phi(-2), 2e-6);
        assertEquals(0, ForecastDice.phi(-50));
        assertEquals(1, ForecastDice.phi(50));
        SplittableRandom random = new SplittableRandom(1);
        for (int at = 0; at < 1000; at++) {
            double z = 6 * random.nextDouble() - 3;
            assertEquals(z, ForecastDice.quantile(ForecastDice.phi(z)), 1e-3);
        }
    }

    @Test
    void theClockRunsFastWhenThingsHappen() {
        List<ForecastEpisode> episodes = new ArrayList<>();
        for (int year = 2000; year < 2020; year++) {
            int start = Math.toIntExact(LocalDate.of(year, 5, 1).toEpochDay());
            int end = Math.toIntExact(LocalDate.of(year, 9, 10).toEpochDay());
            episodes.add(new ForecastEpisode(ForecastStage.TAKING, 0, year, start, start, end, ForecastEnd.GOOD, 0, 1));
        }
        int last = Math.toIntExact(LocalDate.of(2021, 12, 31).toEpochDay());
        ForecastClock clock = ForecastClock.of(episodes, last);
        assertTrue(clock.speed(8) > 3 * clock.speed(6), "September beside July");
        int from = Math.toIntExact(LocalDate.of(2010, 3, 5).toEpochDay());
        assertEquals(12, clock.between(from, from + 365), 0.3, "a year is twelve months");
        assertEquals(0, clock.between(last, last));
        ForecastClock even = ForecastClock.of(List.of(), last);
        assertEquals(1, even.speed(3), 1e-12);
    }
}
