package ortet.entry;

/** How trees are to be raised by a plan. */
public enum PlannedMethod {
    /** By air layers. */
    LAYER,
    /** From cuttings. */
    CUTTING,
    /** By grafting. */
    GRAFT
}
