package ortet.lineage;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.When;

/**
 * What was put right in an entry, or that it was crossed out.
 *
 * @param order the recorded order of the amendment
 * @param recordedAt when it was written into the book
 * @param day the day that the amendment bears
 * @param by who amended, as they are shown; absent when nobody said
 * @param field the column that was wrong; absent when the entry was crossed out
 * @param was what the column said before; absent when it was empty, or the entry was crossed out
 * @param value what it says since; absent when it is empty, or the entry was crossed out
 * @param tags the units for which it was wrong; empty for all
 * @param reason why, where told
 */
public record Amendment(
        long order,
        Instant recordedAt,
        When day,
        Optional<String> by,
        Optional<String> field,
        Optional<String> was,
        Optional<String> value,
        List<Tag> tags,
        Optional<String> reason) {
    public Amendment {
        Objects.requireNonNull(recordedAt);
        Objects.requireNonNull(day);
        Objects.requireNonNull(by);
        Objects.requireNonNull(field);
        Objects.requireNonNull(was);
        Objects.requireNonNull(value);
        tags = List.copyOf(tags);
        Objects.requireNonNull(reason);
    }

    /** Tell whether the entry was crossed out. */
    public boolean isCrossingOut() {
        return field.isEmpty();
    }
}
