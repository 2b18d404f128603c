package ortet.entry;

/** How the bark was cut for a layer. */
public enum Wound {
    /** A whole ring of bark removed. */
    FULL_RING,
    /** A ring with a strip of bark left. */
    RING_WITH_BRIDGE,
    /** A slit held open. */
    TONGUE,
    /** A tight wire, no bark removed. */
    TOURNIQUET
}
