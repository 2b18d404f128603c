package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Require;

/**
 * A place of the nursery: a house, bed or bench, within another or on a property.
 *
 * @param place where it stands
 * @param within the larger place that this one is in
 * @param premises the property of the nursery that it belongs to
 * @param areaM2 usable area in square metres
 * @param note anything else worth keeping
 */
public record PlaceListed(
        Place place, Optional<Place> within, Optional<String> premises, Optional<Decimal> areaM2, Optional<String> note)
        implements Entry {
    public PlaceListed {
        Require.present(place, "place");
        Require.present(within, "within");
        premises = Require.text(premises, "premises");
        Require.present(areaM2, "area_m2");
        Require.above(0, areaM2, "area_m2");
        note = Require.text(note, "note");
        Require.that(!within.equals(Optional.of(place)), "within", "another place than the one listed");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.PLACE_LISTED;
    }

    @Override
    public List<Tag> tags() {
        return List.of();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.placeListed(this);
    }
}
