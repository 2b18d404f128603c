package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;
import ortet.line.Attendant;

/** What is remembered for the lines to come, and taking back the last one. */
class SittingTests {
    @TempDir
    Path folder;

    private BookDesk desk;

    @BeforeEach
    void open() {
        desk = new BookDesk(folder);
        desk.done("person add Aoife");
        desk.done("person add Cathal");
        desk.done("acquire K-1 K-2 --on 2020-01-01");
    }

    @AfterEach
    void close() {
        desk.close();
    }

    /** Type a line that must be done; every line of the desk names its book, which is passed over here. */
    private String done(String line) {
        String said = desk.done(line);
        return said.startsWith("for the lines") || said.startsWith("nothing is set")
                ? set(said.replaceAll("\\s+", " ").strip())
                : said;
    }

    private String set(String said) {
        return said.replaceFirst("for the lines to come: in .*", "nothing is set for the lines to come")
                .replaceFirst(", in .*", "");
    }

    // ---- use ----

    @Test
    void takesPersonDayAndPlaceForWhatIsNotToldOtherwise() {
        assertEquals(
                "for the lines to come: by Aoife, on 2026-06-14, at House 1",
                done("use --by aoife --on yesterday --place 'House 1'"));
        assertEquals(
                "#2  potted K-1; 2026-06-14, Aoife; container 2 L, place House 1\n"
                        + "    as set by \"use\": 2026-06-14, Aoife, House 1\n",
                done("pot K-1 --into '2 L'"));
        assertEquals(
                "#3  potted K-2; 2026-06-01, Cathal; container 2 L, place House 2\n",
                done("pot K-2 --into '2 L' --by Cathal --on 2026-06-01 --place 'House 2'"));
    }

    @Test
    void takesABookNamedBeforeAFileOfLines() {
        Path other = folder.resolve("other.ortet");
        desk.done("use --place 'House 1'");
        Desk.Answer answer = desk.lines("book new --zone Europe/Dublin\nacquire P-1\n", "--book=" + other, "-");
        assertEquals("", answer.err());
        assertTrue(
                answer.out().endsWith("#1  acquired P-1; 2026-06-15; place House 1\n    as set by \"use\": House 1\n"),
                answer::out);
    }

    @Test
    void takesThePlaceOnlyWhereAnEntryHasOne() {
        done("use --place 'House 1'");
        assertEquals(
                "#2  layer-set J-1; 2026-06-15; mother K-1, place House 1\n    as set by \"use\": House 1\n",
                done("layer set J-1 --mother K-1"));
        assertEquals("#3  measured K-1; 2026-06-15; stem 12 mm\n", done("measure K-1 --stem 12"));
        assertEquals("#4  place-listed; 2026-06-15; place House 1\n", done("enter place-listed 'place=House 1'"));
        assertEquals("#5  severed J-1; 2026-06-15; roots none\n", done("layer sever J-1 --roots none"));
        assertEquals(
                "#6  acquired K-3; 2026-06-15; place House 1\n    as set by \"use\": House 1\n",
                done("enter acquired K-3"));
    }

    @Test
    void takesNoDayForACorrectionButThePerson() {
        done("use --by Aoife --on 2026-06-01");
        done("measure K-1 --stem 12");
        assertEquals(
                "#3  corrected; 2026-06-15, Aoife; of entry #2; field stem_mm, value 13\n"
                        + "    as set by \"use\": Aoife\n",
                done("correct 2 --field stem_mm --value 13"));
    }

    @Test
    void comparesWhatIsSeenWithTheDayThatIsSet() {
        done("move K-1 --to 'House 1' --on 2026-06-10");
        done("use --on 2026-06-05");
        assertTrue(done("seen 'House 1' K-2 --only-tell").contains("0 units seen at House 1 as expected"));
        assertFalse(done("seen 'House 1' K-2 --only-tell").contains("missing"));
        done("forget on");
        assertTrue(done("seen 'House 1' K-2 --only-tell").contains("missing    1 unit: K-1"));
    }

    @Test
    void showsWhatIsSetAndForgetsIt() {
        assertEquals("nothing is set for the lines to come", done("use"));
        done("use --by Aoife --on 2026-06 --place 'House 1'");
        assertEquals("for the lines to come: by Aoife, on 2026-06, at House 1", done("use"));
        assertEquals("for the lines to come: by Aoife", done("forget place on"));
        assertEquals("nothing is set for the lines to come", done("forget"));
    }

    @Test
    void setsNoDayForToday() {
        done("use --on yesterday");
        assertEquals("nothing is set for the lines to come", done("use --on today"));
    }

