package ortet.choice;

import java.time.Duration;
import java.util.Objects;
import ortet.value.Require;

/**
 * How to choose.
 *
 * @param aim what the plan is to do best
 * @param years how many years are planned, 1 to 10
 * @param scenarios on how many draws the plan is made: 1 plans on the means of all draws; more plan on the first so many
 *     draws together, so that trees missing in a bad season are not made up for by those left over in a good one
 * @param discount by what a year's delay lessens money, 0 for not at all, below 1: money after t years counts (1 − d)^t
 * @param ties by what share of the dearest price of a tree of her cultivar a deed must be better than the next milder one to
 *     be preferred to it, 0 for no preference, to 0.1; see {@link Deed#severity()}
 * @param anewUpTo up to how many mothers that share something each draw is solved anew (and up to five times as many in all),
 *     and, if there are nine of them or fewer, given whole to the branch-and-bound solver
 * @param draws on how many draws to judge how sure each answer is, 0 for not at all
 * @param gap by what share of its worth a plan may fall short of the best before the search goes on
 * @param atMost after how long to stop with the best plan found
 */
public record Settings(
        Aim aim,
        int years,
        int scenarios,
        double discount,
        double ties,
        int anewUpTo,
        int draws,
        double gap,
        Duration atMost) {
    /**
     * Five years, the greatest margin on the means, a discount of 3 % a year, ties of a five-hundredth of a price, 200
     * draws, half of a per mille, within a minute.
     */
    public static final Settings DEFAULTS =
            new Settings(Aim.MARGIN, 5, 1, 0.03, 0.002, 40, 200, 5e-4, Duration.ofMinutes(10));

    private static final int MOST_YEARS = 10;
    private static final double MOST_TIES = 0.1;

    public Settings {
        Objects.requireNonNull(aim);
        Objects.requireNonNull(atMost);
        Require.that(years >= 1 && years <= MOST_YEARS, "years", "1 to " + MOST_YEARS);
        Require.atLeast(1, scenarios, "scenarios");
        Require.that(discount >= 0 && discount < 1, "discount", "0 to below 1");
        Require.that(ties >= 0 && ties <= MOST_TIES, "ties", "0 to " + MOST_TIES);
        Require.atLeast(0, anewUpTo, "mothers solved anew");
        Require.atLeast(0, draws, "draws");
        Require.that(gap >= 0 && gap < 1, "gap", "0 to below 1");
        Require.that(!atMost.isNegative() && !atMost.isZero(), "time limit", "above 0");
    }

    /** Return these with another aim. */
    public Settings aim(Aim other) {
        return new Settings(other, years, scenarios, discount, ties, anewUpTo, draws, gap, atMost);
    }

    /** Return these for another number of years. */
    public Settings years(int other) {
        return new Settings(aim, other, scenarios, discount, ties, anewUpTo, draws, gap, atMost);
    }

    /** Return these with a plan made on several draws together. */
    public Settings scenarios(int other) {
        return new Settings(aim, years, other, discount, ties, anewUpTo, draws, gap, atMost);
    }

    /** Return these with another discount. */
    public Settings discount(double other) {
        return new Settings(aim, years, scenarios, other, ties, anewUpTo, draws, gap, atMost);
    }

    /** Return these with another preference for the milder deed. */
    public Settings ties(double other) {
        return new Settings(aim, years, scenarios, discount, other, anewUpTo, draws, gap, atMost);
    }

    /** Return these with another bound for what is solved anew. */
    public Settings anewUpTo(int other) {
        return new Settings(aim, years, scenarios, discount, ties, other, draws, gap, atMost);
    }

    /** Return these with another number of draws. */
    public Settings draws(int other) {
        return new Settings(aim, years, scenarios, discount, ties, anewUpTo, other, gap, atMost);
    }

    /** Return these with another gap. */
    public Settings gap(double other) {
        return new Settings(aim, years, scenarios, discount, ties, anewUpTo, draws, other, atMost);
    }

    /** Return these with another time limit. */
    public Settings atMost(Duration other) {
        return new Settings(aim, years, scenarios, discount, ties, anewUpTo, draws, gap, other);
    }
}
