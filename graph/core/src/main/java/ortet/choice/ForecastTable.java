package ortet.choice;

import java.time.YearMonth;
import java.util.List;
import java.util.Objects;

/**
 * A forecast.
 *
 * @param question what was asked
 * @param months the months, the first what is left of its own
 * @param rows each cultivar, in any size class and then in each
 * @param total all of them, in any size class and then in each
 * @param behind what it goes by, for each cultivar and method that has something pending or growing
 * @param luck how much of their luck units share, stage by stage
 * @param pending how many units are pending
 * @param growing how many trees are growing on
 * @param tooOld how many of the pending are older than any of their like that took: nothing is forecast of them
 * @param tooOldGrowing how many of the trees growing on are older than any of their like that was graded or sold
 * @param boughtIn how many plants were bought in, are not stock and were never graded: nothing is forecast of them
 * @param taken how many units are known to have taken, ever
 * @param saleable how many trees are known to have become saleable, ever
 */
public record ForecastTable(
        ForecastQuestion question,
        List<YearMonth> months,
        List<ForecastRow> rows,
        List<ForecastRow> total,
        List<ForecastBehind> behind,
        List<ForecastLuck> luck,
        int pending,
        int growing,
        int tooOld,
        int tooOldGrowing,
        int boughtIn,
        long taken,
        long saleable) {
    public ForecastTable {
        Objects.requireNonNull(question);
        months = List.copyOf(months);
        rows = List.copyOf(rows);
        total = List.copyOf(total);
        behind = List.copyOf(behind);
        luck = List.copyOf(luck);
    }

    /** Tell whether there is nothing of which anything could become saleable, or nothing to go by. */
    public boolean isEmpty() {
        return total.isEmpty();
    }
}
