package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Units that came to nothing before they stood on their own roots.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param cause why
 * @param note anything else worth keeping
 */
public record Failed(List<Tag> tags, Optional<Integer> count, Optional<Cause> cause, Optional<String> note)
        implements Entry {
    public Failed {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(cause, "cause");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.FAILED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.failed(this);
    }
}
