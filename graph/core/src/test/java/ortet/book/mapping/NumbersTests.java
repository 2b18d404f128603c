package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.book.mapping.Numbers.Measure;
import ortet.value.Refused;

class NumbersTests {
    private static final Numbers POINT = new Numbers(false);
    private static final Numbers COMMA = new Numbers(true);

    private static String fault(Runnable reading) {
        return assertThrows(Refused.class, reading::run).getMessage();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "12 | 12",
                "12.5 | 12.5",
                ".5 | 0.5",
                "12. | 12",
                "1,250 | 1250",
                "1,250.5 | 1250.5",
                "1 250 | 1250",
                "1'250 | 1250",
                "-3 | -3",
                "+3 | 3"
            })
    void readsNumbersWithADecimalPoint(String text, String number) {
        assertEquals(number, POINT.parse(text).toString());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {"12 | 12", "12,5 | 12.5", ",5 | 0.5", "1.250 | 1250", "1.250,5 | 1250.5", "1\u00A0250,75 | 1250.75"
            })
    void readsNumbersWithADecimalComma(String text, String number) {
        assertEquals(number, COMMA.parse(text).toString());
    }

    @Test
    void neverTakesOneMarkForTheOther() {
        assertEquals(
                "expected a number such as 12 or 12.5, found \"12,5\"; where the numbers have a decimal comma, the mapping"
                        + " says numbers = decimal comma",
                fault(() -> POINT.parse("12,5")));
        assertEquals(
                "expected a number such as 12 or 12,5, found \"12.5\"; where the numbers have a decimal point, the mapping"
                        + " says numbers = decimal point",
                fault(() -> COMMA.parse("12.5")));
        assertEquals("expected a number such as 12 or 12.5, found \"1,25,0\"", fault(() -> POINT.parse("1,25,0")));
        assertEquals("expected a number such as 12 or 12.5, found \"forty\"", fault(() -> POINT.parse("forty")));
    }

    /** An inch is 25.4 mm and an avoirdupois ounce 28.349523125 g (International Yard and Pound Agreement, 1959). */
    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "12 | '' | 12",
                "12 mm | '' | 12",
                "1.2cm | '' | 12",
                "1.5 m | '' | 1500",
                "2 in | '' | 50.8",
                "2 | in | 50.8",
                "2 | cm | 20",
                "2 mm | cm | 2",
                "1 ft | '' | 304.8"
            })
    void turnsLengthsIntoMillimetres(String text, String unit, String millimetres) {
        Optional<String> known = unit.isEmpty() ? Optional.empty() : Optional.of(unit);
        assertEquals(millimetres, POINT.parse(text, Measure.LENGTH, known).toString());
    }

    @Test
    void turnsWeightsIntoGrams() {
        assertEquals(
                "28.349523",
                POINT.parse("1 oz", Measure.WEIGHT, Optional.empty()).toString());
        assertEquals(
                "2500", COMMA.parse("2,5 kg", Measure.WEIGHT, Optional.empty()).toString());
    }

    @Test
    void refusesAUnitOfSomethingElse() {
        assertEquals(
                "expected a number, alone or in g, kg, oz, found \"3 mm\"",
                fault(() -> POINT.parse("3 mm", Measure.WEIGHT, Optional.empty())));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "24.5 | 24.50 EUR",
                "€24.50 | 24.50 EUR",
                "24.50 € | 24.50 EUR",
                "£1,250 | 1250.00 GBP",
                "12 CHF | 12.00 CHF",
                "chf 12 | 12.00 CHF",
                "¥ 900 | 900 JPY",
                "0 | 0.00 EUR"
            })
    void readsMoney(String text, String money) {
        assertEquals(money, POINT.money(text, Optional.of("EUR")));
    }

    @Test
    void refusesMoneyThatCannotBe() {
        assertEquals(
                "expected an amount of at least 0 with at most 2 decimals, found \"9.999\"",
                fault(() -> POINT.money("9.999", Optional.of("EUR"))));
        assertEquals(
                "expected an amount of at least 0 with at most 2 decimals, found \"-1\"",
                fault(() -> POINT.money("-1", Optional.of("EUR"))));
        assertEquals(
                "expected an amount with its currency, such as 24.50 EUR, found \"24\"; the mapping can say the currency: ="
                        + " price in EUR",
                fault(() -> POINT.money("24", Optional.empty())));
        assertEquals(
                "no currency \"XYQ\"; expected a code of ISO 4217 such as EUR",
                fault(() -> POINT.money("24 XYQ", Optional.empty())));
    }

    @Test
    void countsInWholeNumbers() {
        assertEquals("1250", POINT.count("1,250"));
        assertEquals("3", POINT.count("3.0"));
        assertEquals("expected a whole number, found \"2.5\"", fault(() -> POINT.count("2.5")));
        assertEquals("expected a whole number, found \"-2\"", fault(() -> POINT.count("-2")));
    }
}
