package ortet.screen;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * An answer in rows and columns, ready for any format.
 *
 * @param title what it answers, empty for none
 * @param columns from left to right
 * @param rows from top to bottom, each with one cell for each column
 * @param sections headings for people, each above the row with this index
 * @param notes what a reader must know to read it right
 * @param warnings what a reader must not overlook
 */
public record Sheet(
        String title,
        List<Column> columns,
        List<List<Cell>> rows,
        Map<Integer, String> sections,
        List<String> notes,
        List<String> warnings) {

    /** Keep copies and refuse a row that does not fit the columns, or two columns of one name. */
    public Sheet {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
        sections = Map.copyOf(sections);
        notes = List.copyOf(notes);
        warnings = List.copyOf(warnings);
        Set<String> names = new HashSet<>();
        for (Column column : columns) {
            if (!names.add(column.name())) {
                throw new IllegalArgumentException("two columns are called " + column.name());
            }
        }
        for (List<Cell> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException("a row of " + row.size() + " cells under " + columns.size());
            }
        }
    }

    /** Begin a sheet. */
    public static Builder titled(String title, Column... columns) {
        return new Builder(title, List.of(columns));
    }

    /** Gathers the rows of a sheet. */
    public static final class Builder {
        private final String title;
        private final List<Column> columns;
        private final List<List<Cell>> rows = new ArrayList<>();
        private final Map<Integer, String> sections = new HashMap<>();
        private final List<String> notes = new ArrayList<>();
        private final List<String> warnings = new ArrayList<>();

        private Builder(String title, List<Column> columns) {
            this.title = title;
            this.columns = columns;
        }

        /** Add a row of plain values, see {@link Cell#of}. */
        public Builder row(Object... values) {
            List<Cell> row = new ArrayList<>(values.length);
            for (Object value : values) {
                row.add(Cell.of(value));
            }
            rows.add(row);
            return this;
        }

        /** Add a heading for people above the next row. */
        public Builder section(String heading) {
            sections.put(rows.size(), heading);
            return this;
        }

        /** Add a line under the rows. */
        public Builder note(String note) {
            notes.add(note);
            return this;
        }

        /** Add a warning under the rows. */
        public Builder warning(String warning) {
            warnings.add(warning);
            return this;
        }

        /** Return the sheet. */
        public Sheet build() {
            return new Sheet(title, columns, rows, sections, notes, warnings);
        }
    }
}
