package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people type and read of take, mothers, times and comparisons on a book of one busy mother. */
class QuestionCommandsTests {
    private static final int NARROW = 80;

    @TempDir
    static Path folder;

    private static BookDesk desk;

    @BeforeAll
    static void open() {
        desk = new BookDesk(folder);
        desk.done("acquire K-1001 --cultivar 'Acer palmatum ‘Deshojo’' --on 2015-03-01");
        desk.done("cuttings strike T-1 --mother K-1001 --count 240 --on 2020-06-15");
        desk.done("taken T-1 --count 120 --on 2020-10-01");
        desk.done("cuttings fail T-1 --count 120 --cause rotted --on 2020-10-01");
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "take --confidence 0.95 | --confidence of take: expected percent from 1 to below 100, such as 95, found \"0.95\"",
                "mothers --confidence 150 | --confidence of mothers: expected percent from 1 to below 100, such as 95, found \"150\"",
                "timing --confidence much | --confidence of timing: expected percent from 1 to below 100, such as 95, found \"much\"",
                "mothers --best 0 | --best of mothers: expected at least 1, found 0",
                "take --from 2024 --to 2020 | --from and --to: expected the first season and the last, found 2024 to 2020",
                "timing --from 2024 --to 2020 | --from and --to: expected the first season and the last, found 2024 to 2020",
                "compare layering cuttings --by mother | --by of compare: no \"mother\"; expected one of cultivar, taxon",
                "compare layering cuttings --stem 0 | --stem of compare: expected above 0 mm, found 0",
                "compare layering cuttings --days 0 | --days of compare: expected at least 1, found 0",
                "choose --discount 1 | --discount of choose: expected a share below 1, such as 0.05 or 5%, found 100%",
                "choose --discount much | --discount of choose: expected a share such as 0.9 or 90%, found \"much\"",
                "plan --cultivar Deshojo --count 0 --by 2030-01-01 | --count of plan: expected 1 to 5000 trees, found 0",
                "plan sho | no command \"plan sho\"; nearest: plan show"
            })
    void callsWhatCanNeverBeWrongUsage(String line, String words) {
        assertEquals("ortet: " + words + "\n", desk.wrong(line));
    }

    @Test
    void tellsTheConfidenceThatWasAsked() {
        String told = desk.done("take --confidence 99.9%").replaceAll("\\s+", " ");
        assertTrue(told.contains("with the 99.9 % interval (Wilson)"), told);
    }

    @Test
    void tellsMothersSideBySideOnANarrowScreen() {
        String told = desk.done("mothers --method cutting");
        assertTrue(
                told.contains("\nK-1001  120 of 240      0  50 (45–55)  100 %       1     120     120     0  2020\n"),
                told);
        assertTrue(told.lines().allMatch(line -> line.length() <= NARROW), told);
        assertTrue(desk.type("mothers --method cutting --format csv").out().contains(",2020-06-15,"), told);
    }

    @Test
    void showsNoHeadingsWhereThereIsNoMother() {
        String told = desk.done("mothers");
        assertFalse(told.contains("pooled %"), told);
        assertTrue(told.contains("nothing was set from a mother that the book knows"), told);
    }

    @Test
    void saysThatAFileIsAFolderOrNotThere() {
        assertEquals(
                "ortet: " + folder + " is a folder; expected a file of comma-separated values\n",
                desk.refused("choose --limits " + folder));
        assertEquals(
                "ortet: " + folder + " is a folder; expected a CSV with the columns month and normal_c\n",
                desk.refused("timing --warmth " + folder));
        assertEquals(
                "ortet: no file " + folder.resolve("zzzzzz.csv") + "\n",
                desk.refused("timing --warmth " + folder.resolve("zzzzzz.csv")));
    }
}
