package ortet.entry;

/** Whether a breeder's right protects a cultivar. */
public enum Right {
    /** None. */
    NONE,
    /** Protected. */
    PROTECTED
}
