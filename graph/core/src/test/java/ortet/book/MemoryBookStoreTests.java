package ortet.book;

import java.time.ZoneId;
import java.util.Optional;

class MemoryBookStoreTests implements BookStoreContract {
    @Override
    public BookStore emptyStore() {
        return new MemoryBookStore(ZoneId.of("Europe/Dublin"));
    }

    @Override
    public BookStore again(BookStore store) {
        return store;
    }

    @Override
    public Optional<BookStore> backup(BookStore store) {
        return Optional.empty();
    }

    @Override
    public boolean writesWhileReading() {
        return false;
    }
}
