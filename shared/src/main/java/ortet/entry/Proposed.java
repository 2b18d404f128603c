package ortet.entry;

import java.util.Objects;
import java.util.Optional;
import ortet.plant.PersonNumber;
import ortet.value.When;

/**
 * An entry with its day and its hand, as somebody wants to write it into the book.
 *
 * @param id its identity
 * @param day when it was done
 * @param by who did it, where known
 * @param entry what was done or seen
 */
public record Proposed(EntryId id, When day, Optional<PersonNumber> by, Entry entry) {
    public Proposed {
        Objects.requireNonNull(id);
        Objects.requireNonNull(day);
        Objects.requireNonNull(by);
        Objects.requireNonNull(entry);
    }
}
