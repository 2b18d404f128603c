package ortet.entry;

import java.util.List;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * A remark.
 *
 * @param tags the units that the entry is about, at least one
 * @param note anything else worth keeping
 */
public record Noted(List<Tag> tags, String note) implements Entry {
    public Noted {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.NOTED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.noted(this);
    }
}
