package ortet.inventory;

import java.util.SortedSet;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.book.Listings;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.entry.PlaceListed;
import ortet.plant.Place;

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
}
