package ortet.entry;

/** What becomes of the rest of the mother's wood. */
public enum Remainder {
    /** Kept as it is. */
    KEPT,
    /** Cut back. */
    CUT_BACK,
    /** Taken off altogether. */
    REMOVED,
    /** Nothing is left of the mother. */
    USED_UP
}
