package ortet.decade;

import java.util.SplittableRandom;

/**
 * The luck of a nursery: for the same thing in the same year always the same, whoever asks, and in whatever order. So all who
 * decide differently in one nursery have the same luck.
 */
final class Luck {
    /** What is left to luck. */
    enum Of {
        /** What a nursery is like; the year does not matter. */
        GROUND,
        /** What the shared season does. */
        SEASON,
        /** What the season does to a cultivar. */
        CULTIVAR_SEASON,
        /** What the season does to a mother. */
        MOTHER_SEASON,
        /** How many positions are counted. */
        POSITIONS,
        /** Whether a layer takes. */
        TAKING,
        /** Whether what took establishes. */
        ESTABLISHING,
        /** What it becomes. */
        SIZE,
        /** Whether it is late. */
        LATE,
        /** Which orders are taken for a year. */
        ORDERS,
        /** What is asked for in a year beside the orders. */
        ASKED,
        /** What an ordinary grower does. */
        HABIT,
        /** Whether failures are written down. */
        WRITING
    }

    private static final int MANY = 1000;

    private final long seed;
    private final int from;
    private final long later;

    /** Have the luck of a seed. */
    Luck(long seed) {
        this(seed, Integer.MAX_VALUE, 0);
    }

    private Luck(long seed, int from, long later) {
        this.seed = seed;
        this.from = from;
        this.later = later;
    }

    /** Return the same luck up to the day in a year's February on which it is decided what to do, and another from then on. */
    Luck otherFrom(int year, long other) {
        return new Luck(seed, year, other);
    }

    /** Return a number from 0 to below 1. */
    double share(Of what, int year, int... which) {
        long mixed = mix(seed, what.ordinal() + 1L);
        mixed = mix(mixed, what == Of.GROUND ? 0 : year);
        // what a grower feels like doing is his own, and no luck
        boolean isShown =
                year < from || year == from && (what == Of.POSITIONS || what == Of.ORDERS) || what == Of.HABIT;
        mixed = what == Of.GROUND || isShown ? mixed : mix(mixed, later);
        for (int one : which) {
            mixed = mix(mixed, one + 1L);
        }
        return new SplittableRandom(mixed).nextDouble();
    }

    private static long mix(long seed, long value) {
        return new SplittableRandom(seed ^ value * 0x9E3779B97F4A7C15L).nextLong();
    }

    /** Return a draw from the standard normal distribution. */
    double normal(Of what, int year, int... which) {
        int[] one = java.util.Arrays.copyOf(which, which.length + 1);
        one[which.length] = MANY;
        int[] other = one.clone();
        other[which.length] = MANY + 1;
        return Math.sqrt(-2 * Math.log(1 - share(what, year, one))) * Math.cos(2 * Math.PI * share(what, year, other));
    }

    /** Return a draw from the Poisson distribution. */
    int poisson(double mean, Of what, int year, int... which) {
        double left = share(what, year, which);
        double chance = Math.exp(-mean);
        int count = 0;
        while (left > chance && count < MANY) {
            left -= chance;
            count++;
            chance *= mean / count;
        }
        return count;
    }
}
