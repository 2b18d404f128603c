package ortet.yield;

import java.time.LocalDate;
import java.util.Objects;
import ortet.book.UnitFacts.Method;
import ortet.value.Require;

/**
 * A question about which mothers yield best by one method.
 *
 * @param filter what is counted; its method is the one asked about, layers where none is named; its mother must be absent
 * @param best among how many of the best a mother is said to be
 * @param draws how often all mothers are drawn together for that
 * @param seed of the draws: the same seed gives the same answer
 * @param asOf the cut-off day
 * @param periods after how long an outcome should be known
 * @param confidence of the intervals, above 0 and below 1
 */
public record MothersQuestion(
        TakeFilter filter, int best, int draws, long seed, LocalDate asOf, Periods periods, double confidence) {
    /** Among how many of the best, where nobody asked otherwise. */
    public static final int BEST = 5;

    /** How many draws, where nobody asked otherwise: a share of a half is then good to one part in a hundred. */
    public static final int DRAWS = 4_000;

    /** The seed, where nobody asked for another. */
    public static final long SEED = 1;

    public MothersQuestion {
        Objects.requireNonNull(filter);
        Require.that(filter.mother().isEmpty(), "mother", "none, for mothers are told beside each other");
        Require.atLeast(1, best, "best");
        Require.atLeast(1, draws, "draws");
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(periods);
        if (filter.method().isEmpty()) {
            filter = filter.method(Method.LAYER);
        }
    }

    /** Ask about layers of everything as of a day. */
    public static MothersQuestion asOf(LocalDate day) {
        return new MothersQuestion(TakeFilter.ALL, BEST, DRAWS, SEED, day, Periods.DEFAULTS, PooledTake.CONFIDENCE);
    }

    /** Return this question for part of the book. */
    public MothersQuestion where(TakeFilter part) {
        return new MothersQuestion(part, best, draws, seed, asOf, periods, confidence);
    }

    /** Return this question about another number of the best. */
    public MothersQuestion best(int number) {
        return new MothersQuestion(filter, number, draws, seed, asOf, periods, confidence);
    }

    /** Return the method asked about. */
    public Method method() {
        return filter.method().orElseThrow();
    }
}
