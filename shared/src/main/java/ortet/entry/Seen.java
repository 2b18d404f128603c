package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Seen alive.
 *
 * @param tags the units that the entry is about, at least one
 * @param place where it stands
 * @param note anything else worth keeping
 */
public record Seen(List<Tag> tags, Optional<Place> place, Optional<String> note) implements Entry {
    public Seen {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(place, "place");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.SEEN;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.seen(this);
    }
}
