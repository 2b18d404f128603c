package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;
import ortet.value.Strength;

/**
 * A layer ringed or wrapped again: the same unit, the same cohort.
 *
 * @param tags the units that the entry is about, at least one
 * @param rework what was done again
 * @param ringMm length of bark removed in millimetres, 0 for a tourniquet
 * @param hormone active substance of the rooting hormone
 * @param strength strength of the rooting hormone
 * @param carrier what carries the hormone
 * @param medium what it roots or grows in
 * @param wrap what the layer is wrapped in
 * @param note anything else worth keeping
 */
public record Reworked(
        List<Tag> tags,
        Rework rework,
        Optional<Decimal> ringMm,
        Optional<String> hormone,
        Optional<Strength> strength,
        Optional<Carrier> carrier,
        Optional<String> medium,
        Optional<String> wrap,
        Optional<String> note)
        implements Entry {
    public Reworked {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(rework, "rework");
        Require.present(ringMm, "ring_mm");
        Require.atLeast(0, ringMm, "ring_mm");
        hormone = Require.text(hormone, "hormone");
        Require.present(strength, "strength");
        Require.present(carrier, "carrier");
        medium = Require.text(medium, "medium");
        wrap = Require.text(wrap, "wrap");
        note = Require.text(note, "note");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.REWORKED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.reworked(this);
    }
}
