package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;
import ortet.book.BookStore;
import ortet.book.Checkup;
import ortet.book.Digest;
import ortet.book.Judge;
import ortet.book.Progress;
import ortet.seeds.Sallowfield;
import ortet.sqlite.SqliteBookStore;

class DemoTests {
    @TempDir
    Path folder;

    private static Desk.Answer demo(Desk desk, Path to) {
        return desk.type("demo", "--to", to.toString());
    }

    private static Digest end(Path book) {
        try (BookStore store = SqliteBookStore.open(book)) {
            return store.read(view -> view.head().digest());
        }
    }

    @Test
    void makesTheSameBookEveryTimeAndRunsTheMainJobOnIt() throws IOException {
        Path book = folder.resolve("demo.ortet");
        try (Desk desk = Desk.open()) {
            Desk.Answer answer = demo(desk, book);
            assertEquals("", answer.err());
            assertEquals(0, answer.status());
            assertTrue(answer.out().contains(Sallowfield.SHOWPIECE + "  Acer palmatum"), answer.out());
            assertTrue(answer.out().contains("← the ortet"), answer.out());
            assertTrue(answer.out().contains("origin: ortet "), answer.out());
            assertTrue(
                    answer.out().contains("take by cultivar and method, as of " + Sallowfield.LAST_DAY), answer.out());
            assertTrue(answer.out().contains("What to type next"), answer.out());
            Digest first = end(book);
            assertEquals(0, demo(desk, book).status());
            assertEquals(first, end(book));
            try (Stream<Path> left = Files.list(folder)) {
                assertEquals(List.of(book), left.toList(), "nothing else is left in the folder");
            }
        }
    }

    @Test
    void checksClean() {
        Path book = folder.resolve("demo.ortet");
        try (Desk desk = Desk.open()) {
            assertEquals(0, demo(desk, book).status());
            try (BookStore store = SqliteBookStore.open(book)) {
                Checkup checkup = store.read(view -> Checkup.of(view, desk.bean(Judge.class), Progress.NONE));
                assertEquals(List.of(), checkup.wrong());
                assertTrue(checkup.units() > 4000);
            }
        }
    }

    @Test
    void touchesNoRealBook() {
        try (BookDesk desk = new BookDesk(folder)) {
            desk.done("acquire K-1");
            Digest before = end(desk.book());
            assertEquals(
                    "ortet: " + desk.book() + " is there and is not the demo book; name another file with --to\n",
                    desk.refused("demo --to " + desk.book()));
            assertEquals(before, end(desk.book()));
        }
    }

    @Test
    void touchesNoDemoBookInWhichSomebodyHasWritten() {
        Path book = folder.resolve("demo.ortet");
        try (Desk desk = Desk.open(BookDesk.Day.class)) {
            assertEquals(0, demo(desk, book).status());
            assertEquals(
                    0, desk.type("acquire", "MY-1", "--book", book.toString()).status());
            Digest before = end(book);
            Desk.Answer again = demo(desk, book);
            assertEquals(
                    "ortet: " + book
                            + " is a demo book in which you have written 1 entry; name another file with --to, or"
                            + " remove it\n",
                    again.err());
            assertEquals(1, again.status());
            assertEquals(before, end(book));
        }
    }
}
