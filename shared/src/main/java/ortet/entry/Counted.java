package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * A recount of a batch: how many there are.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param reason why
 * @param note anything else worth keeping
 */
public record Counted(List<Tag> tags, int count, Optional<String> reason, Optional<String> note) implements Entry {
    public Counted {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.atLeast(1, count, "count");
        reason = Require.text(reason, "reason");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.COUNTED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.counted(this);
    }
}
