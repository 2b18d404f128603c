package ortet.choice;

import java.util.Map;
import java.util.TreeMap;

/**
 * Whether trees come to be graded each at a time of its own, or in rounds that people make; and how much trees of one cluster
 * share of their times either way.
 *
 * <p>The score of a tree's time is the sum of the score expected of the round in which it was graded, and of what it lay off
 * that. If every tree goes at a time of its own, early trees are early in their round too: the one part of a tree goes with the
 * other part of its neighbour in the cluster, as much as rounds go with rounds for their variance. If people make rounds and all
 * that is ready goes, where in the round a tree was graded says nothing of its neighbour's round. That neighbours may be graded
 * on one day does not mislead, for days within rounds are not held against one another.
 */
final class ForecastPace {
    /** How sure one must be that trees share their times at all before rounds are made of them. */
    private static final double HARDLY_SHARED = 0.02;

    private static final double HARDLY_APART = 0.01;
    private static final double NARROW = 0.005;
    private static final double FURTHEST = 2.6;

    private final Map<Integer, double[]> clusters = new TreeMap<>();
    private double all;
    private double rounds;
    private double offs;
    private double roundSquares;
    private double offSquares;

    /**
     * Return the score to be expected of a tree of which it is known only that a share between two came before it: the mean of a
     * normal distribution cut at both ends.
     *
     * @see "Johnson, Kotz & Balakrishnan 1994, Continuous Univariate Distributions 1, 13.10.1"
     */
    static double expected(double before, double after) {
        double from = ForecastDice.quantile(before);
        double to = ForecastDice.quantile(after);
        double mean = after - before > NARROW ? (density(from) - density(to)) / (after - before) : (from + to) / 2;
        return Math.max(-FURTHEST, Math.min(FURTHEST, mean));
    }

    private static double density(double z) {
        return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
    }

    /** Count trees of a cluster that were graded in one round and lay off it alike. */
    void add(int cluster, double round, double off, int count) {
        double[] sums = clusters.computeIfAbsent(cluster, any -> new double[5]);
        sums[0] += count;
        sums[1] += count * round;
        sums[2] += count * off;
        sums[3] += count * round * round;
        sums[4] += count * round * off;
        all += count;
        rounds += count * round;
        offs += count * off;
        roundSquares += count * round * round;
        offSquares += count * off * off;
    }

    private double ofRounds() {
        return variance(roundSquares, rounds);
    }

    private double ofOffs() {
        return variance(offSquares, offs);
    }

    private double variance(double squares, double sum) {
        return all > 0 ? squares / all - sum / all * (sum / all) : 0;
    }

    /** Return the mean product, over two trees of a cluster, of the round of one and the round of the other. */
    private double alike() {
        return products(1, 3);
    }

    /** Return the mean product, over two trees of a cluster, of the round of one and how far the other lay off its own. */
    private double across() {
        return products(2, 4);
    }

    private double products(int other, int own) {
        double mean = rounds / Math.max(1, all);
        double otherMean = (other == 1 ? rounds : offs) / Math.max(1, all);
        double sum = 0;
        double pairs = 0;
        for (double[] one : clusters.values()) {
            double n = one[0];
            if (n > 1) {
                double both = (one[1] - n * mean) * (one[other] - n * otherMean);
                double same = one[own] - mean * one[other] - otherMean * one[1] + n * mean * otherMean;
                sum += (both - same) / (n - 1);
                pairs += n;
            }
        }
        return pairs > 0 ? sum / pairs : 0;
    }

    /**
     * Return how much trees go at times of their own: 1 wholly, 0 only as the rounds do; 1 where nothing tells. With few rounds, whose
     * scores are far from normal, it is up to a fifth too low.
     */
    double own() {
        if (ofOffs() < HARDLY_APART || alike() <= 0) {
            return 1;
        }
        double own = (across() / ofOffs() + HARDLY_SHARED) / (alike() / ofRounds() + HARDLY_SHARED);
        return Math.max(0, Math.min(1, own));
    }

    /** Return the correlation of the scores of two trees of a cluster, from 0. */
    double correlation() {
        double round = ofRounds();
        if (!(round > HARDLY_APART)) {
            return 0;
        }
        double own = own();
        double wholly = (alike() + 2 * across()) / (round * round + 2 * round * ofOffs());
        return Math.max(0, own * wholly + (1 - own) * alike() / (round * round));
    }
}
