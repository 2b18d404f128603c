package ortet.plant;

import java.util.regex.Pattern;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * The number that stands for a person or firm in entries, written {@code #7}; the name stands elsewhere and can be
 * erased.
 *
 * @param value at least 1
 */
public record PersonNumber(int value) implements Comparable<PersonNumber> {
    private static final Pattern TEXT = Pattern.compile("#[1-9]\\d{0,8}");

    public PersonNumber {
        Require.atLeast(1, value, "person");
    }

    /** Tell whether the text is written as a person's number. */
    public static boolean isWritten(String text) {
        return TEXT.matcher(text).matches();
    }

    /**
     * Read a person's number.
     *
     * @throws Refused when the text is none
     */
    public static PersonNumber parse(String text) {
        if (!isWritten(text)) {
            throw Refused.because("bad-person", "expected a person's number such as #7, found \"" + text + "\"");
        }
        return new PersonNumber(Integer.parseInt(text.substring(1)));
    }

    @Override
    public int compareTo(PersonNumber other) {
        return Integer.compare(value, other.value);
    }

    @Override
    public String toString() {
        return "#" + value;
    }
}
