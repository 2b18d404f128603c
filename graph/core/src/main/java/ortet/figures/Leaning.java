package ortet.figures;

import java.util.Arrays;
import java.util.List;
import ortet.value.Require;

/**
 * How strongly the shares of one group should lean on those of the kind that it belongs to: from how far groups of one kind
 * lie apart.
 *
 * <p>The shares of a group are drawn from a Dirichlet distribution around the shares m of its kind, with parameters a mₖ; its
 * counts nₖ are multinomial. The likelihood of the strength a is then, but for what does not hang on a,
 *
 * <pre>
 * Π over groups of  Γ(a) / Γ(a + n)  Π over k of  Γ(a mₖ + nₖ) / Γ(a mₖ)
 * </pre>
 *
 * <p>(Dirichlet-multinomial, or Pólya; with two sorts beta-binomial). m are the shares of all groups of the kind together. The
 * strength told is the geometric mean of {@link #GRID} weighted by this likelihood; so where there is nothing to learn from it
 * is the middle of the grid, {@value #USUAL}, and moves from it as the groups have something to say.
 *
 * @see "Mosimann 1962, Biometrika 49:65"
 * @see "Minka 2000, Estimating a Dirichlet distribution (technical report)"
 */
public final class Leaning {
    /** The strengths that are weighed, even on the scale of logarithms but for rounding; common practice. */
    public static final List<Double> GRID = List.of(1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0);

    /** The strength where there is nothing to learn from: the geometric mean of the grid. */
    public static final double USUAL = 10;

    private Leaning() {}

    /**
     * Find the strength.
     *
     * @param kinds for each kind its groups, for each group its counts by sort, as many for all groups of a kind; a kind of
     *     one group says nothing
     */
    public static double strength(List<List<int[]>> kinds) {
        double[] logs = GRID.stream().mapToDouble(a -> logLikelihood(kinds, a)).toArray();
        double most = Arrays.stream(logs).max().orElse(0);
        double sum = 0;
        double weights = 0;
        for (int at = 0; at < logs.length; at++) {
            double weight = Math.exp(logs[at] - most);
            sum += weight * Math.log(GRID.get(at));
            weights += weight;
        }
        return Math.exp(sum / weights);
    }

    /** Return the logarithm of the likelihood of a strength, but for what does not hang on it. */
    static double logLikelihood(List<List<int[]>> kinds, double strength) {
        double sum = 0;
        for (List<int[]> groups : kinds) {
            List<int[]> known =
                    groups.stream().filter(one -> Arrays.stream(one).sum() > 0).toList();
            if (known.size() > 1) {
                double[] mean = mean(known);
                for (int[] counts : known) {
                    sum -= rising(strength, Arrays.stream(counts).sum());
                    for (int sort = 0; sort < mean.length; sort++) {
                        sum += rising(strength * mean[sort], counts[sort]);
                    }
                }
            }
        }
        return sum;
    }

    private static double[] mean(List<int[]> groups) {
        double[] mean = new double[groups.get(0).length];
        double all = 0;
        for (int[] counts : groups) {
            Require.that(counts.length == mean.length, "counts", "as many sorts in each group of a kind");
            for (int sort = 0; sort < mean.length; sort++) {
                mean[sort] += counts[sort];
                all += counts[sort];
            }
        }
        for (int sort = 0; sort < mean.length; sort++) {
            mean[sort] /= all;
        }
        return mean;
    }

    /** Return ln Γ(x + n) − ln Γ(x), summed up factor by factor. */
    private static double rising(double x, int n) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += Math.log(x + i);
        }
        return sum;
    }
}
