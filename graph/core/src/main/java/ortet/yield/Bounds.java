package ortet.yield;

import java.util.Optional;
import ortet.figures.Count;

/**
 * Between which rates the take lies, whatever became of the unaccounted units.
 *
 * @param allFailed the count if every unaccounted unit has failed
 * @param allTaken the count if every unaccounted unit has taken
 */
public record Bounds(Count allFailed, Count allTaken) {
    /** Return the bounds of a tally; absent when nothing is unaccounted. */
    static Optional<Bounds> of(Tally tally) {
        if (tally.unaccounted() == 0) {
            return Optional.empty();
        }
        Count unaccounted = new Count(0, tally.unaccounted());
        return Optional.of(
                new Bounds(tally.known().plus(unaccounted), tally.known().plus(unaccounted.failures())));
    }

    /** Return the rate if every unaccounted unit has failed, in [0, 1]. */
    public double lower() {
        return allFailed.share().orElseThrow();
    }

    /** Return the rate if every unaccounted unit has taken, in [0, 1]. */
    public double upper() {
        return allTaken.share().orElseThrow();
    }

    /** Return the bounds in one line: {@code 62 to 71 % whatever became of the unaccounted}. */
    @Override
    public String toString() {
        return Percent.of(lower()) + " to " + Percent.of(upper()) + " % whatever became of the unaccounted";
    }
}
