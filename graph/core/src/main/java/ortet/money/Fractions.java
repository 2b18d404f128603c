package ortet.money;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import org.apache.commons.numbers.fraction.BigFraction;

/** Fractions from decimals, and decimals from fractions. */
final class Fractions {
    private Fractions() {}

    /** Return a decimal as the same fraction. */
    static BigFraction of(BigDecimal decimal) {
        return decimal.scale() <= 0
                ? BigFraction.of(decimal.toBigIntegerExact())
                : BigFraction.of(decimal.unscaledValue(), BigInteger.TEN.pow(decimal.scale()));
    }

    /** Return a fraction with so many decimals, halves to the even digit. */
    static BigDecimal rounded(BigFraction value, int decimals) {
        return new BigDecimal(value.getNumerator())
                .divide(new BigDecimal(value.getDenominator()), decimals, RoundingMode.HALF_EVEN);
    }
}
