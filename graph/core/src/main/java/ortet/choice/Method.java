package ortet.choice;

/** What is set. */
public enum Method {
    /** A layer. */
    LAYER,
    /** A cutting. */
    CUTTING
}
