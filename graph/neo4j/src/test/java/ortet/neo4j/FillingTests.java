package ortet.neo4j;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.IntConsumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.book.BookStore;
import ortet.book.BookStoreContract;
import ortet.book.BookView;
import ortet.book.Books;
import ortet.book.Copy;
import ortet.book.Diary;
import ortet.book.EntrySource;
import ortet.book.Head;
import ortet.book.Intake;
import ortet.book.Progress;
import ortet.book.Restoration;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.sqlite.SqliteBookStore;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** A whole book goes in, all of it or nothing; a copy that was broken off goes on. */
class FillingTests {
    @TempDir
    Path folder;

    private SqliteBookStore file;
    private Diary diary;
    private Neo4jBookStore store = TestServer.create();

    @BeforeEach
    void writeABook() {
        file = SqliteBookStore.create(
                folder.resolve("book.ortet"), UUID.randomUUID(), TestServer.ZONE, TestServer.CLOCK);
        diary = new Diary(file);
        diary.person(1, "Máire", Role.STAFF);
        diary.person(2, "Trees of the West", Role.CUSTOMER);
        diary.person(3, "Lough Nursery", Role.SUPPLIER);
        BookStoreContract.everyKind().forEach(diary::write);
    }

    @AfterEach
    void close() {
        file.close();
        store.close();
    }

    /** A book's entries, with something to happen before each. */
    private record Source(Restoration whole, IntConsumer before) implements EntrySource {
        @Override
        public void read(Intake intake, Progress progress) {
            for (Recorded entry : whole.entries()) {
                before.accept((int) entry.order());
                intake.take(entry, Optional.empty());
            }
        }

        @Override
        public List<Person> persons() {
            return whole.persons();
        }

        @Override
        public Optional<Identity> identity() {
            return Optional.of(new Identity(whole.bookId(), whole.zone()));
        }
    }

    private Filler filler() {
        return new Filler(store, 10, 4);
    }

    private long count(String what) {
        return store.server().number(what).orElseThrow();
    }

    @Test
    void copiesThereAndBack() {
        Head head = file.read(BookView::head);
        Copy.Copied there = Copy.of(file, store, diary.judge(), Progress.NONE);
        assertEquals(head, there.head());
        assertEquals(3, there.persons());
        Books.assertSame(file, store);
        assertEquals(head, store.read(BookView::head));
        new Diary(store).write("2021-01-01 seen K-1");
        try (SqliteBookStore back = SqliteBookStore.create(
                folder.resolve("back.ortet"), UUID.randomUUID(), TestServer.ZONE, TestServer.CLOCK)) {
            Copy.of(store, back, diary.judge(), Progress.NONE);
            Books.assertSame(store, back);
            assertEquals(store.read(BookView::head), back.read(BookView::head));
        }
    }

    @Test
    void copiesTheRestIntoABeginning() {
        Copy.of(file, store, diary.judge(), Progress.NONE);
        diary.write("2021-01-01 layer-set N-1 N-2; mother=K-1", "2021-01-02 seen K-1");
        diary.write("2021-02-01 retagged N-1; new_tag=N-7");
        diary.person(4, "Una", Role.STAFF);
        file.keep(file.read(view -> view.person("Máire").orElseThrow()).erased());
        Copy.Copied rest = Copy.of(file, store, diary.judge(), Progress.NONE);
        assertEquals(rest.head().order() - 3, rest.already());
        assertEquals(2, rest.persons());
        Books.assertSame(file, store);
        Copy.Copied nothing = Copy.of(file, store, diary.judge(), Progress.NONE);
        assertEquals(nothing.head().order(), nothing.already());
        assertEquals(0, nothing.persons());
        // and the other way round
        new Diary(store).write("2021-03-01 seen K-1", "2021-03-02 layer-set N-9; mother=K-1");
        Copy.of(store, file, diary.judge(), Progress.NONE);
        Books.assertSame(store, file);
    }

    @Test
    void refusesABookThatIsNoBeginning() {
        new Diary(store).write("2015-03-01 acquired K-1");
        assertEquals(
                List.of("the other book is not empty, and it is another book than this one"),
                assertThrows(Refused.class, () -> Copy.of(file, store, diary.judge(), Progress.NONE))
                        .lines());
        store.close();
        store = TestServer.create();
        Copy.of(file, store, diary.judge(), Progress.NONE);
        long order = file.read(BookView::head).order();
        new Diary(store).write("2021-01-01 seen K-1");
        assertEquals(
                List.of("the other book has " + (order + 1) + " entries, this one only " + order
                        + "; copy the other way round"),
                assertThrows(Refused.class, () -> Copy.of(file, store, diary.judge(), Progress.NONE))
                        .lines());
        diary.write("2021-01-01 seen K-2");
        Map<String, Object> before = Books.everything(store);
        assertEquals(
                List.of("the other book went its own way: its entry " + (order + 1)
                        + " is not the one that this book has; neither was changed"),
                assertThrows(Refused.class, () -> Copy.of(file, store, diary.judge(), Progress.NONE))
                        .lines());
        Books.assertSame(before, Books.everything(store));
    }

