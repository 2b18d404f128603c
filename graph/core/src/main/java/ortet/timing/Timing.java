package ortet.timing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.book.UnitFacts.Method;
import ortet.figures.Followed;
import ortet.figures.Interval;
import ortet.figures.KaplanMeier;
import ortet.figures.Turnbull;
import ortet.figures.Within;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Names;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.Turn;
import ortet.plant.CultivarName;

/**
 * Answers how long rooting takes (docs/methods/timing.md).
 *
 * <p>Roots come between two looks: after the last check that found none, at the latest on the day of the first that found
 * some, or of severing or lifting. The day of severing is the diary's, not the roots'. What failed never rooted and is in no
 * time; what is pending is waiting still, from the last check that found nothing. So the times are those <em>of what comes
 * to roots</em>, if what is pending does as well.
 */
public final class Timing {
    private static final double TENTH = 0.1;
    private static final double HALF = 0.5;
    private static final double NINETIETH = 0.9;
    private static final int REPEATS = 99;
    private static final long SEED = 1;

    private final Snapshot snapshot;
    private final Cohorts cohorts;
    private final Lives lives;
    private final Names names;
    private final TimingQuestion question;

    private Timing(Snapshot snapshot, TimingQuestion question) {
        this.snapshot = snapshot;
        this.cohorts = snapshot.cohorts();
        this.lives = snapshot.lives();
        this.names = Names.of(snapshot);
        this.question = question;
    }

    /** Return the parts of a snapshot that the answer needs. */
    public static Set<Part> parts() {
        return EnumSet.of(Part.LINKS, Part.COHORTS, Part.NAMES, Part.STANDINGS, Part.LIVES);
    }

    /**
     * Return the times out of a snapshot of the day asked about, with the parts needed.
     *
     * @throws ortet.value.Refused when the cultivar asked for is not in the book; the nearest are named
     */
    public static TimingTable ask(BookView view, Snapshot snapshot, TimingQuestion question) {
        return new Timing(snapshot, question).table(view);
    }

    /** What was seen of the units of one row of the answer. */
    private static final class Seen {
        private int set;
        private int failed;
        private int neverLooked;
        private final List<Within> roots = new ArrayList<>();
        private final List<Within> ready = new ArrayList<>();

        void add(Seen other) {
            set += other.set;
            failed += other.failed;
            neverLooked += other.neverLooked;
            roots.addAll(other.roots);
            ready.addAll(other.ready);
        }
    }

    private TimingTable table(BookView view) {
        IntPredicate asked = asked(view);
        // the name that is not known comes last: nothing sorts after it
        Map<String, Seen> byName = new TreeMap<>();
        Seen unknown = new Seen();
        for (int row = 0; row < cohorts.size(); row++) {
            if (asked.test(row)) {
                int name = names.name(cohorts.unit(row));
                Seen seen = name < 0
                        ? unknown
                        : byName.computeIfAbsent(snapshot.cultivars().get(name).toString(), one -> new Seen());
                look(row, seen);
            }
        }
        Seen all = new Seen();
        List<TimingRow> rows = new ArrayList<>();
        byName.forEach((name, seen) -> {
            all.add(seen);
            if (seen.set > 0) {
                rows.add(row(Optional.of(name), seen, true));
            }
        });
        if (unknown.set > 0) {
            all.add(unknown);
            rows.add(row(Optional.empty(), unknown, true));
        }
        return new TimingTable(question, rows, row(Optional.empty(), all, rows.size() == 1));
    }

    private IntPredicate asked(BookView view) {
        IntPredicate asked = row -> snapshot.isThere(cohorts.unit(row))
                && cohorts.count(row) != Cohorts.NONE
                && cohorts.method(row) == question.method();
        if (question.fromYear().isPresent() || question.toYear().isPresent()) {
            int from = question.fromYear().orElse(Integer.MIN_VALUE);
            int to = question.toYear().orElse(Integer.MAX_VALUE);
            asked = asked.and(row -> {
                int year = LocalDate.ofEpochDay(cohorts.firstDay(row)).getYear();
                return from <= year && year <= to;
            });
        }
        if (question.cultivar().isPresent()) {
            Set<CultivarName> used = new HashSet<>();
            for (int row = 0; row < cohorts.size(); row++) {
                int name = names.name(cohorts.unit(row));
                if (name >= 0) {
                    used.add(snapshot.cultivars().get(name));
                }
            }
            Set<CultivarName> found = Lookup.cultivars(view, question.cultivar().get(), used);
            asked = asked.and(row -> {
                int name = names.name(cohorts.unit(row));
                return name >= 0 && found.contains(snapshot.cultivars().get(name));
            });
        }
        return asked;
    }

