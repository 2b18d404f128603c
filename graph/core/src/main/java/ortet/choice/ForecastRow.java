package ortet.choice;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What is forecast of a cultivar, or all, in a size class, or in any.
 *
 * @param cultivar absent for all; empty for one that is not known
 * @param size absent for any; empty for sold ungraded
 * @param now how many stand saleable now
 * @param becoming how many become saleable in each month
 * @param standing how many stand saleable at the end of each month
 * @param inAll how many become saleable over all months
 */
public record ForecastRow(
        Optional<String> cultivar,
        Optional<String> size,
        int now,
        List<ForecastBand> becoming,
        List<ForecastBand> standing,
        ForecastBand inAll) {
    public ForecastRow {
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(size);
        becoming = List.copyOf(becoming);
        standing = List.copyOf(standing);
        Objects.requireNonNull(inAll);
    }
}
