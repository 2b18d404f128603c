package ortet.yield;

import java.util.Objects;
import java.util.Optional;
import ortet.figures.Count;
import ortet.figures.Interval;
import ortet.figures.Wilson;

/**
 * A take rate with all that must be said with it: how many stand behind it, its interval, and what is not known yet.
 *
 * @param count how many have taken of those known, of which there is at least one
 * @param interval where the true rate may lie, were the units independent
 * @param pending how many more were set and are not known
 * @param unaccounted how many of the pending ones should be known by now
 */
public record TakeRate(Count count, Interval interval, int pending, int unaccounted) {
    public TakeRate {
        Objects.requireNonNull(count);
        Objects.requireNonNull(interval);
    }

    /** Return the rate of a tally; absent when nothing is known. */
    static Optional<TakeRate> of(Tally tally, double confidence) {
        return Wilson.interval(tally.known(), confidence)
                .map(interval -> new TakeRate(tally.known(), interval, tally.pending(), tally.unaccounted()));
    }

    /** Return the rate, in [0, 1]. */
    public double share() {
        return count.share().orElseThrow();
    }

    /** Return the rate in one line: {@code 41 of 60, 68 % (56 to 79), 7 pending}. */
    @Override
    public String toString() {
        return count + ", " + Percent.of(share()) + " % (" + Percent.of(interval.lower()) + " to "
                + Percent.of(interval.upper()) + "), " + pending + " pending"
                + (unaccounted == 0 ? "" : ", " + unaccounted + " of them unaccounted");
    }
}
