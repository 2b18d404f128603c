package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * A plant found without its label and tagged anew: one of several that it may be.
 *
 * @param tags the units that the entry is about, at least one
 * @param candidates the units that it may be, at least two
 * @param place where it stands
 * @param note anything else worth keeping
 */
public record FoundUntagged(List<Tag> tags, List<Tag> candidates, Optional<Place> place, Optional<String> note)
        implements Entry {
    public FoundUntagged {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        candidates = List.copyOf(candidates);
        Require.noRepeats(candidates, "candidates");
        Require.present(place, "place");
        note = Require.text(note, "note");
        Require.size(2, candidates, "candidates");
        Require.exactlyOne(tags, "tags");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.FOUND_UNTAGGED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.foundUntagged(this);
    }
}
