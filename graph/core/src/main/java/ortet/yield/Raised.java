package ortet.yield;

/**
 * How units that were set stand in the end; every unit that counts for the side is one of these.
 *
 * @param yes established, or saleable
 * @param no failed, or lost or culled before that
 * @param censored left in good health before anybody could know, or withdrawn; they count for nothing
 * @param open not yet known: undecided, growing on, too young
 * @param unseen of the open ones, those that are due and of which nobody has written that they were seen
 * @param leftOut in batches of which nobody can tell which plants are of this side; they are in none of these
 */
public record Raised(int yes, int no, int censored, int open, int unseen, int leftOut) {
    private static final int FIFTH = 5;

    /** Return the known ones: yes of yes and no. */
    public ortet.figures.Count known() {
        return new ortet.figures.Count(yes, (long) yes + no);
    }

    /** Return how many count for the rate or may yet do so. */
    public int counting() {
        return yes + no + open;
    }

    /** Tell whether more than a fifth of those that count are not known yet. */
    public boolean isMuchOpen() {
        return (long) FIFTH * open > counting();
    }
}
