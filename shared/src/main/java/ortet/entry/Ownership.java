package ortet.entry;

/** Whose a plant is. */
public enum Ownership {
    /** The nursery's own. */
    OWNED,
    /** Stands elsewhere, and is not the nursery's. */
    ELSEWHERE
}
