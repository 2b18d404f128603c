package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Measures forecasts; a program to be run by hand, not a test. Arguments: how many units are pending or growing, how many
 * simulations, how often.
 */
public final class ForecastSpeed {
    private static final int CULTIVARS = 60;
    private static final int METHODS = 2;
    private static final int CLUSTER = 40;

    private ForecastSpeed() {}

    /** Measure. */
    public static void main(String[] arguments) {
        int units = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 100_000;
        int simulations = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 400;
        int runs = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 3;
        ForecastPast past = past(units);
        long still = past.episodes().stream()
                .filter(one -> one.how() == ForecastEnd.STILL)
                .mapToLong(ForecastEpisode::count)
                .sum();
        ForecastQuestion question = new ForecastQuestion(
                Optional.empty(),
                Optional.empty(),
                24,
                LocalDate.ofEpochDay(past.asOf()),
                ForecastSales.NONE,
                simulations,
                1);
        for (int run = 0; run < runs; run++) {
            long start = System.nanoTime();
            ForecastTable table = Forecast.ask(past, question, one -> true);
            System.out.printf(
                    Locale.ROOT,
                    "%d units in %d stretches, %d pending or growing, %d simulations: %.2f s; %d rows%n",
                    past.episodes().stream().mapToLong(ForecastEpisode::count).sum(),
                    past.episodes().size(),
                    still,
                    simulations,
                    (System.nanoTime() - start) / 1e9,
                    table.rows().size());
        }
    }

    /** Make up a nursery: half of what is open is pending in trays, half grows on, each plant under a tag of its own. */
    private static ForecastPast past(int open) {
        SplittableRandom random = new SplittableRandom(1);
        List<ForecastKind> kinds = IntStream.range(0, CULTIVARS * METHODS)
                .mapToObj(at -> new ForecastKind(at / METHODS, at / METHODS / 6, at % METHODS))
                .toList();
        List<ForecastEpisode> episodes = new ArrayList<>();
        int asOf = Math.toIntExact(LocalDate.of(2026, 6, 15).toEpochDay());
        int clusters = 0;
        for (int made = 0; made < open; made += CLUSTER) {
            int kind = random.nextInt(kinds.size());
            int cluster = clusters++;
            // the like of it some years ago, all told
            int old = asOf - 1500 - random.nextInt(3000);
            int took = 5 + random.nextInt(30);
            episodes.add(new ForecastEpisode(
                    ForecastStage.TAKING, kind, -cluster, old, old, old + 100, ForecastEnd.GOOD, 3, took));
            episodes.add(new ForecastEpisode(
                    ForecastStage.TAKING, kind, -cluster, old, old, old + 100, ForecastEnd.BAD, 3, CLUSTER - took));
            for (int one = 0; one < took; one++) {
                episodes.add(new ForecastEpisode(
                        ForecastStage.GRADING,
                        kind,
                        -cluster,
                        old,
                        old + 100,
                        old + 300 + random.nextInt(900),
                        random.nextInt(8) == 0 ? ForecastEnd.BAD : ForecastEnd.GOOD,
                        random.nextInt(4),
                        1));
            }
            if (made % (2 * CLUSTER) == 0) {
                int since = asOf - random.nextInt(120);
                episodes.add(new ForecastEpisode(
                        ForecastStage.TAKING, kind, cluster, since, since, asOf, ForecastEnd.STILL, 3, CLUSTER));
            } else {
                for (int one = 0; one < CLUSTER; one++) {
                    int since = asOf - 100 - random.nextInt(900);
                    episodes.add(new ForecastEpisode(
                            ForecastStage.GRADING, kind, cluster, since - 100, since, asOf, ForecastEnd.STILL, 3, 1));
                }
            }
        }
        List<String> cultivars =
                IntStream.rangeClosed(0, CULTIVARS).mapToObj(at -> "C" + at).toList();
        return new ForecastPast(
                asOf,
                cultivars,
                kinds,
                List.of("small", "medium", "large"),
                episodes,
                List.of(new ForecastStock(0, 1, 500)),
                ForecastLeaving.NONE,
                0);
    }
}
