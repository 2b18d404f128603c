package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * Come back after a sale.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param customer who buys or has it reserved
 * @param reason why
 * @param place where it stands
 * @param note anything else worth keeping
 */
public record Returned(
        List<Tag> tags,
        Optional<Integer> count,
        Optional<PersonNumber> customer,
        Optional<String> reason,
        Optional<Place> place,
        Optional<String> note)
        implements Entry {
    public Returned {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(customer, "customer");
        reason = Require.text(reason, "reason");
        Require.present(place, "place");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.RETURNED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.returned(this);
    }
}
