package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.book.BookView;
import ortet.book.Books;
import ortet.book.Diary;
import ortet.book.Ruling;
import ortet.plant.Tag;
import ortet.value.OrtetException;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** What a book's file may be like, and the one line that is said about it. */
class BookFileTests {
    private static final UUID ID = UUID.fromString("0f0e0d0c-0000-4000-8000-000000000001");

    @TempDir
    Path folder;

    private Path file(String name) {
        return folder.resolve(name);
    }

    private SqliteBookStore create(Path path) {
        return SqliteBookStore.create(path, ID, HandMade.ZONE, Shelf.CLOCK);
    }

    private Path book(String name) {
        Path path = file(name);
        try (SqliteBookStore store = create(path)) {
            new Diary(store).write("2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'");
        }
        return path;
    }

    private static void says(Class<? extends OrtetException> kind, String line, Path path) {
        OrtetException thrown =
                assertThrows(kind, () -> SqliteBookStore.open(path).close());
        assertEquals(List.of(line), thrown.lines());
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void createsABookOfTheIdentityAndZoneGiven() throws IOException {
        Path path = file("new.ortet");
        try (SqliteBookStore store = create(path)) {
            assertEquals(ID, store.read(BookView::head).bookId());
            assertEquals(HandMade.ZONE, store.read(BookView::head).zone());
        }
        assertEquals(List.of("new.ortet"), names());
        try (Session session = Session.open(path, Session.Way.READ_ONLY, 0)) {
            assertEquals(
                    "2026-06-15T12:00:00.000Z",
                    session.text("SELECT created FROM book").orElseThrow());
        } catch (SQLException trouble) {
            throw new AssertionError(trouble);
        }
    }

    @Test
    void createsNothingOverAFileThatIsThere() throws IOException {
        Path path = file("there.ortet");
        Files.writeString(path, "a shopping list");
        Refused refused = assertThrows(Refused.class, () -> create(path));
        assertEquals(List.of(path + " is there already; expected the name of a new file"), refused.lines());
        assertEquals("a shopping list", Files.readString(path));
        assertEquals(List.of("there.ortet"), names());
    }

    @Test
    void createsNothingWhereThereIsNoFolder() {
        Path path = file("none").resolve("new.ortet");
        Refused refused = assertThrows(Refused.class, () -> create(path));
        assertEquals(List.of("no folder " + file("none") + " for new.ortet"), refused.lines());
    }

    @Test
    void opensABookWhateverItsName() {
        Path path = book("Ró & Siobhán's 100% book?x=1#2; 楓.ortet");
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            assertEquals(1, store.read(BookView::head).order());
        }
    }

    @Test
    void saysThatThereIsNoBookAndWhichIsNear() {
        book("nursery.ortet");
        says(Refused.class, "no book " + file("nusery.ortet") + "; nearest: nursery.ortet", file("nusery.ortet"));
        says(Refused.class, "no book " + file("wholly-other"), file("wholly-other"));
    }

    @Test
    void saysThatAFolderIsNoBook() {
        says(Unavailable.class, folder + " is no book: it is a folder; expected a file", folder);
    }

    @Test
    void saysThatAnEmptyFileIsNoBook() throws IOException {
        Path path = Files.createFile(file("empty.ortet"));
        says(Unavailable.class, path + " is no book: it is empty", path);
    }

    @Test
    void saysThatATextIsNoBook() throws IOException {
        Path path = Files.writeString(file("list.csv"), "tag,day\n".repeat(100));
        says(Unavailable.class, path + " is no book: it is no SQLite file, or its beginning is damaged", path);
    }

    @Test
    void saysThatAShortTextIsNoBook() throws IOException {
        Path path = Files.writeString(file("list.csv"), "tag");
        says(Unavailable.class, path + " is no book: it is no SQLite file, or its beginning is damaged", path);
    }

    @Test
    void saysThatTheDatabaseOfAnotherProgramIsNoBook() throws SQLException {
        Path path = file("other.db");
        try (Session session = Session.create(path)) {
            session.run("CREATE TABLE entry (id INTEGER PRIMARY KEY)");
        }
        says(Unavailable.class, path + " is no book: it is an SQLite file of another program", path);
    }

