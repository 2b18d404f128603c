package ortet.nursery;

import ortet.book.Act;
import ortet.book.UnitFacts.Nature;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * Units and links in one whole number each, as the questions {@code all-units} and {@code all-links} hand them over; good
 * for up to 2^28 units, 268 million.
 */
public final class Packed {
    private static final int DAY_FROM = 1 << 20;
    private static final int LOW = 4;
    private static final int DAY_BITS = 24;
    private static final int UNIT_BITS = 28;

    private Packed() {}

    /** Return a unit, what it is and when it began, in one number. */
    public static long unit(UnitNumber unit, Nature nature, When begun) {
        return (long) unit.value() << LOW + DAY_BITS
                | begun.first().toEpochDay() + DAY_FROM << LOW
                | (long) nature.ordinal() << 2
                | begun.precision().ordinal();
    }

    /** Return a link in one number. */
    public static long link(UnitNumber child, Act act, UnitNumber mother) {
        return (long) child.value() << LOW + UNIT_BITS | (long) mother.value() << LOW | act.ordinal();
    }

    static int unit(long unit) {
        return (int) (unit >>> LOW + DAY_BITS);
    }

    static int nature(long unit) {
        return (int) (unit >>> 2 & 3);
    }

    static int precision(long unit) {
        return (int) (unit & 3);
    }

    /** Return the first day on which a unit may have begun, in days since 1970. */
    static int day(long unit) {
        return (int) (unit >>> LOW & (1 << DAY_BITS) - 1) - DAY_FROM;
    }

    static int child(long link) {
        return (int) (link >>> LOW + UNIT_BITS);
    }

    static int mother(long link) {
        return (int) (link >>> LOW & (1 << UNIT_BITS) - 1);
    }

    static int act(long link) {
        return (int) (link & (1 << LOW) - 1);
    }
}