    @Test
    void showsNothingBeforeAllOfItIsThere() {
        Restoration whole = Books.whole(file);
        try (Neo4jBookStore other = TestServer.open()) {
            filler().fill(
                            new Source(whole, order -> {
                                if (order == 40) {
                                    Unavailable told =
                                            assertThrows(Unavailable.class, () -> other.read(BookView::head));
                                    assertEquals(
                                            "a whole book is being written into " + TestServer.address()
                                                    + "; wait until that is done",
                                            told.getMessage());
                                    assertThrows(
                                            Unavailable.class, () -> new Diary(other).write("2021-01-01 acquired X-1"));
                                }
                            }),
                            diary.judge(),
                            Progress.NONE);
            Books.assertSame(file, other);
        }
    }

    @Test
    void takesEverythingOutAgainWhenItCannotBeTrue() {
        Restoration whole = Books.whole(file);
        assertThrows(
                IllegalStateException.class,
                () -> filler().fill(
                                new Source(whole, order -> {
                                    if (order == 40) {
                                        throw new IllegalStateException("on purpose");
                                    }
                                }),
                                diary.judge(),
                                Progress.NONE));
        assertEquals(0, count("MATCH (n) WHERE NOT n:Book AND NOT n:Pen AND NOT n:Schema RETURN count(n)"));
        assertEquals(0, store.read(BookView::head).order());
        Copy.of(file, store, diary.judge(), Progress.NONE);
        Books.assertSame(file, store);
    }

    @Test
    void goesOnWhereItWasBrokenOff() {
        Restoration whole = Books.whole(file);
        Neo4jBookStore dying = TestServer.open();
        assertThrows(
                RuntimeException.class,
                () -> new Filler(dying, 10, 4)
                        .fill(
                                new Source(whole, order -> {
                                    if (order == 35) {
                                        await("MATCH (e:Entry) RETURN count(e)", 30);
                                        dying.close();
                                    }
                                }),
                                diary.judge(),
                                Progress.NONE));
        assertEquals(30, count("MATCH (e:Entry) RETURN count(e)"));
        assertTrue(store.isHalfFilled());
        store.server()
                .tell(session -> session.run("MATCH (e:Entry) SET e.mark = 1").consume());
        longAgo();
        Unavailable told = assertThrows(Unavailable.class, () -> store.read(BookView::head));
        assertEquals(
                "a whole book was being written into " + TestServer.address()
                        + ", and that was broken off; do it again," + " or make an empty one with \"ortet book new\"",
                told.getMessage());
        Copy.of(file, store, diary.judge(), Progress.NONE);
        Books.assertSame(file, store);
        assertEquals(30, count("MATCH (e:Entry) WHERE e.mark = 1 RETURN count(e)"));
    }

    @Test
    void goesOnWithTheFactsWhereItWasBrokenOff() {
        Copy.of(file, store, diary.judge(), Progress.NONE);
        int last = file.read(BookView::head).lastUnit();
        // as it stands when the last transaction of all was never made, and units after the fifth were not yet told
        store.server().tell(session -> {
            session.run("MATCH (u:Unit)-->(x) WHERE u.unit > 5 AND NOT x:Unit AND NOT x:Place AND NOT x:Cultivar"
                            + " DETACH DELETE x")
                    .consume();
            session.run("MATCH (u:Unit) WHERE u.unit > 5 DETACH DELETE u").consume();
            session.run("MATCH (u:Unit) SET u.mark = 1").consume();
            session.run("MATCH (p:Person) DELETE p").consume();
            return session.run("MATCH (b:Book) SET b.filling = 'gone', b.filling_book = b.id,"
                            + " b.filling_digest = b.digest, b.recorded_order = 0, b.digest = null, b.last_unit = 0")
                    .consume();
        });
        longAgo();
        Copy.of(file, store, diary.judge(), Progress.NONE);
        Books.assertSame(file, store);
        assertEquals(5, count("MATCH (u:Unit) WHERE u.mark = 1 RETURN count(u)"));
        assertEquals(last, store.read(BookView::head).lastUnit());
    }

    @Test
    void makesAnEmptyBookOfOneThatWasBrokenOff() {
        store.server()
                .tell(session -> session.run("MATCH (b:Book) SET b.filling = 'gone', b.filling_book = '' "
                                + "CREATE (:Entry {recorded_order: 1}), (:Unit {unit: 1})")
                        .consume());
        longAgo();
        try (BookStore anew = Neo4jBookStore.create(
                TestServer.address(), TestServer.CREDENTIALS, UUID.randomUUID(), TestServer.ZONE, TestServer.CLOCK)) {
            assertEquals(0, anew.read(BookView::head).order());
            assertEquals(
                    1, new Diary(anew).write("2015-03-01 acquired K-1").head().order());
        }
    }

    private void longAgo() {
        store.server()
                .tell(session -> session.run("MATCH (b:Book) SET b.filling_seen = datetime() - duration({minutes: 5})")
                        .consume());
    }

    private void await(String cypher, long wanted) {
        long until = System.nanoTime() + 30_000_000_000L;
        while (count(cypher) < wanted && System.nanoTime() < until) {
            Thread.onSpinWait();
        }
    }
}
