package ortet.book;

import java.util.Objects;
import java.util.Optional;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * A link from a unit to one that it comes from.
 *
 * @param child the unit that comes from the other
 * @param mother the unit that it comes from
 * @param act how
 * @param day when
 * @param order the recorded order of the entry that says so
 * @param count how many of the child's units, where the entry says
 */
public record Link(UnitNumber child, UnitNumber mother, Act act, When day, long order, Optional<Integer> count) {
    public Link {
        Objects.requireNonNull(child);
        Objects.requireNonNull(mother);
        Objects.requireNonNull(act);
        Objects.requireNonNull(day);
        Objects.requireNonNull(count);
    }
}
