package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.graph.MaskSubgraph;
import org.junit.jupiter.api.Test;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.book.Histories;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Nature;
import ortet.entry.Acquired;
import ortet.entry.EntryKind;
import ortet.entry.Raised;
import ortet.nursery.Snapshot;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

class ClonesTests {
    private static final LocalDate END = LocalDate.of(9999, 12, 31);
    private static final int WORLDS = 40;
    private static final int MEMBERS = 3;

    private final Diary diary = new Diary();

    private Clones clones() {
        return diary.store().read(view -> Clones.of(Snapshot.of(view, END, Clones.parts())));
    }

    private int unit(String tag) {
        return diary.unit(tag).value();
    }

    /** Return the tags of each clone, by the tag of the first, and the tags of none under {@code -}. */
    private Map<String, Set<String>> sets() {
        Clones clones = clones();
        return diary.store().read(view -> {
            Map<String, Set<String>> sets = new TreeMap<>();
            for (int unit = 1; unit <= view.head().lastUnit(); unit++) {
                int first = clones.first(unit);
                sets.computeIfAbsent(first == 0 ? "-" : tag(view, first), key -> new TreeSet<>())
                        .add(tag(view, unit));
            }
            return sets;
        });
    }

    private static String tag(BookView view, int unit) {
        return view.facts(new UnitNumber(unit)).orElseThrow().tag().text();
    }

    @Test
    void aGraftFollowsItsScionAndWoodBelowItsUnionTheStock() {
        diary.write(
                "2010-03-01 acquired K-1 R-1; raised=cutting",
                "2011-05-01 layer-set J-1; mother=K-1",
                "2011-09-01 severed J-1",
                "2012-03-01 graft-worked G-1; scion=J-1; stock=R-1",
                "2012-06-01 taken G-1",
                "2013-05-01 layer-set J-2; mother=G-1",
                "2013-05-01 layer-set J-3; mother=G-1; below_union=yes",
                "2014-03-01 divided D-1; mother=K-1");
        assertEquals(Map.of("K-1", Set.of("K-1", "J-1", "G-1", "J-2", "D-1"), "R-1", Set.of("R-1", "J-3")), sets());
        Clones clones = clones();
        assertEquals(CloneKind.ACQUIRED, clones.kind(unit("K-1")));
        assertEquals(3, clones.generation(unit("J-2")));
        assertEquals(0, clones.generation(unit("K-1")));
        assertEquals(1, clones.generation(unit("J-3")));
    }

    @Test
    void seedlingsAndSportsStartClonesOfTheirOwn() {
        diary.write(
                "2010-03-01 acquired K-1",
                "2011-03-01 seed-sown S-1; count=9; seed_parent=K-1",
                "2011-06-01 drawn C-1 C-2; source=S-1",
                "2012-05-01 layer-set J-1; mother=C-1",
                "2012-05-02 sport-found X-1; mother=C-1",
                "2013-05-01 layer-set J-2; mother=X-1");
        assertEquals(
                Map.of(
                        "K-1", Set.of("K-1"),
                        "C-1", Set.of("C-1", "J-1"),
                        "C-2", Set.of("C-2"),
                        "X-1", Set.of("X-1", "J-2"),
                        "-", Set.of("S-1")),
                sets());
        Clones clones = clones();
        assertEquals(CloneKind.SEEDLING, clones.kind(unit("C-1")));
        assertEquals(CloneKind.SPORT, clones.kind(unit("X-1")));
        assertTrue(clones.isEach(unit("S-1")));
        assertEquals(Set.of(unit("S-1")), clones.mayBe(unit("C-1")));
    }

