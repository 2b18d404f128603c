package ortet.figures;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Rates of several groups, and each but the first against the first: difference, odds ratio, and the same within strata.
 *
 * <p>Where the clusters of units are known, rates and differences allow for them; odds ratios, tests and what is said within
 * strata take units for independent all the same, and are then too sure of themselves.
 *
 * @param rates in the order of the groups
 * @param pairs each further group against the first; none with fewer than two groups
 * @param clustered whether clusters were told
 * @param stratified whether strata were told
 */
public record Comparison(List<Rate> rates, List<Pair> pairs, boolean clustered, boolean stratified) {
    /**
     * Some units.
     *
     * @param group to which they belong
     * @param stratum within which groups are compared, where that was told
     * @param cluster in which the units stood, where that was told; the same name in two groups is two clusters
     */
    public record Row(String group, Optional<String> stratum, Optional<String> cluster, Count count) {
        public Row {
            Objects.requireNonNull(group);
            Objects.requireNonNull(stratum);
            Objects.requireNonNull(cluster);
            Objects.requireNonNull(count);
        }
    }

    /**
     * The rate of one group.
     *
     * @param clusters the units by cluster; absent when clusters were not told
     * @param interval absent when nothing is known
     */
    public record Rate(String group, Count count, Optional<Clustered> clusters, Optional<Interval> interval) {
        public Rate {
            Objects.requireNonNull(group);
            Objects.requireNonNull(count);
            Objects.requireNonNull(clusters);
            Objects.requireNonNull(interval);
        }
    }

    /**
     * One group against another, the first.
     *
     * @param group that is compared
     * @param against the first group
     * @param difference of the rates; absent when nothing is known of one
     * @param differenceInterval absent likewise
     * @param claimsNothing whether clusters were told, but one side has fewer than two, so that the interval takes units for
     *     independent and allows no verdict
     * @param odds ratio of the two, not heeding strata
     * @param p Fisher's, two-sided
     * @param within the two within strata; absent when strata were not told
     * @param exactWithin the exact odds ratio within strata; absent likewise, or when it would take too long
     */
    public record Pair(
            String group,
            String against,
            Optional<Double> difference,
            Optional<Interval> differenceInterval,
            boolean claimsNothing,
            Odds odds,
            double p,
            Optional<MantelHaenszel> within,
            Optional<Odds> exactWithin) {
        public Pair {
            Objects.requireNonNull(group);
            Objects.requireNonNull(against);
            Objects.requireNonNull(difference);
            Objects.requireNonNull(differenceInterval);
            Objects.requireNonNull(odds);
            Objects.requireNonNull(within);
            Objects.requireNonNull(exactWithin);
        }
    }

    public Comparison {
        rates = List.copyOf(rates);
        pairs = List.copyOf(pairs);
    }

    /**
     * Compare groups.
     *
     * @param rows in any order; the group that is named first is the one against which the others are held
     * @param confidence of the intervals, above 0 and below 1, such as 0.95
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static Comparison of(List<Row> rows, double confidence) {
        Wilson.checkConfidence(confidence);
        boolean clustered = rows.stream().anyMatch(row -> row.cluster().isPresent());
        boolean stratified = rows.stream().anyMatch(row -> row.stratum().isPresent());
        Map<String, Map<String, Count>> byCluster = new LinkedHashMap<>();
        Map<String, Map<String, Count>> byStratum = new LinkedHashMap<>();
        Map<String, Count> totals = new LinkedHashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            String alone = "\u0000" + i; // units of which nobody said in which cluster they stood are one by themselves
            totals.merge(row.group(), row.count(), Count::plus);
            byCluster
                    .computeIfAbsent(row.group(), group -> new LinkedHashMap<>())
                    .merge(row.cluster().orElse(alone), row.count(), Count::plus);
            byStratum
                    .computeIfAbsent(row.stratum().orElse(""), stratum -> new LinkedHashMap<>())
                    .merge(row.group(), row.count(), Count::plus);
        }
        List<Rate> rates = new ArrayList<>();
        totals.forEach((group, count) -> {
            Optional<Clustered> clusters = clustered
                    ? Optional.of(Clustered.of(List.copyOf(byCluster.get(group).values())))
                    : Optional.empty();
            rates.add(new Rate(
                    group,
                    count,
                    clusters,
                    clusters.map(one -> one.interval(confidence).map(Clustered.Answer::interval))
                            .orElseGet(() -> Wilson.interval(count, confidence))));
        });
        List<Pair> pairs = new ArrayList<>();
        for (Rate rate : rates.subList(Math.min(1, rates.size()), rates.size())) {
            pairs.add(pair(rate, rates.get(0), byStratum, stratified, confidence));
        }
        return new Comparison(rates, pairs, clustered, stratified);
    }

    private static Pair pair(
            Rate rate, Rate against, Map<String, Map<String, Count>> byStratum, boolean stratified, double confidence) {
        Count first = rate.count();
        Count second = against.count();
        Optional<Double> difference =
                first.share().flatMap(share -> second.share().map(other -> share - other));
        Optional<Clustered.Answer> answer = rate.clusters()
                .flatMap(clusters ->
                        Clustered.difference(clusters, against.clusters().orElseThrow(), confidence));
        Optional<Interval> interval = rate.clusters().isPresent()
                ? answer.map(Clustered.Answer::interval)
                : Newcombe.difference(first, second, confidence);
        boolean claimsNothing = answer.map(one -> one.accept(new Clustered.Answer.Visitor<Boolean>() {
                    @Override
                    public Boolean widened(Clustered.Widened widened) {
                        return false;
                    }

                    @Override
                    public Boolean asIfIndependent(Clustered.AsIfIndependent naive) {
                        return true;
                    }
                }))
                .orElse(false);
        List<Stratum> strata = new ArrayList<>();
        Count nobody = new Count(0, 0);
        byStratum.forEach((label, counts) -> strata.add(new Stratum(
                label, counts.getOrDefault(rate.group(), nobody), counts.getOrDefault(against.group(), nobody))));
        return new Pair(
                rate.group(),
                against.group(),
                difference,
                interval,
                claimsNothing,
                ConditionalOdds.of(first, second, confidence),
                Fisher.twoSided(first, second),
                stratified ? Optional.of(MantelHaenszel.of(strata, confidence)) : Optional.empty(),
                stratified ? ConditionalOdds.within(strata, confidence) : Optional.empty());
    }
}
