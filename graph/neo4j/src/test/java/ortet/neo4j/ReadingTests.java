package ortet.neo4j;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import ortet.book.BookView;
import ortet.book.Chained;
import ortet.book.Diary;
import ortet.plant.Tag;

/** One question sees one book, whoever writes meanwhile. */
class ReadingTests {
    private final Neo4jBookStore store = TestServer.create();
    private final Neo4jBookStore other = TestServer.open();
    private final Diary diary = new Diary(other);

    @BeforeEach
    void write() {
        diary.write("2015-03-01 acquired K-1");
    }

    @AfterEach
    void close() {
        store.close();
        other.close();
    }

    private void pen(String what) {
        store.server()
                .tell(session ->
                        session.run("MATCH (p:Pen {one: 1}) SET " + what).consume());
    }

    @Test
    void asksAgainWhenSomebodyWroteMeanwhile() {
        List<Long> seen = new ArrayList<>();
        List<Boolean> found = new ArrayList<>();
        store.read(view -> {
            seen.add(view.head().order());
            found.add(view.unit(new Tag("J-1")).isPresent());
            if (seen.size() == 1) {
                diary.write("2016-05-01 layer-set J-1; mother=K-1");
            }
            found.add(view.unit(new Tag("J-1")).isPresent());
            return 0;
        });
        assertEquals(List.of(1L, 2L), seen);
        // the first view is torn, which is why its answer is not handed out
        assertEquals(List.of(false, true, true, true), found);
    }

    @Test
    void asksUnderTheLockWhenSomebodyWritesAllTheTime() {
        List<Long> seen = new ArrayList<>();
        store.read(view -> {
            seen.add(view.head().order());
            view.unit(new Tag("K-1"));
            if (seen.size() <= 4) {
                diary.write("2016-05-01 seen K-1");
            }
            return 0;
        });
        assertEquals(List.of(1L, 2L, 3L, 4L, 5L), seen);
    }

    @Test
    void asksOnceWhereNothingDependsOnWhoWrites() {
        List<Long> seen = new ArrayList<>();
        List<Long> orders = store.read(view -> {
            seen.add(view.head().order());
            diary.write("2016-05-01 seen K-1");
            try (var entries = view.since(0)) {
                return entries.map((Chained entry) -> entry.recorded().order()).toList();
            }
        });
        assertEquals(List.of(1L), seen);
        assertEquals(List.of(1L), orders);
    }

    @Test
    void asksAgainWhenWhatFailedWasTorn() {
        int[] asked = {0};
        String answer = store.read(view -> {
            boolean isBefore = view.unit(new Tag("J-1")).isPresent();
            if (++asked[0] == 1) {
                diary.write("2016-05-01 layer-set J-1; mother=K-1");
                throw new IllegalStateException("torn");
            }
            return "asked " + asked[0] + " times, " + isBefore;
        });
        assertEquals("asked 2 times, true", answer);
    }

    @Test
    void answersAndMendsThePenWhenAWriterDiedBetweenAnnouncingAndWriting() {
        pen("p.announced = 1000");
        assertEquals(1L, store.<Long>read(view -> view.head().order()).longValue());
        assertEquals(Optional.of(1000L), store.server().number("MATCH (p:Pen {one: 1}) RETURN p.written"));
        assertEquals(2, diary.write("2016-05-01 seen K-1").head().order());
        assertEquals(Optional.of(1001L), store.server().number("MATCH (p:Pen {one: 1}) RETURN p.written"));
    }

    @Test
    void isOfNoUseAfterTheQuestion() {
        BookView[] kept = new BookView[1];
        store.read(view -> kept[0] = view);
        assertThrows(RuntimeException.class, () -> kept[0].head());
    }
}
