package ortet.inventory;

import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.Listings;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.entry.PlaceListed;
import ortet.plant.Place;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/**
 * The places that a book knows.
 *
 * @param all those where something stands or stood, and those that are listed, by name
 */
public record Places(SortedSet<Place> all) {
    private static final QueryName IN_USE = new QueryName("places-in-use");

    /** Return the places that a book knows. */
    public static Places of(BookView view) {
        SortedSet<Place> all = new TreeSet<>();
        for (Rows.Row row : view.ask(IN_USE, Parameters.NONE)) {
            all.add(new Place(row.text("place").orElseThrow()));
        }
        Listings.of(view).places().stream().map(PlaceListed::place).forEach(all::add);
        return new Places(all);
    }

    /**
     * Return a place and all places within it.
     *
     * @throws Refused when the book knows none of them, with the nearest name
     */
    public static Set<Place> within(BookView view, Place place) {
        Set<Place> within = Listings.of(view).within(place);
        Set<Place> known = of(view).all();
        if (within.stream().noneMatch(known::contains)) {
            throw new Refused(Fault.of("unknown-place", "no place " + place)
                    .nearest(Nearest.of(
                            place.name(), known.stream().map(Place::name).toList())));
        }
        return within;
    }
}
