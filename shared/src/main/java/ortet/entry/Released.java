package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * No longer kept as stock, or no longer reserved.
 *
 * @param tags the units that the entry is about, at least one
 * @param from what it is released from
 * @param note anything else worth keeping
 */
public record Released(List<Tag> tags, Optional<ReleasedFrom> from, Optional<String> note) implements Entry {
    public Released {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(from, "from");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.RELEASED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.released(this);
    }
}
