package ortet.book.mapping;

import java.util.List;

/**
 * What the mapping says of a column.
 *
 * @param line where in the mapping
 * @param names the names that it may have in the header, the first that is there counts
 * @param isOptional whether it may be missing
 * @param reader how its cells are read
 * @param along what else holds where its cell says anything
 */
record ColumnRule(long line, List<String> names, boolean isOptional, CellReader reader, List<Fixed> along) {
    ColumnRule {
        names = List.copyOf(names);
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
}
