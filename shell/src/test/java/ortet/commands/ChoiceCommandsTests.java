package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
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
    void layersWhatIsAskedForAndNoMore() throws java.io.IOException {
        raise();
        Path demand = folder.resolve("asked.csv");
        java.nio.file.Files.writeString(demand, "cultivar,size,count\nAcer palmatum,small,100\n");
        String csv = rows("choose --draws 10 --years 1 --format csv --demand " + demand);
        assertTrue(csv.contains(",K-1,Acer palmatum,layer,6,0,"), csv);
        assertTrue(csv.contains(",K-2,Acer palmatum,layer,6,0,"), csv);
        // whom nobody has tried is not left last: as many are set on her
        assertTrue(
                csv.contains(",K-3,Acer palmatum,try-out,6,0,") || csv.contains(",K-3,Acer palmatum,layer,6,0,"), csv);
        java.nio.file.Files.writeString(demand, "cultivar,size,count\nAcer palmatum,small,0\n");
        String none = rows("choose --draws 10 --years 1 --format csv --demand " + demand);
        assertFalse(none.contains(",Acer palmatum,layer,"), none);
    }

    @Test
    void countsAPendingLayerAsNoFreePosition() throws java.io.IOException {
        raise();
        desk.done("layer set J-101..J-104 --mother K-1 --stem 12 --on 2026-06-01");
        Path demand = folder.resolve("asked.csv");
        java.nio.file.Files.writeString(demand, "cultivar,size,count\nAcer palmatum,small,100\n");
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
        assertTrue(out.contains("K-3 6 layers; the plan:"), out);
        assertFalse(out.contains("K-1 "), out);
    }
}
