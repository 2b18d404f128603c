package ortet.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurroundingsTests {
    @Test
    void takesEachStreamAsTheStartScriptFoundIt() {
        Surroundings found = Surroundings.of(Map.of(), "011", "", false);
        assertFalse(found.inTerminal());
        assertTrue(found.outTerminal());
        assertTrue(found.errTerminal());
    }

    @Test
    void asksTheConsoleWhereTheScriptSaidNothing() {
        assertTrue(Surroundings.of(Map.of(), "", "", true).outTerminal());
        assertFalse(Surroundings.of(Map.of(), "", "", false).outTerminal());
    }

    @ParameterizedTest
    @CsvSource({
        "'',24 100,011,100",
        "132,24 100,011,132",
        "132,24 100,000,132",
        "'',24 100,000,80",
        "'','',011,80",
        "0,24 90,011,90",
        "x,0 0,011,80",
        "999999,'',011,80"
    })
    void isAsWideAsColumnsOrTheTerminalOrEighty(String columns, String terminal, String streams, int width) {
        assertEquals(
                width,
                Surroundings.of(Map.of("COLUMNS", columns), streams, terminal, false)
                        .width());
    }

    @Test
    void wantsNoColoursWithNoColorOrOnADumbTerminal() {
        assertTrue(Surroundings.of(Map.of("TERM", "xterm"), "111", "", true).colours());
        assertTrue(Surroundings.of(Map.of("NO_COLOR", ""), "111", "", true).colours());
        assertFalse(Surroundings.of(Map.of("NO_COLOR", "1"), "111", "", true).colours());
        assertFalse(Surroundings.of(Map.of("TERM", "dumb"), "111", "", true).colours());
    }

    @Test
    void showsLongAnswersPageByPageUnlessThePagerIsNone() {
        assertEquals(24, Surroundings.of(Map.of(), "011", "24 100", false).height());
        assertEquals(0, Surroundings.of(Map.of(), "011", "", false).height());
        assertEquals(Optional.empty(), pager(Map.of()).program());
        assertEquals(Optional.of("less -S"), pager(Map.of("PAGER", "less -S")).program());
        assertTrue(pager(Map.of()).wanted());
        assertFalse(pager(Map.of("PAGER", "cat")).wanted());
        assertFalse(pager(Map.of("PAGER", "")).wanted());
    }

    private static Surroundings.Paging pager(Map<String, String> environment) {
        return Surroundings.of(environment, "011", "24 100", false).paging();
    }

    @Test
    void tracesOnlyWhenAsked() {
        assertTrue(Surroundings.of(Map.of("ORTET_TRACE", "1"), "", "", false).trace());
        assertFalse(Surroundings.of(Map.of("ORTET_TRACE", ""), "", "", false).trace());
    }
}
