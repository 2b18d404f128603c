package ortet;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import ortet.book.BookStore;
import ortet.lineage.CloneTable;
import ortet.lineage.Clones;
import ortet.lineage.Oddities;
import ortet.nursery.Names;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.sqlite.SqliteBookStore;
import ortet.yield.Compare;
import ortet.yield.CompareOn;
import ortet.yield.CompareQuestion;
import ortet.yield.Strata;
import ortet.yield.Take;
import ortet.yield.TakeBy;
import ortet.yield.TakeQuestion;

/**
 * Measures questions about a whole nursery on a book file; a program to be run by hand, not a test.
 *
 * <p>Arguments: the file of a book, and how often each is done ({@code big.ortet 7}). Each line tells the first time, which
 * pays for what is not warm yet, and the median of the others; at work is what the thread itself had of the processor, which
 * says more where other programs run.
 */
public final class NurserySpeed {
    private static final double MILLION = 1e6;

    private NurserySpeed() {}

    /** Measure. */
    public static void main(String[] arguments) {
        int runs = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 5;
        try (BookStore store = SqliteBookStore.open(Path.of(arguments[0]))) {
            LocalDate day = LocalDate.of(9999, 12, 31);
            for (Part part : Part.values()) {
                Set<Part> parts = EnumSet.of(part);
                timed(runs, "read units and " + part, () -> store.read(view -> Snapshot.of(view, day, parts)));
            }
            Snapshot all = timed(
                    runs,
                    "read all parts",
                    () -> store.read(view -> Snapshot.of(view, day, EnumSet.allOf(Part.class))));
            System.out.printf(
                    Locale.ROOT,
                    "%d units, %d links, %d that count for take: %.1f MiB, %.1f bytes a unit%n",
                    all.lastUnit(),
                    all.linkCount(),
                    all.cohorts().size(),
                    all.bytes() / (double) (1 << 20),
                    all.bytes() / (double) all.lastUnit());
            timed(runs, "clone sets of all units", () -> Clones.of(all));
            timed(
                    runs,
                    "clone sets of all units, reading the book",
                    () -> store.read(view -> Clones.of(Snapshot.of(view, day, Clones.parts()))));
            timed(
                    runs,
                    "clones of two tags and more, in a session",
                    () -> store.read(view -> CloneTable.of(view, all, Optional.empty(), 2)));
            timed(
                    runs,
                    "clones of two tags and more, reading the book",
                    () -> store.read(view ->
                            CloneTable.of(view, Snapshot.of(view, day, CloneTable.parts()), Optional.empty(), 2)));
            timed(runs, "what is odd, in a session", () -> store.read(view -> Oddities.of(view, all, Oddities.MONTHS)));
            timed(runs, "names of all units", () -> Names.of(all));
            TakeQuestion question = TakeQuestion.asOf(day);
            timed(runs, "take in a session", () -> store.read(view -> Take.ask(view, all, question)));
            timed(
                    runs,
                    "take by mother, in a session",
                    () -> store.read(view -> Take.ask(view, all, question.by(TakeBy.MOTHER))));
            timed(
                    runs,
                    "take by cultivar and method, in a session",
                    () -> store.read(view -> Take.ask(view, all, question.by(TakeBy.CULTIVAR, TakeBy.METHOD))));
            CompareQuestion comparison = CompareQuestion.of(CompareOn.METHOD, "layers", "cuttings", day);
            timed(
                    runs,
                    "layers against cuttings, in a session",
                    () -> store.read(view -> Compare.ask(view, all, comparison)));
            timed(
                    runs,
                    "layers against cuttings by cultivar, in a session",
                    () -> store.read(view -> Compare.ask(view, all, comparison.by(TakeBy.CULTIVAR))));
            timed(
                    runs,
                    "layers against cuttings within seasons, in a session",
                    () -> store.read(view -> Compare.ask(view, all, comparison.within(Strata.SEASON))));
            timed(
                    runs,
                    "layers against cuttings, reading the book",
                    () -> store.read(view -> Compare.ask(view, comparison)));
            timed(
                    runs,
                    "take by cultivar and method, reading the book",
                    () -> store.read(view -> Take.ask(view, question.by(TakeBy.CULTIVAR, TakeBy.METHOD))));
        }
    }

    private static <T> T timed(int runs, String what, Supplier<T> job) {
        ThreadMXBean thread = ManagementFactory.getThreadMXBean();
        double[] millis = new double[runs];
        double[] worked = new double[runs];
        Optional<T> result = Optional.empty();
        for (int run = 0; run < runs; run++) {
            long begin = System.nanoTime();
            long work = thread.getCurrentThreadCpuTime();
            result = Optional.of(job.get());
            millis[run] = (System.nanoTime() - begin) / MILLION;
            worked[run] = (thread.getCurrentThreadCpuTime() - work) / MILLION;
        }
        System.out.printf(
                Locale.ROOT,
                "%7.0f ms first (%7.0f at work), then %7.0f ms (%7.0f at work)  %s%n",
                millis[0],
                worked[0],
                median(millis),
                median(worked),
                what);
        return result.orElseThrow();
    }

    /** Return the median of all but the first. */
    private static double median(double[] values) {
        double[] others = Arrays.copyOfRange(values, Math.min(1, values.length - 1), values.length);
        Arrays.sort(others);
        return others[others.length / 2];
    }
}
