package ortet.figures;

import java.util.List;
import java.util.Optional;
import ortet.figures.BetaBinomial.Shapes;

/**
 * What earlier groups tell of the rate of one to come, when the units of a group share their luck.
 *
 * <p>Groups of n units have rates that vary around a common one so that two units of a group are correlated by ρ; a group then
 * weighs as much as n / (1 + (n − 1) ρ) units each by itself. Of N such units in all, S successes, and a distribution Beta(a,
 * b) of the common rate beforehand, the common rate is Beta(a + S, b + N − S), with mean m and T = a + b + N. The group to
 * come varies around it, so that its rate has mean m and variance m (1 − m) ρ*, where
 *
 * <pre>ρ* = ρ + (1 − ρ) / (T + 1)</pre>
 *
 * <p>It is given the beta distribution of that mean and variance. Where ρ is 0 this is Beta(a + S, b + N − S) itself, and the
 * successes to come are beta-binomial as Bayes' rule has it.
 */
public final class NextGroup {
    /** Where nothing is known beforehand: Jeffreys' prior. */
    public static final Shapes NOTHING_KNOWN = new Shapes(0.5, 0.5);

    private NextGroup() {}

    /**
     * Return the distribution of the rate of a group to come.
     *
     * @param groups earlier groups; those of no trials tell nothing
     * @param correlation ρ of two units of a group, 0 to 1
     * @param before the distribution of the common rate before these groups were seen
     */
    public static Shapes shapes(List<Count> groups, double correlation, Shapes before) {
        double successes = 0;
        double trials = 0;
        for (Count group : groups) {
            if (group.trials() > 0) {
                double weight = 1 / (1 + (group.trials() - 1) * correlation);
                successes += weight * group.successes();
                trials += weight * group.trials();
            }
        }
        double a = before.alpha() + successes;
        double total = before.alpha() + before.beta() + trials;
        double mean = a / total;
        // at a correlation of 1 a group is one unit, and its rate all or nothing: the shapes come as near as they can
        double within = Math.min(correlation + (1 - correlation) / (total + 1), 1 - 1e-6);
        double size = (1 - within) / within;
        return new Shapes(mean * size, (1 - mean) * size);
    }

    /** Return how many units each by itself some groups weigh as much as. */
    public static double effective(List<Count> groups, double correlation) {
        return groups.stream()
                .filter(group -> group.trials() > 0)
                .mapToDouble(group -> group.trials() / (1 + (group.trials() - 1) * correlation))
                .sum();
    }

    /**
     * Return the correlation of two units of a group, from several sets of groups; each set has a common rate of its own.
     *
     * <p>The estimator of the analysis of variance, its sums of squares taken over all sets: with Q the sum of n (p − P)²
     * over the groups of a set around its rate P, w the mean square within its groups, J groups, N trials in all, M the sum of
     * n² / N,
     *
     * <pre>ρ / (1 − ρ) = Σ (Q − w (J − 1)) / Σ w (N − M)</pre>
     *
     * <p>at least 0. One set gives the usual estimator.
     *
     * @return absent where no set has two groups of which one has two units, or where every unit had the same outcome
     * @see "Ridout, Demétrio & Firth 1999, Biometrics 55:137, for the estimator of one set"
     */
    public static Optional<Double> correlation(List<List<Count>> sets) {
        double between = 0;
        double within = 0;
        for (List<Count> set : sets) {
            List<Count> told = set.stream().filter(group -> group.trials() > 0).toList();
            Count all = told.stream().reduce(new Count(0, 0), Count::plus);
            double n = all.trials();
            if (told.size() < 2 || all.trials() == told.size()) {
                continue;
            }
            double rate = all.share().orElseThrow();
            double q = 0;
            double inside = 0;
            double squares = 0;
            for (Count group : told) {
                double share = group.share().orElseThrow();
                q += group.trials() * (share - rate) * (share - rate);
                inside += group.trials() * share * (1 - share);
                squares += (double) group.trials() * group.trials();
            }
            double mean = inside / (n - told.size());
            between += q - mean * (told.size() - 1);
            within += mean * (n - squares / n);
        }
        if (within == 0) {
            return between > 0 ? Optional.of(1.0) : Optional.empty();
        }
        double odds = Math.max(0, between / within);
        return Optional.of(odds / (1 + odds));
    }

    /** Return by how many groups more than sets their correlation is told: those of sets that tell something of it. */
    public static int degrees(List<List<Count>> sets) {
        int degrees = 0;
        for (List<Count> set : sets) {
            long told = set.stream().filter(group -> group.trials() > 0).count();
            long trials = set.stream().mapToLong(Count::trials).sum();
            if (told >= 2 && trials > told) {
                degrees += (int) told - 1;
            }
        }
        return degrees;
    }
}
