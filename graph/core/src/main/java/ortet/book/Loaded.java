package ortet.book;

import java.util.List;
import java.util.Objects;
import ortet.value.Warning;

/**
 * What came of taking in a whole book.
 *
 * @param head where the book stands then
 * @param entries how many entries it has
 * @param persons how many persons are new
 * @param repeated how many entries were read twice and written once
 * @param begun how many units were begun
 * @param warnings what is odd about it
 */
public record Loaded(Head head, long entries, int persons, int repeated, int begun, List<Warning> warnings) {
    public Loaded {
        Objects.requireNonNull(head);
        warnings = List.copyOf(warnings);
    }
}
