package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.Desk;
import ortet.seeds.LargeSpreadsheets;

/** A nursery's own spreadsheets go in from the line, into a real book, and what is told of it can be acted on. */
class ImportCommandsTests {
    private static final Path NURSERIES = Path.of("../graph/core/src/test/resources/spreadsheets");

    @TempDir
    Path folder;

    private BookDesk desk;

    @BeforeEach
    void open() {
        desk = new BookDesk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    /** Copy the spreadsheets of an invented nursery and their mapping, and return the mapping's file. */
    private Path copied(String nursery) throws IOException {
        Path to = Files.createDirectories(folder.resolve(nursery));
        try (Stream<Path> files = Files.list(NURSERIES.resolve(nursery))) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
        return to.resolve("mapping.txt");
    }

    private Path file(String name, String... lines) throws IOException {
        return Files.writeString(folder.resolve(name), String.join("\n", lines) + "\n");
    }

    private Path mapping() throws IOException {
        return file(
                "mapping.txt",
                "sheet trees",
                "files = trees*.csv",
                "row = plant",
                "column Tag = tag",
                "column How = method",
                "column Mother = mother",
                "column Set = begun day",
                "column Off = severed day",
                "column Now = outcome");
    }

    private String shown(String text) {
        return text.replace(folder + "/", "").replaceAll("\\s+", " ");
    }

    @Test
    void tellsWhatWentInByFileAndKindAndWhatToDoNext() throws IOException {
        Path mapping = mapping();
        file(
                "trees 1.csv",
                "Tag,How,Mother,Set,Off,Now",
                "L-1,layer,K-1,2019-05-01,2019-09-01,",
                "L-2,layer,K-1,2019-05-01,,pending");
        file("trees 2.csv", "Tag,How,Mother,Set,Off,Now", "K-1,acquired,,2010,,", "K-1,acquired,,2010,,");
        String checked = shown(desk.done("book import --mapping " + mapping + " --check"));
        assertEquals(
                "trees 1.csv: 2 rows as sheet trees 2 hold, and would become 2 layer set, 1 severed trees 2.csv: 2 rows as sheet trees 1"
                        + " holds, and would become 1 acquired 1 says what another says, and counts once 4 entries would be written, 3"
                        + " plants, layers and batches begun every row holds; without --check it is written ",
                checked);
        String written = shown(desk.done("book import --mapping " + mapping));
        assertTrue(written.endsWith("4 entries written, 3 plants, layers and batches begun "), written);
        String again = shown(desk.done("book import --mapping " + mapping));
        assertTrue(
                again.endsWith("0 entries written, 0 plants, layers and batches begun; 4 entries were there already "),
                again);
    }

    @Test
    void tellsEveryFaultWritesNothingAndListsThemInAFile() throws IOException {
        Path mapping = copied("ledger");
        Path list = folder.resolve("faults.csv");
        Desk.Answer answer = desk.type("book import --mapping " + mapping + " --faults " + list);
        assertEquals(1, answer.status());
        String out = shown(answer.out());
        assertTrue(
                out.contains(
                        "ledger/trees.csv: 23 rows as sheet trees 16 hold, and would become 8 layer set, 6 severed"),
                out);
        assertTrue(out.contains("1 says what another says, and counts once 6 have a fault"), out);
        assertTrue(out.contains("Why 6 rows do not hold: 2 × two rows about one plant that do not agree"), out);
        List<String> err = shown(answer.err().replace("\n", "⏎")).transform(text -> List.of(text.split("⏎")));
        assertEquals(7, err.size());
        assertEquals("ortet: ledger/trees.csv:9:Date set: there is no day 31/02/2020", err.get(0));
        assertEquals(
                "ortet: 6 faults; nothing was written; mend the rows, or the mapping, and import again, or take the 16 rows that"
                        + " hold with --what-holds; faults.csv has all of them",
                err.get(6));
        List<String> rows = Files.readAllLines(list);
        assertEquals("\uFEFFfile,row,column,what,expected,nearest,rule", rows.get(0));
        assertEquals(
                mapping.resolveSibling("trees.csv") + ",9,Date set,there is no day 31/02/2020,,,bad-day", rows.get(1));
        assertEquals(7, rows.size());
        assertTrue(desk.done("book info --format csv").contains("entries,0"));
    }

    @Test
    void takesTheRowsThatHoldWhenAsked() throws IOException {
        Path mapping = copied("ledger");
        String out = shown(desk.done("book import --mapping " + mapping + " --what-holds"));
        assertTrue(out.contains("ledger/trees.csv:9:Date set: there is no day 31/02/2020"), out);
        assertTrue(
                out.endsWith(
                        "28 entries written, 17 plants, layers and batches begun, 2 new persons 6 rows are left out; mend them"
                                + " and import the same files again: what is there already adds nothing "),
                out);
    }

    @Test
    void showsTheFirstOfManyFaultsAndExamplesOfEachSort() throws IOException {
        Path mapping = mapping();
        String[] rows = new String[60];
        rows[0] = "Tag,How,Mother,Set,Off,Now";
        for (int row = 1; row < rows.length; row++) {
            rows[row] = "L-" + row + ",layer,K-1," + (row % 2 == 0 ? "2019-13-01" : "tomorrow") + ",,";
        }
        file("trees.csv", rows);
        Desk.Answer answer = desk.type("book import --mapping " + mapping);
        assertEquals(1, answer.status());
        assertEquals(21, answer.err().lines().count());
        assertTrue(
                shown(answer.err())
                        .endsWith(
                                "ortet: and 39 more: 59 faults; nothing was written; mend the rows, or the mapping, and import"
                                        + " again; --faults FILE lists all of them "),
                answer.err());
        assertTrue(
                shown(answer.out())
                        .contains(
                                "59 × a day that cannot be read trees.csv:2:Set: expected a day as 2021-05-13 or 2021-05 or 2021,"
                                        + " found \"tomorrow\" trees.csv:3:Set: there is no day 2019-13-01"),
                answer.out());
    }

    // ---- the book that comes of it ----

    @Test
    void tracesATreeToItsMotherThroughEverySheet() throws IOException {
        Path mapping = copied("benches");
        desk.done("book import --what-holds --mapping " + mapping);
        assertEquals("""
                A13  Juniperus chinensis 'Shimpaku'  [growing]
                │ 2018-05-22  layer set: stem 12 mm, ring 14 mm
                │ 2018-12-31  severed: “the day is not known: severed by then”
                │ 2019-06-01  moved to Bench 4
                └ mother M2  Juniperus chinensis 'Shimpaku'  [growing]
                    2009        acquired at Bed 1: cultivar Juniperus chinensis 'Shimpaku'

                origin: earliest known M2, acquired (2009), origin unknown
                as of 2026-06-15; 2 units traced
                """, desk.done("trace A13"));
        assertTrue(desk.done("trace A210").startsWith("A210 (before: A10, A110)"));
        String continental = desk.done("book import --what-holds --mapping " + copied("continental"));
        assertFalse(continental.isEmpty());
        String graft = desk.done("trace G3");
        assertTrue(graft.contains("P4") && graft.contains("Kokonoe"), graft);
        assertTrue(desk.done("book check").startsWith("all is well"));
    }

    @Test
    void countsNoOutcomeWithoutASettingInARate() throws IOException {
        Path mapping = mapping();
        file(
                "trees.csv",
                "Tag,How,Mother,Set,Off,Now",
                "K-1,acquired,,2010,,",
                "L-1,layer,K-1,2019-05-01,2019-09-01,",
                "L-2,layer,K-1,,2019-09-01,",
                "L-3,layer,K-1,2019-05-01,,failed",
                "");
        Desk.Answer refused = desk.type("book import --mapping " + mapping);
        assertEquals(1, refused.status());
        file(
                "trees.csv",
                Files.readString(folder.resolve("trees.csv"))
                        .strip()
                        .replace("2019-05-01,,failed", "2019-05-01,,failed")
                        .replace("L-3,layer,K-1,2019-05-01,,failed", "L-3,layer,K-1,2019-05-01,2019-09-02,failed"));
        desk.done("book import --mapping " + mapping);
        assertTrue(desk.done("trace L-2").contains("K-1"));
        String take = desk.type("take --by mother --format csv").out();
        assertTrue(take.contains("\nK-1,2,1,1,"), take);
    }

    @Test
    void takesTheSpreadsheetsOfALargeNurseryWithoutAFault() throws IOException {
        Path large = Files.createDirectory(folder.resolve("large"));
        LargeSpreadsheets.write(1_000, 7, large);
        String out = shown(desk.done("book import --mapping " + large.resolve("mapping.txt")));
        assertTrue(out.contains("large/plants.csv: 1,052 rows as sheet plants"), out);
        assertFalse(out.contains("fault"), out);
        assertTrue(desk.done("book check").startsWith("all is well"));
    }

    // ---- which files ----

    @Test
    void readsFilesInAnyOrderAndOnlyThoseThatAreNamed() throws IOException {
        Path mapping = copied("trays");
        Path trays = mapping.resolveSibling("trays.csv");
        Path drawn = mapping.resolveSibling("drawn.csv");
        String one = shown(desk.done("book import --what-holds --mapping " + mapping + " " + drawn + " " + trays));
        assertTrue(one.contains("trays/trays.csv: 7 rows") && one.contains("trays/drawn.csv: 7 rows"), one);
        assertFalse(one.contains("checks.csv: 5 rows"), one);
        assertTrue(one.contains("no file was given for sheet checks (checks*.csv)"), one);
    }

    @Test
    void namesAFileThatIsNotThere() throws IOException {
        Path mapping = copied("trays");
        assertEquals(
                "ortet: there is no file " + mapping.resolveSibling("tray.csv") + "; nearest: trays.csv\n"
                        + "ortet: 1 fault; nothing was written\n",
                desk.refused("book import --mapping " + mapping + " " + mapping.resolveSibling("tray.csv")));
        Path lonely = Files.copy(
                mapping, Files.createDirectories(folder.resolve("lonely")).resolve("mapping.txt"));
        assertTrue(desk.refused("book import --mapping " + lonely)
                .startsWith("ortet: no file beside " + lonely
                        + " is a sheet of it; its lines of files have trays.csv, checks*.csv, drawn*.csv, losses*.csv,"
                        + " stems*.csv; expected such a file there, or the files behind the mapping on the line"));
    }

    @Test
    void tellsWhatIsWrongWithTheMappingByLine() throws IOException {
        Path mapping = file("m.txt", "sheet trees", "files = trees.csv", "row = tree", "colum Tag = tag");
        assertEquals(
                "ortet: m.txt:3: a row is no \"tree\"; expected plant, outcome, entry, or a kind of entry such as potted, moved, sold"
                        + " or lost ortet: m.txt:4: no line of a mapping reads \"colum Tag\"; nearest: column ortet: 2"
                        + " faults; nothing was written ",
                shown(desk.refused("book import --mapping " + mapping)));
    }

    @Test
    void refusesToWriteTheListOfFaultsOverAnythingElse() throws IOException {
        Path mapping = copied("ledger");
        Path trees = mapping.resolveSibling("trees.csv");
        assertEquals(
                "ortet: " + trees + " is there already and is no list of faults; expected a new file\n",
                desk.refused("book import --mapping " + mapping + " --faults " + trees));
    }

    // ---- guess ----

    @Test
    void proposesAMappingThatReadsBack() throws IOException {
        Path ledger = copied("continental").getParent();
        Path guess = folder.resolve("guess.txt");
        String files = ledger.resolve("grafts.csv") + " '" + ledger.resolve("sales 2018.csv") + "' '"
                + ledger.resolve("stock list.csv") + "'";
        String shown = desk.done("book import --guess " + files);
        assertTrue(
                shown.startsWith("# A mapping that was guessed from grafts.csv, sales 2018.csv, stock list.csv.\n"),
                shown);
        String said = shown(desk.done("book import --guess " + files + " --mapping " + guess));
        assertEquals(
                "Proposed a mapping: guess.txt. It is a beginning: look at every line, above all at the remarks (#), then try it:"
                        + " ortet book import --mapping guess.txt --check ",
                said);
        assertEquals(shown, Files.readString(guess));
        assertEquals(
                "ortet: " + guess + " is there already\n",
                desk.refused("book import --guess " + files + " --mapping " + guess));
        Desk.Answer answer = desk.type("book import --mapping " + guess + " --check --what-holds " + files);
        assertEquals(0, answer.status(), answer::err);
        assertTrue(shown(answer.out()).contains("23 entries would be written"), answer.out());
    }

    // ---- wrong usage ----

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "book import | book import needs a FILE, or --mapping FILE; expected: book import FILE…, book import --mapping FILE"
                        + " [FILE…], or book import --guess FILE…",
                "book import --guess --mapping m.txt | book import needs a FILE, or --mapping FILE; expected: book import FILE…, book"
                        + " import --mapping FILE [FILE…], or book import --guess FILE…",
                "book import a.csv --guess --check | --check of book import: not with --guess, which writes nothing into the book",
                "book import a.csv --guess --faults f.csv | --faults of book import: not with --guess, which writes nothing into the"
                        + " book",
                "book import a.csv --what-holds | --what-holds of book import: only with --mapping; a day book is all or nothing",
                "book import --mapping m.txt --source s | --source of book import: not with --mapping, whose sheets have names of"
                        + " their own",
            })
    void saysWhatDoesNotGoTogether(String line, String told) {
        assertEquals("ortet: " + told + "\n", desk.wrong(line));
    }

    // ---- day books ----

    @Test
    void listsTheFaultsOfADayBookToo() throws IOException {
        Path list = folder.resolve("faults.csv");
        Path book = file("day-book.csv", "day,kind,tags", "2019,acquired,K-1", "2019,acquird,K-2", "2099,acquired,K-3");
        Desk.Answer answer = desk.type("book import " + book + " --faults " + list);
        assertEquals(1, answer.status());
        assertTrue(
                shown(answer.err()).endsWith("ortet: 1 fault; nothing was written; faults.csv has it "), answer.err());
        assertTrue(Files.readAllLines(list).get(1).startsWith(book + ",3,kind,"), () -> "the list is wrong");
        Path good = file("good.csv", "day,kind,tags", "2019,acquired,K-1");
        desk.done("book import " + good + " --faults " + list);
        assertEquals(1, Files.readAllLines(list).size(), "an old list must not stay");
    }
}
