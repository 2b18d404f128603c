package ortet.choice;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * In which size classes trees become saleable: shares by kind, that lean on those of all, and how alike trees of one cluster are.
 *
 * <p>Units of a cluster count for fewer: n of them as n / (1 + (n − 1)ρ).
 */
final class ForecastSizes {
    /** For how many trees of a kind what is known of all stands. */
    private static final double LEAN = 3;

    private static final double MOST_ALIKE = 0.95;

    private final int classes;
    private final Map<Integer, double[]> ofKind = new HashMap<>();
    private final double[] ofAll;
    private final double all;
    private final double correlation;

    ForecastSizes(ForecastPast past) {
        this.classes = past.sizes().size() + 1;
        this.ofAll = new double[classes];
        Map<Integer, double[]> clusters = new TreeMap<>();
        for (ForecastEpisode one : past.episodes()) {
            if (isGraded(one, past.ungraded())) {
                clusters.computeIfAbsent(one.cluster(), any -> new double[classes])[one.size()] += one.count();
            }
        }
        this.correlation = correlation(clusters);
        Map<Integer, Double> weights = new HashMap<>();
        clusters.forEach((cluster, counts) ->
                weights.put(cluster, 1 / (1 + (Arrays.stream(counts).sum() - 1) * correlation)));
        for (ForecastEpisode one : past.episodes()) {
            if (isGraded(one, past.ungraded())) {
                double weight = weights.get(one.cluster()) * one.count();
                ofAll[one.size()] += weight;
                ofKind.computeIfAbsent(one.kind(), any -> new double[classes])[one.size()] += weight;
            }
        }
        this.all = Arrays.stream(ofAll).sum();
    }

    private static boolean isGraded(ForecastEpisode one, int ungraded) {
        return one.stage() == ForecastStage.GRADING && one.how() == ForecastEnd.GOOD && one.size() != ungraded;
    }

    /** Return how much more often pairs of one cluster are of one class than pairs of all are. */
    private double correlation(Map<Integer, double[]> clusters) {
        double[] sums = new double[classes];
        double pairs = 0;
        double same = 0;
        for (double[] cluster : clusters.values()) {
            double n = Arrays.stream(cluster).sum();
            if (n > 1) {
                pairs += n;
                same += Arrays.stream(cluster).map(k -> k * (k - 1)).sum() / (n - 1);
            }
            for (int size = 0; size < classes; size++) {
                sums[size] += cluster[size];
            }
        }
        double trees = Arrays.stream(sums).sum();
        double alike = Arrays.stream(sums).map(n -> n * n).sum() / Math.max(1, trees * trees);
        return pairs > 0 && alike < 1 ? Math.max(0, Math.min(MOST_ALIKE, (same / pairs - alike) / (1 - alike))) : 0;
    }

    /** Return how many classes there are; the last is of what is sold ungraded, and nobody grades a tree in it. */
    int classes() {
        return classes;
    }

    /** Return how likely two trees of a cluster are of one class, beyond what all are: 0 to 1. */
    double correlation() {
        return correlation;
    }

    /** Draw the shares of the classes for a kind from what they may be. */
    double[] draw(int kind, ForecastDice dice) {
        double[] own = ofKind.getOrDefault(kind, new double[classes]);
        double[] shares = new double[classes];
        double sum = 0;
        for (int size = 0; size < classes; size++) {
            double wider = all > 0 ? LEAN * ofAll[size] / all : 0;
            shares[size] = dice.gamma(own[size] + wider);
            sum += shares[size];
        }
        for (int size = 0; size < classes; size++) {
            shares[size] = sum > 0 ? shares[size] / sum : size == classes - 1 ? 1 : 0;
        }
        return shares;
    }

    /** Draw the class of one tree. */
    static int pick(double[] shares, ForecastDice dice) {
        double u = dice.uniform();
        int size = 0;
        while (size < shares.length - 1 && u >= shares[size]) {
            u -= shares[size];
            size++;
        }
        return size;
    }
}
