package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import ortet.choice.ForecastWorld.Laws;

/**
 * How often what came lies within the bands, in nurseries made up by known laws: of a month of a cultivar, of a month, of a
 * cultivar's year, of a cultivar, of a year and of all. A long run ({@code -Dortet.worlds=100}) goes by nurseries on which nothing was tuned, and
 * leaves its table in {@code target/forecast.md}.
 */
class ForecastCalibrationTests {
    private static final LocalDate FROM = LocalDate.of(2020, 8, 15);
    private static final LocalDate UNTIL = LocalDate.of(2022, 7, 31);
    private static final int QUICK = 10;
    private static final int FEWER = 80;
    private static final int MORE = 300;
    private static final int HELD_OUT = 5000;
    private static final int CULTIVARS = 8;
    private static final IntPredicate ANY = one -> true;

    /** Laws of which the forecast knows nothing, and which it cannot follow. */
    private static final Set<Laws> BEYOND = EnumSet.of(Laws.TAKING_BETTER, Laws.GROWING_FASTER, Laws.BAD_LAST_SEASON);

    /** Laws by which two months of the year alone count, so that more nurseries are needed for as many months. */
    private static final Set<Laws> OF_FEW_MONTHS = EnumSet.of(Laws.GRADED_IN_AUTUMN, Laws.GRADED_ON_ONE_DAY);

    private static final int MORE_OF_FEW = 3;

    /** What is counted apart. */
    private enum Of {
        MONTH_OF_CULTIVAR,
        MONTH,
        YEAR_OF_CULTIVAR,
        CULTIVAR,
        YEAR,
        ALL
    }

    /** How often what came lay within bands, and how often it should have. */
    private static final class Held {
        private final double[][] sums = new double[Of.values().length][5];
        private final List<Double> errors = new ArrayList<>();
        private double forecast;
        private double came;

        void add(Of of, int[] drawn, int found) {
            ForecastBand band = ForecastBand.of(drawn);
            if (found > 0 || band.upper90() > 0) {
                double[] into = sums[of.ordinal()];
                into[0]++;
                into[1] += band.holds50(found) ? 1 : 0;
                into[2] += band.within50();
                into[3] += band.holds90(found) ? 1 : 0;
                into[4] += band.within90();
            }
            if (of == Of.ALL) {
                forecast += band.mean();
                came += found;
                errors.add(band.mean() - found);
            }
        }

        /** Return how much more was forecast than came, as a share. */
        double error() {
            return (forecast - came) / came;
        }

        /** Return the standard error of that, by how nurseries differ. */
        double errorOfError() {
            double mean = (forecast - came) / errors.size();
            double squares =
                    errors.stream().mapToDouble(e -> (e - mean) * (e - mean)).sum();
            return Math.sqrt(squares / (errors.size() - 1) * errors.size()) / came;
        }

        double share(Of of, int which) {
            return sums[of.ordinal()][which] / sums[of.ordinal()][0];
        }
    }

    private static void hold(ForecastWorld nursery, int simulations, long seed, Held held) {
        ForecastPast then = nursery.at(FROM);
        ForecastPast now = nursery.at(UNTIL);
        YearMonth first = ForecastHorizon.firstMonth(then.asOf());
        int months = Math.toIntExact(first.until(YearMonth.from(UNTIL), ChronoUnit.MONTHS)) + 1;
        ForecastRun run = new ForecastRun(then, months, now.asOf(), simulations, seed, ForecastSales.NONE, ANY).run();
        int[][] came = new int[CULTIVARS][months];
        for (ForecastEpisode one : now.episodes()) {
            if (one.stage() == ForecastStage.GRADING
                    && one.how() == ForecastEnd.GOOD
                    && one.end() > then.asOf()
                    && one.since() <= then.asOf()) {
                YearMonth month = YearMonth.from(LocalDate.ofEpochDay(one.end()));
                came[now.kinds().get(one.kind()).cultivar()][Math.toIntExact(first.until(month, ChronoUnit.MONTHS))] +=
                        one.count();
            }
        }
        int half = months / 2;
        for (int month = 0; month < months; month++) {
            held.add(Of.MONTH, run.became(ANY, ANY, month, month + 1), all(came, month, month + 1));
        }
        for (int cultivar = 0; cultivar < CULTIVARS; cultivar++) {
            int which = cultivar;
            IntPredicate of = one -> one == which;
            for (int month = 0; month < months; month++) {
                held.add(Of.MONTH_OF_CULTIVAR, run.became(of, ANY, month, month + 1), came[cultivar][month]);
            }
            held.add(Of.YEAR_OF_CULTIVAR, run.became(of, ANY, 0, half), sum(came[cultivar], 0, half));
            held.add(Of.YEAR_OF_CULTIVAR, run.became(of, ANY, half, months), sum(came[cultivar], half, months));
            held.add(Of.CULTIVAR, run.became(of, ANY, 0, months), sum(came[cultivar], 0, months));
        }
        held.add(Of.YEAR, run.became(ANY, ANY, 0, half), all(came, 0, half));
        held.add(Of.YEAR, run.became(ANY, ANY, half, months), all(came, half, months));
        held.add(Of.ALL, run.became(ANY, ANY, 0, months), all(came, 0, months));
    }

