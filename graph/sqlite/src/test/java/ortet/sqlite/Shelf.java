package ortet.sqlite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import ortet.book.QuickDisk;

/** A folder of books for the length of a test. */
final class Shelf implements AutoCloseable {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-15T12:00:00Z"), ZoneOffset.UTC);

    private final Path folder;
    private final List<SqliteBookStore> open = new ArrayList<>();
    private int count;

    Shelf() {
        try {
            folder = Files.createTempDirectory("books");
        } catch (IOException trouble) {
            throw new UncheckedIOException(trouble);
        }
    }

    /** Return the path of a file that is not there yet. */
    Path path() {
        return folder.resolve("book-" + ++count + ".ortet");
    }

    /** Return a new, empty book, which is closed with the shelf. */
    SqliteBookStore create() {
        return keep(SqliteBookStore.create(path(), UUID.randomUUID(), HandMade.ZONE, CLOCK));
    }

    /** Return the store, which is closed with the shelf. */
    SqliteBookStore keep(SqliteBookStore store) {
        open.add(store);
        return store;
    }

    @Override
    public void close() {
        open.forEach(SqliteBookStore::close);
        QuickDisk.delete(folder);
    }
}
