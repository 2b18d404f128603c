package ortet.yield;

import java.util.Objects;
import java.util.Optional;
import ortet.figures.Interval;
import ortet.figures.MantelHaenszel;
import ortet.figures.Ratio;

/**
 * Two sides compared within strata, as if units were independent.
 *
 * @param within within what
 * @param strata how many strata have units of both sides
 * @param informing how many of these say something about the odds ratio
 * @param difference the Mantel-Haenszel difference of the rates, first less second; absent where no stratum has both
 * @param oddsRatio the Mantel-Haenszel odds ratio
 * @param oddsInterval its interval
 * @param test the p of the Cochran-Mantel-Haenszel test that within no stratum there is a difference
 * @param alike the p of Tarone's test that the odds ratio is the same in every stratum; small where it is not
 * @param leftOut units in batches that are in more than one stratum
 */
public record Stratified(
        Strata within,
        int strata,
        int informing,
        Optional<MantelHaenszel.Difference> difference,
        Ratio oddsRatio,
        Optional<Interval> oddsInterval,
        Optional<Double> test,
        Optional<Double> alike,
        int leftOut) {
    public Stratified {
        Objects.requireNonNull(within);
        Objects.requireNonNull(difference);
        Objects.requireNonNull(oddsRatio);
        Objects.requireNonNull(oddsInterval);
        Objects.requireNonNull(test);
        Objects.requireNonNull(alike);
    }
}
