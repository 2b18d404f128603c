package ortet.value;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An exact amount in a currency of ISO 4217 that need not be whole in the currency's minor unit, such as {@code 0.004 EUR}
 * for a dab of something; what is paid is {@link Money}.
 *
 * @param value the amount in the currency's unit, at least 0, with at most 6 decimals
 * @param currency the currency
 */
public record Amount(Decimal value, Currency currency) {
    private static final int DECIMALS = 6;
    private static final Pattern TEXT = Pattern.compile("(\\d{1,12}(?:[.,]\\d{1,6})?)\\s*([A-Za-z]{3})");
    private static final Pattern THOUSANDS = Pattern.compile("[1-9]\\d{0,2},\\d{3}");

    public Amount {
        Objects.requireNonNull(value);
        Objects.requireNonNull(currency);
        Require.that(value.signum() >= 0, "amount", "an amount of at least 0");
        Require.that(value.value().scale() <= DECIMALS, "amount", "at most " + DECIMALS + " decimals");
    }

    /**
     * Read an amount with its currency. {@code 1,200 EUR} may be a thousand and is not guessed at.
     *
     * @throws Refused when the text is none or the currency is unknown
     */
    public static Amount parse(String text) {
        Matcher matcher = TEXT.matcher(text.strip());
        if (!matcher.matches()) {
            throw Refused.because("bad-money", "expected an amount such as 0.35 EUR, found \"" + text + "\"");
        }
        if (THOUSANDS.matcher(matcher.group(1)).matches()) {
            throw Refused.because(
                    "bad-money",
                    "expected an amount with a point, and thousands without a mark, found \"" + text + "\"");
        }
        return new Amount(Decimal.parse(matcher.group(1)), currency(matcher.group(2)));
    }

    /**
     * Return the currency of a code of ISO 4217, in upper or lower case.
     *
     * @throws Refused when there is none
     */
    static Currency currency(String code) {
        try {
            return Currency.getInstance(code.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException unknown) {
            throw Refused.because("bad-money", "no currency " + code + "; expected a code of ISO 4217 such as EUR");
        }
    }

    /** Return it with at least the decimals of the minor unit: {@code 19.50 EUR}, {@code 0.004 EUR}. */
    @Override
    public String toString() {
        BigDecimal exact = value.value();
        int digits = Math.max(exact.scale(), Math.max(0, currency.getDefaultFractionDigits()));
        return exact.setScale(digits).toPlainString() + " " + currency.getCurrencyCode();
    }
}
