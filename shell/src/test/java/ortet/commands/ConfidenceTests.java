package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.value.Refused;

class ConfidenceTests {
    @ParameterizedTest
    @CsvSource({"95, 0.95", "99.9, 0.999", "90%, 0.9", "90 %, 0.9", "1, 0.01"})
    void readsPercent(String text, double share) {
        assertEquals(share, Confidence.parse(text).share());
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.95", "0", "100", "150", "-5", "abc", "%", ""})
    void refusesWhatIsNoPercent(String text) {
        Refused refused = assertThrows(Refused.class, () -> Confidence.parse(text));
        assertEquals(
                "expected percent from 1 to below 100, such as 95, found \"" + text + "\"",
                refused.faults().get(0).text());
    }

    @Test
    void isToldWithTheDecimalsThatItHas() {
        assertEquals("95", Confidence.percent(0.95));
        assertEquals("99.9", Confidence.percent(0.999));
        assertEquals("90", Confidence.percent(Confidence.parse("90").share()));
    }

    @Test
    void takesAShareAsSuchOrInPercent() {
        assertEquals(0.9, Portion.parse("0.9").share());
        assertEquals(0.9, Portion.parse("90%").share());
        assertEquals(0.05, Portion.parse("5 %").share());
        assertThrows(Refused.class, () -> Portion.parse("-1"));
        assertThrows(Refused.class, () -> Portion.parse("much"));
    }
}
