package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;

/** The choice of stock on the demo nursery: what the guide shows, and what no answer may hold. */
class SallowfieldChooseTests {
    private static final String DAY = " --as-of 2026-10-31";

    @TempDir
    static Path folder;

    private static GuidedDemo demo;

    @BeforeAll
    static void make() {
        demo = new GuidedDemo(folder);
    }

    private static Desk.Answer tried(String line) {
        try (Desk desk = Desk.open()) {
            return desk.script(line + " --book " + demo.book() + "\n");
        }
    }

    private static String answer(String line) {
        return demo.answer(line);
    }

    @Test
    void looksAsTheGuideShowsIt() throws IOException {
        demo.looksAsInTheGuide("choose --cultivar Deshojo --draws 50" + DAY);
    }

    @Test
    void holdsNoNumberThatIsNoneAndFitsTheScreen() {
        for (String line : List.of(
                "choose --cultivar Itoigawa --draws 10 --explain" + DAY,
                "choose --cultivar Catlin --draws 0 --format json" + DAY,
                "choose --cultivar 'Acer palmatum' --draws 0 --format csv --aim demand --as-of 2016-03-01")) {
            String out = answer(line);
            assertFalse(out.contains("NaN"), line);
            assertFalse(out.contains("Infinity"), line);
        }
        assertTrue(answer("choose --cultivar Itoigawa --draws 10 --explain" + DAY)
                .lines()
                .allMatch(one -> one.codePointCount(0, one.length()) <= 80));
    }

    @Test
    void callsNothingShortWhereNothingIsLimited() {
        String out = answer("choose --cultivar Katsura --draws 0" + DAY).replaceAll("\\s+", " ");
        assertTrue(out.contains("none is short"), out);
        assertFalse(out.contains("too few"), out);
        assertTrue(out.contains("leave long, cuttings as good: K-020"), out);
        assertFalse(answer("choose --cultivar Katsura --draws 0 --format json" + DAY)
                .contains("means-are-short"));
    }

    @Test
    void keepsWithinItsLimits() throws IOException {
        Path limits = folder.resolve("limits.csv");
        Files.writeString(limits, "what,where,year,amount\nhours,,,40\nhours,,2028,25\nroom,Tunnel,,4\n");
        String json = answer("choose --cultivar 'Acer palmatum' --draws 0 --format json --limits " + limits + DAY);
        Matcher use = Pattern.compile("\"used\" : ([-0-9.E]+),\\s+\"available\" : ([0-9.]+),")
                .matcher(json);
        int limited = 0;
        while (use.find()) {
            limited++;
            double available = Double.parseDouble(use.group(2));
            assertTrue(Double.parseDouble(use.group(1)) <= available * (1 + 1e-6) + 1e-6, use.group());
        }
        assertTrue(limited > 10, limited + " limits");
        assertTrue(
                Pattern.compile("\"year\" : 2028,\\s+\"season\" : \"\",\\s+\"used\" : [-0-9.E]+,\\s+\"available\" : 25")
                        .matcher(json)
                        .find());
    }

    @Test
    void barsAndNamesWhatIsHeld() {
        String out = answer("choose --draws 0 --as-of 2026-10-31 --cultivar 'Ulmus parvifolia'")
                .replaceAll("\\s+", " ");
        String csv = answer("list --held --format csv" + DAY);
        for (String line : csv.lines().skip(1).toList()) {
            String tag = line.substring(0, line.indexOf(','));
            if (line.contains("Ulmus parvifolia") && line.contains("stock")) {
                assertTrue(out.contains("held for plant health"), tag);
            }
        }
    }

    @Test
    void asksToLookTwiceWhereTheEvidenceIsThin() {
        String line = "choose --cultivar Arakawa --draws 50" + DAY;
        List<String> rows = answer(line + " --format csv").lines().skip(1).toList();
        long thin = rows.stream()
                .filter(row -> row.endsWith("few-judged") || row.endsWith("seldom-best"))
                .peek(row -> assertTrue(row.contains(",cut-back,") || row.contains("sell,"), row))
                .count();
        String table = answer(line).replaceAll("\\s+", " ");
        assertTrue(thin > 0, "nobody is sold or cut back on thin evidence");
        assertEquals(thin + 1, table.split("; look twice: ", -1).length, table);
        assertTrue(table.contains(" look twice: to be sold or cut back on thin evidence"), table);
    }

    @Test
    void neverSetsMoreLayersThanThereArePositions() {
        String csv = answer("choose --cultivar Itoigawa --draws 0 --format json" + DAY);
        Matcher mother = Pattern.compile(
                        "\"positions\" : (\\d+).*?\"plan\" : \\[\\s*\\{(.*?)\"sets\" : \\[(.*?)\\]", Pattern.DOTALL)
                .matcher(csv);
        int seen = 0;
        while (mother.find()) {
            seen++;
            int layers = 0;
            Matcher set = Pattern.compile("\"method\" : \"layer\".*?\"count\" : (\\d+)", Pattern.DOTALL)
                    .matcher(mother.group(3));
            while (set.find()) {
                layers += Integer.parseInt(set.group(1));
            }
            assertTrue(layers <= Integer.parseInt(mother.group(1)), mother.group());
        }
        assertTrue(seen > 5, seen + " mothers");
    }

    @Test
    void answersBadFilesWithOneClearLine() throws IOException {
        Path file = folder.resolve("bad.csv");
        Files.writeString(file, "what,amount\nrom,3\n");
        refused("choose --limits " + file, "bad.csv:2:what: \"rom\": expected hours, room");
        Files.writeString(file, "what,where,amount\nroom,Tunel,3\n");
        refused("choose --limits " + file, "no place \"Tunel\" is listed; nearest: Tunnel");
        Files.writeString(file, "what,where,amount\nhours,Lent,3\n");
        refused("choose --limits " + file, "\"Lent\" is no season; expected winter, spring, summer, autumn");
        Files.writeString(file, "cultivar,size,count\nDesojo,small,3\n");
        refused("choose --demand " + file, "no cultivar Desojo; nearest: Acer palmatum 'Deshojo'");
        Files.writeString(file, "cultivar,size,count,year\nDeshojo,small,3,soon\n");
        refused("choose --demand " + file, "bad.csv:2:year: expected a calendar year, found \"soon\"");
    }

    private static void refused(String line, String words) {
        Desk.Answer answer;
        try (Desk desk = Desk.open()) {
            answer = desk.type((line + DAY + " --book " + demo.book()).split(" "));
        }
        assertEquals(1, answer.status(), answer.out());
        assertTrue(answer.err().contains(words), answer.err());
        assertEquals(1, answer.err().strip().lines().count(), answer.err());
    }
}
