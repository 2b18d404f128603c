package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.plant.Person.Role;
import ortet.value.Defect;
import ortet.value.Refused;

/** Questions: their files, their headers, their parameters. */
class QuestionTests {
    private static final Path FOLDER = Path.of("..", "..", "queries");

    private final Shelf shelf = new Shelf();
    private final SqliteBookStore store = shelf.create();

    @AfterEach
    void clear() {
        shelf.close();
    }

    private Rows ask(String name, Parameters parameters) {
        return store.read(view -> view.ask(new QueryName(name), parameters));
    }

    private List<String> refusal(String name, Parameters parameters) {
        return assertThrows(Refused.class, () -> ask(name, parameters)).lines();
    }

    private static String wrong(String sql) {
        return assertThrows(Defect.class, () -> Question.of(new QueryName("some"), sql))
                .getMessage();
    }

    private static List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(".sql"))
                    .map(file -> file.substring(0, file.length() - 4))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everyFileIsAQuestionThatCanBePut() throws IOException {
        Diary diary = new Diary(store);
        diary.person(1, "Máire", Role.STAFF);
        diary.write("2015-03-01 acquired K-1; by=#1", "2016-05-01 layer-set J-1; mother=K-1");
        int put = 0;
        for (String name : names()) {
            Question question = Question.named(name);
            Parameters parameters = Parameters.NONE;
            for (String parameter : question.in()) {
                parameters = switch (parameter) {
                    case "as_of" -> parameters.with(parameter, "2020-01-01");
                    case "tag", "folded" -> parameters.with(parameter, "K-1");
                    case "id" -> parameters.with(parameter, "0f0e0d0c-0000-4000-8000-000000000001");
                    default -> parameters.with(parameter, 1);
                };
            }
            Rows rows = ask(name, parameters);
            assertEquals(question.out(), rows.columns(), name);
            assertTrue(Character.isLowerCase(question.what().charAt(0)), name);
            put++;
        }
        assertTrue(put >= 29, put + " questions");
    }

    @Test
    void everyFileHasShortLines() throws IOException {
        for (String name : names()) {
            List<String> lines = Files.readAllLines(FOLDER.resolve(name + ".sql"));
            assertTrue(lines.stream().allMatch(line -> line.length() <= 120), name);
            assertTrue(lines.get(0).startsWith("-- " + name + ": "), name);
        }
    }

    @Test
    void answersWithTextsAndNumbers() {
        Diary diary = new Diary(store);
        diary.write("a: 2015-03 acquired K-1");
        Rows rows = ask("entry-by-order", Parameters.NONE.with("recorded_order", 1));
        assertEquals(1, rows.size());
        Rows.Row row = rows.iterator().next();
        assertEquals(Optional.of(diary.id("a").toString()), row.text("id"));
        assertEquals(Optional.of("acquired"), row.text("kind"));
        assertEquals(Optional.of("2015-03"), row.text("day"));
        assertEquals(Optional.empty(), row.whole("by_person"));
        assertEquals(Optional.of(1L), row.whole("recorded_order"));
        assertEquals(
                64,
                ask("head", Parameters.NONE)
                        .iterator()
                        .next()
                        .text("digest")
                        .orElseThrow()
                        .length());
        assertEquals(
                1,
                ask("entry-by-id", Parameters.NONE.with("id", diary.id("a").toString()))
                        .size());
    }

    @Test
    void refusesAQuestionThatThereIsNot() {
        assertEquals(
                List.of("no question how-many; looked for queries/how-many.sql"), refusal("how-many", Parameters.NONE));
    }

    @Test
    void refusesParametersThatAreNotTheOnesDeclared() {
        assertEquals(
                List.of("unit-by-tag: parameter tag is missing; expected tag"),
                refusal("unit-by-tag", Parameters.NONE));
        assertEquals(
                List.of(
                        "unit-by-tag: parameter tag is missing; expected tag",
                        "unit-by-tag: no parameter tags; expected tag; nearest: tag"),
                refusal("unit-by-tag", Parameters.NONE.with("tags", "K-1")));
        assertEquals(
                List.of("head: no parameter tag; expected none"), refusal("head", Parameters.NONE.with("tag", "K-1")));
    }

    @Test
    void bindsWhatIsAskedAndNeverReadsItAsSql() {
        assertEquals(
                0,
                ask("unit-by-tag", Parameters.NONE.with("tag", "x' OR '1'='1")).size());
        assertEquals(0, ask("unit-by-tag", Parameters.NONE.without("tag")).size());
    }

    @Test
    void findsParametersOutsideCommentsAndTexts() {
        assertEquals(Map.of("tag", 1, "as_of", 2, "Länge", 3), Question.parameters("""
                        -- a :comment, 'with a quote
                        SELECT ':text', "a:column", `b:c`, [d:e], 'it''s :not' /* nor :this
                        -- nor :that */ FROM t WHERE a = :tag AND b <= :as_of -- :x
                        AND c = :tag AND d = :Länge"""));
        assertEquals(Map.of(), Question.parameters("SELECT 1 -- :at the end"));
        assertEquals(Map.of(), Question.parameters("SELECT 'never closed :here"));
    }

    @Test
    void readsAHeaderOfSeveralLines() {
        Question question = Question.of(new QueryName("some"), """
                -- some: what it tells,
                --       and more
                -- in: a, b
                -- out: c,
                --      d
                -- sort: c
                -- A remark.

                SELECT :a AS c, :b AS d
                -- sort: not the header
                """);
        assertEquals("what it tells, and more", question.what());
        assertEquals(List.of("a", "b"), question.in());
        assertEquals(List.of("c", "d"), question.out());
        assertEquals("c A remark.", question.sort());
    }

    @Test
    void objectsToAHeaderThatDoesNotFitTheSql() {
        assertEquals(
                "queries/some.sql has no header line \"-- some: …\"",
                wrong("-- other: x\n-- in: none\n-- out: a\n-- sort: a\nSELECT 1 AS a"));
        assertEquals(
                "queries/some.sql has no header line \"-- out: …\"",
                wrong("-- some: x\n-- in: none\n-- sort: a\nSELECT 1 AS a"));
        assertEquals(
                "queries/some.sql has no header line \"-- in: …\"",
                wrong("-- some: x\n-- in:\n-- out: a\n-- sort: a\nSELECT 1 AS a"));
        assertEquals(
                "queries/some.sql declares the parameters [b] but uses [a]",
                wrong("-- some: x\n-- in: b\n-- out: a\n-- sort: a\nSELECT :a AS a"));
        assertEquals(
                "queries/some.sql declares the parameters [a, a] but uses [a]",
                wrong("-- some: x\n-- in: a, a\n-- out: a\n-- sort: a\nSELECT :a AS a"));
    }

    @Test
    void objectsToColumnsOtherThanDeclared() throws Exception {
        Question question = Question.of(
                new QueryName("some"), "-- some: x\n-- in: none\n-- out: a, b\n-- sort: a\nSELECT 1 AS a, 2 AS c");
        try (Session session = Session.open(store.path(), Session.Way.READ_ONLY, 0)) {
            Defect wrong = assertThrows(Defect.class, () -> session.prepare(question));
            assertEquals(
                    "queries/some.sql declares the columns " + Arrays.asList("a", "b") + " but returns [a, c]",
                    wrong.getMessage());
        }
    }
}
