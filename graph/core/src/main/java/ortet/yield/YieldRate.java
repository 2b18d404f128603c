package ortet.yield;

import java.util.Objects;
import java.util.Optional;
import ortet.figures.Clustered;
import ortet.figures.Count;
import ortet.figures.Interval;

/**
 * A rate with all that must be said with it.
 *
 * @param count how many did of those known, of which there is at least one
 * @param interval where the true rate may lie
 * @param widening how much less the units say because they came in clusters; absent where there was one cluster alone, and
 *     then the interval is too narrow, by how much nobody knows
 * @param clusters in how many clusters they came
 * @param open how many more are not known yet
 */
public record YieldRate(Count count, Interval interval, Optional<Clustered.Widening> widening, int clusters, int open) {
    public YieldRate {
        Objects.requireNonNull(count);
        Objects.requireNonNull(interval);
        Objects.requireNonNull(widening);
    }

    static Optional<YieldRate> of(Clustered clustered, int open, double confidence) {
        return clustered
                .interval(confidence)
                .map(answer -> new YieldRate(
                        clustered.total(), answer.interval(), clustered.widening(), clustered.clusters(), open));
    }

    /** Return the rate, in [0, 1]. */
    public double share() {
        return count.share().orElseThrow();
    }
}
