package ortet.choice;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A plan for all mothers, and how good it is.
 *
 * @param status how the search ended
 * @param worth what the plan is worth by its aim, in money, what trials teach with it, less what severe deeds count less
 *     (see {@link Settings#ties()}); with the aim to meet demand, each tree delivered counts for more than any price, see
 *     {@link Aim}
 * @param bound what no plan can exceed, at least the worth
 * @param margin the expected margin in money, discounted where asked, mothers' worth at the end and as trees included
 * @param demandMet the expected share of all trees asked for that is delivered; absent when none is asked for
 * @param advice one for each mother, in the order of the question
 * @param resources all that is limited
 * @param sales all outlets in all years
 * @param outlook how the plan fares in each draw
 * @param whole whether all was given whole to the branch-and-bound solver, rather than mother by mother
 */
public record Choice(
        Status status,
        double worth,
        double bound,
        double margin,
        Optional<Double> demandMet,
        List<Advice> advice,
        List<ResourceUse> resources,
        List<Sales> sales,
        Outlook outlook,
        boolean whole) {
    /** How the search ended. */
    public enum Status {
        /** No better plan exists, within the gap that was asked for. */
        BEST,
        /** The time was over, or the search ran dry; a better plan may exist, but none beyond the bound. */
        STOPPED
    }

    public Choice {
        Objects.requireNonNull(status);
        Objects.requireNonNull(demandMet);
        advice = List.copyOf(advice);
        resources = List.copyOf(resources);
        sales = List.copyOf(sales);
        Objects.requireNonNull(outlook);
    }

    /** Return by what share of the bound the plan may fall short of the best, at least 0. */
    public double gap() {
        return Math.max(0, bound - worth) / Math.max(1, Math.abs(bound));
    }
}
