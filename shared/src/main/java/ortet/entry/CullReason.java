package ortet.entry;

/** Why a unit was taken out. */
public enum CullReason {
    /** It took, but is not fit for sale. */
    QUALITY,
    /** There were too many: counts for nothing. */
    SURPLUS
}
