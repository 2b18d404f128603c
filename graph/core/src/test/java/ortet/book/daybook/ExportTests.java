package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.book.BookView;
import ortet.book.Chained;
import ortet.book.Diary;
import ortet.book.ForwardingView;
import ortet.book.Head;
import ortet.book.MemoryBookStore;
import ortet.book.Progress;
import ortet.book.Receipt;
import ortet.book.Ruling;
import ortet.entry.Acquired;
import ortet.entry.Entry;
import ortet.entry.Recorded;
import ortet.entry.Sold;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.value.OrtetException;
import ortet.value.Refused;
import ortet.value.Unavailable;

class ExportTests {
    @TempDir
    private Path folder;

    private final Diary diary = new Diary();
    private final MemoryBookStore empty = new MemoryBookStore(ZoneOffset.UTC);

    private Path exported() {
        diary.person(1, "Una Thornfield", Role.STAFF);
        diary.person(2, "Larchfield", Role.SUPPLIER);
        diary.person(3, "Bertil", Role.CUSTOMER);
        diary.write(
                "2020-04-01 acquired K-1; supplier=#2; by=#1; note==not a sum",
                "2020-05-01 layer-set J-1..J-4; mother=K-1; by=#1",
                "2020-09-01 severed J-1; container=9 cm");
        diary.write("2021-03 sold J-1; customer=#3; price=24.50 EUR");
        Path out = folder.resolve("out");
        Exports.write(diary.store(), out);
        return out;
    }

    private static String faulty(Path out, MemoryBookStore book) {
        OrtetException refused = assertThrows(OrtetException.class, () -> Exports.read(out, book));
        assertEquals(1, refused.lines().size(), () -> refused.lines().toString());
        return refused.lines().get(0);
    }

