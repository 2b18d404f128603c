package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.value.Money;
import ortet.value.Require;

/**
 * What one tree of a size class sells for, from the entry's day on; a later listing of the same size class and cultivar
 * takes its place from its own day on.
 *
 * @param size the size class, as in grading
 * @param cultivar the cultivar, or a botanical name for all that is under it; every cultivar when absent
 * @param price the price of one
 * @param note anything else worth keeping
 */
public record PriceListed(String size, Optional<CultivarName> cultivar, Money price, Optional<String> note)
        implements Entry {
    public PriceListed {
        size = Require.text(size, "size");
        Require.present(cultivar, "cultivar");
        Require.present(price, "price");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.PRICE_LISTED;
    }

    @Override
    public List<Tag> tags() {
        return List.of();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.priceListed(this);
    }
}
