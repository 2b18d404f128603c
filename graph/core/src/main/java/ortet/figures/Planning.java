package ortet.figures;

import java.util.Optional;
import org.apache.commons.numbers.gamma.RegularizedBeta;
import ortet.value.Refused;

/** How many to set so that enough succeed. */
public final class Planning {
    /** The most that are planned. */
    public static final long MOST = 1_000_000;

    /** Probabilities that are equal but for rounding count as equal: 20 of 39 at one half are likely by exactly one half. */
    private static final double ROUNDING = 1e-12;

    private Planning() {}

    /** How likely at least so many of some trials succeed; the more trials, the likelier. */
    @FunctionalInterface
    public interface Outlook {
        /** Return the probability that at least {@code successes} of {@code trials} succeed. */
        double atLeast(long successes, long trials);
    }

    /**
     * A number to set.
     *
     * @param trials the smallest number that is enough
     * @param probability how likely it is enough, at least as asked
     * @param probabilityOfOneLess how likely one less would have been enough, less than asked; absent for none
     */
    public record Plan(long trials, double probability, Optional<Double> probabilityOfOneLess) {}

    /**
     * Return the outlook of independent trials at one known rate: P(X ≥ k) = I(p; k, n − k + 1), the regularized incomplete
     * beta function.
     *
     * @param rate 0 to 1
     */
    public static Outlook binomial(double rate) {
        if (!(rate >= 0 && rate <= 1)) {
            throw Refused.because("bad-rate", "expected a rate from 0 to 1, found " + rate);
        }
        return (successes, trials) -> {
            if (successes <= 0) {
                return 1;
            }
            if (successes > trials) {
                return 0;
            }
            return RegularizedBeta.value(rate, successes, trials - successes + 1.0);
        };
    }

    /** Return the outlook of trials of one group whose rate is drawn from a beta distribution. */
    public static Outlook betaBinomial(BetaBinomial.Shapes shapes) {
        return (successes, trials) -> shapes.predict(trials).atLeast(successes);
    }

    /**
     * Return the smallest n such that at least k of n succeed with at least the given probability.
     *
     * @param successes k, at least 0
     * @param probability above 0 and below 1
     * @return absent when not even a million are enough
     * @throws Refused when k or the probability is out of its range
     */
    public static Optional<Plan> smallest(long successes, double probability, Outlook outlook) {
        if (successes < 0) {
            throw Refused.because("bad-number", "expected at least 0 successes, found " + successes);
        }
        if (!(probability > 0 && probability < 1)) {
            throw Refused.because(
                    "bad-probability", "expected a probability above 0 and below 1, such as 0.9, found " + probability);
        }
        if (successes == 0) {
            return Optional.of(new Plan(0, 1, Optional.empty()));
        }
        if (successes > MOST || !isEnough(outlook, successes, MOST, probability)) {
            return Optional.empty();
        }
        long low = successes - 1;
        long high = Math.max(1, successes);
        while (!isEnough(outlook, successes, high, probability)) {
            low = high;
            high = Math.min(MOST, high * 2);
        }
        while (high - low > 1) {
            long middle = (low + high) / 2;
            if (isEnough(outlook, successes, middle, probability)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return Optional.of(
                new Plan(high, outlook.atLeast(successes, high), Optional.of(outlook.atLeast(successes, high - 1))));
    }

    private static boolean isEnough(Outlook outlook, long successes, long trials, double probability) {
        return outlook.atLeast(successes, trials) >= probability - ROUNDING;
    }
}
