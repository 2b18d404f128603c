package ortet.choice;

import java.util.List;

/**
 * Shares what time is left among parts that are planned one after another, or some at once: when a part begins it gets of it
 * what its mothers are of all whose parts are not done yet. What a part leaves goes to those who come after it. Safe for use
 * by several threads.
 */
final class Turns {
    private final Deadline late;
    private final int atOnce;
    private final List<Integer> mothers;
    private long waiting;

    /**
     * Begin.
     *
     * @param mothers of each part, how many
     * @param atOnce how many parts are planned at once
     */
    Turns(Deadline late, List<Integer> mothers, int atOnce) {
        this.late = late;
        this.mothers = List.copyOf(mothers);
        this.atOnce = atOnce;
        this.waiting = mothers.stream().mapToLong(Integer::longValue).sum();
    }

    /** Let a part begin, and return when its time is over. */
    synchronized Deadline begin(int part) {
        return late.share((double) atOnce * mothers.get(part) / Math.max(1, waiting));
    }

    /** Let a part be done. */
    synchronized void done(int part) {
        waiting -= mothers.get(part);
    }
}
