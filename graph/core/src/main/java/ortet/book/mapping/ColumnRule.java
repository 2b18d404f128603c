package ortet.book.mapping;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.EntryKind;

/**
 * What the mapping says of a column.
 *
 * @param line where in the mapping
 * @param names the names that it may have in the header, the first that is there counts
 * @param isOptional whether it may be missing
 * @param reader how its cells are read
 * @param byKind how they are read instead in rows of some kinds
 * @param along what else holds where its cell says anything
 */
record ColumnRule(
        long line,
        List<String> names,
        boolean isOptional,
        CellReader reader,
        Map<EntryKind, CellReader> byKind,
        List<Fixed> along) {
    ColumnRule {
        names = List.copyOf(names);
        byKind = Map.copyOf(byKind);
        along = List.copyOf(along);
    }

    /** Return what it says. */
    Meaning meaning() {
        return reader.meaning();
    }

    /** Return the first of the names. */
    String name() {
        return names.get(0);
    }

    /** Return how its cells are read in a row of a kind. */
    CellReader reader(Optional<EntryKind> kind) {
        return kind.map(byKind::get).orElse(reader);
    }
}
