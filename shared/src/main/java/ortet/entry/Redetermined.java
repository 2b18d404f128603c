package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * The true cultivar of a unit that was thought to be another.
 *
 * @param tags the units that the entry is about, at least one
 * @param cultivar the name it is said to bear
 * @param note anything else worth keeping
 */
public record Redetermined(List<Tag> tags, CultivarName cultivar, Optional<String> note) implements Entry {
    public Redetermined {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(cultivar, "cultivar");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.REDETERMINED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.redetermined(this);
    }
}
