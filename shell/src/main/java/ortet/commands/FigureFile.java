package ortet.commands;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import ortet.book.daybook.Source;
import ortet.book.daybook.TidyReader;
import ortet.book.daybook.Unreadable;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.Where;

/**
 * A plain table in a file, of which figures are asked: CSV in UTF-8 with a header row, cells parted by commas, semicolons
 * or tabs.
 */
final class FigureFile {
    private static final char[] SEPARATORS = {',', ';', '\t'};
    private static final int NAMED = 8;

    private final String shown;
    private final Map<String, Integer> columns;
    private final List<Row> rows;

    private FigureFile(String shown, Map<String, Integer> columns, List<Row> rows) {
        this.shown = shown;
        this.columns = columns;
        this.rows = rows;
    }

    /** A row of the file, and where it stands. */
    final class Row {
        private final long line;
        private final List<String> cells;

        private Row(long line, List<String> cells) {
            this.line = line;
            this.cells = cells;
        }

        /** Return what stands under a column, without blanks at its ends; empty for nothing. */
        String text(String column) {
            int at = columns.get(column);
            return at < cells.size() ? cells.get(at).strip() : "";
        }

        /** Return what stands under a column; refuse nothing. */
        String name(String column) {
            String text = text(column);
            if (text.isEmpty()) {
                throw bad(column, "expected some text, found nothing");
            }
            return text;
        }

        /** Return a whole number of at least 0. */
        long whole(String column) {
            String text = text(column);
            if (!text.matches("\\d{1,15}")) {
                throw bad(column, "expected a whole number of at least 0, found " + quoted(text));
            }
            return Long.parseLong(text);
        }

        /** Return a number of at least 0, or nothing where nothing stands. */
        Optional<Double> number(String column) {
            String text = text(column);
            if (text.isEmpty()) {
                return Optional.empty();
            }
            if (!text.matches("\\d{1,15}([.,]\\d{1,15})?")) {
                throw bad(column, "expected a number of at least 0, found " + quoted(text));
            }
            return Optional.of(Double.parseDouble(text.replace(',', '.')));
        }

        /** Return the line on which it begins. */
        Where where() {
            return new Where(shown, line, Optional.empty());
        }

        /** Return a refusal of what stands in this row, under a column. */
        Refused bad(String column, String what) {
            return new Refused(Fault.of("bad-value", what).at(new Where(shown, line, Optional.of(column))));
        }

        private static String quoted(String text) {
            return text.isEmpty() ? "nothing" : '"' + text + '"';
        }
    }

