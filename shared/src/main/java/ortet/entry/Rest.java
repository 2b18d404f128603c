package ortet.entry;

/** What becomes of the rest of a cohort. */
public enum Rest {
    /** All the rest failed. */
    FAILED,
    /** All the rest was seen and may still take. */
    STILL_ON,
    /** Nobody could find the rest. */
    NOT_SEEN
}
