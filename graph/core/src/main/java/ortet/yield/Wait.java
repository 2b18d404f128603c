package ortet.yield;

import java.util.Objects;
import java.util.Optional;
import ortet.figures.Range;

/**
 * How long something takes: the median, as well as the looks before and after let it be known.
 *
 * @param happened to how many units it has happened
 * @param open to how many it had not when they were looked at last
 * @param median in weeks or years; absent where it has happened to none, and where the estimate was not found. Its ends are
 *     those of the looks; no chance is in it. Its upper end is {@code Infinity} where half have not had it yet
 */
public record Wait(int happened, int open, Optional<Range> median) {
    public Wait {
        Objects.requireNonNull(median);
    }
}
