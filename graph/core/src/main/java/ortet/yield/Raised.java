package ortet.yield;

import ortet.figures.Count;

/**
 * How units that were set stand in the end; every unit that counts for the side is one of these.
 *
 * @param yes established, or saleable
 * @param no failed, or lost or culled before that
 * @param left gone in good health after they had taken, before anybody could know: surplus, worked or used up, or sold
 *     before they were due
 * @param withdrawn taken out before anybody could know whether they take; they count for nothing
 * @param open not yet known: undecided, growing on, too young
 * @param unseen of the open ones, those that are due and of which nobody has written that they were seen
 * @param leftOut in batches of which nobody can tell which plants are of this side; they are in none of these
 */
public record Raised(int yes, int no, int left, int withdrawn, int open, int unseen, int leftOut) {
    private static final int FIFTH = 5;

    /** Return the known ones: yes of yes and no. */
    public Count known() {
        return new Count(yes, (long) yes + no);
    }

    /** Return how many of those that count are not known, and may have been, or may yet be, either. */
    public int unknown() {
        return left + open;
    }

    /** Return how many count: all but the withdrawn and those left out. */
    public int counting() {
        return yes + no + unknown();
    }

    /**
     * Tell whether more than a fifth of those that count are not known. Failures are known first, so that the share of
     * those known is then too low.
     */
    public boolean isMuchUnknown() {
        return (long) FIFTH * unknown() > counting();
    }
}
