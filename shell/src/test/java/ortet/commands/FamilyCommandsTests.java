package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people read of offspring, clones and what is odd. */
class FamilyCommandsTests {
    @TempDir
    static Path folder;

    private static BookDesk desk;

    @BeforeAll
    static void open() {
        desk = new BookDesk(folder);
        desk.done("acquire K-1 --cultivar 'Acer palmatum ‘Deshojo’' --place 'House 1' --on 2015-03-01");
        desk.done("acquire K-2 --cultivar 'Acer palmatum ‘Deshojo’' --on 2020-03-01");
        desk.done("acquire R-1 --count 9 --cultivar 'Acer palmatum' --on 2021-03-01");
        desk.done("layer set J-1..J-4 --mother K-1 --on 2022-05-01");
        desk.done("layer sever J-1 J-2 --roots full --place 'House 2' --on 2022-09-01");
        desk.done("layer fail J-3 --cause dried --on 2022-09-02");
        desk.type("enter graft-worked G-1 scion=J-1 stock=R-1 --on 2024-03-01");
        desk.done("enter taken G-1 --on 2024-06-01");
        desk.done("layer set J-11 J-12 --mother G-1 --below-union --on 2025-05-01");
        desk.done("cuttings strike T-1 --mother K-1:10,K-2:10 --count 20 --on 2025-06-01");
        desk.done("cuttings draw C-1 C-2 --from T-1 --on 2025-09-01");
        desk.done("sell J-2 --on 2026-01-10");
        desk.done("acquire K-01 --on 2026-01-11");
    }

    @AfterAll
    static void close() {
        desk.close();
    }

    @Test
    void tellsOffspringAsATree() {
        assertEquals("""
                K-1  Acer palmatum 'Deshojo'  [growing]
                ├─ J-1  layer, 2022-05-01  [growing]
                │  └─ G-1  graft, as scion, 2024-03-01  [growing]
                │     └─ J-11 J-12 (2)  layer below the union, 2025-05-01  [on its mother]
                ├─ J-2  layer, 2022-05-01  [sold, 1 sold]
                ├─ J-3  layer, 2022-05-01  [failed]
                ├─ J-4  layer, 2022-05-01  [on its mother]
                └─ T-1  cuttings, from one of several (10), 2025-06-01  [18 pending]
                   └─ C-1 C-2 (2)  drawn, 2025-09-01  [growing]

                10 tags raised from K-1, 4 plants growing, 21 pending, 1 sold, as of
                  2026-06-15
                """.replace("[sold, 1 sold]", "[sold]"), desk.done("offspring K-1"));
        assertEquals("""
                K-1  Acer palmatum 'Deshojo'  [growing]
                ├─ (J-1  layer, 2022-05-01  [growing])
                │  └─ G-1  graft, as scion, 2024-03-01  [growing]
                └─ (T-1  cuttings, from one of several (10), 2025-06-01  [18 pending])
                   └─ C-1 C-2 (2)  drawn, 2025-09-01  [growing]

                3 tags raised from K-1, 3 plants growing, as of 2026-06-15
                """, desk.done("offspring K-1 --state growing --act scion-of,drawn-from"));
    }

    @Test
    void tellsOffspringForPrograms() {
        String csv = desk.type("offspring R-1 --format csv").out();
        assertEquals("""
                depth,tag,from,act,begun,count,one_of_several,kind,state,growing,pending,sold,own_cultivar,told_elsewhere
                1,G-1,R-1,rootstock-of,2024-03-01,,no,plant,growing,1,0,0,,no
                2,J-11,G-1,layered-below,2025-05-01,,no,layer,on its mother,0,1,0,,no
                2,J-12,G-1,layered-below,2025-05-01,,no,layer,on its mother,0,1,0,,no
                1,J-11,R-1,stock-wood-of,2025-05-01,,no,layer,on its mother,0,1,0,,yes
                1,J-12,R-1,stock-wood-of,2025-05-01,,no,layer,on its mother,0,1,0,,yes
                """.replace("\n", "\r\n"), csv);
        assertTrue(desk.done("offspring K-1 --format json").contains("\"act\" : \"layered-below\""));
    }

