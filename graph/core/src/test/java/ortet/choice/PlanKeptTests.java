package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.MemoryBookStore;
import ortet.choice.PlanKept.State;
import ortet.figures.BetaBinomial.Shapes;
import ortet.figures.Stages;
import ortet.nursery.Snapshot;
import ortet.value.Refused;

/** How plans stand that are kept, in a small nursery counted by hand. */
class PlanKeptTests {
    private static final String CULTIVAR = "Acer palmatum 'Deshojo'";

    private final MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
    private final Diary diary = new Diary(store);

    /** Eight seasons of ten layers, eight of them taken, all of which establish and seven are graded in the third autumn. */
    @BeforeEach
    void history() {
        diary.write(
                "2010-03-01 acquired K-1; cultivar=" + CULTIVAR,
                "2011-03-01 kept-as-stock K-1",
                "2010-03-01 acquired Z-1; cultivar=Acer palmatum 'Katsura'");
        for (int year = 2012; year < 2020; year++) {
            String first = "J" + year + "-";
            diary.write(
                    year + "-05-10 layer-set " + first + "1.." + first + "10; mother=K-1",
                    year + "-09-20 severed " + first + "1.." + first + "8",
                    year + "-09-21 failed " + first + "9 " + first + "10; cause=dried",
                    (year + 1) + "-09-20 seen " + first + "1.." + first + "8",
                    (year + 2) + "-10-01 graded " + first + "1.." + first + "7; size=medium");
        }
    }

    private void plan(String name, int wanted, int toSet) {
        diary.write("2020-02-01 planned; name=" + name + "; cultivar=" + CULTIVAR + "; method=layer; wanted=" + wanted
                + "; wanted_by=2022-12-01; sure_percent=90; to_set=" + toSet
                + "; set_from=2020-05-01; set_to=2020-05-31; expected=8.4");
    }

    private PlanKept asOf(String day, String name) {
        LocalDate when = LocalDate.parse(day);
        return store.read(view -> PlanKept.named(view, Snapshot.of(view, when, Plans.parts()), name));
    }

    private void set(int count) {
        diary.write("2020-05-12 layer-set N-1..N-" + count + "; mother=K-1");
    }

    @Test
    void countsWhatWasSetForItAndNothingElse() {
        plan("Spring", 6, 12);
        set(9);
        diary.write(
                "2020-05-12 layer-set X-1; mother=Z-1",
                "2020-04-30 layer-set X-2; mother=K-1",
                "2020-06-01 layer-set X-3; mother=K-1");
        PlanKept kept = asOf("2020-05-20", "spring");
        assertEquals(9, kept.set());
        assertEquals(9, kept.pending());
        assertEquals(3, kept.toCome());
        diary.write("2020-09-20 severed N-1..N-6", "2020-09-21 failed N-7; cause=dried");
        PlanKept later = asOf("2020-10-01", "Spring");
        assertEquals(List.of(9, 6, 1, 2), List.of(later.set(), later.taken(), later.failed(), later.pending()));
        assertEquals(0, later.toCome(), "the days of setting are over");
    }

    @Test
    void tellsWhatToExpectAsByHand() {
        plan("Spring", 6, 12);
        set(12);
        PlanKept.Outlook outlook = asOf("2020-06-10", "Spring").outlook().orElseThrow();
        // eight of ten in every season: no more alike than chance would have it, so Jeffreys' prior and what is known:
        // of
        // taking 64 of 80, of establishing 56 of 56 (those of 2019 are not known yet), of being fit for sale within 896
        // days 42 of
        // 48 (of six seasons followed so long)
        Stages stages = Stages.of(List.of(new Shapes(64.5, 16.5), new Shapes(56.5, 0.5), new Shapes(42.5, 6.5)));
        double[] distribution = stages.distribution(new long[] {12, 0, 0}, 0);
        assertEquals(12 * stages.mean(), outlook.expected(), 1e-6);
        assertEquals(PlanRange.atLeast(distribution, 6), outlook.chance(), 1e-9);
        assertEquals(PlanRange.of(distribution), outlook.range());
        // what took no longer may fail, and what failed tells of the rest of its season
        diary.write("2020-09-20 severed N-1..N-6", "2020-09-21 failed N-7 N-8; cause=dried");
        PlanKept.Outlook later = asOf("2020-10-01", "Spring").outlook().orElseThrow();
        Stages then = Stages.of(List.of(new Shapes(70.5, 18.5), new Shapes(64.5, 0.5), new Shapes(42.5, 6.5)));
        assertEquals(PlanRange.mean(then.distribution(new long[] {4, 6, 0}, 0)), later.expected(), 1e-6);
        // what was seen alive in its second summer has established
        diary.write("2021-09-01 seen N-1..N-6", "2021-09-02 failed N-9..N-12; cause=dried");
        PlanKept.Outlook established = asOf("2021-10-01", "Spring").outlook().orElseThrow();
        assertEquals(6 * 49.5 / 57, established.expected(), 1e-6);
    }

