package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.book.daybook.Source;
import ortet.value.Refused;

/** A mapping is proposed from the heads and the first rows. */
class GuessTests {
    private static List<String> lines(Source... files) {
        return Guess.ofSources(List.of(files)).lines().map(String::strip).toList();
    }

    private static void assertSays(List<String> lines, String... wanted) {
        for (String line : wanted) {
            assertTrue(lines.contains(line), () -> "no line \"" + line + "\" in\n" + String.join("\n", lines));
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"ledger", "diary", "trays", "continental", "benches", "wide"})
    void readsBackForEveryInventedNursery(String nursery) {
        String text = Guess.ofSources(Sheets.files(nursery));
        Mapping mapping = Mapping.of(text, "guess.txt");
        assertEquals(Sheets.files(nursery).size(), mapping.sheetNames().size());
        for (Source file : Sheets.files(nursery)) {
            assertEquals(
                    1,
                    mapping.sheets().stream()
                            .filter(rules -> rules.matches(file.name()))
                            .count(),
                    file.name());
        }
    }

    /** Return pairs of lines to be put right in a guess, as its remarks ask for. */
    static Stream<Arguments> mended() {
        return Stream.of(
                Arguments.of(
                        "ledger", List.of("# otherwise outcome day = same year", "otherwise outcome day = same year")),
                Arguments.of("trays", List.of()),
                Arguments.of("continental", List.of()),
                Arguments.of("benches", List.of("dates = dd/MM/yyyy\n", "")),
                Arguments.of(
                        "wide",
                        List.of(
                                "# word Hornbeam = Acer palmatum 'Deshojo'",
                                "word Hornbeam = Carpinus betulus",
                                "# word Trident maple = Acer palmatum 'Deshojo'",
                                "word Trident maple = Acer buergerianum",
                                "# word binned = …",
                                "word binned = culled quality",
                                "column Stem = stem",
                                "column Stem = measured stem",
                                "# otherwise outcome day = same year",
                                "otherwise measured day = 2024-11-30\notherwise severed day = same year")),
                Arguments.of(
                        "diary",
                        List.of(
                                "column (D) = note",
                                "column (D) = note\n  for acquired = supplier\n  for layer-set = mother\n"
                                        + "  for checked = findings\n  for severed, potted = container\n"
                                        + "  for failed = cause\n  for moved = place\n  for retagged = new tag\n"
                                        + "  for sold = customer",
                                "column (E) = note",
                                "column (E) = note\n  for layer-set = stem\n  for sold = price in EUR")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mended")
    void agreesWithTheMappingMadeByHandOnceItsOpenQuestionsAreAnswered(String nursery, List<String> answers) {
        String text = Guess.ofSources(Sheets.files(nursery));
        for (int at = 0; at < answers.size(); at += 2) {
            String question = answers.get(at);
            assertTrue(text.contains(question), () -> "no \"" + question + "\" in\n" + text);
        }
        String mended = text;
        for (int at = 0; at < answers.size(); at += 2) {
            mended = mended.replace(answers.get(at), answers.get(at + 1));
        }
        Sheets guessed = new Sheets(Mapping.of(mended, "guess.txt"));
        Imported imported = guessed.writeWhatHolds(Sheets.files(nursery));
        Sheets byHand = Sheets.under(nursery);
        Imported expected = byHand.writeWhatHolds(Sheets.files(nursery));
        assertEquals(plain(Sheets.lines(expected)), plain(Sheets.lines(imported)));
        assertEquals(
                byHand.entries().stream().sorted().toList(),
                guessed.entries().stream().sorted().toList());
    }

    /** Leave out what depends on the formats that are named as expected. */
    private static List<String> plain(List<String> lines) {
        return lines.stream()
                .map(line -> line.replaceAll("expected a day as .*?, found", "expected a day, found"))
                .toList();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "dd/MM/yyyy | 03/05/2019;31/12/2019",
                "MM/dd/yyyy | 05/03/2019;12/31/2019",
                "dd.MM.yy | 3.5.19;31.12.19",
                "d-MMM-yy | 3-May-19;31-Dec-19",
                "spreadsheet number | 43588;43830",
                "yyyy/MM/dd | 2019/05/03;2019/12/31"
            })
    void findsHowDaysAreWritten(String format, String days) {
        List<String> rows = new ArrayList<>(List.of("Date,Tag,Place"));
        for (String day : days.split(";")) {
            rows.add(day + ",J-1,House 1");
        }
        assertSays(lines(Sheets.file("moves.csv", rows.toArray(String[]::new))), "row = moved", "dates = " + format);
    }

    @Test
    void saysWhereNothingTellsWhetherDayOrMonthComesFirst() {
        assertSays(
                lines(Sheets.file("moves.csv", "Date,Tag,Place", "03/05/2019,J-1,House 1", "04/05/2019,J-2,House 1")),
                "# not sure: nothing tells whether the day or the month comes first: the day is a guess",
                "dates = dd/MM/yyyy");
    }

    @Test
    void findsDecimalCommasCurrencyAndEncoding() {
        byte[] bytes = ("Datum;Tag;To;Net €\n03.05.2019;J-1;Röhricht;12,50\n04.05.2019;J-2;Röhricht;13,50\n")
                .replace("Datum", "Date")
                .getBytes(Charset.forName("windows-1252"));
        assertSays(
                lines(Sheets.file("sales.csv", bytes)),
                "row = sold",
                "encoding = windows-1252",
                "numbers = decimal comma",
                "column Net € = price in EUR",
                "column To = customer");
    }

    @Test
    void tellsApartOneTagAndSeveral() {
        assertSays(
                lines(Sheets.file("moves.csv", "Date,Plants,Place", "2019,J-1,House 1", "2019,\"J-2, J-3\",House 1")),
                "column Plants = tags");
        assertSays(
                lines(Sheets.file("moves.csv", "Date,Plants,Place", "2019,J-1,House 1", "2019,J-2,House 1")),
                "column Plants = tag");
        assertSays(
                lines(Sheets.file(
                        "trays.csv",
                        "Tray,Cuttings of,Struck,How many",
                        "T-1,K-1 (40) + K-2 (20),2019,60",
                        "T-2,K-1,2019,60")),
                "column Cuttings of = mothers");
    }

    @Test
    void proposesOneSheetForFilesOfOneHeader() {
        List<String> lines = lines(
                Sheets.file("sales 2018.csv", "Date,Tag,Customer", "2018,J-1,Anna"),
                Sheets.file("sales 2019.csv", "Date,Tag,Customer", "2019,J-2,Anna"));
        assertEquals(1, lines.stream().filter(line -> line.startsWith("sheet ")).count());
        assertSays(lines, "files = sales *.csv");
    }

    @Test
    void showsWhatItDoesNotKnow() {
        assertSays(
                lines(Sheets.file(
                        "trees.csv",
                        "Tag,How,Mother,Set,Weather,Wood",
                        "J-1,zapped,K-1,2019,wet,softwod",
                        "J-2,A/L,K-1,2019,dry,softwood")),
                "word A/L = layer",
                "# what does zapped mean (1 row)?",
                "# word zapped = …",
                "# word softwod = softwood",
                "# what is Weather? wet | dry",
                "leave out = Weather");
    }

    @Test
    void asksAboutNamesThatMayBeNoBotanicalOnes() {
        assertSays(
                lines(Sheets.file(
                        "trees.csv", "Tag,Variety,Bought", "J-1,Trident maple,2019", "J-2,Acer palmatum,2019")),
                "# is Trident maple a botanical name? if not, say what it stands for:",
                "# word Trident maple = Acer palmatum 'Deshojo'");
    }

    @Test
    void guessesSomethingForAnything() {
        assertSays(lines(Sheets.file("x.csv", "a,b", "1,2")), "files = x.csv");
        assertSays(lines(Sheets.file("empty.csv", "")), "files = empty.csv");
    }

    @Test
    void refusesFilesThatAreNotThereOrNoText() {
        Path missing = Path.of("src/test/resources/spreadsheets/ledger/tree.csv");
        assertEquals(
                "there is no file " + missing + "; nearest: trees.csv",
                assertThrows(Refused.class, () -> Guess.of(List.of(missing))).getMessage());
        Path folder = Path.of("src/test/resources/spreadsheets/ledger");
        assertEquals(
                folder + " is a folder; expected files",
                assertThrows(Refused.class, () -> Guess.of(List.of(folder))).getMessage());
        Source archive = Sheets.file("a.csv", new byte[] {'P', 'K', 3, 4});
        assertEquals(
                "a.csv:1: expected text, found a spreadsheet or archive; save the sheet as CSV in UTF-8",
                assertThrows(Refused.class, () -> Guess.ofSources(List.of(archive)))
                        .getMessage());
    }
}
