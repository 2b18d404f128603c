package ortet.book;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import ortet.plant.Person;
import ortet.value.Warning;

/** A whole book's worth of entries to be taken in, each once and in order. */
public interface EntrySource {
    /**
     * Hand every entry over.
     *
     * @throws ortet.value.Refused with everything that cannot be read, or when a whole book is not as it was written
     */
    void read(Intake intake, Progress progress);

    /** Return every person who is new to the book; asked when all entries are read. */
    List<Person> persons();

    /** Return what should be looked at twice; asked when all entries are read. */
    default List<Warning> remarks() {
        return List.of();
    }

    /** Return how many entries were read twice and handed over once; asked when all entries are read. */
    default int repeated() {
        return 0;
    }

    /** Return which book the entries are the whole of, where they are one; it takes the place of the empty book's own. */
    default Optional<Identity> identity() {
        return Optional.empty();
    }

    /**
     * Which book entries are.
     *
     * @param book the book's identity
     * @param zone the book's time zone
     */
    record Identity(UUID book, ZoneId zone) {}
}
