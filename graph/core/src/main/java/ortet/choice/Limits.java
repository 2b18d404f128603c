package ortet.choice;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import ortet.value.Require;

/**
 * What a plan must keep within.
 *
 * @param hours of work there are, by year and season
 * @param roomM2 bench and bed area in square metres by place, year and season; a place that is not named has no limit
 * @param licences at most one for each cultivar; one that is not named has no limit
 * @param concentrations at most one for clones and one for places
 */
public record Limits(
        Amounts hours, Map<String, Amounts> roomM2, List<Licence> licences, List<Concentration> concentrations) {
    public Limits {
        Objects.requireNonNull(hours);
        roomM2 = Map.copyOf(roomM2);
        licences = List.copyOf(licences);
        concentrations = List.copyOf(concentrations);
        roomM2.forEach((place, amounts) -> Require.that(
                amounts.seasons() == hours.seasons(), "room in " + place, hours.seasons() + " seasons, as the hours"));
        Require.noRepeats(licences.stream().map(Licence::cultivar).toList(), "licences");
        Require.noRepeats(concentrations.stream().map(Concentration::on).toList(), "concentrations");
    }
}
