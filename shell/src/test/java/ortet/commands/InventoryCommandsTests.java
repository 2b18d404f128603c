package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people read of lists, of what was found, and of the day. */
class InventoryCommandsTests {
    @TempDir
    static Path folder;

    private static BookDesk desk;

    @BeforeAll
    static void open() {
        desk = new BookDesk(folder);
        desk.done("person add Aoife");
        desk.done("person add 'An Example' --role customer");
        desk.done("acquire K-1 --cultivar 'Acer palmatum ‘Deshojo’' --place 'House 1' --on 2020 --by Aoife");
        desk.done("keep K-1 --on 2021-01-01");
        desk.done("layer set J-1..J-3 --mother K-1 --on 2024-05-01 --branch 'north, low'");
        desk.done("layer sever J-1 J-2 --roots full --place 'House 2' --on 2024-09-01 --container '2 L'");
        desk.done("reserve J-1 --to 'An Example' --on 2025-01-01");
        desk.done("hold J-2 --sign 'leaf spots' --on 2025-02-01");
        desk.done("retag J-2 --to J-902 --on 2025-03-01");
        desk.done("acquire T-1 --count 20 --cultivar 'Ulmus parvifolia' --on 2025");
        desk.done("remark K-1 --text 'bleeds late' --on 2025-06-01 --by Aoife");
        desk.done("lose J-1 --cause frost --on 2026-01-01");
        desk.done("cross-out 9 --reason 'another tree'");
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    @Test
    void listsForPeople() {
        assertEquals("""
                tag    cultivar                 kind   state          place    from  marks
                ─────  ───────────────────────  ─────  ─────────────  ───────  ────  ─────
                J-3    Acer palmatum 'Deshojo'  layer  on its mother           K-1
                J-902  Acer palmatum 'Deshojo'  layer  growing        House 2  K-1   HELD
                K-1    Acer palmatum 'Deshojo'  plant  growing        House 1        stock
                T-1    Ulmus parvifolia         batch  20 growing

                4 tags: 22 plants growing, 1 pending, as of 2026-06-15
                """, desk.done("list"));
    }

    @Test
    void listsForPrograms() {
        assertEquals(
                """
                tag,cultivar,cultivar_one_of,kind,state,growing,pending,place,place_since,container,raised_from,begun,\
                stock_since,held,reserved
                J-1,Acer palmatum 'Deshojo',,layer,lost,0,0,House 2,2024-09-01,2 L,K-1,2024-05-01,,no,no
                """.replace("\n", "\r\n"),
                desk.type("list --state gone --format csv").out());
        String json = desk.done("list J-9 --format json");
        assertTrue(json.contains("\"held\" : true"), json);
    }

    @Test
    void listsAsOfADay() {
        assertTrue(desk.done("list --reserved --as-of 2025-12-31").startsWith("tag  cultivar"));
        assertEquals("nothing of the kind, as of 2026-06-15\n", desk.done("list --reserved"));
        assertEquals("nothing of the kind, as of 2019-12-31\n", desk.done("list --as-of 2019-12-31"));
    }

    @Test
    void listsOnePlantBelowTheOtherWhereTheScreenIsNarrow() {
        assertTrue(desk.done("list --stock").contains("stock"));
    }

    @Test
    void refusesNamesThatTheBookDoesNotKnow() {
        assertEquals("ortet: no place House 3; nearest: House 1, House 2\n", desk.refused("list --place 'House 3'"));
        assertEquals(
                "ortet: no cultivar Deshoio; nearest: Acer palmatum 'Deshojo'\n",
                desk.refused("list --cultivar Deshoio"));
        assertEquals("ortet: no plant or batch K-9; nearest: K-1, J-1, J-2\n", desk.refused("list --mother K-9"));
        assertEquals(
                "ortet: --state of list: no \"grown\"; expected one of growing, pending, gone; nearest: growing\n",
                desk.wrong("list --state grown"));
    }

    @Test
    void findsForPeople() {
        assertEquals(
                """
                found  what it is
                ─────  ────────────────────────────────────────────────────────
                labels
                J-2    now J-902: Acer palmatum 'Deshojo'  [growing], at House 2

                as of 2026-06-15
                """.replace(
                                "────────────────────────────────────────────────────────\n",
                                "─────────────────────────────────────────────────────────\n"),
                desk.done("find J-2"));
    }

    @Test
    void findsNamesAndRemarksWithTheNumberOfTheEntry() {
        String deshojo = desk.done("find deshojo");
        assertTrue(deshojo.contains("cultivars\nAcer palmatum 'Deshojo'"), deshojo);
        String bleeds = desk.done("find LATE bleeds");
        assertTrue(bleeds.contains("entries\n#9"), bleeds);
        assertTrue(bleeds.contains("noted K-1, on 2025-06-01: “bleeds late”  [crossed out since]; Aoife"), bleeds);
        assertTrue(desk.done("find example").contains("An Example  #2, customer"));
    }

    @Test
    void namesWhatIsNearestWhereNothingIsFound() {
        assertEquals(
                "nothing with \"Deshoja\" in the book as of 2026-06-15; nearest: Deshojo\n", desk.done("find Deshoja"));
        assertEquals(
                "nothing with \"K-7\" in the book as of 2026-06-15; nearest: K-1, J-1, J-2\n", desk.done("find K-7"));
        assertEquals(
                "sort,found,what,entry\r\n",
                desk.type("find xyzzy --format csv").out());
    }

    @Test
    void tellsTheDay() {
        String today = desk.done("today");
        assertTrue(today.startsWith("recorded on 2026-06-15\n\n"), today);
        assertTrue(today.contains("13:00"), today);
        assertTrue(
                today.replaceAll("\\s+", " ")
                        .contains("3 layer set J-1..J-3 (3), on 2024-05-01: mother K-1, branch north, low"),
                today);
        assertTrue(today.contains("crossed out #9: reason another tree"), today);
        assertTrue(today.endsWith("11 entries: 9 by nobody named, 2 by Aoife\n"), today);
    }

    @Test
    void tellsTheLastOfAFullDay() {
        String last = desk.done("today --most 2").replaceAll("\\s+", " ");
        assertTrue(last.contains("10 lost J-1") && !last.contains(" 9 noted"), last);
        assertTrue(last.endsWith("2 by Aoife shown are the last 2 (--most N shows more) "), last);
    }

    @Test
    void tellsOneDayOrPerson() {
        assertEquals("nothing was recorded on 2026-06-14\n", desk.done("today --day yesterday"));
        assertTrue(desk.done("today --by aoife").endsWith("2 entries: 2 by Aoife\n"));
        assertTrue(desk.type("today --by Aoife --format csv")
                .out()
                .contains(
                        "13:00,1,Aoife,2020,acquired,K-1,place=House 1; cultivar=Acer palmatum 'Deshojo',,as-written"));
        assertEquals("ortet: no person Aoifo; nearest: Aoife\n", desk.refused("today --by Aoifo"));
    }
}
