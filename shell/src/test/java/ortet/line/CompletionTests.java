package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;

class CompletionTests {
    private static Desk desk;
    private static Completion completion;

    @BeforeAll
    static void open() {
        desk = Desk.open(BenchCommands.Wiring.class);
        completion = new Completion(desk.bean(Commands.class), Attendant.NOBODY);
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    private static Set<String> proposals(List<String> before, String begun) {
        return completion.proposals(before, begun).stream()
                .map(Suggestion::value)
                .collect(Collectors.toSet());
    }

    private static List<String> matching(String begun, String... values) {
        return Completion.matching(
                        begun, List.of(values).stream().map(Suggestion::of).toList())
                .stream()
                .map(one -> one.value() + (one.whole() ? "" : "…"))
                .toList();
    }

    @Test
    void proposesCommandsWordByWord() {
        assertTrue(proposals(List.of(), "").containsAll(Set.of("bench", "bs", "help", "other")));
        assertFalse(proposals(List.of(), "").contains("secret"));
        assertEquals(Set.of("count", "look", "set"), proposals(List.of("bench"), ""));
        assertEquals(Set.of("count", "look", "set"), proposals(List.of("help", "bench"), ""));
        assertEquals(Set.of("count", "look", "set"), proposals(List.of("ortet", "bench"), ""));
    }

    @Test
    void saysWhatEachProposalIs() {
        assertTrue(completion.proposals(List.of("bench"), "").contains(Suggestion.of("look", "look at the bench")));
        assertTrue(completion.proposals(List.of("bench", "set"), "-").contains(Suggestion.of("--on", "where")));
    }

    @Test
    void proposesOptionsNotYetGivenAndListsAgain() {
        Set<String> proposals = proposals(List.of("bench", "set", "--on", "M", "--note", "x"), "-");
        assertFalse(proposals.contains("--on"));
        assertTrue(proposals.containsAll(Set.of("--note", "--count", "--dry-run")));
    }

    @Test
    void proposesNeededOptionsFirstWhereNothingIsTyped() {
        List<Suggestion> all = completion.proposals(List.of("bench", "set", "A"), "");
        assertEquals("--on", all.get(0).value());
    }

    @Test
    void proposesNoOptionsAfterTwoDashes() {
        assertEquals(Set.of(), proposals(List.of("bench", "set", "--"), ""));
    }

    @Test
    void proposesTheAllowedValues() {
        assertEquals(Set.of("full-ring", "ring-with-bridge", "tongue"), proposals(List.of("bench", "set", "-c"), ""));
        assertEquals(Set.of("tray", "mother"), proposals(List.of("bench", "look", "A", "--by"), "m"));
        assertEquals(
                Set.of("--cut=full-ring", "--cut=ring-with-bridge", "--cut=tongue"),
                proposals(List.of("bench", "set"), "--cut="));
    }

    @Test
    void proposesWhatIsLeftOfAListAfterAComma() {
        assertEquals(
                Set.of("tongue,full-ring", "tongue,ring-with-bridge"),
                proposals(List.of("bench", "set", "-c"), "tongue,f"));
    }

    @Test
    void asksTheAttendantForAnythingElse() {
        List<Wanted> asked = new ArrayList<>();
        Attendant attendant = new Attendant() {
            @Override
            public List<Suggestion> values(Wanted wanted) {
                asked.add(wanted);
                return List.of(Suggestion.of("M-1"));
            }
        };
        Completion live = new Completion(desk.bean(Commands.class), attendant);
        assertEquals(
                List.of(Suggestion.of("M-1")),
                live.matching(List.of("bench", "set", "A", "--note", "b", "--book", "x.ortet", "--on"), "m-"));
        assertEquals(
                new Wanted(
                        "bench set",
                        "on",
                        "TEXT",
                        String.class,
                        false,
                        List.of("A"),
                        Map.of("note", "b", "book", "x.ortet"),
                        "m-"),
                asked.get(0));
    }

    @Test
    void proposesFiles(@TempDir Path folder) throws IOException {
        Files.createDirectory(folder.resolve("spring"));
        Files.createFile(folder.resolve("sallow.ortet"));
        Files.createFile(folder.resolve("sallow.ortet-wal"));
        Files.createFile(folder.resolve(".hidden"));
        String begun = folder + "/s";
        assertEquals(
                Set.of(folder + "/spring/", folder + "/sallow.ortet"),
                proposals(List.of("bench", "look", "A", "--book"), begun));
        assertEquals(
                Set.of("@" + folder + "/spring/", "@" + folder + "/sallow.ortet"), proposals(List.of(), "@" + begun));
        assertEquals(Set.of(), proposals(List.of("bench", "look", "--book"), folder + "/nowhere/"));
    }

    @Test
    void matchesBeginningsWhateverCaseAndAccents() {
        assertEquals(List.of("Máire", "Maigh"), matching("ma", "Máire", "Maigh", "Aoife"));
        assertEquals(List.of("Máire"), matching("MAIR", "Máire", "Maigh"));
    }

    @Test
    void matchesAnywhereWhereNothingBeginsSo() {
        assertEquals(List.of("Acer palmatum 'Deshojo'"), matching("desh", "Acer palmatum 'Deshojo'", "Ulmus minor"));
    }

    @Test
    void mendsTheCaseOfWhatSeveralShare() {
        assertEquals(List.of("J-20…"), matching("j-2", "J-201", "J-202"));
        assertEquals(List.of("J-201", "J-202"), matching("J-2", "J-201", "J-202"));
    }
}
