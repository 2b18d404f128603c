package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Cleared after a hold.
 *
 * @param tags the units that the entry is about, at least one
 * @param note anything else worth keeping
 */
public record Cleared(List<Tag> tags, Optional<String> note) implements Entry {
    public Cleared {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CLEARED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.cleared(this);
    }
}
