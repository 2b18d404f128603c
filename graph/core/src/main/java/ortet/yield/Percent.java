package ortet.yield;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Writes shares as whole percents, but never calls something none or all that is not. */
final class Percent {
    private static final double HUNDRED = 100;
    private static final double SMALL = 1;

    private Percent() {}

    /**
     * Return a share of [0, 1] in percent: {@code 68}; near the ends with one decimal, {@code 0.3} or {@code 99.9}; and
     * {@code <0.1} or {@code >99.9} where even that would round to 0 or 100.
     */
    static String of(double share) {
        double percent = HUNDRED * share;
        if (share == 0 || share == 1) {
            return share == 0 ? "0" : "100";
        }
        if (percent >= SMALL && percent <= HUNDRED - SMALL) {
            return rounded(percent, 0);
        }
        String text = rounded(percent, 1);
        if (text.equals("0.0")) {
            return "<0.1";
        }
        return text.equals("100.0") ? ">99.9" : text;
    }

    private static String rounded(double percent, int decimals) {
        return BigDecimal.valueOf(percent)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
