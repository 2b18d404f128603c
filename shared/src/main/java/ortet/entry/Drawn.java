package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Plants drawn from a batch, each under its own tag; with a count each tag is a batch.
 *
 * @param tags the units that the entry is about, at least one
 * @param source the batch it comes from
 * @param count how many units
 * @param place where it stands
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param note anything else worth keeping
 */
public record Drawn(
        List<Tag> tags,
        Tag source,
        Optional<Integer> count,
        Optional<Place> place,
        Optional<String> container,
        Optional<String> note)
        implements Entry {
    public Drawn {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(source, "source");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(place, "place");
        container = Require.text(container, "container");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.DRAWN;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.drawn(this);
    }
}
