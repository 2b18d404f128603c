package ortet.book;

import java.time.Duration;
import java.util.Objects;
import ortet.value.Require;

/**
 * How far a question of somebody's own may go.
 *
 * @param rows how many rows are taken in at most
 * @param time how long it may take
 */
public record Limits(int rows, Duration time) {
    public Limits {
        Require.atLeast(1, rows, "rows");
        Objects.requireNonNull(time);
    }
}
