package ortet.nursery;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.jgrapht.Graph;
import org.jgrapht.GraphTests;
import org.jgrapht.Graphs;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.alg.lca.NaiveLCAFinder;
import org.jgrapht.graph.DirectedMultigraph;
import org.jgrapht.traverse.TopologicalOrderIterator;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.Direction;
import ortet.book.Histories;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

/** Algorithms of JGraphT on a snapshot as it is. */
class NurseryGraphTests {
    private final Diary diary = new Diary();

    private Graph<Integer, Integer> graph(String day) {
        return diary.store()
                .read(view -> Snapshot.of(view, LocalDate.parse(day), EnumSet.of(Part.LINKS))
                        .graph());
    }

    private int unit(String tag) {
        return diary.unit(tag).value();
    }

    private void family() {
        diary.write(
                "2010-03-01 acquired K-1 K-2 R-1",
                "2011-05-01 layer-set J-1 J-2; mother=K-1",
                "2011-09-01 severed J-1 J-2",
                "2012-05-01 layer-set J-3; mother=J-1",
                "2012-09-01 severed J-3",
                "2013-03-01 graft-worked G-1; scion=J-2; stock=R-1",
                "2013-04-01 taken G-1",
                "2014-03-01 seed-sown S-1; count=4; seed_parent=J-3; pollen_parent=J-3",
                "2014-05-01 taken S-1",
                "2015-05-01 drawn C-1; source=S-1");
    }

    @Test
    void putsMothersBeforeWhatComesFromThem() {
        family();
        Map<Integer, Integer> places = new HashMap<>();
        new TopologicalOrderIterator<>(graph("2020-01-01")).forEachRemaining(at -> places.put(at, places.size()));
        assertEquals(9, places.size());
        assertTrue(places.get(unit("K-1")) < places.get(unit("J-3")));
        assertTrue(places.get(unit("R-1")) < places.get(unit("G-1")));
        assertTrue(places.get(unit("S-1")) < places.get(unit("C-1")));
    }

    @Test
    void findsTheNearestCommonAncestor() {
        family();
        NaiveLCAFinder<Integer, Integer> ancestors = new NaiveLCAFinder<>(graph("2020-01-01"));
        assertEquals(unit("K-1"), ancestors.getLCA(unit("C-1"), unit("G-1")));
        assertEquals(unit("J-3"), ancestors.getLCA(unit("C-1"), unit("J-3")));
        assertEquals(Set.of(), ancestors.getLCASet(unit("K-2"), unit("C-1")));
    }

    @Test
    void knowsWhoBelongsTogether() {
        family();
        ConnectivityInspector<Integer, Integer> families = new ConnectivityInspector<>(graph("2020-01-01"));
        assertEquals(2, families.connectedSets().size());
        assertEquals(Set.of(unit("K-2")), families.connectedSetOf(unit("K-2")));
    }

    @Test
    void hasTwoEdgesWhereSeedAndPollenAreFromOnePlant() {
        family();
        Graph<Integer, Integer> graph = graph("2020-01-01");
        assertEquals(2, graph.getAllEdges(unit("J-3"), unit("S-1")).size());
        assertEquals(2, graph.incomingEdgesOf(unit("S-1")).size());
        assertEquals(3, graph.edgesOf(unit("J-3")).size());
        assertFalse(GraphTests.isSimple(graph));
        assertTrue(graph.getType().isDirected());
        assertTrue(graph.getType().isAllowingMultipleEdges());
    }

    @Test
    void tellsNothingThatCameLater() {
        family();
        Graph<Integer, Integer> graph = graph("2012-06-01");
        assertEquals(6, graph.vertexSet().size());
        assertEquals(3, graph.edgeSet().size());
        assertFalse(graph.containsVertex(unit("G-1")));
        assertThrows(IllegalArgumentException.class, () -> graph.inDegreeOf(unit("G-1")));
    }

