package ortet.commands;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import ortet.book.daybook.Source;
import ortet.figures.Warmth;
import ortet.value.Fault;
import ortet.value.Refused;

/** Reads the monthly normal temperatures of a place. */
final class Normals {
    private static final int MONTHS = 12;

    private Normals() {}

    /**
     * Read a CSV with the columns {@code month}, 1 to 12, and {@code normal_c}, degrees Celsius.
     *
     * @throws Refused when it cannot be read, with the line
     */
    static Warmth read(Path file) {
        if (Files.isDirectory(file)) {
            throw refused(file + " is a folder; expected a CSV with the columns month and normal_c");
        }
        if (!Files.isRegularFile(file)) {
            throw new Refused(Fault.of("no-file", "no file " + file).nearest(Source.near(file)));
        }
        List<Double> normals = new ArrayList<>(Collections.nCopies(MONTHS, Double.NaN));
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(file)) {
            for (NamedCsvRecord row : reader) {
                String where = file + ":" + row.getStartingLineNumber() + ": ";
                if (!row.getHeader().containsAll(List.of("month", "normal_c"))) {
                    throw refused(where + "expected the columns month and normal_c, found "
                            + String.join(", ", row.getHeader()));
                }
                int month = (int) number(row, "month", where);
                if (month < 1 || month > MONTHS || !Double.isNaN(normals.get(month - 1))) {
                    throw refused(where + "month: expected each of 1 to 12 once, found " + row.getField("month"));
                }
                normals.set(month - 1, number(row, "normal_c", where));
            }
        } catch (IOException | CsvParseException unreadable) {
            throw refused(file + ": expected a CSV with the columns month and normal_c that can be read");
        }
        if (normals.contains(Double.NaN)) {
            throw refused(file + ": expected a temperature for each of 12 months, none for month "
                    + (normals.indexOf(Double.NaN) + 1));
        }
        return Warmth.of(normals, Warmth.Course.LINEAR);
    }

    private static double number(NamedCsvRecord row, String column, String where) {
        String text = row.getField(column).strip();
        try {
            double number = Double.parseDouble(text);
            if (Double.isFinite(number)) {
                return number;
            }
        } catch (NumberFormatException none) {
            // said below
        }
        throw refused(where + column + ": expected a number, found \"" + text + "\"");
    }

    private static Refused refused(String line) {
        return Refused.because("bad-normals", line);
    }
}
