package ortet.money;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.Listed;
import ortet.book.Listings;
import ortet.plant.Place;

/** The tariffs of a book, one after another as listings change them. */
public final class Tariffs {
    private final List<Listed> listed;
    private final Map<Place, Place> within;
    private final Optional<LocalDate> always;
    private final TreeSet<LocalDate> changes = new TreeSet<>();
    private final Map<LocalDate, Tariff> known = new HashMap<>();

    private Tariffs(List<Listed> listed, Map<Place, Place> within, Optional<LocalDate> always) {
        this.listed = listed;
        this.within = within;
        this.always = always;
        if (always.isEmpty()) {
            listed.forEach(one -> changes.add(one.day().first()));
        }
    }

    /** Return the tariffs of a book up to a day; an act is priced by the one in force on its day. */
    public static Tariffs of(BookView view, LocalDate asOf) {
        Map<Place, Place> within = new TreeMap<>();
        Listings.of(view)
                .places()
                .forEach(place -> place.within().ifPresent(larger -> within.put(place.place(), larger)));
        return new Tariffs(Listed.tariff(view, asOf), within, Optional.empty());
    }

    /** Return the tariff in force on one day as that of every day: what it all would have cost then. */
    public Tariffs always(LocalDate day) {
        return new Tariffs(listed, within, Optional.of(day));
    }

    /** Return the tariff in force on a day. */
    public Tariff on(LocalDate day) {
        LocalDate wanted = always.orElse(day);
        LocalDate since =
                always.or(() -> Optional.ofNullable(changes.floor(day))).orElse(LocalDate.MIN);
        return known.computeIfAbsent(
                since,
                from -> new Tariff(
                        listed.stream()
                                .filter(one -> !one.day().first().isAfter(wanted))
                                .toList(),
                        within));
    }

    /** Return the first day after a day, and before another, on which another tariff comes to hold. */
    Optional<LocalDate> changeBetween(LocalDate after, LocalDate before) {
        return Optional.ofNullable(changes.higher(after)).filter(change -> change.isBefore(before));
    }
}
