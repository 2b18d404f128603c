package ortet.nursery;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;
import ortet.book.BookView;
import ortet.book.QueryName;
import ortet.plant.Place;

/** Fetches the places of units when they are to be printed. */
public final class PlacesOfUnits {
    private static final QueryName PLACES = new QueryName("places-of-units");

    private PlacesOfUnits() {}

    /** Return where units stood on a day, by unit number, as far as it is known. */
    public static Map<Integer, Place> of(BookView view, Collection<Integer> units, LocalDate asOf) {
        return OfUnits.texts(view, PLACES, "place", units, asOf, Place::new);
    }
}