    @Test
    void saysThatABookIsOfANewerProgram() throws SQLException {
        Path path = book("new.ortet");
        Schema later = Schema.CURRENT.then("ALTER TABLE unit ADD COLUMN vigour TEXT");
        SqliteBookStore.open(path, later, 1000).close();
        says(
                Unavailable.class,
                "the book " + path + " was written by a newer ortet: its schema is 3, this program knows up to 2",
                path);
    }

    @Test
    void bringsAnOlderBookUpToDate() throws SQLException {
        Path path = book("old.ortet");
        Schema later = Schema.CURRENT
                .then("ALTER TABLE unit ADD COLUMN vigour TEXT")
                .then("CREATE TABLE extra (a TEXT) STRICT");
        try (SqliteBookStore store = SqliteBookStore.open(path, later, 1000)) {
            assertEquals(1, store.read(BookView::head).order());
            new Diary(store).write("2020-05-01 seen K-1");
        }
        try (Session session = Session.open(path, Session.Way.READ_ONLY, 0)) {
            assertEquals(4, session.number("PRAGMA user_version"));
            assertEquals(1, session.number("SELECT count(*) FROM pragma_table_info('unit') WHERE name = 'vigour'"));
        }
    }

    @Test
    void leavesAnOlderBookAsItIsWhenItCannotBeBroughtUpToDate() throws SQLException {
        Path path = book("old.ortet");
        Schema broken = Schema.CURRENT.then("CREATE TABLE extra (a TEXT) STRICT; CREATE TABLE unit (a TEXT)");
        assertThrows(OrtetException.class, () -> SqliteBookStore.open(path, broken, 1000));
        try (SqliteBookStore store = SqliteBookStore.open(path);
                Session session = Session.open(path, Session.Way.READ_ONLY, 0)) {
            assertEquals(1, store.read(BookView::head).order());
            assertEquals(0, session.number("SELECT count(*) FROM sqlite_schema WHERE name = 'extra'"));
        }
    }

    @Test
    void saysThatTheEndOfABookIsMissing() throws IOException {
        Path path = book("cut.ortet");
        try (SeekableByteChannel channel = Files.newByteChannel(path, StandardOpenOption.WRITE)) {
            channel.truncate(channel.size() - 5000);
        }
        says(Unavailable.class, "the book " + path + " is damaged: its end is missing; go back to a backup", path);
    }

    @Test
    void saysThatABookCutShortWithinItsFirstPageIsDamaged() throws IOException {
        Path path = book("cut.ortet");
        try (SeekableByteChannel channel = Files.newByteChannel(path, StandardOpenOption.WRITE)) {
            channel.truncate(60);
        }
        says(Unavailable.class, path + " is no book: it is no SQLite file, or its beginning is damaged", path);
    }

    @Test
    void saysThatABookIsDamagedWhereverItIsDamaged() throws IOException {
        Path path = file("bad.ortet");
        try (SqliteBookStore store = create(path)) {
            Ruling nursery = HandMade.nursery(store.read(BookView::head), 500);
            store.append(view -> nursery, (step, done, total) -> {});
        }
        byte[] whole = Files.readAllBytes(path);
        int page = 4096;
        int told = 0;
        for (int at = 1; at < whole.length / page; at++) {
            byte[] bad = whole.clone();
            Arrays.fill(bad, at * page, (at + 1) * page, (byte) 0xA5);
            Files.write(path, bad);
            try (SqliteBookStore store = SqliteBookStore.open(path)) {
                store.read(view -> {
                    view.since(0).count();
                    view.facts(view.unit(new Tag("J-000001")).orElseThrow(() -> Trouble.damaged(path, null)));
                    return null;
                });
            } catch (Unavailable damaged) {
                assertEquals(List.of("the book " + path + " is damaged; go back to a backup"), damaged.lines());
                told++;
            }
        }
        assertTrue(told > whole.length / page / 3, "damage was met on " + told + " pages");
    }

