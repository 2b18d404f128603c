package ortet.neo4j;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import ortet.book.BookStore;
import ortet.book.BookStoreContract;

class Neo4jBookStoreTests implements BookStoreContract {
    private final List<BookStore> open = new ArrayList<>();

    @AfterEach
    void close() {
        open.forEach(BookStore::close);
    }

    private BookStore keep(BookStore store) {
        open.add(store);
        return store;
    }

    @Override
    public BookStore emptyStore() {
        return keep(TestServer.create());
    }

    @Override
    public BookStore again(BookStore store) {
        return keep(TestServer.open());
    }

    /** None: a server is backed up with its own tools. */
    @Override
    public Optional<BookStore> backup(BookStore store) {
        return Optional.empty();
    }

    /** Anybody may, but the question is put again then; {@code ReadingTests} shows that. */
    @Override
    public boolean writesWhileReading() {
        return false;
    }
}
