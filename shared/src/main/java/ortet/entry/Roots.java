package ortet.entry;

/** What roots a severed layer had. */
public enum Roots {
    /** No roots: it has failed. */
    NONE,
    /** Few. */
    FEW,
    /** Fair. */
    FAIR,
    /** Full. */
    FULL
}
