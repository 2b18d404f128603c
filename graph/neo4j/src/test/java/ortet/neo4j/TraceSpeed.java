package ortet.neo4j;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.lineage.Lineage;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.sqlite.SqliteBookStore;

/**
 * Measures a trace on a book in a file and on its copy on a server, one after another as somebody at the prompt asks:
 * {@code TraceSpeed book.ortet bolt://localhost:7687/neo4j}.
 */
final class TraceSpeed {
    private static final int WARM = 300;
    private static final int MEASURED = 1000;

    private TraceSpeed() {}

    /** Measure: the file, then the address. */
    public static void main(String[] arguments) {
        try (BookStore file = SqliteBookStore.open(Path.of(arguments[0]));
                BookStore server = Neo4jBookStore.open(Address.of(arguments[1]), TestServer.CREDENTIALS)) {
            for (BookStore store : List.of(file, server)) {
                List<Tag> tags = tags(store);
                tags.subList(0, WARM).forEach(tag -> trace(store, tag));
                double[] millis = tags.subList(WARM, tags.size()).stream()
                        .mapToDouble(tag -> trace(store, tag))
                        .sorted()
                        .toArray();
                System.out.printf(
                        "%s: trace ms p50 %.2f, p95 %.2f, p99 %.2f%n",
                        store.getClass().getSimpleName(),
                        millis[millis.length / 2],
                        millis[millis.length * 95 / 100],
                        millis[millis.length * 99 / 100]);
            }
        }
    }

    private static List<Tag> tags(BookStore store) {
        int last = store.read(BookView::head).lastUnit();
        Random random = new Random(1);
        return IntStream.generate(() -> last / 2 + random.nextInt(last / 2))
                .limit(WARM + MEASURED)
                .mapToObj(unit -> store.read(view -> view.tags(new UnitNumber(unit))))
                .filter(tags -> !tags.isEmpty())
                .map(tags -> tags.get(tags.size() - 1))
                .toList();
    }

    private static double trace(BookStore store, Tag tag) {
        long begun = System.nanoTime();
        store.read(view -> Lineage.trace(view, tag, LocalDate.of(2026, 6, 15)));
        return (System.nanoTime() - begun) / 1e6;
    }
}
