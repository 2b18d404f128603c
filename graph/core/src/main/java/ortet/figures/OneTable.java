package ortet.figures;

/**
 * The noncentral hypergeometric distribution of one two-by-two table with given margins: k of m in the first group and
 * t − k of n in the second weigh C(m, k) C(n, t − k) ω^k.
 *
 * <p>The weights are never written as factorials. The ratio of neighbours is (m − k)(t − k)ω / ((k + 1)(n − t + k + 1)),
 * which falls as k grows; so the weights have one peak, and are summed from there to either side until they no longer
 * matter. That is stable, and takes some tens of standard deviations: some 20,000 steps for two million units.
 */
final class OneTable implements Tilted {
    /** Weights below this part of their sum no longer matter: what follows falls faster than a geometric series. */
    private static final double NEGLIGIBLE = 1e-22;

    private final long m;
    private final long n;
    private final long t;

    OneTable(Count first, Count second) {
        this.m = first.trials();
        this.n = second.trials();
        this.t = Math.addExact(first.successes(), second.successes());
    }

    @Override
    public long low() {
        return Math.max(0, t - n);
    }

    @Override
    public long high() {
        return Math.min(m, t);
    }

    /** Return the weight of k + 1 divided by that of k, for an odds ratio of 1. */
    double step(long k) {
        return ((double) (m - k) / (k + 1)) * ((double) (t - k) / (n - t + k + 1));
    }

    /** Return the number with the greatest weight. */
    long peak(double odds) {
        // step(k) odds = 1 is a quadratic in k; its root within the support, in a form in which nothing cancels
        double scale = Math.max(1, odds);
        double a = (odds - 1) / scale;
        double b = ((double) m + t + 2) * (odds / scale) + ((double) n - t) / scale;
        double c = ((double) m + 1) * ((double) t + 1) * (odds / scale);
        long peak = (long) Math.floor(2 * c / (b + Math.sqrt(Math.max(0, b * b - 4 * a * c))));
        peak = Math.max(low(), Math.min(high(), peak));
        while (peak < high() && step(peak) * odds > 1) {
            peak++;
        }
        while (peak > low() && step(peak - 1) * odds < 1) {
            peak--;
        }
        return peak;
    }

    @Override
    public Sums at(double logOdds, long x) {
        double odds = Math.exp(logOdds);
        long peak = peak(odds);
        double total = 1;
        double moment = 0; // about the peak
        double atMost = peak <= x ? 1 : 0;
        double atLeast = peak >= x ? 1 : 0;
        double weight = 1;
        for (long k = peak; k < high() && weight > NEGLIGIBLE * total; k++) {
            weight *= step(k) * odds;
            total += weight;
            moment += weight * (k + 1 - peak);
            atMost += k + 1 <= x ? weight : 0;
            atLeast += k + 1 >= x ? weight : 0;
        }
        weight = 1;
        for (long k = peak; k > low() && weight > NEGLIGIBLE * total; k--) {
            weight /= step(k - 1) * odds;
            total += weight;
            moment -= weight * (peak - k + 1);
            atMost += k - 1 <= x ? weight : 0;
            atLeast += k - 1 >= x ? weight : 0;
        }
        return new Sums(peak - x + moment / total, atMost / total, atLeast / total);
    }

    /** Return the probability, at an odds ratio of 1, of all tables that are at most as likely as the one with x. */
    double atMostAsLikely(long x, double slack) {
        long peak = peak(1);
        double bound = 1;
        for (long k = peak; k < x && bound > 0; k++) {
            bound *= step(k);
        }
        for (long k = peak; k > x && bound > 0; k--) {
            bound /= step(k - 1);
        }
        bound *= slack;
        double total = 1;
        double unlikely = bound >= 1 ? 1 : 0;
        double weight = 1;
        for (long k = peak; k < high() && weight > 0; k++) {
            weight *= step(k);
            total += weight;
            unlikely += weight <= bound ? weight : 0;
        }
        weight = 1;
        for (long k = peak; k > low() && weight > 0; k--) {
            weight /= step(k - 1);
            total += weight;
            unlikely += weight <= bound ? weight : 0;
        }
        return Math.min(1, unlikely / total);
    }
}
