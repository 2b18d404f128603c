package ortet.figures;

import java.util.List;
import java.util.Optional;

/**
 * Fisher's exact test that two groups have the same odds.
 *
 * <p>Two-sided: the probability, given the margins, of all tables that are at most as likely as the one observed. Ties
 * are such up to a factor of 1 + 1e-7, as R's {@code fisher.test} has it. With an empty margin there is one table only,
 * and p is 1. A p below some 1e-300 comes out as 0.
 *
 * @see "Fisher 1935, Journal of the Royal Statistical Society 98:39"
 */
public final class Fisher {
    private static final double SLACK = 1 + 1e-7;

    private Fisher() {}

    /** Return the two-sided p, in [0, 1]. */
    public static double twoSided(Count first, Count second) {
        return new OneTable(first, second).atMostAsLikely(first.successes(), SLACK);
    }

    /**
     * Return the two-sided p over several strata: of all sums of successes in the first group that are at most as likely
     * as the observed one, given the margins of each stratum.
     *
     * @return p in [0, 1]; absent when the strata are so large that it would take too long
     */
    public static Optional<Double> twoSided(List<Stratum> strata) {
        List<Stratum> informing = strata.stream().filter(Stratum::informs).toList();
        long x = informing.stream()
                .mapToLong(stratum -> stratum.first().successes())
                .sum();
        return SeveralTables.of(informing, 1).map(tables -> tables.atMostAsLikely(x, SLACK));
    }
}
