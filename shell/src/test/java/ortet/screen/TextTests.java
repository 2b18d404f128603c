package ortet.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TextTests {
    // Widths after Unicode Standard Annex 11: 楓 and 槭 are wide (W), × is ambiguous and narrow outside East Asian
    // text, a combining acute accent takes no column of its own.
    @ParameterizedTest
    @CsvSource({"abc,3", "'',0", "楓,2", "Ácer × 楓,9", "e\u0301,1", "槭樹苗,6", "┌─┐,3"})
    void countsColumnsNotCharacters(String text, int columns) {
        assertEquals(columns, Text.columns(text));
    }

    @Test
    void breaksAtBlanksAndCutsWhatIsTooLong() {
        assertEquals(List.of("air layers", "on a stock", "plant"), Text.wrap("air layers on a stock plant", 10));
        assertEquals(List.of("a", "longer-wor", "d b"), Text.wrap("a longer-word b", 10));
        assertEquals(List.of("楓楓", "楓"), Text.wrap("楓楓楓", 5));
    }

    @Test
    void showsNothingThatSteersATerminal() {
        assertEquals("a b\ufffd[31mc", Text.printable("a\nb\u001b[31mc\r"));
        assertEquals("a b", Text.printable("a\tb"));
    }

    @Property
    void neverMakesALineWiderThanAskedAndLosesNothingButBlanks(
            @ForAll
                    @StringLength(max = 60)
                    @CharRange(from = 'a', to = 'f')
                    @CharRange(from = ' ', to = ' ')
                    @CharRange(from = '楊', to = '楓')
                    String text,
            @ForAll @IntRange(min = 2, max = 20) int width) {
        List<String> lines = Text.wrap(text, width);
        assertTrue(lines.stream().allMatch(line -> Text.columns(line) <= width), () -> lines.toString());
        assertEquals(text.replace(" ", ""), String.join("", lines).replace(" ", ""));
    }

    @Property
    void keepsEveryCharacterThatPrints(@ForAll String text) {
        String shown = Text.printable(text);
        assertFalse(shown.chars().anyMatch(Character::isISOControl));
    }
}