    private static int sum(int[] counts, int from, int to) {
        return Arrays.stream(counts, from, to).sum();
    }

    private static int all(int[][] counts, int from, int to) {
        return Arrays.stream(counts).mapToInt(one -> sum(one, from, to)).sum();
    }

    @Test
    void bandsHoldAsOftenAsTheySay() throws IOException {
        int asked = Integer.getInteger("ortet.worlds", QUICK);
        boolean isLong = asked > QUICK;
        StringBuilder table = new StringBuilder("| laws |");
        for (Of of : Of.values()) {
            table.append(' ')
                    .append(of.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                    .append(": 50 % | 90 % |");
        }
        table.append(" mean error of all |\n|---|")
                .append("---|".repeat(2 * Of.values().length + 1))
                .append('\n');
        for (Laws laws : Laws.values()) {
            if (BEYOND.contains(laws) && !isLong) {
                continue;
            }
            int worlds = OF_FEW_MONTHS.contains(laws) && !isLong ? asked * MORE_OF_FEW : asked;
            Held held = new Held();
            for (int world = 0; world < worlds; world++) {
                int seed = world + (isLong ? HELD_OUT : 0);
                hold(new ForecastWorld(laws, seed), isLong ? MORE : FEWER, seed, held);
            }
            table.append("| ")
                    .append(laws.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                    .append(" |");
            for (Of of : Of.values()) {
                table.append(String.format(
                        Locale.ROOT,
                        " %.0f (%.0f) | %.0f (%.0f) |",
                        100 * held.share(of, 1),
                        100 * held.share(of, 2),
                        100 * held.share(of, 3),
                        100 * held.share(of, 4)));
            }
            table.append(String.format(Locale.ROOT, " %+.1f %% |%n", 100 * held.error()));
            if (!BEYOND.contains(laws)) {
                check(laws, held, Of.MONTH_OF_CULTIVAR, 0.05);
                // numbers that share their luck: 5 points and twice the error of counting so few of them
                check(laws, held, Of.YEAR_OF_CULTIVAR, 0.05 + few(worlds * CULTIVARS));
                check(laws, held, Of.CULTIVAR, 0.05 + few(worlds * CULTIVARS));
                // of each nursery one or two: that they are not as wide, or as narrow, as twice; the long run tells
                // more
                check(laws, held, Of.YEAR, 0.05 + 1.5 * few(worlds));
                check(laws, held, Of.ALL, 0.05 + 1.5 * few(worlds));
                assertEquals(0, held.error(), 0.02 + 2 * held.errorOfError(), laws + ", mean error of all");
            }
        }
        Files.writeString(Path.of("target", "forecast.md"), table);
    }

    private static double few(int numbers) {
        return 2 * Math.sqrt(0.25 / numbers);
    }

    private static void check(Laws laws, Held held, Of of, double within) {
        assertEquals(held.share(of, 2), held.share(of, 1), within, laws + ", 50 % of " + of);
        assertEquals(held.share(of, 4), held.share(of, 3), within, laws + ", 90 % of " + of);
    }
}
