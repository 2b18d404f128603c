package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import ortet.book.Progress;
import ortet.book.Receipt;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Form.Nature;
import ortet.entry.Words;
import ortet.plant.Person;

/** Holds docs/day-book.md to what is read. */
class DayBookPageTests {
    /** Lists that must not be empty, which a form does not tell. */
    private static final Set<String> FULL_LISTS = Set.of("candidates", "sources", "findings");

    private static final Map<Nature, String> HOW = Map.of(
            Nature.TEXT, "words",
            Nature.NUMBER, "a number",
            Nature.YES_NO, "`yes` or `no`",
            Nature.DAY, "a day",
            Nature.TAG, "a tag",
            Nature.TAGS, "tags",
            Nature.PERSON, "a person");

    private final String page = page();

    private static String page() {
        try {
            return Files.readString(Path.of("../../docs/day-book.md"));
        } catch (IOException broken) {
            throw new AssertionError("the page is not where it should be", broken);
        }
    }

    /** Return the cells of the rows of the table below a heading, the first cell without its marks as the key. */
    private Map<String, List<String>> table(String heading) {
        String section = page.substring(page.indexOf("\n## " + heading + "\n") + 4);
        section = section.contains("\n## ") ? section.substring(0, section.indexOf("\n## ")) : section;
        Map<String, List<String>> rows = new LinkedHashMap<>();
        section.lines()
                .filter(line -> line.startsWith("| `"))
                .map(line -> List.of(line.substring(1).split("\\|")).stream()
                        .map(String::strip)
                        .toList())
                .forEach(cells -> rows.put(cells.get(0).replace("`", ""), cells));
        return rows;
    }

    private List<String> examples() {
        List<String> found = new ArrayList<>();
        Matcher matcher = Pattern.compile("```csv\n(.*?)```", Pattern.DOTALL).matcher(page);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    private static String marked(Stream<String> columns) {
        return String.join(" ", columns.map(name -> "`" + name + "`").toList());
    }

    private static boolean mustBeThere(EntryKind kind, Form.Field field) {
        return field.required()
                || FULL_LISTS.contains(field.name())
                || field.name().equals("tags") && kind != EntryKind.CORRECTED;
    }

    @Test
    void namesTheColumnsOfEveryKind() {
        Map<String, List<String>> rows = table("Kinds");
        assertEquals(EntryKind.words(), List.copyOf(rows.keySet()));
        for (EntryKind kind : EntryKind.values()) {
            List<Form.Field> fields = Form.of(kind).fields();
            List<String> cells = rows.get(kind.word());
            assertFalse(cells.get(1).isEmpty(), kind.word());
            assertEquals(
                    marked(fields.stream()
                            .filter(field -> mustBeThere(kind, field))
                            .map(Form.Field::name)),
                    cells.get(2),
                    kind.word());
            assertEquals(
                    marked(fields.stream()
                            .filter(field -> !mustBeThere(kind, field))
                            .map(Form.Field::name)),
                    cells.size() > 3 ? cells.get(3) : "",
                    kind.word());
        }
    }

    @Test
    void saysHowEveryColumnIsWritten() {
        Map<String, List<String>> rows = table("Columns of the kinds");
        assertEquals(List.copyOf(Form.columns().keySet()), List.copyOf(rows.keySet()));
        Form.columns().forEach((name, field) -> {
            List<String> cells = rows.get(name);
            String choices = String.join(
                    ", ", field.choices().stream().map(word -> "`" + word + "`").toList());
            String how = field.nature() == Nature.CHOICE ? choices : HOW.getOrDefault(field.nature(), cells.get(1));
            assertEquals(how, cells.get(1), name);
            assertFalse(cells.get(1).isEmpty() || cells.get(2).isEmpty(), name);
        });
    }

    @Test
    void namesItsOwnColumnsAndThoseOfPersons() {
        assertEquals(
                Set.of("day", "kind", "by", "entry", "order recorded"),
                table("Columns of every row").keySet());
        Map<String, List<String>> persons = table("Persons");
        assertEquals(Columns.OF_PERSONS.names(), List.copyOf(persons.keySet()));
        for (String role : Words.all(Person.Role.class)) {
            assertTrue(persons.get("role").get(1).contains("`" + role + "`"), role);
        }
        for (String name : Columns.OF_LABEL.names()) {
            assertTrue(page.contains("`" + name + "`"), name);
        }
    }

    @Test
    void givesExamplesThatTheBookTakes() {
        Desk desk = new Desk();
        assertEquals(3, examples().size());
        Reading.Rows rows = desk.read(
                Desk.file("example.csv", examples().get(0)),
                Desk.file("persons.csv", examples().get(2)));
        Receipt receipt = rows.writeInto(desk.diary().store(), desk.diary().judge(), Progress.NONE);
        assertEquals(6, receipt.written().size());
        assertEquals(6, receipt.begun());
        Receipt tariff = desk.read(Desk.file("tariff.csv", examples().get(1)))
                .writeInto(desk.diary().store(), desk.diary().judge(), Progress.NONE);
        assertEquals(6, tariff.written().size());
        assertEquals(0, tariff.begun());
        assertEquals(
                List.of("example.csv:2:by: Una Thornfield is new, and becomes #3 (staff)"), Desk.texts(rows.remarks()));
    }
}
