package ortet;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.IntToLongFunction;
import java.util.function.Supplier;
import org.jgrapht.Graph;
import org.jgrapht.alg.util.UnionFind;
import org.jgrapht.graph.DefaultDirectedGraph;
import org.jgrapht.graph.DefaultEdge;
import org.jgrapht.traverse.BreadthFirstIterator;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.lineage.Clones;
import ortet.lineage.Lineage;
import ortet.nursery.Snapshot;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.sqlite.SqliteBookStore;

/**
 * Measures questions about families on a book file, in the same run beside SQLite's own recursive query and beside a graph
 * of objects; a program to be run by hand, not a test.
 *
 * <p>Argument: the file of a book. Families are those of 2,000 units drawn at random, the same in every run; each way is
 * gone through once to warm up and once to be measured. One line for each, as a row of a table.
 */
public final class FamilySpeed {
    private static final int FAMILIES = 2000;
    private static final LocalDate DAY = LocalDate.of(2026, 10, 31);
    private static final String UP = "WITH RECURSIVE f(u) AS (SELECT ? UNION SELECT l.mother FROM f JOIN link l"
            + " ON l.child = f.u) SELECT count(*) FROM f";
    private static final String DOWN = "WITH RECURSIVE f(u) AS (SELECT ? UNION SELECT l.child FROM f JOIN link l"
            + " ON l.mother = f.u) SELECT count(*) FROM f";

    private FamilySpeed() {}

    /** Measure. */
    public static void main(String[] arguments) throws SQLException {
        Path file = Path.of(arguments[0]);
        try (BookStore store = SqliteBookStore.open(file);
                Connection plain = DriverManager.getConnection("jdbc:sqlite:file:" + file + "?mode=ro")) {
            int last = store.read(BookView::head).lastUnit();
            Clones cold = once(
                    "every clone, from a file just opened",
                    () -> store.read(view -> Clones.of(Snapshot.of(view, DAY, Clones.parts()))));
            for (int again = 0; again < 2; again++) {
                once("every clone, again", () -> store.read(view -> Clones.of(Snapshot.of(view, DAY, Clones.parts()))));
            }
            Snapshot snapshot = store.read(view -> Snapshot.of(view, DAY, Clones.parts()));
            int[] units = new Random(20261031).ints(FAMILIES, 1, last + 1).toArray();
            List<Tag> tags = store.read(view -> Arrays.stream(units)
                    .mapToObj(unit -> view.tags(new UnitNumber(unit)).get(0))
                    .toList());
            each(
                    "trace, the whole answer",
                    at -> store.read(view ->
                            (long) Lineage.trace(view, tags.get(at), DAY).units()));
            try (PreparedStatement up = plain.prepareStatement(UP);
                    PreparedStatement down = plain.prepareStatement(DOWN)) {
                each("ancestors, SQLite's recursive query, numbers alone", at -> count(up, units[at]));
                each("ancestors, columns", at -> walk(snapshot, units[at], true));
                each("descendants, SQLite's recursive query, numbers alone", at -> count(down, units[at]));
                each("descendants, columns", at -> walk(snapshot, units[at], false));
            }
            Graph<Integer, DefaultEdge> objects = once("a graph of JGraphT's objects made of the columns", () -> {
                Graph<Integer, DefaultEdge> graph = new DefaultDirectedGraph<>(DefaultEdge.class);
                for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
                    graph.addVertex(unit);
                }
                for (int link = 0; link < snapshot.linkCount(); link++) {
                    graph.addEdge(snapshot.mother(link), snapshot.child(link));
                }
                return graph;
            });
            each("ancestors, JGraphT's objects", at -> {
                Set<Integer> met = new HashSet<>(Set.of(units[at]));
                List<Integer> open = new ArrayList<>(met);
                for (int next = 0; next < open.size(); next++) {
                    for (DefaultEdge edge : objects.incomingEdgesOf(open.get(next))) {
                        if (met.add(objects.getEdgeSource(edge))) {
                            open.add(objects.getEdgeSource(edge));
                        }
                    }
                }
                return met.size();
            });
            each("descendants, JGraphT's objects", at -> {
                long met = 0;
                for (var all = new BreadthFirstIterator<>(objects, units[at]); all.hasNext(); all.next()) {
                    met++;
                }
                return met;
            });
            once("every clone, JGraphT's union of sets over its objects", () -> {
                UnionFind<Integer> sets = new UnionFind<>(objects.vertexSet());
                for (int link = 0; link < snapshot.linkCount(); link++) {
                    if (snapshot.act(link).keepsTheClone()) {
                        sets.union(snapshot.mother(link), snapshot.child(link));
                    }
                }
                return sets.numberOfSets();
            });
            once("every clone, columns read before", () -> Clones.of(snapshot));
            Map<Integer, Integer> sizes = new HashMap<>();
            for (int unit = 1; unit <= last; unit++) {
                sizes.merge(cold.first(unit), 1, Integer::sum);
            }
            System.out.printf(Locale.ROOT, "%d units, %d clones%n", last, sizes.size());
        }
    }

    private static long count(PreparedStatement query, int unit) {
        try {
            query.setInt(1, unit);
            try (ResultSet rows = query.executeQuery()) {
                rows.next();
                return rows.getLong(1);
            }
        } catch (SQLException trouble) {
            throw new IllegalStateException(trouble);
        }
    }

    private static long walk(Snapshot snapshot, int unit, boolean up) {
        Set<Integer> met = new HashSet<>(Set.of(unit));
        List<Integer> open = new ArrayList<>(met);
        for (int next = 0; next < open.size(); next++) {
            int here = open.get(next);
            int begin = up ? snapshot.firstUp(here) : 0;
            int end = up ? snapshot.endUp(here) : snapshot.countDown(here);
            for (int at = begin; at < end; at++) {
                int other = up ? snapshot.mother(at) : snapshot.child(snapshot.down(here, at));
                if (met.add(other)) {
                    open.add(other);
                }
            }
        }
        return met.size();
    }

    private static <T> T once(String what, Supplier<T> job) {
        long begin = System.nanoTime();
        T result = job.get();
        System.out.printf(Locale.ROOT, "| %s | %.0f | | |%n", what, (System.nanoTime() - begin) / 1e6);
        return result;
    }

    private static void each(String what, IntToLongFunction job) {
        long[] nanos = new long[FAMILIES];
        long found = 0;
        for (int round = 0; round < 2; round++) {
            found = 0;
            for (int at = 0; at < FAMILIES; at++) {
                long begin = System.nanoTime();
                found += job.applyAsLong(at);
                nanos[at] = System.nanoTime() - begin;
            }
        }
        Arrays.sort(nanos);
        System.out.printf(
                Locale.ROOT,
                "| %s | | %.4f | %.4f | %d units%n",
                what,
                nanos[FAMILIES / 2] / 1e6,
                nanos[FAMILIES * 95 / 100] / 1e6,
                found);
    }
}