    @Test
    void refusesAPersonWhomNobodyKnowsAndKeepsWhatWasSet() {
        done("use --by Aoife");
        assertEquals(
                "ortet: by: no person \"Aoifa\" in the book; add one with \"ortet person add\"; nearest: Aoife\n",
                desk.refused("use --by Aoifa --place 'House 1'"));
        assertEquals("for the lines to come: by Aoife", done("use"));
    }

    @Test
    void refusesToForgetWhatCannotBeSet() {
        assertEquals(
                "ortet: WHAT of forget: no \"plase\"; expected one of by, on, place, book; nearest: place\n",
                desk.wrong("forget plase"));
    }

    @Test
    void setsTheBookAndShowsAllInThePrompt() {
        Desk.Answer answer = desk.keys("use --by Aoife --on yesterday", "use", "plant K-1");
        assertEquals("", answer.err());
        assertTrue(answer.out().contains("for the lines to come: by Aoife, on 2026-06-14, in"), answer::out);
        assertTrue(answer.out().contains("K-1  cultivar not known  [growing]"), answer::out);
        assertEquals(
                List.of("Aoife", "2026-06-14", "book.ortet"),
                desk.bean(Attendant.class).lead());
    }

    @Test
    void setsThePersonNoLongerInAnotherBook() {
        Path other = folder.resolve("other.ortet");
        desk.keys("use --by Aoife", "book new --book " + other);
        Desk.Answer answer = desk.keys("use --by Aoife", "use --book " + other, "use --by Aoife");
        assertTrue(answer.out().contains("another book: the person is set no longer"), answer::out);
        assertTrue(answer.err().contains("no person \"Aoife\""), answer::err);
    }

    // ---- undo ----

    @Test
    void takesBackAllThatTheLastLineRecorded() {
        done("layer set J-1..J-3 --mother K-1 --stem 12,15x2");
        assertEquals(
                "taken back: #2  layer-set J-1\ntaken back: #3  layer-set J-2 J-3 (2)\n",
                done("undo --reason 'wrong mother'"));
        assertEquals("#6  layer-set J-1; 2026-06-15; mother K-2\n", done("layer set J-1 --mother K-2"));
        assertTrue(done("plant K-1").contains("crossed out on 2026-06-15: wrong mother"));
        assertTrue(done("today").contains("crossed out #3: reason wrong mother"));
    }

    @Test
    void takesBackOneLineAfterAnother() {
        done("move K-1 --to 'House 1'");
        done("use --by Aoife");
        done("move K-2 --to 'House 2'");
        desk.refused("move K-9 --to 'House 2'");
        assertEquals("taken back: #3  moved K-2\n", done("undo"));
        assertEquals("taken back: #2  moved K-1\n", done("undo"));
        assertEquals("taken back: #ONE  acquired K-1 K-2 (2)\n", done("undo").replace("#1 ", "#ONE "));
        assertTrue(done("today").contains("Aoife"));
    }

    @Test
    void refusesWhatSomethingElseRestsOn() {
        done("layer set J-1 --mother K-1 --on 2026-05-01");
        Desk.Answer answer = desk.type("undo");
        assertEquals(0, answer.status());
        done("layer set J-1 --mother K-1 --on 2026-05-01");
        try (BookDesk other = again()) {
            other.done("layer sever J-1");
        }
        assertEquals(
                "ortet: then this could not be true any more: severed J-1 on 2026-06-15, and names J-1\n",
                desk.refused("undo"));
        assertTrue(done("plant J-1").contains("severed"));
    }

    /** Return somebody else at the same book. */
    private BookDesk again() {
        return BookDesk.at(desk.book());
    }

    @Test
    void refusesWhereNothingWasRecorded() {
        try (BookDesk other = again()) {
            assertEquals(
                    "ortet: nothing was recorded since ortet was started; an older entry is taken back by its number:"
                            + " cross-out N --reason TEXT\n",
                    other.refused("undo"));
        }
    }

    @Test
    void refusesToTakeBackACorrectionOrACrossingOut() {
        done("measure K-1 --stem 12");
        done("correct 2 --field stem_mm --value 13");
        assertEquals(
                "ortet: the last line was a correction (#3), which cannot be crossed out; correct the field again\n",
                desk.refused("undo"));
        done("cross-out 2 --reason 'no'");
        assertEquals(
                "ortet: the last line was a crossing out (#4), which cannot be taken back; record what was crossed out"
                        + " again\n",
                desk.refused("undo"));
    }

    @Test
    void takesBackNothingOlderThanAPersonMadeKnown() {
        done("move K-1 --to 'House 1'");
        done("person add Deirdre");
        assertEquals("ortet: the last line made a person known, which stays\n", desk.refused("undo"));
    }
}
