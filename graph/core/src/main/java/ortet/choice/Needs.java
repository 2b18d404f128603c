package ortet.choice;

import java.util.List;
import java.util.Objects;
import ortet.value.Require;

/**
 * What one unit, or one mother, needs in one year.
 *
 * @param material money for wrap, medium, pots and the like, at least 0
 * @param hours of work by season; empty for none
 * @param areaM2 of bench or bed by season, in square metres; empty for none
 * @param place where that area is; not looked at when the area is empty
 */
public record Needs(double material, List<Double> hours, List<Double> areaM2, String place) {
    /** Nothing at all. */
    public static final Needs NONE = new Needs(0, List.of(), List.of(), "");

    public Needs {
        Checks.atLeastZero(material, "material");
        hours = List.copyOf(hours);
        areaM2 = List.copyOf(areaM2);
        hours.forEach(one -> Checks.atLeastZero(one, "hours"));
        areaM2.forEach(one -> Checks.atLeastZero(one, "area in m²"));
        Objects.requireNonNull(place);
        Require.that(areaM2.isEmpty() || !place.isEmpty(), "place", "a place where there is an area");
    }
}
