package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import ortet.book.Progress;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.plant.Person.Role;
import ortet.value.Refused;
import ortet.value.Unavailable;

class DayBookFaultTests {
    private final Desk desk = new Desk();

    private List<String> refusal(Path... files) {
        return assertThrows(
                        Refused.class,
                        () -> desk.diary()
                                .store()
                                .read(view -> DayBook.read(List.of(files), Optional.empty(), view, Progress.NONE)))
                .lines();
    }

    @Test
    void namesUnknownColumnsWithTheNearest() {
        assertEquals(
                List.of(
                        "a.csv:1:contaner: a day book has no such column; nearest: container",
                        "a.csv:1:stem: a day book has no such column; nearest: stem_mm",
                        "a.csv:1:wxyz: a day book has no such column"),
                desk.faults("day,kind,tags,contaner,stem,wxyz", "2021,potted,J-1,2 L,,"));
    }

    @Test
    void namesAColumnInOneLineOfBearableLength() {
        assertEquals(
                List.of(
                        "a.csv:1:what_is_this: a day book has no such column",
                        "a.csv:1:" + "x".repeat(40) + "…: a day book has no such column"),
                desk.faults("day,kind,tags,\"what\nis \u0007this\"," + "x".repeat(41), "2021,seen,J-1"));
        assertEquals(
                1,
                desk.read("day,kind,tags,\"stem", "mm\"", "2021,measured,J-1,12")
                        .entries());
    }

    @Test
    void namesAColumnThatStandsTwice() {
        assertEquals(
                List.of("a.csv:1:day: stands twice in the header, as column 1 and column 4; expected once"),
                desk.faults("day,kind,tags,Day", "2021,seen,J-1,2022"));
    }

    @Test
    void namesColumnsThatMustBeThere() {
        assertEquals(
                List.of("a.csv:1:kind: the header has no such column; a day book must have day and kind"),
                desk.faults("day,tags", "2021,J-1"));
        assertEquals(
                List.of("a.csv:1:kid: a day book has no such column; nearest: kind"),
                desk.faults("day,tags,kid", "2021,J-1,seen").stream()
                        .map(line -> line.replaceAll("(nearest: kind).*", "$1"))
                        .toList());
    }

    @Test
    void namesAColumnThatAKindMustHaveOnce() {
        assertEquals(
                List.of("a.csv:1:mother: the header has no such column; layer-set in line 3 must have it"),
                desk.faults("day,kind,tags", "2021,seen,J-1", "2021,layer-set,J-2", "2021,layer-set,J-3"));
    }

    @Test
    void expectsAHeader() {
        String expected = "expected a header row with the names of columns such as day, kind, tags";
        assertEquals(List.of("a.csv:1: there is nothing to read; " + expected), desk.faults(Desk.file("a.csv", "")));
        assertEquals(List.of("a.csv:1: there is nothing to read; " + expected), desk.faults("", " ", ""));
        assertEquals(List.of("a.csv:1: there is nothing to read; " + expected), desk.faults(" , ; ,", "\t;;", ""));
        assertEquals(
                List.of("a.csv:2: " + expected + "; found \"2021-05-03, seen, J-1\""),
                desk.faults("", "2021-05-03,seen,J-1,", "2022,seen,J-1,"));
    }

    @Test
    void namesWhatARowLacks() {
        assertEquals(
                List.of(
                        "a.csv:2:day: must not be empty",
                        "a.csv:3:kind: must not be empty",
                        "a.csv:4:tags: must not be empty for potted",
                        "a.csv:4:container: must not be empty for potted"),
                desk.faults("day,kind,tags,container", ",seen,J-1,", "2021,,J-1,", "2021,potted,,"));
    }

