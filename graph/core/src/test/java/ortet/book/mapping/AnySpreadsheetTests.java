package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import ortet.book.Books;
import ortet.book.daybook.Source;
import ortet.entry.EntryKind;
import ortet.value.Fault;
import ortet.value.Refused;

/** Whatever stands in a spreadsheet or in a mapping, reading it gives entries or says in one line what is wrong. */
class AnySpreadsheetTests {
    private static void assertTold(List<Fault> faults) {
        assertFalse(faults.isEmpty());
        for (Fault fault : faults) {
            assertFalse(fault.text().isBlank(), fault::line);
            assertTrue(fault.line().codePoints().noneMatch(Character::isISOControl), fault::line);
        }
    }

    private static void holdsFor(Mapping mapping, Source... files) {
        Sheets sheets = new Sheets(mapping);
        try {
            Imported imported = sheets.writeWhatHolds(List.of(files));
            if (!imported.faults().isEmpty()) {
                assertTold(imported.faults());
                imported.faults().forEach(fault -> assertTrue(fault.where().isPresent(), fault::line));
            }
            for (FileAccount file : imported.files()) {
                assertTrue(
                        file.taken() + file.repeated() + file.leftOut() + file.wrong() + file.resting() == file.rows());
            }
            Books.assertChained(sheets.diary().store());
        } catch (Refused refused) {
            assertTold(refused.faults());
        }
    }

    private static final Mapping WIDE = Mapping.of(
            String.join(
                    "\n",
                    "tags = no blanks",
                    "dates = dd/MM/yyyy, MMM yyyy",
                    "sheet a",
                    "files = a.csv",
                    "row = plant",
                    "column tag = tag",
                    "column cultivar = cultivar",
                    "column method = method",
                    "column mother = mothers",
                    "column other = other parent",
                    "column day = begun day",
                    "column severed = severed day",
                    "column outcome = outcome",
                    "column when = outcome day",
                    "column count = count",
                    "column potted = potted day",
                    "column pot = potted container",
                    "column by = by",
                    "sheet b",
                    "files = b.csv",
                    "row = entry",
                    "plants without a row = acquire",
                    "column tags = tags",
                    "column day = day",
                    "column kind = kind",
                    "column what = note",
                    "  for moved = place",
                    "  for drawn, split = source",
                    "  for layer-set, divided, sport-found = mother",
                    "  for potted = container",
                    "  for checked = findings",
                    "  for sold, reserved = customer",
                    "  for retagged = new tag",
                    "  for merged = sources",
                    "  for found untagged = candidates",
                    "column count = count",
                    "sheet c",
                    "files = c.csv",
                    "row = outcome",
                    "column tags = tags",
                    "column day = day",
                    "column outcome = outcome"),
            "mapping.txt");

    @Property(tries = 300)
    void readsOrRefusesAnyBytes(@ForAll byte[] bytes) {
        holdsFor(WIDE, Sheets.file("a.csv", bytes));
    }

    @Property(tries = 300)
    void readsOrRefusesAnyText(@ForAll("scraps") String text) {
        holdsFor(WIDE, Sheets.file("b.csv", text));
    }

