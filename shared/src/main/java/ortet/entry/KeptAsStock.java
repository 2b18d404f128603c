package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Kept on purpose as a source of propagation wood.
 *
 * @param tags the units that the entry is about, at least one
 * @param note anything else worth keeping
 */
public record KeptAsStock(List<Tag> tags, Optional<String> note) implements Entry {
    public KeptAsStock {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.KEPT_AS_STOCK;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.keptAsStock(this);
    }
}
