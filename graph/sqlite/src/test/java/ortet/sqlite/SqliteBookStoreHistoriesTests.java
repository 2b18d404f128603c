package ortet.sqlite;

import net.jqwik.api.lifecycle.AfterProperty;
import ortet.book.BookStore;
import ortet.book.BookStoreHistories;

class SqliteBookStoreHistoriesTests implements BookStoreHistories {
    private final Shelf shelf = new Shelf();

    @AfterProperty
    void clear() {
        shelf.close();
    }

    @Override
    public BookStore emptyStore() {
        return shelf.create();
    }
}
