package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;

/** Reads files of check values. */
final class Oracle {
    private Oracle() {}

    /** Return all rows of a file under {@code oracles}. */
    static List<NamedCsvRecord> rows(String name) {
        InputStream stream = Oracle.class.getResourceAsStream("/oracles/" + name);
        assertNotNull(stream, name);
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Return all rows of a file under {@code oracles} whose field has the given text. */
    static Stream<NamedCsvRecord> rows(String name, String field, String text) {
        return rows(name).stream().filter(row -> row.getField(field).equals(text));
    }

    /** Return a field as a number; an empty one has none, which here is {@code NaN}. */
    static double number(NamedCsvRecord row, String field) {
        String text = row.getField(field);
        return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
    }

    /** Compare in parts of the expected figure. */
    static void assertRelative(double expected, double found, double tolerance, String what) {
        assertEquals(expected, found, tolerance * Math.abs(expected), what);
    }
}
