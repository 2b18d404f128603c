package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.value.Refused;

/** What is wrong with a mapping is told by line, all of it at once. */
class MappingReaderTests {
    private static final String GOOD =
            "sheet trees\nfiles = trees.csv\nrow = plant\ncolumn Tag = tag\notherwise method = layer\n";

    private static List<String> faults(String... lines) {
        return assertThrows(Refused.class, () -> Mapping.of(String.join("\n", lines), "m.txt"))
                .lines();
    }

    /** Return what is wrong with lines that stand below a good sheet. */
    private static List<String> more(String... lines) {
        return faults(GOOD + String.join("\n", lines));
    }

    @Test
    void readsASheetWithRemarksAndBlankLines() {
        Mapping mapping = Mapping.of("# our trees\n\n" + GOOD + "\n  # more\n  column Place = place\n", "m.txt");
        assertEquals(List.of("trees"), mapping.sheetNames());
    }

    @Test
    void needsASheet() {
        assertEquals(
                List.of("m.txt:1: a mapping must have a sheet; expected a line such as sheet trees"),
                faults("# nothing"));
    }

    @Test
    void saysWhatASheetLacks() {
        assertEquals(
                List.of(
                        "m.txt:1: sheet trees says not which files it is; expected a line such as files = trees*.csv",
                        "m.txt:1: sheet trees says not what a row is; expected a line such as row = plant"),
                faults("sheet trees"));
        assertEquals(
                List.of(
                        "m.txt:1: in sheet trees no line says the tag, without which a sheet with row = plant cannot be read; expected a"
                                + " column or otherwise tag = …",
                        "m.txt:1: in sheet trees no line says the method, without which a sheet with row = plant cannot be read; expected a"
                                + " column or otherwise method = …"),
                faults("sheet trees", "files = a.csv", "row = plant"));
        assertEquals(
                List.of(
                        "m.txt:1: in sheet pots no line says the container, without which a sheet with row = potted cannot be read; expected"
                                + " a column or otherwise container = …"),
                faults("sheet pots", "files = a.csv", "row = potted", "column T = tag", "column D = day"));
    }

    @Test
    void namesTheNearestOfWhatItDoesNotKnow() {
        assertEquals(
                List.of("m.txt:6: no line of a mapping reads \"colum Place\"; nearest: column"),
                more("colum Place = place"));
        assertEquals(
                List.of(
                        "m.txt:3: a row is no \"plnt\"; expected plant, outcome, entry, or a kind of entry such as potted,"
                                + " moved, sold or lost; nearest: plant, split"),
                faults("sheet trees", "files = a.csv", "row = plnt"));
        assertEquals(
                "m.txt:4: a sheet with row = moved has no \"plaice\"; it has tag, tags, day, by, place, note; nearest: place",
                faults("sheet a", "files = a.csv", "row = moved", "column P = plaice", "column T = tag")
                        .get(0));
        assertEquals(
                List.of(
                        "m.txt:6: numbers: no \"decimal coma\"; expected decimal comma or decimal point; nearest: decimal comma,"
                                + " decimal point"),
                more("numbers = decimal coma"));
    }

    @Test
    void tellsALineThatIsNotWhole() {
        assertEquals(List.of("m.txt:6: expected column Tag No = tag"), more("column Place"));
        assertEquals(List.of("m.txt:6: expected word A/L = layer"), more("word A/L"));
        assertEquals(List.of("m.txt:6: no line of a mapping reads \"dates\" without = and a value"), more("dates"));
        assertEquals(List.of("m.txt:6: a quotation mark is opened and not closed"), more("column \"Place = place"));
    }

    @Test
    void tellsALineThatStandsInTheWrongPlace() {
        assertEquals(
                List.of(
                        "m.txt:1: \"column\" stands before the first sheet",
                        "m.txt:2: \"files\" stands before the first sheet",
                        "m.txt:3: \"tidy\" must stand below the column that it belongs to"),
                faults("column A = tag", "files = a.csv", "tidy = upper case", GOOD)
                        .subList(0, 3));
        assertEquals(
                List.of("m.txt:4: \"word\" must stand below the column that it belongs to"),
                faults("sheet a", "files = a.csv", "row = seen", "word x = y", "column T = tag", "column D = day"));
    }