    @Property(tries = 800, edgeCases = EdgeCasesMode.NONE)
    void readsOrRefusesAnyRows(
            @ForAll("plants") String plants, @ForAll("diary") String diary, @ForAll("outcomes") String outcomes) {
        holdsFor(
                WIDE,
                Sheets.file(
                        "a.csv",
                        "tag,cultivar,method,mother,other,day,severed,outcome,when,count,potted,pot,by\n" + plants),
                Sheets.file("b.csv", "tags,day,kind,what,count\n" + diary),
                Sheets.file("c.csv", "tags,day,outcome\n" + outcomes));
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void readsRowsInAnyOrderAlike(@ForAll("plants") String plants, @ForAll("outcomes") String outcomes) {
        String header = "tag,cultivar,method,mother,other,day,severed,outcome,when,count,potted,pot,by\n";
        Sheets straight = new Sheets(WIDE);
        Sheets turned = new Sheets(WIDE);
        try {
            straight.writeWhatHolds(List.of(
                    Sheets.file("a.csv", header + plants), Sheets.file("c.csv", "tags,day,outcome\n" + outcomes)));
            turned.writeWhatHolds(List.of(
                    Sheets.file("c.csv", "tags,day,outcome\n" + reversed(outcomes)),
                    Sheets.file("a.csv", header + reversed(plants))));
        } catch (Refused refused) {
            assertTold(refused.faults());
            return;
        }
        List<String> one = straight.entries().stream().sorted().toList();
        List<String> other = turned.entries().stream().sorted().toList();
        assertTrue(one.equals(other), () -> String.join("\n", one) + "\n---\n" + String.join("\n", other));
    }

    private static String reversed(String rows) {
        List<String> lines = new ArrayList<>(List.of(rows.split("\n")));
        java.util.Collections.reverse(lines);
        return String.join("\n", lines);
    }

    @Property(tries = 800)
    void readsOrRefusesAnyMapping(@ForAll("mappings") String text) {
        try {
            Mapping mapping = Mapping.of(text, "m.txt");
            for (SheetRules rules : mapping.sheets()) {
                rules.matches("a.csv");
            }
            holdsFor(mapping, Sheets.file("a.csv", "tag,day,how\nJ-1,2020,layer\n"));
        } catch (Refused refused) {
            assertTold(refused.faults());
        }
    }

    @Property(tries = 200)
    void guessesOrRefusesForAnyText(@ForAll("scraps") String text) {
        try {
            Mapping.of(Guess.ofSources(List.of(Sheets.file("a b.csv", text))), "guess.txt");
        } catch (Refused refused) {
            assertTold(refused.faults());
        }
    }

    @Property(tries = 150)
    void guessesOrRefusesForAnyRows(@ForAll("plants") String plants, @ForAll("heads") List<String> heads) {
        String text = String.join(",", heads) + "\n" + plants;
        try {
            Mapping mapping = Mapping.of(Guess.ofSources(List.of(Sheets.file("x.csv", text))), "guess.txt");
            holdsFor(mapping, Sheets.file("x.csv", text));
        } catch (Refused refused) {
            assertTold(refused.faults());
        }
    }

    @Provide
    Arbitrary<String> scraps() {
        return Arbitraries.oneOf(
                        Arbitraries.strings().all().ofMaxLength(5),
                        Arbitraries.of("tags", "day", "kind", "what", "count", "Date", "Tag No", "mother", "result"),
                        Arbitraries.of("J-1", "2020", "3/5/2020", "seen", "layer", "12,5", "€ 3"),
                        Arbitraries.of(",", ";", "\t", "|", "\n", "\r\n", "\"", "\"\"", "'", "=", "\uFEFF", "\u0000"))
                .list()
                .ofMaxSize(40)
                .map(scraps -> String.join("", scraps));
    }

    private static Arbitrary<String> cells(List<String> likely) {
        return Arbitraries.frequencyOf(
                Tuple.of(12, Arbitraries.of(likely)),
                Tuple.of(5, Arbitraries.of("")),
                Tuple.of(1, Arbitraries.of("?", "n/a", "'=1", "#0", "..", "\"a\nb\"", "\u00A0", "×")),
                Tuple.of(1, Arbitraries.strings().ascii().ofMaxLength(3).map(AnySpreadsheetTests::quoted)));
    }

    private static String quoted(String text) {
        return "\"" + text.replace("\"", "\"\"").replaceAll("[\r\n]", " ") + "\"";
    }

    private static Arbitrary<String> rows(List<List<String>> likely) {
        return Combinators.combine(
                        likely.stream().map(AnySpreadsheetTests::cells).toList())
                .as(cells -> String.join(",", cells))
                .list()
                .ofMinSize(1)
                .ofMaxSize(7)
                .map(rows -> String.join("\n", rows));
    }

    private static final List<String> TAGS = List.of("J-1", "J-2", "K-1", "k-1", "T-1", "J 3", "G-1");
    private static final List<String> DAYS =
            List.of("2018", "3/5/2019", "2019-05", "1/9/2019", "May 2020", "2020-02-30", "c. 2017", "1.1.1", "2099");

    @Provide
    Arbitrary<String> plants() {
        return rows(List.of(
                TAGS,
                List.of("Acer palmatum", "acer palmatum deshojo", "Maple", "'x'"),
                List.of("layer", "cuttings", "graft", "seed", "division", "acquired", "drawn", "sport", "zap"),
                List.of("K-1", "J-1", "K-1 (3), J-2", "T-1"),
                List.of("R-1", "Acer palmatum"),
                DAYS,
                DAYS,
                List.of(
                        "taken",
                        "dead",
                        "failed rotted",
                        "sold",
                        "growing",
                        "pending",
                        "culled surplus",
                        "lost",
                        "gone"),
                DAYS,
                List.of("1", "3", "60", "0", "-1", "x"),
                DAYS,
                List.of("2 L"),
                List.of("Una", "#1", "una")));
    }

    @Provide
    Arbitrary<String> diary() {
        List<String> kinds = new ArrayList<>(EntryKind.words());
        return rows(List.of(
                List.of("J-1", "J-1..J-3", "K-1 and T-1", "J-1 except J-1", "X-9"),
                DAYS,
                kinds,
                List.of("K-1", "J-1 J-2", "House 1", "callus:2", "J-77", "Una"),
                List.of("1", "2", "60", "x")));
    }

    @Provide
    Arbitrary<String> outcomes() {
        return rows(List.of(
                List.of("J-1", "J-1 J-2", "T-1", "G-1", "K-1"),
                DAYS,
                List.of("taken", "dead", "failed", "growing", "sold", "lost frost", "withdrawn", "?")));
    }

    @Provide
    Arbitrary<List<String>> heads() {
        return Arbitraries.of(
                        "Tag",
                        "Variety",
                        "How",
                        "Mother",
                        "Date",
                        "Result",
                        "Pot",
                        "Price",
                        "Who",
                        "Count",
                        "Stem cm",
                        "",
                        "Notes",
                        "To",
                        "\"a, b\"",
                        "Rooted",
                        "callus")
                .list()
                .ofSize(13);
    }

    @Provide
    Arbitrary<String> mappings() {
        Arbitrary<String> left = Arbitraries.of(
                "sheet a",
                "sheet \"a\"",
                "files",
                "row",
                "column tag",
                "column day",
                "column \"how\"",
                "maybe x",
                "for potted",
                "word a, b",
                "word *",
                "with hormone",
                "tidy",
                "otherwise method",
                "otherwise day",
                "otherwise count",
                "leave out",
                "skip tag",
                "dates",
                "numbers",
                "tags",
                "blank",
                "encoding",
                "separator",
                "header",
                "mothers without a row",
                "plants without a row",
                "without a mother",
                "repeated rows",
                "#",
                "zap",
                "\"",
                "");
        Arbitrary<String> right = Arbitraries.oneOf(
                Arbitraries.of(
                        "a.csv",
                        "*.csv",
                        "plant",
                        "outcome",
                        "entry",
                        "moved",
                        "tag",
                        "tags",
                        "day",
                        "method",
                        "layer",
                        "stem in cm",
                        "price in EUR",
                        "strength in ppm",
                        "upper case",
                        "replace \"(\" by \"\"",
                        "replace \"a\" by \"$9\"",
                        "pad 3",
                        "dd/MM/yyyy",
                        "yyyy",
                        "decimal comma",
                        "utf-8",
                        "none",
                        "acquire",
                        "once",
                        "3",
                        "potted 2 day",
                        "positions 8-12",
                        "positions 9-1",
                        "findings callus",
                        "[",
                        "\"",
                        "=",
                        ",",
                        "…"),
                Arbitraries.strings().all().ofMaxLength(4));
        Arbitrary<String> line = Arbitraries.frequencyOf(
                Tuple.of(8, Combinators.combine(left, right).as((one, other) -> one + " = " + other)),
                Tuple.of(3, left),
                Tuple.of(1, Arbitraries.strings().all().ofMaxLength(8)));
        return line.list().ofMaxSize(14).map(lines -> {
            String text = String.join("\n", lines);
            return text.length() % 2 == 0
                    ? text
                    : "sheet a\nfiles = a.csv\nrow = plant\ncolumn tag = tag\ncolumn how = method\n" + text;
        });
    }
}
