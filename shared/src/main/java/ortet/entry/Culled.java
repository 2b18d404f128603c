package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Taken out by choice.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param cull why it was taken out
 * @param note anything else worth keeping
 */
public record Culled(List<Tag> tags, Optional<Integer> count, CullReason cull, Optional<String> note) implements Entry {
    public Culled {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(cull, "cull");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CULLED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.culled(this);
    }
}
