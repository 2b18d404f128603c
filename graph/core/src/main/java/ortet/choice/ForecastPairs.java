package ortet.choice;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import ortet.book.UnitFacts.Method;

/**
 * How much luck pairs of units share, told from products of their scores: pairs of one cluster, and pairs of different clusters of
 * one season and method.
 */
final class ForecastPairs {
    private static final int FEW_SEASONS = 3;
    private static final double HARDLY_ANY = 1e-9;
    private static final double MOST_WITHIN = 0.95;
    private static final double MOST_BETWEEN = 0.9;
    private static final double MOST_OF_SEASON = 0.6;
    private static final double MOST_OF_BOTH = 0.9;
    private static final double MOST_OF_SCORES = 0.99;
    private static final int HALVINGS = 40;
    private static final int REACH = 60;
    private static final double PER_SCORE = 10;

    private final Map<Integer, double[]> clusters = new HashMap<>();
    private final Map<Integer, Integer> seasonOf = new HashMap<>();

    /** Count units of a cluster that have a score alike. */
    void add(ForecastEpisode episode, int method, double score) {
        double[] sums = clusters.computeIfAbsent(episode.cluster(), one -> new double[3]);
        sums[0] += episode.count();
        sums[1] += score * episode.count();
        sums[2] += score * score * episode.count();
        seasonOf.put(episode.cluster(), episode.season() * Method.values().length + method);
    }

    /** Return the correlations of scores of such a mean and variance. */
    ForecastShared ofScores(double mean, double variance) {
        Sums sums = sums(mean);
        return shared(sums, sums.within(variance), sums.between(variance));
    }

    /**
     * Return the correlations of the normal scores behind fates.
     *
     * @param chance the mean chance of coming through; the scores counted are fates, less their chances, in standard deviations
     */
    ForecastShared ofFates(double chance) {
        Sums sums = sums(0);
        return shared(
                sums,
                behind(Math.min(MOST_WITHIN, sums.within(1)), chance),
                behind(Math.min(MOST_BETWEEN, sums.between(1)), chance));
    }

    private static ForecastShared shared(Sums sums, double within, double between) {
        double season = Math.min(MOST_OF_SEASON, between);
        double cluster = Math.min(MOST_OF_BOTH - season, Math.max(0, within - season));
        return new ForecastShared(season, cluster, Math.max(2, sums.seasons));
    }

    /** Products of pairs, and how many pairs, both weighed so that large clusters say no more than they know. */
    private static final class Sums {
        private double ofWithin;
        private double pairs;
        private double ofBetween;
        private double crosses;
        private int seasons;

        double within(double variance) {
            return pairs > 0 ? Math.max(0, ofWithin / pairs / variance) : ForecastShared.GUESS.cluster();
        }

        double between(double variance) {
            return seasons >= FEW_SEASONS ? Math.max(0, ofBetween / crosses / variance) : ForecastShared.GUESS.season();
        }
    }

    private Sums sums(double mean) {
        Sums sums = new Sums();
        Map<Integer, double[]> seasons = new TreeMap<>();
        clusters.forEach((cluster, of) -> {
            double n = of[0];
            double total = of[1] - n * mean;
            double own = of[2] - 2 * mean * of[1] + n * mean * mean;
            if (n > 1) {
                sums.ofWithin += (total * total - own) / (n - 1);
                sums.pairs += n;
            }
            double[] season = seasons.computeIfAbsent(seasonOf.get(cluster), key -> new double[4]);
            // a cluster of many says little more than one of them
            double weight = 1 / Math.sqrt(n);
            season[0] += n * weight;
            season[1] += total * weight;
            season[2] += n * n * weight * weight;
            season[3] += total * total * weight * weight;
        });
        for (double[] season : seasons.values()) {
            double others = season[0] * season[0] - season[2];
            if (others > HARDLY_ANY) {
                sums.ofBetween += (season[1] * season[1] - season[3]) / season[0];
                sums.crosses += others / season[0];
                sums.seasons++;
            }
        }
        return sums;
    }

    /** Return the correlation of normal scores that gives fates of chance p this correlation. */
    private static double behind(double correlation, double p) {
        double low = 0;
        double high = MOST_OF_SCORES;
        for (int step = 0; step < HALVINGS; step++) {
            double middle = (low + high) / 2;
            if (fates(p, middle) < correlation) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Return the correlation of fates of chance p whose normal scores correlate by ρ. */
    private static double fates(double p, double rho) {
        double z = ForecastDice.quantile(p);
        double sum = 0;
        double mass = 0;
        for (int at = -REACH; at <= REACH; at++) {
            double shared = at / PER_SCORE;
            double weight = Math.exp(-shared * shared / 2);
            double one = ForecastDice.phi((z - Math.sqrt(rho) * shared) / Math.sqrt(1 - rho));
            sum += weight * one * one;
            mass += weight;
        }
        return (sum / mass - p * p) / (p * (1 - p));
    }
}
