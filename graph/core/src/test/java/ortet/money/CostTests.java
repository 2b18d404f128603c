package ortet.money;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.value.Amount;
import ortet.value.Decimal;
import ortet.value.Money;
import ortet.value.Refused;

class CostTests {
    private static final Currency EUR = Currency.getInstance("EUR");

    /** Minor units of ISO 4217, list one, from memory; the JDK's own table is held to them in the next test. */
    @ParameterizedTest
    @CsvSource({"EUR,2", "GBP,2", "USD,2", "CHF,2", "PLN,2", "JPY,0", "KRW,0", "ISK,0", "KWD,3", "BHD,3", "TND,3"})
    void roundsToTheMinorUnitOfTheCurrency(String code, int digits) {
        Currency currency = Currency.getInstance(code);
        assertEquals(digits, currency.getDefaultFractionDigits());
        Cost cost = new Cost(BigFraction.of(2, 3), currency);
        assertEquals(digits, cost.rounded().scale());
        assertEquals(new BigDecimal("0.666667"), cost.fine());
    }

    @Test
    void paysAndRoundsAlikeInEveryCurrencyThatTheJdkKnows() {
        List<String> met = new ArrayList<>();
        for (Currency currency : Currency.getAvailableCurrencies()) {
            int digits = Math.max(0, currency.getDefaultFractionDigits());
            Money smallest = new Money(1, currency);
            Cost cost = Cost.of(smallest);
            assertEquals(0, cost.rounded().compareTo(BigDecimal.ONE.movePointLeft(digits)), currency::getCurrencyCode);
            assertEquals(smallest.toString(), cost.toString());
            assertEquals(smallest, Money.parse(cost.toString()));
            met.add(currency.getCurrencyCode());
        }
        assertTrue(met.size() > 150, () -> met.size() + " currencies");
    }

    @ParameterizedTest
    @CsvSource({"1/200,0.00", "3/200,0.02", "1/8,0.12", "3/8,0.38", "1/3,0.33", "7/1,7.00"})
    void roundsHalvesToTheEvenDigit(String fraction, String rounded) {
        assertEquals(new BigDecimal(rounded), new Cost(BigFraction.parse(fraction), EUR).rounded());
    }

    @Test
    void addsOnlyWhatIsInOneCurrency() {
        Cost euro = Cost.of(Amount.parse("1.25 EUR"));
        assertEquals("2.50 EUR", euro.plus(euro).toString());
        Refused refused = assertThrows(Refused.class, () -> euro.plus(Cost.of(Amount.parse("1 GBP"))));
        assertEquals("mixed-currencies", refused.faults().get(0).rule());
        assertEquals(List.of("what is in EUR cannot be added to what is in GBP"), refused.lines());
    }

    @Property(tries = 200)
    void sharesAddUpToTheWhole(
            @ForAll @Scale(6) @BigRange(min = "0", max = "99999") BigDecimal amount,
            @ForAll @IntRange(min = 1, max = 500) int units) {
        Cost whole = Cost.of(new Amount(Decimal.of(amount), EUR));
        Cost sum = new Cost(BigFraction.ZERO, EUR);
        for (int unit = 0; unit < units; unit++) {
            sum = sum.plus(whole.times(BigFraction.of(1, units)));
        }
        assertEquals(whole, sum);
    }

    @ParameterizedTest
    @CsvSource({
        "0.004 EUR,0.004 EUR",
        "'0,35eur',0.35 EUR",
        "12 GBP,12.00 GBP",
        "0 EUR,0.00 EUR",
        "1.500000 JPY,1.5 JPY"
    })
    void readsAmountsBelowTheMinorUnit(String written, String text) {
        assertEquals(text, Amount.parse(written).toString());
        assertEquals(Amount.parse(text), Amount.parse(written));
    }

    @ParameterizedTest
    @CsvSource({"-1 EUR", "1.1234567 EUR", "EUR 3", "3", "NaN EUR", "1e3 EUR"})
    void refusesWhatIsNoAmount(String text) {
        assertEquals(
                "expected an amount such as 0.35 EUR, found \"" + text + "\"",
                assertThrows(Refused.class, () -> Amount.parse(text)).getMessage());
    }

    /** No class of this package works in binary floating point. */
    @Test
    void knowsNoBinaryFloatingPoint() throws IOException {
        Path sources = Path.of("src/main/java/ortet/money");
        try (Stream<Path> files = Files.list(sources)) {
            List<Path> all = files.toList();
            assertTrue(all.size() > 10, all::toString);
            for (Path file : all) {
                String source = Files.readString(file);
                assertTrue(
                        !source.matches("(?s).*\\b(double|float|Double|Float|doubleValue|floatValue)\\b.*"),
                        file::toString);
            }
        }
    }
}
