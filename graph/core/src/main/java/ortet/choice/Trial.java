package ortet.choice;

import ortet.value.Require;

/**
 * A trial that could be made on a mother whom nobody has tried, and what is believed of her take before: a beta
 * distribution, from the cultivar's pooled rate and how far its mothers lie apart.
 *
 * <p>Her {@link Rates#layerTake()} must be draws from the same belief; only their size relative to its mean is changed by
 * what a trial would teach.
 *
 * @param layers how many would be set, 1 to 60
 * @param alpha first parameter of the beta distribution of her take, above 0
 * @param beta second parameter, above 0
 */
public record Trial(int layers, double alpha, double beta) {
    private static final int MOST = 60;

    public Trial {
        Require.that(layers >= 1 && layers <= MOST, "layers of a trial", "1 to " + MOST);
        Require.that(alpha > 0 && alpha < Double.POSITIVE_INFINITY, "alpha of a trial", "above 0");
        Require.that(beta > 0 && beta < Double.POSITIVE_INFINITY, "beta of a trial", "above 0");
    }
}
