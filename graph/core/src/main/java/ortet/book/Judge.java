package ortet.book;

import java.time.Clock;

/**
 * Rules on proposals: whether they can be true beside all that the book holds, and what follows from them.
 */
public final class Judge {
    private final Clock clock;

    /** Make a judge who reads the time from the clock. */
    public Judge(Clock clock) {
        this.clock = clock;
    }

    /**
     * Rule on a proposal.
     *
     * @throws ortet.value.Refused with everything that cannot be true
     */
    public Ruling rule(Proposal proposal, BookView view, Progress progress) {
        throw new IllegalStateException(clock.toString());
    }

    /**
     * Rule on a whole book taken out of another store, which keeps its orders, instants and digests.
     *
     * @throws ortet.value.Refused when the chain is broken or an entry cannot be true
     */
    public Ruling restore(Restoration restoration, Progress progress) {
        throw new IllegalStateException(clock.toString());
    }

    /** Work out the facts of every unit anew from all entries of a book. */
    public Ruling rebuild(BookView view, Progress progress) {
        throw new IllegalStateException(clock.toString());
    }
}
