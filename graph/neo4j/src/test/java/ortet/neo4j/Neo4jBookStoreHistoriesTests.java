package ortet.neo4j;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import ortet.book.BookStore;
import ortet.book.BookStoreHistories;

/** Fewer and shorter histories than elsewhere: a server is further away than a file. */
class Neo4jBookStoreHistoriesTests implements BookStoreHistories {
    @Override
    public BookStore emptyStore() {
        return TestServer.create();
    }

    @Override
    @Property(tries = 8)
    public void holdsWhatTheBookInMemoryHolds(@ForAll int seed, @ForAll @IntRange(min = 5, max = 60) int lines) {
        BookStoreHistories.super.holdsWhatTheBookInMemoryHolds(seed, lines);
    }

    @Override
    @Property(tries = 3)
    public void whatIsRefusedChangesNothing(@ForAll int seed, @ForAll @IntRange(min = 5, max = 20) int lines) {
        BookStoreHistories.super.whatIsRefusedChangesNothing(seed, lines);
    }

    @Override
    @Property(tries = 5)
    public void rebuiltAndRestoredBooksHoldTheSame(@ForAll int seed, @ForAll @IntRange(min = 20, max = 60) int lines) {
        BookStoreHistories.super.rebuiltAndRestoredBooksHoldTheSame(seed, lines);
    }

    @Override
    @Property(tries = 5)
    public void aHistoryAtOneGoIsTheSameAsLineByLine(@ForAll int seed, @ForAll @IntRange(min = 5, max = 60) int lines) {
        BookStoreHistories.super.aHistoryAtOneGoIsTheSameAsLineByLine(seed, lines);
    }
}
