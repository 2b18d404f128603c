package ortet.figures;

import java.util.List;
import java.util.Optional;

/**
 * The distribution of the number of successes in the first group over several strata, given the margins of each: the
 * convolution of their hypergeometric distributions, worked out at one odds ratio and tilted from there to others.
 *
 * <p>All terms are positive, so that nothing cancels and even far tails are good to the last digits but a few; weights
 * below 1e-300 of the greatest are lost. Work grows with the product of the strata's ranges, hence {@link #WORK}.
 */
final class SeveralTables implements Tilted {
    /** The most multiplications that a convolution may take: some seconds. */
    static final double WORK = 2e9;

    private final long low;
    private final double[] logWeight;
    private final double logOddsHere;

    private SeveralTables(long low, double[] logWeight, double logOddsHere) {
        this.low = low;
        this.logWeight = logWeight;
        this.logOddsHere = logOddsHere;
    }

    /** Convolve the strata at the given odds ratio; absent when that would take too much work. */
    static Optional<SeveralTables> of(List<Stratum> strata, double odds) {
        double[] weights = {1};
        long low = 0;
        double work = 0;
        for (Stratum stratum : strata) {
            OneTable table = new OneTable(stratum.first(), stratum.second());
            double wide = (double) (table.high() - table.low()) + 1;
            work += wide * weights.length;
            if (work > WORK) {
                return Optional.empty();
            }
            weights = convolve(weights, weights(table, odds));
            low += table.low();
        }
        double[] logs = new double[weights.length];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = Math.log(weights[i]);
        }
        return Optional.of(new SeveralTables(low, logs, Math.log(odds)));
    }

    private static double[] weights(OneTable table, double odds) {
        double[] weights = new double[(int) (table.high() - table.low()) + 1];
        int peak = (int) (table.peak(odds) - table.low());
        weights[peak] = 1;
        double total = 1;
        for (int i = peak; i + 1 < weights.length; i++) {
            weights[i + 1] = weights[i] * table.step(table.low() + i) * odds;
            total += weights[i + 1];
        }
        for (int i = peak; i > 0; i--) {
            weights[i - 1] = weights[i] / (table.step(table.low() + i - 1) * odds);
            total += weights[i - 1];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= total;
        }
        return weights;
    }

    private static double[] convolve(double[] some, double[] others) {
        double[] both = new double[some.length + others.length - 1];
        for (int i = 0; i < some.length; i++) {
            double weight = some[i];
            if (weight > 0) {
                for (int j = 0; j < others.length; j++) {
                    both[i + j] += weight * others[j];
                }
            }
        }
        return both;
    }

    @Override
    public long low() {
        return low;
    }

    @Override
    public long high() {
        return low + logWeight.length - 1;
    }

    @Override
    public Sums at(double logOdds, long x) {
        double tilt = logOdds - logOddsHere;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < logWeight.length; i++) {
            greatest = Math.max(greatest, logWeight[i] + i * tilt);
        }
        double total = 0;
        double moment = 0;
        double atMost = 0;
        double atLeast = 0;
        for (int i = 0; i < logWeight.length; i++) {
            double weight = Math.exp(logWeight[i] + i * tilt - greatest);
            long k = low + i;
            total += weight;
            moment += weight * (k - x);
            atMost += k <= x ? weight : 0;
            atLeast += k >= x ? weight : 0;
        }
        return new Sums(moment / total, atMost / total, atLeast / total);
    }

    /** Return the probability, at the odds ratio of the convolution, of all sums at most as likely as x. */
    double atMostAsLikely(long x, double slack) {
        double bound = Math.exp(logWeight[Math.toIntExact(x - low)]) * slack;
        double total = 0;
        double unlikely = 0;
        for (double log : logWeight) {
            double weight = Math.exp(log);
            total += weight;
            unlikely += weight <= bound ? weight : 0;
        }
        return Math.min(1, unlikely / total);
    }
}
