package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.value.Money;
import ortet.value.Require;

/**
 * Sold and gone.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param customer who buys or has it reserved
 * @param price the price of one unit
 * @param passport the traceability code of the plant passport
 * @param invoice the invoice or delivery note
 * @param note anything else worth keeping
 */
public record Sold(
        List<Tag> tags,
        Optional<Integer> count,
        Optional<PersonNumber> customer,
        Optional<Money> price,
        Optional<String> passport,
        Optional<String> invoice,
        Optional<String> note)
        implements Entry {
    public Sold {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(customer, "customer");
        Require.present(price, "price");
        passport = Require.text(passport, "passport");
        invoice = Require.text(invoice, "invoice");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.SOLD;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.sold(this);
    }
}
