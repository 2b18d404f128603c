package ortet.entry;

import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Decimal;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * How many places of a stem diameter there are to set a layer; written {@code 8-12:5} (millimetres).
 *
 * @param lowMm thinnest, in millimetres, above 0
 * @param highMm thickest, in millimetres, above the thinnest
 * @param count how many, at least 0
 */
public record Band(Decimal lowMm, Decimal highMm, int count) {
    private static final Pattern TEXT = Pattern.compile("([0-9.,]+)-([0-9.,]+):(\\d{1,6})");

    public Band {
        Objects.requireNonNull(lowMm);
        Objects.requireNonNull(highMm);
        Require.atLeast(0, count, "positions");
        Require.that(
                lowMm.signum() > 0 && lowMm.compareTo(highMm) < 0,
                "positions",
                "a band of diameters from thin to thick, such as 8-12:5");
    }

    /**
     * Read a band.
     *
     * @throws Refused when the text is none
     */
    public static Band parse(String text) {
        Matcher matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            throw Refused.because(
                    "bad-band", "expected diameters in mm and a count such as 8-12:5, found \"" + text + "\"");
        }
        return new Band(
                Decimal.parse(matcher.group(1)), Decimal.parse(matcher.group(2)), Integer.parseInt(matcher.group(3)));
    }

    @Override
    public String toString() {
        return lowMm + "-" + highMm + ":" + count;
    }
}
