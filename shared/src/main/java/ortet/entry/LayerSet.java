package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;
import ortet.value.Strength;

/**
 * A branch girdled and wrapped on its mother, so that it roots before it is severed.
 *
 * @param tags the units that the entry is about, at least one
 * @param mother the plant that gives the wood
 * @param branch which branch, in words
 * @param heightMm height in millimetres, above 0
 * @param branchOrder 1 for a branch of the trunk, 2 for a branch of that, and so on
 * @param above another layer on the same branch that this one is set above (further from the trunk)
 * @param below another layer on the same branch that this one is set below (nearer the trunk)
 * @param belowUnion whether the wood is from below a graft union, so that it follows the clone of the rootstock
 * @param stemMm stem diameter in millimetres, above 0
 * @param ringMm length of bark removed in millimetres, 0 for a tourniquet
 * @param wound how the bark was cut
 * @param hormone active substance of the rooting hormone
 * @param strength strength of the rooting hormone
 * @param carrier what carries the hormone
 * @param medium what it roots or grows in
 * @param wrap what the layer is wrapped in
 * @param place where it stands
 * @param stockAgeYears age of the stock plant in years
 * @param hedged whether the stock plant is kept cut back as a hedge
 * @param setUnrecorded yes where nobody recorded it when it was done, and it is written for the lineage alone: it counts in
 *     no rate
 * @param note anything else worth keeping
 */
public record LayerSet(
        List<Tag> tags,
        Tag mother,
        Optional<String> branch,
        Optional<Decimal> heightMm,
        Optional<Integer> branchOrder,
        Optional<Tag> above,
        Optional<Tag> below,
        Optional<Boolean> belowUnion,
        Optional<Decimal> stemMm,
        Optional<Decimal> ringMm,
        Optional<Wound> wound,
        Optional<String> hormone,
        Optional<Strength> strength,
        Optional<Carrier> carrier,
        Optional<String> medium,
        Optional<String> wrap,
        Optional<Place> place,
        Optional<Integer> stockAgeYears,
        Optional<Boolean> hedged,
        Optional<Boolean> setUnrecorded,
        Optional<String> note)
        implements Entry {
    public LayerSet {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        Require.present(mother, "mother");
        branch = Require.text(branch, "branch");
        Require.present(heightMm, "height_mm");
        Require.above(0, heightMm, "height_mm");
        Require.present(branchOrder, "branch_order");
        Require.atLeast(1, branchOrder, "branch_order");
        Require.present(above, "above");
        Require.present(below, "below");
        Require.present(belowUnion, "below_union");
        Require.present(stemMm, "stem_mm");
        Require.above(0, stemMm, "stem_mm");
        Require.present(ringMm, "ring_mm");
        Require.atLeast(0, ringMm, "ring_mm");
        Require.present(wound, "wound");
        hormone = Require.text(hormone, "hormone");
        Require.present(strength, "strength");
        Require.present(carrier, "carrier");
        medium = Require.text(medium, "medium");
        wrap = Require.text(wrap, "wrap");
        Require.present(place, "place");
        Require.present(stockAgeYears, "stock_age_years");
        Require.atLeast(0, stockAgeYears, "stock_age_years");
        Require.present(hedged, "hedged");
        Require.present(setUnrecorded, "set_unrecorded");
        note = Require.text(note, "note");
        Require.that(
                strength.isEmpty() || hormone.isPresent(), "hormone", "the active substance where a strength is given");
        Require.that(
                wound.filter(w -> w == Wound.TOURNIQUET).isEmpty()
                        || ringMm.filter(r -> r.signum() > 0).isEmpty(),
                "ring_mm",
                "0 or nothing with a tourniquet");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.LAYER_SET;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.layerSet(this);
    }
}
