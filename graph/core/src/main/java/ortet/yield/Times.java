package ortet.yield;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import ortet.book.UnitFacts.Method;
import ortet.figures.Followed;
import ortet.figures.Incidence;
import ortet.figures.Range;
import ortet.figures.Turnbull;
import ortet.figures.Within;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Turn;

/**
 * Tells how long things took the units of a side. Times are told in whole weeks, or months, begun ones counted as whole, so
 * that there are few different ones however many units there are; units of one time share one object.
 */
final class Times {
    private static final int WEEK = 7;
    private static final double MONTH = 365.25 / 12;
    private static final int MONTHS = 12;
    private static final int YES = 1;
    private static final int NO = 2;

    private final Samples samples;
    private final Cohorts cohorts;
    private final Lives lives;
    private final Fates fates;
    private final int[] codes;
    private final int[] from;
    private final int[] sorted;

    /**
     * Prepare to tell times.
     *
     * @param code the code of a row's account: the side of a comparison, from 0; below 0 for what is in none
     * @param count how many codes there are
     */
    Times(Samples samples, Fates fates, IntUnaryOperator code, int count) {
        this.samples = samples;
        this.cohorts = samples.cohorts();
        this.lives = samples.snapshot().lives();
        this.fates = fates;
        this.codes = new int[cohorts.size()];
        Arrays.setAll(codes, code);
        this.from = new int[count + 1];
        int[] next = new int[count];
        int known = 0;
        for (int event = 0; event < fates.events(); event++) {
            int one = codes[fates.eventRow(event)];
            if (one >= 0) {
                from[one + 1]++;
                known++;
            }
        }
        for (int at = 1; at <= count; at++) {
            from[at] += from[at - 1];
        }
        System.arraycopy(from, 0, next, 0, count);
        this.sorted = new int[known];
        for (int event = 0; event < fates.events(); event++) {
            int one = codes[fates.eventRow(event)];
            if (one >= 0) {
                sorted[next[one]++] = event;
            }
        }
    }

    // ---- to roots of their own ----

    /** Return how many weeks units took until they were severed or found rooted; those that failed are left out. */
    Wait toRoots(int[] rows) {
        Spans spans = new Spans();
        for (int row : rows) {
            if (cohorts.isExact(row)) {
                toRoots(row, spans);
            }
        }
        return spans.told(1);
    }

