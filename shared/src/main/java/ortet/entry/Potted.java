package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * A plant or a whole batch put into a container.
 *
 * @param tags the units that the entry is about, at least one
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param purpose why it was potted
 * @param medium what it roots or grows in
 * @param place where it stands
 * @param note anything else worth keeping
 */
public record Potted(
        List<Tag> tags,
        String container,
        Optional<Purpose> purpose,
        Optional<String> medium,
        Optional<Place> place,
        Optional<String> note)
        implements Entry {
    public Potted {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        container = Require.text(container, "container");
        Require.present(purpose, "purpose");
        medium = Require.text(medium, "medium");
        Require.present(place, "place");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.POTTED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.potted(this);
    }
}
