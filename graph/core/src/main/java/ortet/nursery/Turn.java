package ortet.nursery;

/** What happened to units under a tag, in the order in which it is read within one day. */
public enum Turn {
    /** Set; the value is the stem of the branch in hundredths of a millimetre. */
    SET_ON,
    /** Somebody looked, and it was undecided still. */
    STILL_ON,
    /** So many have taken. */
    TAKEN,
    /** So many have failed. */
    FAILED,
    /** So many were withdrawn before anybody could know. */
    WITHDRAWN,
    /** So many could not be found, undecided. */
    NOT_SEEN,
    /** So many went on under another tag, undecided. */
    PASSED_ON,
    /** So many more were there, undecided. */
    FOUND_MORE,
    /** Put into a container, or into open ground. */
    POTTED,
    /** Seen or handled alive; the value is {@link #ROOTS} or {@link #NO_ROOTS} for a check. */
    ALIVE,
    /** Measured; the value is the stem in hundredths of a millimetre. */
    MEASURED,
    /** Graded fit for sale; the value is the size class, as its place in {@link Lives#sizes()}. */
    GRADED,
    /** Kept as stock. */
    STOCK,
    /** No longer stock. */
    NO_STOCK,
    /** So many went on under other tags, undecided or growing. */
    WENT_ON,
    /** So many were worked as rootstocks. */
    WORKED,
    /** So many rootstocks came back from grafts that failed. */
    UNWORKED,
    /** So many were used up when divided. */
    USED_UP,
    /** So many were sold. */
    SOLD,
    /** So many came back after a sale. */
    RETURNED,
    /** So many were culled for quality. */
    CULLED,
    /** So many were culled as surplus. */
    SURPLUS,
    /** So many were lost. */
    LOST;

    /** The value of a check that found roots. */
    public static final int ROOTS = 1;

    /** The value of a check that found none. */
    public static final int NO_ROOTS = 2;

    /** Tell whether this shows that whatever grows under the tag is alive. */
    public boolean showsLife() {
        return switch (this) {
            case POTTED, ALIVE, MEASURED, GRADED, STOCK, RETURNED -> true;
            default -> false;
        };
    }
}
