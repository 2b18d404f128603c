package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Lifted from open ground.
 *
 * @param tags the units that the entry is about, at least one
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param place where it stands
 * @param note anything else worth keeping
 */
public record Lifted(List<Tag> tags, Optional<String> container, Optional<Place> place, Optional<String> note)
        implements Entry {
    public Lifted {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        container = Require.text(container, "container");
        Require.present(place, "place");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.LIFTED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.lifted(this);
    }
}
