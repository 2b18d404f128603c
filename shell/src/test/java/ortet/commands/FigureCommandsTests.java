package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;

/**
 * Figures out of a file: what people read, what programs get, and what is said of a bad file. The plum root cuttings are
 * Bartlett's (1935, J. R. Stat. Soc. Suppl. 2:248); the figures themselves are checked where they are reckoned.
 */
class FigureCommandsTests {
    private static final Path PAGES = Path.of("..", "docs", "methods");
    private static final Pattern FILE = Pattern.compile("```csv (\\S+)\n(.*?)```", Pattern.DOTALL);
    private static final Pattern EXAMPLE = Pattern.compile("```\n\\$ ortet (.*?)\n(.*?)```", Pattern.DOTALL);

    @TempDir
    static Path folder;

    private static Desk desk;

    @BeforeAll
    static void open() {
        desk = Desk.open();
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    private static Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static final String PLUM = """
            length,time,alive,dead
            long,now,156,84
            long,spring,84,156
            short,now,107,133
            short,spring,31,209
            """;

    /** Type a line in which files of the folder are named without it. */
    private static Desk.Answer type(String line) {
        List<String> words = new ArrayList<>();
        for (String word : line.split(" ")) {
            words.add(word.matches("\\S+\\.csv") ? folder.resolve(word).toString() : word);
        }
        return desk.type(words.toArray(new String[0]));
    }

    private static String done(String line) {
        Desk.Answer answer = type(line);
        assertEquals("", answer.err());
        assertEquals(0, answer.status());
        return answer.out().replace(folder + "/", "");
    }

    /** Ask for what a program reads; notes go beside it. */
    private static String forPrograms(String line) {
        Desk.Answer answer = type(line);
        assertEquals(0, answer.status(), answer.err());
        return answer.out();
    }

    private static String refused(String line) {
        Desk.Answer answer = type(line);
        assertEquals("", answer.out());
        assertEquals(1, answer.status());
        return answer.err().replace(folder + "/", "");
    }

    private static String wrong(String line) {
        Desk.Answer answer = type(line);
        assertEquals("", answer.out());
        assertEquals(2, answer.status());
        return answer.err();
    }

    /** Lines are broken where the file's folder makes them longer, so blanks count alike. */
    private static String flowing(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }

    @Test
    void answersAsThePagesShow() throws IOException {
        int found = 0;
        List<String> pages = new ArrayList<>();
        for (String page : List.of("two-rates.md", "strata.md", "clusters.md", "time.md")) {
            String text = Files.readString(PAGES.resolve(page));
            pages.add(text);
            Matcher file = FILE.matcher(text);
            while (file.find()) {
                file(file.group(1), file.group(2));
            }
        }
        for (String page : pages) {
            Matcher example = EXAMPLE.matcher(page);
            while (example.find()) {
                assertEquals(flowing(example.group(2)), flowing(done(example.group(1))), example.group(1));
                found++;
            }
        }
        assertEquals(4, found);
    }

    @Test
    void comparesBartlettsPlumCuttingsForPrograms() throws IOException {
        file("plum.csv", PLUM);
        String csv =
                forPrograms("figures compare plum.csv --successes alive --failures dead --group time --stratum length"
                        + " --against spring --format csv");
        List<String> rows = csv.lines().toList();
        assertEquals(
                "figure,of,happened,trials,clusters,value,value_is,lower,upper,statistic,degrees,p,method",
                rows.get(0));
        assertTrue(rows.get(1).startsWith("rate,spring,115,480,,0.2395833"), rows.get(1));
        // the odds ratio of Mantel and Haenszel and its interval, from oracles/stratified.csv
        String odds = rows.stream()
                .filter(row -> row.startsWith("odds ratio within strata"))
                .findAny()
                .orElseThrow();
        assertTrue(
                odds.contains(",4.177386170") && odds.contains(",3.131999583") && odds.contains(",5.571697809"), odds);
        String json =
                forPrograms("figures compare plum.csv --successes alive --failures dead --group time --format json");
        assertTrue(json.contains("\"value_is\" : \"number\""), json);
    }

    @Test
    void takesTrialsOrFailuresOrBothIfTheyAgree() throws IOException {
        file("both.csv", "group;took;failed;set\nA;3;1;4\nB;2;2;4\n");
        String trials =
                forPrograms("figures compare both.csv --successes took --trials set --group group --format csv");
        String failures =
                forPrograms("figures compare both.csv --successes took --failures failed --group group --format csv");
        String both = forPrograms(
                "figures compare both.csv --successes took --failures failed --trials set --group group --format csv");
        assertEquals(trials, failures);
        assertEquals(trials, both);
        file("odd.csv", "group,took,failed,set\nA,3,2,4\nB,5,0,4\n");
        assertEquals(
                """
                ortet: odd.csv:2:failed: expected 1, which is set less took, found 2
                ortet: odd.csv:3:took: expected at most the 4 of set, found 5
                """, refused("figures compare odd.csv --successes took --failures failed --trials set --group group"));
    }

    @Test
    void tellsWhatIsInfiniteOrNotDefinedAsSuch() throws IOException {
        file("edge.csv", "group,took,failed\nA,0,4\nB,5,0\nC,0,3\n");
        String told = done("figures compare edge.csv --successes took --failures failed --group group");
        assertTrue(told.contains("infinite (") && told.contains("or more)"), told);
        assertTrue(flowing(told).contains("odds ratio – 1.000"), told);
        String csv =
                forPrograms("figures compare edge.csv --successes took --failures failed --group group --format csv");
        assertTrue(csv.contains(",infinite,") && csv.contains(",not-defined,"), csv);
        assertTrue(!csv.contains("NaN") && !csv.contains("Infinity"), csv);
    }

    @Test
    void givesNoVerdictFromOneTrayASide() throws IOException {
        file("tray.csv", "method,tray,took,set\nlayer,,3,4\nlayer,L2,4,4\ncutting,T1,50,60\n");
        assertEquals(
                "ortet: tray.csv:2:tray: expected some text, found nothing\n",
                refused("figures compare tray.csv --successes took --trials set --group method --cluster tray"));
        file("tray.csv", "method,tray,took,set\nlayer,L1,3,4\nlayer,L2,4,4\ncutting,T1,50,60\n");
        String told =
                flowing(done("figures compare tray.csv --successes took --trials set --group method --cluster tray"));
        assertTrue(told.contains("warning: no verdict on cutting against layer: it takes two clusters or more"), told);
        assertTrue(told.contains("cutting: 1 cluster, so nobody can tell how much clusters differ"), told);
    }

    @Test
    void namesStrataThatSayNothing() throws IOException {
        file("years.csv", """
                year,method,took,failed
                2020,layer,5,2
                2020,cutting,4,6
                2021,layer,3,0
                2021,cutting,2,0
                2022,layer,3,1
                """);
        String told = flowing(
                done("figures compare years.csv --successes took --failures failed --group method --stratum year"));
        assertTrue(
                told.contains("2 strata say nothing of the odds ratio of cutting against layer: 2021 (all succeeded),"
                        + " 2022 (one group only)"),
                told);
    }

    @Test
    void tellsOfTimesWithCausesAndWithoutEvents() throws IOException {
        file("layers.csv", """
                day,outcome,wound
                30,rooted,ring
                40,died,ring
                50,,ring
                60,rooted,tourniquet
                70,rooted,tourniquet
                """);
        String caused =
                done("figures survival layers.csv --time day --event outcome --cause rooted --group wound --at 45");
        assertTrue(flowing(caused).contains("rooted by 45 ring 1 still followed 33.3 %"), caused);
        assertEquals(
                "ortet: layers.csv: no roted under outcome; expected one of died, rooted; nearest: rooted\n",
                refused("figures survival layers.csv --time day --event outcome --cause roted"));
        assertEquals(
                "ortet: layers.csv: expected 1 or 0, yes or no under outcome, found \"died\", \"rooted\"; where several"
                        + " things may happen, name one with --cause\n",
                refused("figures survival layers.csv --time day --event outcome"));
        // without a column for it, it happened to all: the median of 30, 40, 50, 60, 70 is 50
        assertTrue(flowing(done("figures survival layers.csv --time day")).contains("median all 5 of 5 50 ("));
        file("censored.csv", "day,rooted\n30,0\n40,no\n");
        String none = flowing(done("figures survival censored.csv --time day --event rooted"));
        assertTrue(none.contains("median all 0 of 2 –"), none);
        assertTrue(none.contains("no Weibull law fitted: it has not happened to anybody yet"), none);
    }

    @Test
    void saysOfABadFileWhatIsWrongAndWhere() throws IOException {
        file("plum.csv", PLUM);
        assertEquals(
                "ortet: plum.csv:1: no column aliv for --successes; expected one of length, time, alive, dead; nearest: alive\n",
                refused("figures compare plum.csv --successes aliv --failures dead --group time"));
        assertEquals(
                "ortet: no file plums.csv; nearest: plum.csv\n",
                refused("figures compare plums.csv --successes alive --failures dead --group time"));
        assertEquals(
                "ortet: no group sprin for --against; nearest: spring\n",
                refused("figures compare plum.csv --successes alive --failures dead --group time --against sprin"));
        file("word.csv", "group,took,failed\nA,three,1\nB,-2,2\nC,2.5,1\n");
        assertEquals("""
                ortet: word.csv:2:took: expected a whole number of at least 0, found "three"
                ortet: word.csv:3:took: expected a whole number of at least 0, found "-2"
                ortet: word.csv:4:took: expected a whole number of at least 0, found "2.5"
                """, refused("figures compare word.csv --successes took --failures failed --group group"));
        file("empty.csv", "");
        assertEquals(
                "ortet: empty.csv:1: expected a row with the names of the columns, found nothing\n",
                refused("figures survival empty.csv --time day"));
        file("header.csv", "day,event\n");
        assertEquals(
                "ortet: header.csv:1: expected rows below the names of the columns, found none\n",
                refused("figures survival header.csv --time day"));
        file("twice.csv", "day,day\n1,2\n");
        assertEquals(
                "ortet: twice.csv:1: two columns are called day\n", refused("figures survival twice.csv --time day"));
        file("wide.csv", "day,event\n1,1,1\n");
        assertEquals("ortet: wide.csv:2: expected 2 cells, found 3\n", refused("figures survival wide.csv --time day"));
        Files.write(folder.resolve("latin.csv"), "day,größe\n1,2\n".getBytes(StandardCharsets.ISO_8859_1));
        assertTrue(refused("figures survival latin.csv --time day")
                .startsWith("ortet: latin.csv:1: expected text in UTF-8"));
        file("back.csv", "left,right\n5,3\n0,0\n,7\n");
        assertEquals("""
                ortet: back.csv:2:right: expected nothing, or a time that is not before 5 of left, found 3
                ortet: back.csv:3:right: expected a time above 0, found 0
                """, refused("figures survival back.csv --left left --right right"));
        file("quote.csv", "day,event\n1,1\n2,\"1\"x\n");
        assertEquals(
                "ortet: quote.csv:3: expected cells as in CSV; look at the quotation marks\n",
                refused("figures survival quote.csv --time day"));
        StringBuilder many = new StringBuilder("day\n");
        for (int i = 0; i < 30; i++) {
            many.append("x\n");
        }
        file("many.csv", many.toString());
        assertTrue(refused("figures survival many.csv --time day").endsWith("ortet: and 10 more faults\n"));
    }

    @Test
    void saysWhatIsWrongWithALine() throws IOException {
        file("plum.csv", PLUM);
        assertEquals(
                "ortet: figures compare needs --trials COLUMN or --failures COLUMN\n",
                wrong("figures compare plum.csv --successes alive --group time"));
        assertEquals(
                "ortet: figures survival needs --time COLUMN, or --left COLUMN and --right COLUMN\n",
                wrong("figures survival plum.csv --left alive"));
        assertEquals(
                "ortet: figures survival needs --time COLUMN, or --left COLUMN and --right COLUMN\n",
                wrong("figures survival plum.csv --left alive --right dead --time time"));
        assertEquals(
                "ortet: --cause of figures survival: only with --event\n",
                wrong("figures survival plum.csv --time alive --cause rooted"));
        assertEquals(
                "ortet: --event and --cause of figures survival: only with --time\n",
                wrong("figures survival plum.csv --left alive --right dead --event time"));
        assertEquals(
                "ortet: --confidence of figures compare: expected percent from 1 to below 100, such as 95, found \"100\"\n",
                wrong("figures compare plum.csv --successes alive --failures dead --group time --confidence 100"));
    }
}
