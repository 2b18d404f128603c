package ortet.figures;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * A rate of units that came in clusters, such as cuttings in trays or layers on mothers. What befalls one unit of a
 * cluster befalls the others, so they tell less than as many independent ones.
 *
 * <p>With x successes of n units in each of k clusters, p = Σx / Σn is a ratio of two totals, and its variance between
 * clusters is v = k / (k − 1) · Σ(x − p n)² / (Σn)². The <b>design effect</b> is that variance in parts of the binomial
 * one, v / (p(1 − p) / Σn), but never below 1; the <b>effective count</b> is Σn divided by it. The interval is Wilson's
 * with the effective count for n, and with a quantile of Student's t in place of the normal one, because k clusters are
 * few to learn a variance from. Its degrees of freedom are (Σn)² / Σn² − 1, which is k − 1 for clusters of one size and
 * less where a few large ones carry the sample; at least 1. Among the ways tried by simulation this one held its
 * coverage best; it still falls short for rates near 0 or 1 whose clusters differ much.
 *
 * <p>Where everything succeeded, or nothing did, v is 0 and says nothing about how clusters differ. Each cluster then
 * counts as one unit. From fewer than two clusters nothing can be learnt of it either; the answer is then the interval as
 * if units were independent, and its type says so.
 *
 * @see "Rao & Scott 1992, Biometrics 48:577"
 * @see "Cochran 1977, Sampling Techniques, third edition, section 3.12 and chapter 6"
 * @see "Kish 1965, Survey Sampling, section 11.7, for unequal weights"
 */
public final class Clustered {
    /**
     * How much less the sample says than independent units would.
     *
     * @param designEffect at least 1
     * @param effective the effective count: units divided by the design effect
     * @param degrees degrees of freedom for the quantile of Student's t, at least 1
     * @param basis where the design effect comes from
     */
    public record Widening(double designEffect, double effective, double degrees, Basis basis) {
        public Widening {
            Objects.requireNonNull(basis);
        }
    }

    /** Where a design effect comes from. */
    public enum Basis {
        /** The clusters differ by more than chance, and by how much was reckoned. */
        ESTIMATED("estimated"),
        /** The clusters differ by no more than chance would have it. */
        NO_MORE_THAN_CHANCE("no more than chance"),
        /** All succeeded or none did, so that nobody can see how clusters differ: each counts as one unit. */
        ALL_ALIKE("all alike: each cluster counts as one");

        private final String title;

        Basis(String title) {
            this.title = title;
        }

        /** Return it in words. */
        public String title() {
            return title;
        }
    }

    /** An interval, and whether it allows for clusters. */
    public sealed interface Answer {
        /** Return the interval. */
        Interval interval();

        /** Hand the answer to the method for its kind. */
        <R> R accept(Visitor<R> visitor);

        /** Does something with an answer, kind by kind. */
        interface Visitor<R> {
            /** Visit an interval that allows for clusters. */
            R widened(Widened answer);

            /** Visit an interval that takes units for independent, because there were too few clusters. */
            R asIfIndependent(AsIfIndependent answer);
        }
    }

    /** An interval that allows for clusters. */
    public record Widened(Interval interval) implements Answer {
        public Widened {
            Objects.requireNonNull(interval);
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.widened(this);
        }
    }

    /**
     * An interval that takes units for independent, because from fewer than two clusters (on a side) nobody can tell how
     * much clusters differ. The truth is wider, by how much is not known; it allows no verdict.
     */
    public record AsIfIndependent(Interval interval) implements Answer {
        public AsIfIndependent {
            Objects.requireNonNull(interval);
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.asIfIndependent(this);
        }
    }

    private final List<Count> clusters;
    private final Count total;

    private Clustered(List<Count> clusters) {
        this.clusters =
                clusters.stream().filter(cluster -> cluster.trials() > 0).toList();
        this.total = this.clusters.stream().reduce(new Count(0, 0), Count::plus);
    }

    /**
     * Take a rate out of clusters.
     *
     * @param clusters in any order; those of which nothing is known are left out
     */
    public static Clustered of(List<Count> clusters) {
        return new Clustered(clusters);
    }

    /** Return all clusters taken together. */
    public Count total() {
        return total;
    }

