package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Whether trees are graded at times of their own or in rounds, and which go together. */
class ForecastPaceTests {
    private static final int CLUSTERS = 3000;
    private static final int TREES = 12;
    private static final double SHARED = 0.4;

    /** Cuts a normal distribution into rounds. */
    private static final double[] CUTS = {-9, -1.1, 0.2, 1.4, 9};

    private static int roundOf(double score) {
        int round = 0;
        while (score >= CUTS[round + 1]) {
            round++;
        }
        return round;
    }

    private static double expectedOf(int round) {
        return ForecastPace.expected(ForecastDice.phi(CUTS[round]), ForecastDice.phi(CUTS[round + 1]));
    }

    /** Draw a score that lies somewhere in a round, by nobody's luck. */
    private static double anywhere(int round, SplittableRandom random) {
        double from = ForecastDice.phi(CUTS[round]);
        double to = ForecastDice.phi(CUTS[round + 1]);
        return ForecastDice.quantile(from + (to - from) * random.nextDouble());
    }

    /** Trees whose scores correlate by 0.4 within clusters, graded at times of their own, or wherever in the round of those. */
    private static ForecastPace pace(boolean own, boolean onOneDay) {
        SplittableRandom random = new SplittableRandom(11);
        ForecastPace pace = new ForecastPace();
        for (int cluster = 0; cluster < CLUSTERS; cluster++) {
            double luck = Math.sqrt(SHARED) * random.nextGaussian();
            double[] days = new double[CUTS.length - 1];
            for (int round = 0; round < days.length; round++) {
                days[round] = anywhere(round, random);
            }
            for (int tree = 0; tree < TREES; tree++) {
                double score = luck + Math.sqrt(1 - SHARED) * random.nextGaussian();
                int round = roundOf(score);
                double seen = own ? score : onOneDay ? days[round] : anywhere(round, random);
                pace.add(cluster, expectedOf(round), seen - expectedOf(round), 1);
            }
        }
        return pace;
    }

    /** Means of the halves and quarters of a normal distribution: √(2/π), and of quarters ±1.2711 and ±0.3247 (Kelley's constants). */
    @Test
    void knowsWhatIsExpectedOfPartsOfANormalDistribution() {
        assertEquals(-Math.sqrt(2 / Math.PI), ForecastPace.expected(0, 0.5), 1e-4);
        assertEquals(1.2711, ForecastPace.expected(0.75, 1), 1e-3);
        assertEquals(0.3247, ForecastPace.expected(0.5, 0.75), 1e-3);
        assertEquals(0, ForecastPace.expected(0, 1), 1e-9);
        assertEquals(0.6745, ForecastPace.expected(0.75, 0.75), 1e-3, "nothing between: there it is");
    }

    @Test
    void tellsTimesOfTheirOwnFromRounds() {
        assertEquals(0.9, pace(true, false).own(), 0.15, "a little low, with rounds so wide");
        assertEquals(0, pace(false, false).own(), 0.12);
        assertEquals(0, pace(false, true).own(), 0.12, "that a tray is graded on one day is no time of its own");
    }

    @Test
    void tellsHowMuchTreesOfAClusterShareEitherWay() {
        assertEquals(SHARED, pace(true, false).correlation(), 0.06);
        assertEquals(SHARED, pace(false, false).correlation(), 0.06);
        assertEquals(SHARED, pace(false, true).correlation(), 0.06);
    }

    @Test
    void takesTimesAsTheirOwnWhereNothingTells() {
        ForecastPace pace = new ForecastPace();
        assertEquals(1, pace.own());
        assertEquals(0, pace.correlation());
        pace.add(1, 0.3, 0.1, 4);
        assertEquals(1, pace.own());
        assertEquals(0, pace.correlation());
    }

    @Test
    void beginsRoundsWhereLeastHappens() {
        double[] happens = {5, 4, 0, 1, 5, 6, 9, 30, 40, 20, 9, 7};
        ForecastRounds rounds = ForecastRounds.of(happens);
        assertEquals(2, rounds.firstMonth());
        assertEquals(2019, rounds.round(day(2020, 2, 29)));
        assertEquals(2020, rounds.round(day(2020, 3, 1)));
        assertEquals(day(2020, 3, 1), rounds.begins(2020));
        assertEquals(0, ForecastRounds.of(new double[12]).firstMonth(), "the first of several alike");
    }

