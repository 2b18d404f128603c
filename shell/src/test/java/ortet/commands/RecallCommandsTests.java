package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people and programs read of a recall and of kin, and what a recall writes. */
class RecallCommandsTests {
    @TempDir
    Path folder;

    private BookDesk desk;

    @BeforeEach
    void open() {
        desk = new BookDesk(folder);
        desk.done("person add Aoife");
        desk.done("person add 'A Customer' --role customer");
        desk.done("person add 'A Supplier' --role supplier");
        desk.done("acquire K-1 K-2 --cultivar 'Acer palmatum ‘Deshojo’' --place 'House 1' --on 2024-02-01"
                + " --consignment 24-17 --supplier 'A Supplier'");
        desk.done("acquire K-3 --cultivar 'Acer palmatum' --place 'House 2' --on 2024-02-01");
        desk.done("layer set J-1..J-4 --mother K-1 --on 2024-05-01");
        desk.done("layer sever J-1..J-3 --roots full --place 'House 2' --on 2024-09-01");
        desk.done("sell J-1 --to 'A Customer' --on 2025-03-01");
        desk.done("sell J-2 --on 2025-04-01");
        desk.done("cuttings strike T-1 --mother K-2,K-3 --count 20 --place 'House 1' --on 2025-06-01");
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private static String withoutDigest(String answer) {
        return answer.replaceAll("[0-9a-f]{64}", "DIGEST");
    }

    @Test
    void tellsFirstWhatToDo() {
        assertEquals("""
                Recall of J-3, as of 2026-06-15
                up to every source and down to all raised from them

                  implicated: 6 tags; 4 tags still here (3 plants growing, 1 pending); 2
                    plants sold
                  cannot be ruled out: 1 tag; 1 tag still here (20 pending)

                Tell the plant health authority: this list does not replace it. Move and sell
                  none of these plants, and clean hands and tools between them, until it has
                  said what to do.

                To pull: what is still here, by place

                place    growing  pending  held  tags
                ───────  ───────  ───────  ────  ───────────
                implicated
                House 1        2        1     0  J-4 K-1 K-2
                House 2        1        0     0  J-3
                cannot be ruled out
                House 1        0       20     0  T-1

                To call: who bought, and when

                customer                   day         plants  tags
                ─────────────────────────  ──────────  ──────  ────
                implicated
                A Customer                 2025-03-01       1  J-1
                nobody wrote down to whom  2025-04-01       1  J-2

                Implicated, and why

                  J-3 was asked about
                  K-1 gave on 2024-05-01 the layer J-3, which was asked about
                  J-1 J-2 J-4 (3) were layered on 2024-05-01 from K-1, which gave on
                      2024-05-01 the layer J-3, which was asked about
                  K-2 came on 2024-02-01 with consignment 24-17, as did K-1, which gave on
                      2024-05-01 the layer J-3, which was asked about

                Cannot be ruled out, and why

                  T-1 was struck on 2025-06-01 from several, one of them K-2, which came on
                      2024-02-01 with consignment 24-17, as did K-1, which gave on 2024-05-01
                      the layer J-3, which was asked about: cuttings of several mothers in one
                      tray

                What the book cannot say

                  - What stood beside these plants was not asked for: add --contacts 1.
                  - To whom 1 plant was sold: nobody wrote it down, so nobody can be called.

                book up to entry #7, digest
                  DIGEST
                """, withoutDigest(desk.done("recall J-3")));
    }

    @Test
    void tellsTheAuthorityRowByRow() {
        assertEquals(
                """
                list,tag,kind,cultivar,where,growing,pending,place,held,customer,day,sold,came_back,what_became,contacts,\
                since,because,doubts,as_of,book_entries,book_digest
                implicated,J-1,layer,Acer palmatum 'Deshojo',sold,,,,,A Customer,2025-03-01,1,0,,0,2024-05-01,\
                "J-1 was layered on 2024-05-01 from K-1, which was asked about",,2026-06-15,7,DIGEST
                implicated,K-1,plant,Acer palmatum 'Deshojo',here,1,0,House 1,no,,,,,,0,,K-1 was asked about,,2026-06-15,7,\
                DIGEST
                """.replace("\n", "\r\n"),
                withoutDigest(desk.type("recall K-1 --no-sources --as-of 2026-06-15 --format csv")
                                .out())
                        .lines()
                        .filter(line -> line.matches("(list|implicated,(J-1|K-1)),.*"))
                        .reduce("", (all, line) -> all + line + "\r\n"));
        String json = desk.done("recall J-3 --format json");
        assertTrue(json.contains("\"cannot_be_ruled_out\""), json);
        assertTrue(json.contains("\"entries\" : 7"), json);
    }

    @Test
    void saysThatNothingIsHereAndNobodyBoughtIt() {
        desk.done("acquire X-1");
        desk.done("lose X-1");
        String answer = desk.done("recall X-1 --contacts 1");
        assertTrue(answer.contains("\nTo pull: nothing that is still here\n"), answer);
        assertTrue(answer.contains("\nTo call: nobody, nothing of it was sold\n"), answer);
    }

    @Test
    void holdsWhatIsHereOnceAndSaysWhatItWillHold() {
        String answer =
                desk.done("recall J-3 --mark held --sign 'leaf spots' --sample 26-18 --by Aoife --on 2026-06-14");
        assertTrue(answer.endsWith("""

                holding 5 tags: J-3 J-4 K-1 K-2 T-1
                #8  held J-3 J-4 K-1 K-2 T-1 (5); 2026-06-14, Aoife; sign leaf spots, sample
                    26-18, “recall of J-3”
                """), answer);
        assertTrue(desk.done("recall J-3 --mark held --sign 'leaf spots'")
                .endsWith("\n\nall 5 tags are held already: no hold is recorded\n"));
        desk.done("clear K-2");
        assertTrue(desk.done("recall J-3 --mark held-implicated --sign 'leaf spots'")
                .contains("\nholding 1 tag, 3 are held already: K-2\n"));
        assertEquals(
                "ortet: K-1 is held for plant health; clear it before it is potted\n",
                desk.refused("pot K-1 --into '5 L'"));
    }

    @Test
    void refusesAHoldThatCannotBe() {
        assertEquals("ortet: --mark needs --sign TEXT: what was seen\n", desk.wrong("recall J-3 --mark held"));
        assertEquals(
                "ortet: --mark holds what is here today: leave --as-of out\n",
                desk.wrong("recall J-3 --mark held --sign x --as-of 2025-01-01"));
        assertEquals(
                "ortet: --mark answers in words: record the hold first, then ask again with --format\n",
                desk.wrong("recall J-3 --mark held --sign x --format csv"));
        assertEquals(
                "ortet: --sign, --sample, --on, --by and --note are for a hold; it is recorded with --mark held\n",
                desk.wrong("recall J-3 --sign x"));
        assertEquals(
                "ortet: say what to recall: tags, --consignment, --supplier, or --place with --from, --to\n",
                desk.wrong("recall"));
        assertEquals("ortet: no plant or batch J-9; nearest: J-1, J-2, J-3\n", desk.refused("recall J-9"));
        assertEquals(
                "ortet: nothing in the book came with consignment 24-71; nearest: 24-17\n",
                desk.refused("recall --consignment 24-71"));
        assertEquals(
                "ortet: nothing ever stood in House 3; nearest: House 1, House 2\n",
                desk.refused("recall --place 'House 3'"));
    }

    @Test
    void tellsKin() {
        assertEquals("""
                J-1 and J-2, as of 2026-06-15

                one clone:  yes
                kinship:    unknown, at least 1/2 (0.5): exactly that if the plants of unknown
                            origin behind them are unrelated and not inbred
                            origin unknown: K-1

                nearest common ancestors, and generations from there

                ancestor  cultivar                 to J-1           to J-2
                ────────  ───────────────────────  ───────────────  ───────────────
                K-1       Acer palmatum 'Deshojo'  1, none by seed  1, none by seed
                """, desk.done("kin J-1 J-2"));
        assertEquals("""
                T-1 and K-2, as of 2026-06-15

                one clone:  not known
                kinship:    unknown, at least 0 to 1/2 (0.5), depending on which of several they
                            come from: exactly that if the plants of unknown origin behind them
                            are unrelated and not inbred
                            origin unknown: K-2 K-3

                nearest common ancestors, and generations from there

                ancestor  cultivar                 to T-1           to K-2
                ────────  ───────────────────────  ───────────────  ──────
                K-2       Acer palmatum 'Deshojo'  1, none by seed  itself
                """, desk.done("kin T-1 K-2"));
        assertTrue(desk.done("kin K-1 K-3").endsWith("ancestors:  the book knows of none that they have in common\n"));
        assertEquals(
                """
                first,second,same_clone,kinship_at_least,kinship_at_most_of_several,unknown_origin,ancestor,cultivar,\
                first_generations,first_by_seed,second_generations,second_by_seed
                J-1,K-1,yes,1/2,,K-1,K-1,Acer palmatum 'Deshojo',1,0,0,0
                """.replace("\n", "\r\n"), desk.type("kin J-1 K-1 --format csv").out());
        assertTrue(desk.done("kin J-1 K-1 --format json").contains("\"kinship_at_least\" : 0.5"));
    }
}
