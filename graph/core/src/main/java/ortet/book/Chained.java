package ortet.book;

import java.util.Objects;
import ortet.entry.Recorded;

/**
 * A recorded entry with its link in the chain.
 *
 * @param recorded the entry
 * @param digest the digest over its canonical bytes and the digest before it
 */
public record Chained(Recorded recorded, Digest digest) {
    public Chained {
        Objects.requireNonNull(recorded);
        Objects.requireNonNull(digest);
    }
}
