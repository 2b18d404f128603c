package ortet.yield;

/**
 * How long something took, as well as it is known, in days: more than the one and no more than the other.
 *
 * @param after it had not happened by then
 * @param until it had happened by then, {@link #NEVER_YET} where it has not happened yet
 * @param count how many units
 */
record Span(int after, int until, int count) {
    /** It has not happened yet. */
    static final int NEVER_YET = Integer.MAX_VALUE;
}
