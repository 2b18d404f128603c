package ortet.neo4j;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.Copy;
import ortet.book.Judge;
import ortet.book.Progress;
import ortet.lineage.Clones;
import ortet.lineage.Lineage;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.sqlite.SqliteBookStore;
import ortet.yield.Take;
import ortet.yield.TakeBy;
import ortet.yield.TakeQuestion;

/**
 * Measures a book in a file beside its copy on a server, in one run: {@code SideBySide book.ortet folder heapMib}. The
 * server is a process of its own with its data in the folder, which must be empty or hold such a copy already; it ends with
 * this program. Not a test.
 */
final class SideBySide {
    private static final int WARM = 300;
    private static final int MEASURED = 1000;
    private static final int RUNS = 5;
    private static final double MILLION = 1e6;
    private static final LocalDate DAY = LocalDate.of(2026, 6, 15);

    private SideBySide() {}

    /** Measure. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path folder = Files.createDirectories(Path.of(arguments[1]));
        try (ServerProcess process = new ServerProcess(folder, Integer.parseInt(arguments[2]));
                BookStore file = SqliteBookStore.open(Path.of(arguments[0]))) {
            process.start();
            ZoneId zone = file.read(BookView::head).zone();
            try (BookStore server = Neo4jBookStore.openOrCreate(
                    process.address(), TestServer.CREDENTIALS, UUID.randomUUID(), zone, Clock.systemUTC())) {
                long begun = System.nanoTime();
                Copy.Copied copied = Copy.of(file, server, new Judge(Clock.systemUTC()), Progress.NONE);
                System.out.printf(
                        Locale.ROOT,
                        "copied %d entries (%d were there) in %.1f s%n",
                        copied.head().order(),
                        copied.already(),
                        (System.nanoTime() - begun) / (MILLION * 1000));
                for (BookStore store : List.of(file, server)) {
                    measure(store);
                }
            }
        }
    }

    private static void measure(BookStore store) {
        String name = store.getClass().getSimpleName();
        List<Tag> tags = tags(store);
        tags.subList(0, WARM).forEach(tag -> trace(store, tag));
        double[] millis = tags.subList(WARM, tags.size()).stream()
                .mapToDouble(tag -> timed(() -> trace(store, tag)))
                .sorted()
                .toArray();
        System.out.printf(
                Locale.ROOT,
                "%s: trace ms p50 %.2f, p95 %.2f, p99 %.2f%n",
                name,
                millis[millis.length / 2],
                millis[millis.length * 95 / 100],
                millis[millis.length * 99 / 100]);
        repeated(name, "all parts of the nursery", () -> snapshot(store, EnumSet.allOf(Part.class)));
        repeated(name, "who comes from whom", () -> snapshot(store, EnumSet.of(Part.LINKS)));
        repeated(name, "every clone", () -> store.read(view -> Clones.of(Snapshot.of(view, DAY, Clones.parts()))));
        repeated(
                name,
                "take by cultivar and method",
                () -> store.read(view -> Take.ask(view, TakeQuestion.asOf(DAY).by(TakeBy.CULTIVAR, TakeBy.METHOD))));
        repeated(
                name,
                "take by mother",
                () -> store.read(view -> Take.ask(view, TakeQuestion.asOf(DAY).by(TakeBy.MOTHER))));
    }

    private static Snapshot snapshot(BookStore store, EnumSet<Part> parts) {
        return store.read(view -> Snapshot.of(view, DAY, parts));
    }

    private static void repeated(String name, String what, Supplier<?> job) {
        double[] millis =
                IntStream.range(0, RUNS).mapToDouble(run -> timed(job)).toArray();
        double first = millis[0];
        Arrays.sort(millis);
        System.out.printf(Locale.ROOT, "%s: %s ms first %.0f, median %.0f%n", name, what, first, millis[RUNS / 2]);
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

    private static Object trace(BookStore store, Tag tag) {
        return store.read(view -> Lineage.trace(view, tag, DAY));
    }

    private static double timed(Supplier<?> job) {
        long begun = System.nanoTime();
        job.get();
        return (System.nanoTime() - begun) / MILLION;
    }
}
