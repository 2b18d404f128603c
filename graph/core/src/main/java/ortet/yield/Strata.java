package ortet.yield;

import ortet.entry.Words;

/** Strata what two sides are compared, so that what differs between such strata cannot be taken for a difference of the sides. */
public enum Strata {
    /** The calendar year of the act. */
    SEASON,
    /** The plant that gave the wood. */
    MOTHER;

    /** Return the word for this in commands and columns. */
    public String word() {
        return Words.of(this);
    }
}
