package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import ortet.Desk;

class PromptTests {
    private static Desk desk;
    private static Prompt prompt;

    @BeforeAll
    static void open() {
        desk = Desk.open(BenchCommands.Wiring.class);
        prompt = new Prompt(desk.bean(Commands.class), desk.bean(Front.class));
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    @Test
    void proposesCommandsWordByWord() {
        assertTrue(prompt.proposals(List.of(), "").containsAll(Set.of("bench", "bs", "help", "other")));
        assertFalse(prompt.proposals(List.of(), "").contains("secret"));
        assertEquals(Set.of("count", "look", "set"), prompt.proposals(List.of("bench"), ""));
        assertEquals(Set.of("count", "look", "set"), prompt.proposals(List.of("help", "bench"), ""));
    }

    @Test
    void proposesOptionsNotYetGivenAndListsAgain() {
        Set<String> proposals = prompt.proposals(List.of("bench", "set", "--on", "M", "--note", "x"), "-");
        assertFalse(proposals.contains("--on"));
        assertTrue(proposals.containsAll(Set.of("--note", "--count", "--dry-run")));
    }

    @Test
    void proposesTheAllowedValues() {
        assertEquals(
                Set.of("full-ring", "ring-with-bridge", "tongue"), prompt.proposals(List.of("bench", "set", "-c"), ""));
        assertEquals(Set.of("tray", "mother"), prompt.proposals(List.of("bench", "look", "A", "--by"), "m"));
    }
}
