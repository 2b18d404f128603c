package ortet.entry;

/** What carries a rooting hormone. */
public enum Carrier {
    /** Powder. */
    POWDER,
    /** Liquid. */
    LIQUID,
    /** Gel. */
    GEL,
    /** Paste. */
    PASTE
}
