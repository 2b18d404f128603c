package ortet.seeds;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.entry.EntryKind;
import ortet.seeds.Rows.Row;
import ortet.value.Refused;

class LargeNurseryTests {
    private static final long SEED = 7;

    @TempDir
    Path folder;

    private List<Row> rows(long plants) throws IOException {
        Path file = folder.resolve(plants + ".csv");
        long written = LargeNursery.write(plants, SEED, file);
        try (InputStream in = Files.newInputStream(file)) {
            List<Row> rows = Rows.read(in);
            assertEquals(written, rows.size());
            return rows;
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 4, 31, 73, 5_000})
    void addsUpAndHasThatManyPlants(long plants) throws IOException {
        Replay replay = new Replay(rows(plants));
        assertEquals(List.of(), replay.faults());
        long found = replay.stands().values().stream()
                .filter(stand -> stand.begunBy == EntryKind.LAYER_SET || stand.begunBy == EntryKind.DRAWN)
                .count();
        assertEquals(plants, found);
    }

    @Test
    void hasAboutFourRowsForEachPlantInTheOrderOfDays() throws IOException {
        List<Row> rows = rows(5_000);
        assertTrue(rows.size() > 17_500 && rows.size() < 22_500, () -> rows.size() + " rows");
        for (int at = 1; at < rows.size(); at++) {
            Row row = rows.get(at);
            assertFalse(row.day().first().isBefore(rows.get(at - 1).day().first()), () -> "line " + row.line());
        }
    }

    @Test
    void namesEachEventOnce() throws IOException {
        Set<String> seen = new HashSet<>();
        for (Row row : rows(5_000)) {
            if (row.kind().phase() != EntryKind.Phase.REGISTER) {
                assertTrue(seen.add(row.kind() + " " + row.day() + " " + row.text("tags")), () -> "line " + row.line());
            }
        }
    }

    @Test
    void isTheSameForTheSameSeedAndAnotherForAnother() throws IOException {
        Path one = folder.resolve("one.csv");
        Path again = folder.resolve("again.csv");
        Path other = folder.resolve("other.csv");
        LargeNursery.write(500, 1, one);
        LargeNursery.write(500, 1, again);
        LargeNursery.write(500, 2, other);
        assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(again));
        assertFalse(Arrays.equals(Files.readAllBytes(one), Files.readAllBytes(other)));
    }

    @Test
    void refusesANurseryWithoutPlants() {
        Refused refused = assertThrows(Refused.class, () -> LargeNursery.write(0, SEED, folder.resolve("none.csv")));
        assertEquals(List.of("plants: expected 1 to 10000000"), refused.lines());
    }
}
