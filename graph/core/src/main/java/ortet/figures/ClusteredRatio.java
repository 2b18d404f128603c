package ortet.figures;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;
import ortet.value.Defect;

/**
 * How many to each unit of what went in, such as trees to a mother-year, counted in clusters that share their luck: all
 * years of one mother, say.
 *
 * <p>With a count y and x units in each of k clusters, R = Σy / Σx, and its variance between clusters is
 * v = k / (k − 1) · Σ(y − R x)² / (Σx)². Counts at random vary by R / Σx even where all clusters are alike, so v is
 * taken for no less. The limits are R exp(± t √v / R), with a quantile of Student's t on (Σx)² / Σx² − 1 degrees of
 * freedom, at least 1: k − 1 for clusters of one size, less where a few large ones carry the sample.
 *
 * @see "Cochran 1977, Sampling Techniques, third edition, section 6.3, for the ratio of two totals and its variance"
 */
public final class ClusteredRatio {
    /**
     * One cluster.
     *
     * @param count how many came of it, at least 0
     * @param units how much went into it, above 0
     */
    public record Part(long count, double units) {
        public Part {
            if (count < 0 || !(units > 0)) {
                throw new Defect(count + " to " + units + " units");
            }
        }
    }

    private final List<Part> parts;
    private final long count;
    private final double units;

    private ClusteredRatio(List<Part> parts) {
        this.parts = parts;
        this.count = parts.stream().mapToLong(Part::count).sum();
        this.units = parts.stream().mapToDouble(Part::units).sum();
    }

    /** Take a ratio out of clusters, in any order. */
    public static ClusteredRatio of(List<Part> clusters) {
        return new ClusteredRatio(List.copyOf(Objects.requireNonNull(clusters)));
    }

    /** Return the number of clusters. */
    public int clusters() {
        return parts.size();
    }

    /** Return how many came of all of them. */
    public long count() {
        return count;
    }

    /** Return how much went into all of them. */
    public double units() {
        return units;
    }

    /** Return how many came to each unit; absent when nothing went in. */
    public Optional<Double> ratio() {
        return parts.isEmpty() ? Optional.empty() : Optional.of(count / units);
    }

    /** Return the standard error of the ratio between clusters; absent with fewer than two. */
    public Optional<Double> standardError() {
        return parts.size() < 2 ? Optional.empty() : Optional.of(Math.sqrt(variance()));
    }

    private double variance() {
        double ratio = count / units;
        double squares = 0;
        for (Part part : parts) {
            double away = part.count() - ratio * part.units();
            squares += away * away;
        }
        double k = parts.size();
        return k / (k - 1) * squares / units / units;
    }

    /**
     * Return the interval of the ratio.
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @return the interval; absent with fewer than two clusters, and where nothing came of any: how clusters differ cannot
     *     be seen then
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public Optional<Interval> interval(double confidence) {
        Wilson.checkConfidence(confidence);
        if (parts.size() < 2 || count == 0) {
            return Optional.empty();
        }
        double ratio = count / units;
        double squares =
                parts.stream().mapToDouble(part -> part.units() * part.units()).sum();
        double degrees = Math.max(1, units * (units / squares) - 1);
        double error = Math.sqrt(Math.max(variance(), ratio / units));
        double wide = TDistribution.of(degrees).inverseSurvivalProbability((1 - confidence) / 2) * error / ratio;
        return Optional.of(new Interval(
                ratio * Math.exp(-wide), ratio * Math.exp(wide), confidence, Interval.Method.RATIO_CLUSTERED));
    }
}
