package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Another entry taken back; its words stay readable.
 *
 * @param target the entry that is amended
 * @param reason why
 * @param note anything else worth keeping
 */
public record CrossedOut(EntryId target, String reason, Optional<String> note) implements Entry {
    public CrossedOut {
        Require.present(target, "target");
        reason = Require.text(reason, "reason");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CROSSED_OUT;
    }

    @Override
    public List<Tag> tags() {
        return List.of();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.crossedOut(this);
    }
}
