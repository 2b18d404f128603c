package ortet.nursery;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import ortet.book.BookView;

/**
 * Keeps the snapshot that was read last, so that the next question about the same book and day need not read it again.
 *
 * <p>A snapshot is good as long as the book ends on the same digest. Safe for use by several threads.
 */
public final class Nursery {
    private Optional<Snapshot> latest = Optional.empty();

    /** Return the nursery as it stood on a day, as the book knows it now, with at least some parts. */
    public synchronized Snapshot at(BookView view, LocalDate asOf, Set<Part> parts) {
        Snapshot snapshot = latest.filter(
                        kept -> kept.head().equals(view.head()) && kept.asOf().equals(asOf))
                .map(kept -> kept.parts().containsAll(parts) ? kept : kept.with(view, parts))
                .orElseGet(() -> Snapshot.of(view, asOf, parts));
        latest = Optional.of(snapshot);
        return snapshot;
    }
}
