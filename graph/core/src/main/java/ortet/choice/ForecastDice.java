package ortet.choice;

import java.util.SplittableRandom;
import org.apache.commons.numbers.gamma.Erfc;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.AhrensDieterMarsagliaTsangGammaSampler;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Draws of one simulation: the same seed and number of the simulation give the same draws on any machine. */
final class ForecastDice {
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double REACH = 8;
    private static final int PER_UNIT = 256;
    private static final double[] TABLE = table();
    private static final double ALL = 1 - 1e-12;
    private static final int PLACES = 1 << 14;
    private static final int TAIL = PLACES / 512;
    private static final double[] SCORES = scores();
    private static final double FEW = 30;

    private final SplittableRandom random;
    private final UniformRandomProvider provider;

    ForecastDice(long seed, int simulation) {
        long mixed = seed + GOLDEN * (simulation + 1);
        mixed = (mixed ^ mixed >>> 32) * 0xD6E8FEB86659FD93L;
        mixed = (mixed ^ mixed >>> 32) * 0xD6E8FEB86659FD93L;
        this.random = new SplittableRandom(mixed ^ mixed >>> 32);
        this.provider = random::nextLong;
    }

    private static double[] table() {
        double[] table = new double[(int) (2 * REACH * PER_UNIT) + 2];
        for (int at = 0; at < table.length; at++) {
            table[at] = Erfc.value(-((double) at / PER_UNIT - REACH) / Math.sqrt(2)) / 2;
        }
        return table;
    }

    private static double[] scores() {
        double[] scores = new double[PLACES + 1];
        for (int at = 0; at <= PLACES; at++) {
            scores[at] = quantile((double) at / PLACES);
        }
        return scores;
    }

    /** Return the normal distribution function, straight between places 1/256 apart: within 2e-6. */
    static double phi(double z) {
        double place = (z + REACH) * PER_UNIT;
        if (!(place > 0)) {
            return 0;
        }
        int at = (int) place;
        if (at >= TABLE.length - 2) {
            return 1;
        }
        return TABLE[at] + (place - at) * (TABLE[at + 1] - TABLE[at]);
    }

    /** Return the z below which a share of a normal distribution lies; the share is kept off 0 and 1. */
    static double quantile(double share) {
        return NORMAL.inverseCumulativeProbability(Math.min(ALL, Math.max(1 - ALL, share)));
    }

    /** Return the same, straight between places 1/16384 apart: within 1e-4, and exact in the tails. */
    static double score(double share) {
        double place = share * PLACES;
        if (!(place > TAIL) || place >= PLACES - TAIL) {
            return quantile(share);
        }
        int at = (int) place;
        return SCORES[at] + (place - at) * (SCORES[at + 1] - SCORES[at]);
    }

    double uniform() {
        return random.nextDouble();
    }

    double normal() {
        return random.nextGaussian();
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    /** Return a draw from the gamma distribution of a shape and the scale 1; 0 for a shape of 0. */
    double gamma(double shape) {
        return shape > 0
                ? AhrensDieterMarsagliaTsangGammaSampler.of(provider, shape, 1).sample()
                : 0;
    }

    /** Return how many of n come to something that each comes to with chance p, by inversion. */
    int binomial(int n, double p) {
        if (n == 0 || p <= 0) {
            return 0;
        }
        if (p >= 1) {
            return n;
        }
        if (p > 0.5) {
            return n - binomial(n, 1 - p);
        }
        if (n * p > FEW) {
            // two halves, so that the first term of the inversion never vanishes
            int half = n / 2;
            return binomial(half, p) + binomial(n - half, p);
        }
        double odds = p / (1 - p);
        double term = Math.pow(1 - p, n);
        double u = random.nextDouble();
        int k = 0;
        while (u > term && k < n) {
            u -= term;
            k++;
            term *= odds * (n - k + 1) / k;
        }
        return k;
    }
}
