package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Units taken from a batch into other batches.
 *
 * @param tags the units that the entry is about, at least one
 * @param source the batch it comes from
 * @param count how many units
 * @param place where it stands
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param note anything else worth keeping
 */
public record Split(
        List<Tag> tags, Tag source, int count, Optional<Place> place, Optional<String> container, Optional<String> note)
        implements Entry {
    public Split {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(source, "source");
        Require.atLeast(1, count, "count");
        Require.present(place, "place");
        container = Require.text(container, "container");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.SPLIT;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.split(this);
    }
}
