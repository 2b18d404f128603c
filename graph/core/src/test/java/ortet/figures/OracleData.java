package ortet.figures;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;

/**
 * The data behind the check values, in {@code oracles/data}: {@code cbpp} (Lesnoff et al. 2004, Preventive Veterinary
 * Medicine 64:145, as in R's lme4), {@code crowder-seeds} (Crowder 1978, Applied Statistics 27:34, Table 3), {@code
 * nursery-mothers} (invented).
 */
final class OracleData {
    private OracleData() {}

    static List<NamedCsvRecord> rows(String resource) {
        try (Reader reader = new InputStreamReader(
                        Objects.requireNonNull(OracleData.class.getResourceAsStream("/oracles/" + resource), resource),
                        StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(reader)) {
            return csv.stream().toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static List<String> column(List<NamedCsvRecord> rows, String name) {
        return rows.stream().map(row -> row.getField(name)).toList();
    }

    static double[] numbers(List<NamedCsvRecord> rows, Function<NamedCsvRecord, Number> number) {
        return rows.stream().mapToDouble(row -> number.apply(row).doubleValue()).toArray();
    }

    static long[] counts(List<NamedCsvRecord> rows, String name) {
        return rows.stream()
                .mapToLong(row -> Long.parseLong(row.getField(name)))
                .toArray();
    }

    static ModelData model(List<NamedCsvRecord> rows) {
        return ModelData.of(counts(rows, "r"), counts(rows, "n"));
    }
}
