package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.value.Money;
import ortet.value.Require;
import ortet.value.When;

/**
 * Promised to a customer.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param customer who buys or has it reserved
 * @param until the last day on which it holds
 * @param price the price of one unit
 * @param note anything else worth keeping
 */
public record Reserved(
        List<Tag> tags,
        Optional<Integer> count,
        PersonNumber customer,
        Optional<When> until,
        Optional<Money> price,
        Optional<String> note)
        implements Entry {
    public Reserved {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(customer, "customer");
        Require.present(until, "until");
        Require.present(price, "price");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.RESERVED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.reserved(this);
    }
}
