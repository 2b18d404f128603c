package ortet.entry;

/** Why a unit failed or was lost. */
public enum Cause {
    /** Taken out before anybody could know: counts for nothing. */
    WITHDRAWN,
    /** No roots. */
    NO_ROOTS,
    /** Bark grew over the ring. */
    BARK_BRIDGED,
    /** Dried. */
    DRIED,
    /** Rotted. */
    ROTTED,
    /** Damped off. */
    DAMPED_OFF,
    /** Union failed. */
    UNION_FAILED,
    /** Not germinated. */
    NOT_GERMINATED,
    /** Broken. */
    BROKEN,
    /** Frost. */
    FROST,
    /** Heat. */
    HEAT,
    /** Wind. */
    WIND,
    /** Pest. */
    PEST,
    /** Disease. */
    DISEASE,
    /** Hormone burn. */
    HORMONE_BURN,
    /** Mother lost. */
    MOTHER_LOST,
    /** Stolen. */
    STOLEN,
    /** Mislaid. */
    MISLAID,
    /** Other. */
    OTHER,
    /** Unknown. */
    UNKNOWN
}
