package ortet.inventory;

import java.util.EnumSet;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import ortet.book.UnitFacts.Nature;
import ortet.plant.Place;
import ortet.plant.Tag;

/**
 * Which units are asked for.
 *
 * @param beginning what the tag begins with, upper and lower case alike
 * @param cultivar a name, an epithet, or a botanical name for all under it
 * @param place the place, with all that is listed as being within it
 * @param standings how they stand; what is there when none is named
 * @param natures what they are; all when none is named
 * @param mother what they were raised from, directly or through batches
 * @param stock whether only what is kept as stock
 * @param held whether only what is held for plant health
 * @param reserved whether only what is reserved
 */
public record HoldingFilter(
        Optional<String> beginning,
        Optional<String> cultivar,
        Optional<Place> place,
        Set<Standing> standings,
        Set<Nature> natures,
        Optional<Tag> mother,
        boolean stock,
        boolean held,
        boolean reserved) {
    /** How a unit stands. */
    public enum Standing {
        /** Some of it grows on its own roots, or it is a sport on a plant that does. */
        GROWING,
        /** Some of it is neither taken nor failed. */
        PENDING,
        /** Nothing of it is left. */
        GONE
    }

    /** All that is there. */
    public static final HoldingFilter THERE = new HoldingFilter(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Set.of(),
            Set.of(),
            Optional.empty(),
            false,
            false,
            false);

    public HoldingFilter {
        Objects.requireNonNull(beginning);
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(place);
        standings = standings.isEmpty() ? EnumSet.of(Standing.GROWING, Standing.PENDING) : EnumSet.copyOf(standings);
        natures = natures.isEmpty() ? EnumSet.allOf(Nature.class) : EnumSet.copyOf(natures);
        Objects.requireNonNull(mother);
    }
}
