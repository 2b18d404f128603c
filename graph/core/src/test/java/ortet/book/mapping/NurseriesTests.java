package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.book.Head;
import ortet.book.daybook.Source;

/**
 * The spreadsheets of six invented nurseries, each with habits and mistakes of its own, go in with the faults that they
 * contain and no other. What is expected of each stands beside its spreadsheets.
 */
class NurseriesTests {
    private static List<String> expected(String nursery, String... sorts) {
        try {
            List<String> found = new ArrayList<>();
            for (String line : Files.readAllLines(Sheets.nursery(nursery).resolve("expected.txt"))) {
                for (String sort : sorts) {
                    if (line.startsWith(sort + " ")) {
                        found.add(line.substring(sort.length() + 1));
                    }
                }
            }
            return found;
        } catch (IOException broken) {
            throw new AssertionError(nursery, broken);
        }
    }

    static Stream<Arguments> nurseries() {
        return Stream.of(
                Arguments.of("ledger", 6, 28),
                Arguments.of("diary", 6, 13),
                Arguments.of("trays", 13, 22),
                Arguments.of("continental", 5, 23),
                Arguments.of("benches", 10, 24),
                Arguments.of("wide", 5, 32));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("nurseries")
    void hasTheFaultsThatItContainsAndNoOther(String nursery, int faults, int entries) {
        Sheets sheets = Sheets.under(nursery);
        Head before = sheets.diary().store().read(view -> view.head());
        Imported refused = sheets.write(Sheets.files(nursery));
        assertEquals(expected(nursery, "fault"), Sheets.lines(refused));
        assertEquals(faults, refused.faults().size());
        assertTrue(refused.loaded().isEmpty());
        assertEquals(before, sheets.diary().store().read(view -> view.head()), "nothing is written");

        Imported taken = sheets.writeWhatHolds(Sheets.files(nursery));
        List<String> all = new ArrayList<>(expected(nursery, "fault", "rests"));
        assertEquals(all, Sheets.lines(taken));
        assertEquals(expected(nursery, "remark"), Sheets.remarks(taken));
        assertEquals(expected(nursery, "entry"), shown(sheets.entries()));
        assertEquals(entries, taken.loaded().orElseThrow().entries());
    }

    private static List<String> shown(List<String> entries) {
        return entries.stream().map(line -> line.replace('\n', '↵')).toList();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("nurseries")
    void addsNothingWhenItIsReadAgain(String nursery, int faults, int entries) {
        Sheets sheets = Sheets.under(nursery);
        sheets.writeWhatHolds(Sheets.files(nursery));
        List<String> before = sheets.entries();
        Imported again = sheets.writeWhatHolds(Sheets.files(nursery));
        assertEquals(before, sheets.entries());
        assertEquals(0, again.loaded().orElseThrow().entries());
        assertEquals(expected(nursery, "fault", "rests").size(), again.faults().size());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("nurseries")
    void accountsForEveryRow(String nursery, int faults, int entries) {
        Imported imported = Sheets.under(nursery).writeWhatHolds(Sheets.files(nursery));
        for (FileAccount file : imported.files()) {
            assertEquals(
                    file.rows(),
                    file.taken() + file.repeated() + file.leftOut() + file.wrong() + file.resting(),
                    file.file());
        }
        int told = imported.files().stream()
                .flatMap(file -> file.entries().values().stream())
                .mapToInt(Integer::intValue)
                .sum();
        assertEquals(entries, told);
    }

    // ---- any order ----

    /** Return a file with the rows below its header in another order. */
    private static Source shuffled(Source file, int headerRows, Random random) throws IOException {
        byte[] bytes = file.opener().open().readAllBytes();
        List<String> rows = new ArrayList<>();
        String open = "";
        for (String line : new String(bytes, StandardCharsets.ISO_8859_1).split("\n")) {
            String row = open + line;
            boolean isClosed = row.chars().filter(letter -> letter == '"').count() % 2 == 0;
            open = isClosed ? "" : row + "\n";
            if (isClosed) {
                rows.add(row);
            }
        }
        Collections.shuffle(rows.subList(headerRows, rows.size()), random);
        return Sheets.file(file.name(), (String.join("\n", rows) + "\n").getBytes(StandardCharsets.ISO_8859_1));
    }

    private static List<String> withoutPlaces(List<String> lines) {
        return lines.stream()
                .map(line -> line.replaceAll("[a-z0-9 ]+\\.csv:\\d+", "ROW").replaceAll("; nearest:.*", ""))
                .sorted()
                .toList();
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"ledger", "diary", "trays", "continental", "benches", "wide"})
    void isTheSameInAnyOrderOfFilesAndRows(String nursery) throws IOException {
        Sheets straight = Sheets.under(nursery);
        List<String> faults = withoutPlaces(Sheets.lines(straight.writeWhatHolds(Sheets.files(nursery))));
        List<String> entries = straight.entries().stream().sorted().toList();
        int headerRows = nursery.equals("diary") ? 0 : nursery.equals("wide") ? 4 : 1;
        for (int seed = 1; seed <= 12; seed++) {
            Random random = new Random(seed);
            List<Source> files = new ArrayList<>();
            for (Source file : Sheets.files(nursery)) {
                files.add(shuffled(file, headerRows, random));
            }
            Collections.shuffle(files, random);
            Sheets other = Sheets.under(nursery);
            assertEquals(faults, withoutPlaces(Sheets.lines(other.writeWhatHolds(files))), "faults, order " + seed);
            assertEquals(entries, other.entries().stream().sorted().toList(), "entries, order " + seed);
        }
    }

    @Test
    void isTheSameInAnyOrderOfSheetsInTheMapping() throws IOException {
        String text = Files.readString(Sheets.nursery("trays").resolve("mapping.txt"));
        String[] parts = text.split("(?m)^(?=sheet )");
        StringBuilder turned = new StringBuilder(parts[0]);
        for (int at = parts.length - 1; at > 0; at--) {
            turned.append(parts[at].strip()).append("\n\n");
        }
        Sheets straight = Sheets.under("trays");
        Sheets other = new Sheets(Mapping.of(turned.toString(), "mapping.txt"));
        assertEquals(
                withoutPlaces(Sheets.lines(straight.writeWhatHolds(Sheets.files("trays")))),
                withoutPlaces(Sheets.lines(other.writeWhatHolds(Sheets.files("trays")))));
        assertEquals(
                straight.entries().stream().sorted().toList(),
                other.entries().stream().sorted().toList());
    }

    @Test
    void takesEachFileByItselfInAnyOrder() {
        Sheets whole = Sheets.under("continental");
        whole.writeWhatHolds(Sheets.files("continental"));
        Sheets parts = Sheets.under("continental");
        List<Source> files = Sheets.files("continental");
        Source stock = files.get(2);
        assertEquals("stock list.csv", stock.name());
        parts.writeWhatHolds(List.of(stock));
        parts.writeWhatHolds(List.of(files.get(0)));
        parts.writeWhatHolds(List.of(files.get(1)));
        assertFalse(parts.entries().isEmpty());
        assertEquals(
                whole.entries().stream().sorted().toList(),
                parts.entries().stream().sorted().toList());
    }
}
