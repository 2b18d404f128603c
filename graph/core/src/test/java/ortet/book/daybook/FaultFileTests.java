package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Where;

class FaultFileTests {
    @TempDir
    Path folder;

    private static Fault fault(String text, Optional<String> nearest) {
        return new Fault("some-rule", Optional.of(new Where("a.csv", 7, Optional.of("Tag"))), text, nearest);
    }

    private List<List<String>> written(Fault... faults) throws IOException {
        Path file = folder.resolve("faults.csv");
        FaultFile.at(file).write(List.of(faults));
        try (Stream<CsvRecord> rows = CsvReader.builder().detectBomHeader(true).ofCsvRecord(file).stream()) {
            return rows.skip(1).map(CsvRecord::getFields).toList();
        }
    }

    @Test
    void partsWhatIsWrongFromWhatWasExpected() throws IOException {
        assertEquals(
                List.of(
                        List.of("a.csv", "7", "Tag", "no plant J-9", "", "J-8", "some-rule"),
                        List.of("a.csv", "7", "Tag", "found \"x\"", "a number such as 12", "", "some-rule"),
                        List.of("a.csv", "7", "Tag", "must not be empty", "a day", "", "some-rule"),
                        List.of("a.csv", "7", "Tag", "when was it dead", "a day, or a year", "", "some-rule"),
                        List.of("", "", "", "no such book", "", "", "other-rule")),
                written(
                        fault("no plant J-9", Optional.of("J-8")),
                        fault("expected a number such as 12, found \"x\"", Optional.empty()),
                        fault("must not be empty; expected a day", Optional.empty()),
                        fault("when was it dead? expected a day, or a year", Optional.empty()),
                        Fault.of("other-rule", "no such book")));
    }

    @Test
    void isSafeInASpreadsheet() throws IOException {
        assertEquals("'=1+1", written(fault("=1+1", Optional.empty())).get(0).get(3));
    }

    @Test
    void replacesAnEarlierListAndNothingElse() throws IOException {
        written(fault("one", Optional.empty()));
        assertEquals(1, written(fault("two", Optional.empty())).size());
        Path other = Files.writeString(folder.resolve("trees.csv"), "Tag,Mother\n");
        assertEquals(
                other + " is there already and is no list of faults; expected a new file",
                assertThrows(Refused.class, () -> FaultFile.at(other)).getMessage());
        Path nowhere = folder.resolve("none/faults.csv");
        assertEquals(
                "there is no folder for " + nowhere,
                assertThrows(Refused.class, () -> FaultFile.at(nowhere)).getMessage());
        assertEquals("Tag,Mother\n", Files.readString(other));
    }
}