    @Test
    void saysWhetherItIsBehindAndHowManyMoreWouldMendIt() {
        plan("Enough", 6, 12);
        set(12);
        assertEquals(State.ON_COURSE, asOf("2020-05-20", "Enough").state());
        assertEquals(
                Optional.of(0),
                asOf("2020-05-20", "Enough").outlook().orElseThrow().more());
        // kept anew with more wanted
        plan("Enough", 9, 12);
        PlanKept few = asOf("2020-05-20", "Enough");
        assertEquals(State.BEHIND, few.state());
        int more = few.outlook().orElseThrow().more().orElseThrow();
        diary.write("2020-05-20 layer-set M-1..M-" + more + "; mother=K-1");
        assertEquals(State.ON_COURSE, asOf("2020-05-20", "Enough").state());
        diary.write("2020-05-21 failed M-1; cause=dried");
        PlanKept late = asOf("2020-06-01", "Enough");
        assertEquals(State.BEHIND, late.state());
        assertEquals(Optional.empty(), late.outlook().orElseThrow().more(), "the days of setting are over");
    }

    @Test
    void comparesWithWhatCameWhenItsDayIsOver() {
        plan("Six", 6, 12);
        set(8);
        diary.write(
                "2020-09-20 severed N-1..N-8",
                "2021-09-01 seen N-1..N-8",
                "2022-10-01 graded N-1..N-6; size=small",
                "2022-12-02 graded N-7; size=small");
        PlanKept six = asOf("2022-12-02", "Six");
        assertTrue(six.isOver());
        assertEquals(State.MET, six.state());
        assertEquals(6, six.fit());
        assertEquals(Optional.empty(), six.outlook());
        assertEquals(State.MET, asOf("2022-11-01", "Six").state(), "met before its day");
        plan("Six", 7, 12);
        assertEquals(State.MISSED, asOf("2022-12-02", "Six").state(), "the seventh came a day too late");
    }

    @Test
    void countsEachUnitForOnePlanTheEarlierFirst() {
        plan("First", 3, 5);
        plan("Second", 3, 4);
        set(7);
        assertEquals(5, asOf("2020-05-20", "First").set());
        assertEquals(0, asOf("2020-05-20", "First").toCome());
        PlanKept second = asOf("2020-05-20", "Second");
        assertEquals(2, second.set());
        assertEquals(2, second.toCome());
        // what is beyond both counts for the last
        diary.write("2020-05-14 layer-set M-1..M-4; mother=K-1");
        assertEquals(5, asOf("2020-05-20", "First").set());
        assertEquals(6, asOf("2020-05-20", "Second").set());
    }

    @Test
    void takesTheLatestOfAName() {
        plan("Spring", 6, 12);
        plan("SPRING", 7, 14);
        LocalDate day = LocalDate.of(2020, 3, 1);
        List<PlanKept> all = store.read(view -> PlanKept.all(view, Snapshot.of(view, day, Plans.parts())));
        assertEquals(1, all.size());
        assertEquals(7, all.get(0).plan().wanted());
        LocalDate before = LocalDate.of(2020, 1, 31);
        assertEquals(List.of(), store.read(view -> PlanKept.all(view, Snapshot.of(view, before, Plans.parts()))));
        assertEquals(
                List.of("no plan \"Sprin\"; there are SPRING; nearest: SPRING"),
                assertThrows(Refused.class, () -> asOf("2020-03-01", "Sprin")).lines());
        assertEquals(
                List.of("no plan is kept in this book"),
                assertThrows(Refused.class, () -> asOf("2019-03-01", "Spring")).lines());
    }
}
