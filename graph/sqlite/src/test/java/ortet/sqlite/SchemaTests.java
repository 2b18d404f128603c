package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.Act;
import ortet.book.UnitFacts;
import ortet.entry.Words;
import ortet.plant.Person;

/** The tables are what {@code docs/schema.md} says. */
class SchemaTests {
    private static final Pattern TABLE = Pattern.compile("\\*\\*([a-z]+)\\*\\*: .*");
    private static final Pattern COLUMNS = Pattern.compile("\\| ([a-z_, ]+) \\|.*");

    private final Shelf shelf = new Shelf();
    private final SqliteBookStore store = shelf.create();

    @AfterEach
    void clear() {
        shelf.close();
    }

    private static List<String> page() throws IOException {
        return Files.readAllLines(Path.of("..", "..", "docs", "schema.md"));
    }

    @Test
    void everyTableAndColumnIsDescribedAndNoOther() throws IOException, SQLException {
        Map<String, List<String>> described = new LinkedHashMap<>();
        List<String> columns = new ArrayList<>();
        for (String line : page()) {
            Matcher table = TABLE.matcher(line);
            Matcher column = COLUMNS.matcher(line);
            if (table.matches()) {
                columns = new ArrayList<>();
                described.put(table.group(1), columns);
            } else if (column.matches() && !column.group(1).equals("column")) {
                columns.addAll(Arrays.asList(column.group(1).split(", ")));
            }
        }
        described.values().forEach(Collections::sort);
        Map<String, List<String>> there = new LinkedHashMap<>();
        try (Session session = Session.open(store.path(), Session.Way.READ_ONLY, 0)) {
            for (String table : session.texts("SELECT name FROM sqlite_schema WHERE type = 'table'")) {
                there.put(
                        table,
                        new ArrayList<>(
                                session.texts("SELECT name FROM pragma_table_xinfo('" + table + "') ORDER BY name")));
            }
        }
        assertEquals(there, described);
        assertEquals(15, there.size());
    }

    @Test
    void everyWordIsDescribed() throws IOException {
        String page = String.join("\n", page());
        List<String> words = new ArrayList<>();
        for (Class<? extends Enum<?>> choices : List.of(
                UnitFacts.Nature.class,
                UnitFacts.Method.class,
                UnitFacts.Fate.class,
                UnitFacts.Reason.class,
                Person.Role.class)) {
            words.addAll(Words.all(choices));
        }
        for (Act act : Act.values()) {
            words.add(act.name());
        }
        for (String word : words) {
            assertTrue(page.contains("`" + word + "`"), word);
        }
    }

    @Test
    void theFileSaysWhatItIs() throws SQLException {
        try (Session session = Session.open(store.path(), Session.Way.READ_ONLY, 0)) {
            assertEquals(0x4f727431, session.number("PRAGMA application_id"));
            assertEquals(Schema.CURRENT.version(), session.number("PRAGMA user_version"));
            assertEquals(List.of("ok"), session.texts("PRAGMA integrity_check"));
        }
    }

    @Test
    void everyConnectionKeepsTheRulesOfTheHouse() throws SQLException {
        try (Session session = Session.open(store.path(), Session.Way.READ_WRITE, 1234)) {
            assertEquals("wal", session.text("PRAGMA journal_mode").orElseThrow());
            assertEquals(2, session.number("PRAGMA synchronous"));
            assertEquals(1, session.number("PRAGMA foreign_keys"));
            assertEquals(1, session.number("PRAGMA recursive_triggers"));
            assertEquals(1234, session.number("PRAGMA busy_timeout"));
        }
    }
}
