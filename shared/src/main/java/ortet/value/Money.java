package ortet.value;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An amount of money in a currency of ISO 4217, written {@code 24.50 EUR}.
 *
 * @param minor the amount in the currency's minor unit, at least 0
 * @param currency the currency
 */
public record Money(long minor, Currency currency) {
    private static final Pattern TEXT = Pattern.compile("(\\d{1,12})(?:[.,](\\d{1,4}))?\\s*([A-Za-z]{3})");
    private static final int THOUSANDS = 3;

    public Money {
        Objects.requireNonNull(currency);
        Require.that(minor >= 0, "price", "an amount of at least 0");
    }

    /**
     * Read an amount with its currency. Three decimals may as well be thousands ({@code 4,500 EUR}) and are not guessed at.
     *
     * @throws Refused when the text is none, the currency is unknown or has fewer decimals
     */
    public static Money parse(String text) {
        Matcher matcher = TEXT.matcher(text.strip());
        if (!matcher.matches()) {
            throw Refused.because("bad-money", "expected an amount such as 24.50 EUR, found \"" + text + "\"");
        }
        Currency currency = Amount.currency(matcher.group(3));
        String cents = matcher.group(2) == null ? "" : matcher.group(2);
        BigDecimal amount =
                new BigDecimal(matcher.group(1) + "." + (cents.isEmpty() ? "0" : cents)).stripTrailingZeros();
        int digits = Math.max(0, currency.getDefaultFractionDigits());
        if (amount.scale() > digits) {
            throw Refused.because(
                    "bad-money",
                    "expected at most " + digits + " decimals for " + currency + ", found \"" + text + "\"");
        }
        if (cents.length() == THOUSANDS && digits != THOUSANDS) {
            throw Refused.because(
                    "bad-money",
                    "expected at most " + digits + " decimals for " + currency
                            + ", and thousands without a mark, found \"" + text + "\"");
        }
        return new Money(amount.movePointRight(digits).longValueExact(), currency);
    }

    @Override
    public String toString() {
        int digits = Math.max(0, currency.getDefaultFractionDigits());
        return BigDecimal.valueOf(minor, digits).toPlainString() + " " + currency.getCurrencyCode();
    }
}
