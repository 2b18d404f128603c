package ortet.choice.inputs;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.choice.Aim;
import ortet.value.Require;

/**
 * What is asked.
 *
 * @param cultivar only mothers of this cultivar or taxon
 * @param asOf what is known by this day
 * @param years how many years are planned, 1 to 10
 * @param aim what the plan is to do best
 * @param demand trees asked for; empty reads them off past sales
 * @param limits hours, room, licences and shares; empty for none
 * @param atMost after how long to stop
 * @param draws on how many draws to judge how sure each answer is
 * @param seed of the draws
 * @param discount by what a year's delay lessens money, 0 to below 1
 */
public record ChoiceRequest(
        Optional<String> cultivar,
        LocalDate asOf,
        int years,
        Aim aim,
        Optional<List<DemandLine>> demand,
        List<LimitLine> limits,
        Duration atMost,
        int draws,
        long seed,
        double discount) {
    private static final int MOST_YEARS = 10;
    private static final int MOST_DRAWS = 10_000;

    public ChoiceRequest {
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(asOf);
        Require.that(years >= 1 && years <= MOST_YEARS, "years", "1 to " + MOST_YEARS);
        Require.that(draws >= 0 && draws <= MOST_DRAWS, "draws", "0 to " + MOST_DRAWS);
        Require.that(discount >= 0 && discount < 1, "discount", "0 to below 1");
        Objects.requireNonNull(aim);
        demand = demand.map(List::copyOf);
        limits = List.copyOf(limits);
        Objects.requireNonNull(atMost);
    }
}
