package ortet.book;

import java.util.List;
import java.util.Objects;
import ortet.entry.Recorded;
import ortet.value.Warning;

/**
 * What was written into the book.
 *
 * @param head where the book stands now
 * @param written the entries that were written, in recorded order
 * @param alreadyThere how many of those proposed were in the book before, word for word
 * @param begun how many units were begun
 * @param warnings what is odd about it
 */
public record Receipt(Head head, List<Recorded> written, int alreadyThere, int begun, List<Warning> warnings) {
    public Receipt {
        Objects.requireNonNull(head);
        written = List.copyOf(written);
        warnings = List.copyOf(warnings);
    }

    /**
     * Return it in numbers.
     *
     * @param persons how many persons are new
     */
    public Loaded loaded(int persons) {
        return new Loaded(head, written.size(), persons, alreadyThere, begun, warnings);
    }
}
