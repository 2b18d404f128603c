package ortet.choice;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

/**
 * How forecasts for an earlier day have held.
 *
 * @param question what was asked, with the day up to which it is known what came
 * @param from the day for which the forecasts were made
 * @param known what they went by
 * @param begun how many units had begun by that day
 * @param recorded how many of these were in the book by then
 * @param cells cultivars by month, of which the upper end of the 90 % band, or what came, is above 0
 * @param total all cultivars, each month
 * @param inAll how many were to become saleable over the whole time
 * @param came how many did
 * @param later how many more became saleable of what was set later, of which no forecast could know
 * @param within50 the share of cells in which what came lies in the 50 % band
 * @param expected50 the share in which it should, which is above half where numbers are small
 * @param within90 the share of cells in which it lies in the 90 % band
 * @param expected90 the share in which it should
 * @param meanError the mean over cells of the forecast's mean less what came, in trees
 * @param meanAbsoluteError the mean over cells of the difference of the median from what came, in trees
 * @param verdict what is to be thought of it
 */
public record ForecastScore(
        ForecastQuestion question,
        LocalDate from,
        ForecastKnown known,
        int begun,
        int recorded,
        List<ForecastCell> cells,
        List<ForecastCell> total,
        ForecastBand inAll,
        int came,
        int later,
        double within50,
        double expected50,
        double within90,
        double expected90,
        double meanError,
        double meanAbsoluteError,
        ForecastVerdict verdict) {
    public ForecastScore {
        Objects.requireNonNull(question);
        Objects.requireNonNull(from);
        Objects.requireNonNull(known);
        cells = List.copyOf(cells);
        total = List.copyOf(total);
        Objects.requireNonNull(inAll);
        Objects.requireNonNull(verdict);
    }
}
