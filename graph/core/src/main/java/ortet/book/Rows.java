package ortet.book;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import ortet.value.Defect;

/**
 * The answer to a question: rows of texts and whole numbers under named columns.
 *
 * @param columns the names, in order
 * @param values one list for each row, as long as the columns; each value a {@link String}, {@link Long},
 *     {@link Double}, or null where there is none (which no accessor lets out)
 */
public record Rows(List<String> columns, List<List<Object>> values) implements Iterable<Rows.Row> {
    public Rows {
        columns = List.copyOf(columns);
        values = Collections.unmodifiableList(values);
    }

    /** Return how many rows there are. */
    public int size() {
        return values.size();
    }

    @Override
    public Iterator<Row> iterator() {
        Iterator<List<Object>> lists = values.iterator();
        return new Iterator<>() {
            @Override
            public boolean hasNext() {
                return lists.hasNext();
            }

            @Override
            public Row next() {
                return new Row(columns, lists.next());
            }
        };
    }

    /** One row. */
    public static final class Row {
        private final List<String> columns;
        private final List<Object> values;

        Row(List<String> columns, List<Object> values) {
            this.columns = columns;
            this.values = values;
        }

        private Optional<Object> value(String column) {
            int at = columns.indexOf(column);
            if (at < 0) {
                throw new Defect("no column " + column + " in " + columns);
            }
            return Optional.ofNullable(values.get(at));
        }

        /** Return a text, where there is one. */
        public Optional<String> text(String column) {
            return value(column).map(Object::toString);
        }

        /** Return a whole number, where there is one. */
        public Optional<Long> whole(String column) {
            return value(column).map(value -> ((Number) value).longValue());
        }

        /** Return a number, where there is one. */
        public Optional<Double> number(String column) {
            return value(column).map(value -> ((Number) value).doubleValue());
        }

        /** Return a day, where there is one. */
        public Optional<LocalDate> day(String column) {
            return text(column).map(LocalDate::parse);
        }
    }
}
