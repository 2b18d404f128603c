package ortet.nursery;

import java.util.Arrays;
import ortet.book.UnitFacts.Method;
import ortet.value.When;

/**
 * How units count for take and what had become of them by the day of the snapshot: one row for each unit that counts, by
 * unit number.
 *
 * <p>Takes 49 bytes for each row.
 */
public final class Cohorts {
    /** Where there is no number. */
    public static final int NONE = -1;

    private static final Method[] METHODS = Method.values();

    private final int[] unit;
    private final byte[] method;
    private final int[] day;
    private final int[] by;
    private final int[] count;
    private final int[] root;
    private final int[] taken;
    private final int[] failed;
    private final int[] withdrawn;
    private final int[] notSeen;
    private final int[] movedOn;
    private final int[] foundMore;
    private final int[] looked;

    /** Keep columns; those of {@code fates} are in the order of {@link ortet.book.UnitFacts.Fate}. */
    Cohorts(int[] unit, byte[] method, int[] day, int[] by, int[] count, int[] root, int[][] fates, int[] looked) {
        this.unit = unit;
        this.method = method;
        this.day = day;
        this.by = by;
        this.count = count;
        this.root = root;
        this.taken = fates[0];
        this.failed = fates[1];
        this.withdrawn = fates[2];
        this.notSeen = fates[3];
        this.movedOn = fates[4];
        this.foundMore = fates[5];
        this.looked = looked;
    }

    /** Return how many rows there are. */
    public int size() {
        return unit.length;
    }

    /** Return the row of a unit, negative where it does not count. */
    public int row(int number) {
        return Arrays.binarySearch(unit, number);
    }

    /** Return the unit of a row. */
    public int unit(int row) {
        return unit[row];
    }

    /** Return how it was raised. */
    public Method method(int row) {
        return METHODS[method[row]];
    }

    /** Return when it was set, struck, worked or sown. */
    public When day(int row) {
        return Days.when(day[row]);
    }

    /** Return the first day on which it may have been set, in days since 1970. */
    public int firstDay(int row) {
        return Days.first(day[row]);
    }

    /** Tell whether the day of setting is known to the day. */
    public boolean isExact(int row) {
        return (day[row] & 3) == 0;
    }

    /** Return the number of the person who did it, {@link #NONE} where nobody said. */
    public int by(int row) {
        return by[row];
    }

    /** Return how many were set under the tag, {@link #NONE} for seed sown by weight. */
    public int count(int row) {
        return count[row];
    }

    /** Return the unit first set, of which this one was split off; else the unit itself. */
    public int root(int row) {
        return root[row];
    }

    /** Return how many have taken. */
    public int taken(int row) {
        return taken[row];
    }

    /** Return how many have failed. */
    public int failed(int row) {
        return failed[row];
    }

    /** Return how many were withdrawn before anybody could know. */
    public int withdrawn(int row) {
        return withdrawn[row];
    }

    /** Return how many nobody could find. */
    public int notSeen(int row) {
        return notSeen[row];
    }

    /** Return how many went on, not yet known, under another tag. */
    public int movedOn(int row) {
        return movedOn[row];
    }

    /** Return how many more were there than had been written down. */
    public int foundMore(int row) {
        return foundMore[row];
    }

    /** Return the last day on which somebody looked, in days since 1970; {@link Integer#MIN_VALUE} where nobody did. */
    public int looked(int row) {
        return looked[row];
    }

    long bytes() {
        return method.length + 12L * Integer.BYTES * unit.length;
    }
}
