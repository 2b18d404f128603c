package ortet.entry;

import ortet.value.Refused;

/** Reads whole numbers. */
final class Counts {
    private Counts() {}

    static int parse(String digits, String whole) {
        if (!digits.matches("\\d{1,9}")) {
            throw Refused.because(
                    "bad-number",
                    "expected a whole number, found \"" + digits + "\""
                            + (digits.equals(whole) ? "" : " in \"" + whole + "\""));
        }
        return Integer.parseInt(digits);
    }
}
