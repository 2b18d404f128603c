package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;
import ortet.value.Strength;

/**
 * Cuttings put in to root, one batch for each tag, from one or several mothers.
 *
 * @param tags the units that the entry is about, at least one
 * @param mothers the plants that gave the cuttings, with how many each where known; may be empty
 * @param count how many units
 * @param cultivar the name it is said to bear
 * @param wood the kind of cutting
 * @param belowUnion whether the wood is from below a graft union, so that it follows the clone of the rootstock
 * @param hormone active substance of the rooting hormone
 * @param strength strength of the rooting hormone
 * @param carrier what carries the hormone
 * @param medium what it roots or grows in
 * @param heatC temperature of the bottom heat in degrees Celsius
 * @param place where it stands
 * @param container the pot, tray or box, in words ("9 cm", "2 L")
 * @param stockAgeYears age of the stock plant in years
 * @param hedged whether the stock plant is kept cut back as a hedge
 * @param setUnrecorded yes where nobody recorded it when it was done, and it is written for the lineage alone: it counts in
 *     no rate
 * @param note anything else worth keeping
 */
public record CuttingsStruck(
        List<Tag> tags,
        List<Share> mothers,
        int count,
        Optional<CultivarName> cultivar,
        Optional<Wood> wood,
        Optional<Boolean> belowUnion,
        Optional<String> hormone,
        Optional<Strength> strength,
        Optional<Carrier> carrier,
        Optional<String> medium,
        Optional<Decimal> heatC,
        Optional<Place> place,
        Optional<String> container,
        Optional<Integer> stockAgeYears,
        Optional<Boolean> hedged,
        Optional<Boolean> setUnrecorded,
        Optional<String> note)
        implements Entry {
    public CuttingsStruck {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        mothers = List.copyOf(mothers);
        Require.atLeast(1, count, "count");
        Require.present(cultivar, "cultivar");
        Require.present(wood, "wood");
        Require.present(belowUnion, "below_union");
        hormone = Require.text(hormone, "hormone");
        Require.present(strength, "strength");
        Require.present(carrier, "carrier");
        medium = Require.text(medium, "medium");
        Require.present(heatC, "heat_c");
        Require.between(0, 40, heatC, "heat_c");
        Require.present(place, "place");
        container = Require.text(container, "container");
        Require.present(stockAgeYears, "stock_age_years");
        Require.atLeast(0, stockAgeYears, "stock_age_years");
        Require.present(hedged, "hedged");
        Require.present(setUnrecorded, "set_unrecorded");
        note = Require.text(note, "note");
        Require.that(
                strength.isEmpty() || hormone.isPresent(), "hormone", "the active substance where a strength is given");
        Require.noRepeats(mothers.stream().map(Share::tag).toList(), "mothers");
        Require.that(
                mothers.stream().mapToInt(m -> m.count().orElse(0)).sum() <= (long) count * tags.size(),
                "mothers",
                "no more from the mothers than were struck");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CUTTINGS_STRUCK;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.cuttingsStruck(this);
    }
}
