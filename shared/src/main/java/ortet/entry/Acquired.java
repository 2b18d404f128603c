package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;
import ortet.value.When;

/**
 * A plant or batch that came from outside: the earliest that the book knows of it, not an ortet.
 *
 * @param tags the units that the entry is about, at least one
 * @param count how many units
 * @param cultivar the name it is said to bear
 * @param supplier who supplied it
 * @param consignment the supplier's consignment or delivery note
 * @param ownership owned by the nursery when absent
 * @param raised how it is said to have been raised
 * @param born when it is said to have started life
 * @param stemMm stem diameter in millimetres, above 0
 * @param heightMm height in millimetres, above 0
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param place where it stands
 * @param passport the traceability code of the plant passport
 * @param note anything else worth keeping
 */
public record Acquired(
        List<Tag> tags,
        Optional<Integer> count,
        Optional<CultivarName> cultivar,
        Optional<PersonNumber> supplier,
        Optional<String> consignment,
        Optional<Ownership> ownership,
        Optional<Raised> raised,
        Optional<When> born,
        Optional<Decimal> stemMm,
        Optional<Decimal> heightMm,
        Optional<String> container,
        Optional<Place> place,
        Optional<String> passport,
        Optional<String> note)
        implements Entry {
    public Acquired {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(count, "count");
        Require.atLeast(1, count, "count");
        Require.present(cultivar, "cultivar");
        Require.present(supplier, "supplier");
        consignment = Require.text(consignment, "consignment");
        Require.present(ownership, "ownership");
        Require.present(raised, "raised");
        Require.present(born, "born");
        Require.present(stemMm, "stem_mm");
        Require.above(0, stemMm, "stem_mm");
        Require.present(heightMm, "height_mm");
        Require.above(0, heightMm, "height_mm");
        container = Require.text(container, "container");
        Require.present(place, "place");
        passport = Require.text(passport, "passport");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.ACQUIRED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.acquired(this);
    }
}
