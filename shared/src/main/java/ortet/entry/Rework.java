package ortet.entry;

/** What was done to a layer again. */
public enum Rework {
    /** The ring was cut again. */
    RE_RINGED,
    /** It was wrapped again. */
    RE_WRAPPED
}
