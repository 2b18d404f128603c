package ortet.commands;

import java.math.BigDecimal;
import java.math.RoundingMode;
import ortet.value.Decimal;
import ortet.value.Refused;

/**
 * How sure intervals are to be: given and told in percent, reckoned with as a share. A number below 1 is refused: it was
 * meant as a share, and would be answered with intervals next to none.
 *
 * @param share the confidence as a share of 1, from 0.01 to below 1
 */
record Confidence(double share) {
    private static final int TOLD_DECIMALS = 3;

    /**
     * Read percent: {@code 95}, {@code 99.9} or {@code 95%}.
     *
     * @throws Refused when it is no number from 1 to below 100
     */
    static Confidence parse(String text) {
        String number = text.strip().replaceFirst("\\s*%$", "");
        BigDecimal percent = number(number, text);
        if (percent.compareTo(BigDecimal.ONE) < 0 || percent.compareTo(BigDecimal.valueOf(100)) >= 0) {
            throw wrong(text);
        }
        return new Confidence(percent.movePointLeft(2).doubleValue());
    }

    private static BigDecimal number(String number, String text) {
        try {
            return Decimal.parse(number).value();
        } catch (Refused none) {
            throw wrong(text);
        }
    }

    private static Refused wrong(String text) {
        return Refused.because(
                "bad-confidence", "expected percent from 1 to below 100, such as 95, found \"" + text + "\"");
    }

    /** Return a share in percent, with no more decimals than it has: {@code 95}, {@code 99.9}. */
    static String percent(double share) {
        return BigDecimal.valueOf(share)
                .movePointRight(2)
                .setScale(TOLD_DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