    /** Read off the turns of a unit when it was looked at, and what was found. */
    private void look(int row, Seen seen) {
        int unit = cohorts.unit(row);
        int first = cohorts.firstDay(row);
        int last = cohorts.isExact(row)
                ? first
                : Math.toIntExact(cohorts.day(row).last().toEpochDay());
        int set = Math.max(0, cohorts.count(row)) + cohorts.foundMore(row) - cohorts.movedOn(row);
        boolean single = cohorts.method(row) == Method.LAYER;
        int none = last;
        int rooted = -1;
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            switch (lives.turn(at)) {
                case ALIVE -> {
                    if (lives.value(at) == Turn.NO_ROOTS && rooted < 0) {
                        none = Math.max(none, lives.day(at));
                    } else if (lives.value(at) == Turn.ROOTS && rooted < 0 && single) {
                        rooted = lives.lastDay(at);
                    }
                }
                case TAKEN -> {
                    int until = rooted >= 0 ? rooted : lives.lastDay(at);
                    for (int one = 0; one < lives.value(at); one++) {
                        seen.roots.add(between(first, last, none - last, until - first));
                        seen.ready.add(between(
                                first,
                                last,
                                lives.day(at) - last - (exact(row, at) ? 0 : 1),
                                lives.lastDay(at) - first));
                    }
                }
                default -> {}
            }
        }
        int failed = cohorts.failed(row) + cohorts.withdrawn(row);
        int pending = set - cohorts.taken(row) - failed;
        seen.set += set;
        seen.failed += failed;
        for (int one = 0; one < pending; one++) {
            if (rooted >= 0) {
                seen.roots.add(between(first, last, none - last, rooted - first));
            } else if (none > last) {
                seen.roots.add(after(last, none - last));
            } else {
                seen.neverLooked++;
            }
            seen.ready.add(
                    after(last, Math.max(0, Math.toIntExact(snapshot.asOf().toEpochDay()) - last)));
        }
    }

    private boolean exact(int row, int turn) {
        return cohorts.isExact(row) && lives.day(turn) == lives.lastDay(turn);
    }

    /** Return that it happened after so many days and no later than so many, since setting on a day between two. */
    private Within between(int first, int last, int after, int until) {
        int right = Math.max(1, until);
        int left = Math.max(0, Math.min(after, right));
        double until0 = Math.max(Double.MIN_NORMAL, counted(first, right));
        double after0 = Math.min(until0, counted(last, left));
        return left == right ? Within.exactly(until0) : new Within(after0, until0);
    }

    private Within after(int last, int days) {
        return Within.after(counted(last, days));
    }

    /** Return some days from a day on as they are counted: as days, or as the warmth in them. */
    private double counted(int from, int days) {
        return question.climate()
                .map(climate -> climate.warmth()
                        .sum(Math.min(365, LocalDate.ofEpochDay(from).getDayOfYear()), days, climate.baseC()))
                .orElse((double) days);
    }

    private TimingRow row(Optional<String> cultivar, Seen seen, boolean alike) {
        return new TimingRow(
                cultivar,
                seen.set,
                seen.failed,
                seen.neverLooked,
                waiting(seen.roots, alike),
                waiting(seen.ready, alike));
    }

    private Waiting waiting(List<Within> times, boolean alike) {
        List<Within> sorted = new ArrayList<>(times);
        sorted.sort((one, other) -> one.left() != other.left()
                ? Double.compare(one.left(), other.left())
                : Double.compare(one.right(), other.right()));
        int happened = (int) sorted.stream().filter(Within::hasHappened).count();
        Optional<Turnbull> fit = happened == 0
                ? Optional.empty()
                : Turnbull.of(Collections.unmodifiableList(sorted)).filter(Turnbull::hasConverged);
        return new Waiting(
                happened,
                sorted.size() - happened,
                fit.map(one -> one.quantile(TENTH)),
                fit.map(one -> one.quantile(HALF)),
                fit.map(one -> one.quantile(NINETIETH)),
                fit.filter(one -> alike && happened >= Waiting.FEW).flatMap(one -> median(one, sorted)));
    }

    /** Return the interval of a median: where every time is known to the day, that of Brookmeyer and Crowley. */
    private Optional<Interval> median(Turnbull fit, List<Within> times) {
        if (!times.stream().allMatch(time -> time.isExact() || !time.hasHappened() && time.left() > 0)) {
            return Optional.of(fit.medianInterval(question.confidence(), REPEATS, SEED));
        }
        return KaplanMeier.of(
                        times.stream()
                                .map(time -> time.hasHappened()
                                        ? Followed.happened(time.right())
                                        : Followed.censored(time.left()))
                                .toList(),
                        question.confidence())
                .medianInterval();
    }
}
