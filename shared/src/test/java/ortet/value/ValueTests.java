package ortet.value;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ValueTests {

    private static String refusal(Runnable act) {
        return assertThrows(Refused.class, act::run).getMessage();
    }

    @ParameterizedTest
    @CsvSource({"2021,2021-01-01,2021-12-31", "2024-02,2024-02-01,2024-02-29", "2021-05-03,2021-05-03,2021-05-03"})
    void whenKnowsItsFirstAndLastDay(String text, LocalDate first, LocalDate last) {
        When when = When.parse(text);
        assertEquals(first, when.first());
        assertEquals(last, when.last());
        assertEquals(text, when.toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "21", "2021-5-3", "03/05/2021", "2021-05-03 ", "yesterday", "20210503"})
    void whenRefusesOtherForms(String text) {
        assertEquals(
                "expected a day such as 2021-05-03, a month 2021-05 or a year 2021, found \"" + text + "\"",
                refusal(() -> When.parse(text)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"2021-02-29", "2021-13", "2021-00-10"})
    void whenRefusesDaysThatDoNotExist(String text) {
        assertEquals("there is no day " + text, refusal(() -> When.parse(text)));
    }

    @ParameterizedTest
    @CsvSource({"12,12", "12.50,12.5", "'12,5',12.5", "1200,1200", "0.0,0", "-3.10,-3.1", "+4,4", ".5,0.5"})
    void decimalHasOneTextForOneValue(String written, String text) {
        assertEquals(text, Decimal.parse(written).toString());
    }

    @Property
    void decimalReadsBackItsText(@ForAll @Scale(6) BigDecimal value) {
        Decimal decimal = Decimal.of(value);
        if (value.abs().compareTo(new BigDecimal("1e11")) < 0) {
            assertEquals(decimal, Decimal.parse(decimal.toString()));
        }
        assertEquals(0, decimal.value().compareTo(value));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "1e3", "1 000", "NaN", "12.", "--1"})
    void decimalRefusesOtherForms(String text) {
        if (text.equals("12.")) {
            assertEquals("12", Decimal.parse(text).toString());
        } else {
            assertEquals(
                    "expected a number such as 12 or 12.5, found \"" + text + "\"", refusal(() -> Decimal.parse(text)));
        }
    }

    /** 1 % is 10,000 parts per million by definition. */
    @ParameterizedTest
    @CsvSource({"0.3%,0.3%", "3000 ppm,0.3%", "3000ppm,0.3%", "'0,8 %',0.8%", "500 PPM,0.05%", "100%,100%"})
    void strengthIsPercent(String written, String text) {
        assertEquals(text, Strength.parse(written).toString());
    }

    @Test
    void strengthRefusesNothingAndMoreThanAll() {
        assertEquals("expected a strength above 0 and at most 100 %, found 0 %", refusal(() -> Strength.parse("0%")));
        assertEquals(
                "expected a strength above 0 and at most 100 %, found 101 %", refusal(() -> Strength.parse("101%")));
        assertEquals(
                "expected a strength such as 0.3% or 3000ppm, found \"0.3\"", refusal(() -> Strength.parse("0.3")));
    }

    @Test
    void strengthIsWrittenSoThatItCanBeReadAgain() {
        assertEquals("0.000001%", Strength.parse("0.01ppm").toString());
        assertEquals(
                "expected a strength with at most 6 decimals in percent, found 0.0012345 %",
                refusal(() -> Strength.parse("12.345ppm")));
    }

    /** Decimals of the currencies by ISO 4217: EUR 2, JPY 0, KWD 3. */
    @ParameterizedTest
    @CsvSource({
        "24.50 EUR,2450,24.50 EUR",
        "'24,5 eur',2450,24.50 EUR",
        "24EUR,2400,24.00 EUR",
        "1200 JPY,1200,1200 JPY",
        "1.234 KWD,1234,1.234 KWD"
    })
    void moneyIsExact(String written, long minor, String text) {
        Money money = Money.parse(written);
        assertEquals(minor, money.minor());
        assertEquals(text, money.toString());
    }

    @Test
    void moneyRefusesWhatIsNone() {
        assertEquals(
                "expected at most 2 decimals for EUR, found \"24.505 EUR\"", refusal(() -> Money.parse("24.505 EUR")));
        assertEquals("no currency XQX; expected a code of ISO 4217 such as EUR", refusal(() -> Money.parse("1 XQX")));
        assertEquals("expected an amount such as 24.50 EUR, found \"-1 EUR\"", refusal(() -> Money.parse("-1 EUR")));
    }

    /** Counted by hand: insert, delete, replace and swap of neighbours cost 1 each. */
    @ParameterizedTest
    @CsvSource({"J-0140,J-0140,0", "J-0140,J-0104,1", "severed,sever,2", "ca,abc,3", "'',abc,3", "potted,spotted,1"})
    void distanceIsThatOfOptimalStringAlignment(String a, String b, int distance) {
        assertEquals(distance, Nearest.distance(a, b));
    }

    @Property
    void distanceIsSymmetricAndZeroForTheSame(
            @ForAll @AlphaChars @StringLength(max = 8) String a, @ForAll @AlphaChars @StringLength(max = 8) String b) {
        assertEquals(Nearest.distance(a, b), Nearest.distance(b, a));
        assertEquals(0, Nearest.distance(a, a));
        assertTrue(Nearest.distance(a, b) <= Math.max(a.length(), b.length()));
    }

    @Test
    void nearestNamesTheClosestFirstAndNothingFar() {
        assertEquals(Optional.of("J-0104, J-0114"), Nearest.of("J-0140", List.of("J-0114", "J-0104", "K-9999")));
        assertEquals(Optional.of("layer-set"), Nearest.of("layer", List.of("layer-set", "sold")));
        assertEquals(Optional.empty(), Nearest.of("J-0140", List.of("Deshojo")));
    }

    @Test
    void faultIsOneLine() {
        Fault fault = Fault.of("unknown-tag", "no plant J-1")
                .at(new Where("book.csv", 14, Optional.of("tags")))
                .nearest(Optional.of("J-2"));
        assertEquals("book.csv:14:tags: no plant J-1; nearest: J-2", fault.line());
    }

    @Property
    void refusedTellsEveryFault(@ForAll @IntRange(min = 1, max = 20) int count) {
        List<Fault> faults = java.util.stream.IntStream.range(0, count)
                .mapToObj(at -> Fault.of("rule", "fault " + at))
                .toList();
        assertEquals(count, new Refused(faults).lines().size());
    }

    @Test
    void faultIsOneLineWhateverItQuotes() {
        Fault fault = Fault.of("bad-value", "found \"two\nlines\u0085\tand \u001b[1m\"")
                .nearest(Optional.of("a\rb"));
        assertEquals("found \"two lines  and  [1m\"; nearest: a b", fault.line());
        assertEquals(List.of(fault.line()), new Refused(fault).lines());
    }
}