    @Test
    void whatIsOneOfSeveralIsNotMerged() {
        diary.write(
                "2010-03-01 acquired K-1 K-2",
                "2011-05-01 layer-set L-1; mother=K-1",
                "2011-09-01 severed L-1",
                "2012-06-01 cuttings-struck T-1; mothers=K-1 K-2; count=20",
                "2012-06-01 cuttings-struck T-2; mothers=K-1 L-1; count=20",
                "2012-09-01 drawn C-1 C-2; source=T-1",
                "2012-09-01 drawn C-3; source=T-2",
                "2013-05-01 layer-set J-1 J-2; mother=C-1",
                "2013-06-01 found-untagged F-1; candidates=C-1 J-1",
                "2013-06-01 found-untagged F-2; candidates=C-1 C-3");
        assertEquals(
                Map.of(
                        "K-1", Set.of("K-1", "L-1", "T-2", "C-3"),
                        "K-2", Set.of("K-2"),
                        "C-1", Set.of("C-1", "J-1", "J-2", "F-1"),
                        "C-2", Set.of("C-2"),
                        "F-2", Set.of("F-2"),
                        "-", Set.of("T-1")),
                sets());
        Clones clones = clones();
        assertEquals(CloneKind.ONE_OF_SEVERAL, clones.kind(unit("C-1")));
        assertEquals(Set.of(unit("K-1"), unit("K-2")), clones.mayBe(unit("C-1")));
        assertEquals(Set.of(unit("K-1"), unit("K-2")), clones.mayBe(unit("F-2")));
        assertEquals(Set.of(unit("K-1"), unit("K-2")), clones.mayBe(unit("T-1")));
    }

    @Test
    void aSeedlingIsACandidateByItself() {
        diary.write(
                "2010-03-01 acquired K-1",
                "2011-03-01 seed-sown S-1; count=9",
                "2011-06-01 taken S-1; count=5",
                "2011-06-02 drawn C-1; source=S-1",
                "2012-06-01 cuttings-struck T-1; mothers=C-1 K-1; count=20",
                "2012-06-01 cuttings-struck T-2; mothers=S-1; count=20",
                "2012-09-01 drawn C-2; source=T-2");
        Clones clones = clones();
        assertEquals(Set.of(unit("K-1"), unit("C-1")), clones.mayBe(unit("T-1")));
        assertEquals(Set.of(unit("S-1")), clones.mayBe(unit("C-2")));
        assertEquals(CloneKind.ONE_OF_SEVERAL, clones.kind(unit("C-2")));
    }

    private static Diary random(int seed, int lines) {
        Diary random = new Diary();
        random.write("2014-01-01 seed-sown S-9; count=30", "2014-01-01 acquired B-9; count=9; raised=seed");
        Histories.write(seed, lines, line -> {
            try {
                return !random.write(line).written().isEmpty();
            } catch (Refused refused) {
                return false;
            }
        });
        return random;
    }

    /**
     * Against possible worlds: in each, every plant is given a genotype at random among those that it may have, by the book
     * alone. Two units are one clone for certain if and only if they are alike in every world.
     */
    @Property(tries = 100)
    void isWhatIsAlikeInEveryPossibleWorld(@ForAll int seed, @ForAll @IntRange(min = 20, max = 110) int lines) {
        Diary random = random(seed, lines);
        random.store().read(view -> {
            Clones clones = Clones.of(Snapshot.of(view, END, Clones.parts()));
            Map<Integer, List<List<Integer>>> worlds = new TreeMap<>();
            Random chance = new Random(seed);
            for (int world = 0; world < WORLDS; world++) {
                World here = new World(view, chance);
                for (int unit = 1; unit <= view.head().lastUnit(); unit++) {
                    if (view.facts(new UnitNumber(unit)).isPresent()) {
                        worlds.computeIfAbsent(unit, key -> new ArrayList<>()).add(here.members(unit));
                    }
                }
            }
            Map<List<Integer>, Set<Integer>> expected = new HashMap<>();
            Set<Integer> none = new TreeSet<>();
            worlds.forEach((unit, members) -> {
                if (members.stream().allMatch(some -> new HashSet<>(some).size() == 1)) {
                    expected.computeIfAbsent(
                                    members.stream().map(some -> some.get(0)).toList(), key -> new TreeSet<>())
                            .add(unit);
                } else {
                    none.add(unit);
                }
            });
            Map<Integer, Set<Integer>> found = new TreeMap<>();
            worlds.keySet()
                    .forEach(unit -> found.computeIfAbsent(clones.first(unit), key -> new TreeSet<>())
                            .add(unit));
            assertEquals(none, Optional.ofNullable(found.remove(Clones.SEVERAL)).orElse(Set.of()));
            assertEquals(Set.copyOf(expected.values()), Set.copyOf(found.values()));
            return null;
        });
    }

    /** One way in which the genotypes may be. */
    private static final class World {
        private final BookView view;
        private final Random chance;
        private final Map<Integer, List<Integer>> known = new HashMap<>();
        private int next;

        World(BookView view, Random chance) {
            this.view = view;
            this.chance = chance;
        }