    @Test
    void tellsWhatStandsTwice() {
        assertEquals(List.of("m.txt:6: \"files\" stands twice; expected it once"), more("files = b.csv"));
        assertEquals(
                List.of(
                        "m.txt:6: tag is said by column Tag already (line 4); expected one column, with both names if the files"
                                + " differ"),
                more("column Label = tag"));
        assertEquals(
                List.of("m.txt:6: otherwise method stands twice; expected it once"), more("otherwise method = graft"));
        assertEquals(List.of("m.txt:6: a sheet Trees stands above; expected each name once"), more("sheet Trees"));
        assertEquals(
                List.of("m.txt:8: word a/l stands twice for this column"),
                faults(
                        "sheet a",
                        "files = a.csv",
                        "row = plant",
                        "column T = tag",
                        "",
                        "column How = method",
                        "word A/L = layer",
                        "word a/l = graft"));
    }

    @Test
    void refusesAValueThatAFieldCannotHave() {
        assertEquals(
                List.of("m.txt:6: no \"mist\"; expected one of softwood, semi-ripe, hardwood, heel, root, leaf-bud"),
                more("otherwise wood = mist"));
        assertEquals(
                List.of(
                        "m.txt:7: no method \"lair\"; expected one of layer, cuttings, graft, seed, division, sport, drawn,"
                                + " acquired; nearest: layer"),
                faults(
                        "sheet a",
                        "files = a.csv",
                        "row = plant",
                        "column T = tag",
                        "",
                        "column How = method",
                        "word A/L = lair"));
        assertEquals(
                List.of("m.txt:6: only tags can be tidied; place is none"),
                more("column P = place", "tidy = pad 4").stream()
                        .map(line -> line.replace(":7:", ":6:"))
                        .toList());
    }

    @Test
    void refusesAUnitThatAFieldDoesNotHave() {
        assertEquals(
                List.of("m.txt:6: no stem in \"kg\"; expected one of \", cm, ft, in, inch, inches, m, mm"),
                more("column S = stem in kg"));
        assertEquals(List.of("m.txt:6: place has no unit; expected nothing after it"), more("column S = place in mm"));
        assertEquals(
                List.of("m.txt:6: no currency \"euros\"; expected a code of ISO 4217 such as EUR"),
                more("column S = sold price in euros"));
    }

    @Test
    void knowsForOnlyWhereAColumnSaysTheKind() {
        assertEquals(
                List.of("m.txt:7: \"for\" has a meaning only where row = entry"),
                more("column P = place", "for potted = container"));
    }

    @Test
    void readsAnythingBetweenQuotationMarks() {
        Mapping mapping = Mapping.of(
                "sheet \"a = b, \"\"c\"\"\"\nfiles = \"one, two.csv\", three.csv\nrow = seen\ncolumn \"Tag = No.\" = tag\n"
                        + "column Day = day\n",
                "m.txt");
        SheetRules rules = mapping.sheets().get(0);
        assertEquals("a = b, \"c\"", rules.name());
        assertEquals(List.of("one, two.csv", "three.csv"), rules.files());
        assertEquals("Tag = No.", rules.columns().get(0).name());
    }

    @Test
    void tellsAMissingMappingAndOneThatIsNoText(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("mapping.txt"), GOOD);
        assertEquals(1, Mapping.read(file).sheetNames().size());
        Path missing = folder.resolve("maping.txt");
        assertEquals(
                "there is no file " + missing + "; nearest: mapping.txt",
                assertThrows(Refused.class, () -> Mapping.read(missing)).getMessage());
        Path broken = Files.write(folder.resolve("broken.txt"), new byte[] {'#', '\n', (byte) 0xE9, '\n'});
        assertEquals(
                broken + ":2: expected a mapping as text in UTF-8",
                assertThrows(Refused.class, () -> Mapping.read(broken)).getMessage());
    }
}
