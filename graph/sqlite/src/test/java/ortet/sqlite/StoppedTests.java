package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.book.Progress;
import ortet.book.QueryName;
import ortet.value.Unavailable;

/** What a thread that is interrupted leaves behind. */
class StoppedTests {
    private static final String LONG =
            "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n LIMIT 20000000) SELECT count(*) FROM n";

    private final Shelf shelf = new Shelf();

    @AfterEach
    void clear() {
        Thread.interrupted();
        shelf.close();
    }

    @Test
    void longStatementEndsWhenItsThreadIsInterrupted() throws SQLException {
        try (Session session = Session.scratch()) {
            Thread.currentThread().interrupt();
            SQLException stopped = assertThrows(SQLException.class, () -> session.number(LONG));
            assertEquals(
                    List.of("stopped; nothing was written into book.ortet"),
                    Trouble.with(java.nio.file.Path.of("book.ortet"), stopped).lines());
            assertTrue(Thread.interrupted());
            assertEquals(7, session.number("SELECT 7"));
        }
    }

    @Test
    void longStreamEndsWhenItsThreadIsInterrupted() throws SQLException {
        Question numbers = Question.of(new QueryName("numbers"), """
                -- numbers: many
                -- in: none
                -- out: n
                -- sort: n
                WITH RECURSIVE c (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM c WHERE n < 1000000000) SELECT n FROM c
                """);
        try (Session session = Session.scratch()) {
            long[] last = {0};
            SQLException stopped = assertThrows(
                    SQLException.class,
                    () -> session.stream(numbers, row -> {
                        last[0] = row[0];
                        if (row[0] == 10) {
                            Thread.currentThread().interrupt();
                        }
                    }));
            assertEquals(
                    List.of("stopped; nothing was written into book.ortet"),
                    Trouble.with(java.nio.file.Path.of("book.ortet"), stopped).lines());
            assertTrue(last[0] >= 10 && last[0] < 1_000_000, "stopped at " + last[0]);
            assertTrue(Thread.interrupted());
            assertEquals(7, session.number("SELECT 7"));
        }
    }

    @Test
    void shortQuestionIsAnsweredAllTheSame() {
        SqliteBookStore store = shelf.create();
        Thread.currentThread().interrupt();
        assertEquals(0, store.read(BookView::head).order());
    }

    @Test
    void proposalOfAnInterruptedThreadWritesNothing() {
        SqliteBookStore store = shelf.create();
        Diary diary = new Diary(store);
        diary.write("2020 acquired K-1");
        Thread.currentThread().interrupt();
        assertThrows(Unavailable.class, () -> diary.write("2021 acquired K-2"));
        Thread.interrupted();
        assertEquals(1, store.read(BookView::head).order());
        diary.write("2021 acquired K-2");
        assertEquals(2, store.read(BookView::head).order());
        store.rebuild(diary.judge(), Progress.NONE);
    }
}
