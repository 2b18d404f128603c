package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Branches cut back.
 *
 * @param tags the units that the entry is about, at least one
 * @param note anything else worth keeping
 */
public record CutBack(List<Tag> tags, Optional<String> note) implements Entry {
    public CutBack {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CUT_BACK;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.cutBack(this);
    }
}
