package ortet.nursery;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import ortet.book.Act;
import ortet.book.Books;
import ortet.book.Diary;
import ortet.book.Histories;
import ortet.book.MemoryBookStore;
import ortet.book.Proposal;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.entry.Recorded;
import ortet.plant.UnitNumber;
import ortet.value.Defect;
import ortet.value.Refused;

class SnapshotTests {
    private static final Set<Part> ALL = EnumSet.allOf(Part.class);

    private final Diary diary = new Diary();

    private Snapshot at(String day) {
        return diary.store().read(view -> Snapshot.of(view, LocalDate.parse(day), ALL));
    }

    private int unit(String tag) {
        return diary.unit(tag).value();
    }

    /** Return everything that a snapshot says, unit by unit. */
    static List<String> told(Snapshot snapshot) {
        List<String> lines = new ArrayList<>();
        for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
            if (!snapshot.isThere(unit)) {
                continue;
            }
            StringBuilder line = new StringBuilder()
                    .append(unit)
                    .append(' ')
                    .append(snapshot.nature(unit))
                    .append(' ')
                    .append(snapshot.begun(unit))
                    .append(' ')
                    .append(snapshot.pending(unit))
                    .append('+')
                    .append(snapshot.growing(unit))
                    .append(" sold ")
                    .append(snapshot.sold(unit))
                    .append(' ')
                    .append(snapshot.left(unit))
                    .append(" is ")
                    .append(
                            snapshot.ownName(unit) < 0
                                    ? "-"
                                    : snapshot.cultivars()
                                            .get(snapshot.ownName(unit))
                                            .toString())
                    .append(snapshot.isDetermined(unit))
                    .append(' ')
                    .append(snapshot.beginning(unit));
            for (int link = snapshot.firstUp(unit); link < snapshot.endUp(unit); link++) {
                line.append(' ')
                        .append(snapshot.act(link))
                        .append(' ')
                        .append(snapshot.mother(link))
                        .append(" n ")
                        .append(snapshot.count(link));
            }
            for (int at = 0; at < snapshot.countDown(unit); at++) {
                line.append(" > ").append(snapshot.child(snapshot.down(unit, at)));
            }
            Lives lives = snapshot.lives();
            for (int at = lives.first(unit); at < lives.end(unit); at++) {
                line.append(" | ")
                        .append(lives.turn(at))
                        .append(' ')
                        .append(lives.day(at))
                        .append('-')
                        .append(lives.lastDay(at))
                        .append(' ')
                        .append(
                                lives.turn(at) == Turn.GRADED
                                        ? lives.sizes().get(lives.value(at))
                                        : Integer.toString(lives.value(at)));
            }
            line.append(' ')
                    .append(
                            lives.treatment(unit) == Lives.NONE
                                    ? "-"
                                    : lives.treatments()
                                            .get(lives.treatment(unit))
                                            .toString());
            lines.add(line.toString());
        }
        Cohorts cohorts = snapshot.cohorts();
        for (int row = 0; row < cohorts.size(); row++) {
            lines.add("cohort " + cohorts.unit(row) + ' ' + cohorts.method(row) + ' ' + cohorts.day(row) + ' '
                    + cohorts.by(row) + ' ' + cohorts.count(row) + ' ' + cohorts.root(row) + ' ' + cohorts.taken(row)
                    + ' ' + cohorts.failed(row) + ' ' + cohorts.withdrawn(row) + ' ' + cohorts.notSeen(row) + ' '
                    + cohorts.movedOn(row) + ' ' + cohorts.foundMore(row) + ' ' + cohorts.looked(row));
        }
        return lines;
    }

    @Test
    void tellsHowANurseryStoodOnADay() {
        diary.person(1, "Máire", ortet.plant.Person.Role.STAFF);
        diary.write(
                "2015-03 acquired K-1; cultivar=Acer palmatum 'Deshojo'; place=House 1",
                "2018-05-01 layer-set J-1 J-2; mother=K-1; by=#1",
                "2018-09-01 severed J-1; place=House 2",
                "2018-09-02 failed J-2",
                "2018-06-01 cuttings-struck T-1; mothers=K-1:30; count=60",
                "2018-09-03 drawn C-1; source=T-1",
                "2019-04-01 redetermined J-1; cultivar=Acer palmatum 'Katsura'",
                "2019-05-01 sold J-1",
                "2019-06-01 returned J-1");
        Snapshot then = at("2018-12-31");
        assertEquals(LocalDate.of(2018, 12, 31), then.asOf());
        assertEquals(5, then.lastUnit());
        assertEquals(Nature.LAYER, then.nature(unit("J-1")));
        assertEquals("2015-03", then.begun(unit("K-1")).toString());
        assertEquals(1, then.growing(unit("J-1")));
        assertEquals(0, then.pending(unit("J-2")));
        assertEquals(59, then.pending(unit("T-1")));
        assertEquals(Snapshot.NONE, then.ownName(unit("J-1")));
        assertEquals(Optional.of(Reason.FAILED), then.left(unit("J-2")));
        assertEquals(Optional.empty(), then.left(unit("J-1")));
        assertEquals(3, then.countDown(unit("K-1")));
        int link = then.firstUp(unit("T-1"));
        assertEquals(Act.STRUCK_FROM, then.act(link));
        assertEquals(30, then.count(link));
        assertEquals(unit("K-1"), then.mother(link));
        assertEquals(Optional.of(Beginning.ACQUIRED), then.beginning(unit("K-1")));
        assertEquals(Optional.empty(), then.beginning(unit("J-1")));
        int row = then.cohorts().row(unit("T-1"));
        assertEquals(60, then.cohorts().count(row));
        assertEquals(1, then.cohorts().taken(row));
        assertEquals(1, then.cohorts().by(then.cohorts().row(unit("J-1"))));

        Snapshot later = at("2019-05-15");
        assertEquals(1, later.sold(unit("J-1")));
        assertEquals(
                "Acer palmatum 'Katsura'",
                later.cultivars().get(later.ownName(unit("J-1"))).toString());
        assertTrue(later.isDetermined(unit("J-1")));
        assertFalse(later.isDetermined(unit("K-1")));
        assertEquals(0, at("2020-01-01").sold(unit("J-1")));
        assertFalse(at("2015-02-28").isThere(unit("K-1")));
        assertTrue(at("2015-03-01").isThere(unit("K-1")));
    }

    @Test
    void tellsHowWhatComesFromNoOtherBegan() {
        diary.write(
                "a: 2015-03-01 acquired R-1; count=9; raised=seed",
                "b: 2015-03-01 acquired R-2; count=9",
                "2015-03-01 acquired P-1; raised=seed",
                "2015-03-01 seed-sown S-1; count=9",
                "2015-03-01 cuttings-struck T-1; count=9",
                "2015-03-01 acquired K-1",
                "2015-04-01 sport-found X-1; mother=K-1");
        Snapshot before = at("2020-01-01");
        assertEquals(Optional.of(Beginning.ACQUIRED_EACH), before.beginning(unit("R-1")));
        assertEquals(Optional.of(Beginning.ACQUIRED), before.beginning(unit("R-2")));
        assertEquals(Optional.of(Beginning.ACQUIRED), before.beginning(unit("P-1")));
        assertEquals(Optional.of(Beginning.SOWN), before.beginning(unit("S-1")));
        assertEquals(Optional.of(Beginning.NOT_IN_THE_BOOK), before.beginning(unit("T-1")));
        assertEquals(Optional.of(Beginning.SPORT), before.beginning(unit("X-1")));
        diary.write(
                "2020-01-01 corrected; target=a; field=raised; value=cutting",
                "2020-01-01 corrected; target=b; field=raised; value=collected");
        Snapshot after = at("2020-01-01");
        assertEquals(Optional.of(Beginning.ACQUIRED), after.beginning(unit("R-1")));
        assertEquals(Optional.of(Beginning.ACQUIRED_EACH), after.beginning(unit("R-2")));
    }

    @Test
    void readsOnlyThePartsAskedFor() {
        diary.write("2015-03-01 acquired K-1");
        Snapshot links = diary.store().read(view -> Snapshot.of(view, Diary.TODAY, EnumSet.of(Part.BEGINNINGS)));
        assertEquals(Set.of(Part.LINKS, Part.BEGINNINGS), links.parts());
        assertThrows(Defect.class, () -> links.growing(1));
        Snapshot more = diary.store().read(view -> links.with(view, EnumSet.of(Part.STANDINGS)));
        assertEquals(Set.of(Part.LINKS, Part.BEGINNINGS, Part.STANDINGS), more.parts());
        assertEquals(1, more.growing(1));
    }

    private static void write(Diary diary, int seed, int lines) {
        Histories.write(seed, lines, line -> {
            try {
                return !diary.write(line).written().isEmpty();
            } catch (Refused refused) {
                return false;
            }
        });
    }

    @Property(tries = 80)
    void isTheSameRetoldFromAllEntries(
            @ForAll int seed,
            @ForAll @IntRange(min = 5, max = 90) int lines,
            @ForAll @IntRange(min = 2015, max = 2021) int year) {
        Diary random = new Diary();
        write(random, seed, lines);
        LocalDate day = LocalDate.of(year, 7, 1);
        random.store().read(view -> {
            assertEquals(
                    told(Snapshot.of(view, day, ALL)),
                    told(Snapshot.knownBy(view, random.judge(), day, view.head().order())));
            return null;
        });
    }

    @Property(tries = 60)
    void knowsNoMoreThanABookThatEndedThen(
            @ForAll int seed,
            @ForAll @IntRange(min = 5, max = 80) int lines,
            @ForAll @IntRange(min = 0, max = 99) int percent) {
        Diary random = new Diary();
        write(random, seed, lines);
        long order = random.store().read(view -> view.head().order()) * percent / 100;
        MemoryBookStore shorter =
                new MemoryBookStore(Books.whole(random.store()).zone());
        List<Recorded> known = Books.whole(random.store()).entries().stream()
                .filter(entry -> entry.order() <= order)
                .toList();
        // the clock of a diary stands still, so that all its entries seem to have been recorded at one go
        shorter.append(
                new Proposal(
                        known.stream()
                                .map(entry -> new Proposal.Item(entry.proposed(), Optional.empty()))
                                .toList(),
                        List.of()),
                random.judge());
        LocalDate day = LocalDate.of(2019, 7, 1);
        List<String> expected = shorter.read(view -> told(Snapshot.of(view, day, ALL)));
        Ticking ticking = new Ticking(random.store());
        assertEquals(expected, ticking.read(view -> told(Snapshot.knownBy(view, random.judge(), day, order))));
        assertEquals(order, (long) ticking.read(view -> Snapshot.order(view, Ticking.instant(order))));
    }

    @Test
    void knowsAllThatWasRecordedAtOneGo() {
        diary.write("2018-05-01 layer-set J-1; mother=K-1", "2015-03-01 acquired K-1");
        Snapshot first = diary.store().read(view -> Snapshot.knownBy(view, diary.judge(), Diary.TODAY, 1));
        assertTrue(first.isThere(unit("K-1")));
        assertEquals(0L, (long) diary.store().read(view -> Snapshot.order(view, Instant.EPOCH)));
        assertEquals(
                0,
                diary.store()
                        .read(view -> Snapshot.knownBy(view, diary.judge(), Diary.TODAY, 0))
                        .graph()
                        .vertexSet()
                        .size());
    }

    @Property(tries = 40)
    void holdsWhatTheFactsSay(@ForAll int seed, @ForAll @IntRange(min = 20, max = 90) int lines) {
        Diary random = new Diary();
        write(random, seed, lines);
        random.store().read(view -> {
            Snapshot snapshot = Snapshot.of(view, LocalDate.of(9999, 12, 31), ALL);
            for (int number = 1; number <= view.head().lastUnit(); number++) {
                Optional<UnitFacts> facts = view.facts(new UnitNumber(number));
                assertEquals(facts.isPresent(), snapshot.isThere(number));
                if (facts.isPresent()) {
                    UnitFacts unit = facts.get();
                    UnitFacts.Standing last =
                            unit.standings().get(unit.standings().size() - 1);
                    assertEquals(last.growing(), snapshot.growing(number));
                    assertEquals(last.pending().orElse(Snapshot.NONE), snapshot.pending(number));
                    assertEquals(unit.links().size(), snapshot.endUp(number) - snapshot.firstUp(number));
                    unit.links().forEach(link -> assertEquals(unit.begun().day(), link.day()));
                    assertEquals(unit.cohort().isPresent(), snapshot.cohorts().row(number) >= 0);
                }
            }
            return null;
        });
    }
}
