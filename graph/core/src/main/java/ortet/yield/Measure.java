package ortet.yield;

import ortet.entry.Words;

/** By what two sides are compared. */
public enum Measure {
    /** Established of those of which it is known. */
    ESTABLISHED,
    /** Taken of those known: where too little is known of establishing. */
    TAKE;

    /** Return the word for this in columns. */
    public String word() {
        return Words.of(this);
    }
}
