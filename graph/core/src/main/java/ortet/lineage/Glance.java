package ortet.lineage;

import java.util.Objects;
import java.util.Optional;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * A unit at a glance.
 *
 * @param unit the unit
 * @param tag the tag that it bears
 * @param named its cultivar
 * @param state how it stands
 * @param place where it stands
 */
public record Glance(UnitNumber unit, Tag tag, Named named, State state, Optional<Place> place) {
    public Glance {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(named);
        Objects.requireNonNull(state);
        Objects.requireNonNull(place);
    }
}
