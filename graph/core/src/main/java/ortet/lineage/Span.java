package ortet.lineage;

import java.time.LocalDate;
import java.util.Optional;
import ortet.value.When;

/**
 * A time between two days, both counted in, as numbers of days; what is known to the month or year alone makes it wider
 * and leaves less of it sure.
 *
 * @param from the first day that may have been in it
 * @param to the last day that may have been in it
 * @param surelyFrom the first day that surely was in it
 * @param surelyTo the last day that surely was in it; before {@code surelyFrom} when no day surely was
 */
record Span(int from, int to, int surelyFrom, int surelyTo) {
    /** Before everything. */
    static final int ALWAYS = Integer.MIN_VALUE;

    /** After everything. */
    static final int OPEN = Integer.MAX_VALUE;

    /** Return the time from something that happened to something else, or to now. */
    static Span between(When start, Optional<When> end) {
        return new Span(
                first(start),
                end.map(Span::last).orElse(OPEN),
                last(start),
                end.map(Span::first).orElse(OPEN));
    }

    static int first(When when) {
        return (int) when.first().toEpochDay();
    }

    static int last(When when) {
        return (int) when.last().toEpochDay();
    }

    static Optional<LocalDate> day(int number) {
        return number == ALWAYS || number == OPEN ? Optional.empty() : Optional.of(LocalDate.ofEpochDay(number));
    }

    /** Return the first day, as surely as asked. */
    int low(boolean sure) {
        return sure ? surelyFrom : from;
    }

    /** Return the last day, as surely as asked. */
    int high(boolean sure) {
        return sure ? surelyTo : to;
    }

    Span and(Span other) {
        return new Span(
                Math.max(from, other.from),
                Math.min(to, other.to),
                Math.max(surelyFrom, other.surelyFrom),
                Math.min(surelyTo, other.surelyTo));
    }

    boolean isPossible() {
        return from <= to;
    }
}
