package ortet.yield;

import java.util.Objects;
import java.util.Optional;
import ortet.figures.GroupRate;
import ortet.figures.Ranking;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * What one mother gave by one method.
 *
 * @param unit the mother
 * @param tag her tag on the day
 * @param cultivar what she is; absent where nobody knows
 * @param isThere whether she still stands in the nursery
 * @param tally how the units from her alone stand
 * @param rate their take rate by itself; absent when nothing is known
 * @param pooled what is said of her with the help of the other mothers; absent when nothing is known of her
 * @param standing how likely she is among the best of those that still stand; absent when she does not, or nothing is known
 * @param years the mother-years that went into it
 * @param living how many young plants from her, by this method, grow in the nursery
 * @param sold how many were sold and not returned
 * @param last the last day on which something was taken from her by this method
 */
public record MotherRow(
        UnitNumber unit,
        Tag tag,
        Optional<String> cultivar,
        boolean isThere,
        Tally tally,
        Optional<TakeRate> rate,
        Optional<GroupRate> pooled,
        Optional<Ranking.Standing> standing,
        int years,
        int living,
        int sold,
        When last) {
    public MotherRow {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(tally);
        Objects.requireNonNull(rate);
        Objects.requireNonNull(pooled);
        Objects.requireNonNull(standing);
        Objects.requireNonNull(last);
    }

    /** Return how many took for each mother-year; absent when there were none. */
    public Optional<Double> takenPerYear() {
        return years == 0 ? Optional.empty() : Optional.of((double) tally.taken() / years);
    }
}
