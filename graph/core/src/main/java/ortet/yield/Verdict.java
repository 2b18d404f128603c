package ortet.yield;

/** What a comparison allows to be said; it follows the interval and never the figure in its middle. */
public enum Verdict {
    /** The whole interval is above 0. */
    FIRST_YIELDS_MORE,
    /** The whole interval is below 0. */
    SECOND_YIELDS_MORE,
    /** 0 is within the interval. */
    NOT_TOLD_APART,
    /** On a side everything came from one tray, or one mother and season: that is one event. */
    ONE_CLUSTER,
    /** Nothing is known of a side. */
    NOTHING_KNOWN
}
