package ortet.neo4j;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import ortet.book.Act;
import ortet.book.BookStore;
import ortet.book.BookStoreContract;
import ortet.book.Books;
import ortet.book.Diary;
import ortet.book.Histories;
import ortet.book.Parameters;
import ortet.book.Progress;
import ortet.book.QueryName;
import ortet.book.QueryText;
import ortet.book.QueryText.Language;
import ortet.book.Rows;
import ortet.entry.EntryKind;
import ortet.plant.Person.Role;
import ortet.sqlite.SqliteBookStore;
import ortet.value.Refused;

/** Every question in both languages: the same header, and the same rows of the same book. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class QuestionPairsTests {
    private static final Path FOLDER = Path.of("..", "..", "queries");
    private static final int MOST_COMBINATIONS = 60;

    @TempDir
    static Path folder;

    private BookStore file;
    private BookStore server;
    private final Map<String, List<Object>> values = new TreeMap<>();

    @BeforeAll
    void writeABookIntoBoth() {
        file = SqliteBookStore.create(
                folder.resolve("book.ortet"), UUID.randomUUID(), TestServer.ZONE, TestServer.CLOCK);
        Diary diary = new Diary(file);
        diary.person(1, "Máire", Role.STAFF);
        diary.person(2, "Trees of the West", Role.CUSTOMER);
        diary.person(3, "Lough Nursery", Role.SUPPLIER);
        BookStoreContract.everyKind().forEach(diary::write);
        diary.write("2017-01-01 noted K-1; note=Sprüche %100 of \\E it_ \"quoted\" and 𝒳");
        diary.write("2019-01-01 acquired é-1 É-2 𝒳-1 豆-1");
        for (int seed = 1; seed <= 4; seed++) {
            int of = seed;
            Histories.write(
                    seed, 120, line -> isTaken(diary, line.replaceAll("\\b([JCDGMTRS]|GB)-(\\d)", "$1" + of + "-$2")));
        }
        server = TestServer.create();
        server.restore(Books.whole(file), diary.judge(), Progress.NONE);
        whatToAskFor();
    }

    @AfterAll
    void close() {
        file.close();
        server.close();
    }

    private static boolean isTaken(Diary diary, String line) {
        try {
            return !diary.write(line).written().isEmpty();
        } catch (Refused refused) {
            return false;
        }
    }

    private void whatToAskFor() {
        List<Object> units = new ArrayList<>();
        List<Object> orders = new ArrayList<>(List.of(0L));
        List<Object> ids = new ArrayList<>();
        file.read(view -> {
            LongStream.rangeClosed(1, view.head().lastUnit() + 1L).forEach(units::add);
            LongStream.rangeClosed(1, view.head().order())
                    .filter(order -> order % 7 == 0 || order > view.head().order() - 30)
                    .forEach(order -> {
                        orders.add(order);
                        ids.add(view.entry(order).orElseThrow().proposed().id().toString());
                    });
            return 0;
        });
        List<Object> nothing = new ArrayList<>();
        nothing.add(null);
        values.put("unit", units);
        values.put("recorded_order", orders);
        values.put("id", ids);
        values.put("most", List.of(100_000L));
        values.put(
                "as_of", List.of("2015-03-01", "2016-02-29", "2017-06-15", "2018-09-11", "2019-12-31", "2026-06-15"));
        values.put("tag", List.of("K-1", "k-1", "J-1", "C-100", "𝒳-1", "nobody"));
        values.put("folded", List.of("", "k-1", "j-", "j", "t1-", "é-", "éé", "máire", "𝒳-", "豆-1"));
        values.put("pattern", List.of("%", "%k%", "K-_", "%\\E%", "%é%", "%\"%", "%spr%", "%100 of%", "%_%%", "%𝒳%"));
        values.put(
                "kind",
                new ArrayList<>(
                        Arrays.stream(EntryKind.values()).map(EntryKind::word).toList()));
        values.put("number", List.of(1L, 2L, 99L));
        values.put("from", List.of("2026-01-01T00:00:00.000Z", "2026-06-15T12:00:00.000Z"));
        values.put("until", List.of("2026-06-15T12:00:00.000Z", "2026-06-16T00:00:00.000Z"));
        values.put("place", List.of("Yard", "House 1", "House 2", "nowhere"));
        List<Object> places = new ArrayList<>(nothing);
        places.add("\nYard\nHouse 1\n");
        values.put("places", places);
        values.put("natures", List.of("\nplant\nlayer\nbatch\nsport\n", "\nplant\n"));
        values.put("gone", List.of(0L, 1L));
        values.put("units", List.of("", "1", "3,1,2", String.join(",", texts(units))));
        values.put("instant", List.of("2026-06-15T11:59:59.999Z", "2026-06-15T12:00:00.000Z"));
    }

    private static List<String> texts(List<Object> values) {
        return values.stream().map(Object::toString).toList();
    }

    static List<String> names() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(path -> path.getFileName().toString())
                    .filter(name -> name.endsWith(".sql"))
                    .map(name -> name.substring(0, name.length() - 4))
                    .sorted()
                    .toList();
        } catch (IOException trouble) {
            throw new UncheckedIOException(trouble);
        }
    }

    @Test
    void thereAreQuestions() {
        assertTrue(names().size() >= 40, names().size() + " questions");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void hasOneHeaderInBothLanguages(String name) throws IOException {
        QueryText sql =
                QueryText.load(new QueryName(name), Language.SQL, getClass().getClassLoader());
        QueryText cypher =
                QueryText.load(new QueryName(name), Language.CYPHER, getClass().getClassLoader());
        assertEquals(sql.what(), cypher.what());
        assertEquals(sql.in(), cypher.in());
        assertEquals(sql.out(), cypher.out());
        assertEquals(
                sql.sort().split(" natures| A pattern| The cohorts")[0],
                cypher.sort().split(" natures| A pattern| The cohorts")[0]);
        List<String> lines = Files.readAllLines(FOLDER.resolve(name + ".cypher"));
        assertTrue(lines.stream().allMatch(line -> line.length() <= 120), "lines longer than 120");
        if (cypher.text().contains("|POLLEN_OF")) {
            for (Act act : Act.values()) {
                assertTrue(cypher.text().contains(act.name()), "does not follow " + act);
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void hasTheSameRowsInBothLanguages(String name) {
        QueryName question = new QueryName(name);
        QueryText sql = QueryText.load(question, Language.SQL, getClass().getClassLoader());
        List<String> in = sql.in();
        boolean sorted = !sql.sort().startsWith("none");
        List<Parameters> all = combinations(in);
        long rows = 0;
        for (Parameters parameters : all) {
            Rows expected = file.read(view -> view.ask(question, parameters));
            Rows found = server.read(view -> view.ask(question, parameters));
            String what = name + " " + parameters.values();
            assertEquals(expected.columns(), found.columns(), what);
            assertEquals(text(expected, sorted), text(found, sorted), what);
            rows += expected.size();
        }
        assertTrue(rows > 0, name + " was never answered with a row");
    }

    /** Return rows as lines, in their order where they have one. */
    private static String text(Rows rows, boolean sorted) {
        Stream<String> lines = rows.values().stream().map(List::toString);
        return (sorted ? lines : lines.sorted()).collect(Collectors.joining("\n"));
    }

    private List<Parameters> combinations(List<String> names) {
        List<Parameters> all = new ArrayList<>(List.of(Parameters.NONE));
        for (String name : names) {
            List<Object> choices = Optional.ofNullable(values.get(name))
                    .orElseThrow(() -> new AssertionError("no values for " + name));
            List<Parameters> more = new ArrayList<>();
            for (Parameters so : all) {
                for (Object value : choices) {
                    more.add(
                            value == null
                                    ? so.without(name)
                                    : value instanceof Long number
                                            ? so.with(name, number)
                                            : so.with(name, (String) value));
                }
            }
            all = more;
        }
        List<Parameters> some = new ArrayList<>();
        int step = Math.max(1, all.size() / MOST_COMBINATIONS);
        for (int at = 0; at < all.size(); at += step) {
            some.add(all.get(at));
        }
        return some;
    }
}
