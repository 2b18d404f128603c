package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;

/**
 * Seed sown under one tag, by count or by weight.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param grams weight of the seed in grams, above 0
 * @param seedParent the plant that bore the seed, where it is in the book
 * @param pollenParent the plant that gave the pollen, where it is in the book
 * @param cultivar the name it is said to bear
 * @param supplier who supplied it
 * @param consignment the supplier's consignment or delivery note
 * @param place where it stands
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param setUnrecorded yes where nobody recorded it when it was done, and it is written for the lineage alone: it counts in
 *     no rate
 * @param note anything else worth keeping
 */
public record SeedSown(
        List<Tag> tags,
        Optional<Integer> count,
        Optional<Decimal> grams,
        Optional<Tag> seedParent,
        Optional<Tag> pollenParent,
        Optional<CultivarName> cultivar,
        Optional<PersonNumber> supplier,
        Optional<String> consignment,
        Optional<Place> place,
        Optional<String> container,
        Optional<Boolean> setUnrecorded,
        Optional<String> note)
        implements Entry {
    public SeedSown {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(grams, "grams");
        Require.above(0, grams, "grams");
        Require.present(seedParent, "seed_parent");
        Require.present(pollenParent, "pollen_parent");
        Require.present(cultivar, "cultivar");
        Require.present(supplier, "supplier");
        consignment = Require.text(consignment, "consignment");
        Require.present(place, "place");
        container = Require.text(container, "container");
        Require.present(setUnrecorded, "set_unrecorded");
        note = Require.text(note, "note");
        Require.that(count.isEmpty() || grams.isEmpty(), "count", "either a count or grams, not both");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.SEED_SOWN;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.seedSown(this);
    }
}
