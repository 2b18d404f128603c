package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What holds of any past, however small or odd: a forecast is drawn, and no more comes than is open. */
class ForecastPropertyTests {
    private static final int PASTS = Integer.getInteger("ortet.pasts", 200);
    private static final int KINDS = 4;
    private static final int SIMULATIONS = 20;

    /** Make up units that began and ended anyhow, in trays of one to thousands. */
    private static ForecastPast past(SplittableRandom random) {
        int asOf =
                Math.toIntExact(LocalDate.of(2018 + random.nextInt(5), 1 + random.nextInt(12), 1 + random.nextInt(28))
                        .toEpochDay());
        List<ForecastKind> kinds = new ArrayList<>();
        for (int kind = 0; kind < KINDS; kind++) {
            kinds.add(new ForecastKind(kind / 2, kind / 3, random.nextInt(4)));
        }
        int many = random.nextInt(random.nextBoolean() ? 5 : 60);
        int longest = 1 + random.nextInt(4000);
        boolean isAlike = random.nextInt(4) == 0;
        List<ForecastEpisode> episodes = new ArrayList<>();
        for (int at = 0; at < many; at++) {
            ForecastStage stage = random.nextBoolean() ? ForecastStage.TAKING : ForecastStage.GRADING;
            ForecastEnd how = ForecastEnd.values()[random.nextInt(ForecastEnd.values().length)];
            int start = asOf - random.nextInt(longest);
            int end = how == ForecastEnd.STILL ? asOf : Math.min(asOf, start + (isAlike ? 200 : random.nextInt(1200)));
            episodes.add(new ForecastEpisode(
                    stage,
                    random.nextInt(KINDS),
                    random.nextInt(random.nextBoolean() ? 3 : 30),
                    stage == ForecastStage.TAKING ? start : start - random.nextInt(300),
                    start,
                    end,
                    how,
                    random.nextInt(3),
                    1 + random.nextInt(random.nextInt(10) == 0 ? 5000 : 20)));
        }
        return new ForecastPast(
                asOf,
                List.of("A", "B", ""),
                kinds,
                List.of("small", "medium"),
                episodes,
                List.of(),
                ForecastLeaving.NONE,
                0);
    }

    @Test
    void noMoreComesThanIsOpenWhateverThePast() {
        for (int seed = 0; seed < PASTS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            ForecastPast past = past(random);
            int months = 1 + random.nextInt(30);
            LocalDate last = ForecastHorizon.firstMonth(past.asOf())
                    .plusMonths(months - 1L)
                    .atEndOfMonth();
            ForecastRun run = new ForecastRun(
                            past,
                            months,
                            Math.toIntExact(last.toEpochDay()),
                            SIMULATIONS,
                            seed,
                            ForecastSales.NONE,
                            any -> true)
                    .run();
            long open = past.episodes().stream()
                    .filter(one -> one.how() == ForecastEnd.STILL)
                    .mapToLong(ForecastEpisode::count)
                    .sum();
            for (int came : run.became(any -> true, any -> true, 0, months)) {
                assertTrue(came >= 0 && came <= open, "seed " + seed + ": " + came + " of " + open);
            }
        }
    }
}
