package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;
import ortet.line.Commands;
import ortet.line.Job;
import ortet.line.JobsTried;

/** Work recorded question by question, with answers typed at the prompt. */
class RecordTests {
    private static final String TAB = "\t";
    private static final String UP = "\u001bOA";

    @TempDir
    Path folder;

    private BookDesk desk;

    @BeforeEach
    void open() {
        desk = new BookDesk(folder);
        desk.done("person add Aoife");
        desk.done("acquire K-1 K-2 --on 2020-01-01 --cultivar 'Acer palmatum'");
    }

    @AfterEach
    void close() {
        desk.close();
    }

    /** Type lines and answers, and return what was said once they were all used up. */
    private Desk.Answer answered(String... lines) {
        return desk.keys(lines);
    }

    private static void has(Desk.Answer answer, String... texts) {
        String all = answer.out().replaceAll("\\s+", " ");
        int from = 0;
        for (String text : texts) {
            int at = all.indexOf(text, from);
            assertTrue(at >= 0, () -> "no \"" + text + "\" after what came before in:\n" + answer.out());
            from = at + text.length();
        }
    }

    @Test
    void asksOneThingAtATimeAndWritesWhatWasAnswered() {
        Desk.Answer answer = answered(
                "record layers set",
                "K-1",
                "J-1..J-3",
                "12,15x2",
                "15",
                "full-ring",
                "IBA",
                "0.3%",
                "",
                "",
                "yesterday",
                "Aoife",
                "wet day",
                "");
        has(
                answer,
                "On which mother? (needed)",
                "How strong is it, 0.3% or 3000ppm?",
                "the same in one line: layer set J-1..J-3 --mother K-1 --stem 12,15x2 --ring 15 --wound full-ring"
                        + " --hormone IBA --strength 0.3% --on yesterday --by Aoife --note \"wet day\"",
                "#2 layer-set J-1; 2026-06-14, Aoife; mother K-1, stem 12 mm",
                "#3 layer-set J-2 J-3 (2); 2026-06-14, Aoife; mother K-1, stem 15 mm");
        assertEquals("", answer.err());
    }

    @Test
    void asksNothingThatAnotherAnswerMakesIdle() {
        Desk.Answer answer = answered("record layers set", "K-1", "J-1", "", "", "", "", "", "", "", "", "", "");
        assertFalse(answer.out().contains("How strong"), answer::out);
        has(answer, "layer set J-1 --mother K-1", "#2 layer-set J-1; 2026-06-15; mother K-1");
    }

    @Test
    void asksForTheJobByNameOrNumber() {
        has(
                answered("record", "plants mooved", "13", "K-1", "House 1", "", "", "", ""),
                "13 plants moved",
                "no job \"plants mooved\"; nearest: plants moved",
                "#2 moved K-1");
        has(answered("record", "plants mo" + TAB, "K-2", "House 1", "", "", "", ""), "#3 moved K-2");
    }

    @Test
    void tellsAtOnceWhatCannotBeRight() {
        Desk.Answer answer = answered(
                "record layers set",
                "K-11",
                "K-1",
                "K-2",
                "J-1..J-2",
                "12,x",
                "12",
                "",
                "rings",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                "");
        has(
                answer,
                "no plant or batch K-11; nearest: K-1",
                "K-2 names another already",
                "expected stem diameters in mm such as 12",
                "no \"rings\"; expected one of full-ring",
                "#2 layer-set J-1 J-2 (2)");
    }

    @Test
    void asksAgainForWhatIsNeeded() {
        has(
                answered("record plants moved", "", "K-1", "House 1", "", "", "", ""),
                "it must be told; ? explains",
                "#2 moved K-1");
    }

    @Test
    void explainsWhatIsExpected() {
        has(
                answered("record layers set", "?", "K-1", "?", "J-1", "", "", "?"),
                "--mother: the plant that they are set on; always needed for example: layer set J-201",
                "TAG: a tag for each layer",
                "--wound: how the bark was cut; one of full-ring, ring-with-bridge, tongue");
    }

