package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.BookView;
import ortet.book.Books;
import ortet.book.Checkup;
import ortet.book.Diary;
import ortet.book.EntrySource;
import ortet.book.Head;
import ortet.book.Intake;
import ortet.book.Loaded;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.value.Refused;
import ortet.value.Unavailable;
import ortet.value.Where;

/** A whole book goes into an empty file at one go, or not at all. */
class LoadTests {
    private final Shelf shelf = new Shelf();

    @AfterEach
    void clear() {
        shelf.close();
    }

    private static List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("2015-01-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'; place=House 1");
        for (int at = 1; at <= 700; at++) {
            lines.add("2020-05-01 layer-set J-" + at + "; mother=K-1; stem_mm=12");
            lines.add("2021-05-01 " + (at % 3 == 0 ? "failed J-" : "severed J-") + at);
        }
        lines.add("a: 2021-06-01 potted J-1; container=2 L");
        lines.add("2021-06-02 corrected; target=a; field=container; value=5 L; reason=misread");
        lines.add("b: 2021-06-03 moved J-2; place=House 2");
        lines.add("2021-06-04 crossed-out; target=b; reason=not moved");
        return lines;
    }

    private static Proposal proposal(String... more) {
        List<String> lines = lines();
        lines.addAll(List.of(more));
        return new Diary().proposal(lines.toArray(new String[0]));
    }

    private static EntrySource source(Proposal proposal) {
        return new EntrySource() {
            @Override
            public void read(Intake intake, Progress progress) {
                for (int at = 0; at < proposal.items().size(); at++) {
                    intake.take(proposal.items().get(at).proposed(), new Where("a.csv", at + 2, Optional.empty()));
                }
            }

            @Override
            public List<Person> persons() {
                return List.of(new Person(
                        new PersonNumber(1), Optional.of("An Example"), Person.Role.STAFF, Optional.empty()));
            }
        };
    }

    private static List<String> schema(SqliteBookStore store) throws SQLException {
        try (Session session = Session.open(store.path(), Session.Way.READ_ONLY, 0)) {
            return session.texts("SELECT sql FROM sqlite_schema ORDER BY type, name");
        }
    }

    private static void assertLoads(SqliteBookStore store) throws SQLException {
        List<String> before = schema(store);
        Proposal proposal = proposal();
        Diary diary = new Diary(store);
        Loaded loaded = store.load(source(proposal), diary.judge(), Progress.NONE);
        assertEquals(proposal.items().size(), loaded.entries());
        assertEquals(701, loaded.begun());
        assertEquals(1, loaded.persons());
        assertEquals(loaded.head(), store.read(BookView::head));
        assertEquals(before, schema(store));
        Checkup checkup = store.read(view -> Checkup.of(view, diary.judge(), Progress.NONE));
        assertEquals(List.of(), checkup.wrong());
        assertEquals(List.of(), store.damage());
        var kept = Books.everything(store);
        store.rebuild(diary.judge(), Progress.NONE);
        Books.assertSame(kept, Books.everything(store));
        assertEquals(before, schema(store));
        diary.write("2022-01-01 potted J-1; container=10 L");
        assertEquals(loaded.entries() + 1, store.read(BookView::head).order());
    }

    @Test
    void isWrittenAsItWasJudged() throws SQLException {
        assertLoads(shelf.create());
    }

    @Test
    void isWrittenBesideOthersWhoHaveTheBookOpen() throws SQLException {
        SqliteBookStore store = shelf.create();
        try (SqliteBookStore other = SqliteBookStore.open(store.path())) {
            other.read(BookView::head);
            assertLoads(store);
            assertTrue(other.read(BookView::head).order() > 1000);
        }
    }

    @Test
    void isTheSameAsIfItHadBeenProposed() {
        Proposal proposal = proposal();
        SqliteBookStore loaded = shelf.create();
        SqliteBookStore proposed = shelf.create();
        Diary diary = new Diary(proposed);
        loaded.load(source(proposal), diary.judge(), Progress.NONE);
        proposed.append(proposal, diary.judge(), Progress.NONE);
        List<Object> there = units(loaded);
        assertEquals(units(proposed), there);
        assertEquals(701, there.size());
    }

    private static List<Object> units(SqliteBookStore store) {
        return store.read(view -> {
            List<Object> units = new ArrayList<>();
            for (int unit = 1; unit <= view.head().lastUnit(); unit++) {
                units.add(view.facts(new ortet.plant.UnitNumber(unit)).orElseThrow());
            }
            return units;
        });
    }

    @Test
    void leavesNothingWhenItCannotBeTrue() throws SQLException, IOException {
        SqliteBookStore store = shelf.create();
        Head before = store.read(BookView::head);
        var kept = Books.everything(store);
        List<String> schema = schema(store);
        Refused refused = assertThrows(
                Refused.class,
                () -> store.load(
                        source(proposal("2022-01-01 potted J-999; container=2 L")),
                        new Diary(store).judge(),
                        Progress.NONE));
        assertEquals("a.csv:1407: no plant or batch J-999; nearest: J-199, J-299, J-399", refused.getMessage());
        assertEquals(before, store.read(BookView::head));
        Books.assertSame(kept, Books.everything(store));
        assertEquals(schema, schema(store));
        try (Stream<Path> files = Files.list(store.path().getParent())) {
            assertEquals(
                    List.of(),
                    files.map(file -> file.getFileName().toString())
                            .filter(name -> name.endsWith(".tmp") || name.endsWith("-journal"))
                            .toList());
        }
        assertLoads(store);
    }

    @Test
    void leavesNothingWhenItIsStopped() {
        SqliteBookStore store = shelf.create();
        EntrySource whole = source(proposal());
        EntrySource stopped = new EntrySource() {
            @Override
            public void read(Intake intake, Progress progress) {
                whole.read(intake, progress);
                Thread.currentThread().interrupt();
            }

            @Override
            public List<Person> persons() {
                return whole.persons();
            }
        };
        assertThrows(Unavailable.class, () -> store.load(stopped, new Diary(store).judge(), Progress.NONE));
        assertTrue(Thread.interrupted());
        assertEquals(0, store.read(BookView::head).order());
    }

    @Test
    void isRefusedByABookThatHasEntries() {
        SqliteBookStore store = shelf.create();
        Diary diary = new Diary(store);
        diary.write("2015-01-01 acquired K-9");
        Refused refused =
                assertThrows(Refused.class, () -> store.load(source(proposal()), diary.judge(), Progress.NONE));
        assertEquals(
                "the book " + store.path() + " has entries already; another can be put into an empty one alone",
                refused.getMessage());
        assertEquals(1, store.read(BookView::head).order());
    }
}