    /**
     * Read a file.
     *
     * @throws Refused when it is not there, not text, or has no header or rows
     */
    static FigureFile read(Path path) {
        String shown = path.toString();
        if (Files.isDirectory(path)) {
            throw new Refused(Fault.of("no-file", path + " is a folder; expected a file of comma-separated values"));
        }
        if (!Files.isRegularFile(path)) {
            throw new Refused(Fault.of("no-file", "no file " + path).nearest(Source.near(path)));
        }
        String text;
        try (TidyReader reader = new TidyReader(Files.newInputStream(path))) {
            StringBuilder all = new StringBuilder();
            char[] chunk = new char[1 << 14];
            for (int count = reader.read(chunk); count >= 0; count = reader.read(chunk)) {
                all.append(chunk, 0, count);
            }
            text = all.toString();
        } catch (Unreadable unreadable) {
            throw fault(shown, unreadable.line(), unreadable.getMessage());
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        List<CsvRecord> records = parse(shown, text, separator(text));
        if (records.isEmpty()) {
            throw fault(shown, 1, "expected a row with the names of the columns, found nothing");
        }
        Map<String, Integer> columns = new LinkedHashMap<>();
        CsvRecord header = records.get(0);
        for (int at = 0; at < header.getFieldCount(); at++) {
            String name = header.getField(at).strip();
            if (!name.isEmpty() && columns.putIfAbsent(name, at) != null) {
                throw fault(shown, header.getStartingLineNumber(), "two columns are called " + name);
            }
        }
        List<Row> rows = new ArrayList<>();
        FigureFile file = new FigureFile(shown, columns, rows);
        for (CsvRecord one : records.subList(1, records.size())) {
            if (one.getFieldCount() > header.getFieldCount()) {
                throw fault(
                        shown,
                        one.getStartingLineNumber(),
                        "expected " + header.getFieldCount() + " cells, found " + one.getFieldCount());
            }
            rows.add(file.new Row(one.getStartingLineNumber(), one.getFields()));
        }
        if (rows.isEmpty()) {
            throw fault(
                    shown, header.getStartingLineNumber(), "expected rows below the names of the columns, found none");
        }
        return file;
    }

    /** Return what parts most cells in the first line. */
    private static char separator(String text) {
        String head = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        char best = SEPARATORS[0];
        for (char separator : SEPARATORS) {
            if (count(head, separator) > count(head, best)) {
                best = separator;
            }
        }
        return best;
    }

    private static long count(String head, char separator) {
        return head.chars().filter(letter -> letter == separator).count();
    }

    private static List<CsvRecord> parse(String shown, String text, char separator) {
        List<CsvRecord> records = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator)
                .skipEmptyLines(true)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .ofCsvRecord(text)) {
            reader.forEach(records::add);
            return records;
        } catch (CsvParseException broken) {
            long line = records.isEmpty() ? 1 : records.get(records.size() - 1).getStartingLineNumber() + 1;
            throw fault(shown, line, "expected cells as in CSV; look at the quotation marks");
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private static Refused fault(String shown, long line, String text) {
        return new Refused(Fault.of("bad-file", text).at(new Where(shown, line, Optional.empty())));
    }

    /** Return the file's name as the user gave it. */
    String shown() {
        return shown;
    }

    /** Return the names of the columns, from left to right. */
    Set<String> columns() {
        return Collections.unmodifiableSet(columns.keySet());
    }

    /** Return how many rows there are below the header. */
    int size() {
        return rows.size();
    }

    /** Return the rows below the header. */
    List<Row> rows() {
        return Collections.unmodifiableList(rows);
    }

    /** Tell whether the file has a column. */
    boolean has(String name) {
        return columns.containsKey(name);
    }

    /** Refuse a file that lacks a column which the option's files always have, and tell all that it must have. */
    void needs(String option, List<String> names) {
        List<String> lacking = names.stream().filter(name -> !has(name)).toList();
        if (!lacking.isEmpty()) {
            throw fault(
                    shown,
                    1,
                    "no column " + String.join(", ", lacking) + "; expected " + String.join(", ", names) + " for "
                            + option + ", found " + String.join(", ", columns.keySet()));
        }
    }

    /** Refuse a column that the file does not have; the option that named it is told. */
    String column(String option, String name) {
        if (!columns.containsKey(name)) {
            List<String> known = columns.keySet().stream().limit(NAMED).toList();
            String more = columns.size() > NAMED ? ", …" : "";
            throw new Refused(Fault.of(
                            "no-column",
                            shown + ":1: no column " + name + " for " + option + "; expected one of "
                                    + String.join(", ", known) + more)
                    .nearest(Nearest.of(name, columns.keySet())));
        }
        return name;
    }

    /** Make something of every row; when some are refused, refuse with all that is wrong, as far as a screen can bear. */
    <T> List<T> each(Function<Row, T> made) {
        List<T> all = new ArrayList<>();
        List<Fault> faults = new ArrayList<>();
        for (Row row : rows) {
            try {
                all.add(made.apply(row));
            } catch (Refused refused) {
                faults.addAll(refused.faults());
            }
        }
        if (faults.size() > FaultList.SHOWN) {
            List<Fault> shownFaults = new ArrayList<>(faults.subList(0, FaultList.SHOWN));
            shownFaults.add(Fault.of(
                    "more-faults", "and " + Counts.of(faults.size() - FaultList.SHOWN, "more fault", "more faults")));
            throw new Refused(shownFaults);
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        return all;
    }
}