    private static void change(Path file, String from, String to) {
        try {
            String text = Files.readString(file);
            assertTrue(text.contains(from), () -> from + " is not in " + text);
            Files.writeString(file, text.replace(from, to));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    @Test
    void writesThreeFilesThatSpreadsheetsCanOpen() throws IOException {
        Path out = exported();
        assertEquals(List.of("book.csv", "day-book.csv", "persons.csv"), Exports.names(out));
        assertEquals(List.of("out"), Exports.names(folder));
        Head head = diary.store().read(BookView::head);
        assertEquals(
                "\uFEFFbook,zone,format,entries,digest\r\n" + head.bookId() + ",Europe/Dublin,1,4," + head.digest()
                        + "\r\n",
                Files.readString(out.resolve("book.csv")));
        assertEquals(
                "\uFEFFnumber,name,role,particulars,erased\r\n\"#1\",Una Thornfield,staff,,\r\n"
                        + "\"#2\",Larchfield,supplier,,\r\n\"#3\",Bertil,customer,,\r\n",
                Files.readString(out.resolve("persons.csv")));
        List<String> rows =
                Files.readString(out.resolve("day-book.csv")).lines().toList();
        assertEquals("\uFEFF" + String.join(",", Columns.OF_DAY_BOOK.names()), rows.get(0));
        assertEquals(5, rows.size());
        Recorded first = diary.store().read(view -> view.entry(1)).orElseThrow();
        assertTrue(
                rows.get(1).startsWith(first.proposed().id() + ",1,2026-06-15T12:00:00.000Z,2020-04-01,#1,acquired,"),
                rows.get(1));
        assertTrue(rows.get(1).contains(",'=not a sum,"), rows.get(1));
        assertTrue(rows.get(2).contains(",J-1..J-4,"), rows.get(2));
    }

    @Test
    void fillsAnEmptyFolder() throws IOException {
        Files.createDirectory(folder.resolve("out"));
        assertEquals(3, Exports.names(exported()).size());
    }

    @Test
    void writesAnEmptyBook() {
        Exports.write(empty, folder.resolve("out"));
        MemoryBookStore other = new MemoryBookStore(ZoneOffset.UTC);
        Reading reading = Exports.read(folder.resolve("out"), other);
        assertEquals(0, reading.entries());
        reading.writeInto(other, diary.judge(), Progress.NONE);
        assertEquals(empty.<Head>read(BookView::head), other.<Head>read(BookView::head));
    }

    @Test
    void refusesAFolderThatIsNotFree() throws IOException {
        Path full = Files.createDirectory(folder.resolve("full"));
        Files.writeString(full.resolve("a"), "");
        Path file = Files.writeString(folder.resolve("file"), "");
        Path deep = folder.resolve("no/such");
        assertEquals(
                List.of(
                        full + " is not empty; expected a new or an empty folder",
                        file + " is a file; expected a new or an empty folder",
                        "there is no folder " + folder.resolve("no") + " to export into"),
                Stream.of(full, file, deep)
                        .map(target -> assertThrows(Refused.class, () -> Exports.write(empty, target))
                                .getMessage())
                        .toList());
        assertEquals(List.of("file", "full"), Exports.names(folder));
        assertEquals(List.of("a"), Exports.names(full));
    }

    @Test
    void leavesNothingBehindWhenTheBookIsDamaged() {
        exported();
        Path target = folder.resolve("second");
        Unavailable damaged = assertThrows(
                Unavailable.class,
                () -> diary.store().read(view -> DayBook.export(withoutThird(view), target, Progress.NONE)));
        assertEquals("the book is damaged: entry 3 is not as it was written", damaged.getMessage());
        Unavailable shorter = assertThrows(
                Unavailable.class,
                () -> diary.store().read(view -> DayBook.export(withoutLast(view), target, Progress.NONE)));
        assertEquals("the book is damaged: it has 3 entries and should have 4", shorter.getMessage());
        assertEquals(List.of("out"), Exports.names(folder));
    }

    private static BookView withoutThird(BookView book) {
        return new ForwardingView(book) {
            @Override
            public Stream<Chained> since(long order) {
                return super.since(order).filter(entry -> entry.recorded().order() != 3);
            }
        };
    }

    private static BookView withoutLast(BookView book) {
        return new ForwardingView(book) {
            @Override
            public Stream<Chained> since(long order) {
                return super.since(order).filter(entry -> entry.recorded().order() != 4);
            }
        };
    }

    @Test
    void tellsHowFarItHasCome() {
        exported();
        List<String> told = new ArrayList<>();
        diary.store()
                .read(view -> DayBook.export(
                        view,
                        folder.resolve("b"),
                        (step, done, total) -> told.add(step + " " + done + " of " + total)));
        assertEquals(List.of("exporting 4 of 4"), told);
    }

    @ParameterizedTest
    @ValueSource(strings = {"book.csv", "persons.csv", "day-book.csv"})
    void refusesAFolderThatIsNoExport(String missing) throws IOException {
        Path out = exported();
        Files.delete(out.resolve(missing));
        assertEquals(
                out + " is not an export: there is no " + missing
                        + " in it; expected day-book.csv, persons.csv and book.csv",
                faulty(out, empty));
    }

    @Test
    void noticesAnEntryThatWasChanged() {
        Path out = exported();
        change(out.resolve("day-book.csv"), "9 cm", "8 cm");
        String digest = diary.store().read(BookView::head).digest().brief();
        String line = faulty(out, empty);
        assertTrue(
                line.startsWith(out + " was changed after the export: the digest of its entries is ")
                        && line.endsWith("…, book.csv says " + digest + "…"),
                line);
        diary.write("2021-04 seen K-1");
        assertEquals(
                line,
                assertThrows(Refused.class, () -> Exports.read(out, diary.store()))
                        .getMessage());
    }

    @Test
    void noticesEntriesThatWereTakenOutOrMoved() throws IOException {
        Path out = exported();
        List<String> rows =
                Files.readString(out.resolve("day-book.csv")).lines().toList();
        Files.writeString(out.resolve("day-book.csv"), String.join("\n", rows.subList(0, 4)));
        assertEquals(
                out + " was changed after the export: day-book.csv has 3 entries, book.csv says 4", faulty(out, empty));
        Files.writeString(
                out.resolve("day-book.csv"), String.join("\n", rows.get(0), rows.get(2), rows.get(1), rows.get(3)));
        assertEquals(
                out.resolve("day-book.csv")
                        + ":2:order: the rows are not as they were exported: expected 1, found \"2\"",
                faulty(out, empty));
    }

    @Test
    void noticesALabelThatWasChanged() throws IOException {
        Path out = exported();
        Path label = out.resolve("book.csv");
        String good = Files.readString(label);
        Head head = diary.store().read(BookView::head);
        List<String> lines = new ArrayList<>();
        for (List<String> change : List.of(
                List.of(",1,4,", ",2,4,"),
                List.of(",1,4,", ",one,4,"),
                List.of("Europe/Dublin", "Atlantis"),
                List.of(",4,", ",four,"),
                List.of(head.bookId().toString(), "x"),
                List.of(head.digest().hex(), "abc"))) {
            change(label, change.get(0), change.get(1));
            lines.add(faulty(out, empty).substring(label.toString().length()));
            Files.writeString(label, good);
        }
        assertEquals(
                List.of(
                        ":2:format: the export is in format 2; this program reads format 1",
                        ":2:format: expected the number of a format, found \"one\"",
                        ":2:zone: expected a time zone such as Europe/Dublin, found \"Atlantis\"",
                        ":2:entries: expected how many entries there are, found \"four\"",
                        ":2:book: expected the identity of a book, found \"x\"",
                        ":2:digest: expected 64 hexadecimal digits, found \"abc\""),
                lines);
        Files.writeString(label, good + good.lines().skip(1).findFirst().orElseThrow());
        assertEquals(label + ":3: expected one row, found 2", faulty(out, empty));
        Files.writeString(label, good.lines().findFirst().orElseThrow());
        assertEquals(label + ":1: expected one row, found none", faulty(out, empty));
    }

    @Test
    void noticesRowsThatNoExportHas() {
        Path out = exported();
        Path rows = out.resolve("day-book.csv");
        Recorded first = diary.store().read(view -> view.entry(1)).orElseThrow();
        Recorded second = diary.store().read(view -> view.entry(2)).orElseThrow();
        change(rows, second.proposed().id().toString(), first.proposed().id().toString());
        assertEquals(rows + ":3:entry: stands in line 2 too; expected each identity once", faulty(out, empty));
        change(rows, first.proposed().id() + ",2", ",2");
        assertEquals(rows + ":3:entry: must not be empty in an export", faulty(out, empty));
        change(rows, ",2,2026-06-15T12:00:00.000Z", second.proposed().id() + ",2,then");
        assertEquals(
                rows + ":3:recorded: expected an instant such as 2021-05-03T14:05:00.000Z, found \"then\"",
                faulty(out, empty));
    }

    @Test
    void noticesPersonsWhoAreNotListed() {
        Path out = exported();
        change(out.resolve("persons.csv"), "\"#2\",Larchfield,supplier,,\r\n", "");
        assertEquals(out.resolve("day-book.csv") + ":2:supplier: there is no #2 in persons.csv", faulty(out, empty));
        change(out.resolve("persons.csv"), "\"#1\"", "");
        assertEquals(out.resolve("persons.csv") + ":2:number: must not be empty in an export", faulty(out, empty));
    }

    @Test
    void takesTheWholeBookOnlyIntoAnEmptyOne() {
        Path out = exported();
        assertInstanceOf(Reading.WholeBook.class, Exports.read(out, empty));
        assertInstanceOf(Reading.Rows.class, Exports.read(out, diary.store()));
        Diary other = new Diary();
        other.person(1, "Orla Dew", Role.STAFF);
        assertInstanceOf(Reading.Rows.class, Exports.read(out, other.store()));
        Reading whole = Exports.read(out, empty);
        Ruling ruling = empty.<Ruling>read(view -> whole.check(view, diary.judge(), Progress.NONE));
        assertEquals(4, ruling.entries().size());
        assertEquals(0, empty.<Head>read(BookView::head).order());
    }

    private static List<Entry> entries(Diary diary) {
        return diary.store().read(view -> {
            try (Stream<Chained> all = view.since(0)) {
                return all.map(chained -> chained.recorded().entry()).toList();
            }
        });
    }

    @Test
    void findsItsPersonsInAnotherBookByName() {
        Path out = exported();
        Diary other = new Diary();
        other.person(1, "bertil", Role.CUSTOMER);
        other.person(3, "Orla Dew", Role.STAFF);
        Receipt receipt = Exports.read(out, other.store()).writeInto(other.store(), other.judge(), Progress.NONE);
        assertEquals(4, receipt.written().size());
        assertEquals(
                List.of("bertil", "Orla Dew", "Una Thornfield", "Larchfield"),
                other.store()
                        .read(view -> view.persons().stream().map(Person::shown).toList()));
        Acquired acquired = (Acquired) entries(other).get(0);
        assertEquals(Optional.of(new PersonNumber(5)), acquired.supplier());
        Sold sold = (Sold) entries(other).get(3);
        assertEquals(Optional.of(new PersonNumber(1)), sold.customer());
    }

    @Test
    void keepsErasedPersonsApartAndAddsNothingTheSecondTime() {
        exported();
        diary.store().keep(new Person(new PersonNumber(3), Optional.empty(), Role.CUSTOMER, Optional.empty()));
        diary.write("2021-05 noted K-1; note=x; by=#1", "b: 2021-06 acquired K-2; supplier=#2");
        diary.write("2021-06 corrected; target=b; field=supplier; value=#3");
        Path out = folder.resolve("later");
        Exports.write(diary.store(), out);
        Diary other = new Diary();
        other.person(1, "Larchfield", Role.SUPPLIER);
        other.person(2, "Orla Dew", Role.STAFF);
        Exports.read(out, other.store()).writeInto(other.store(), other.judge(), Progress.NONE);
        Person erased = other.store()
                .read(view -> List.copyOf(view.persons()))
                .get(((Sold) entries(other).get(3)).customer().orElseThrow().value() - 1);
        assertEquals(Optional.empty(), erased.name());
        Head before = other.store().read(BookView::head);
        Receipt again = Exports.read(out, other.store()).writeInto(other.store(), other.judge(), Progress.NONE);
        assertEquals(before, again.head());
        assertEquals(7, again.alreadyThere());
        assertEquals(4, other.store().<Integer>read(view -> view.persons().size()));
    }

    @Test
    void findsAPersonOfTheSameBookWhoseNameWasErasedSince() {
        Path out = exported();
        diary.store().keep(new Person(new PersonNumber(3), Optional.empty(), Role.CUSTOMER, Optional.empty()));
        Receipt again = Exports.read(out, diary.store()).writeInto(diary.store(), diary.judge(), Progress.NONE);
        assertEquals(4, again.alreadyThere());
        assertEquals(3, diary.store().<Integer>read(view -> view.persons().size()));
        assertFalse(diary.store().read(view -> view.person("Bertil")).isPresent());
    }

    @Test
    void readsTheRowsOfAnExportAsAnyFile() {
        Path out = exported();
        Reading reading = diary.store()
                .read(view -> DayBook.read(
                        List.of(out.resolve("day-book.csv"), out.resolve("persons.csv")),
                        Optional.empty(),
                        view,
                        Progress.NONE));
        Receipt again = reading.writeInto(diary.store(), diary.judge(), Progress.NONE);
        assertEquals(4, again.alreadyThere());
        assertEquals(List.of(), again.warnings());
    }
}
