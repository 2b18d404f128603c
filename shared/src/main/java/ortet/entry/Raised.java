package ortet.entry;

/** How a bought-in plant is said to have been raised. */
public enum Raised {
    /** Seed. */
    SEED,
    /** Cutting. */
    CUTTING,
    /** Layer. */
    LAYER,
    /** Graft. */
    GRAFT,
    /** Division. */
    DIVISION,
    /** Collected. */
    COLLECTED,
    /** Unknown. */
    UNKNOWN
}
