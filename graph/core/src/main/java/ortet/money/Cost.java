package ortet.money;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Objects;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.value.Amount;
import ortet.value.Money;
import ortet.value.Refused;

/**
 * An exact sum of money, also of parts of a minor unit: a third of a cent is a third of a cent. It is rounded only where it
 * is shown.
 *
 * @param value in the currency's unit
 * @param currency the currency (ISO 4217)
 */
public record Cost(BigFraction value, Currency currency) {
    private static final int FINE = 6;

    public Cost {
        Objects.requireNonNull(value);
        Objects.requireNonNull(currency);
    }

    /** Return an amount as a cost. */
    public static Cost of(Amount amount) {
        return new Cost(Fractions.of(amount.value().value()), amount.currency());
    }

    /** Return what is paid as a cost. */
    public static Cost of(Money money) {
        return new Cost(
                Fractions.of(BigDecimal.valueOf(
                        money.minor(), Math.max(0, money.currency().getDefaultFractionDigits()))),
                money.currency());
    }

    /**
     * Return this and another together.
     *
     * @throws Refused by the rule {@code mixed-currencies} when they are in two currencies
     */
    public Cost plus(Cost other) {
        if (!currency.equals(other.currency)) {
            throw Refused.because(
                    "mixed-currencies",
                    "what is in " + currency.getCurrencyCode() + " cannot be added to what is in "
                            + other.currency.getCurrencyCode());
        }
        return new Cost(value.add(other.value), currency);
    }

    /** Return so many times this. */
    public Cost times(BigFraction factor) {
        return new Cost(value.multiply(factor), currency);
    }

    /** Return this rounded to the currency's minor unit of ISO 4217, halves to the even digit. */
    public BigDecimal rounded() {
        return Fractions.rounded(value, Math.max(0, currency.getDefaultFractionDigits()));
    }

    /** Return this to six decimals, halves to the even digit. */
    public BigDecimal fine() {
        return Fractions.rounded(value, FINE);
    }

    /** Return this rounded to the minor unit, with its currency: {@code 12.30 EUR}. */
    @Override
    public String toString() {
        return rounded().toPlainString() + " " + currency.getCurrencyCode();
    }
}
