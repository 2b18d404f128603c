package ortet.lineage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.Event;
import ortet.entry.EntryKind;
import ortet.entry.Mention.Role;
import ortet.entry.Released;
import ortet.entry.ReleasedFrom;
import ortet.entry.Reserved;
import ortet.value.When;

/**
 * What marks a unit while it is there: kept as stock, held for plant health, reserved.
 *
 * @param stockSince since when it is kept as stock, while it is
 * @param held the entry that holds it, while it is held
 * @param reserved the reservations that hold
 */
public record Marks(Optional<When> stockSince, Optional<Event> held, List<Event> reserved) {
    /** No marks. */
    public static final Marks NONE = new Marks(Optional.empty(), Optional.empty(), List.of());

    public Marks {
        Objects.requireNonNull(stockSince);
        Objects.requireNonNull(held);
        reserved = List.copyOf(reserved);
    }

    /** Read the marks of a unit off its timeline up to a day; entries that mark nothing may be left out of it. */
    public static Marks of(List<Event> history, LocalDate asOf) {
        Optional<When> since = Optional.empty();
        Optional<Event> held = Optional.empty();
        List<Event> reserved = new ArrayList<>();
        for (Event event : history) {
            if (!event.roles().contains(Role.SUBJECT)) {
                continue;
            }
            if (event.entry().kind() == EntryKind.KEPT_AS_STOCK) {
                since = since.or(() -> Optional.of(event.day()));
            } else if (event.entry().kind() == EntryKind.HELD) {
                held = Optional.of(event);
            } else if (event.entry().kind() == EntryKind.CLEARED) {
                held = Optional.empty();
            } else if (event.entry() instanceof Reserved reservation) {
                if (reservation
                        .until()
                        .map(until -> !until.last().isBefore(asOf))
                        .orElse(true)) {
                    reserved.add(event);
                }
            } else if (event.entry() instanceof Released released) {
                if (ends(released, ReleasedFrom.STOCK)) {
                    since = Optional.empty();
                }
                if (ends(released, ReleasedFrom.RESERVATION)) {
                    reserved.clear();
                }
            }
        }
        return new Marks(since, held, reserved);
    }

    private static boolean ends(Released released, ReleasedFrom what) {
        return released.from().map(from -> from == what).orElse(true);
    }
}
