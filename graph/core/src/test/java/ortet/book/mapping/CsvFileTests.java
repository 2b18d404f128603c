package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.book.daybook.Source;

/** What a spreadsheet program writes, and what people do to it, is read. */
class CsvFileTests {
    private static final String[] MAPPING = {
        "sheet seen", "files = a*.csv", "row = seen", "column Tag = tag", "column Day = day", "maybe Where = place"
    };
    private static final String[] STOCK = {
        "sheet stock", "files = stock.csv", "row = acquired", "column T = tag", "otherwise day = 2019"
    };

    private static Sheets sheets(String... more) {
        Sheets sheets = new Sheets(String.join("\n", MAPPING) + "\n" + String.join("\n", more), "");
        new StockOnly(sheets);
        return sheets;
    }

    /** Puts two plants into the book, so that something can be seen. */
    private record StockOnly(Sheets sheets) {
        StockOnly {
            sheets.diary().write("2019-01-01 acquired J-1", "2019-01-01 acquired J-2");
        }
    }

    private static List<String> seen(Sheets sheets, Source file) {
        Imported imported = sheets.write(List.of(file));
        assertEquals(List.of(), Sheets.lines(imported));
        return sheets.entries().stream().filter(line -> line.contains(" seen ")).toList();
    }

    private static final List<String> BOTH =
            List.of("2020-05-03 seen tags=J-1 place=House 1", "2020-05-04 seen tags=J-2");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Tag,Day,Where\nJ-1,2020-05-03,House 1\nJ-2,2020-05-04,\n",
                "\uFEFFTag,Day,Where\r\nJ-1,2020-05-03,House 1\r\nJ-2,2020-05-04\r\n",
                "Tag;Day;Where\nJ-1;2020-05-03;House 1\nJ-2;2020-05-04;",
                "Tag\tDay\tWhere\rJ-1\t2020-05-03\tHouse 1\rJ-2\t2020-05-04\t\r",
                "TAG | day | WHERE \n J-1 | 2020-05-03 | House 1 \n J-2 | 2020-05-04 | \n",
                "\"Tag\",\"Day\",\"Where\"\n\"J-1\",\"2020-05-03\",\"House 1\"\n\"J-2\",\"2020-05-04\",\"\"\n",
                "seen in May,,\n,,\nTag,Day,Where\n,,\nJ-1,2020-05-03,House 1\n,,\nJ-2,2020-05-04,\n,,\n",
                "Where,,Day,Tag\nHouse 1,,2020-05-03,J-1\n,,2020-05-04,J-2\n",
                "Tag,Day,Where\nJ-1,2020-05-03,'House 1\nJ-2,2020-05-04,\n",
                "Tag,Day,Where\nJ-1,2020-05-03,House 1,,,\nJ-2,2020-05-04,,,,\nTag,Day,Where\n"
            })
    void readsTheSameHoweverItIsWritten(String text) {
        List<String> found = seen(sheets(), Sheets.file("a.csv", text.getBytes(StandardCharsets.UTF_8)));
        assertEquals(
                BOTH,
                found.stream().map(line -> line.replace("'House", "House")).toList());
    }

    @Test
    void readsWindows1252WhereTheMappingSaysSo() {
        byte[] bytes = "Tag,Day,Where\nJ-1,2020-05-03,Glás 1\n".getBytes(Charset.forName("windows-1252"));
        assertEquals(
                List.of("2020-05-03 seen tags=J-1 place=Glás 1"),
                seen(sheets("encoding = windows-1252"), Sheets.file("a.csv", bytes)));
        assertEquals(
                List.of(
                        "a.csv:2: expected text in UTF-8, found the byte 0xE1; save the file as CSV in UTF-8, or say encoding ="
                                + " windows-1252 in the mapping"),
                sheets().faults(List.of(Sheets.file("a.csv", bytes))));
    }

    @Test
    void readsUtf8ByItsMarkWhateverTheMappingSays() {
        byte[] bytes = "\uFEFFTag,Day,Where\nJ-1,2020-05-03,Glás 1\n".getBytes(StandardCharsets.UTF_8);
        assertEquals(
                List.of("2020-05-03 seen tags=J-1 place=Glás 1"),
                seen(sheets("encoding = windows-1252"), Sheets.file("a.csv", bytes)));
    }

    @Test
    void refusesASpreadsheetsOwnFile() {
        assertEquals(
                List.of("a.csv:1: expected text, found a spreadsheet or archive; save the sheet as CSV in UTF-8"),
                sheets().faults(List.of(Sheets.file("a.csv", new byte[] {'P', 'K', 3, 4, 0, 0}))));
    }

    @Test
    void tellsAQuotationMarkThatIsNotClosed() {
        assertEquals(
                List.of(
                        "a.csv:3:Where: a quotation mark opens a cell that nothing closes; expected a quotation mark inside a"
                                + " quoted cell to stand twice (\"\")"),
                sheets().faults("Tag,Day,Where", "J-1,2020-05-03,House 1", "J-2,2020-05-04,\"House 2"));
    }

    @Test
    void tellsCellsBeyondTheHeader() {
        assertEquals(
                List.of(
                        "a.csv:2: more cells than the header has (3); expected a text that holds the separator to stand in"
                                + " quotation marks"),
                sheets().faults("Tag,Day,Where", "J-1,2020-05-03,House 1, east side"));
    }

    @Test
    void tellsAMissingColumnWithTheNearest() {
        assertEquals(
                List.of(
                        "a.csv:1:Day: there is no such column, which line 5 of the mapping reads; where only some files have it,"
                                + " the mapping says maybe instead of column; nearest: Days, Tag"),
                sheets().faults("Tag,Days,Where", "J-1,2020-05-03,House 1"));
        assertEquals(
                List.of(
                        "a.csv:1: expected a header with columns such as Tag, Day, Where (sheet seen of the mapping); a file"
                                + " without one needs header = none there"),
                sheets().faults("J-1,2020-05-03,House 1"));
    }

    @Test
    void callsColumnsByTheirLettersWhereThereIsNoHeader() {
        Sheets sheets = new Sheets(
                "sheet seen", "files = a.csv", "row = seen", "header = none", "column (B) = tag", "column (A) = day");
        sheets.diary().write("2019 acquired J-1");
        sheets.write("2020-05-03,J-1");
        assertEquals(List.of("2019 acquired tags=J-1", "2020-05-03 seen tags=J-1"), sheets.entries());
        assertEquals("(Z)", CsvFile.letter(25));
        assertEquals("(AA)", CsvFile.letter(26));
        assertEquals("(AZ)", CsvFile.letter(51));
    }

    @Test
    void takesTheFirstOfSeveralNamesThatAColumnMayHave() {
        Sheets sheets = new Sheets(
                "sheet seen", "files = a*.csv", "row = seen", "column Tag, Label = tag", "column Day, When = day");
        sheets.diary().write("2019 acquired J-1..J-2");
        sheets.write(
                List.of(Sheets.file("a1.csv", "Tag,Day", "J-1,2020"), Sheets.file("a2.csv", "When,Label", "2021,J-2")));
        assertTrue(sheets.entries().contains("2020 seen tags=J-1"));
        assertTrue(sheets.entries().contains("2021 seen tags=J-2"));
    }

    @Test
    void remarksOnColumnsThatNobodyReads() {
        Imported imported = sheets().write("Tag,Day,Where,Weather,Empty", "J-1,2020-05-03,House 1,wet,");
        assertEquals(
                List.of(
                        "a.csv:1:Weather: the mapping does not read this column; a line leave out = Weather says that it need"
                                + " not"),
                Sheets.remarks(imported));
        assertEquals(
                List.of(),
                Sheets.remarks(sheets("leave out = weather").write("Tag,Day,Where,Weather", "J-1,2020-05-03,,wet")));
    }

    @Test
    void tellsAFileThatIsNoSheetOrMoreThanOne() {
        assertEquals(
                List.of("trees.csv is no sheet of the mapping; its lines of files have a*.csv"),
                sheets().faults(List.of(Sheets.file("trees.csv", "Tag"))));
        assertEquals(
                List.of(
                        "a1.csv would be more than one sheet: seen, other; expected one whose line of files has its name"),
                sheets("sheet other", "files = a1.csv", "row = seen", "column T = tag", "column D = day")
                        .faults(List.of(Sheets.file("a1.csv", "Tag,Day"))));
    }

    @Test
    void remarksOnASheetThatNoFileWasGivenFor() {
        Sheets sheets =
                new Sheets(String.join("\n", MAPPING).replace("Where", "Where") + "\n" + String.join("\n", STOCK));
        Imported imported = sheets.write(List.of(Sheets.file("stock.csv", "T", "J-1")));
        assertEquals(List.of("mapping.txt:1: no file was given for sheet seen (a*.csv)"), Sheets.remarks(imported));
    }

    @Test
    void leavesOutRowsThatTheMappingSkips() {
        Sheets sheets = sheets("skip Tag = Total, Sum");
        Imported imported = sheets.write("Tag,Day,Where", "J-1,2020-05-03,", "total,,", "SUM,17,");
        assertEquals(2, imported.files().get(0).leftOut());
        assertEquals(1, imported.files().get(0).taken());
    }
}
