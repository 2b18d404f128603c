package ortet.seeds;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Decimal;
import ortet.value.When;

/**
 * The rows of a day book in the making, and the file that they become.
 *
 * <p>Every row is made through the record of its kind, so that no column and no word can be misspelt. Rows stand in the
 * order of their days; a day known to the month or year only stands where the book reads it, a beginning on its first
 * day and anything else on its last. Within a day they stand in the order in which the book reads it.
 */
final class DayBook {
    private static final EntryId NOT_YET = new EntryId(new UUID(0, 0));
    private static final String TARGET = "target";

    private final List<Row> rows = new ArrayList<>();

    /** A row: an entry, its day and its hand, and for an amendment the row that it amends. */
    record Row(When day, Optional<Person> by, Entry entry, Optional<Row> target) {
        private LocalDate place() {
            boolean first = switch (entry.kind().phase()) {
                case REGISTER, ORIGIN -> true;
                default -> false;
            };
            return first ? day.first() : day.last();
        }
    }

    /** The columns of a row, as they are filled in. */
    final class Draft {
        private final When day;
        private final Optional<Person> by;
        private final EntryKind kind;
        private final Map<String, String> texts = new LinkedHashMap<>();
        private Optional<Row> target = Optional.empty();

        private Draft(When day, Optional<Person> by, EntryKind kind) {
            this.day = day;
            this.by = by;
            this.kind = kind;
        }

        /** Fill in tags. */
        Draft tags(Collection<Tag> tags) {
            return set("tags", Tags.brief(tags));
        }

        /** Fill in a column; an empty value leaves it empty. */
        Draft set(String column, Object value) {
            String text;
            if (value instanceof Optional<?> maybe) {
                if (maybe.isEmpty()) {
                    return this;
                }
                return set(column, maybe.get());
            } else if (value instanceof Person person) {
                text = person.number().toString();
            } else if (value instanceof Enum<?> choice) {
                text = choice.name();
            } else {
                text = value.toString();
            }
            if (!text.isEmpty()) {
                texts.put(column, text);
            }
            return this;
        }

        /** Fill in a length in millimetres, to the half. */
        Draft mm(String column, double value) {
            return set(column, halves(value));
        }

        /** Fill in the row that this one amends. */
        Draft target(Row row) {
            target = Optional.of(row);
            return set(TARGET, NOT_YET);
        }

        /** Write the row. */
        Row write() {
            Row row = new Row(day, by, Form.of(kind).read(texts), target);
            rows.add(row);
            return row;
        }
    }

    static Decimal halves(double value) {
        return Decimal.of(java.math.BigDecimal.valueOf(Math.max(1, StrictMath.round(value * 2)) * 5L, 1));
    }

    /** Begin a row. */
    Draft on(When day, Optional<Person> by, EntryKind kind) {
        return new Draft(day, by, kind);
    }

    /** Return the rows in the order of the file. */
    List<Row> inOrder() {
        List<Row> order = new ArrayList<>(rows);
        order.sort(Comparator.comparing(Row::place)
                .thenComparingInt(row -> row.entry().kind().rank()));
        return order;
    }

    /** Write the file. */
    void write(Path file, Map<PersonNumber, Person> persons) throws IOException {
        List<Row> order = inOrder();
        Map<Row, Integer> lines = new IdentityHashMap<>();
        List<Map<String, String>> texts = new ArrayList<>();
        Set<String> used = new LinkedHashSet<>();
        for (Row row : order) {
            lines.put(row, lines.size() + 2);
            Map<String, String> columns = new LinkedHashMap<>(Form.write(row.entry()));
            row.target().ifPresent(target -> columns.put(TARGET, "line:" + lines.get(target)));
            columns.replaceAll((column, text) -> readable(column, text, persons));
            used.addAll(columns.keySet());
            texts.add(columns);
        }
        List<String> header =
                Form.columns().keySet().stream().filter(used::contains).toList();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(file, StandardCharsets.UTF_8)) {
            List<String> cells = new ArrayList<>(List.of("day", "by", "kind"));
            cells.addAll(header);
            csv.writeRecord(cells);
            for (int at = 0; at < order.size(); at++) {
                Row row = order.get(at);
                cells.clear();
                cells.add(row.day().toString());
                cells.add(row.by().map(Person::shown).orElse(""));
                cells.add(row.entry().kind().word());
                for (String column : header) {
                    cells.add(texts.get(at).getOrDefault(column, ""));
                }
                csv.writeRecord(cells);
            }
        }
    }

    private static String readable(String column, String text, Map<PersonNumber, Person> persons) {
        return switch (Form.columns().get(column).nature()) {
            case PERSON -> persons.get(PersonNumber.parse(text)).shown();
            case TAGS -> Tags.brief(Tags.parse(text));
            default -> text;
        };
    }
}