        List<Integer> members(int unit) {
            List<Integer> made = known.get(unit);
            if (made == null) {
                made = make(view.facts(new UnitNumber(unit)).orElseThrow());
                known.put(unit, made);
            }
            return made;
        }

        private List<Integer> make(UnitFacts unit) {
            int size = unit.nature() == Nature.BATCH ? MEMBERS : 1;
            List<Integer> sources = unit.links().stream()
                    .filter(link -> link.act().keepsTheClone())
                    .map(link -> link.mother().value())
                    .toList();
            List<Integer> members = new ArrayList<>();
            for (int at = 0; at < size; at++) {
                if (sources.isEmpty()) {
                    next += at == 0 || isEach(unit) ? 1 : 0;
                    members.add(next);
                } else {
                    List<Integer> theirs = members(sources.get(chance.nextInt(sources.size())));
                    members.add(theirs.get(chance.nextInt(theirs.size())));
                }
            }
            return members;
        }

        private boolean isEach(UnitFacts unit) {
            var begun = ortet.book.History.of(view, unit.unit(), END).stream()
                    .filter(ortet.book.Event::begins)
                    .findFirst()
                    .orElseThrow()
                    .entry();
            return begun.kind() == EntryKind.SEED_SOWN
                    || begun instanceof Acquired acquired
                            && acquired.raised()
                                    .filter(how -> how == Raised.SEED || how == Raised.COLLECTED)
                                    .isPresent();
        }
    }

    /** What a trace says of where a clone begins, and what the clones of the whole nursery say, is the same. */
    @Property(tries = 60)
    void agreesWithWhereATraceEnds(@ForAll int seed, @ForAll @IntRange(min = 20, max = 110) int lines) {
        Diary random = random(seed, lines);
        random.store().read(view -> {
            Clones clones = Clones.of(Snapshot.of(view, END, Clones.parts()));
            for (int number = 1; number <= view.head().lastUnit(); number++) {
                Optional<UnitFacts> facts = view.facts(new UnitNumber(number));
                if (facts.isEmpty()) {
                    continue;
                }
                Origin origin = Lineage.trace(view, facts.get().tag(), END).origin();
                int first = clones.first(number);
                boolean certain = first != Clones.SEVERAL && clones.kind(first) != CloneKind.ONE_OF_SEVERAL;
                Set<Founder.Kind> kinds =
                        origin.founders().stream().map(Founder::kind).collect(Collectors.toSet());
                boolean single = origin.founders().size() == 1
                        && kinds.stream()
                                .noneMatch(kind -> kind.name().startsWith("EACH")
                                        || kind.name().startsWith("SOME"));
                assertEquals(single, certain, () -> facts.get().tag() + " " + origin);
                if (certain) {
                    assertEquals(first, origin.founders().get(0).unit().value());
                    assertEquals(
                            origin.founders().get(0).isOrtet(),
                            clones.kind(first).isOrtet());
                }
            }
            return null;
        });
    }

    /** Where there are neither sowings nor mixtures, clones are what hangs together by links that keep them. */
    @Property(tries = 40)
    void areTheConnectedPartsWhereNothingIsMixed(@ForAll int seed, @ForAll @IntRange(min = 1, max = 60) int plants) {
        Diary simple = new Diary();
        Random chance = new Random(seed);
        for (int at = 0; at < plants; at++) {
            String day = LocalDate.of(2010, 1, 1).plusDays(at) + " ";
            String mother = at == 0 ? "" : "P-" + chance.nextInt(at);
            boolean bought = at == 0 || chance.nextInt(4) == 0;
            simple.write(bought ? day + "acquired P-" + at : day + "divided P-" + at + "; mother=" + mother);
        }
        simple.store().read(view -> {
            Snapshot snapshot = Snapshot.of(view, END, Clones.parts());
            Clones clones = Clones.of(snapshot);
            var kept = new MaskSubgraph<>(
                    snapshot.graph(), unit -> false, link -> !snapshot.act(link).keepsTheClone());
            for (Set<Integer> part : new ConnectivityInspector<>(kept).connectedSets()) {
                Set<Integer> firsts = part.stream().map(clones::first).collect(Collectors.toSet());
                assertEquals(1, firsts.size());
                part.forEach(unit -> assertTrue(clones.first(unit) <= unit));
            }
            assertEquals(
                    new ConnectivityInspector<>(kept).connectedSets().size(),
                    kept.vertexSet().stream().map(clones::first).distinct().count());
            return null;
        });
    }
}
