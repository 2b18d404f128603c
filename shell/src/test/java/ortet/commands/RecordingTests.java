package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;

/** The recording commands, typed at a real book. */
class RecordingTests {
    @TempDir
    Path folder;

    private BookDesk desk;

    @BeforeEach
    void open() {
        desk = new BookDesk(folder);
        desk.done("person add Aoife");
        desk.done("person add 'An Example' --role customer");
        desk.done("acquire K-12 --cultivar 'Acer palmatum' --on 2019-03 --by aoife --place 'House 1'");
    }

    @AfterEach
    void close() {
        desk.close();
    }

    @Test
    void saysBackWhatItUnderstood() {
        assertEquals(
                """
                #2  layer-set J-201; 2026-05-03, Aoife; mother K-12, stem 12 mm, ring 15 mm,
                    wound full-ring
                #3  layer-set J-202..J-204 (3); 2026-05-03, Aoife; mother K-12, stem 15 mm,
                    ring 15 mm, wound full-ring
                #4  layer-set J-205 J-206 J-208..J-210 (5); 2026-05-03, Aoife; mother K-12,
                    stem 18 mm, ring 15 mm, wound full-ring
                """,
                desk.done("layer set J-201..J-210 except J-207 --mother K-12 --stem 12,15x3,18x* --ring 15"
                        + " --wound full-ring --on 2026-05-03 --by Aoife"));
    }

    @Test
    void refusesStemsThatDoNotFitTheTags() {
        assertEquals(
                "ortet: 4 stems for 5 tags; expected one for all or one for each (15x* stands for all the rest)\n",
                desk.refused("layer set J-1..J-5 --mother K-12 --stem 12,15x3"));
        assertEquals(
                "ortet: --stem of layer set: expected stem diameters in mm such as 12 or 12,15x3 or 12,15x* (the rest),"
                        + " found \"thick\"\n",
                desk.wrong("layer set J-1 --mother K-12 --stem thick"));
    }

    @Test
    void givesTheUsualCautionsOnceForEachLine() {
        String said = desk.done("layer set J-1..J-2 --mother K-12 --stem 12,14 --hormone IBA --strength 3000ppm"
                + " --medium 'sphagnum, damp'");
        assertEquals(1, said.split("caution: rooting hormone", -1).length - 1);
        assertEquals(1, said.split("caution: sphagnum moss", -1).length - 1);
        assertTrue(said.contains("strength 0.3%"));
    }

    @Test
    void recordsTheLifeOfLayersAndCuttings() {
        desk.done("layer set J-1..J-3 --mother K-12 --on 2025-05-01");
        desk.done("layer check J-1..J-3 --found callus --on 2025-06-01");
        desk.done("layer rework J-2 --how re-ringed --ring 20 --on 2025-06-01");
        desk.done("layer sever J-1 J-2 --roots full --place 'House 1' --container '2 L' --on 2025-09-01");
        desk.done("layer fail J-3 --cause dried --on 2025-09-01");
        desk.done("cuttings strike T-1 --mother K-12:20 --count 20 --wood semi-ripe --heat 21 --on 2025-07-01");
        desk.done("cuttings check T-1 --found callus:10,dead:2 --on 2025-08-01");
        desk.done("cuttings fail T-1 --count 2 --on 2025-08-02");
        desk.done("cuttings draw C-1..C-12 --from T-1 --container '9 cm' --rest failed --on 2025-10-01");
        desk.done("pot J-1 C-1 --into '3 L' --purpose pot-on --on 2026-03-01");
        desk.done("move C-1..C-12 --to 'House 2' --on 2026-03-02");
        desk.done("measure J-1 --stem 14.5 --height 300 --positions 8-12:2 --on 2026-04-01");
        desk.done("sell J-1 --to 'An Example' --price '45.00 EUR' --on 2026-05-01");
        desk.done("lose C-2 --cause frost --on 2026-05-02");
        String take = desk.type("take --by method --format csv").out();
        assertTrue(take.contains("layers,3,2,1,0,0,0,0.6666666666666666"), take);
        assertTrue(take.contains("cuttings,20,12,8,0,0,0,0.6"), take);
        assertEquals(
                "ortet: J-1 was sold on 2026-05-01, so it cannot be potted on 2026-06-15\n",
                desk.refused("pot J-1 --into '5 L'"));
    }