    /** Return the number of clusters of which something is known. */
    public int clusters() {
        return clusters.size();
    }

    /** Return the rate, in [0, 1]; absent when nothing is known. */
    public Optional<Double> share() {
        return total.share();
    }

    /** Return the standard error of the rate between clusters; absent with fewer than two. */
    public Optional<Double> standardError() {
        return clusters.size() < 2 ? Optional.empty() : Optional.of(Math.sqrt(variance()));
    }

    private double variance() {
        double p = total.share().orElseThrow();
        double squares = 0;
        for (Count cluster : clusters) {
            double away = cluster.successes() - p * cluster.trials();
            squares += away * away;
        }
        double units = total.trials();
        double k = clusters.size();
        return k / (k - 1) * squares / units / units;
    }

    /** Return Σn²: what the size of a cluster is on average, seen from its units, times the units. */
    private double squaredSizes() {
        return clusters.stream()
                .mapToDouble(cluster -> (double) cluster.trials() * cluster.trials())
                .sum();
    }

    /** Return how much less the clusters say than independent units; absent with fewer than two clusters. */
    public Optional<Widening> widening() {
        if (clusters.size() < 2) {
            return Optional.empty();
        }
        double units = total.trials();
        double degrees = Math.max(1, units * (units / squaredSizes()) - 1);
        if (total.successes() == 0 || total.successes() == total.trials()) {
            return Optional.of(new Widening(units / clusters.size(), clusters.size(), degrees, Basis.ALL_ALIKE));
        }
        double p = total.share().orElseThrow();
        double raw = variance() / (p * (1 - p) / units);
        return Optional.of(
                raw > 1
                        ? new Widening(raw, units / raw, degrees, Basis.ESTIMATED)
                        : new Widening(1, units, degrees, Basis.NO_MORE_THAN_CHANCE));
    }

    /**
     * Return the correlation ρ of two units of one cluster that goes with the design effect, 1 + (m − 1)ρ with m = Σn² / Σn
     * the size of the cluster that a unit is in on average; in [0, 1]. Absent where the design effect could not be
     * estimated, or each cluster is one unit.
     */
    public Optional<Double> correlation() {
        double size = total.trials() == 0 ? 0 : squaredSizes() / total.trials();
        return widening()
                .filter(widening -> widening.basis() != Basis.ALL_ALIKE && size > 1)
                .map(widening -> Math.min(1, (widening.designEffect() - 1) / (size - 1)));
    }

    /**
     * Return the interval of the rate, within [0, 1].
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @return the interval; absent when nothing is known
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public Optional<Answer> interval(double confidence) {
        Wilson.checkConfidence(confidence);
        return widening()
                .<Answer>map(widening -> new Widened(Wilson.interval(
                        total.share().orElseThrow(),
                        widening.effective(),
                        TDistribution.of(widening.degrees()).inverseSurvivalProbability((1 - confidence) / 2),
                        confidence,
                        Interval.Method.WILSON_CLUSTERED)))
                .or(() -> Wilson.interval(total, confidence).map(AsIfIndependent::new));
    }

    /**
     * Return the interval of the difference of two rates, first minus second, within [−1, 1]: Newcombe's, built from the
     * limits of either side.
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @return the interval, which allows for clusters only if both sides have two or more; absent when nothing is known of
     *     one side
     * @throws ortet.value.Refused when the confidence is out of its range
     * @see "Newcombe 1998, Statistics in Medicine 17:873, method 10"
     * @see "Zou & Donner 2008, Statistics in Medicine 27:1693, for limits of other kinds put together so"
     */
    public static Optional<Answer> difference(Clustered first, Clustered second, double confidence) {
        if (first.widening().isEmpty() || second.widening().isEmpty()) {
            return Newcombe.difference(first.total(), second.total(), confidence)
                    .map(AsIfIndependent::new);
        }
        return Optional.of(new Widened(Newcombe.difference(
                first.share().orElseThrow(),
                first.interval(confidence).orElseThrow().interval(),
                second.share().orElseThrow(),
                second.interval(confidence).orElseThrow().interval(),
                Interval.Method.NEWCOMBE_CLUSTERED)));
    }
}
