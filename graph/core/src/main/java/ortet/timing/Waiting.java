package ortet.timing;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.figures.Interval;
import ortet.figures.Range;

/**
 * How long something took, for those that come to it: quantiles of Turnbull's estimate, in days.
 *
 * <p>A quantile is a range, for nobody knows when between two looks it happened. Its upper end is {@code Infinity} where so
 * many are still waiting that it cannot be told.
 *
 * @param happened for how many it has happened
 * @param waiting for how many it has not happened yet, as far as is known
 * @param tenth when it had happened for one in ten; absent when it has happened for none
 * @param half for one in two
 * @param ninetieth for nine in ten
 * @param median the interval of the median; absent where it has happened for fewer than {@link #FEW}, and for
 *     all cultivars together, which have no common one
 */
public record Waiting(
        int happened,
        int waiting,
        Optional<Range> tenth,
        Optional<Range> half,
        Optional<Range> ninetieth,
        Optional<Interval> median) {
    /** Of fewer, no interval is told: drawn anew from so few, it would say more than they know. */
    public static final int FEW = 5;

    /** Nobody waited. */
    static final Waiting NONE =
            new Waiting(0, 0, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    public Waiting {
        List.of(tenth, half, ninetieth).forEach(Objects::requireNonNull);
        Objects.requireNonNull(median);
    }
}
