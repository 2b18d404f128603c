package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;

/** The choice of stock on books that are small enough to be read by eye. */
class ChoiceCommandsTests {
    @TempDir
    Path folder;

    private BookDesk desk;

    @BeforeEach
    void open() {
        desk = new BookDesk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    /** Three seasons on two mothers of one cultivar, all known, sold small after a year; a third mother nobody tried. */
    private void raise() {
        for (String mother : new String[] {"K-1", "K-2", "K-3"}) {
            desk.done("acquire " + mother + " --cultivar 'Acer palmatum' --on 2015-03-01");
            desk.done("keep " + mother + " --on 2016-03-01");
        }
        int tag = 1;
        for (int year = 2021; year <= 2023; year++) {
            for (String mother : new String[] {"K-1", "K-2"}) {
                String set = "J-" + tag + "..J-" + (tag + 3);
                desk.done("layer set " + set + " --mother " + mother + " --stem 12 --on " + year + "-05-10");
                desk.done("layer sever J-" + tag + "..J-" + (tag + 2) + " --roots full --on " + year + "-09-01");
                desk.done("layer fail J-" + (tag + 3) + " --on " + year + "-09-01");
                desk.done("pot J-" + tag + "..J-" + (tag + 2) + " --into '3 L' --on " + year + "-09-02");
                desk.done("grade J-" + tag + "..J-" + (tag + 2) + " --size small --on " + (year + 1) + "-09-01");
                desk.done("sell J-" + tag + "..J-" + (tag + 2) + " --on " + (year + 1) + "-10-01");
                tag += 4;
            }
        }
        desk.done("price set small 30EUR --on 2020-01-01");
        desk.done("cost hour 20EUR --on 2020-01-01");
        for (String mother : new String[] {"K-1", "K-2", "K-3"}) {
            desk.done("measure " + mother + " --stem 40 --positions 8-16:6 --on 2026-03-01");
        }
    }

    /** Return the rows of a sheet, whose notes stand beside it. */
    private String rows(String line) {
        Desk.Answer answer = desk.type(line);
        assertEquals(0, answer.status(), answer.err());
        return answer.out();
    }

    private String flat(String line) {
        return desk.done(line).replaceAll("\\s+", " ");
    }

    @Test
    void saysInAPlainSentenceThatThereIsNothingToChooseAmong() {
        String out = desk.done("choose").replaceAll("\\s+", " ");
        assertTrue(out.startsWith("Nothing to choose among yet: no plant is kept as stock"), out);
        assertTrue(desk.done("choose --format json").contains("\"nothing\" : \"Nothing to choose among"));
    }

    @Test
    void saysThatNothingIsKnownYet() {
        desk.done("acquire K-1 --cultivar 'Acer palmatum' --on 2015-03-01");
        desk.done("layer set J-1 --mother K-1 --on 2026-05-10");
        String out = flat("choose --aim demand");
        assertTrue(out.startsWith("Nothing can be reckoned yet: of no layer and no cutting"), out);
    }

    @Test
    void asksToLookTwiceAtAMotherSoldOnTheWordOfAYoungBook() {
        raise();
        desk.done("price set specimen 9000EUR --on 2020-01-01");
        desk.done("grade K-1 --size specimen --on 2024-03-01");
        desk.done("grade K-3 --size specimen --on 2024-03-01");
        String out = desk.done("choose --draws 20");
        assertTrue(out.lines().allMatch(line -> line.codePointCount(0, line.length()) <= 80), out);
        String flat = out.replaceAll("\\s+", " ");
        // of K-1 twelve are judged: that is enough, but for a book of three seasons
        assertTrue(flat.contains(" 2 mothers, then sell: ") && flat.contains("; look twice at 1 of them"), out);
        assertTrue(flat.contains("look twice: no layer of hers judged yet"), out);
        assertEquals(2, flat.split("; look twice: ", -1).length, out);
        assertTrue(flat.contains("a young book: it knows outcomes of 3 seasons only, and 2 mothers are"), out);
        String csv = rows("choose --draws 20 --format csv");
        assertTrue(csv.lines().anyMatch(line -> line.contains("K-1,") && line.endsWith(",12,0,3,young-book")), csv);
        assertTrue(
                csv.lines().anyMatch(line -> line.contains("K-3,") && line.endsWith(",0,0,0,few-judged young-book")),
                csv);
        assertTrue(csv.lines().anyMatch(line -> line.contains("K-2,") && line.endsWith(",12,0,3,")), csv);
    }

    @Test
    void saysWhichCommandsListPricesWhereNoneIsListed() {
        desk.done("acquire K-1 --cultivar 'Acer palmatum' --on 2015-03-01");
        desk.done("keep K-1 --on 2016-03-01");
        Desk.Answer answer = desk.type("choose");
        assertEquals(1, answer.status());
        assertTrue(answer.err().contains("no price is listed"), answer.err());
        assertTrue(answer.err().contains("\"price set\""), answer.err());
        assertTrue(answer.err().contains("\"cost work\""), answer.err());
        assertEquals(1, answer.err().strip().lines().count(), answer.err());
    }

    @Test
    void tellsMoneyInItsCurrency() {
        raise();
        String out = flat("choose --draws 0 --years 1 --explain");
        assertTrue(out.contains(" trees, worth "), out);
        assertTrue(
                Pattern.compile("trees, worth [\\d.]+ EUR; else [a-z ]+, (as good|which costs [\\d.]+ EUR)")
                        .matcher(out)
                        .find(),
                out);
        assertTrue(
                Pattern.compile("going to her, setting and raising cost [\\d.]+ EUR,")
                        .matcher(out)
                        .find(),
                out);
    }

    @Test
    void knowsAMothersOwnCuttingsThoughOneTrayWentByAnotherName() {
        raise();
        int tray = 1;
        for (String line : new String[] {"K-1 30", "K-2 10", "K-1 28"}) {
            String mother = line.substring(0, line.indexOf(' '));
            int taken = Integer.parseInt(line.substring(line.indexOf(' ') + 1));
            String name = tray == 3 ? " --cultivar 'Acer palmatum ‘Katsura’'" : "";
            desk.done("cuttings strike T-" + tray + " --mother " + mother + " --count 40 --on 202" + tray + "-06-15"
                    + name);
            desk.done("taken T-" + tray + " --count " + taken + " --on 202" + tray + "-10-01");
            desk.done("cuttings fail T-" + tray + " --count " + (40 - taken) + " --cause rotted --on 202" + tray
                    + "-10-01");
            tray++;
        }
        String json = flat("choose --draws 0 --years 1 --format json");
        for (String mother : new String[] {"K-1", "K-2"}) {
            assertTrue(
                    Pattern.compile("\"of\" : \"" + mother
                                    + "\", \"figure\" : \"take of cuttings\", \"value\" : \"[^\"]*\","
                                    + " \"method\" : \"[^\"]*\", \"source\" : \"her own layers or cuttings")
                            .matcher(json)
                            .find(),
                    mother + ": " + json);
        }
    }

    @Test
    void saysThatThereIsNobodyToTryOut() {
        raise();
        desk.done("layer set J-99 --mother K-3 --on 2024-05-10");
        desk.done("layer fail J-99 --on 2024-09-01");
        String out = desk.done("choose --trials --draws 0 --years 1");
        assertTrue(out.contains("\nno mother to try out: "), out);
        assertFalse(out.contains("to learn\n"), out);
        assertTrue(rows("choose --draws 0 --years 1 --format json").contains("\"sure_way\" : null"));
    }

    @Test
    void saysWhichColumnsADemandMustHave() throws IOException {
        Path demand = folder.resolve("lacking.csv");
        Files.writeString(demand, "cultivar,size\nAcer palmatum,small\n");
        assertEquals(
                "ortet: " + demand + ":1: no column count; expected cultivar, size, count for --demand, found cultivar,"
                        + " size\n",
                desk.refused("choose --demand " + demand));
    }

    @Test
    void layersWhatIsAskedForAndNoMore() throws IOException {
        raise();
        Path demand = folder.resolve("asked.csv");
        Files.writeString(demand, "cultivar,size,count\nAcer palmatum,small,100\n");
        String csv = rows("choose --draws 10 --years 1 --format csv --demand " + demand);
        assertTrue(csv.contains(",K-1,Acer palmatum,layer,6,0,"), csv);
        assertTrue(csv.contains(",K-2,Acer palmatum,layer,6,0,"), csv);
        // whom nobody has tried is not left last: as many are set on her
        assertTrue(
                csv.contains(",K-3,Acer palmatum,try-out,6,0,") || csv.contains(",K-3,Acer palmatum,layer,6,0,"), csv);
        Files.writeString(demand, "cultivar,size,count\nAcer palmatum,small,0\n");
        String none = rows("choose --draws 10 --years 1 --format csv --demand " + demand);
        assertFalse(none.contains(",Acer palmatum,layer,"), none);
    }

    @Test
    void countsAPendingLayerAsNoFreePosition() throws IOException {
        raise();
        desk.done("layer set J-101..J-104 --mother K-1 --stem 12 --on 2026-06-01");
        Path demand = folder.resolve("asked.csv");
        Files.writeString(demand, "cultivar,size,count\nAcer palmatum,small,100\n");
        String json = desk.done("choose --draws 0 --years 1 --as-of 2026-06-15 --format json --demand " + demand);
        // 15 June is after the days on which layers were set before, so that the season is that of 2027
        assertTrue(json.contains("\"first_year\" : 2027"), json);
        int from = json.indexOf("\"mother\" : \"K-1\"");
        String first = json.substring(from, json.indexOf("\"plan\"", from));
        // a year after layering she carries half of six (common practice), and rests two years between layerings
        assertTrue(first.contains("\"positions\" : 3"), first);
        assertTrue(first.contains("\"last_layered\" : 2026"), first);
    }

    @Test
    void namesWhatIsHeldAndTakesNothingFromIt() {
        raise();
        desk.done("hold K-2 --sign 'spots on the leaves' --on 2026-06-10");
        String out = flat("choose --draws 10 --explain");
        assertTrue(out.contains("held for plant health, so that nothing is taken: K-2"), out);
        String csv = rows("choose --draws 10 --format csv");
        assertTrue(
                csv.lines()
                        .anyMatch(line -> line.contains(",K-2,") && line.contains(",0,0,") && line.contains(",held,")),
                csv);
    }

    @Test
    void saysTheSameUnderTheSameSeed() {
        raise();
        String first = desk.done("choose --draws 20 --seed 5 --format json");
        assertEquals(first, desk.done("choose --draws 20 --seed 5 --format json"));
    }

    @Test
    void listsTheUntriedByWhatATrialWouldTeach() {
        raise();
        String out = flat("choose --trials --draws 10");
        assertTrue(out.contains("K-3 Acer palmatum 6 "), out);
        assertFalse(out.contains("K-1 "), out);
    }

    @Test
    void givesTreesSoldUngradedThePriceListedForThem() {
        raise();
        // as raised above, but sold without anybody having graded them
        desk.done("layer set J-201..J-204 --mother K-1 --stem 12 --on 2022-05-11");
        desk.done("layer sever J-201..J-204 --roots full --on 2022-09-01");
        desk.done("pot J-201..J-204 --into '3 L' --on 2022-09-02");
        desk.done("sell J-201..J-204 --on 2023-10-01");
        String before = flat("choose --draws 0");
        assertTrue(before.contains("4 of 22 trees from layers and cuttings were sold ungraded"), before);
        assertTrue(before.contains("\"price set ungraded\" lists one"), before);
        desk.done("price set ungraded 7.50EUR --on 2020-01-01");
        String after = flat("choose --draws 0 --explain");
        assertFalse(after.contains("sold ungraded"), after);
        assertTrue(after.contains("% ungraded after 1 year"), after);
        assertTrue(after.contains("demand for ungraded: 1.3 a year"), after);
    }

    @Test
    void namesTheEntriesWhereTwoCurrenciesAreListed() {
        raise();
        desk.type("price set large 40GBP --on 2020-01-01");
        Desk.Answer answer = desk.type("choose --draws 0");
        assertEquals(1, answer.status());
        assertTrue(
                answer.err()
                        .matches(
                                "(?s).*listed in EUR \\(first in #\\d+\\) and GBP \\(first in #\\d+\\); expected one.*"),
                answer.err());
    }

    @Test
    void countsGoingToAMotherAsListedElseFiveMinutes() {
        raise();
        String usual = flat("choose --draws 0 --explain");
        assertTrue(usual.contains("going to a mother to layer her: 0.08 hours, 1.67 EUR; once for each mother"), usual);
        assertTrue(usual.contains("common practice (5 minutes)"), usual);
        desk.done("cost work layer-set --hours 0.5 --per-mother --on 2020-01-01");
        String listed = flat("choose --draws 0 --explain");
        assertTrue(listed.contains("going to a mother to layer her: 0.50 hours, 10.00 EUR"), listed);
        Desk.Answer answer = desk.type("cost work potted --hours 0.5 --per-mother");
        assertTrue(answer.err().contains("mother only for layer-set, cuttings-struck or graft-worked"), answer.err());
    }

    @Test
    void tellsEachFaultOfTheLimitsInALineOfItsOwn() throws IOException {
        raise();
        Path limits = folder.resolve("limits.csv");
        Files.writeString(limits, """
                what,where,year,amount
                hours,Lent,,4
                clone-share,,,1.5
                licence,,,3
                hours,spring,,4
                hours,,,40
                hours,spring,,5
                licence,Acer palmatm,,5
                """);
        Desk.Answer answer = desk.type("choose --limits " + limits);
        assertEquals(1, answer.status());
        assertTrue(answer.err().contains("limits.csv:2: \"Lent\" is no season"), answer.err());
        assertTrue(answer.err().contains("limits.csv:3: expected a share above 0, to 1"), answer.err());
        assertTrue(answer.err().contains("limits.csv:4: expected the cultivar of the licence"), answer.err());
        assertTrue(answer.err().contains("limits.csv:7: hours of spring is told twice"), answer.err());
        assertTrue(answer.err().contains("limits.csv:6: expected hours either by season or"), answer.err());
        Files.writeString(limits, "what,where,amount\nlicence,Acer palmatm,5\n");
        Desk.Answer unknown = desk.type("choose --limits " + limits);
        assertTrue(unknown.err().contains("limits.csv:2: no cultivar Acer palmatm"), unknown.err());
        assertTrue(unknown.err().contains("nearest: Acer palmatum"), unknown.err());
    }

    @Test
    void honoursALicenceByItsYear() throws IOException {
        raise();
        Path demand = folder.resolve("asked.csv");
        Files.writeString(demand, "cultivar,size,count\nAcer palmatum,small,100\n");
        Path limits = folder.resolve("limits.csv");
        Files.writeString(
                limits, "what,where,year,amount\nlicence,Acer palmatum,2026,3\nlicence,Acer palmatum,2027,5\n");
        String json = desk.done("choose --draws 0 --years 2 --as-of 2026-05-01 --format json --demand " + demand
                + " --limits " + limits);
        Matcher use = Pattern.compile(
                        "\"kind\" : \"licence\",\\s+\"name\" : \"Acer palmatum\","
                                + "\\s+\"year\" : (\\d+),\\s+\"season\" : \"\",\\s+\"used\" : ([0-9.]+),\\s+\"available\" : ([0-9.]+)")
                .matcher(json);
        List<String> found = new ArrayList<>();
        while (use.find()) {
            assertTrue(Double.parseDouble(use.group(2)) <= Double.parseDouble(use.group(3)), use.group());
            found.add(use.group(1) + ":" + use.group(3));
        }
        assertEquals(List.of("2026:3.0", "2027:5.0"), found, json);
    }
}
