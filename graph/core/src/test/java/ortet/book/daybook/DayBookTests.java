package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.book.Receipt;
import ortet.book.Ruling;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.LayerSet;
import ortet.entry.Noted;
import ortet.entry.Potted;
import ortet.entry.Proposed;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Refused;
import ortet.value.When;

class DayBookTests {
    private final Desk desk = new Desk();

    private static List<Long> lines(Reading.Rows rows) {
        return rows.proposal().items().stream()
                .map(item -> item.where().orElseThrow().line())
                .toList();
    }

    private static List<EntryId> ids(Reading.Rows rows) {
        return Desk.proposed(rows).stream().map(Proposed::id).toList();
    }

    private long order() {
        return desk.diary().store().read(view -> view.head().order());
    }

    private static Noted noted(String note) {
        return new Noted(List.of(new Tag("J-1")), note);
    }

    @Test
    void readsARowAsAnEntryWithItsDayAndHand() {
        Reading.Rows rows = desk.read(
                "day,by,kind,tags,mother,stem_mm,ring_mm,wound,note",
                "2021-05-03,#3,layer-set,J-201..J-204 except J-203,K-12,12.5,15,full-ring,south side");
        Proposal.Item item = rows.proposal().items().get(0);
        Proposed proposed = item.proposed();
        assertEquals("a.csv:2", item.where().orElseThrow().toString());
        assertEquals(When.parse("2021-05-03"), proposed.day());
        assertEquals(Optional.of(new PersonNumber(3)), proposed.by());
        LayerSet set = (LayerSet) proposed.entry();
        assertEquals(Tags.parse("J-201 J-202 J-204"), set.tags());
        assertEquals("12.5", set.stemMm().orElseThrow().toString());
        assertEquals(Optional.of("south side"), set.note());
        assertEquals(List.of(), rows.remarks());
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void findsTheSeparatorFromTheHeader(String separator) {
        Reading.Rows rows =
                desk.read("day,kind,tags,note".replace(",", separator), "2021,noted,J-1,plain".replace(",", separator));
        assertEquals(List.of(noted("plain")), Desk.entries(rows));
    }

    @Test
    void findsTheSeparatorThoughTheHeaderHoldsOthers() {
        assertEquals(List.of(noted("a, b")), Desk.entries(desk.read("day;kind;tags;note", "2021;noted;J-1;a, b")));
        assertEquals(
                List.of(noted("c")), Desk.entries(desk.read("\"day\";\"kind\";\"tags\";note", "2021;noted;J-1;c")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void takesAnyLineEndAndAByteOrderMark(String end) {
        String text =
                String.join(end, "day,kind,tags,note", "2021,noted,J-1,\"two" + end + "lines\"", "2022,seen,J-1,");
        Reading.Rows plain = desk.read(Desk.file("a.csv", text));
        assertEquals(noted("two\nlines"), Desk.entries(plain).get(0));
        assertEquals(List.of(2L, 4L), lines(plain));
        assertEquals(Desk.proposed(plain), Desk.proposed(desk.read(Desk.file("a.csv", "\uFEFF" + text + end))));
    }

    @Test
    void readsQuotedCellsAsRfc4180Says() {
        Reading.Rows rows = desk.read(
                "day,kind,tags,note", "2021,noted,J-1,\"a \"\"good\"\" root, and\n\n\"\"long\"\"\"", "2022,seen,J-1,");
        assertEquals(
                noted("a \"good\" root, and\n\n\"long\""), Desk.entries(rows).get(0));
        assertEquals(List.of(2L, 5L), lines(rows));
    }

    @Test
    void skipsBlankRowsAndKeepsCountOfLines() {
        Reading.Rows rows =
                desk.read("", ",,", "day,kind,tags", "", ",,", " , ,\t", "2021,seen,J-1", "", "2022,seen,J-1", ",,");
        assertEquals(List.of(7L, 9L), lines(rows));
    }

    @Test
    void takesColumnsInAnyOrderAndSpelling() {
        Reading.Rows rows = desk.read("Stem mm,TAGS, Kind ,mother,day,Ring-mm", "12,J-1,Layer Set,K-1,2021,10");
        assertEquals(
                "12",
                ((LayerSet) Desk.entries(rows).get(0)).stemMm().orElseThrow().toString());
    }

    @Test
    void tidiesBlanksAndTheFormOfLetters() {
        Reading.Rows rows = desk.read("day,kind,tags,note", " 2021 , noted , J-1 ,\"  Ma\u0301ire \t\"");
        assertEquals(List.of(noted("M\u00e1ire")), Desk.entries(rows));
    }

    @Test
    void takesShortRowsAndEmptyColumnsWithoutAName() {
        Reading.Rows rows = desk.read("day,kind,tags,note,,", "2021,seen,J-1", "2022,seen,J-1,,,");
        assertEquals(2, rows.entries());
    }

    @Test
    void takesTheGuardOfSpreadsheetsAway() {
        Reading.Rows rows = desk.read(
                "day,kind,tags,note",
                "2021,noted,J-1,'=sum",
                "2022,noted,J-1,''quoted'",
                "2023,noted,J-1,'Deshojo' again",
                "2024,noted,J-1,\"'-5, cold\"");
        assertEquals(
                List.of(noted("=sum"), noted("'quoted'"), noted("'Deshojo' again"), noted("-5, cold")),
                Desk.entries(rows));
    }

    @Test
    void readsWhatStandsInSeveralFilesInTheirOrder() {
        Reading.Rows rows = desk.read(
                Desk.file("b.csv", "day,kind,tags\n2022,seen,J-1\n"),
                Desk.file("a.csv", "kind;day;tags\nseen;2021;J-1\n"));
        assertEquals(
                List.of("b.csv:2", "a.csv:2"),
                rows.proposal().items().stream()
                        .map(item -> item.where().orElseThrow().toString())
                        .toList());
    }

    @Test
    void givesTheSameFileTheSameIdentities() {
        String[] file = {"day,kind,tags,note", "2021,seen,J-1 J-2,", "2021,seen,J-2 J-1,", "2021,seen,J-3,"};
        assertEquals(ids(desk.read(file)), ids(desk.read(file)));
        assertEquals(3, Set.copyOf(ids(desk.read(file))).size());
        assertEquals(
                ids(desk.read(file)),
                ids(desk.read("day,kind,note,tags", "2021,seen,,J-1..J-2", "2021,seen,new,J-1 J-2", "2021,seen,,J-3")));
        assertNotEquals(ids(desk.read(file)), ids(desk.read(Desk.file("b.csv", String.join("\n", file)))));
    }

    @Test
    void derivesIdentitiesFromSourceKindDayAndTags() {
        Reading.Rows rows = desk.read("day,kind,tags", "2021-05-03,seen,J-10 J-2", "2021-05-03,seen,J-2 J-10");
        String key = "seen\n2021-05-03\nJ-10 J-2";
        assertEquals(List.of(EntryId.derived("a.csv", key, 1), EntryId.derived("a.csv", key, 2)), ids(rows));
    }

    @Test
    void tellsRowsWithoutTagsApartByWhatTheyAreAbout() {
        Reading.Rows rows = desk.read(
                "day,kind,place,cultivar",
                "2021,place-listed,House 1,",
                "2021,place-listed,House  2,",
                "2021,cultivar-listed,,Acer palmatum 'Deshojo'");
        assertEquals(
                List.of(
                        EntryId.derived("a.csv", "place-listed\n2021\n\n\n\n\nHouse 1", 1),
                        EntryId.derived("a.csv", "place-listed\n2021\n\n\n\n\nHouse 2", 1),
                        EntryId.derived("a.csv", "cultivar-listed\n2021\n\n\n\nAcer palmatum 'Deshojo'\n", 1)),
                ids(rows));
    }

    @Test
    void holdsIdentitiesToANamedSource() {
        Reading.Rows rows = desk.readAs("old ledger", Desk.file("a.csv", "day,kind,tags\n2021,seen,J-1\n"));
        assertEquals(List.of(EntryId.derived("old ledger", "seen\n2021\nJ-1", 1)), ids(rows));
    }

    @Test
    void keepsTheIdentityThatARowHas() {
        EntryId id = EntryId.random();
        assertEquals(List.of(id), ids(desk.read("entry,day,kind,tags", id + ",2021,seen,J-1")));
    }

    @Test
    void leavesOutARowThatSaysTheSameInTheSameSource() {
        Source january = Desk.file("january.csv", "day,kind,tags\n2021,seen,J-1\n");
        Source both = Desk.file("both.csv", "day,kind,tags\n2021,seen,J-1\n2022,seen,J-1\n");
        Reading.Rows rows = desk.readAs("ledger", january, both);
        assertEquals(2, rows.entries());
        assertEquals(1, rows.repeated());
        assertEquals(
                List.of("both.csv:2: says the same as january.csv:2, and is left out"), Desk.texts(rows.remarks()));
    }

    @Test
    void amendsTheRowAtALineOfTheSameFile() {
        Reading.Rows rows = desk.read(
                "day,kind,tags,note,target,field,value,reason",
                "2021,noted,J-1,\"two\nlines\",,,,",
                "2022,seen,J-1,,,,,",
                "2023,corrected,,,line:4,note,better,",
                "2023,crossed-out,,,Line: 2,,,slip");
        assertEquals(ids(rows).get(1), ((Corrected) Desk.entries(rows).get(2)).target());
        assertEquals(ids(rows).get(0), ((CrossedOut) Desk.entries(rows).get(3)).target());
    }

    @Test
    void amendsAnEntryByItsIdentity() {
        EntryId id = EntryId.random();
        Reading.Rows rows = desk.read("day,kind,target,reason", "2023,crossed-out," + id + ",slip");
        assertEquals(List.of(new CrossedOut(id, "slip", Optional.empty())), Desk.entries(rows));
    }

    @Test
    void findsPersonsByNameWhateverTheCase() {
        desk.diary().person(4, "Áine Ní Bhroin", Role.STAFF);
        desk.diary().person(9, "Larchfield Plants", Role.SUPPLIER);
        Reading.Rows rows = desk.read(
                "day,by,kind,tags,supplier", "2021,áine ní bhroin,acquired,K-1,LARCHFIELD plants", "2021,#9,seen,K-1,");
        assertEquals(new PersonNumber(4), Desk.proposed(rows).get(0).by().orElseThrow());
        assertEquals(new PersonNumber(9), Desk.proposed(rows).get(1).by().orElseThrow());
        assertTrue(Desk.entries(rows).get(0).toString().contains("supplier=Optional[#9]"));
        assertEquals(List.of(), rows.proposal().persons());
        assertEquals(List.of(), rows.remarks());
    }

    @Test
    void makesNewPersonsWithTheRoleOfTheColumnAndSaysSo() {
        desk.diary().person(4, "Una Thornfield", Role.STAFF);
        Reading.Rows rows = desk.read(
                "day,by,kind,tags,supplier,customer",
                "2021,Una Thornfeld,acquired,K-1,Larchfield,",
                "2022,una thornfeld,sold,K-1,,Bertil");
        assertEquals(
                List.of(
                        new Person(new PersonNumber(5), Optional.of("Una Thornfeld"), Role.STAFF, Optional.empty()),
                        new Person(new PersonNumber(6), Optional.of("Larchfield"), Role.SUPPLIER, Optional.empty()),
                        new Person(new PersonNumber(7), Optional.of("Bertil"), Role.CUSTOMER, Optional.empty())),
                rows.proposal().persons());
        assertEquals(
                List.of(
                        "a.csv:2:by: Una Thornfeld is new, and becomes #5 (staff); near to Una Thornfield #4",
                        "a.csv:2:supplier: Larchfield is new, and becomes #6 (supplier)",
                        "a.csv:3:customer: Bertil is new, and becomes #7 (customer)"),
                Desk.texts(rows.remarks()));
        assertEquals(new PersonNumber(5), Desk.proposed(rows).get(1).by().orElseThrow());
    }

    @Test
    void findsThePersonInACorrectedField() {
        desk.diary().person(4, "Larchfield", Role.SUPPLIER);
        EntryId id = EntryId.random();
        Reading.Rows rows = desk.read(
                "day,kind,target,field,value",
                "2022,corrected," + id + ",supplier,Larchfield",
                "2022,corrected," + id + ",note,Larchfield");
        assertEquals(
                List.of(Optional.of("#4"), Optional.of("Larchfield")),
                Desk.entries(rows).stream()
                        .map(entry -> ((Corrected) entry).value())
                        .toList());
    }

    @Test
    void takesPersonsFromTheListBesideTheDayBook() {
        desk.diary().person(4, "Una Thornfield", Role.STAFF);
        Reading.Rows rows = desk.read(
                Desk.file(
                        "a.csv",
                        "day,by,kind,tags\n2021,Bertil,seen,J-1\n2021,#12,seen,J-1\n2021,Una Thornfield,seen,J-1\n"),
                Desk.file(
                        "persons.csv",
                        "number,name,role,particulars\n,Bertil,customer,\"1, Quay Street\"\n#12,Orla Dew,staff,\n,Una Thornfield,,\n"));
        assertEquals(
                List.of(
                        new Person(new PersonNumber(12), Optional.of("Orla Dew"), Role.STAFF, Optional.empty()),
                        new Person(
                                new PersonNumber(13),
                                Optional.of("Bertil"),
                                Role.CUSTOMER,
                                Optional.of("1, Quay Street"))),
                rows.proposal().persons());
        assertEquals(
                List.of(13, 12, 4),
                Desk.proposed(rows).stream()
                        .map(proposed -> proposed.by().orElseThrow().value())
                        .toList());
        assertEquals(
                List.of(
                        "persons.csv:4: Una Thornfield is in the book as #4; role and particulars stay as they are there"),
                Desk.texts(rows.remarks()));
    }

    @Test
    void addsNothingWhenTheSameFileIsReadAgain() {
        String[] file = {
            "day,by,kind,tags,mother,container,target,reason",
            "2020-04-01,Una Thornfield,acquired,K-1,,,,",
            "2020-05-01,Una Thornfield,layer-set,J-1..J-3,K-1,,,",
            "2020-06-01,,seen,K-1,,,,",
            "2020-06-01,,seen,K-1,,,,",
            "2020-07-01,,crossed-out,,,,line:5,once was enough",
            "2020-09-01,#1,severed,J-1,,9 cm,,"
        };
        Receipt first = desk.write(file);
        assertEquals(6, first.written().size());
        assertEquals("new-person", first.warnings().get(0).rule());
        Receipt second = desk.write(file);
        assertEquals(0, second.written().size());
        assertEquals(6, second.alreadyThere());
        assertEquals(List.of(), second.warnings());
        assertEquals(first.head(), second.head());
    }

    @Test
    void reportsAChangedRowAndWritesNothing() {
        desk.write("day,kind,tags,note", "2020,acquired,K-1,from the west", "2021,seen,K-1,");
        Refused refused = assertThrows(
                Refused.class,
                () -> desk.write(
                        "day,kind,tags,note", "2020,acquired,K-1,from the east", "2021,seen,K-1,", "2022,seen,K-1,"));
        assertEquals(1, refused.faults().size());
        assertEquals("changed-row", refused.faults().get(0).rule());
        assertEquals(
                List.of("a.csv:2: this entry is in the book with other words: note \"from the west\" in the book,"
                        + " \"from the east\" here. Correct the entry in the book instead"),
                refused.lines());
        assertEquals(2, order());
    }

    @Test
    void takesTagsInAnotherOrderForOtherWords() {
        desk.write("day,kind,tags", "2020,acquired,K-1 K-2");
        Refused refused = assertThrows(Refused.class, () -> desk.write("day,kind,tags", "2020,acquired,K-2 K-1"));
        assertEquals(
                List.of("a.csv:2: this entry is in the book with other words: tags \"K-1 K-2\" in the book,"
                        + " \"K-2 K-1\" here. Correct the entry in the book instead"),
                refused.lines());
    }

    @Test
    void takesARowOfAnotherDayForAnotherEntry() {
        desk.write("day,kind,tags", "2020,acquired,K-1", "2021-05-03,seen,K-1");
        Receipt receipt = desk.write("day,kind,tags", "2020,acquired,K-1", "2021-05-04,seen,K-1");
        assertEquals(1, receipt.written().size());
        assertEquals(3, order());
    }

    @Test
    void doesNotReviveWhatWasCrossedOut() {
        String[] file = {"day,kind,tags", "2020,acquired,K-1", "2021,lost,K-1"};
        EntryId lost = ids(desk.read(file)).get(1);
        desk.write(file);
        desk.write("day,kind,target,reason", "2022,crossed-out," + lost + ",found again");
        assertEquals("0+1", desk.diary().standing("K-1"));
        Receipt again = desk.write(file);
        assertEquals(List.of(), again.written());
        assertEquals(2, again.alreadyThere());
        assertEquals(3, order());
        assertEquals("0+1", desk.diary().standing("K-1"));
    }

    @Test
    void hasRulesNameTheRow() {
        Reading.Rows rows = desk.read("day,kind,tags,mother", "2020,acquired,K-1,", "", "2021-05-03,layer-set,J-1,K-2");
        Refused refused = assertThrows(
                Refused.class,
                () -> rows.writeInto(desk.diary().store(), desk.diary().judge(), Progress.NONE));
        assertEquals(1, refused.faults().size());
        assertEquals("unknown-tag", refused.faults().get(0).rule());
        assertTrue(
                refused.lines().get(0).startsWith("a.csv:4: "), refused.lines().get(0));
    }

    @Test
    void onlyTellsWhenChecking() {
        Reading.Rows rows = desk.read("day,by,kind,tags", "2020,Bertil,acquired,K-1");
        Ruling ruling =
                desk.diary().store().read(view -> rows.check(view, desk.diary().judge(), Progress.NONE));
        assertEquals(1, ruling.entries().size());
        assertEquals("new-person", ruling.warnings().get(0).rule());
        assertEquals(0, order());
    }

    @Test
    void showsHowFarItHasCome() {
        List<Long> done = new ArrayList<>();
        Set<String> steps = new TreeSet<>();
        byte[] file = ("day,kind,tags\n"
                        + IntStream.range(0, 20_000)
                                .mapToObj(n -> "2021,seen,J-" + n)
                                .collect(Collectors.joining("\n")))
                .getBytes(StandardCharsets.UTF_8);
        desk.diary()
                .store()
                .read(view -> DayBook.readRows(
                        List.of(Desk.file("a.csv", file)), Optional.empty(), view, (step, at, total) -> {
                            steps.add(step);
                            done.add(at);
                            assertEquals(file.length, total);
                        }));
        assertEquals(Set.of("reading a.csv"), steps);
        assertEquals(file.length, done.get(done.size() - 1));
        assertTrue(done.size() >= 4, () -> "told " + done.size() + " times");
        assertEquals(done.stream().sorted().toList(), done);
    }

    @Test
    void readsRealFilesByTheirNames(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("spring.csv"), "day,kind,tags,container\n2021,potted,J-1,2 L\n");
        Reading reading =
                desk.diary().store().read(view -> DayBook.read(List.of(file), Optional.empty(), view, Progress.NONE));
        Proposal.Item item = ((Reading.Rows) reading).proposal().items().get(0);
        Entry entry = item.proposed().entry();
        assertEquals("2 L", ((Potted) entry).container());
        assertEquals(file + ":2", item.where().orElseThrow().toString());
        assertEquals(
                EntryId.derived("spring.csv", "potted\n2021\nJ-1", 1),
                item.proposed().id());
    }
}
