package ortet.choice;

import java.time.YearMonth;
import java.util.Objects;
import java.util.Optional;

/**
 * What was forecast for one month, and what came.
 *
 * @param cultivar absent for all; empty for one that is not known
 * @param month which
 * @param forecast how many were to become saleable
 * @param came how many did
 */
public record ForecastCell(Optional<String> cultivar, YearMonth month, ForecastBand forecast, int came) {
    public ForecastCell {
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(month);
        Objects.requireNonNull(forecast);
    }
}
