package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import ortet.choice.ForecastWorld.Laws;

/**
 * How often what came lies within the bands, in nurseries made up by known laws. A long run
 * ({@code -Dortet.worlds=400}) leaves its table in {@code target/forecast.md}.
 */
class ForecastCalibrationTests {
    private static final LocalDate FROM = LocalDate.of(2020, 8, 15);
    private static final LocalDate UNTIL = LocalDate.of(2022, 7, 31);
    private static final int QUICK = 6;
    private static final int FEWER = 200;

    /** Laws of which the forecast knows nothing, and which it cannot follow. */
    private static final Set<Laws> BEYOND = EnumSet.of(Laws.TAKING_BETTER, Laws.GROWING_FASTER, Laws.BAD_LAST_SEASON);

    /** Shares of cells within bands, and of worlds in which the total lies within. */
    private record Held(
            double within50,
            double expected50,
            double within90,
            double expected90,
            double total50,
            double total90,
            double error,
            double mean) {}

    private static Held held(Laws laws, int worlds) {
        double[] sums = new double[8];
        IntStream.range(0, worlds).forEach(world -> {
            ForecastWorld nursery = new ForecastWorld(laws, world);
            ForecastScore score = ForecastCheck.score(
                    nursery.at(FROM),
                    nursery.at(UNTIL),
                    new ForecastQuestion(
                            Optional.empty(),
                            Optional.empty(),
                            24,
                            UNTIL,
                            ForecastSales.NONE,
                            worlds > QUICK ? 400 : FEWER,
                            world),
                    one -> true,
                    one -> true,
                    new ForecastCheck.Basis(ForecastKnown.RECORDED_BY_THEN, 1, 1));
            double[] one = {
                score.within50(),
                score.expected50(),
                score.within90(),
                score.expected90(),
                score.inAll().holds50(score.came()) ? 1 : 0,
                score.inAll().holds90(score.came()) ? 1 : 0,
                score.inAll().mean() - score.came(),
                score.came()
            };
            for (int at = 0; at < sums.length; at++) {
                sums[at] += one[at] / worlds;
            }
        });
        return new Held(sums[0], sums[1], sums[2], sums[3], sums[4], sums[5], sums[6], sums[7]);
    }

    @Test
    void bandsHoldAsOftenAsTheySay() throws IOException {
        int worlds = Integer.getInteger("ortet.worlds", QUICK);
        boolean isLong = worlds > QUICK;
        StringBuilder table =
                new StringBuilder("| laws | months of cultivars in the 50 % band | (said) | in the 90 % band"
                        + " | (said) | totals in the 50 % band | in the 90 % band | mean error of the total |\n"
                        + "|---|---|---|---|---|---|---|---|\n");
        for (Laws laws : Laws.values()) {
            if (BEYOND.contains(laws) && !isLong) {
                continue;
            }
            Held held = held(laws, worlds);
            table.append(String.format(
                    Locale.ROOT,
                    "| %s | %.1f | %.1f | %.1f | %.1f | %.0f | %.0f | %+.1f %% |%n",
                    laws.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                    100 * held.within50(),
                    100 * held.expected50(),
                    100 * held.within90(),
                    100 * held.expected90(),
                    100 * held.total50(),
                    100 * held.total90(),
                    100 * held.error() / held.mean()));
            if (!BEYOND.contains(laws)) {
                assertEquals(held.expected50(), held.within50(), 0.05, laws + ", 50 %: " + held);
                assertEquals(held.expected90(), held.within90(), 0.05, laws + ", 90 %: " + held);
            }
        }
        Files.writeString(Path.of("target", "forecast.md"), table);
    }
}
