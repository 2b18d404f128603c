package ortet.lineage;

import java.util.Objects;
import java.util.Optional;
import ortet.book.Act;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * A unit that the one asked about comes from.
 *
 * @param act how
 * @param unit the unit that it comes from
 * @param tag its present tag
 * @param named its cultivar
 * @param state how it stands
 * @param day when the act was done
 * @param count how many units came from it, where the book says
 * @param isOneOfSeveral whether there are others in the same part, and nobody knows from which of them
 */
public record Parent(
        Act act,
        UnitNumber unit,
        Tag tag,
        Named named,
        State state,
        When day,
        Optional<Integer> count,
        boolean isOneOfSeveral) {
    public Parent {
        Objects.requireNonNull(act);
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(named);
        Objects.requireNonNull(state);
        Objects.requireNonNull(day);
        Objects.requireNonNull(count);
    }

    /** Return the part that it plays: {@code mother}, {@code scion}, {@code one of several mothers}. */
    public String part() {
        return Part.of(act, isOneOfSeveral);
    }
}