    @Test
    void saysThatABookWithNonsenseInItIsDamaged() throws SQLException {
        Path path = book("odd.ortet");
        try (Session session = Session.open(path, Session.Way.READ_WRITE, 0)) {
            session.run("UPDATE unit SET nature = 'stone'");
        }
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            Unavailable damaged = assertThrows(
                    Unavailable.class,
                    () -> store.read(
                            view -> view.facts(view.unit(new Tag("K-1")).orElseThrow())));
            assertEquals(List.of("the book " + path + " is damaged; go back to a backup"), damaged.lines());
        }
    }

    @Test
    void findsNothingWrongWithAWholeBook() {
        try (SqliteBookStore store = SqliteBookStore.open(book("whole.ortet"))) {
            assertEquals(List.of(), store.damage());
        }
    }

    @Test
    void findsWhatAnotherProgramDidToTheTables() throws SQLException {
        Path path = book("odd.ortet");
        try (Session session = Session.open(path, Session.Way.READ_WRITE, 0)) {
            session.run("DROP TRIGGER entry_is_never_changed; DROP INDEX tag_tag; CREATE INDEX tag_tag ON tag (day);"
                    + " CREATE TABLE own (a TEXT); PRAGMA foreign_keys = OFF;"
                    + " UPDATE entry SET by_person = 9 WHERE recorded_order = 1");
        }
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            assertEquals(
                    List.of(
                            "in the file: entry 1 names a person that is not there",
                            "in the file: the index tag_tag was changed",
                            "in the file: the trigger entry_is_never_changed is missing",
                            "in the file: the table own is none of ortet's"),
                    store.damage());
        }
    }

    @Test
    void findsPagesThatAreDamaged() throws IOException {
        Path path = book("bad.ortet");
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            // so long that the last page is one of entries, not one that says which tables there are
            new Diary(store).write("2020-05-01 noted K-1; note=" + "long ".repeat(4000));
        }
        try (SeekableByteChannel channel = Files.newByteChannel(path, StandardOpenOption.WRITE)) {
            channel.position(channel.size() - 4096);
            byte[] rubbish = new byte[4096];
            Arrays.fill(rubbish, (byte) 0xA5);
            channel.write(ByteBuffer.wrap(rubbish));
        }
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            List<String> damage = store.damage();
            assertFalse(damage.isEmpty());
            assertTrue(damage.stream().allMatch(line -> line.startsWith("in the file: ")), damage::toString);
        }
    }

    @Test
    void saysThatSomebodyElseIsWriting() throws SQLException {
        Path path = book("busy.ortet");
        try (SqliteBookStore store = SqliteBookStore.open(path, Schema.CURRENT, 50);
                Session other = Session.open(path, Session.Way.READ_WRITE, 0)) {
            other.run("BEGIN IMMEDIATE");
            Diary diary = new Diary(store);
            Unavailable busy = assertThrows(Unavailable.class, () -> diary.write("2020-05-01 seen K-1"));
            assertEquals(
                    List.of("the book is busy: somebody else is writing into " + path + ", try again"), busy.lines());
            assertEquals(1, store.read(BookView::head).order());
            other.run("COMMIT");
            assertEquals(2, diary.write("2020-05-01 seen K-1").head().order());
        }
    }

    @Test
    void opensWhileSomebodyElseIsWriting() throws SQLException {
        Path path = book("busy.ortet");
        try (Session other = Session.open(path, Session.Way.READ_WRITE, 0)) {
            other.run("BEGIN IMMEDIATE");
            other.run("UPDATE book SET last_unit = 77");
            try (SqliteBookStore store = SqliteBookStore.open(path, Schema.CURRENT, 50)) {
                assertEquals(1, store.read(BookView::head).lastUnit());
            }
            other.run("ROLLBACK");
        }
    }

    @Test
    void leavesNothingBesideTheFileWhenClosed() throws IOException {
        book("closed.ortet");
        assertEquals(List.of("closed.ortet"), names());
    }

    @Test
    void leavesNothingOfAnErasedPersonInTheFiles() throws IOException {
        Path path = file("erased.ortet");
        try (SqliteBookStore store = create(path)) {
            Diary diary = new Diary(store);
            String name = "Muirgheas Ó Ceallacháin";
            var person = diary.person(1, name, ortet.plant.Person.Role.CUSTOMER);
            store.keep(new ortet.plant.Person(
                    person.number(), person.name(), person.role(), java.util.Optional.of("Tobar na Caillí")));
            diary.write("2015-03-01 acquired K-1", "2020-05-01 sold K-1; customer=#1");
            store.keep(person.erased());
            for (String left : names()) {
                byte[] bytes = Files.readAllBytes(file(left));
                for (String word : List.of("Muirgheas", "muirgheas", "Caill")) {
                    assertFalse(
                            holds(bytes, word.getBytes(java.nio.charset.StandardCharsets.UTF_8)),
                            left + " holds " + word);
                }
            }
        }
    }

    private static boolean holds(byte[] bytes, byte[] word) {
        for (int at = 0; at + word.length <= bytes.length; at++) {
            if (Arrays.equals(bytes, at, at + word.length, word, 0, word.length)) {
                return true;
            }
        }
        return false;
    }

    @Test
    void backsUpABookThatIsInUse() throws IOException {
        Path path = book("use.ortet");
        Path copy = file("copy.ortet");
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            Diary diary = new Diary(store);
            diary.write("2016-05-01 layer-set J-1; mother=K-1");
            store.read(view -> {
                diary.write("2016-05-02 layer-set J-2; mother=K-1");
                store.backup(copy);
                return null;
            });
            assertEquals(List.of("copy.ortet", "use.ortet", "use.ortet-shm", "use.ortet-wal"), names());
            try (SqliteBookStore other = SqliteBookStore.open(copy)) {
                Books.assertSame(store, other);
            }
        }
    }

    @Test
    void backsUpNothingOverAFileThatIsThere() throws IOException {
        Path path = book("use.ortet");
        Path copy = Files.writeString(file("copy.ortet"), "a shopping list");
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            Refused refused = assertThrows(Refused.class, () -> store.backup(copy));
            assertEquals(List.of(copy + " is there already; expected the name of a new file"), refused.lines());
            Refused nowhere =
                    assertThrows(Refused.class, () -> store.backup(file("none").resolve("copy.ortet")));
            assertEquals(List.of("no folder " + file("none") + " for copy.ortet"), nowhere.lines());
        }
        assertEquals("a shopping list", Files.readString(copy));
        assertEquals(List.of("copy.ortet", "use.ortet"), names());
    }

    @Test
    void leavesNoHalfOfABackup() throws IOException {
        Path path = book("bad.ortet");
        try (SeekableByteChannel channel = Files.newByteChannel(path, StandardOpenOption.WRITE)) {
            channel.position(4096 * 3);
            byte[] rubbish = new byte[4096 * 4];
            Arrays.fill(rubbish, (byte) 0xA5);
            channel.write(ByteBuffer.wrap(rubbish));
        }
        byte[] before = Files.readAllBytes(path);
        try (SqliteBookStore store = SqliteBookStore.open(path)) {
            Unavailable damaged = assertThrows(Unavailable.class, () -> store.backup(file("copy.ortet")));
            assertEquals(List.of("the book " + path + " is damaged; go back to a backup"), damaged.lines());
        }
        assertArrayEquals(before, Files.readAllBytes(path));
        assertEquals(List.of("bad.ortet"), names());
    }

    @Test
    void isOfNoUseOnceClosed() {
        SqliteBookStore store = SqliteBookStore.open(book("closed.ortet"));
        store.close();
        store.close();
        OrtetException defect = assertThrows(OrtetException.class, () -> store.read(BookView::head));
        assertEquals("the book " + file("closed.ortet") + " was used after it was closed", defect.getMessage());
    }

    @Test
    void handsOutAViewForTheLengthOfAQuestion() {
        try (SqliteBookStore store = SqliteBookStore.open(book("view.ortet"))) {
            BookView kept = store.read(view -> view);
            OrtetException defect = assertThrows(OrtetException.class, () -> kept.unit(new Tag("K-1")));
            assertEquals("a view of the book was used after the question that it was handed to", defect.getMessage());
            var entries = store.read(view -> view.since(0));
            assertThrows(IllegalStateException.class, entries::count);
        }
    }
}
