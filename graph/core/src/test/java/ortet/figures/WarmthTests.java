package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import ortet.value.Refused;

/** Degree-days on the monthly normals of Nottingham 1920–39 (Anderson 1976; R's {@code datasets::nottem}), by R. */
class WarmthTests {
    private static final Path ORACLES = Path.of("src/test/resources/oracles");

    private static List<NamedCsvRecord> rows(String file) {
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(Files.newBufferedReader(ORACLES.resolve(file)))) {
            return reader.stream().toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static Warmth nottingham(String course) {
        return Warmth.of(
                rows("data/nottem-normals.csv").stream()
                        .map(row -> Double.valueOf(row.getField("normal_c")))
                        .toList(),
                Warmth.Course.valueOf(course.toUpperCase(Locale.ROOT)));
    }

    private static int day(String date) {
        return LocalDate.parse("2023-" + date).getDayOfYear();
    }

    @Test
    void agreesWithR() {
        int found = 0;
        for (NamedCsvRecord row : rows("degreedays.csv")) {
            Warmth warmth = nottingham(row.getField("method"));
            double base = Double.parseDouble(row.getField("base_c"));
            int start = day(row.getField("start"));
            String what = row.getFields().toString();
            if (row.getField("quantity").equals("sum")) {
                int days = Integer.parseInt(row.getField("days"));
                assertEquals(Double.parseDouble(row.getField("sum")), warmth.sum(start, days, base), 1e-6, what);
            } else {
                Optional<Warmth.Reached> reached =
                        warmth.reach(start, Double.parseDouble(row.getField("target")), base);
                assertEquals(row.getField("days").isEmpty(), reached.isEmpty(), what);
                if (reached.isPresent()) {
                    assertEquals(
                            Integer.parseInt(row.getField("days")),
                            reached.get().days(),
                            what);
                    assertEquals(
                            row.getField("date"),
                            LocalDate.ofYearDay(2023, reached.get().dayOfYear())
                                    .format(DateTimeFormatter.ofPattern("MM-dd")),
                            what);
                    assertEquals(
                            Integer.parseInt(row.getField("years_later")),
                            reached.get().yearsLater(),
                            what);
                    assertEquals(
                            Double.parseDouble(row.getField("sum")),
                            reached.get().sum(),
                            1e-6,
                            what);
                    assertEquals(
                            Double.parseDouble(row.getField("sum_day_before")),
                            reached.get().before(),
                            1e-6,
                            what);
                }
            }
            found++;
        }
        assertTrue(found >= 288, found + " rows");
    }

    @Test
    void doesNotReachWhatTheYearDoesNotGive() {
        Warmth cold = Warmth.of(Collections.nCopies(12, 4.0), Warmth.Course.LINEAR);
        assertEquals(Optional.empty(), cold.reach(1, 0.5, 4));
        assertEquals(0, cold.sum(1, 365, 4));
        assertEquals(365, cold.sum(200, 365, 3), 1e-9);
    }

    @Test
    void refusesAYearThatIsNotTwelveMonths() {
        Refused refused = assertThrows(Refused.class, () -> Warmth.of(List.of(1.0, 2.0), Warmth.Course.STEP));
        assertTrue(refused.getMessage().contains("twelve"), refused.getMessage());
    }
}
