package ortet.book;

import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import ortet.entry.Recorded;
import ortet.plant.Person;

/**
 * A whole book as it was taken out of a store.
 *
 * @param bookId the book's identity
 * @param zone the book's time zone
 * @param entries every entry in recorded order, from 1 without gaps
 * @param persons every person, erased ones too
 * @param digest the digest of the last entry, which the chain must end on
 */
public record Restoration(UUID bookId, ZoneId zone, List<Recorded> entries, List<Person> persons, Digest digest) {
    public Restoration {
        Objects.requireNonNull(bookId);
        Objects.requireNonNull(zone);
        Objects.requireNonNull(digest);
        entries = List.copyOf(entries);
        persons = List.copyOf(persons);
    }
}
