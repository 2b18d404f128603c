package ortet.decade;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import ortet.book.BookStore;
import ortet.book.Diary;
import ortet.book.QuickDisk;
import ortet.sqlite.SqliteBookStore;

/** A real book in a file of its own, for as long as a nursery is played. */
final class Book implements Notebook {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-15T12:00:00Z"), ZoneOffset.UTC);

    private final Path folder;
    private final SqliteBookStore store;
    private final Diary diary;

    Book() {
        try {
            folder = Files.createTempDirectory(QuickDisk.folder(), "decade");
        } catch (IOException trouble) {
            throw new UncheckedIOException(trouble);
        }
        store = SqliteBookStore.create(
                folder.resolve("book.ortet"), UUID.randomUUID(), ZoneId.of("Europe/Dublin"), CLOCK);
        diary = new Diary(store);
    }

    BookStore store() {
        return store;
    }

    @Override
    public void write(List<String> lines) {
        if (!lines.isEmpty()) {
            diary.write(lines.toArray(new String[0]));
        }
    }

    @Override
    public void close() {
        store.close();
        QuickDisk.delete(folder);
    }
}
