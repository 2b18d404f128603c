package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Graded fit for sale in a size class.
 *
 * @param tags the units that the entry is about, at least one
 * @param size the size class
 * @param grade the grade within the size class
 * @param note anything else worth keeping
 */
public record Graded(List<Tag> tags, String size, Optional<String> grade, Optional<String> note) implements Entry {
    public Graded {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        size = Require.text(size, "size");
        grade = Require.text(grade, "grade");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.GRADED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.graded(this);
    }
}
