package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import ortet.value.Refused;

/** What every store promises, held against random histories and the book in memory. */
public interface BookStoreHistories {
    /** The time zone of every book here. */
    ZoneId ZONE = ZoneId.of("Europe/Dublin");

    /** Return a new, empty book in {@link #ZONE}; closed here, and before another is asked for. */
    BookStore emptyStore();

    private static boolean isTaken(BooleanSupplier writing) {
        try {
            return writing.getAsBoolean();
        } catch (Refused refused) {
            return false;
        }
    }

    /** Return the line as a proposal; empty when it is no entry at all. */
    private static Optional<Proposal> proposal(Diary diary, String line) {
        try {
            return Optional.of(diary.proposal(line));
        } catch (Refused refused) {
            return Optional.empty();
        }
    }

    @Property(tries = 25)
    default void holdsWhatTheBookInMemoryHolds(@ForAll int seed, @ForAll @IntRange(min = 5, max = 80) int lines) {
        try (BookStore memory = new MemoryBookStore(ZONE);
                BookStore store = emptyStore()) {
            Diary diary = new Diary(memory);
            int taken = Histories.write(seed, lines, line -> {
                Optional<Proposal> entry = proposal(diary, line);
                if (entry.isEmpty()) {
                    return false;
                }
                Proposal proposal = entry.get();
                boolean wanted = isTaken(
                        () -> memory.append(proposal, diary.judge()).head().order() > 0);
                Head before = store.read(BookView::head);
                boolean is = isTaken(
                        () -> store.append(proposal, diary.judge()).head().order() > before.order());
                assertEquals(wanted, is, line);
                if (!is) {
                    assertEquals(before, store.read(BookView::head));
                }
                return wanted;
            });
            assertEquals(3 + taken, store.read(BookView::head).order());
            Books.assertSame(memory, store);
            Books.assertChained(store);
        }
    }

    @Property(tries = 20)
    default void whatIsRefusedChangesNothing(@ForAll int seed, @ForAll @IntRange(min = 5, max = 40) int lines) {
        try (BookStore store = emptyStore()) {
            Diary diary = new Diary(store);
            Histories.write(seed, lines, line -> {
                Map<String, Object> before = Books.everything(store);
                boolean taken = isTaken(() -> !diary.write(line).written().isEmpty());
                if (!taken) {
                    Books.assertSame(before, Books.everything(store));
                }
                return taken;
            });
        }
    }

    @Property(tries = 20)
    default void rebuiltAndRestoredBooksHoldTheSame(@ForAll int seed, @ForAll @IntRange(min = 20, max = 80) int lines) {
        Map<String, Object> before;
        Restoration whole;
        Head head;
        Judge judge;
        try (BookStore store = emptyStore()) {
            Diary diary = new Diary(store);
            judge = diary.judge();
            Histories.write(
                    seed,
                    lines,
                    line -> isTaken(() -> !diary.write(line).written().isEmpty()));
            before = Books.everything(store);
            store.rebuild(judge, Progress.NONE);
            Books.assertSame(before, Books.everything(store));
            whole = Books.whole(store);
            head = store.read(BookView::head);
        }
        try (BookStore copy = emptyStore()) {
            copy.restore(whole, judge, Progress.NONE);
            Books.assertSame(before, Books.everything(copy));
            assertEquals(head, copy.read(BookView::head));
        }
    }

    @Property(tries = 10)
    default void aHistoryAtOneGoIsTheSameAsLineByLine(
            @ForAll int seed, @ForAll @IntRange(min = 5, max = 60) int lines) {
        try (BookStore memory = new MemoryBookStore(ZONE);
                BookStore store = emptyStore()) {
            Diary diary = new Diary(memory);
            Histories.write(
                    seed,
                    lines,
                    line -> isTaken(() -> !diary.write(line).written().isEmpty()));
            List<Proposal.Item> items = Books.whole(memory).entries().stream()
                    .map(recorded -> new Proposal.Item(recorded.proposed(), Optional.empty()))
                    .toList();
            store.append(new Proposal(items, List.of()), diary.judge());
            Books.assertSame(memory, store);
        }
    }
}
