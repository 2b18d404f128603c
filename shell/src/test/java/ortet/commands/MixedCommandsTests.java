package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.Desk;

/**
 * Files: {@code crowder-seeds.csv} (Crowder 1978, Applied Statistics 27:34, Table 3), {@code ridout-1998-apple-shoots.csv}
 * (Ridout, Hinde & Demétrio 1998), {@code nursery-mothers.csv} (invented).
 */
class MixedCommandsTests {
    private static final List<String> FILES =
            List.of("crowder-seeds.csv", "ridout-1998-apple-shoots.csv", "nursery-mothers.csv");
    private static Desk desk;

    @TempDir
    Path folder;

    @BeforeAll
    static void open() {
        desk = Desk.open();
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    @BeforeEach
    void layOut() throws IOException {
        for (String name : FILES) {
            try (InputStream in = MixedCommandsTests.class.getResourceAsStream("/oracles/" + name)) {
                Files.copy(Objects.requireNonNull(in, name), folder.resolve(name));
            }
        }
    }

    private Desk.Answer run(String line) {
        String inFolder = line.replaceAll("(?<= )(\\S+\\.csv)", Matcher.quoteReplacement(folder + "/") + "$1");
        return desk.type(inFolder.split(" "));
    }

    private String done(String line) {
        Desk.Answer answer = run(line);
        assertEquals(0, answer.status(), answer.err());
        return answer.out();
    }

    @Test
    void theExamplesInTheDocumentsAreWhatIsPrinted() throws IOException {
        String page = Files.readString(Path.of("../docs/methods/mixed.md"));
        Matcher block = Pattern.compile("```\n\\$ (ortet figures mixed [^\n]*)\n(.*?)```", Pattern.DOTALL)
                .matcher(page);
        int found = 0;
        while (block.find()) {
            assertEquals(
                    block.group(2),
                    done(block.group(1).substring("ortet ".length())).replace(folder + "/", ""));
            found++;
        }
        assertEquals(2, found);
    }

    @Test
    void tellsEverythingToPrograms() throws IOException {
        String json =
                done("figures mixed nursery-mothers.csv --successes r --trials n --random cultivar,mother --nested"
                        + " --best 5 --format json");
        String described = Files.readString(Path.of("../docs/json.md"));
        for (String field : List.of(
                "part",
                "grouping",
                "name",
                "successes",
                "trials",
                "estimate",
                "standard_error",
                "rate",
                "lower",
                "upper",
                "best_probability",
                "best_standard_error")) {
            assertTrue(json.contains("\"" + field + "\" :"), field);
            assertTrue(described.contains("`" + field + "`"), field);
        }
        String csv = done("figures mixed nursery-mothers.csv --successes r --trials n --random mother --fixed cultivar"
                + " --format csv");
        assertTrue(csv.contains("cultivar Linnet"), csv);
        // oracles/glmm.csv: the standard deviation of mothers with cultivar as a fixed effect, by lme4
        Matcher deviation =
                Pattern.compile("deviation,mother,mother,,,([0-9.]+),").matcher(csv);
        assertTrue(deviation.find(), csv);
        assertEquals(0.738667475692678, Double.parseDouble(deviation.group(1)), 1e-4);
    }

    @Test
    void explainsItself() {
        String out =
                done("figures mixed crowder-seeds.csv --successes r --trials n --random plate --quadrature 9 --explain")
                        .replaceAll("\\s+", " ");
        assertTrue(out.contains("21 rows, 424 of 831."), out);
        assertTrue(out.contains("adaptive Gauss-Hermite quadrature with 9 nodes"), out);
        assertTrue(out.contains("Source: Breslow & Clayton 1993"), out);
    }

    @Test
    void takesNumbersForNamesWhereAsked() {
        String out = done("figures mixed crowder-seeds.csv --successes r --trials n --random plate --fixed seed,extract"
                + " --factor seed --format csv");
        assertTrue(out.contains("seed 1"), out);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "figures mixed none.csv --successes r --trials n --random plate | 1 | no file ",
                "figures mixed crowder-seeds.csv --successes x --trials n --random plate | 1 | crowder-seeds.csv:1: no column x for --successes; expected one of",
                "figures mixed crowder-seeds.csv --successes r --trials n --random plat | 1 | nearest: plate",
                "figures mixed crowder-seeds.csv --successes n --trials r --random plate"
                        + " | 1 | crowder-seeds.csv:2:n: more successes than trials: 39 of 10",
                "figures mixed crowder-seeds.csv --successes plate --trials n --random plate"
                        + " | 1 | expected a whole number of at least 0, found \"P01\"",
                "figures mixed crowder-seeds.csv --successes r --trials n --random plate,seed --quadrature 9"
                        + " | 2 | --quadrature of figures mixed goes with one --random column",
                "figures mixed crowder-seeds.csv --successes r --trials n --random plate --quadrature 0"
                        + " | 2 | expected 1 to 50",
                "figures mixed crowder-seeds.csv --successes r --trials n --random plate --confidence 100"
                        + " | 2 | --confidence of figures mixed: expected percent from 1 to below 100",
                "figures mixed crowder-seeds.csv --successes r --trials n | 2 | --random"
            })
    void answersBadInputWithOneClearLine(String line, int status, String words) {
        Desk.Answer answer = run(line);
        assertEquals(status, answer.status(), answer.err());
        assertTrue(answer.err().contains(words), answer.err());
        assertEquals("", answer.out());
        assertFalse(answer.err().contains("\tat "), answer.err());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | bad.csv:1: expected a row with the names of the columns, found nothing",
                "'r,n,plate\n1,2,a,b' | bad.csv:2: expected 3 cells, found 4",
                "'r,n,plate\n1,2' | bad.csv:2:plate: an empty cell; expected the name of a group",
                "'r,n,n\n1,2,3' | bad.csv:1: two columns are called n",
                "'r,n,plate\n1,2,' | bad.csv:2:plate: an empty cell; expected the name of a group",
                "'r,n,plate\n-1,2,a' | bad.csv:2:r: expected a whole number of at least 0, found \"-1\"",
                "'r,n,plate\n1.5,2,a' | bad.csv:2:r: expected a whole number of at least 0, found \"1.5\""
            })
    void answersABadFileWithOneClearLine(String text, String words) throws IOException {
        Files.writeString(folder.resolve("bad.csv"), text);
        Desk.Answer answer = run("figures mixed bad.csv --successes r --trials n --random plate");
        assertEquals(1, answer.status());
        assertTrue(answer.err().contains(words), answer.err());
        assertEquals(1, answer.err().strip().lines().count(), answer.err());
    }

    @Test
    void refusesWhatIsNoTextInUtf8() throws IOException {
        Files.write(folder.resolve("bad.csv"), "r,n,plate\n1,2,\u00e9\n".getBytes(StandardCharsets.ISO_8859_1));
        Desk.Answer answer = run("figures mixed bad.csv --successes r --trials n --random plate");
        assertEquals(1, answer.status());
        assertTrue(answer.err().contains("expected text in UTF-8"), answer.err());
    }

    @Test
    void saysWhenThereIsNothingToFit() throws IOException {
        Files.writeString(folder.resolve("none.csv"), "r,n,plate\n0,0,a\n");
        Desk.Answer answer = run("figures mixed none.csv --successes r --trials n --random plate");
        assertEquals(0, answer.status(), answer.err());
        assertTrue(answer.out().contains("no trials: nothing can be estimated"), answer.out() + answer.err());
        assertFalse(answer.out().contains("NaN"), answer.out());
    }

    @Test
    void refusesATableWithoutRows() throws IOException {
        Files.writeString(folder.resolve("none.csv"), "r,n,plate\n");
        Desk.Answer answer = run("figures mixed none.csv --successes r --trials n --random plate");
        assertEquals(1, answer.status(), answer.err());
        assertTrue(answer.err().contains("none.csv:1: expected rows below the names of the columns"), answer.err());
    }
}
