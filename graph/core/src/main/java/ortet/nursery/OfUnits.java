package ortet.nursery;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import ortet.book.BookView;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;

/** Puts a question about many units, some at a time. */
final class OfUnits {
    private static final int CHUNK = 10_000;

    private OfUnits() {}

    /** Return what a column of the answer says of each unit that it tells of. */
    static <T> Map<Integer, T> texts(
            BookView view,
            QueryName question,
            String column,
            Collection<Integer> units,
            LocalDate asOf,
            Function<String, T> read) {
        Map<Integer, T> found = new HashMap<>();
        List<Integer> all = List.copyOf(units);
        for (int from = 0; from < all.size(); from += CHUNK) {
            String wanted = all.subList(from, Math.min(all.size(), from + CHUNK)).stream()
                    .map(Object::toString)
                    .collect(Collectors.joining(","));
            for (Rows.Row row :
                    view.ask(question, Parameters.NONE.with("units", wanted).with("as_of", asOf))) {
                found.put(
                        row.whole("unit").orElseThrow().intValue(),
                        read.apply(row.text(column).orElseThrow()));
            }
        }
        return found;
    }
}
