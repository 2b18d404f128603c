package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;
import ortet.PromptDesk;

class PromptTests {
    private static final String TAB = "\t";
    private static final String CTRL_C = "\u0003";
    private static final String UP = "\u001bOA";
    private static final String PASTE = "\u001b[200~";
    private static final String PASTED = "\u001b[201~";

    private static Desk desk;

    @TempDir
    Path folder;

    @BeforeAll
    static void open() {
        desk = Desk.open(BenchCommands.Wiring.class);
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    private static Desk.Answer typed(String keys) {
        return desk.keys(keys, Optional.empty());
    }

    @Test
    void runsLineAfterLineUntilItIsLeft() {
        Desk.Answer answer = typed("number 1\rnumber 2\rexit\rnumber 3\r");
        assertEquals(0, answer.status());
        assertTrue(answer.out().endsWith("1.0\n2.0\n"), answer::out);
    }

    @Test
    void leavesAtTheEndOfInput() {
        Desk.Answer answer = typed("number 1\r");
        assertEquals(0, answer.status());
        assertTrue(answer.out().endsWith("1.0\n"), answer::out);
    }

    @Test
    void goesOnAfterALineThatFails() {
        Desk.Answer answer = typed("numbr 1\rnumber 2\r");
        assertEquals("ortet: no command \"numbr\"; nearest: number\n", answer.err());
        assertTrue(answer.out().endsWith("2.0\n"), answer::out);
        assertEquals(0, answer.status());
    }

    @Test
    void dropsTheLineBegunAtCtrlC() {
        try (PromptDesk prompt = new PromptDesk(desk, 80)) {
            prompt.sees("ortet> ").press("number 1").sees("number 1").press(CTRL_C);
            prompt.sees("ortet> ").types("number 2").sees("2.0\n").sees("ortet> ");
            assertFalse(prompt.text().contains("1.0"), prompt::text);
        }
    }

    @Test
    void completesWithTab() {
        assertTrue(typed("num" + TAB + "7\r").out().endsWith("7.0\n"));
        assertTrue(
                typed("bench lo" + TAB + "A --by mo" + TAB + "\r").out().endsWith("A | Optional.empty | [mother]\n"));
    }

    @Test
    void takesALineWithTheNameOfTheProgramBeforeIt() {
        assertTrue(typed("ortet number 4\r").out().endsWith("4.0\n"));
        assertEquals("5.0\n", desk.script("ortet number 5\n").out());
    }

    @Test
    void continuesALineAfterABackslash() {
        assertTrue(typed("bench look \\\rA\r").out().endsWith("A | Optional.empty | [tray]\n"));
    }

    @Test
    void runsPastedLinesOneAfterAnother() {
        Desk.Answer answer = typed(PASTE + "number 1\r# a remark\rnumber 2\r" + PASTED + "\r");
        assertEquals("", answer.err());
        assertTrue(answer.out().contains("> number 1\n1.0\n"), answer::out);
        assertTrue(answer.out().endsWith("> number 2\n2.0\n"), answer::out);
    }

    @Test
    void stopsAPasteAtTheFirstLineThatFailsAndKeepsTheRest() {
        Desk.Answer answer = typed(PASTE + "number 1\nnumbr 2\nnumber 3\nnumber 4" + PASTED + "\r");
        assertEquals(
                List.of(
                        "ortet: no command \"numbr\"; nearest: number",
                        "ortet: stopped at line 2 of 4; line 1 was done, lines 2 to 4 were not and stand at the prompt again"),
                answer.err().lines().toList());
        assertTrue(answer.out().endsWith("> numbr 2\n"), answer::out);
    }

    @Test
    void runsTheRestOfAPasteOnceItIsMended() {
        String toTheFirstLine = UP + "\u0001";
        Desk.Answer answer = typed(PASTE + "numbr 2\nnumber 3" + PASTED + "\r" + toTheFirstLine + "number 1 #\r");
        assertTrue(answer.out().endsWith("1.0\n> number 3\n3.0\n"), answer::out);
    }

    @Test
    void keepsLinesForAnotherTimeForTheUserAlone() throws IOException {
        Path file = folder.resolve("state/ortet/history");
        desk.keys("number 1\r number 2\rnumber 楓\r", Optional.of(file));
        assertEquals(List.of("number 1", "number 楓"), Files.readAllLines(file));
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file.getParent())));
        Desk.Answer again = desk.keys(UP + UP + "\r", Optional.of(file));
        assertTrue(again.out().endsWith("1.0\n"), again::out);
    }

    @Test
    void worksWhereNoLineCanBeKept() throws IOException {
        Path file = Files.createFile(folder.resolve("file")).resolve("ortet/history");
        assertTrue(desk.keys("number 1\r", Optional.of(file)).out().endsWith("1.0\n"));
    }

    @Test
    void keepsLinesInTheStateFolder() {
        assertEquals(
                Optional.of(Path.of("/state/ortet/history")),
                HistoryFile.in(Map.of("XDG_STATE_HOME", "/state", "HOME", "/home/a")));
        assertEquals(
                Optional.of(Path.of("/home/a/.local/state/ortet/history")),
                HistoryFile.in(Map.of("XDG_STATE_HOME", "relative", "HOME", "/home/a")));
        assertEquals(Optional.empty(), HistoryFile.in(Map.of()));
    }
}
