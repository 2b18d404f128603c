package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * One field of another entry put right, for all of its units or for some.
 *
 * @param target the entry that is amended
 * @param field the column whose value was wrong
 * @param value the true value; absent when the field should be empty
 * @param tags the units that the entry is about, at least one
 * @param reason why
 * @param note anything else worth keeping
 */
public record Corrected(
        EntryId target,
        String field,
        Optional<String> value,
        List<Tag> tags,
        Optional<String> reason,
        Optional<String> note)
        implements Entry {
    public Corrected {
        Require.present(target, "target");
        field = Require.text(field, "field");
        value = Require.text(value, "value");
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        reason = Require.text(reason, "reason");
        note = Require.text(note, "note");
        Require.text(field, "field");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CORRECTED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.corrected(this);
    }
}