    @Test
    void goesBackAndTakesAnAnswerOutAgain() {
        Desk.Answer answer =
                answered("record plants moved", "K-1", "House 2", "<", "House 3", "", "Aoife", "<", "-", "", "");
        has(answer, "Where to? [House 2]", "Who did it? [Aoife]", "#2 moved K-1; 2026-06-15; place House 3");
    }

    @Test
    void changesAnAnswerByItsNumberOrName() {
        Desk.Answer answer =
                answered("record plants moved", "K-1", "House 1", "", "", "", "1", "K-2", "to", "House 2", "9", "");
        has(answer, "no answer \"9\"; expected a number from 1 to 5", "#2 moved K-2; 2026-06-15; place House 2");
    }

    @Test
    void asksForTheRestWhenToldTo() {
        Desk.Answer answer = answered("record plants kept as stock", "K-1", "", "", "", "more", "");
        has(answer, "#2 kept-as-stock K-1");
        Desk.Answer layers = answered("record layers looked at", "J-1");
        has(layers, "no plant or batch J-1");
        Desk.Answer more = answered(
                "record layers set",
                "K-1",
                "J-1",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                "more",
                "north",
                "300",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                "yes",
                "");
        has(more, "--branch north --height 300 --hedged", "#3 layer-set J-1", "hedged yes");
    }

    @Test
    void keepsTheAnswersWhenTheBookRefuses() {
        Desk.Answer answer =
                answered("record plants moved", "K-1", "House 1", "2019-01-01", "", "", "", "on", "2021-01-01", "");
        assertEquals("ortet: K-1 began on 2020-01-01 (acquired), after moved on 2019-01-01\n", answer.err());
        has(answer, "nothing was written", "#2 moved K-1; 2021-01-01; place House 1");
    }

    @Test
    void showsAndTakesWhatIsSetForTheLinesToCome() {
        Desk.Answer answer = answered(
                "use --by Aoife --on yesterday --place 'House 1'",
                "record plants potted",
                "K-1",
                "2 L",
                "",
                "",
                "",
                "",
                "",
                "",
                "");
        has(
                answer,
                "Where do they stand now? [House 1]",
                "On which day? yesterday, 2026-05-03 or 2026-05 [2026-06-14]",
                "Who did it? [Aoife]",
                "House 1 (set by \"use\")",
                "the same in one line: pot K-1 --into \"2 L\"",
                "#2 potted K-1; 2026-06-14, Aoife; container 2 L, place House 1");
    }

    @Test
    void writesNothingWhenItIsDropped() {
        has(answered("record plants moved", "K-1", "House 1", "", "", "", "no"), "dropped; nothing was written");
        assertFalse(desk.done("plant K-1").contains("moved"));
    }

    @Test
    void keepsTheLineSoThatItCanBeFetched() {
        Desk.Answer answer = answered("record plants moved", "K-1", "House 1", "", "", "", "", UP + " --note again");
        has(answer, "#2 moved K-1", "#3 moved K-1; 2026-06-15; place House 1, “again”");
    }

    @Test
    void proposesWhatTheBookKnows() {
        desk.done("move K-2 --to 'House 1'");
        has(
                answered("record plants moved", "k-1" + TAB, "hou" + TAB, "", "Ao" + TAB, "", ""),
                "#3 moved K-1; 2026-06-15, Aoife; place House 1");
    }

    @Test
    void refusesWhereNobodyCanAnswer() {
        assertEquals(
                "ortet: record asks questions, and nobody is at a terminal to answer; in a file of lines write the command"
                        + " itself (\"help\" lists them)\n",
                desk.wrong("record layers set"));
    }

    @Test
    void everyQuestionOfEveryJobFillsAPlaceOfItsCommand() {
        List<String> wrong = new ArrayList<>();
        for (Job job : Jobs.ALL) {
            wrong.addAll(JobsTried.wrong(desk.bean(Commands.class), job));
        }
        assertEquals(List.of(), wrong);
        assertTrue(Jobs.ALL.size() >= 15);
    }
}
