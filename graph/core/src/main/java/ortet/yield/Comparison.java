package ortet.yield;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.figures.Interval;
import ortet.figures.Odds;

/**
 * Two sides compared.
 *
 * @param group the cultivar or taxon; absent where all are taken together
 * @param measure by what the rates are compared
 * @param first the first side
 * @param second the second side
 * @param difference the rate of the first less that of the second; absent where nothing is known of a side
 * @param interval where the true difference may lie; absent where the difference is
 * @param allowsForClusters whether the interval allows for clusters; without that there is no verdict
 * @param odds the odds ratio, first against second, as if units were independent
 * @param stratified the comparison within strata, where it was asked for
 * @param imbalances in what the sides differ besides, the most first
 * @param verdict what may be said
 * @param settle what would settle it, where the interval does not
 * @param firstCost what a saleable tree costs on the first side; absent where no cost is told
 * @param secondCost what it costs on the second side
 */
public record Comparison(
        Optional<Group> group,
        Measure measure,
        SideYield first,
        SideYield second,
        Optional<Double> difference,
        Optional<Interval> interval,
        boolean allowsForClusters,
        Odds odds,
        Optional<Stratified> stratified,
        List<Imbalance> imbalances,
        Verdict verdict,
        Optional<Settle> settle,
        Optional<SideCost> firstCost,
        Optional<SideCost> secondCost) {
    public Comparison {
        Objects.requireNonNull(group);
        Objects.requireNonNull(measure);
        Objects.requireNonNull(first);
        Objects.requireNonNull(second);
        Objects.requireNonNull(difference);
        Objects.requireNonNull(interval);
        Objects.requireNonNull(odds);
        Objects.requireNonNull(stratified);
        imbalances = List.copyOf(imbalances);
        Objects.requireNonNull(verdict);
        Objects.requireNonNull(settle);
        Objects.requireNonNull(firstCost);
        Objects.requireNonNull(secondCost);
    }

    Comparison withoutCosts() {
        return new Comparison(
                group,
                measure,
                first,
                second,
                difference,
                interval,
                allowsForClusters,
                odds,
                stratified,
                imbalances,
                verdict,
                settle,
                Optional.empty(),
                Optional.empty());
    }

    /** Return what to call it: the cultivar or taxon, or {@code all}. */
    public String shown() {
        return group.map(Group::shown).orElse("all");
    }

    /** Tell whether the sides are alike in everything that the book tells, but for what is compared. */
    public boolean isFair() {
        return imbalances.stream().noneMatch(Imbalance::isMuch);
    }
}
