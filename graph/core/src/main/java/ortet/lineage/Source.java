package ortet.lineage;

import java.util.Objects;
import java.util.Optional;
import ortet.book.Act;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * A unit that another comes from.
 *
 * @param act how
 * @param unit the unit that it comes from
 * @param tag its present tag
 * @param count how many units came from it, where the book says
 * @param isOneOfSeveral whether there are others in the same part, and nobody knows from which of them
 * @param step what is traced of it; absent when it is told elsewhere in the same trace or was left out
 * @param isToldElsewhere whether it is told elsewhere in the same trace
 */
public record Source(
        Act act,
        UnitNumber unit,
        Tag tag,
        Optional<Integer> count,
        boolean isOneOfSeveral,
        Optional<Step> step,
        boolean isToldElsewhere) {
    public Source {
        Objects.requireNonNull(act);
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(count);
        Objects.requireNonNull(step);
    }

    /** Return the part that the source plays: {@code mother}, {@code scion}, {@code one of several mothers}. */
    public String part() {
        return Part.of(act, isOneOfSeveral);
    }
}
