package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.book.BookView;
import ortet.book.Books;
import ortet.book.Chained;
import ortet.book.Diary;

/** Two programs write into one book at the same time. */
class TwoProcessesTests {
    private static final int EACH = 40;

    @TempDir
    Path folder;

    /** Writes pairs of entries into a book. */
    static final class Writer {
        private Writer() {}

        public static void main(String[] arguments) {
            try (SqliteBookStore store = SqliteBookStore.open(Path.of(arguments[0]))) {
                Diary diary = new Diary(store);
                for (int pair = 0; pair < EACH; pair++) {
                    String tag = arguments[1] + "-" + pair;
                    diary.write(
                            "2020-05-01 layer-set " + tag + "; mother=K-1",
                            "2020-05-02 checked " + tag + "; findings=dry");
                }
            }
        }
    }

    @Test
    void neitherLosesAnythingNorComesBetween() throws Exception {
        Path path = folder.resolve("book.ortet");
        try (SqliteBookStore store = SqliteBookStore.create(path, UUID.randomUUID(), HandMade.ZONE, Shelf.CLOCK)) {
            new Diary(store).write("2015-03-01 acquired K-1");
            Child child = new Child(folder);
            List<Process> writers = new ArrayList<>();
            for (String letter : List.of("A", "B")) {
                writers.add(child.start(false, Writer.class, path.toString(), letter));
            }
            for (Process writer : writers) {
                assertEquals(List.of(), Child.said(writer));
            }
            assertEquals(1 + 4 * EACH, store.read(BookView::head).order());
            Books.assertChained(store);
            store.read(view -> {
                try (Stream<Chained> entries = view.since(1)) {
                    List<Chained> all = entries.toList();
                    for (int at = 0; at < all.size(); at += 2) {
                        assertEquals(
                                all.get(at).recorded().entry().tags(),
                                all.get(at + 1).recorded().entry().tags());
                    }
                }
                return null;
            });
            var before = Books.everything(store);
            store.rebuild(new Diary(store).judge(), (step, done, total) -> {});
            Books.assertSame(before, Books.everything(store));
        }
    }
}
