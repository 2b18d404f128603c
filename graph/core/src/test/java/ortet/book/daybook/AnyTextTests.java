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
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import org.junit.jupiter.api.Test;
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
        } catch (Refused refused) {
            assertFalse(refused.faults().isEmpty());
            for (Fault fault : refused.faults()) {
                assertTrue(fault.where().isPresent(), fault::line);
                assertTrue(fault.where().get().line() >= 1, fault::line);
                assertFalse(fault.text().isBlank(), fault::line);
                assertTrue(fault.text().codePoints().noneMatch(Character::isISOControl), fault::line);
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
