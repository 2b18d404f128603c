package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Several batches put together under a new tag; the old tags stay findable.
 *
 * @param tags the units that the entry is about, at least one
 * @param sources the batches that come together, at least two
 * @param place where it stands
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param note anything else worth keeping
 */
public record Merged(
        List<Tag> tags, List<Tag> sources, Optional<Place> place, Optional<String> container, Optional<String> note)
        implements Entry {
    public Merged {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        sources = List.copyOf(sources);
        Require.noRepeats(sources, "sources");
        Require.present(place, "place");
        container = Require.text(container, "container");
        note = Require.text(note, "note");
        Require.size(2, sources, "sources");
        Require.exactlyOne(tags, "tags");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.MERGED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.merged(this);
    }
}
