package ortet.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.BeanCreationException;
import ortet.Desk;
import ortet.screen.Screen;
import ortet.screen.Surroundings;
import ortet.value.Unavailable;

class FrontTests {
    private static Desk desk;

    @BeforeAll
    static void open() {
        desk = Desk.open(BenchCommands.Wiring.class);
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    @Test
    void bindsEveryKindOfValue() {
        Desk.Answer answer = desk.type(
                "bench",
                "set",
                "A",
                "--on=M-1",
                "--cut",
                "full-ring,Tongue",
                "B C",
                "--day",
                "yesterday",
                "-n",
                "-3",
                "--note",
                "a, b",
                "--note",
                "c",
                "--stem",
                "12mm",
                "--high",
                "4",
                "--dry-run",
                "-c",
                "ring_with_bridge",
                "--",
                "--D");
        assertEquals(
                "A+B C+--D | M-1 | -3 | [FULL_RING, TONGUE, RING_WITH_BRIDGE] | Optional[2024-02-29] | [a, b, c]"
                        + " | Optional[Stem[mm=12]] | OptionalInt[4] | true\n",
                answer.out());
        assertEquals("", answer.err());
        assertEquals(0, answer.status());
    }

    @Test
    void givesDefaultsAndEmptyValuesForWhatIsAbsent() {
        assertEquals(
                "A | M-1 | 5 | [] | Optional.empty | [] | Optional.empty | OptionalInt.empty | false\n",
                desk.type("bs", "A", "--on", "M-1").out());
        assertEquals(
                "J-1 | Optional[2024-03-01] | [tray]\n",
                desk.type("bench", "look", "J-1", "today").out());
    }

    @Test
    void gathersSharedOptionsInARecord() {
        assertEquals(
                "Optional[trays] | Optional[2023-05-01] | CSV\n",
                desk.type("bench", "count", "--as-of", "2023-05-01", "trays", "-f", "csv")
                        .out());
        assertEquals(
                "Optional.empty | Optional.empty | TABLE\n",
                desk.type("bench", "count").out());
    }

    @Test
    void neverSplitsOrGluesWhatTheSystemHandsOver() {
        assertEquals(
                "two  words # 'x | Optional.empty | [mother]\n",
                desk.type("bench", "look", "two  words # 'x", "--by", "mother").out());
    }

    /** The texts are the product: what, where, what was expected, the nearest. */
    @ParameterizedTest
    @CsvSource(delimiter = '~', textBlock = """
            bench sett A             ~ no command "bench sett"; nearest: bench set
            bnech                    ~ no command "bnech"; nearest: bench
            bnech sit A              ~ no command "bnech"; nearest: bench set
            harvest                  ~ no command "harvest"; "help" lists them
            bench                    ~ "bench" is not a whole command; it goes on with count, look, set
            bench xyz                ~ no command "bench xyz"; bench goes on with count, look, set
            othre                    ~ no command "othre"; nearest: other
            --dry                    ~ "--dry" is no command; a line begins with one
            bs A --onn M             ~ bench set has no option --onn; nearest: --on
            bs A -x M                ~ bench set has no option -x; it has --on, --count, --cut, --day, --note, --stem, --high, --dry-run
            bs A -count 3            ~ bench set has no option -count; nearest: --count
            bs A --dry               ~ bench set has no option --dry; nearest: --dry-run
            bs A --hihg=1            ~ bench set has no option --hihg; nearest: --high
            other --x                ~ other has no option --x; it has none
            bs A                     ~ bench set needs --on TEXT; expected: bench set LABEL… --on TEXT [--count N] [--cut CUT]… [--day DAY] [--note TEXT]… [--stem STEM] [--high N] [--dry-run]
            bs --on M                ~ bench set needs a LABEL; expected: bench set LABEL… --on TEXT [--count N] [--cut CUT]… [--day DAY] [--note TEXT]… [--stem STEM] [--high N] [--dry-run]
            bs A --on                ~ --on of bench set needs a value: TEXT
            bs A --on --dry-run      ~ --on of bench set needs a value: TEXT
            bs A --on M --on N       ~ --on of bench set is given twice
            bs A --on M --dry-run=no ~ --dry-run of bench set takes no value
            bs A --on M -n x         ~ --count of bench set: "x" is not a whole number
            bs A --on M -n 3000000000 ~ --count of bench set: 3000000000 is out of range; expected -2147483648 to 2147483647
            bs A --on M -c tonge     ~ --cut of bench set: no "tonge"; expected one of full-ring, ring-with-bridge, tongue; nearest: tongue
            bs A --on M --stem 12    ~ --stem of bench set: "12" is no stem; expected 12mm
            bs A --on M --day 3.4.24 ~ --day of bench set: "3.4.24" is not a day; expected yyyy-mm-dd, today or yesterday
            bs A --on M --day 2023-02-29 ~ --day of bench set: there is no day 2023-02-29
            bench look               ~ bench look needs a TEXT; expected: bench look TEXT [DAY] [--by WHAT]…
            bench look A today B     ~ "B" is too much for bench look; expected: bench look TEXT [DAY] [--by WHAT]…
            bench look A --by moter  ~ --by of bench look: no "moter"; expected one of tray, mother; nearest: mother
            bench count --as-of 1850-01-01 ~ --as-of 1850-01-01 is before any book
            bench count --fromat csv ~ bench count has no option --fromat; nearest: --format
            number 1,5               ~ N of number: "1,5" is not a number; write 1.5
            number NaN               ~ N of number: "NaN" is not a number
            help bench sit           ~ no command "bench sit"; nearest: bench set
            - version                ~ "version" is too much; a script takes no words
            """)
    void refusesAWrongLineInOneLine(String line, String expected) {
        Desk.Answer answer = desk.type(line.split(" +"));
        assertEquals("ortet: " + expected + "\n", answer.err());
        assertEquals("", answer.out());
        assertEquals(2, answer.status());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '~', textBlock = """
            file  ~ 1 ~ ortet: no file day.csv
            io    ~ 1 ~ ortet: the stick is gone
            busy  ~ 1 ~ ortet: the book is busy; try again
            defect ~ 1 ~ ortet: a fault in ortet itself: order 7 after 8 (ORTET_TRACE=1 shows where)
            usage ~ 2 ~ ortet: not like this
            badly ~ 1 ~ ortet: a fault in ortet itself: IllegalStateException: broken badly (ORTET_TRACE=1 shows where)
            """)
    void tellsAFailureInOneLine(String how, int status, String expected) {
        Desk.Answer answer = desk.type("fail", how);
        assertEquals(expected + "\n", answer.err());
        assertEquals(status, answer.status());
    }

    @Test
    void tellsEveryFaultOfARefusalOnItsOwnLine() {
        Desk.Answer answer = desk.type("fail", "twice");
        assertEquals("ortet: day.csv:2:5: no cultivar\nortet: day.csv:3:5: no place\n", answer.err());
        assertEquals(1, answer.status());
    }

    @Test
    void tellsWhatKeptACommandsBeanFromBeingMade() {
        assertEquals(new Desk.Answer(1, "", "ortet: the book is away\n"), desk.type("away"));
    }

    @Test
    void tellsWhatKeptTheProgramFromStarting() {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Screen screen = new Screen(
                OutputStream.nullOutputStream(), err, new Surroundings(false, false, false, 80, true, false, false));
        assertEquals(1, Front.couldNotStart(new BeanCreationException("clock", new Unavailable("no clock")), screen));
        assertEquals("ortet: no clock\n", err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void showsWhereAFaultCameFromOnlyWhenAsked() {
        Surroundings asked = new Surroundings(false, false, false, 80, true, false, true);
        assertTrue(desk.run(asked, "", "fail", "io").err().contains("\tat ortet.line.BenchCommands.fail"));
        assertFalse(desk.type("fail", "io").err().contains("\tat "));
    }

    @ParameterizedTest
    @CsvSource({"0,0", "1,1", "2,2", "-1,1", "-2,2", "-3,2", "7,2"})
    void endsWithAStatusOfOurs(String code, int status) {
        assertEquals(status, desk.type("status", code).status());
    }

    @Test
    void makesOnlyTheBeansOfTheCalledCommand() {
        try (Desk fresh = Desk.open(BenchCommands.Wiring.class)) {
            fresh.type("bench", "look", "A");
            assertTrue(fresh.isMade(BenchCommands.class));
            assertFalse(fresh.isMade(BenchCommands.OtherCommands.class));
            fresh.type("other");
            assertTrue(fresh.isMade(BenchCommands.OtherCommands.class));
        }
    }

    @Test
    void runsAScriptLineByLine() {
        Desk.Answer answer = desk.script("\ufeffother\r\n\n# a comment\nbench look \\\n  'two words'\nnumber -.5");
        assertEquals("other\ntwo words | Optional.empty | [tray]\n-0.5\n", answer.out());
        assertEquals("", answer.err());
        assertEquals(0, answer.status());
    }

    @Test
    void stopsAScriptAtTheFirstFailureAndCountsContinuedLinesFromTheirFirst() {
        Desk.Answer answer = desk.script("other\nother\n\nbench look \\\n  A \\\n --by nothing\nother\n");
        assertEquals("other\nother\n", answer.out());
        assertEquals("""
                ortet: standard input:4: --by of bench look: no "nothing"; expected one of tray, mother
                ortet: standard input: stopped at line 4; 2 commands were done before it, none after
                """, answer.err());
        assertEquals(2, answer.status());
    }

    @Test
    void saysTheLineOfEveryFaultAndKeepsItsStatus() {
        Desk.Answer answer = desk.script("other\nfail twice\n");
        assertEquals("""
                ortet: standard input:2: day.csv:2:5: no cultivar
                ortet: standard input:2: day.csv:3:5: no place
                ortet: standard input: stopped at line 2; 1 command was done before it, none after
                """, answer.err());
        assertEquals(1, answer.status());
    }

    @Test
    void readsAScriptFromAFileAndNamesIt(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("day ü.txt");
        Files.writeString(file, "other\nbench look \"open\n");
        Desk.Answer answer = desk.type("@" + file);
        assertEquals("other\n", answer.out());
        assertTrue(answer.err().startsWith("ortet: " + file + ":2: the \" at column 12 is not closed\n"), answer.err());
        assertEquals(2, answer.status());
    }

    @Test
    void refusesALineThatIsNotUtf8() {
        byte[] latin = "other\nbench look \u00e9\n".getBytes(StandardCharsets.ISO_8859_1);
        Desk.Answer answer = desk.run(new Surroundings(false, false, false, 80, true, false, false), latin);
        assertEquals("other\n", answer.out());
        assertTrue(answer.err().startsWith("ortet: standard input:2: the line is not UTF-8\n"), answer.err());
        assertEquals(2, answer.status());
    }

    @Test
    void couldNotReadAScriptThatIsNotThere() {
        Desk.Answer answer = desk.type("@nowhere/day.txt");
        assertEquals("ortet: no file nowhere/day.txt\n", answer.err());
        assertEquals(1, answer.status());
        assertEquals(1, desk.type("@.").status());
    }

    @Test
    void isDoneWithAnEmptyScript() {
        assertEquals(new Desk.Answer(0, "", ""), desk.script("\n# nothing\n"));
    }

    @Test
    void refusesAScriptThatEndsInTheMiddleOfALine() {
        assertEquals(2, desk.script("bench look \\").status());
    }

    @Test
    void couldNotWriteWhenTheDiskIsFullButIsQuietWhenTheReaderIsGone() {
        assertEquals(1, into("No space left on device").status());
        assertEquals(
                "ortet: the answer could not be written: No space left on device\n",
                into("No space left on device").err());
        assertEquals(new Desk.Answer(0, "", ""), into("Broken pipe"));
    }

    private static Desk.Answer into(String trouble) {
        OutputStream broken = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException(trouble);
            }
        };
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Screen screen = new Screen(broken, err, new Surroundings(false, false, false, 80, true, false, false));
        int status = desk.bean(Front.class).run(List.of("other"), InputStream.nullInputStream(), screen);
        return new Desk.Answer(status, "", err.toString(StandardCharsets.UTF_8));
    }
}
