package ortet.nursery;

import java.util.AbstractSet;
import java.util.HashSet;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;
import java.util.function.Supplier;
import org.jgrapht.GraphType;
import org.jgrapht.graph.AbstractGraph;
import org.jgrapht.graph.DefaultGraphType;

/**
 * A snapshot as JGraphT sees a graph: directed, with parallel edges, for reading alone.
 *
 * <p>A vertex is a unit number, an edge a link number; an edge leads from the mother to what comes from her, so that an
 * order of the vertices in which edges lead forward tells mothers first. A mother who began on a day known so badly that she
 * may be younger than her child is a vertex as well. Nothing is copied: sets are views, and their members are boxed as they
 * are asked for.
 */
final class NurseryGraph extends AbstractGraph<Integer, Integer> {
    private static final GraphType TYPE = new DefaultGraphType.Builder()
            .directed()
            .weighted(false)
            .allowMultipleEdges(true)
            .allowSelfLoops(false)
            .modifiable(false)
            .build();

    private final Snapshot snapshot;
    private final Set<Integer> vertices;
    private final Set<Integer> edges;

    NurseryGraph(Snapshot snapshot) {
        this.snapshot = snapshot;
        this.edges = new Range(0, snapshot.linkCount());
        this.vertices = new Units();
    }

    private boolean isVertex(int unit) {
        return snapshot.isThere(unit) || unit > 0 && unit <= snapshot.lastUnit() && snapshot.countDown(unit) > 0;
    }

    @Override
    public Set<Integer> vertexSet() {
        return vertices;
    }

    @Override
    public Set<Integer> edgeSet() {
        return edges;
    }

    @Override
    public boolean containsVertex(Integer unit) {
        return isVertex(unit);
    }

    @Override
    public boolean containsEdge(Integer link) {
        return link >= 0 && link < snapshot.linkCount();
    }

    @Override
    public Integer getEdgeSource(Integer link) {
        return snapshot.mother(link);
    }

    @Override
    public Integer getEdgeTarget(Integer link) {
        return snapshot.child(link);
    }

    @Override
    public Set<Integer> getAllEdges(Integer mother, Integer child) {
        Set<Integer> found = new HashSet<>();
        if (isVertex(mother) && isVertex(child)) {
            for (int link = snapshot.firstUp(child); link < snapshot.endUp(child); link++) {
                if (snapshot.mother(link) == mother) {
                    found.add(link);
                }
            }
        }
        return found;
    }

    /** Return an edge, or null where there is none, as the interface wants it. */
    @Override
    public Integer getEdge(Integer mother, Integer child) {
        return getAllEdges(mother, child).stream().findFirst().orElse(null);
    }

    @Override
    public int inDegreeOf(Integer unit) {
        assertVertexExist(unit);
        return snapshot.endUp(unit) - snapshot.firstUp(unit);
    }

    @Override
    public int outDegreeOf(Integer unit) {
        assertVertexExist(unit);
        return snapshot.countDown(unit);
    }

    @Override
    public int degreeOf(Integer unit) {
        return inDegreeOf(unit) + outDegreeOf(unit);
    }

    @Override
    public Set<Integer> incomingEdgesOf(Integer unit) {
        assertVertexExist(unit);
        return new Range(snapshot.firstUp(unit), snapshot.endUp(unit));
    }

    @Override
    public Set<Integer> outgoingEdgesOf(Integer unit) {
        assertVertexExist(unit);
        return new View(
                snapshot.countDown(unit),
                at -> snapshot.down(unit, at),
                link -> containsEdge(link) && snapshot.mother(link) == unit);
    }

    @Override
    public Set<Integer> edgesOf(Integer unit) {
        assertVertexExist(unit);
        int first = snapshot.firstUp(unit);
        int up = snapshot.endUp(unit) - first;
        return new View(
                up + snapshot.countDown(unit),
                at -> at < up ? first + at : snapshot.down(unit, at - up),
                link -> containsEdge(link) && (snapshot.mother(link) == unit || snapshot.child(link) == unit));
    }

    @Override
    public GraphType getType() {
        return TYPE;
    }

    @Override
    public double getEdgeWeight(Integer link) {
        return DEFAULT_EDGE_WEIGHT;
    }

    /** Return null: no vertex can be made. */
    @Override
    public Supplier<Integer> getVertexSupplier() {
        return null;
    }

    /** Return null: no edge can be made. */
    @Override
    public Supplier<Integer> getEdgeSupplier() {
        return null;
    }

    private static UnsupportedOperationException readOnly() {
        return new UnsupportedOperationException("a snapshot cannot be changed");
    }

    @Override
    public Integer addEdge(Integer mother, Integer child) {
        throw readOnly();
    }

    @Override
    public boolean addEdge(Integer mother, Integer child, Integer link) {
        throw readOnly();
    }

    @Override
    public Integer addVertex() {
        throw readOnly();
    }

    @Override
    public boolean addVertex(Integer unit) {
        throw readOnly();
    }

    @Override
    public Integer removeEdge(Integer mother, Integer child) {
        throw readOnly();
    }

    @Override
    public boolean removeEdge(Integer link) {
        throw readOnly();
    }

    @Override
    public boolean removeVertex(Integer unit) {
        throw readOnly();
    }

    @Override
    public void setEdgeWeight(Integer link, double weight) {
        throw readOnly();
    }

    /** Numbers that can be counted and told apart without being kept. */
    private static class View extends AbstractSet<Integer> {
        private final int size;
        private final IntUnaryOperator member;
        private final IntPredicate isMember;

        View(int size, IntUnaryOperator member, IntPredicate isMember) {
            this.size = size;
            this.member = member;
            this.isMember = isMember;
        }

        @Override
        public int size() {
            return size;
        }

        @Override
        public boolean contains(Object one) {
            return one instanceof Integer number && isMember.test(number);
        }

        @Override
        public Iterator<Integer> iterator() {
            return new Iterator<>() {
                private int at;

                @Override
                public boolean hasNext() {
                    return at < size;
                }

                @Override
                public Integer next() {
                    if (at >= size) {
                        throw new NoSuchElementException();
                    }
                    return member.applyAsInt(at++);
                }
            };
        }
    }

    private static final class Range extends View {
        Range(int from, int to) {
            super(to - from, at -> from + at, number -> number >= from && number < to);
        }
    }

    private final class Units extends AbstractSet<Integer> {
        private final int size;

        Units() {
            int found = 0;
            for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
                found += isVertex(unit) ? 1 : 0;
            }
            size = found;
        }

        @Override
        public int size() {
            return size;
        }

        @Override
        public boolean contains(Object one) {
            return one instanceof Integer unit && isVertex(unit);
        }

        @Override
        public Iterator<Integer> iterator() {
            return new Iterator<>() {
                private int next = after(0);

                private int after(int unit) {
                    int other = unit + 1;
                    while (other <= snapshot.lastUnit() && !isVertex(other)) {
                        other++;
                    }
                    return other;
                }

                @Override
                public boolean hasNext() {
                    return next <= snapshot.lastUnit();
                }

                @Override
                public Integer next() {
                    if (!hasNext()) {
                        throw new NoSuchElementException();
                    }
                    int unit = next;
                    next = after(unit);
                    return unit;
                }
            };
        }
    }
}
