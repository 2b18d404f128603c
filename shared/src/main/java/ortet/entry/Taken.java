package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Units found to have taken and still under their tag.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param note anything else worth keeping
 */
public record Taken(List<Tag> tags, Optional<Integer> count, Optional<String> note) implements Entry {
    public Taken {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.TAKEN;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.taken(this);
    }
}