    @Test
    void namesWhatEachCellShouldBe() {
        assertEquals(
                List.of(
                        "a.csv:2:day: expected a day such as 2021-05-03, a month 2021-05 or a year 2021, found \"3/5/2021\"",
                        "a.csv:2:tags: \"J 1!\" is no tag; expected letters, digits and - _ . / # without blanks, such as J-0140"
                                .replace("J 1!", "1!"),
                        "a.csv:2:mother: \"K:1\" is no tag; expected letters, digits and - _ . / # without blanks, such as J-0140",
                        "a.csv:2:stem_mm: expected a number such as 12 or 12.5, found \"12mm\"",
                        "a.csv:2:wound: no \"fullring\"; expected one of full-ring, ring-with-bridge, tongue, tourniquet; nearest: full-ring",
                        "a.csv:3:day: there is no day 2021-02-30",
                        "a.csv:3:stem_mm: expected above 0, found 0",
                        "a.csv:4:tags: J-1 is named twice",
                        "a.csv:5:by: expected a person's number such as #7, or a name, found \"7\"",
                        "a.csv:6:by: expected a person's number such as #7, or a name, found \"#x\""),
                desk.faults(
                        "day,by,kind,tags,mother,stem_mm,wound",
                        "3/5/2021,,layer-set,J 1!,K:1,12mm,fullring",
                        "2021-02-30,,layer-set,J-1,K-1,0,",
                        "2021,,seen,J-1 J-1,,,",
                        "2021,7,seen,J-1,,,",
                        "2021,#x,seen,J-1,,,"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "measured|stem_mm|1.234.5|expected a number such as 12 or 12.5, found \"1.234.5\"",
                "measured|positions|8to12|expected diameters in mm and a count such as 8-12:5, found \"8to12\"",
                "layer-set|strength|12.345ppm|expected a strength with at most 6 decimals in percent, found 0.0012345 %",
                "counted|count|12.5|expected a whole number, found \"12.5\"",
                "counted|count|0|expected at least 1, found 0",
                "checked|findings|callous|no \"callous\"; expected one of nothing, callus, roots-showing, root-ball-full,"
                        + " dry, dead; nearest: callus",
                "checked|findings|callus:x|expected a whole number, found \"x\" in \"callus:x\"",
                "sold|price|24.50|expected an amount such as 24.50 EUR, found \"24.50\"",
                "sold|price|24.505 EUR|expected at most 2 decimals for EUR, found \"24.505 EUR\"",
                "sold|customer|#0|expected a person's number such as #7, or a name, found \"#0\"",
                "retagged|new_tag|except|\"except\" is no tag: the word stands before tags to leave out",
                "redetermined|cultivar|deshojo|expected a botanical name such as Acer palmatum 'Deshojo', found \"deshojo\""
            })
    void namesWhatAValueShouldBe(String kind, String column, String value, String said) {
        assertEquals(
                List.of("a.csv:2:" + column + ": " + said),
                desk.faults("day\tkind\ttags\tmother\t" + column, mother("2021\t" + kind + "\tJ-1", kind) + value));
    }

    private static String mother(String row, String kind) {
        return row + "\t" + (kind.equals("layer-set") ? "K-1" : "") + "\t";
    }

    @Test
    void namesADayOnce() {
        assertEquals(
                List.of("a.csv:2:day: expected a year with four digits"),
                desk.faults("day,kind,tags", "0021,seen,J-1"));
    }

    @Test
    void namesAPersonNumberThatNobodyHas() {
        desk.diary().person(1, "Una Thornfield", Role.STAFF);
        Refused refused = assertThrows(Refused.class, () -> desk.write("day,by,kind,tags", "2021,#12,acquired,K-1"));
        assertEquals(List.of("a.csv:2: by: no person #12 in the book"), refused.lines());
    }

    @Test
    void namesAnUnknownKindWithTheNearest() {
        assertEquals(
                List.of(
                        "a.csv:2:kind: no kind of entry \"layr-set\"; expected a word such as acquired, layer-set or potted;"
                                + " nearest: layer-set",
                        "a.csv:3:kind: no kind of entry \"xyzzyxyzzy\"; expected a word such as acquired, layer-set or potted"),
                desk.faults("day,kind,tags", "2021,layr-set,J-1", "2021,xyzzyxyzzy,J-1"));
    }

    @Test
    void refusesACellThatTheKindDoesNotUse() {
        assertEquals(
                List.of("a.csv:3:container: must be empty, for seen has no such column; it has tags, place, note"),
                desk.faults("day,kind,tags,container", "2021,potted,J-1,2 L", "2021,seen,J-1,2 L"));
    }

    @Test
    void namesCellsBeyondTheHeader() {
        assertEquals(
                List.of(
                        "a.csv:2: more cells than the header has (4); expected a text that holds the separator to stand in"
                                + " quotation marks",
                        "a.csv:3:5: there is a text in column 5, which has no name; expected one in the header"),
                Stream.concat(
                                desk.faults("day,kind,tags,note", "2021,noted,J-1,one, two").stream(),
                                desk
                                        .faults("day,kind,tags,note,", "2021,noted,J-1,one", "2021,noted,J-1,one,two")
                                        .stream())
                        .toList());
    }

    @Test
    void namesTheRowWithAQuotationMarkThatNothingCloses() {
        assertEquals(
                List.of(
                        "a.csv:2:tags: must not be empty for seen",
                        "a.csv:3:note: a quotation mark opens a cell that nothing closes; expected one before the next separator"),
                desk.faults(
                        "day,kind,tags,note",
                        "2021,seen,,",
                        "2021,seen,J-1,\"open",
                        "2021,seen,J-1,",
                        "2021,seen,J-1,"));
    }

    @Test
    void namesTheRowWithAQuotationMarkThatIsNotDoubled() {
        assertEquals(
                List.of(
                        "a.csv:3:note: a quoted cell goes on after its closing quotation mark; expected a quotation mark"
                                + " inside it twice (\"\")"),
                desk.faults(
                        "day,kind,tags,note", "2021,seen,J-1,", "2021,seen,J-1,\"a \"good\" one\"", "2021,seen,J-1,"));
    }

    @Test
    void refusesWhatIsNotUtf8() {
        byte[] latin =
                "day,kind,tags,note\n2021,seen,J-1,\n2021,seen,J-1,Máire\n".getBytes(StandardCharsets.ISO_8859_1);
        assertEquals(
                List.of("a.csv:3: expected text in UTF-8, found the byte 0xE1; save the file as CSV in UTF-8"),
                desk.faults(Desk.file("a.csv", latin)));
        assertEquals(
                List.of("a.csv:1: expected text in UTF-8, found UTF-16; save the file as CSV in UTF-8"),
                desk.faults(Desk.file("a.csv", "\uFEFFday,kind\n".getBytes(StandardCharsets.UTF_16LE))));
        assertEquals(
                List.of("a.csv:1: expected text, found a spreadsheet or archive; save the sheet as CSV in UTF-8"),
                desk.faults(Desk.file("a.csv", new byte[] {'P', 'K', 3, 4, 20, 0})));
    }

    @Test
    void namesLinesThatCannotBeAmended() {
        assertEquals(
                List.of(
                        "a.csv:3:target: no row above this one begins in line 4; an entry is amended below the row that tells"
                                + " it; nearest: line:2",
                        "a.csv:4:target: no row above this one begins in line 1; an entry is amended below the row that tells"
                                + " it; nearest: line:2",
                        "a.csv:5:target: expected a line of this file such as line:12, found \"line:two\"",
                        "a.csv:6:target: expected an entry's identity of 36 characters, or a line of this file such as line:12,"
                                + " found \"2\""),
                desk.faults(
                        "day,kind,tags,target,reason",
                        "2021,seen,J-1,,",
                        "2021,crossed-out,,line:4,slip",
                        "2021,crossed-out,,line:1,slip",
                        "2021,crossed-out,,line:two,slip",
                        "2021,crossed-out,,2,slip"));
    }

    @Test
    void tellsOnlyTheFaultOfARowThatIsAmended() {
        assertEquals(
                List.of("a.csv:2:tags: must not be empty for seen"),
                desk.faults("day,kind,tags,target,reason", "2021,seen,,,", "2021,crossed-out,,line:2,slip"));
    }

    @Test
    void refusesOneIdentityForTwoEntries() {
        String id = "00000000-0000-4000-8000-000000000001";
        assertEquals(
                List.of("a.csv:3:entry: has the identity of a.csv:2 and other words; expected one row for each entry"),
                desk.faults("entry,day,kind,tags", id + ",2021,seen,J-1", id + ",2021,seen,J-2"));
        assertEquals(
                List.of("a.csv:2:entry: expected an entry's identity of 36 characters, found \"7\""),
                desk.faults("entry,day,kind,tags", "7,2021,seen,J-1"));
    }

    @Test
    void namesWhatIsWrongInAListOfPersons() {
        desk.diary().person(4, "Una Thornfield", Role.STAFF);
        desk.diary().person(5, "Bertil", Role.CUSTOMER);
        assertEquals(
                List.of(
                        "persons.csv:2:number: expected a person's number such as #7, found \"7\"",
                        "persons.csv:3:name: must not be empty, unless the person is erased",
                        "persons.csv:4:role: no \"boss\"; expected one of staff, customer, supplier, other",
                        "persons.csv:5:name: must be empty for a person who is erased",
                        "persons.csv:6:number: must not be empty for a person who is erased",
                        "persons.csv:7:erased: expected yes or no, found \"perhaps\"",
                        "persons.csv:8:name: expected a name, not a number, found \"#3\"",
                        "persons.csv:10:number: #8 stands in line 9 too",
                        "persons.csv:11:name: DEW stands in line 9 too"),
                desk.faults(
                        Desk.file(
                                "persons.csv",
                                "number,name,role,erased\n7,A,,\n,,staff,\n,B,boss,\n#6,C,,yes\n,,,yes\n,D,,perhaps\n,#3,,\n#8,Dew,,\n#8,E,,\n,DEW,,\n")));
        assertEquals(
                List.of(
                        "persons.csv:2:number: Una Thornfield is #4 in the book; expected that or nothing, found #9",
                        "persons.csv:3:number: #5 is Bertil in the book; expected no number for somebody new"),
                desk.faults(Desk.file("persons.csv", "number,name\n#9,Una Thornfield\n#5,F\n")));
    }

    @ParameterizedTest
    @EnumSource
    void namesWhatEveryKindMustHave(EntryKind kind) {
        String header = String.join(",", Columns.OF_DAY_BOOK.names());
        String row = String.join(
                ",",
                Columns.OF_DAY_BOOK.names().stream()
                        .map(name -> name.equals("day") ? "2021" : name.equals("kind") ? kind.word() : "")
                        .toList());
        List<String> missing = Form.of(kind).fields().stream()
                .filter(field -> field.required() || field.name().equals("tags") && kind != EntryKind.CORRECTED)
                .map(field -> "a.csv:2:" + field.name() + ": must not be empty for " + kind.word())
                .toList();
        List<String> faults = desk.faults(header, row);
        assertTrue(faults.containsAll(missing), () -> faults + " should have " + missing);
        assertFalse(faults.isEmpty());
        assertTrue(
                kind == EntryKind.COST_LISTED || !missing.isEmpty(), "a cost has no column that every cost must have");
    }

    @Test
    void quotesACellOnOneLine() {
        String line = desk.faults("day,kind,tags", "\"20\n21\",seen,J-1").get(0);
        assertEquals(
                "a.csv:2:day: expected a day such as 2021-05-03, a month 2021-05 or a year 2021, found \"20 21\"",
                line);
        String longest =
                desk.faults("day,kind,tags", "x".repeat(2000) + ",seen,J-1").get(0);
        assertEquals("a.csv:2:day: ".length() + 401, longest.length());
        assertTrue(longest.endsWith("xx…"), longest);
    }

    @Test
    void sortsFaultsByFileLineAndColumn() {
        List<String> faults = desk.faults(
                Desk.file("b.csv", "kind,tags,day\nseen,,x\npotted,J 1!,2021\n"),
                Desk.file("a.csv", "day,kind,tags\n2021,seen,\n"));
        assertEquals(
                List.of("a.csv:2:tags", "b.csv:1:container", "b.csv:2:tags", "b.csv:2:day", "b.csv:3:tags"),
                faults.stream()
                        .map(line -> line.substring(0, line.indexOf(": ")))
                        .toList());
    }

    @Test
    void listsTenThousandFaults() {
        String rows = String.join(
                "\n",
                IntStream.range(0, 10_000)
                        .mapToObj(n -> "2021-13-01,sen,J " + n)
                        .toList());
        List<String> faults = desk.faults(Desk.file("a.csv", "day,kind,tags\n" + rows));
        assertEquals(20_000, faults.size());
        assertEquals("a.csv:10001:day: there is no day 2021-13-01", faults.get(19_998));
        assertTrue(faults.get(19_999).startsWith("a.csv:10001:kind: no kind of entry \"sen\""), faults.get(19_999));
    }

    @Test
    void listsTenThousandRowsThatCannotBeTrue() {
        String rows = String.join(
                "\n",
                IntStream.range(0, 10_000).mapToObj(n -> "2021,seen,J-" + n).toList());
        Reading.Rows read = desk.read(Desk.file("a.csv", "day,kind,tags\n" + rows));
        Refused refused = assertThrows(
                Refused.class,
                () -> desk.diary()
                        .store()
                        .read(view -> read.check(view, desk.diary().judge(), Progress.NONE)));
        assertEquals(10_000, refused.faults().size());
        assertEquals("a.csv:10001: no plant or batch J-9999", refused.lines().get(9_999));
    }

    @Test
    void namesFilesThatAreNotThere(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("spring.csv"), "day,kind,tags\n");
        Path list = Files.writeString(folder.resolve("persons.csv"), "name\n");
        Path other = Files.createDirectory(folder.resolve("other"));
        Path second = Files.writeString(other.resolve("persons.csv"), "name\n");
        Path missing = folder.resolve("sprnig.csv");
        assertEquals(
                List.of(
                        "there is no file " + missing + "; nearest: spring.csv",
                        other + " is a folder; expected files, or one folder alone",
                        file + " is named twice; expected each file once",
                        second + " is a second list of persons; expected one at most"),
                refusal(missing, other, file, file, list, second));
        assertEquals(
                List.of("an export has no source to name: its entries have identities"),
                assertThrows(
                                Refused.class,
                                () -> desk.diary()
                                        .store()
                                        .read(view ->
                                                DayBook.read(List.of(other), Optional.of("x"), view, Progress.NONE)))
                        .lines());
    }

    @Test
    void saysThatAFileCannotBeRead() {
        Source broken = new Source("a.csv", "a.csv", 0, () -> {
            throw new java.nio.file.AccessDeniedException("a.csv");
        });
        assertEquals(
                "cannot read a.csv: permission denied",
                assertThrows(Unavailable.class, () -> desk.read(broken)).getMessage());
    }
}
