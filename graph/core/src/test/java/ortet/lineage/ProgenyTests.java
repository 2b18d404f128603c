package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import ortet.book.Act;
import ortet.book.Diary;
import ortet.book.Direction;
import ortet.book.Histories;
import ortet.lineage.CloneStory.Member;
import ortet.lineage.Progeny.Filter;
import ortet.lineage.Progeny.Standing;
import ortet.nursery.Snapshot;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

/** What was raised from a plant, and what is of its clone. */
class ProgenyTests {
    private static final LocalDate END = LocalDate.of(2020, 1, 1);

    private Diary diary;

    @BeforeEach
    void growAFamily() {
        diary = new Diary();
        diary.write(
                "2010-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'; place=House 1",
                "2010-03-01 acquired K-2; cultivar=Acer palmatum 'Deshojo'",
                "2010-03-01 acquired R-1; count=9",
                "2011-05-01 layer-set J-1 J-2; mother=K-1",
                "2011-09-01 severed J-1; place=House 2",
                "2011-09-02 failed J-2",
                "2012-06-01 cuttings-struck T-1; mothers=J-1 K-2; count=10",
                "2012-09-01 drawn C-1 C-2; source=T-1",
                "2013-03-01 graft-worked G-1; scion=J-1; stock=R-1",
                "2014-03-01 taken G-1",
                "2015-03-01 sold C-1",
                "2016-03-01 seed-sown S-1; count=4; seed_parent=J-1; pollen_parent=J-1",
                "2017-03-01 redetermined G-1; cultivar=Acer palmatum 'Katsura'");
    }

    private Progeny progeny(String tag, Filter filter) {
        return diary.store().read(view -> Progeny.of(view, new Tag(tag), END, filter));
    }

    private static String shape(List<Branch> branches) {
        return String.join(
                " ",
                branches.stream()
                        .map(branch -> (branch.isAskedFor() ? "" : "!") + branch.tag() + ":" + branch.act()
                                + (branch.isToldElsewhere() ? "^" : "")
                                + (branch.below().isEmpty() ? "" : "(" + shape(branch.below()) + ")"))
                        .toList());
    }

    @Test
    void tellsEverythingThroughEveryLinkEachUnitOnce() {
        Progeny all = progeny("K-1", Filter.ALL);
        assertEquals(
                "J-1:LAYERED_FROM(T-1:STRUCK_FROM(C-1:DRAWN_FROM C-2:DRAWN_FROM) G-1:SCION_OF S-1:SEED_OF S-1:POLLEN_OF^)"
                        + " J-2:LAYERED_FROM",
                shape(all.below()));
        assertEquals(7, all.units());
        assertEquals(3, all.growing());
        assertEquals(12, all.pending());
        assertEquals(1, all.sold());
        Branch tray = all.below().get(0).below().get(0);
        assertEquals("cuttings, from one of several", tray.how());
        assertEquals("8 pending", tray.stands().toString());
        assertEquals(2, tray.depth());
        assertEquals(
                "Acer palmatum 'Katsura'",
                all.below().get(0).below().get(1).own().orElseThrow().toString());
    }

    @Test
    void filtersButTellsTheWay() {
        assertEquals(
                "J-1:LAYERED_FROM J-2:LAYERED_FROM",
                shape(progeny("K-1", new Filter(Optional.of(1), Set.of(), Set.of()))
                        .below()));
        assertEquals(
                "!J-1:LAYERED_FROM(!T-1:STRUCK_FROM(C-1:DRAWN_FROM))",
                shape(progeny("K-1", new Filter(Optional.empty(), Set.of(Standing.SOLD), Set.of()))
                        .below()));
        Progeny drawn = progeny("K-1", new Filter(Optional.empty(), Set.of(Standing.GROWING), Set.of(Act.DRAWN_FROM)));
        assertEquals("!J-1:LAYERED_FROM(!T-1:STRUCK_FROM(C-2:DRAWN_FROM))", shape(drawn.below()));
        assertEquals(1, drawn.units());
        assertEquals(
                "J-2:LAYERED_FROM",
                shape(progeny("K-1", new Filter(Optional.of(1), Set.of(Standing.GONE), Set.of()))
                        .below()));
        assertThrows(Refused.class, () -> new Filter(Optional.of(0), Set.of(), Set.of()));
    }

    @Test
    void tellsNothingThatCameLater() {
        Progeny then =
                diary.store().read(view -> Progeny.of(view, new Tag("K-1"), LocalDate.of(2012, 1, 1), Filter.ALL));
        assertEquals("J-1:LAYERED_FROM J-2:LAYERED_FROM", shape(then.below()));
        assertEquals(
                "K-1 began on 2010-03-01, after 2009-01-01",
                assertThrows(
                                Refused.class,
                                () -> diary.store()
                                        .read(view ->
                                                Progeny.of(view, new Tag("K-1"), LocalDate.of(2009, 1, 1), Filter.ALL)))
                        .getMessage());
    }

