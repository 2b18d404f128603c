package ortet.book;

import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import ortet.entry.Entry;
import ortet.entry.Mention.Role;
import ortet.plant.PersonNumber;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * An entry on the timeline of one unit, as amended.
 *
 * @param unit the unit
 * @param order the recorded order of the entry
 * @param day when it was done
 * @param by who did it, where known
 * @param entry its words; its tags are those that share these words
 * @param roles the parts that the unit plays in it, at least one
 */
public record Event(UnitNumber unit, long order, When day, Optional<PersonNumber> by, Entry entry, Set<Role> roles) {
    public Event {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(day);
        Objects.requireNonNull(by);
        Objects.requireNonNull(entry);
        roles = Set.copyOf(roles);
    }

    /** Tell whether the entry begins the unit. */
    public boolean begins() {
        return roles.contains(Role.BEGUN);
    }
}
