package ortet.yield;

import java.time.LocalDate;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * A question about take.
 *
 * @param by what to tell apart, none to two, the first the outer one
 * @param filter what to count
 * @param asOf the day as of which it is answered
 * @param periods after how long an outcome should be known
 * @param confidence of the intervals, above 0 and below 1
 */
public record TakeQuestion(List<TakeBy> by, TakeFilter filter, LocalDate asOf, Periods periods, double confidence) {
    /** The confidence of the intervals where nobody asked for another. */
    public static final double CONFIDENCE = 0.95;

    private static final int MOST = 2;

    public TakeQuestion {
        by = List.copyOf(by);
        Require.noRepeats(by.stream().map(TakeBy::word).toList(), "by");
        if (by.size() > MOST) {
            throw Refused.because(
                    "too-many-groups",
                    "by: expected at most two of " + words(EnumSet.allOf(TakeBy.class)) + ", found " + words(by));
        }
        Objects.requireNonNull(filter);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(periods);
    }

    private static String words(Collection<TakeBy> by) {
        return String.join(", ", by.stream().map(TakeBy::word).toList());
    }

    /** Ask about everything as of a day, told apart by nothing, with default periods and confidence. */
    public static TakeQuestion asOf(LocalDate day) {
        return new TakeQuestion(List.of(), TakeFilter.ALL, day, Periods.DEFAULTS, CONFIDENCE);
    }

    /** Return this question told apart by these. */
    public TakeQuestion by(TakeBy... groups) {
        return new TakeQuestion(List.of(groups), filter, asOf, periods, confidence);
    }

    /** Return this question for part of the book. */
    public TakeQuestion where(TakeFilter part) {
        return new TakeQuestion(by, part, asOf, periods, confidence);
    }

    /** Return this question with other periods. */
    public TakeQuestion with(Periods other) {
        return new TakeQuestion(by, filter, asOf, other, confidence);
    }

    /** Return this question with intervals of another confidence. */
    public TakeQuestion confidence(double other) {
        return new TakeQuestion(by, filter, asOf, periods, other);
    }
}
