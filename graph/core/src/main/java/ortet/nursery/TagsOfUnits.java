package ortet.nursery;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import ortet.book.BookView;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.plant.Tag;

/** Fetches the tags of units when they are to be printed. */
public final class TagsOfUnits {
    private static final QueryName TAGS = new QueryName("tags-of-units");
    private static final int CHUNK = 10_000;

    private TagsOfUnits() {}

    /** Return the tags that units bore on a day, by unit number; where one bore none yet, its first. */
    public static Map<Integer, Tag> of(BookView view, Collection<Integer> units, LocalDate asOf) {
        Map<Integer, Tag> tags = new HashMap<>();
        List<Integer> all = List.copyOf(units);
        for (int from = 0; from < all.size(); from += CHUNK) {
            String wanted = all.subList(from, Math.min(all.size(), from + CHUNK)).stream()
                    .map(Object::toString)
                    .collect(Collectors.joining(","));
            Rows rows = view.ask(TAGS, Parameters.NONE.with("units", wanted).with("as_of", asOf));
            for (Rows.Row row : rows) {
                tags.put(
                        row.whole("unit").orElseThrow().intValue(),
                        new Tag(row.text("tag").orElseThrow()));
            }
        }
        return tags;
    }
}
