package ortet.choice;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.figures.GroupRate;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Decimal;
import ortet.value.When;

/**
 * A mother, and what is to be taken from her.
 *
 * @param unit her number
 * @param tag her tag on the cut-off day
 * @param rate what to expect of her by the method, with the help of the others; absent where nothing is known of her
 * @param measured when her positions were counted last; absent where nobody has, or positions do not matter
 * @param positions her free positions, the thickest first; none where positions do not matter
 * @param most the most that was ever set from her in one season by the method
 * @param use how many to set from her
 */
public record PlanMother(
        UnitNumber unit,
        Tag tag,
        Optional<GroupRate> rate,
        Optional<When> measured,
        List<Position> positions,
        int most,
        int use) {
    /**
     * Free positions of one band of stem diameter.
     *
     * @param lowMm thinnest, in millimetres
     * @param highMm thickest, in millimetres
     * @param free how many are free
     * @param use how many of these to use
     */
    public record Position(Decimal lowMm, Decimal highMm, int free, int use) {}

    /** Why a mother is left out. */
    public enum Why {
        /** Held for plant health. */
        HELD,
        /** Reserved for a customer. */
        RESERVED,
        /** Of a cultivar that is protected, without a licence in the book. */
        PROTECTED,
        /** Nobody has counted her positions. */
        NOT_COUNTED
    }

    /**
     * A mother left out.
     *
     * @param tag her tag
     * @param why why
     */
    public record LeftOut(Tag tag, Why why) {}

    public PlanMother {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(rate);
        Objects.requireNonNull(measured);
        positions = List.copyOf(positions);
    }

    /** Return how many positions are free. */
    public int free() {
        return positions.stream().mapToInt(Position::free).sum();
    }
}
