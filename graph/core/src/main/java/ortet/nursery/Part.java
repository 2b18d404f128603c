package ortet.nursery;

/** What can be asked of a snapshot; what a question does not need is not read. What a unit is and when it began always is. */
public enum Part {
    /** Who comes from whom, both ways. */
    LINKS,
    /** How those units began that come from no other whose clone they keep; with {@link #LINKS}. */
    BEGINNINGS,
    /** How many are pending and growing. */
    STANDINGS,
    /** How units count for take, and what became of them. */
    COHORTS,
    /** The names that units bear by their own entries. */
    NAMES,
    /** Who left, and why. */
    LEAVINGS,
    /** What happened to units, turn by turn, and how they were set. */
    LIVES
}
