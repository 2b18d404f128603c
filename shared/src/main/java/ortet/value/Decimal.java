package ortet.value;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * An exact decimal number, equal to another of the same value whatever its trailing zeros.
 *
 * <p>Its text has a point, no exponent and no trailing zeros, so that it is the same on every machine.
 */
public final class Decimal extends Number implements Comparable<Decimal> {
    private static final long serialVersionUID = 1L;
    private static final Pattern TEXT = Pattern.compile("[+-]?(\\d{1,12}([.,]\\d{0,6})?|[.,]\\d{1,6})");

    private final BigDecimal value;

    private Decimal(BigDecimal value) {
        BigDecimal stripped = Objects.requireNonNull(value).stripTrailingZeros();
        this.value = stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /** Return the decimal with this value. */
    public static Decimal of(long value) {
        return new Decimal(BigDecimal.valueOf(value));
    }

    /** Return the decimal with this value. */
    public static Decimal of(BigDecimal value) {
        return new Decimal(value);
    }

    /**
     * Read a decimal with a point or a comma, at most 12 digits before it and 6 after.
     *
     * @throws Refused when the text is none
     */
    public static Decimal parse(String text) {
        if (!TEXT.matcher(text).matches()) {
            throw Refused.because("bad-number", "expected a number such as 12 or 12.5, found \"" + text + "\"");
        }
        return new Decimal(new BigDecimal(text.replace(',', '.')));
    }

    /** Return the value. */
    public BigDecimal value() {
        return value;
    }

    /** Return -1, 0 or 1 as the value is below, at or above zero. */
    public int signum() {
        return value.signum();
    }

    @Override
    public int intValue() {
        return value.intValue();
    }

    @Override
    public long longValue() {
        return value.longValue();
    }

    @Override
    public float floatValue() {
        return value.floatValue();
    }

    @Override
    public double doubleValue() {
        return value.doubleValue();
    }

    @Override
    public int compareTo(Decimal other) {
        return value.compareTo(other.value);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Decimal decimal && value.equals(decimal.value);
    }

    @Override
    public int hashCode() {
        return value.hashCode();
    }

    @Override
    public String toString() {
        return value.toPlainString();
    }
}
