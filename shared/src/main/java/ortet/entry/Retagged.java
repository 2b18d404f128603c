package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * A new label for the same unit; the old tag stays findable.
 *
 * @param tags the units that the entry is about, at least one
 * @param newTag the new tag
 * @param note anything else worth keeping
 */
public record Retagged(List<Tag> tags, Tag newTag, Optional<String> note) implements Entry {
    public Retagged {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(newTag, "new_tag");
        note = Require.text(note, "note");
        Require.exactlyOne(tags, "tags");
        Require.that(!tags.contains(newTag), "new_tag", "another tag than the old one");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.RETAGGED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.retagged(this);
    }
}
