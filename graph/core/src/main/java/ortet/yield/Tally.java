package ortet.yield;

import ortet.figures.Count;
import ortet.value.Defect;

/**
 * How units that were set stand: each is taken, failed, withdrawn or pending.
 *
 * @param set how many were set
 * @param taken how many have taken
 * @param failed how many have failed
 * @param withdrawn how many were taken out before anybody could know; they count for nothing
 * @param pending how many are neither taken nor failed nor withdrawn
 * @param unaccounted how many of the pending ones should be known by now and nobody has said, or could not be found
 */
public record Tally(int set, int taken, int failed, int withdrawn, int pending, int unaccounted) {
    /** Nothing. */
    public static final Tally NONE = new Tally(0, 0, 0, 0, 0, 0);

    private static final int FIFTH = 5;

    public Tally {
        boolean whole = taken >= 0
                && failed >= 0
                && withdrawn >= 0
                && unaccounted >= 0
                && unaccounted <= pending
                && set == taken + failed + withdrawn + pending;
        if (!whole) {
            throw new Defect("the parts do not make up the whole: " + set + " set, " + taken + " taken, " + failed
                    + " failed, " + withdrawn + " withdrawn, " + pending + " pending, " + unaccounted + " unaccounted");
        }
    }

    /** Return how many of those known have taken: the take rate as a count. */
    public Count known() {
        return new Count(taken, (long) taken + failed);
    }

    /** Return how many count for the rate or may yet do so: all but the withdrawn. */
    public int counting() {
        return set - withdrawn;
    }

    /** Tell whether more than a fifth of those that count are pending, so that the rate may still change much. */
    public boolean isMuchPending() {
        return (long) FIFTH * pending > counting();
    }

    /** Return both tallies taken together. */
    public Tally plus(Tally other) {
        return new Tally(
                Math.addExact(set, other.set),
                taken + other.taken,
                failed + other.failed,
                withdrawn + other.withdrawn,
                pending + other.pending,
                unaccounted + other.unaccounted);
    }
}
