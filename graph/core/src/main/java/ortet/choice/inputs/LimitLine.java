package ortet.choice.inputs;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import ortet.value.Require;
import ortet.value.Where;

/**
 * So much of something.
 *
 * @param what what there is so much of
 * @param where the season of hours, the place of room, the cultivar of a licence; empty for all of it
 * @param year the calendar year; empty for every year that has no line of its own
 * @param amount hours, square metres, units to set, or a share of 1
 * @param at where it was told; empty where in no file
 */
public record LimitLine(What what, String where, Optional<Integer> year, double amount, Optional<Where> at) {
    /** What is limited. */
    public enum What {
        /** Hours of work. */
        HOURS,
        /** Square metres of bench or bed. */
        ROOM,
        /** Units of a protected cultivar that may be set in a year. */
        LICENCE,
        /** The share of a year's trees that may rest on one clone. */
        CLONE_SHARE,
        /** The share of a year's trees that may rest on the mothers of one place. */
        PLACE_SHARE;

        /** Return the word for it in a file. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public LimitLine {
        Objects.requireNonNull(what);
        where = where.strip();
        Objects.requireNonNull(year);
        Objects.requireNonNull(at);
        Require.that(amount >= 0 && amount < Double.POSITIVE_INFINITY, "amount", "at least 0");
    }
}
