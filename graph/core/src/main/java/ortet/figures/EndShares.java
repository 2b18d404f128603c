package ortet.figures;

import java.util.Map;
import java.util.NavigableMap;
import java.util.SortedMap;
import java.util.TreeMap;
import ortet.value.Refused;

/**
 * The shares to which those followed come to each end, and when, leaning on the shares of a wider kind.
 *
 * <p>Leaning on nothing, each time u of an end of cause k adds S(u−) dₖ/n to its share, where n are still followed and S(u−)
 * is the share without an end before u: the cumulative incidence of Aalen and Johansen, as {@link Incidence} has it. Leaning
 * on a wider kind with a strength a, the shares of that kind count as a more of those followed: at each time, a times its
 * share is added to the ends there, and a times what is left of it to those still followed. So it is the mean of the
 * posterior distribution when the shares are drawn from a Dirichlet distribution (over every end at every time) around the
 * wider kind's, with a as the sum of its parameters. Without anybody censored that is
 *
 * <pre>
 * (dₖ + a mₖ) / (n + a)
 * </pre>
 *
 * <p>for the wider kind's share mₖ. Followed counts may be fractions.
 *
 * @see "Aalen & Johansen 1978, Scandinavian Journal of Statistics 5:141"
 * @see "Susarla & Van Ryzin 1976, Journal of the American Statistical Association 71:897 (censored, one cause)"
 */
public final class EndShares {
    private final SortedMap<Followed, Double> shares;
    private final double open;

    private EndShares(SortedMap<Followed, Double> shares, double open) {
        this.shares = shares;
        this.open = open;
    }

    /** Find the shares from those followed alone, each with how many; a count of 0 or less is left out. */
    public static EndShares of(Map<Followed, Double> followed) {
        return find(followed, new EndShares(new TreeMap<>(EndShares::compare), 1), 0);
    }

    /**
     * Find the shares from those followed, each with how many, and a wider kind.
     *
     * @param strength as how many more of those followed the wider kind counts, above 0
     */
    public static EndShares of(Map<Followed, Double> followed, EndShares wider, double strength) {
        if (!(strength > 0 && strength < Double.POSITIVE_INFINITY)) {
            throw Refused.because("bad-strength", "expected a strength above 0, found " + strength);
        }
        return find(followed, wider, strength);
    }

    private static EndShares find(Map<Followed, Double> followed, EndShares wider, double strength) {
        // at each time the ends come first, for those censored were still followed then
        NavigableMap<Followed, Double> all = new TreeMap<>(EndShares::compare);
        double still = strength * wider.open;
        for (Map.Entry<Followed, Double> one : followed.entrySet()) {
            if (one.getValue() > 0) {
                all.merge(one.getKey(), one.getValue(), Double::sum);
                still += one.getValue();
            }
        }
        for (Map.Entry<Followed, Double> one : wider.shares.entrySet()) {
            all.merge(one.getKey(), strength * one.getValue(), Double::sum);
            still += strength * one.getValue();
        }
        SortedMap<Followed, Double> shares = new TreeMap<>(EndShares::compare);
        double without = 1;
        double time = -1;
        double left = still;
        double ended = 0;
        for (Map.Entry<Followed, Double> one : all.entrySet()) {
            if (one.getKey().time() > time) {
                without -= ended;
                ended = 0;
                time = one.getKey().time();
                still = left;
            }
            if (one.getKey().hasHappened() && still > 0) {
                double share = without * Math.min(1, one.getValue() / still);
                shares.put(one.getKey(), share);
                ended += share;
            }
            left -= one.getValue();
        }
        return new EndShares(shares, Math.max(0, without - ended));
    }

    private static int compare(Followed one, Followed other) {
        int byTime = Double.compare(one.time(), other.time());
        return byTime != 0 ? byTime : Integer.compare(other.cause(), one.cause());
    }

    /** Return the share of each end: by time, and then the later of the causes first. */
    public SortedMap<Followed, Double> shares() {
        return java.util.Collections.unmodifiableSortedMap(shares);
    }

    /** Return the share of a cause, over all times. */
    public double of(int cause) {
        return shares.entrySet().stream()
                .filter(one -> one.getKey().cause() == cause)
                .mapToDouble(Map.Entry::getValue)
                .sum();
    }

    /** Return the share of those whose end comes later than anybody was followed. */
    public double open() {
        return open;
    }
}
