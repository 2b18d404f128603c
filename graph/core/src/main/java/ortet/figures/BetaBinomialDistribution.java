package ortet.figures;

import org.apache.commons.numbers.gamma.LogBeta;
import ortet.value.Defect;

/**
 * The distribution of the successes among the trials of one group whose rate is itself drawn from Beta(α, β).
 *
 * <p>P(X = 0) = B(α, β + n) / B(α, β), and P(X = x + 1) / P(X = x) = (n − x)(α + x) / ((x + 1)(β + n − x − 1)).
 *
 * @param trials at least 0
 * @param alpha above 0
 * @param beta above 0
 * @see "Skellam 1948, Journal of the Royal Statistical Society B 10:257"
 */
public record BetaBinomialDistribution(long trials, double alpha, double beta) {
    public BetaBinomialDistribution {
        if (!(trials >= 0
                && alpha > 0
                && beta > 0
                && alpha < Double.POSITIVE_INFINITY
                && beta < Double.POSITIVE_INFINITY)) {
            throw new Defect("no distribution of " + trials + " trials at Beta(" + alpha + ", " + beta + ")");
        }
    }

    /** Return the probability of exactly so many successes; 0 outside 0 to the trials. */
    public double probability(long successes) {
        if (successes < 0 || successes > trials) {
            return 0;
        }
        double failures = trials - successes;
        return Math.exp(LogBeta.value(alpha + successes, beta + failures)
                - LogBeta.value(alpha, beta)
                - Math.log(trials + 1.0)
                - LogBeta.value(successes + 1.0, failures + 1));
    }

    /** Return the probability of at most so many successes. */
    public double atMost(long successes) {
        if (successes < 0) {
            return 0;
        }
        if (successes >= trials) {
            return 1;
        }
        // The shorter tail, from its far end.
        return successes < trials - successes
                ? tail(successes + 1)
                : 1 - new BetaBinomialDistribution(trials, beta, alpha).tail(trials - successes);
    }

    /** Return the probability of at least so many successes. */
    public double atLeast(long successes) {
        if (successes <= 0) {
            return 1;
        }
        return successes > trials ? 0 : new BetaBinomialDistribution(trials, beta, alpha).atMost(trials - successes);
    }

    /** Return the sum of the first so many probabilities. */
    private double tail(long terms) {
        double n = trials;
        double log = LogBeta.value(alpha, beta + n) - LogBeta.value(alpha, beta);
        double sum = 0;
        for (long x = 0; x < terms; x++) {
            sum += Math.exp(log);
            log += Math.log((n - x) * (alpha + x) / ((x + 1.0) * (beta + n - x - 1)));
        }
        return Math.min(1, sum);
    }
}
