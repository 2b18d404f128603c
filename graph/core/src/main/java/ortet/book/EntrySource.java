package ortet.book;

import java.util.List;
import java.util.Optional;
import ortet.plant.Person;
import ortet.value.Warning;

/** A whole book's worth of entries to be taken in, each once and in order. */
public interface EntrySource {
    /**
     * Hand every entry over.
     *
     * @throws ortet.value.Refused with everything that cannot be read
     */
    void read(Intake intake, Progress progress);

    /** Return every person who belongs to the book; asked when all entries are read. */
    List<Person> persons();

    /** Return what should be looked at twice; asked when all entries are read. */
    default List<Warning> remarks() {
        return List.of();
    }

    /** Return the digest that the chain of entries must end on, where it was chained before. */
    default Optional<Digest> digest() {
        return Optional.empty();
    }
}
