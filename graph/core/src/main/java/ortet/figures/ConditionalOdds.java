package ortet.figures;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.rootfinder.BrentSolver;
import ortet.value.Defect;

/**
 * The odds ratio of two groups conditional on the margins: its maximum-likelihood estimate, and the exact interval of
 * Cornfield and Fisher.
 *
 * <p>Given the margins, the number of successes in the first group has the noncentral hypergeometric distribution, which
 * depends on the odds ratio ω alone. The estimate is the ω at which its mean is the observed number; the limits are those
 * at which the observed number or more, or the observed number or fewer, have a probability of (1 − confidence) / 2. This
 * is not the sample odds ratio ad / bc, which is somewhat further from 1.
 *
 * <p>At the edges: the smallest number that the margins allow gives a ratio of 0 and no lower limit but 0, the largest an
 * infinite ratio and no upper limit; with an empty margin (a group without trials, or no success or no failure at all)
 * nothing is said about the ratio, which is then not defined, from 0 to {@code Infinity}. Time grows with the square root
 * of the number of trials; two million are no trouble.
 *
 * <p>R's {@code fisher.test} gives the same to about three digits; it finds its roots to a looser tolerance.
 *
 * @see "Fisher 1935, Journal of the Royal Statistical Society 98:39"
 * @see "Cornfield 1956, Proc. Third Berkeley Symposium 4:135"
 * @see "Breslow & Day 1980, Statistical Methods in Cancer Research I, sections 4.2 and 4.4"
 */
public final class ConditionalOdds {
    /** How far out the logarithm of an odds ratio is looked for: beyond what counts in a long can give. */
    private static final double FARTHEST = 400;

    private ConditionalOdds() {}

    /**
     * Return the odds ratio of two groups, first against second.
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static Odds of(Count first, Count second, double confidence) {
        Wilson.checkConfidence(confidence);
        double a = first.successes() + 0.5;
        double b = first.failures().successes() + 0.5;
        double c = second.successes() + 0.5;
        double d = second.failures().successes() + 0.5;
        return solve(new OneTable(first, second), first.successes(), Math.log(a / b * (d / c)), confidence);
    }

    /**
     * Return the odds ratio common to all strata, first against second, conditional on the margins of each.
     *
     * @param strata any number; those with an empty margin add nothing
     * @param confidence above 0 and below 1, such as 0.95
     * @return the odds; absent when the strata are so large that the exact answer would take too long (the product of
     *     their ranges beyond two thousand million), where {@link MantelHaenszel} is as good
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static Optional<Odds> within(List<Stratum> strata, double confidence) {
        Wilson.checkConfidence(confidence);
        List<Stratum> informing = strata.stream().filter(Stratum::informs).toList();
        double start = MantelHaenszel.of(informing, confidence)
                .oddsRatio()
                .finite()
                .filter(ratio -> ratio > 0)
                .orElse(1.0);
        long x = informing.stream()
                .mapToLong(stratum -> stratum.first().successes())
                .sum();
        return SeveralTables.of(informing, start).map(tables -> solve(tables, x, Math.log(start), confidence));
    }

    private static Odds solve(Tilted tables, long x, double start, double confidence) {
        double tail = (1 - confidence) / 2;
        if (tables.low() == tables.high()) {
            return new Odds(
                    Ratio.UNDEFINED,
                    new Interval(0, Double.POSITIVE_INFINITY, confidence, Interval.Method.CONDITIONAL));
        }
        boolean least = x == tables.low();
        boolean most = x == tables.high();
        Ratio ratio = most
                ? Ratio.INFINITE
                : Ratio.of(least ? 0 : Math.exp(root(odds -> tables.at(odds, x).mean(), start)));
        double lower = least ? 0 : Math.exp(root(odds -> tables.at(odds, x).atLeast() - tail, start));
        double upper = most
                ? Double.POSITIVE_INFINITY
                : Math.exp(root(odds -> tail - tables.at(odds, x).atMost(), start));
        return new Odds(ratio, new Interval(lower, upper, confidence, Interval.Method.CONDITIONAL));
    }

    /** Return where a growing function is 0. */
    private static double root(DoubleUnaryOperator growing, double start) {
        double value = growing.applyAsDouble(start);
        if (value == 0) {
            return start;
        }
        double way = value > 0 ? -1 : 1;
        double near = start;
        for (double reach = 0.25; reach < 2 * FARTHEST; reach *= 2) {
            double far = start + way * reach;
            if (growing.applyAsDouble(far) * way >= 0) {
                return new BrentSolver(1e-14, 1e-13, 0).findRoot(growing, Math.min(near, far), Math.max(near, far));
            }
            near = far;
        }
        throw new Defect("no odds ratio found from " + start);
    }
}
