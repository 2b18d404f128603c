package ortet.entry;

/** What was seen in a layer, tray, graft or sowing. */
public enum Condition {
    /** No change. */
    NOTHING,
    /** Callus. */
    CALLUS,
    /** Roots showing. */
    ROOTS_SHOWING,
    /** Root ball full. */
    ROOT_BALL_FULL,
    /** Dry. */
    DRY,
    /** Dead. */
    DEAD
}
