package ortet.seeds;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Luck that falls the same way on every machine.
 *
 * <p>{@link Random} is specified to the bit; what is built on it here uses {@link StrictMath} alone. Each part of the
 * story draws from a branch of its own, so that a change in one leaves the others as they are.
 */
final class Chance {
    private final long seed;
    private final Random random;

    Chance(long seed) {
        this.seed = seed;
        this.random = new Random(seed);
    }

    /** Return a stream of luck of its own for the named part. */
    Chance branch(String part) {
        return new Chance(seed * 0x9E3779B97F4A7C15L + part.hashCode() * 0xBF58476D1CE4E5B9L);
    }

    /** Return a number from 0 up to but not including 1. */
    double share() {
        return random.nextDouble();
    }

    /** Return a whole number between the two, both included. */
    int between(int low, int high) {
        return low + random.nextInt(high - low + 1);
    }

    /** Tell whether something happens that does with the given probability. */
    boolean happens(double probability) {
        return random.nextDouble() < probability;
    }

    /** Return one of the list. */
    <T> T of(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    /** Return one of the choices. */
    @SafeVarargs
    final <T> T any(T... choices) {
        return choices[random.nextInt(choices.length)];
    }

    /** Return a standard normal deviate (Box and Muller 1958, Annals of Mathematical Statistics 29:610). */
    double normal() {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - random.nextDouble()));
        return radius * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
    }

    /** Return the number of successes in so many trials. */
    int successes(int trials, double probability) {
        int count = 0;
        for (int trial = 0; trial < trials; trial++) {
            count += happens(probability) ? 1 : 0;
        }
        return count;
    }

    /** Return the members of a list in another order. */
    <T> List<T> shuffled(List<T> list) {
        List<T> order = new ArrayList<>(list);
        for (int at = order.size() - 1; at > 0; at--) {
            int other = random.nextInt(at + 1);
            T kept = order.get(at);
            order.set(at, order.get(other));
            order.set(other, kept);
        }
        return order;
    }

    /** Return the probability that has the given log odds. */
    static double probability(double logOdds) {
        return 1 / (1 + StrictMath.exp(-logOdds));
    }

    /** Return the log odds of a probability. */
    static double logOdds(double probability) {
        return StrictMath.log(probability / (1 - probability));
    }
}
