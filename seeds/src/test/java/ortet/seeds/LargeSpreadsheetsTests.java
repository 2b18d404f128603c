package ortet.seeds;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.value.Refused;

class LargeSpreadsheetsTests {
    @TempDir
    Path folder;

    private List<NamedCsvRecord> rows(String file) throws IOException {
        try (Stream<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(folder.resolve(file)).stream()) {
            return rows.toList();
        }
    }

    @Test
    void hasARowForEachPlantAndSomeTwice() throws IOException {
        long written = LargeSpreadsheets.write(5_000, 7, folder);
        List<NamedCsvRecord> plants = rows("plants.csv");
        Set<String> tags = new HashSet<>();
        plants.forEach(row -> tags.add(row.getField("Label").strip().toUpperCase(Locale.ROOT)));
        long raised = tags.stream().filter(tag -> tag.matches("[LP]-\\d+")).count();
        assertEquals(5_000, raised);
        assertTrue(plants.size() > tags.size(), "some rows stand twice");
        long lists = rows("pots.csv").size()
                + rows("sales.csv").size()
                + rows("losses.csv").size();
        assertEquals(written, plants.size() + lists);
        assertTrue(lists > 10_000, () -> lists + " rows in lists");
    }

    @Test
    void hasMothersWithoutARow() throws IOException {
        LargeSpreadsheets.write(5_000, 7, folder);
        Set<String> tags = new HashSet<>();
        Set<String> mothers = new HashSet<>();
        for (NamedCsvRecord row : rows("plants.csv")) {
            tags.add(row.getField("Label").strip().toUpperCase(Locale.ROOT));
            mothers.add(row.getField("From"));
        }
        mothers.remove("");
        mothers.removeAll(tags);
        assertEquals(Set.of("K-49", "K-99"), mothers);
    }

    @Test
    void isTheSameForTheSameSeed() throws IOException {
        Path one = Files.createDirectory(folder.resolve("one"));
        Path again = Files.createDirectory(folder.resolve("again"));
        LargeSpreadsheets.write(500, 1, one);
        LargeSpreadsheets.write(500, 1, again);
        for (String file : List.of("plants.csv", "pots.csv", "sales.csv", "losses.csv", "mapping.txt")) {
            assertArrayEquals(Files.readAllBytes(one.resolve(file)), Files.readAllBytes(again.resolve(file)), file);
        }
    }

    @Test
    void refusesANurseryWithoutPlants() {
        Refused refused = assertThrows(Refused.class, () -> LargeSpreadsheets.write(0, 7, folder));
        assertEquals(List.of("plants: expected 1 to 10000000"), refused.lines());
    }
}
