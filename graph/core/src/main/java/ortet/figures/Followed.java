package ortet.figures;

import ortet.value.Refused;

/**
 * Somebody followed until something happened, or until nobody looked any more.
 *
 * @param time from the start, at least 0 and finite, in any unit
 * @param cause 0 when it had not happened by that time (censored), else the number of what happened, from 1
 */
public record Followed(double time, int cause) {
    /** The cause of one that was censored. */
    public static final int CENSORED = 0;

    public Followed {
        if (!(time >= 0 && time < Double.POSITIVE_INFINITY)) {
            throw Refused.because("bad-time", "expected a time of at least 0, found " + time);
        }
        if (cause < 0) {
            throw Refused.because("bad-cause", "expected a cause of at least 0, found " + cause);
        }
    }

    /** Say that it happened at this time. */
    public static Followed happened(double time) {
        return new Followed(time, 1);
    }

    /** Say that it had not happened by this time. */
    public static Followed censored(double time) {
        return new Followed(time, CENSORED);
    }

    /** Tell whether anything happened. */
    public boolean hasHappened() {
        return cause != CENSORED;
    }
}
