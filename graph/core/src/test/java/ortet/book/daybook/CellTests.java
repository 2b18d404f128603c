package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.StringWriter;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CellTests {
    @Property
    void comesBackUnchanged(@ForAll("texts") String text) {
        assertEquals(text, Cell.open(Cell.guard(text)));
    }

    @Property
    void neverBeginsLikeAFormula(@ForAll("texts") String text) {
        String cell = Cell.guard(text);
        assertFalse(!cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0, cell);
    }

    @Property
    void comesBackUnchangedThroughAFile(@ForAll("texts") String one, @ForAll("texts") String other) {
        StringWriter file = new StringWriter();
        CsvWriter.builder().bufferSize(0).build(file).writeRecord(Cell.guard(one), "x", Cell.guard(other), "y");
        List<String> cells = CsvReader.builder().ofCsvRecord(file.toString()).stream()
                .findFirst()
                .orElseThrow()
                .getFields();
        assertEquals(
                List.of(one, "x", other, "y"), cells.stream().map(Cell::open).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+353 1 555", "-5", "@home", "\tx", "\rx", "'", "''", "'=", "'Deshojo'"})
    void guardsWhatASpreadsheetWouldTakeForMore(String text) {
        assertEquals("'" + text, Cell.guard(text));
        assertEquals(text, Cell.open("'" + text));
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '"',
            value = {"'Deshojo',\"'Deshojo'\"", "plain,plain", "',\"'\"", "'7,\"'7\"", "\"\",\"\""})
    void leavesAnApostropheThatGuardsNothing(String cell, String expected) {
        assertEquals(expected, Cell.open(cell));
    }

    @Provide
    Arbitrary<String> texts() {
        Arbitrary<String> any = Arbitraries.strings().all().ofMaxLength(12);
        Arbitrary<String> odd =
                Arbitraries.strings().withChars("='\"+-@\t\r\n,; aé楓").ofMaxLength(8);
        return Arbitraries.oneOf(any, odd);
    }
}
