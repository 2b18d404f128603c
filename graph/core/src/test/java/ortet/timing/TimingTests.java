package ortet.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collections;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.MemoryBookStore;
import ortet.book.UnitFacts.Method;
import ortet.figures.Range;
import ortet.figures.Warmth;
import ortet.nursery.Snapshot;
import ortet.value.Refused;

/** How long rooting takes, in small nurseries whose times were worked out by hand. */
class TimingTests {
    private static final LocalDate DAY = LocalDate.of(2024, 12, 31);

    private final MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
    private final Diary diary = new Diary(store);

    TimingTests() {
        diary.write(
                "2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
                "2015-03-01 acquired K-2; cultivar=Juniperus chinensis 'Itoigawa'");
    }

    private TimingTable ask(TimingQuestion question) {
        return store.read(view -> Timing.ask(view, Snapshot.of(view, DAY, Timing.parts()), question));
    }

    private TimingRow layers() {
        return ask(TimingQuestion.of(Method.LAYER, DAY)).rows().get(0);
    }

    @Test
    void putsRootsBetweenTheLastLookWithoutAndTheFirstWith() {
        diary.write(
                "2024-05-01 layer-set J-1; mother=K-1",
                "2024-05-31 checked J-1; findings=callus",
                "2024-06-15 seen J-1",
                "2024-06-30 checked J-1; findings=roots-showing",
                "2024-09-08 severed J-1");
        TimingRow row = layers();
        // 30 days after 1 May there was callus, 60 days after there were roots; being seen tells nothing of roots
        assertEquals(Optional.of(new Range(30, 60)), row.firstRoots().half());
        assertEquals(1, row.firstRoots().happened());
        // severed 130 days after
        assertEquals(Optional.of(new Range(130, 130)), row.ready().half());
        assertEquals(Optional.empty(), row.ready().median(), "of one alone no interval is told");
    }

    @Test
    void severingShowsRootsThatNobodyHadSeen() {
        diary.write("2024-05-01 layer-set J-1; mother=K-1", "2024-07-30 severed J-1");
        assertEquals(Optional.of(new Range(0, 90)), layers().firstRoots().half());
    }

    @Test
    void keepsThoseStillWaitingAndLeavesOutThoseThatFailed() {
        diary.write(
                "2024-05-01 layer-set J-1..J-5; mother=K-1",
                "2024-06-30 checked J-1..J-4; findings=nothing",
                "2024-07-30 checked J-1; findings=roots-showing",
                "2024-08-15 checked J-3 J-4; findings=nothing",
                "2024-08-29 severed J-1",
                "2024-09-01 failed J-2; cause=dried");
        TimingRow row = layers();
        assertEquals(5, row.set());
        assertEquals(1, row.failed());
        assertEquals(1, row.firstRoots().happened());
        // J-3 and J-4 had none on 15 August; at J-5 nobody has looked
        assertEquals(2, row.firstRoots().waiting());
        assertEquals(1, row.neverLooked());
        assertEquals(3, row.ready().waiting());
        // one of three has rooted, two had not after 106 days: half of them have not by any day that is known
        assertEquals(106, row.firstRoots().half().orElseThrow().lower());
        assertEquals(
                Double.POSITIVE_INFINITY, row.firstRoots().half().orElseThrow().upper());
    }

    @Test
    void widensTimesByDaysThatAreKnownToTheMonthAlone() {
        diary.write("2024-05 layer-set J-1; mother=K-1", "2024-09-20 severed J-1");
        // set between 1 and 31 May: 112 to 142 days, told as more than 111
        assertEquals(Optional.of(new Range(111, 142)), layers().ready().half());
    }

    @Test
    void countsATrayByItsCuttings() {
        diary.write(
                "2024-06-01 cuttings-struck T-1; mothers=K-2; count=10",
                "2024-07-01 checked T-1; findings=nothing",
                "2024-08-10 taken T-1; count=6",
                "2024-09-09 taken T-1; count=2",
                "2024-09-09 failed T-1; count=2; cause=damped-off");
        TimingRow row = ask(TimingQuestion.of(Method.CUTTING, DAY)).rows().get(0);
        assertEquals(Optional.of("Juniperus chinensis 'Itoigawa'"), row.cultivar());
        assertEquals(8, row.firstRoots().happened());
        assertEquals(2, row.failed());
        // six lifted after 70 days, two after 100
        assertEquals(Optional.of(new Range(70, 70)), row.ready().half());
        assertEquals(Optional.of(new Range(100, 100)), row.ready().ninetieth());
        // without roots after 30 days, rooted at the latest after 70
        assertEquals(Optional.of(new Range(30, 70)), row.firstRoots().half());
    }

    @Test
    void countsWarmthInPlaceOfDays() {
        diary.write("2024-05-01 layer-set J-1; mother=K-1", "2024-05-31 checked J-1; findings=callus");
        diary.write("2024-06-30 checked J-1; findings=roots-showing", "2024-09-08 severed J-1");
        // every day of the year at 15 degrees gives 7 above 8: 30 and 60 days are 210 and 420, 130 days 910
        Warmth even = Warmth.of(Collections.nCopies(12, 15.0), Warmth.Course.LINEAR);
        TimingRow row = ask(TimingQuestion.of(Method.LAYER, DAY).by(new TimingQuestion.Climate(even, 8)))
                .rows()
                .get(0);
        assertEquals(Optional.of(new Range(210, 420)), row.firstRoots().half());
        assertEquals(Optional.of(new Range(910, 910)), row.ready().half());
    }

    @Test
    void tellsNothingWhereThereIsNothing() {
        TimingTable empty = ask(TimingQuestion.of(Method.GRAFT, DAY));
        assertTrue(empty.rows().isEmpty());
        assertEquals(Waiting.NONE, empty.all().firstRoots());
        assertEquals(Optional.empty(), empty.all().ready().half());
    }

    @Test
    void namesTheNearestCultivarWhereThereIsNone() {
        diary.write("2024-05-01 layer-set J-1; mother=K-1");
        Refused refused = assertThrows(
                Refused.class, () -> ask(TimingQuestion.of(Method.LAYER, DAY).cultivar("Deshoj")));
        assertTrue(refused.getMessage().contains("Deshojo"), refused.getMessage());
    }
}
