package ortet.commands;

import java.math.BigDecimal;
import ortet.value.Decimal;
import ortet.value.Refused;

/**
 * A part of 1, given as such or in percent: {@code 0.9} or {@code 90%}.
 *
 * @param share the part, at least 0
 */
record Portion(double share) {
    /**
     * Read a part of 1.
     *
     * @throws Refused when it is no number of at least 0
     */
    static Portion parse(String text) {
        String stripped = text.strip();
        String number = stripped.replaceFirst("\\s*%$", "");
        try {
            BigDecimal value = Decimal.parse(number).value();
            if (value.signum() >= 0) {
                return new Portion((number.equals(stripped) ? value : value.movePointLeft(2)).doubleValue());
            }
        } catch (Refused none) {
            // said below
        }
        throw Refused.because("bad-share", "expected a share such as 0.9 or 90%, found \"" + text + "\"");
    }
}
