package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * A layer cut from its mother.
 *
 * @param tags the units that the entry is about, at least one
 * @param roots what roots there were; absent when nobody graded them, and then there were some
 * @param remainder what becomes of the rest of the mother's wood
 * @param place where it stands
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param note anything else worth keeping
 */
public record Severed(
        List<Tag> tags,
        Optional<Roots> roots,
        Optional<Remainder> remainder,
        Optional<Place> place,
        Optional<String> container,
        Optional<String> note)
        implements Entry {
    public Severed {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(roots, "roots");
        Require.present(remainder, "remainder");
        Require.present(place, "place");
        container = Require.text(container, "container");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.SEVERED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.severed(this);
    }
}
