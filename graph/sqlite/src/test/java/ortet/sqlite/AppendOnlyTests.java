package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.book.BookView;
import ortet.book.Books;
import ortet.book.Diary;
import ortet.book.Progress;
import ortet.book.Ruling;
import ortet.plant.Person.Role;

/** Entries cannot be changed or deleted behind the book's back, by ortet or by any other program. */
class AppendOnlyTests {
    private static final String COLUMNS = "recorded_order, id, kind, day, by_person, recorded_at, fields, digest";

    private final Shelf shelf = new Shelf();
    private final SqliteBookStore store = shelf.create();

    @BeforeEach
    void write() {
        Diary diary = new Diary(store);
        diary.person(1, "Máire", Role.STAFF);
        diary.write("2015-03-01 acquired K-1; by=#1", "2016-05-01 seen K-1");
    }

    @AfterEach
    void clear() {
        shelf.close();
    }

    /** Run SQL as another program would, with SQLite's own settings. */
    private static void run(Path path, String... sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + path);
                Statement statement = connection.createStatement()) {
            for (String one : sql) {
                statement.executeUpdate(one);
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            UPDATE entry SET kind = 'lost' WHERE recorded_order = 2                     | entries are never changed
            UPDATE OR REPLACE entry SET recorded_order = 1 WHERE recorded_order = 2     | entries are never changed
            UPDATE OR IGNORE entry SET day = '2001' WHERE recorded_order = 2            | entries are never changed
            DELETE FROM entry WHERE recorded_order = 2                                  | entries are never deleted
            DELETE FROM entry                                                           | entries are never deleted
            INSERT OR REPLACE INTO entry (COLUMNS) SELECT 2, randomblob(16), 'lost', day, by_person, recorded_at, fields, digest FROM entry WHERE recorded_order = 2                       | an entry follows the last one without a gap
            REPLACE INTO entry (COLUMNS) SELECT 3, id, 'lost', day, by_person, recorded_at, fields, digest FROM entry WHERE recorded_order = 2                                 | an entry is written once
            INSERT INTO entry (COLUMNS) SELECT 3, id, 'lost', day, by_person, recorded_at, fields, digest FROM entry WHERE recorded_order = 2 ON CONFLICT DO NOTHING           | an entry is written once
            INSERT INTO entry (COLUMNS) SELECT 2, randomblob(16), 'lost', day, by_person, recorded_at, fields, digest FROM entry WHERE recorded_order = 2 ON CONFLICT DO UPDATE SET day = 1 | an entry follows the last one without a gap
            INSERT INTO entry (COLUMNS) SELECT 4, randomblob(16), kind, day, by_person, recorded_at, fields, digest FROM entry WHERE recorded_order = 2                        | an entry follows the last one without a gap
            INSERT INTO entry (COLUMNS) SELECT NULL, randomblob(16), kind, day, by_person, recorded_at, fields, digest FROM entry WHERE recorded_order = 2                     | an entry follows the last one without a gap
            INSERT INTO entry (COLUMNS) SELECT -1, randomblob(16), kind, day, by_person, recorded_at, fields, digest FROM entry WHERE recorded_order = 2                       | an entry follows the last one without a gap
            UPDATE book SET id = '0f0e0d0c-0000-4000-8000-000000000001'                 | a book with entries keeps its identity
            UPDATE book SET zone = 'UTC'                                                | a book with entries keeps its identity
            DELETE FROM book                                                            | the book cannot be deleted
            REPLACE INTO book (one, id, zone, created) VALUES (1, '0f0e0d0c-0000-4000-8000-000000000001', 'UTC', '') | a file holds one book
            DELETE FROM person                                                          | persons are erased
            REPLACE INTO person (number, role) VALUES (1, 'other')                      | a number stands for one person
            UPDATE person SET number = 9                                                | a number stands for one person
            """)
    void isRefusedByTheFileItself(String sql, String why) {
        var before = Books.everything(store);
        SQLException refused =
                assertThrows(SQLException.class, () -> run(store.path(), sql.replace("COLUMNS", COLUMNS)));
        assertTrue(refused.getMessage().contains(why), refused.getMessage());
        Books.assertSame(before, Books.everything(store));
    }

    @Test
    void isStillRefusedAfterAWholeBookWasWrittenAtOneGo() throws SQLException {
        SqliteBookStore large = shelf.create();
        List<String> before = schema(large);
        Ruling nursery = HandMade.nursery(large.read(BookView::head), 1000);
        assertTrue(nursery.entries().size() > 1000);
        large.append(view -> nursery, Progress.NONE);
        assertEquals(before, schema(large));
        Books.assertChained(large);
    }

    private static List<String> schema(SqliteBookStore store) throws SQLException {
        try (Session session = Session.open(store.path(), Session.Way.READ_ONLY, 0)) {
            return session.texts("SELECT sql FROM sqlite_schema ORDER BY type, name");
        }
    }

    @Test
    void wholeBookAtOneGoIsRefusedWithAnIdentityTwice() {
        SqliteBookStore large = shelf.create();
        Ruling nursery = HandMade.nursery(large.read(BookView::head), 1000);
        var entries = new java.util.ArrayList<>(nursery.entries());
        var last = entries.remove(entries.size() - 1);
        var twice = new ortet.book.Chained(
                new ortet.entry.Recorded(
                        last.recorded().order(),
                        last.recorded().recordedAt(),
                        nursery.entries().get(7).recorded().proposed()),
                last.digest());
        entries.add(twice);
        Ruling wrong =
                new Ruling(nursery.head(), entries, nursery.persons(), nursery.facts(), List.of(), 0, 0, List.of());
        assertThrows(ortet.value.Defect.class, () -> large.append(view -> wrong, Progress.NONE));
        assertEquals(0, large.read(BookView::head).order());
        large.append(view -> nursery, Progress.NONE);
        assertEquals(nursery.head(), large.read(BookView::head));
    }

    @Test
    void knowsTheFirstAndLastDayThatItMayHaveBeen() throws SQLException {
        Diary diary = new Diary(store);
        diary.write("2016-02 acquired K-2", "2017 acquired K-3", "2018-12-31 acquired K-4");
        try (Session session = Session.open(store.path(), Session.Way.READ_ONLY, 0)) {
            assertEquals(
                    List.of(
                            "2016-02 2016-02-01 2016-02-29",
                            "2017 2017-01-01 2017-12-31",
                            "2018-12-31 2018-12-31 2018-12-31"),
                    session.texts("SELECT day || ' ' || day_first || ' ' || day_last FROM entry"
                            + " WHERE recorded_order > 2 ORDER BY recorded_order"));
        }
    }
}
