package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
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
import org.junit.jupiter.api.Test;
import ortet.book.Progress;
import ortet.book.Receipt;
import ortet.entry.EntryKind;
import ortet.value.Fault;
import ortet.value.Refused;

/** Whatever is in a file, reading it gives a proposal or tells what is wrong and where. */
class AnyTextTests {
    private final Desk desk = new Desk();

    private void holdsFor(Source... files) {
        try {
            Reading.Rows rows = desk.read(files);
            rows.proposal().items().forEach(item -> assertTrue(item.where().isPresent()));
            desk.diary().store().read(view -> rows.check(view, desk.diary().judge(), Progress.NONE));
        } catch (Refused refused) {
            assertFalse(refused.faults().isEmpty());
            for (Fault fault : refused.faults()) {
                assertTrue(fault.where().isPresent(), fault::line);
                assertTrue(fault.where().get().line() >= 1, fault::line);
                assertFalse(fault.text().isBlank(), fault::line);
                assertTrue(fault.line().codePoints().noneMatch(Character::isISOControl), fault::line);
            }
        }
    }

    @Property(tries = 1000)
    void readsOrRefusesAnyBytes(@ForAll byte[] bytes) {
        holdsFor(Desk.file("a.csv", bytes));
    }

    @Property(tries = 1000)
    void readsOrRefusesAnyText(@ForAll("scraps") String text) {
        holdsFor(Desk.file("a.csv", text));
    }

    @Property(tries = 1000)
    void readsOrRefusesAnyRows(@ForAll("rows") String rows) {
        holdsFor(Desk.file(
                "a.csv", "day,by,kind,tags,mother,count,target,field,value,reason,place,customer,note\n" + rows));
    }

    @Property(tries = 500)
    void readsOrRefusesAnyListOfPersons(@ForAll("people") String rows) {
        holdsFor(
                Desk.file("persons.csv", "number,name,role,particulars,erased\n" + rows),
                Desk.file("a.csv", "day,by,kind,tags\n2021,Una,seen,J-1\n"));
    }

    private static final String GOOD = String.join(
            "\n",
            "entry,day,kind,by,tags,mother,stem_mm,count,target,field,value,reason,note",
            ",2019-03-01,acquired,Una,K-1 K-2,,12.5,,,,,,\"broad, \"\"old\"\"\"",
            ",2021-05,layer-set,#1,J-1..J-4,K-1,12,,,,,,",
            ",2021-06-01,failed,,J-2,,,1,,,,,'=1",
            ",2021-06-01,corrected,Una,,,,,line:3,day,2021-05-03,slip,",
            ",2021-06-02,crossed-out,,,,,,line:4,,,no,",
            "");

    /** A place in the good file, how many letters are taken out there, and what is put in. */
    record Slip(int place, int taken, String put) {
        String into(String text) {
            int from = Math.min(place, text.length());
            return text.substring(0, from) + put + text.substring(Math.min(text.length(), from + taken));
        }
    }

    @Property(tries = 1500, edgeCases = EdgeCasesMode.NONE)
    void readsOrRefusesAGoodFileWithSlips(@ForAll("slips") List<Slip> slips) {
        String text = GOOD;
        for (Slip slip : slips) {
            text = slip.into(text);
        }
        holdsFor(Desk.file("a.csv", text));
    }

    @Test
    void readsTheGoodFileItself() {
        Reading.Rows rows = desk.read(Desk.file("a.csv", GOOD));
        Receipt receipt = rows.writeInto(desk.diary().store(), desk.diary().judge(), Progress.NONE);
        assertEquals(5, receipt.written().size());
    }

    @Provide
    Arbitrary<List<Slip>> slips() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, GOOD.length()),
                        Arbitraries.of(0, 0, 1, 3),
                        Arbitraries.of(
                                "",
                                "\"",
                                ",",
                                ";",
                                "\t",
                                "\n",
                                "\r\n",
                                "'",
                                "=",
                                "\u0000",
                                "\uFEFF",
                                "é",
                                "line:",
                                "#",
                                "..",
                                "except",
                                "-",
                                ":",
                                "%",
                                "9999999999",
                                "K-1",
                                "J-1..J-99999",
                                "corrected",
                                "day",
                                " "))
                .as(Slip::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(4);
    }

    @Provide
    Arbitrary<String> scraps() {
        return Arbitraries.oneOf(
                        Arbitraries.strings().all().ofMaxLength(5),
                        Arbitraries.of("day", "kind", "tags", "seen", "2021", "J-1", "line:2", "#7"),
                        Arbitraries.of(",", ";", "\t", "\n", "\r\n", "\r", "\"", "\"\"", "'", "=", "\uFEFF", "\u0000"))
                .list()
                .ofMaxSize(30)
                .map(scraps -> String.join("", scraps));
    }

    private static Arbitrary<String> cells(List<String> likely) {
        return Arbitraries.frequencyOf(
                Tuple.of(8, Arbitraries.of(likely)),
                Tuple.of(4, Arbitraries.of("")),
                Tuple.of(1, Arbitraries.of("\"", "\"a\nb\"", "\"x\" y", "'=1", "#0", "line:", "a,b")),
                Tuple.of(1, Arbitraries.strings().ofMaxLength(4)));
    }

    private static Arbitrary<String> lines(List<List<String>> likely) {
        return Combinators.combine(likely.stream().map(AnyTextTests::cells).toList())
                .as(cells -> String.join(",", cells))
                .list()
                .ofMaxSize(8)
                .map(rows -> String.join("\n", rows));
    }

    @Provide
    Arbitrary<String> rows() {
        return lines(List.of(
                List.of("2021-05-03", "2021", "2021-13"),
                List.of("Una", "una", "#7", "Bertil & Co"),
                EntryKind.words(),
                List.of("J-1", "J-1..J-3", "J-1..", "J-9..J-1", "except", "J-1 except J-2"),
                List.of("K-1", "K 1"),
                List.of("1", "0", "-1", "99999999999"),
                List.of("line:2", "line:3", "line:99", "00000000-0000-4000-8000-000000000001"),
                List.of("note", "supplier", "by"),
                List.of("Una", "x"),
                List.of("slip"),
                List.of("House 1"),
                List.of("Una", "Orla"),
                List.of("words")));
    }

    @Provide
    Arbitrary<String> people() {
        return lines(List.of(
                List.of("#1", "#2", "#2147483648", "1"),
                List.of("Una", "una", "#3", "Orla"),
                List.of("staff", "Staff", "boss"),
                List.of("x"),
                List.of("yes", "no", "perhaps")));
    }

    @Test
    void survivesAVeryWideAndAVeryLongCell() {
        List<String> faults =
                new ArrayList<>(desk.faults(Desk.file("a.csv", "day,kind" + ",".repeat(16_000) + "\n2021,seen\n")));
        assertEquals(List.of("a.csv:1:tags: the header has no such column; seen in line 2 must have it"), faults);
        String note = "long ".repeat(200_000).strip();
        Reading.Rows rows = desk.read(Desk.file(
                "a.csv", ("day,kind,tags,note\n2021,noted,J-1,\"" + note + "\"\n").getBytes(StandardCharsets.UTF_8)));
        assertEquals(1, rows.entries());
    }
}
