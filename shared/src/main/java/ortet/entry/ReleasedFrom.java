package ortet.entry;

/** What a plant is released from. */
public enum ReleasedFrom {
    /** No longer kept as a stock plant. */
    STOCK,
    /** No longer reserved. */
    RESERVATION
}
