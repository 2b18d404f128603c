package ortet.line;

import java.util.Objects;

/**
 * A value that may stand in a place of the line.
 *
 * @param value the value, without quotes
 * @param meaning what it is, in a few words; empty where the value says it all
 * @param whole whether it is whole; else more has to be typed after it
 */
public record Suggestion(String value, String meaning, boolean whole) {
    /** Refuse null. */
    public Suggestion {
        Objects.requireNonNull(value);
        Objects.requireNonNull(meaning);
    }

    /** Return a whole value that needs no explanation. */
    public static Suggestion of(String value) {
        return new Suggestion(value, "", true);
    }

    /** Return a whole value with what it is. */
    public static Suggestion of(String value, String meaning) {
        return new Suggestion(value, meaning, true);
    }

    /** Return the beginning of a value. */
    public static Suggestion begun(String value, String meaning) {
        return new Suggestion(value, meaning, false);
    }

    /** Return the same value after something that stands before it in the same word. */
    public Suggestion after(String before) {
        return before.isEmpty() ? this : new Suggestion(before + value, meaning, whole);
    }
}
