package ortet.sqlite;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import ortet.book.BookStore;
import ortet.book.BookStoreContract;

class SqliteBookStoreTests implements BookStoreContract {
    private final Shelf shelf = new Shelf();

    @AfterEach
    void clear() {
        shelf.close();
    }

    @Override
    public BookStore emptyStore() {
        return shelf.create();
    }

    @Override
    public BookStore again(BookStore store) {
        return shelf.keep(SqliteBookStore.open(((SqliteBookStore) store).path()));
    }

    @Override
    public Optional<BookStore> backup(BookStore store) {
        Path copy = shelf.path();
        store.backup(copy);
        return Optional.of(shelf.keep(SqliteBookStore.open(copy)));
    }

    @Override
    public boolean writesWhileReading() {
        return true;
    }
}
