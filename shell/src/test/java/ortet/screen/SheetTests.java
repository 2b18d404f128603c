package ortet.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.NotEmpty;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetTests {
    private static final Sheet TAKE = Sheet.titled(
                    "Take by cultivar",
                    Column.text("cultivar", "cultivar"),
                    Column.whole("struck", "struck"),
                    Column.number("stem_mm", "stem", 1).in("mm"),
                    Column.share("rate", "rate", 0),
                    Column.day("last", "last seen"),
                    Column.truth("stock", "stock").forPrograms(),
                    Column.text("words", "in words").forPeople())
            .row("Acer palmatum 'Deshōjō'", 60, 12.25, 2.0 / 3, LocalDate.of(2023, 5, 4), true, "41 of 60")
            .row("楓 (Acer × zoeschense)", 7, OptionalDouble.empty(), Double.NaN, Optional.empty(), false, "0 of 7")
            .row("=Juniperus", -1L, new BigDecimal("3.10"), 1, Optional.of(LocalDate.of(2022, 1, 2)), false, "")
            .note("Set and seen by 2024-03-01.")
            .warning("more than a fifth is pending")
            .build();

    @Test
    void alignsWideCharactersAndNumbers() {
        assertEquals(
                """
                Take by cultivar

                cultivar                 struck  stem (mm)  rate (%)  last seen   in words
                ───────────────────────  ──────  ─────────  ────────  ──────────  ────────
                Acer palmatum 'Deshōjō'      60       12.3        67  2023-05-04  41 of 60
                楓 (Acer × zoeschense)        7                                   0 of 7
                =Juniperus                   -1        3.1       100  2022-01-02

                Set and seen by 2024-03-01.
                warning: more than a fifth is pending
                """,
                Page.piped(80, screen -> screen.show(TAKE, OutputFormat.TABLE)).out());
    }

    @Test
    void breaksTextAndHeadingsToFit() {
        assertEquals(
                """
                Take by cultivar

                                              stem  rate
                cultivar              struck  (mm)   (%)  last seen   in words
                ────────────────────  ──────  ────  ────  ──────────  ────────
                Acer palmatum             60  12.3    67  2023-05-04  41 of 60
                'Deshōjō'
                楓 (Acer ×                 7                          0 of 7
                zoeschense)
                =Juniperus                -1   3.1   100  2022-01-02

                Set and seen by 2024-03-01.
                warning: more than a fifth is pending
                """,
                Page.piped(62, screen -> screen.show(TAKE, OutputFormat.TABLE)).out());
    }

    @Test
    void standsOneBelowTheOtherWhereNothingElseFits() {
        Page page = Page.piped(30, screen -> screen.show(TAKE, OutputFormat.TABLE));
        assertTrue(page.out().contains("""
                                cultivar   Acer palmatum
                                           'Deshōjō'
                                struck     60
                                stem (mm)  12.3
                                rate (%)   67
                                last seen  2023-05-04
                                in words   41 of 60

                                cultivar   楓 (Acer ×
                                           zoeschense)
                                """), page.out());
    }

    @Property
    void isNeverWiderThanTheScreen(
            @ForAll @Size(min = 1, max = 5) List<@NotEmpty String> headings,
            @ForAll @Size(max = 4) List<String> values,
            @ForAll @IntRange(min = 20, max = 120) int width) {
        Column[] columns = new Column[headings.size()];
        Object[] row = new Object[headings.size()];
        for (int i = 0; i < columns.length; i++) {
            columns[i] = Column.text("c" + i, headings.get(i));
            row[i] = i < values.size() ? values.get(i) : "";
        }
        Sheet sheet = Sheet.titled("", columns).row(row).build();
        Page page = Page.piped(width, screen -> screen.show(sheet, OutputFormat.TABLE));
        assertTrue(page.out().lines().allMatch(line -> Text.columns(line) <= width), page.out());
    }

    @Test
    void coloursOnlyOnATerminalThatWantsIt() {
        Surroundings terminal = new Surroundings(true, true, true, 80, true, false, false);
        Surroundings plain = new Surroundings(true, true, true, 80, false, false, false);
        assertTrue(Page.of(terminal, screen -> screen.show(TAKE, OutputFormat.TABLE))
                .out()
                .contains("\u001b[1m"));
        assertFalse(Page.of(plain, screen -> screen.show(TAKE, OutputFormat.TABLE))
                .out()
                .contains("\u001b"));
        assertFalse(Page.piped(80, screen -> screen.show(TAKE, OutputFormat.TABLE))
                .out()
                .contains("\u001b"));
        assertFalse(Page.of(terminal, screen -> screen.show(TAKE, OutputFormat.JSON))
                .out()
                .contains("\u001b"));
    }

    @Test
    void writesCsvAfterRfc4180WithNotesBeside() {
        Page page = Page.piped(80, screen -> screen.show(TAKE, OutputFormat.CSV));
        assertEquals(
                "cultivar,struck,stem_mm,rate,last,stock\r\n"
                        + "Acer palmatum 'Deshōjō',60,12.25,0.6666666666666666,2023-05-04,yes\r\n"
                        + "楓 (Acer × zoeschense),7,,,,no\r\n"
                        + "'=Juniperus,-1,3.10,1,2022-01-02,no\r\n",
                page.out());
        assertEquals("note: Set and seen by 2024-03-01.\nwarning: more than a fifth is pending\n", page.err());
    }

    @ParameterizedTest
    @CsvSource({
        "=1+1,'''=1+1'",
        "+353,'''+353'",
        "-3,'''-3'",
        "@a,'''@a'",
        "'''=1','''''=1'",
        "a=b,a=b",
        "'''Bloodgood''','''Bloodgood'''"
    })
    void putsAnApostropheBeforeWhatASpreadsheetWouldRun(String text, String safe) {
        assertEquals(safe, SheetData.safe(text));
        assertEquals("'\ta", SheetData.safe("\ta"));
        assertEquals("'\ra", SheetData.safe("\ra"));
    }

    @Property
    void givesEveryTextBackThroughCsv(@ForAll @Size(max = 5) List<String> texts) throws IOException {
        Sheet.Builder builder = Sheet.titled("", Column.text("text", "text"), Column.whole("n", "n"));
        texts.forEach(text -> builder.row(text, 1));
        String csv = Page.piped(80, screen -> screen.show(builder.build(), OutputFormat.CSV))
                .out();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(csv)) {
            List<String> back =
                    reader.stream().skip(1).map(record -> record.getField(0)).toList();
            assertEquals(
                    texts.stream().map(SheetTests::encodable).toList(),
                    back.stream().map(SheetTests::without).toList());
        }
    }

    /** Half of a pair of surrogates is no character, and UTF-8 has no bytes for it. */
    private static String encodable(String text) {
        byte[] bytes = text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
        return new String(bytes, java.nio.charset.StandardCharsets.UTF_8);
    }

    private static String without(String cell) {
        return cell.matches("(?s)'+[=+\\-@\t\r].*") ? cell.substring(1) : cell;
    }

    @Test
    void writesJsonWithNumbersUnroundedAndNotes() {
        assertEquals(
                """
                {
                  "title" : "Take by cultivar",
                  "columns" : [
                    {
                      "name" : "cultivar"
                    },
                    {
                      "name" : "stem_mm",
                      "unit" : "mm"
                    },
                    {
                      "name" : "rate"
                    }
                  ],
                  "rows" : [
                    {
                      "cultivar" : "Acer 'Deshōjō'",
                      "stem_mm" : 12.25,
                      "rate" : 0.6666666666666666
                    },
                    {
                      "cultivar" : "=a",
                      "stem_mm" : null,
                      "rate" : null
                    }
                  ],
                  "notes" : [
                    "seen"
                  ],
                  "warnings" : [ ]
                }
                """,
                Page.piped(
                                80,
                                screen -> screen.show(
                                        Sheet.titled(
                                                        "Take by cultivar",
                                                        Column.text("cultivar", "cultivar"),
                                                        Column.number("stem_mm", "stem", 1)
                                                                .in("mm"),
                                                        Column.share("rate", "rate", 0))
                                                .row("Acer 'Deshōjō'", 12.25, 2.0 / 3)
                                                .row("=a", Optional.empty(), Double.NaN)
                                                .note("seen")
                                                .build(),
                                        OutputFormat.JSON))
                        .out());
    }

    @Test
    void nestsJsonAsDeepAsNeeded() throws IOException {
        String text = Page.piped(
                        80,
                        screen -> screen.json(json -> json.object(tree -> tree.field("tag", "J-201")
                                .field("day", LocalDate.of(2023, 5, 4))
                                .field("price", new BigDecimal("12.50"))
                                .fieldIfAny("lost", Optional.empty())
                                .array(
                                        "steps",
                                        steps -> steps.object(step -> step.field("act", "severed"))
                                                .array(inner -> inner.value(1).value(true))))))
                .out();
        StringBuilder tokens = new StringBuilder();
        try (JsonParser parser = new JsonFactory().createParser(text)) {
            while (parser.nextToken() != null) {
                tokens.append(parser.getText()).append(' ');
            }
        }
        assertEquals(
                "{ tag J-201 day 2023-05-04 price 12.50 steps [ { act severed } [ 1 true ] ] } ", tokens.toString());
    }

    @Test
    void refusesRowsAndColumnsThatDoNotFit() {
        assertThrows(
                IllegalArgumentException.class,
                () -> Sheet.titled("", Column.text("a", "a")).row("x", "y").build());
        assertThrows(
                IllegalArgumentException.class,
                () -> Sheet.titled("", Column.text("a", "a"), Column.text("a", "b"))
                        .build());
        assertThrows(IllegalArgumentException.class, () -> Column.text("Stem mm", "stem"));
        assertThrows(IllegalArgumentException.class, () -> Cell.of(new Object()));
    }
}
