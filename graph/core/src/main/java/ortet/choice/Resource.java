package ortet.choice;

import java.util.Objects;

/**
 * Something of which there is only so much.
 *
 * @param kind what it is
 * @param name the place, the cultivar, or the clone; empty for hours
 * @param year counted from this one, which is 0
 * @param season counted from 0; 0 for what counts by the year
 */
public record Resource(Kind kind, String name, int year, int season) {
    /** What is limited. */
    public enum Kind {
        /** Hours of work in a season. */
        HOURS,
        /** Square metres in a place in a season. */
        ROOM,
        /** Units of a protected cultivar that may be set in a year. */
        LICENCE,
        /** Trees from one clone beyond its share of all in a year. */
        CLONE_SHARE,
        /** Trees from the mothers of one place beyond their share of all in a year. */
        PLACE_SHARE
    }

    public Resource {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(name);
    }
}
