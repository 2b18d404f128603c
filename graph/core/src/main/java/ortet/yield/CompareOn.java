package ortet.yield;

import ortet.entry.Words;

/** In what respect two sides of a comparison differ. */
public enum CompareOn {
    /** How they were raised: by layering, from cuttings, by grafting, from seed. */
    METHOD,
    /** The kind of cutting. */
    WOOD,
    /** How the bark was cut. */
    WOUND,
    /** The rooting hormone, its strength, or both. */
    HORMONE,
    /** What they rooted in. */
    MEDIUM,
    /** What the layers were wrapped in. */
    WRAP,
    /** Who set, struck, worked or sowed. */
    OPERATOR;

    /** Return the word for this in commands and columns. */
    public String word() {
        return Words.of(this);
    }
}
