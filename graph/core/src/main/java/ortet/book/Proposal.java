package ortet.book;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.entry.Proposed;
import ortet.plant.Person;
import ortet.value.Where;

/**
 * What somebody wants to write into the book at one go: all of it or nothing.
 *
 * @param items the entries, in the order in which they will be recorded
 * @param persons persons who are new to the book; their numbers must be free
 */
public record Proposal(List<Item> items, List<Person> persons) {
    /**
     * An entry, and where it was read.
     *
     * @param proposed the entry
     * @param where its file and line, where it came from a file
     */
    public record Item(Proposed proposed, Optional<Where> where) {
        public Item {
            Objects.requireNonNull(proposed);
            Objects.requireNonNull(where);
        }
    }

    public Proposal {
        items = List.copyOf(items);
        persons = List.copyOf(persons);
    }

    /** Propose entries that came from no file and name no new person. */
    public static Proposal of(List<Proposed> entries) {
        return new Proposal(
                entries.stream().map(entry -> new Item(entry, Optional.empty())).toList(), List.of());
    }

    /** Propose one entry. */
    public static Proposal of(Proposed entry) {
        return of(List.of(entry));
    }
}
