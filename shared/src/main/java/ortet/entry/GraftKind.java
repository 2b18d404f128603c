package ortet.entry;

/** The kind of graft. */
public enum GraftKind {
    /** Cleft. */
    CLEFT,
    /** Whip. */
    WHIP,
    /** Whip and tongue. */
    WHIP_AND_TONGUE,
    /** Side veneer. */
    SIDE_VENEER,
    /** Saddle. */
    SADDLE,
    /** Approach. */
    APPROACH,
    /** Thread. */
    THREAD,
    /** Bud. */
    BUD
}