    @Test
    void tellsOneClone() {
        assertEquals("""
                clone of K-1  Acer palmatum 'Deshojo'
                earliest known K-1, acquired (2015-03-01), origin unknown
                6 tags in all: 3 growing, 1 pending, 1 sold; 2 generations after the first

                members by generation
                  0  K-1
                  1  J-1 J-4
                     gone: J-2 J-3
                  2  G-1

                where they stand
                  House 1: 1 growing
                  House 2: 1 growing
                  nobody said where: 1 growing, 1 pending

                may be of it too
                  3 tags, 2 plants growing, from mixed trays or lost labels: C-1 C-2 T-1

                said to be the same cultivar, not known to be this clone
                  earliest known K-2, Acer palmatum 'Deshojo': 1 tag, 1 living

                as of 2026-06-15
                """, desk.done("clone G-1"));
        assertEquals(
                "T-1 is of no one clone: each unit of it is of one of 2: the clone of K-1; the\n"
                        + "  clone of K-2\nas of 2026-06-15\n",
                desk.done("clone T-1"));
        String drawn = desk.done("clone C-1");
        assertTrue(
                drawn.replaceAll("\\s+", " ")
                        .contains("which of several it is nobody knows: one of 2: the clone of K-1; the clone of K-2"),
                drawn);
        String below = desk.done("clone J-11");
        assertTrue(
                below.replaceAll("\\s+", " ")
                        .contains(
                                "earliest known R-1, acquired (2021-03-01), origin unknown; it came as a batch, and whether"
                                        + " all in it are one clone is not known"),
                below);
    }

    @Test
    void listsClones() {
        assertEquals("""
                first        cultivar                 tags  living  pend.  sold  gen.
                ───────────  ───────────────────────  ────  ──────  ─────  ────  ────
                K-1          Acer palmatum 'Deshojo'     6       3      1     1     2
                R-1 (batch)  Acer palmatum               3       8      2     0     1

                first: the earliest known plant, or the ortet where that is known; (batch): came
                as a batch, whether all in it are one clone is not known; (one of): one of
                several clones, nobody knows which
                6 clones, 4 of them with fewer tags left out (--least 1 shows them), as of
                2026-06-15
                1 tag of no one clone (mixed trays, sowings), 0 growing, in no row
                """, desk.done("clones"));
        assertEquals(
                5,
                desk.type("clones --least 1 --cultivar Deshojo --format csv")
                        .out()
                        .lines()
                        .count());
        assertEquals(
                "ortet: no cultivar Deshoio; nearest: Acer palmatum 'Deshojo'\n",
                desk.refused("clones --cultivar Deshoio"));
    }

    @Test
    void tellsWhatIsOddWithTheLinesThatPutItRight() {
        String odd = desk.done("lineage check --months 60");
        assertTrue(
                odd.startsWith("tags that look alike\n  K-01 (2026-01-11) looks like K-1 (2015-03-01)\n"
                        + "    if they are two plants: ortet retag K-01 --to TAG\n"
                        + "    if they are one: ortet cross-out 13 --reason \"the same plant as K-1\"\n"),
                odd);
        String unseen = desk.done("lineage check --months 12");
        assertTrue(
                unseen.contains(
                        "  J-1: last sign of life 2024-03-01, at House 2\n    if it is there: ortet enter seen J-1\n"
                                + "    if not: ortet lose J-1 --cause mislaid\n"),
                unseen);
        assertEquals(
                "oddity,tags,day,text,condition,command",
                desk.type("lineage check --format csv")
                        .out()
                        .lines()
                        .findFirst()
                        .orElseThrow());
    }

    @Test
    void writesAFamilyIntoANewFileAlone() throws IOException {
        Path file = folder.resolve("family.dot");
        assertEquals(
                "wrote 5 units and 4 links to " + file + ", as of 2026-06-15\n",
                desk.done("lineage export " + file + " --of J-1 --format dot").replaceAll("\n(?=.)", " "));
        assertTrue(Files.readString(file).startsWith("digraph family {"));
        assertEquals(
                "ortet: " + file + " is there already; choose another file\n", desk.refused("lineage export " + file));
        assertTrue(
                desk.refused("lineage export " + folder + "/nowhere/x.graphml").startsWith("ortet: no folder "));
    }

    @Test
    void refusesWoodBelowTheUnionOfWhatIsNoGraft() {
        assertEquals(
                "ortet: J-1 is no graft, so no wood of it is from below a union\n",
                desk.refused("layer set J-30 --mother J-1 --below-union"));
    }

    @Test
    void answersAgainAfterSomethingWasWritten() {
        String before = desk.type("clones --least 1 --format csv").out();
        desk.done("enter divided D-1 mother=K-2");
        String after = desk.type("clones --least 1 --format csv").out();
        assertTrue(before.contains("K-2,acquired,Acer palmatum 'Deshojo',,2020-03-01,no,1,1"), before);
        assertTrue(after.contains("K-2,acquired,Acer palmatum 'Deshojo',,2020-03-01,no,2,2"), after);
        desk.done("undo");
    }
}
