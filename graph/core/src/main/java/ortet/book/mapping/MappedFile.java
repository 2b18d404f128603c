package ortet.book.mapping;

import java.util.Optional;
import ortet.book.daybook.Source;
import ortet.value.Where;

/**
 * A file that is read as one of the mapping's sheets.
 *
 * @param source the file
 * @param rules what the mapping says of it
 * @param header its header
 */
record MappedFile(Source source, SheetRules rules, CsvFile.Header header) {
    /** Return a row as a place. */
    Where where(long line) {
        return new Where(source.shown(), line, Optional.empty());
    }

    /** Return the cell under a column as a place. */
    Where where(long line, String column) {
        return new Where(source.shown(), line, Optional.of(column));
    }

    /** Return the header's name of the column that says something, where there is one. */
    Optional<String> column(String act, String field) {
        return rules.column(act, field).flatMap(rule -> header.position(rule.names())).map(header.names()::get);
    }

    /** Return the cell that says something as a place: its column, else that of the tag, else the row. */
    Where where(long line, String act, String field) {
        return column(act, field)
                .or(() -> column("", Meaning.TAGS))
                .map(name -> where(line, name))
                .orElse(where(line));
    }
}
