package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * A branch that differs from its plant, tagged so that it can be propagated as a clone of its own.
 *
 * @param tags the units that the entry is about, at least one
 * @param mother the plant that gives the wood
 * @param branch which branch, in words
 * @param cultivar the name it is said to bear
 * @param note anything else worth keeping
 */
public record SportFound(
        List<Tag> tags, Tag mother, Optional<String> branch, Optional<CultivarName> cultivar, Optional<String> note)
        implements Entry {
    public SportFound {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(mother, "mother");
        branch = Require.text(branch, "branch");
        Require.present(cultivar, "cultivar");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.SPORT_FOUND;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.sportFound(this);
    }
}