    private void toRoots(int row, Spans spans) {
        int unit = cohorts.unit(row);
        int set = cohorts.firstDay(row);
        boolean single = !samples.isBatch(row);
        int looked = 0;
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            int day = Math.max(0, lives.day(at) - set);
            switch (lives.turn(at)) {
                case TAKEN -> {
                    int week = Math.max(1, weeks(day));
                    spans.add(
                            single && isSevered(row) ? week : Math.min(week - 1, weeks(looked)), week, lives.value(at));
                    looked = day;
                }
                case STILL_ON, FAILED, WITHDRAWN -> looked = day;
                default -> {}
            }
        }
        int pending = samples.set(row) - cohorts.taken(row) - cohorts.failed(row) - cohorts.withdrawn(row);
        spans.never(weeks(looked), pending);
    }

    private static int weeks(int days) {
        return (days + WEEK - 1) / WEEK;
    }

    private static int months(int days) {
        return (int) Math.ceil(days / MONTH);
    }

    private boolean isSevered(int row) {
        return cohorts.method(row) == Method.LAYER;
    }

    // ---- to a stem ----

    /**
     * Return how many years plants of a side took from setting to a stem, in hundredths of a millimetre; of those that have
     * taken, have a tag of their own, and were ever measured.
     */
    Wait toStem(int code, int stem) {
        Spans spans = new Spans();
        for (int unit = 1; unit <= samples.snapshot().lastUnit(); unit++) {
            int row = fates.row(unit);
            if (row >= 0
                    && codes[row] == code
                    && samples.snapshot().isSingle(unit)
                    && cohorts.isExact(row)
                    && hasTaken(unit)) {
                toStem(unit, cohorts.firstDay(row), stem, spans);
            }
        }
        return spans.told(MONTHS);
    }

    private boolean hasTaken(int unit) {
        int own = cohorts.row(unit);
        return own < 0 || cohorts.taken(own) > 0;
    }

    private void toStem(int unit, int set, int stem, Spans spans) {
        int thinner = -1;
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            if (lives.turn(at) != Turn.SET_ON && lives.turn(at) != Turn.MEASURED) {
                continue;
            }
            int day = Math.max(0, lives.day(at) - set);
            if (lives.value(at) >= stem) {
                int month = Math.max(1, months(day));
                spans.add(Math.min(month - 1, months(Math.max(0, thinner))), month, 1);
                return;
            }
            thinner = day;
        }
        if (thinner >= 0) {
            spans.never(months(thinner), 1);
        }
    }

    /** Gathers times. */
    private static final class Spans {
        private final Map<Within, Integer> counts = new HashMap<>();
        private int happened;
        private int open;

        void add(int after, int until, int count) {
            if (count > 0) {
                counts.merge(new Within(after, until), count, Integer::sum);
                happened += count;
            }
        }

        void never(int after, int count) {
            if (count > 0) {
                counts.merge(Within.after(after), count, Integer::sum);
                open += count;
            }
        }

        Wait told(double per) {
            List<Within> all = new ArrayList<>();
            counts.forEach((within, count) -> all.addAll(Collections.nCopies(count, within)));
            Optional<Turnbull> curve = happened == 0 ? Optional.empty() : Turnbull.of(all);
            return new Wait(
                    happened,
                    open,
                    curve.filter(Turnbull::hasConverged)
                            .map(Turnbull::median)
                            .map(median -> new Range(median.lower() / per, median.upper() / per)));
        }
    }

    // ---- in the end ----

    /** Return the incidence of establishing among the units of a side; absent where none has established. */
    Optional<InTheEnd> establishing(int code, int[] rows, double confidence) {
        Endings endings = new Endings();
        for (int row : rows) {
            if (codes[fates.account(row)] == code) {
                undecided(row, endings);
            }
        }
        for (int at = code < 0 ? 0 : from[code]; code >= 0 && at < from[code + 1]; at++) {
            int event = sorted[at];
            int cause = switch (fates.eventHow(event)) {
                case YES -> YES;
                case NO -> NO;
                case CENSORED, TOO_YOUNG, UNSEEN -> Followed.CENSORED;
            };
            endings.add(
                    fates.eventDay(event) - cohorts.firstDay(fates.eventRow(event)), cause, fates.eventCount(event));
        }
        return endings.incidence(confidence);
    }

    /** Return the incidence of taking among the units of a side; absent where none has taken. */
    Optional<InTheEnd> taking(int[] rows, double confidence) {
        Endings endings = new Endings();
        for (int row : rows) {
            int set = cohorts.firstDay(row);
            int unit = cohorts.unit(row);
            for (int at = lives.first(unit); at < lives.end(unit); at++) {
                if (lives.turn(at) == Turn.TAKEN) {
                    endings.add(lives.day(at) - set, YES, lives.value(at));
                }
            }
            undecided(row, endings);
        }
        return endings.incidence(confidence);
    }

    /** Add what failed before it had taken, and what is pending, followed until somebody looked last. */
    private void undecided(int row, Endings endings) {
        int set = cohorts.firstDay(row);
        int unit = cohorts.unit(row);
        for (int at = lives.first(unit); at < lives.end(unit); at++) {
            if (lives.turn(at) == Turn.FAILED) {
                endings.add(lives.day(at) - set, NO, lives.value(at));
            }
        }
        int pending = samples.set(row) - cohorts.taken(row) - cohorts.failed(row) - cohorts.withdrawn(row);
        endings.add(samples.heard(row) - set, Followed.CENSORED, pending);
    }

    /** Gathers ends. */
    private static final class Endings {
        private final Map<Followed, Integer> counts = new HashMap<>();

        void add(int days, int cause, int count) {
            if (count != 0) {
                counts.merge(new Followed(weeks(Math.max(0, days)), cause), count, Integer::sum);
            }
        }

        Optional<InTheEnd> incidence(double confidence) {
            List<Followed> all = new ArrayList<>();
            counts.forEach((end, count) -> all.addAll(Collections.nCopies(Math.max(0, count), end)));
            Incidence incidence = Incidence.of(all, YES, confidence);
            List<Incidence.Step> steps = incidence.steps();
            return steps.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new InTheEnd(steps.get(steps.size() - 1), incidence.followed()));
        }
    }
}