    @Test
    void tellsTheCloneWithWhatMayBeOfItApart() {
        CloneStory story = story("G-1");
        assertEquals("K-1", story.row().orElseThrow().tag().text());
        assertEquals(
                List.of("0 K-1", "1 J-1", "1 J-2", "2 G-1"),
                story.members().stream()
                        .map(member -> member.generation() + " " + member.tag())
                        .toList());
        Member graft = story.members().get(3);
        assertEquals(Optional.of(Act.SCION_OF), graft.act());
        assertEquals(List.of(new Tag("J-1")), graft.from());
        assertEquals(
                List.of("Acer palmatum 'Deshojo' 1 0", "Acer palmatum 'Katsura' 0 1"),
                story.names().stream()
                        .map(name -> name.cultivar() + " " + name.said() + " " + name.determined())
                        .toList());
        assertEquals(
                List.of("K-2"),
                story.alike().stream().map(other -> other.tag().text()).toList());
        assertEquals(
                List.of("C-1", "C-2", "T-1"),
                story.doubtful().stream().map(Tag::text).toList());
        assertEquals(1, story.doubtfulLiving());
        assertEquals(
                List.of("Optional[House 1] 1", "Optional[House 2] 1", "Optional.empty 1"),
                story.places().stream()
                        .map(place -> place.place() + " " + place.growing())
                        .toList());
        assertEquals(3, story.row().orElseThrow().living());
        assertEquals(2, story.row().orElseThrow().generations());
    }

    @Test
    void tellsThatAMixedTrayIsOfNoOneClone() {
        CloneStory tray = story("T-1");
        assertEquals(Optional.empty(), tray.row());
        assertEquals(
                List.of("the clone of K-1", "the clone of K-2"),
                tray.mayBe().stream().map(Object::toString).toList());
        CloneStory drawn = story("C-1");
        assertEquals(CloneKind.ONE_OF_SEVERAL, drawn.row().orElseThrow().kind());
        assertEquals(2, drawn.mayBe().size());
        CloneStory sown = story("S-1");
        assertEquals("one of the plants of S-1", sown.mayBe().get(0).toString());
    }

    private CloneStory story(String tag) {
        return diary.store()
                .read(view -> CloneStory.of(view, Snapshot.of(view, END, CloneTable.parts()), new Tag(tag)));
    }

    @Test
    void listsClonesTheLargestFirst() {
        CloneTable table = diary.store()
                .read(view -> CloneTable.of(view, Snapshot.of(view, END, CloneTable.parts()), Optional.empty(), 1));
        assertEquals(
                List.of("K-1 4 3 0", "R-1 1 8 0", "C-2 1 1 0", "K-2 1 1 0", "C-1 1 0 1"),
                table.rows().stream()
                        .map(row -> row.tag() + " " + row.tags() + " " + row.living() + " " + row.sold())
                        .toList());
        assertEquals(2, table.several());
        CloneTable deshojo = diary.store()
                .read(view ->
                        CloneTable.of(view, Snapshot.of(view, END, CloneTable.parts()), Optional.of("katsura"), 1));
        assertEquals(1, deshojo.clones());
        assertEquals(
                "Acer palmatum 'Katsura'", deshojo.rows().get(0).others().get(0).toString());
    }

    @Property(tries = 60)
    void reachesTheWholeFamilyAndNothingElse(@ForAll int seed, @ForAll @IntRange(min = 10, max = 90) int lines) {
        Diary random = new Diary();
        Histories.write(seed, lines, line -> {
            try {
                return !random.write(line).written().isEmpty();
            } catch (Refused refused) {
                return false;
            }
        });
        random.store().read(view -> {
            for (int number = 1; number <= view.head().lastUnit(); number++) {
                UnitNumber unit = new UnitNumber(number);
                if (view.facts(unit).isPresent()) {
                    Tag tag = view.facts(unit).orElseThrow().tag();
                    Set<UnitNumber> expected = new TreeSet<>(
                            view.family(unit, Direction.DOWN, 1000).units());
                    expected.remove(unit);
                    Progeny progeny = Progeny.of(view, tag, LocalDate.of(9999, 1, 1), Filter.ALL);
                    Set<UnitNumber> found = new TreeSet<>();
                    collect(progeny.below(), found);
                    assertEquals(expected, found);
                    assertEquals(expected.size(), progeny.units());
                }
            }
            return null;
        });
    }

    private static void collect(List<Branch> branches, Set<UnitNumber> found) {
        branches.forEach(branch -> {
            found.add(branch.unit());
            collect(branch.below(), found);
        });
    }
}
