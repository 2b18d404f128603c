package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.NotBlank;
import org.junit.jupiter.api.Test;

class SplitterTests {
    @Test
    void partsWordsAtBlanksAndTabs() {
        assertEquals(List.of("layer", "set", "J-201"), Splitter.split("  layer\tset   J-201 "));
    }

    @Test
    void keepsQuotedBlanksAndJoinsWhatTouches() {
        assertEquals(List.of("--note=two words", "it's", ""), Splitter.split("--note='two words' \"it's\" ''"));
    }

    @Test
    void keepsABackslashInSingleQuotesOnly() {
        assertEquals(List.of("a\\b", "a\"b\\c\\d", "a b"), Splitter.split("'a\\b' \"a\\\"b\\\\c\\d\" a\\ b"));
    }

    @Test
    void endsAtACommentButKeepsASharpInsideAWord() {
        assertEquals(List.of("bench#3", "#4"), Splitter.split("bench#3 '#4' # the rest 'is open"));
        assertEquals(List.of(), Splitter.split("   # nothing"));
        assertEquals(List.of("cross-out", "#412", "--by", "#7"), Splitter.split("cross-out #412 --by #7 #done"));
    }

    @Test
    void saysWhereAnOpenQuoteBegan() {
        UsageException e = assertThrows(UsageException.class, () -> Splitter.split("note \"half"));
        assertEquals("the \" at column 6 is not closed", e.getMessage());
    }

    @Test
    void refusesALoneBackslashAtTheEnd() {
        assertThrows(UsageException.class, () -> Splitter.split("note \\"));
    }

    @Test
    void continuesAfterABackslashThatStandsForItself() {
        assertTrue(Splitter.isContinued("layer set \\"));
        assertTrue(Splitter.isContinued("note \"half \\"));
        assertFalse(Splitter.isContinued("note \\\\"));
        assertFalse(Splitter.isContinued("note 'half \\"));
        assertFalse(Splitter.isContinued("note # a comment \\"));
        assertFalse(Splitter.isContinued(""));
    }

    @Property
    void givesSingleQuotedWordsBackUnchanged(@ForAll List<String> words) {
        String line = words.stream()
                .map(word -> "'" + word.replace("'", "'\\''") + "'")
                .collect(Collectors.joining(" "));
        assertEquals(words, Splitter.split(line));
    }

    @Property
    void givesDoubleQuotedWordsBackUnchanged(@ForAll List<String> words) {
        String line = words.stream()
                .map(word -> '"' + word.replace("\\", "\\\\").replace("\"", "\\\"") + '"')
                .collect(Collectors.joining("\t"));
        assertEquals(words, Splitter.split(line));
    }

    @Property
    void givesWordsWithBackslashesBackUnchanged(@ForAll List<@NotBlank String> words) {
        String line = words.stream()
                .map(word -> word.chars().mapToObj(c -> "\\" + (char) c).collect(Collectors.joining()))
                .collect(Collectors.joining(" "));
        assertEquals(words, Splitter.split(line));
    }

    @Property
    void eitherSplitsOrSaysWhyOnOneLine(@ForAll String line) {
        try {
            Splitter.split(line);
        } catch (UsageException e) {
            assertEquals(1, e.getMessage().lines().count());
        }
    }

    private static String unfinished(String line) {
        Unfinished typed = Splitter.unfinished(line);
        return typed.words() + " " + typed.begun() + " " + typed.start();
    }

    @Test
    void readsALineThatIsStillBeingTyped() {
        assertEquals("[] lay 0", unfinished("lay"));
        assertEquals("[layer]  6", unfinished("layer "));
        assertEquals("[layer, set] J-1 10", unfinished("layer set J-1"));
        assertEquals("[move, J 1, --to] House 1 16", unfinished("move 'J 1' --to \"House 1"));
        assertEquals("[a] it's \" x 2", unfinished("a \"it's \\\" x"));
        assertEquals("[a]  9", unfinished("a # b c d"));
        assertEquals("[a] b c 2", unfinished("a b\\ c"));
        assertEquals("[a] b\\ 2", unfinished("a b\\"));
    }

    @Test
    void writesWordsSoThatTheyAreReadBack() {
        for (String word :
                List.of("J-1", "House 1", "it's", "say \"so\"", "a\\b", "", "# no", "#12", "Acer 'X'", "楓")) {
            assertEquals(List.of(word), Splitter.split(Splitter.quoted(word)), word);
        }
        assertEquals("J-1", Splitter.quoted("J-1"));
        assertEquals("#12", Splitter.quoted("#12"));
        assertEquals("\"House ", Splitter.opened("House "));
        assertEquals("Hou", Splitter.opened("Hou"));
    }
}