    @Test
    void hasAMotherWhoseDayIsKnownBetterThanHerChildren() {
        diary.write("2012-06-01 acquired K-1", "2012 layer-set J-1; mother=K-1");
        Graph<Integer, Integer> graph = graph("2012-03-01");
        assertEquals(Set.of(unit("K-1"), unit("J-1")), graph.vertexSet());
        assertEquals(unit("K-1"), graph.getEdgeSource(graph.getEdge(unit("K-1"), unit("J-1"))));
    }

    @Test
    void cannotBeChanged() {
        family();
        Graph<Integer, Integer> graph = graph("2020-01-01");
        assertThrows(UnsupportedOperationException.class, () -> graph.addVertex(99));
        assertThrows(UnsupportedOperationException.class, () -> graph.removeEdge(0));
        assertThrows(UnsupportedOperationException.class, () -> graph.addEdge(unit("K-1"), unit("K-2")));
        assertThrows(
                UnsupportedOperationException.class, () -> graph.vertexSet().remove(unit("K-1")));
        assertThrows(NoSuchElementException.class, () -> {
            var units = graph.outgoingEdgesOf(unit("C-1")).iterator();
            units.next();
        });
    }

    @Property(tries = 60)
    void isTheGraphThatTheLinksMake(
            @ForAll int seed,
            @ForAll @IntRange(min = 10, max = 90) int lines,
            @ForAll @IntRange(min = 2015, max = 2020) int year) {
        Diary random = new Diary();
        Histories.write(seed, lines, line -> {
            try {
                return !random.write(line).written().isEmpty();
            } catch (Refused refused) {
                return false;
            }
        });
        random.store().read(view -> {
            Snapshot snapshot = Snapshot.of(view, LocalDate.of(9999, 12, 31), EnumSet.of(Part.LINKS));
            Graph<Integer, Integer> graph = snapshot.graph();
            Graph<Integer, Integer> copy = new DirectedMultigraph<>(null, null, false);
            Graphs.addGraph(copy, graph);
            assertEquals(copy.vertexSet(), graph.vertexSet());
            assertEquals(copy.edgeSet(), graph.edgeSet());
            for (int number : graph.vertexSet()) {
                assertEquals(copy.incomingEdgesOf(number), graph.incomingEdgesOf(number));
                assertEquals(copy.outgoingEdgesOf(number), graph.outgoingEdgesOf(number));
                assertEquals(copy.edgesOf(number), graph.edgesOf(number));
                assertEquals(copy.degreeOf(number), graph.degreeOf(number));
                Set<Integer> family = new HashSet<>();
                view.family(new UnitNumber(number), Direction.DOWN, 1000)
                        .units()
                        .forEach(unit -> family.add(unit.value()));
                assertEquals(family, reached(graph, number));
            }
            assertEquals(
                    new ConnectivityInspector<>(copy).connectedSets().size(),
                    new ConnectivityInspector<>(graph).connectedSets().size());
            return null;
        });
        LocalDate day = LocalDate.of(year, 7, 1);
        random.store().read(view -> {
            long links = 0;
            for (int number = 1; number <= view.head().lastUnit(); number++) {
                links += view.facts(new UnitNumber(number)).stream()
                        .flatMap(unit -> unit.links().stream())
                        .filter(link -> !link.day().first().isAfter(day))
                        .count();
            }
            Graph<Integer, Integer> then =
                    Snapshot.of(view, day, EnumSet.of(Part.LINKS)).graph();
            assertEquals(links, then.edgeSet().size());
            return null;
        });
    }

    private static Set<Integer> reached(Graph<Integer, Integer> graph, int from) {
        Set<Integer> found = new HashSet<>(Set.of(from));
        List<Integer> open = new ArrayList<>(found);
        for (int at = 0; at < open.size(); at++) {
            for (int edge : graph.outgoingEdgesOf(open.get(at))) {
                if (found.add(graph.getEdgeTarget(edge))) {
                    open.add(graph.getEdgeTarget(edge));
                }
            }
        }
        return found;
    }
}