    private static int day(int year, int month, int of) {
        return Math.toIntExact(LocalDate.of(year, month, of).toEpochDay());
    }

    /** Trees of four cultivars, four trays of each a year, graded in September or October of the second year or the third. */
    private static ForecastTogether together(boolean trayInOneGo, boolean cultivarInOneGo) {
        SplittableRandom random = new SplittableRandom(5);
        Map<List<Integer>, Boolean> early = new HashMap<>();
        List<ForecastEpisode> episodes = new ArrayList<>();
        int cluster = 0;
        for (int year = 2005; year < 2020; year++) {
            for (int kind = 0; kind < 4; kind++) {
                for (int tray = 0; tray < 4; tray++) {
                    cluster++;
                    for (int tree = 0; tree < 10; tree++) {
                        int graded = year + 1 + tree % 2;
                        List<Integer> goes = cultivarInOneGo
                                ? List.of(kind, graded)
                                : trayInOneGo ? List.of(cluster, graded) : List.of(cluster, graded, tree);
                        boolean isEarly = early.computeIfAbsent(goes, any -> random.nextBoolean());
                        int start = day(year, 8, 1);
                        int end = day(graded, isEarly ? 9 : 10, 10);
                        episodes.add(new ForecastEpisode(
                                ForecastStage.GRADING, kind, cluster, start, start, end, ForecastEnd.GOOD, 0, 1));
                    }
                }
            }
        }
        List<ForecastKind> kinds = List.of(
                new ForecastKind(0, 0, 0),
                new ForecastKind(1, 0, 0),
                new ForecastKind(2, 0, 0),
                new ForecastKind(3, 0, 0));
        ForecastPast past = new ForecastPast(
                day(2022, 1, 1),
                List.of("A", "B", "C", "D", ""),
                kinds,
                List.of("small"),
                episodes,
                List.of(),
                ForecastLeaving.NONE,
                0);
        return ForecastTogether.of(past, new ForecastRounds(2), false);
    }

    @Test
    void tellsWhatIsGradedInOneGo() {
        ForecastTogether none = together(false, false);
        assertEquals(0, none.cultivar(), 0.05);
        assertEquals(0, none.cluster(), 0.05);
        ForecastTogether trays = together(true, false);
        assertEquals(0, trays.cultivar() + trays.lot(), 0.15);
        assertEquals(1, trays.cluster(), 1e-9);
        ForecastTogether cultivars = together(false, true);
        assertEquals(1, cultivars.cultivar(), 1e-9);
        assertEquals(16 / 22.0, cultivars.habit(2), 1e-9, "sixteen rounds beside six of all");
        assertEquals(0, cultivars.habit(4), "never graded");
    }

    @Test
    void theClockAllButStandsWhereNothingEverHappensAndIsEvenWhereMonthsDifferByChance() {
        SplittableRandom random = new SplittableRandom(3);
        List<ForecastEpisode> autumn = new ArrayList<>();
        List<ForecastEpisode> even = new ArrayList<>();
        for (int at = 0; at < 2000; at++) {
            int start = day(2000, 1, 1) + random.nextInt(6000);
            int autumnYear = LocalDate.ofEpochDay(start).getYear() + 2;
            autumn.add(one(at, start, day(autumnYear, 9, 1) + random.nextInt(60)));
            even.add(one(at, start, start + 600 + random.nextInt(400)));
        }
        ForecastClock seasonal = ForecastClock.of(autumn, day(2021, 12, 31));
        ForecastClock steady = ForecastClock.of(even, day(2021, 12, 31));
        for (int month = 0; month < 12; month++) {
            assertEquals(1, steady.speed(month), 0.12, "month " + month);
            assertTrue(month == 8 || month == 9 || seasonal.speed(month) < 0.02, "month " + month);
        }
        assertEquals(12, seasonal.speed(8) + seasonal.speed(9), 0.2);
        assertEquals(12, seasonal.between(day(2010, 8, 31), day(2010, 10, 31)), 0.2);
    }

    private static ForecastEpisode one(int cluster, int start, int end) {
        return new ForecastEpisode(ForecastStage.GRADING, 0, cluster, start, start, end, ForecastEnd.GOOD, 0, 1);
    }
}
