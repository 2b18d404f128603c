package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Parts taken from a plant with roots of their own.
 *
 * @param tags the units that the entry is about, at least one
 * @param mother the plant that gives the wood
 * @param remainder what becomes of the rest of the mother's wood
 * @param place where it stands
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param note anything else worth keeping
 */
public record Divided(
        List<Tag> tags,
        Tag mother,
        Optional<Remainder> remainder,
        Optional<Place> place,
        Optional<String> container,
        Optional<String> note)
        implements Entry {
    public Divided {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(mother, "mother");
        Require.present(remainder, "remainder");
        Require.present(place, "place");
        container = Require.text(container, "container");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.DIVIDED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.divided(this);
    }
}
