package ortet.entry;

/** The kind of cutting. */
public enum Wood {
    /** Softwood. */
    SOFTWOOD,
    /** Semi ripe. */
    SEMI_RIPE,
    /** Hardwood. */
    HARDWOOD,
    /** Heel. */
    HEEL,
    /** Root. */
    ROOT,
    /** Leaf bud. */
    LEAF_BUD
}
