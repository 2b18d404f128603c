package ortet.entry;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import ortet.value.Require;

/**
 * An entry as it stands in the book, never to be changed.
 *
 * @param order its place in the book, from 1 without gaps
 * @param recordedAt when it was written into the book, to the millisecond, in UTC
 * @param proposed what was written
 */
public record Recorded(long order, Instant recordedAt, Proposed proposed) {
    public Recorded {
        Require.that(order >= 1, "order", "at least 1");
        Objects.requireNonNull(proposed);
        recordedAt = recordedAt.truncatedTo(ChronoUnit.MILLIS);
    }

    /** Return what was done or seen. */
    public Entry entry() {
        return proposed.entry();
    }
}
