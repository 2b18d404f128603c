package ortet.figures;

import java.util.List;
import java.util.Optional;
import org.apache.commons.numbers.gamma.Digamma;
import org.apache.commons.numbers.gamma.LogBeta;
import org.apache.commons.statistics.distribution.BetaDistribution;
import ortet.figures.Likelihood.Point;
import ortet.value.Refused;

/**
 * Rates that differ from group to group as a beta distribution has it: the fit of greatest likelihood, and what it says about
 * each group.
 *
 * <p>A group's rate is Beta(α, β), its successes are binomial. With μ = α / (α + β) and ρ = 1 / (α + β + 1), ρ is the
 * correlation of two units of one group; a group's counts vary 1 + (n − 1) ρ times as much as a binomial's. Given r of n, a
 * group's rate is Beta(α + r, β + n − r) (empirical Bayes: the uncertainty of μ and ρ is <em>not</em> in it; {@link
 * MixedModel} has it).
 *
 * <p>Edges, each with a remark: where no ρ above 0 is likelier than 0, ρ is 0 and all groups have one rate; where every unit
 * had the same outcome, or every group one unit, only μ is known; where every group is all or nothing, ρ is 1.
 *
 * @see "Skellam 1948, Journal of the Royal Statistical Society B 10:257"
 * @see "Griffiths 1973, Biometrics 29:637"
 */
public final class BetaBinomial {
    private final List<Count> counts;
    private final Convergence convergence;
    private final List<String> remarks;
    private final Optional<Figure> mu;
    private final Optional<Figure> rho;
    private final Optional<Double> logLikelihood;

    /**
     * A parameter.
     *
     * @param value between 0 and 1
     * @param standardError absent at the end of its range, or where it is not known
     */
    public record Figure(double value, Optional<Double> standardError) {}

    /**
     * The shapes of the distribution of rates.
     *
     * @param alpha above 0
     * @param beta above 0
     */
    public record Shapes(double alpha, double beta) {
        /** Return the distribution of the successes among new trials of a new group. */
        public BetaBinomialDistribution predict(long trials) {
            return new BetaBinomialDistribution(trials, alpha, beta);
        }

        /** Return the shapes once some units of the group are known. */
        public Shapes given(Count count) {
            return new Shapes(alpha + count.successes(), beta + count.trials() - count.successes());
        }

        /** Return the mean rate. */
        public double mean() {
            return alpha / (alpha + beta);
        }
    }

    private BetaBinomial(
            List<Count> counts,
            Convergence convergence,
            List<String> remarks,
            Optional<Figure> mu,
            Optional<Figure> rho,
            Optional<Double> logLikelihood) {
        this.counts = List.copyOf(counts);
        this.convergence = convergence;
        this.remarks = List.copyOf(remarks);
        this.mu = mu;
        this.rho = rho;
        this.logLikelihood = logLikelihood;
    }

    /**
     * Fit the distribution.
     *
     * @param counts of each group; groups of no trials tell nothing
     */
    public static BetaBinomial of(List<Count> counts) {
        List<Count> told = counts.stream().filter(count -> count.trials() > 0).toList();
        Count total = told.stream().reduce(new Count(0, 0), Count::plus);
        if (total.trials() == 0) {
            return new BetaBinomial(
                    counts,
                    Convergence.NO_DATA,
                    List.of("no trials: nothing can be estimated"),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());
        }
        double share = total.share().orElseThrow();
        Figure pooled = new Figure(share, Optional.of(Math.sqrt(share * (1 - share) / total.trials())));
        if (share == 0 || share == 1) {
            return known(
                    counts,
                    Convergence.REDUCED,
                    "every unit had the same outcome: how much groups differ cannot be told",
                    new Figure(share, Optional.empty()),
                    Optional.empty(),
                    0);
        }
        if (told.stream().allMatch(count -> count.trials() == 1)) {
            return known(
                    counts,
                    Convergence.REDUCED,
                    "one trial in each group: how much groups differ cannot be told",
                    pooled,
                    Optional.empty(),
                    binomial(told, share));
        }
        if (told.size() == 1) {
            return known(
                    counts,
                    Convergence.REDUCED,
                    "one group only: how much groups differ cannot be told",
                    pooled,
                    Optional.empty(),
                    binomial(told, share));
        }
        if (told.stream().allMatch(count -> count.successes() == 0 || count.successes() == count.trials())) {
            double groups = told.size();
            double all = told.stream().filter(count -> count.successes() > 0).count() / groups;
            return known(
                    counts,
                    Convergence.BOUNDARY,
                    "every group is all or nothing: ρ is 1, and the units of a group tell no more than one of them",
                    new Figure(all, Optional.of(Math.sqrt(all * (1 - all) / groups))),
                    Optional.of(new Figure(1, Optional.empty())),
                    groups * (all * Math.log(all) + (1 - all) * Math.log1p(-all)));
        }
        return climb(counts, told, share, pooled);
    }

