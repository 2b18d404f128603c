package ortet.choice;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * What is to be forecast.
 *
 * @param cultivar only this cultivar, or taxon
 * @param size only this size class
 * @param months for how many months, 1 to {@value #MOST_MONTHS}; the first is what is left of its own
 * @param asOf the cut-off day: nothing later counts
 * @param sales what is assumed of them
 * @param simulations how many are drawn, {@value #FEWEST} to {@value #MOST}
 * @param seed of the draws
 */
public record ForecastQuestion(
        Optional<String> cultivar,
        Optional<String> size,
        int months,
        LocalDate asOf,
        ForecastSales sales,
        int simulations,
        long seed) {
    /** How many simulations there are unless asked otherwise. */
    public static final int SIMULATIONS = 400;

    /** For how many months at most. */
    public static final int MOST_MONTHS = 120;

    /** How many simulations at least. */
    public static final int FEWEST = 100;

    /** How many simulations at most. */
    public static final int MOST = 10_000;

    public ForecastQuestion {
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(size);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(sales);
        Require.atLeast(1, months, "months");
        if (months > MOST_MONTHS) {
            throw Refused.because("bad-months", "expected at most " + MOST_MONTHS + " months, found " + months);
        }
        if (simulations < FEWEST || simulations > MOST) {
            throw Refused.because(
                    "bad-simulations", "expected " + FEWEST + " to " + MOST + " simulations, found " + simulations);
        }
    }
}
