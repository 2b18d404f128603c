package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;

/**
 * Stem, height and the places where a layer could be set.
 *
 * @param tags the units that the entry is about, at least one
 * @param stemMm stem diameter in millimetres, above 0
 * @param heightMm height in millimetres, above 0
 * @param positions places where a layer can be set, counted by stem diameter
 * @param note anything else worth keeping
 */
public record Measured(
        List<Tag> tags,
        Optional<Decimal> stemMm,
        Optional<Decimal> heightMm,
        List<Band> positions,
        Optional<String> note)
        implements Entry {
    public Measured {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(stemMm, "stem_mm");
        Require.above(0, stemMm, "stem_mm");
        Require.present(heightMm, "height_mm");
        Require.above(0, heightMm, "height_mm");
        positions = List.copyOf(positions);
        note = Require.text(note, "note");
        Require.that(
                stemMm.isPresent() || heightMm.isPresent() || !positions.isEmpty(),
                "stem_mm",
                "a stem, a height or positions");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.MEASURED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.measured(this);
    }
}
