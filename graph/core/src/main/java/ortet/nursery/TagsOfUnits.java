package ortet.nursery;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;
import ortet.book.BookView;
import ortet.book.QueryName;
import ortet.plant.Tag;

/** Fetches the tags of units when they are to be printed. */
public final class TagsOfUnits {
    private static final QueryName TAGS = new QueryName("tags-of-units");

    private TagsOfUnits() {}

    /** Return the tags that units bore on a day, by unit number; where one bore none yet, its first. */
    public static Map<Integer, Tag> of(BookView view, Collection<Integer> units, LocalDate asOf) {
        return OfUnits.texts(view, TAGS, "tag", units, asOf, Tag::new);
    }
}
