package ortet.value;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The strength of a rooting hormone as a share by weight or volume.
 *
 * <p>Read as percent or parts per million ({@code 0.3%}, {@code 3000 ppm}: 1 % is 10,000 ppm) and written as percent.
 *
 * @param percent above 0, at most 100, with at most 6 decimals
 */
public record Strength(Decimal percent) implements Comparable<Strength> {
    private static final Pattern TEXT = Pattern.compile("([0-9.,]+)\\s*(%|ppm)");
    private static final int PPM_DIGITS = 4;
    private static final int MOST_DECIMALS = 6;

    public Strength {
        Objects.requireNonNull(percent);
        if (percent.signum() <= 0 || percent.doubleValue() > 100) {
            throw Refused.because(
                    "bad-strength", "expected a strength above 0 and at most 100 %, found " + percent + " %");
        }
        if (percent.value().scale() > MOST_DECIMALS) {
            throw Refused.because(
                    "bad-strength",
                    "expected a strength with at most " + MOST_DECIMALS + " decimals in percent, found " + percent
                            + " %");
        }
    }

    /**
     * Read a strength.
     *
     * @throws Refused when the text is none
     */
    public static Strength parse(String text) {
        Matcher matcher = TEXT.matcher(text.strip().toLowerCase(Locale.ROOT));
        if (!matcher.matches()) {
            throw Refused.because(
                    "bad-strength", "expected a strength such as 0.3% or 3000ppm, found \"" + text + "\"");
        }
        Decimal number = Decimal.parse(matcher.group(1));
        if (matcher.group(2).equals("%")) {
            return new Strength(number);
        }
        BigDecimal percent = number.value().movePointLeft(PPM_DIGITS);
        return new Strength(Decimal.of(percent));
    }

    @Override
    public int compareTo(Strength other) {
        return percent.compareTo(other.percent);
    }

    @Override
    public String toString() {
        return percent + "%";
    }
}
