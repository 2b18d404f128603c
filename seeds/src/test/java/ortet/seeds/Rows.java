package ortet.seeds;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.value.When;

/** The rows of a day book, read back from its text and not from what made it. */
final class Rows {
    /**
     * A row.
     *
     * @param line its line in the file
     * @param texts its columns by name, without empty ones
     */
    record Row(int line, When day, String by, EntryKind kind, Map<String, String> texts) {
        String text(String column) {
            return texts.getOrDefault(column, "");
        }

        /** Return the entry; names of persons and the line of a target are read as anybody and anything. */
        Entry entry() {
            Map<String, String> read = new LinkedHashMap<>(texts);
            read.replaceAll((column, text) -> switch (Form.columns().get(column).nature()) {
                case PERSON -> "#1";
                default -> column.equals("target") ? "00000000-0000-4000-8000-000000000001" : text;
            });
            return Form.of(kind).read(read);
        }
    }

    private Rows() {}

    static List<Row> read(InputStream file) {
        List<Row> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> csv =
                CsvReader.builder().ofCsvRecord(new InputStreamReader(file, StandardCharsets.UTF_8))) {
            List<String> header = List.of();
            for (CsvRecord record : csv) {
                List<String> cells = record.getFields();
                if (header.isEmpty()) {
                    header = List.copyOf(cells);
                    continue;
                }
                Map<String, String> texts = new LinkedHashMap<>();
                for (int at = 3; at < header.size(); at++) {
                    if (!cells.get(at).isEmpty()) {
                        texts.put(header.get(at), cells.get(at));
                    }
                }
                rows.add(new Row(
                        (int) record.getStartingLineNumber(),
                        When.parse(cells.get(0)),
                        cells.get(1),
                        EntryKind.of(cells.get(2)).orElseThrow(),
                        texts));
            }
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        return rows;
    }

    /** Return the line that an amendment names. */
    static Optional<Integer> target(Row row) {
        return Optional.of(row.text("target"))
                .filter(text -> text.startsWith("line:"))
                .map(text -> Integer.valueOf(text.substring("line:".length())));
    }
}
