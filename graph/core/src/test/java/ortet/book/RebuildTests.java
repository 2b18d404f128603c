package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import ortet.value.Refused;

/** What is worked out entry by entry is what is worked out from all entries at once. */
class RebuildTests {

    /** Write a random history, one proposal at a time; those refused leave no trace. */
    static int writeRandomHistory(Diary diary, int seed, int lines) {
        MemoryBookStore store = (MemoryBookStore) diary.store();
        return Histories.write(seed, lines, line -> {
            Map<Integer, UnitFacts> before = store.factsByUnit();
            try {
                diary.write(line);
                return true;
            } catch (Refused refused) {
                assertEquals(before, store.factsByUnit());
                return false;
            }
        });
    }

    @Property(tries = 300)
    void rebuiltFactsEqualThoseWorkedOutEntryByEntry(
            @ForAll int seed, @ForAll @IntRange(min = 5, max = 120) int lines) {
        MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
        Diary diary = new Diary(store);
        int taken = writeRandomHistory(diary, seed, lines);
        assertTrue(taken >= 0);
        Map<Integer, UnitFacts> before = store.factsByUnit();
        store.rebuild(diary.judge(), Progress.NONE);
        assertEquals(before, store.factsByUnit());
    }

    @Property(tries = 50)
    void restoredBookEqualsTheOneItWasTakenFrom(@ForAll int seed) {
        MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
        Diary diary = new Diary(store);
        writeRandomHistory(diary, seed, 60);
        Restoration whole = store.read(view -> new Restoration(
                view.head().bookId(),
                view.head().zone(),
                view.since(0).map(Chained::recorded).toList(),
                List.copyOf(view.persons()),
                view.head().digest()));
        MemoryBookStore copy = new MemoryBookStore(ZoneId.of("UTC"));
        copy.restore(whole, diary.judge(), Progress.NONE);
        assertEquals(store.read(BookView::head), copy.read(BookView::head));
        assertEquals(store.factsByUnit(), copy.factsByUnit());
    }
}