    @Test
    void asksWhatBecomesOfLayersOnAMotherThatGoes() {
        desk.done("layer set J-1..J-3 --mother K-12 --on 2026-05-01");
        assertEquals(
                "ortet: K-12 was gone on 2026-06-15 with 3 layers on her (J-1..J-3): say first what became of them"
                        + " (severed, failed or withdrawn)\n",
                desk.refused("lose K-12 --cause frost"));
        assertEquals("""
                #3  failed J-1..J-3 (3); 2026-06-15; cause mother-lost
                #4  lost K-12; 2026-06-15; cause frost
                """, desk.done("lose K-12 --cause frost --layers failed"));
    }

    @Test
    void correctsAndCrossesOutByTheNumberOfTheEntry() {
        desk.done("layer set J-1..J-3 --mother K-12 --stem 12 --on 2026-05-01");
        assertEquals(
                "#3  corrected J-2; 2026-06-15, Aoife; of entry #2; field stem_mm, value 14,\n    reason misread\n",
                desk.done("correct 2 --field stem_mm --value 14 --tags J-2 --reason misread --by Aoife"));
        desk.done("correct 2 --field tags --tags J-3 --value J-30");
        assertEquals(
                "ortet: no plant or batch J-3; nearest: J-1, J-2, J-30\n",
                desk.refused("layer check J-3 --found callus"));
        assertEquals(
                "#5  crossed-out; 2026-06-15; of entry #2; reason wrong tree\n",
                desk.done("cross-out 2 --reason 'wrong tree'"));
        assertEquals("ortet: no plant or batch J-1; nearest: K-12\n", desk.refused("layer sever J-1"));
        assertEquals("ortet: no entry 99; the last one is 5\n", desk.refused("cross-out 99 --reason no"));
    }

    @Test
    void entersAnyKind() {
        desk.done("enter acquired R-9 count=50 'cultivar=Acer palmatum' --on 2020");
        assertEquals(
                "#3  graft-worked G-1..G-3 (3); 2026-02-01, Aoife; scion K-12, stock R-9,\n    graft side-veneer\n",
                desk.done(
                        "enter graft-worked G-1..G-3 scion=K-12 stock=R-9 graft=side-veneer --on 2026-02-01 --by Aoife"));
        desk.done("enter reserved K-12 'customer=An Example'");
        assertEquals("ortet: no kind of entry \"graft\"; nearest: graft-worked\n", desk.wrong("enter graft G-9"));
        assertEquals(
                "ortet: seen has no field \"plase\"; it has tags, place, note; nearest: place\n",
                desk.refused("enter seen K-12 plase=here"));
    }

    @Test
    void refusesUnknownPersonsAndOptionsWithTheNearest() {
        assertEquals(
                "ortet: by: no person \"Aofe\" in the book; add one with \"ortet person add\"; nearest: Aoife\n",
                desk.refused("move K-12 --to Yard --by Aofe"));
        assertEquals("ortet: move has no option --tto; nearest: --to\n", desk.wrong("move K-12 --tto Yard"));
        assertEquals(
                "ortet: --wound of layer set: no \"fullring\"; expected one of full-ring, ring-with-bridge, tongue,"
                        + " tourniquet; nearest: full-ring\n",
                desk.wrong("layer set J-1 --mother K-12 --wound fullring"));
    }

    @Test
    void erasesPersonsAndKeepsTheirRecords() {
        desk.done("sell K-12 --to 'An Example' --on 2026-06-01");
        desk.done("person erase 'An Example'");
        assertTrue(desk.done("person list").contains("(erased)"));
        assertTrue(desk.done("plant K-12").contains("sold on 2026-06-01 to #2"));
    }

    @Test
    void saysWhatToDoWhereThereIsNoBook() {
        String none = folder.resolve("none.ortet").toString();
        try (Desk bare = Desk.open()) {
            Desk.Answer answer = bare.type("trace", "K-1", "--book", none);
            assertEquals(
                    "ortet: no book " + none
                            + "; make one with \"ortet book new\", or name yours with --book FILE or in"
                            + " ORTET_BOOK\n",
                    answer.err());
            assertEquals(1, answer.status());
        }
    }
}
