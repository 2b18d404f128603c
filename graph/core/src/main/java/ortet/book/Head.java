package ortet.book;

import java.time.ZoneId;
import java.util.Objects;
import java.util.UUID;

/**
 * Where a book stands.
 *
 * @param bookId the identity of the book, the same in every copy
 * @param zone the book's time zone, in which its days are days
 * @param order the recorded order of the last entry, 0 when there is none
 * @param digest the digest of the last entry, {@link Chain#START} when there is none
 * @param lastUnit the highest unit number ever given, 0 when none was
 */
public record Head(UUID bookId, ZoneId zone, long order, Digest digest, int lastUnit) {
    public Head {
        Objects.requireNonNull(bookId);
        Objects.requireNonNull(zone);
        Objects.requireNonNull(digest);
    }
}
