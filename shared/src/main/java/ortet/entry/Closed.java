package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * The rest of a cohort settled at one go.
 *
 * @param tags the units that the entry is about, at least one
 * @param rest what becomes of all that is neither taken nor failed yet
 * @param cause why
 * @param note anything else worth keeping
 */
public record Closed(List<Tag> tags, Rest rest, Optional<Cause> cause, Optional<String> note) implements Entry {
    public Closed {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(rest, "rest");
        Require.present(cause, "cause");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CLOSED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.closed(this);
    }
}
