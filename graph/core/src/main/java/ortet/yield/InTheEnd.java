package ortet.yield;

import java.util.Objects;
import ortet.figures.Incidence;

/**
 * The share of units to which it has happened so many weeks after they were set, with those of which it is not known
 * followed as long as they were: the cumulative incidence of Aalen and Johansen, failing and dying being what keeps it from
 * happening.
 *
 * @param step the last of its steps, in weeks
 * @param followed how many units were followed
 */
public record InTheEnd(Incidence.Step step, long followed) {
    public InTheEnd {
        Objects.requireNonNull(step);
    }
}
