package ortet.yield;

import java.util.Objects;
import ortet.figures.Needed;

/**
 * What would settle a comparison.
 *
 * @param difference the difference of rates that should be told apart, above 0
 * @param isObserved whether that is the one observed, rather than one worth knowing
 * @param clusterSize how many units a cluster has, on average
 * @param correlation of two units of one cluster, in [0, 1]
 * @param needed how many units and clusters on each side
 */
public record Settle(double difference, boolean isObserved, int clusterSize, double correlation, Needed needed) {
    public Settle {
        Objects.requireNonNull(needed);
    }
}