    private static BetaBinomial climb(List<Count> counts, List<Count> told, double share, Figure pooled) {
        double none = binomial(told, share);
        Surface surface = new Surface(told);
        Optional<Ascent.Summit> best = Optional.empty();
        for (double rho : new double[] {0.02, 0.15, 0.5}) {
            double[] begin = {logit(share), logit(rho)};
            Ascent ascent = new Ascent(surface, new boolean[2]);
            Ascent.Summit summit = ascent.climb(surface.at(begin, new double[0]), new double[][] {{0.05, 0}, {0, 0.2}});
            boolean isInside = summit.isTop() && summit.covariance().isPresent();
            if (isInside
                    && (best.isEmpty()
                            || summit.point().value() > best.get().point().value() + 1e-9)) {
                best = Optional.of(summit);
            }
        }
        double constant = ModelRows.coefficients(
                told.stream().mapToDouble(Count::successes).toArray(),
                told.stream().mapToDouble(Count::trials).toArray());
        if (best.isEmpty() || best.get().point().value() + constant <= none + 1e-6) {
            if (best.isEmpty() && slopeAtNothing(told, share) > 0) {
                return new BetaBinomial(
                        counts,
                        Convergence.FAILED,
                        List.of("the fit has not converged: no estimates are given"),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
            }
            return known(
                    counts,
                    Convergence.BOUNDARY,
                    "groups differ no more than chance would have it: ρ is 0, and all groups have one rate",
                    pooled,
                    Optional.of(new Figure(0, Optional.empty())),
                    none);
        }
        double[] theta = best.get().point().theta();
        double[][] covariance = best.get().covariance().orElseThrow();
        double mu = logistic(theta[0]);
        double rho = logistic(theta[1]);
        return new BetaBinomial(
                counts,
                Convergence.CONVERGED,
                List.of(),
                Optional.of(new Figure(mu, Optional.of(mu * (1 - mu) * Math.sqrt(covariance[0][0])))),
                Optional.of(new Figure(rho, Optional.of(rho * (1 - rho) * Math.sqrt(covariance[1][1])))),
                Optional.of(best.get().point().value() + constant));
    }

    private static BetaBinomial known(
            List<Count> counts,
            Convergence convergence,
            String remark,
            Figure mu,
            Optional<Figure> rho,
            double logLikelihood) {
        return new BetaBinomial(counts, convergence, List.of(remark), Optional.of(mu), rho, Optional.of(logLikelihood));
    }

    /** Return how the log-likelihood rises with ρ where it is 0, but for a factor. */
    private static double slopeAtNothing(List<Count> told, double mu) {
        double slope = 0;
        for (Count count : told) {
            double r = count.successes();
            double n = count.trials();
            slope += r * (r - 1) / mu + (n - r) * (n - r - 1) / (1 - mu) - n * (n - 1);
        }
        return slope;
    }

    private static double binomial(List<Count> told, double share) {
        double sum = 0;
        for (Count count : told) {
            double r = count.successes();
            double f = count.trials() - r;
            sum += (r > 0 ? r * Math.log(share) : 0) + (f > 0 ? f * Math.log1p(-share) : 0);
        }
        return sum
                + ModelRows.coefficients(
                        told.stream().mapToDouble(Count::successes).toArray(),
                        told.stream().mapToDouble(Count::trials).toArray());
    }

    /** Return how the fit ended. */
    public Convergence convergence() {
        return convergence;
    }

    /** Return what a reader must know besides the figures; mostly nothing. */
    public List<String> remarks() {
        return remarks;
    }

    /** Return the mean rate of groups; absent where there are no estimates. */
    public Optional<Figure> mu() {
        return mu;
    }

    /** Return the correlation within groups, 0 to 1; absent where it cannot be told. */
    public Optional<Figure> rho() {
        return rho;
    }

    /** Return the logarithm of the likelihood, binomial coefficients included; absent where there are no estimates. */
    public Optional<Double> logLikelihood() {
        return logLikelihood;
    }

    /** Return the shapes of the distribution of rates; absent where ρ is 0, 1 or unknown. */
    public Optional<Shapes> shapes() {
        if (convergence != Convergence.CONVERGED) {
            return Optional.empty();
        }
        double m = mu.orElseThrow().value();
        double r = rho.orElseThrow().value();
        return Optional.of(new Shapes(m * (1 - r) / r, (1 - m) * (1 - r) / r));
    }

    /**
     * Return the rate of a group with the given counts, and where it lies: the mean and the quantiles of Beta(α + r, β + n −
     * r).
     *
     * @param confidence above 0 and below 1; 0.9 gives the 5 % and the 95 % quantile
     * @return absent where {@link #shapes} is
     */
    public Optional<GroupRate> rate(String label, Count count, double confidence) {
        if (!(confidence > 0 && confidence < 1)) {
            throw Refused.because(
                    "bad-confidence", "expected a confidence above 0 and below 1, such as 0.9, found " + confidence);
        }
        return shapes().map(shapes -> shapes.given(count)).map(shapes -> {
            BetaDistribution beta = BetaDistribution.of(shapes.alpha(), shapes.beta());
            return new GroupRate(
                    label,
                    count,
                    shapes.mean(),
                    new Interval(
                            beta.inverseCumulativeProbability((1 - confidence) / 2),
                            beta.inverseSurvivalProbability((1 - confidence) / 2),
                            confidence,
                            Interval.Method.BETA_BINOMIAL));
        });
    }

    /** Return the counts that the fit rests on. */
    public List<Count> counts() {
        return counts;
    }

    private static double logit(double p) {
        return Math.log(p / (1 - p));
    }

    private static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    /** The log-likelihood without coefficients, by the log odds of μ and ρ. */
    private record Surface(List<Count> counts) implements Likelihood {
        @Override
        public int parameters() {
            return 2;
        }

        @Override
        public Point at(double[] theta, double[] start) {
            double mu = logistic(theta[0]);
            double size = Math.exp(-theta[1]); // α + β = (1 − ρ) / ρ
            double a = mu * size;
            double b = size - a;
            // Beyond, ρ is as good as 0 and logarithms of the beta function cancel.
            if (!(a > 1e-8 && b > 1e-8 && size < 1e6)) {
                return new Point(theta, Double.NaN, new double[2], start);
            }
            double value = 0;
            double byA = 0;
            double byB = 0;
            double whole = LogBeta.value(a, b);
            double psiA = Digamma.value(a);
            double psiB = Digamma.value(b);
            double psiSize = Digamma.value(size);
            for (Count count : counts) {
                double r = count.successes();
                double f = count.trials() - r;
                value += LogBeta.value(a + r, b + f) - whole;
                double common = psiSize - Digamma.value(size + r + f);
                byA += Digamma.value(a + r) - psiA + common;
                byB += Digamma.value(b + f) - psiB + common;
            }
            return new Point(
                    theta.clone(),
                    value,
                    new double[] {(byA - byB) * size * mu * (1 - mu), -(byA * a + byB * b)},
                    start);
        }

        @Override
        public Likelihood fork() {
            return this;
        }

        @Override
        public double[][] sensitivities() {
            return new double[2][0];
        }
    }
}
