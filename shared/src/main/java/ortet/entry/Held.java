package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Held for plant health: nothing leaves, nothing is propagated until it is cleared.
 *
 * @param tags the units that the entry is about, at least one
 * @param sign what was seen
 * @param sample the number of a sample sent away
 * @param note anything else worth keeping
 */
public record Held(List<Tag> tags, String sign, Optional<String> sample, Optional<String> note) implements Entry {
    public Held {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        sign = Require.text(sign, "sign");
        sample = Require.text(sample, "sample");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.HELD;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.held(this);
    }
}
