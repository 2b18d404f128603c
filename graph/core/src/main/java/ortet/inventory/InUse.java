package ortet.inventory;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import ortet.book.BookView;
import ortet.book.Chained;
import ortet.book.Listings;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.entry.CultivarListed;
import ortet.entry.Form;
import ortet.plant.CultivarName;

/** Tells which words the book has used before, so that they can be used again. */
public final class InUse {
    /** How many of the last entries are looked through for words that stand in no table of their own. */
    public static final int LOOKED_THROUGH = 2000;

    private static final QueryName CULTIVARS = new QueryName("cultivars-in-use");
    private static final QueryName SIZES = new QueryName("sizes-in-use");
    private static final QueryName CONTAINERS = new QueryName("containers-in-use");

    private InUse() {}

    /** Return every cultivar that a unit was said or found to be, and every one that is listed, by name. */
    public static Set<CultivarName> cultivars(BookView view) {
        Set<CultivarName> all = new TreeSet<>();
        for (Rows.Row row : view.ask(CULTIVARS, Parameters.NONE)) {
            all.add(CultivarName.parse(row.text("cultivar").orElseThrow()));
        }
        Listings.of(view).cultivars().stream().map(CultivarListed::cultivar).forEach(all::add);
        return all;
    }

    /** Return every container that a unit was put into, by name. */
    public static Set<String> containers(BookView view) {
        Set<String> all = new TreeSet<>();
        for (Rows.Row row : view.ask(CONTAINERS, Parameters.NONE)) {
            all.add(row.text("container").orElseThrow());
        }
        return all;
    }

    /** Return every size class in which something was graded, as first written, by name. */
    public static Set<String> sizes(BookView view) {
        Set<String> all = new TreeSet<>();
        for (Rows.Row row : view.ask(SIZES, Parameters.NONE)) {
            all.add(row.text("size").orElseThrow());
        }
        return all;
    }

    /** Return what stands in a column of the last {@value #LOOKED_THROUGH} entries, the latest first. */
    public static Set<String> texts(BookView view, String column) {
        List<String> found = new ArrayList<>();
        try (Stream<Chained> last = view.since(view.head().order() - LOOKED_THROUGH)) {
            last.map(chained -> Form.write(chained.recorded().entry()).get(column))
                    .filter(Objects::nonNull)
                    .forEach(found::add);
        }
        Set<String> latest = new LinkedHashSet<>();
        for (int at = found.size() - 1; at >= 0; at--) {
            latest.add(found.get(at));
        }
        return latest;
    }
}
