package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes wrong in a nursery, played through: the command, what it does to lineage, counts and rates. */
class MuddleTests {
    @TempDir
    Path folder;

    private BookDesk desk;

    @BeforeEach
    void open() {
        desk = new BookDesk(folder);
        desk.done("person add Aoife");
        desk.done("person add 'An Example' --role customer");
        desk.done("acquire K-1 K-2 --cultivar 'Acer palmatum' --on 2015-03-01 --place 'House 1'");
    }

    @AfterEach
    void close() {
        desk.close();
    }

    /** Return set, taken, failed, withdrawn, pending, unaccounted of a method, as in the columns of take. */
    private String take(String method) {
        List<String> rows =
                desk.type("take --by method --format csv").out().lines().toList();
        return rows.stream()
                .filter(row -> row.startsWith(method + ","))
                .map(row -> String.join(",", List.of(row.split(",", -1)).subList(1, 7)))
                .findFirst()
                .orElse("none");
    }

    private String plant(String tag) {
        return desk.done("plant " + tag);
    }

    private String trace(String tag) {
        return desk.done("trace " + tag);
    }

    private static void has(String text, String wanted) {
        assertTrue(
                text.replaceAll("\\s+", " ").contains(wanted.replaceAll("\\s+", " ")),
                () -> "no \"" + wanted + "\" in:\n" + text);
    }

    @Test
    void lostLabelIsReplacedAndTheOldTagStaysFindable() {
        desk.done("layer set J-1 --mother K-1 --on 2025-05-01");
        desk.done("retag J-1 --to J-901 --on 2025-06-01");
        desk.done("layer sever J-1 --on 2025-09-01");
        has(plant("J-1"), "J-901  Acer palmatum  [growing]");
        has(trace("J-901"), "J-901 (before: J-1)");
        assertEquals("1,1,0,0,0,0", take("layers"));
    }

    @Test
    void mislabelledMotherIsRedeterminedForAllThatKeepHerClone() {
        desk.done("layer set J-1 --mother K-1 --on 2020-05-01");
        desk.done("redetermine K-1 --as 'Acer buergerianum' --on 2025-01-01");
        has(plant("J-1"), "Acer buergerianum, by K-1");
        has(desk.done("plant J-1 --as-of 2024-12-31"), "Acer palmatum, by K-1");
        has(desk.type("take --by cultivar --format csv").out(), "Acer buergerianum,1,");
    }

    @Test
    void plantFoundWithoutALabelIsOneOfTwo() {
        desk.done("layer set J-1 J-2 --mother K-1 --on 2024-05-01");
        desk.done("layer sever J-1 J-2 --on 2024-09-01");
        desk.done("found F-1 --one-of J-1,J-2 --place 'House 1' --on 2025-03-01");
        has(trace("F-1"), "one of several that it may be J-1");
        has(trace("F-1"), "one of several that it may be J-2");
        assertEquals("2,2,0,0,0,0", take("layers"));
    }

    @Test
    void mergedTraysCountOnceAndPlantsFromThemAreOneOfTheirMothers() {
        desk.done("cuttings strike T-1 --mother K-1 --count 30 --on 2025-06-01");
        desk.done("cuttings strike T-2 --mother K-2 --count 20 --on 2025-06-01");
        desk.done("cuttings fail T-1 --count 5 --on 2025-07-01");
        desk.done("merge T-3 --from T-1,T-2 --on 2025-08-01");
        desk.done("cuttings draw C-1..C-30 --from T-3 --rest failed --on 2025-10-01");
        assertEquals("50,30,20,0,0,0", take("cuttings"));
        has(trace("C-1"), "one of several batches of 25 T-1");
        has(trace("C-1"), "one of several batches of 20 T-2");
        has(desk.type("take --by mother --format csv").out(), "several mothers: K-1 + K-2,45,30,15,");
    }

    @Test
    void splitTrayCountsOnce() {
        desk.done("cuttings strike T-1 --mother K-1 --count 60 --on 2025-08-01");
        desk.done("split T-2 T-3 --from T-1 --count 20 --on 2025-09-01");
        desk.done("cuttings draw C-1..C-15 --from T-2 --rest failed --on 2025-11-01");
        assertEquals("60,15,5,0,40,0", take("cuttings"));
        has(trace("C-1"), "batch T-2");
        has(trace("C-1"), "batch of 20 T-1");
    }

    @Test
    void recountPutsTheNumberRightAndLeavesTheMissingUnaccounted() {
        desk.done("cuttings strike T-1 --mother K-1 --count 60 --on 2026-05-01");
        desk.done("count T-1 --there 57 --reason 'three gone' --on 2026-06-01");
        assertEquals("60,0,0,0,60,3", take("cuttings"));
        desk.done("count T-1 --there 58 --reason 'one found' --on 2026-06-02");
        assertEquals("61,0,0,0,61,3", take("cuttings"));
        has(plant("T-1"), "[58 pending]");
    }

    @Test
    void closingAMotherSettlesAllLayersStillOnHer() {
        desk.done("layer set J-1..J-4 --mother K-1 --on 2023-05-01");
        desk.done("layer sever J-1 --on 2023-09-01");
        assertEquals("4,1,0,0,3,3", take("layers"));
        has(desk.done("close K-1 --rest failed --on 2024-05-01"), "closed J-2..J-4 (3)");
        assertEquals("4,1,3,0,0,0", take("layers"));
        assertEquals(
                "ortet: nothing is pending under K-1, and no layer is on it\n",
                desk.refused("close K-1 --rest failed"));
    }

    @Test
    void closingAsStillOnStartsTheWaitAnewAndAsNotSeenLeavesThemUnaccounted() {
        desk.done("layer set J-1 J-2 --mother K-1 --on 2023-05-01");
        desk.done("close J-1 --rest still-on --on 2026-06-01");
        desk.done("close J-2 --rest not-seen --on 2026-06-01");
        assertEquals("2,0,0,0,2,1", take("layers"));
        has(plant("J-2"), "[closed as not seen on 2026-06-01]");
    }

    @Test
    void drawingWithTheRestFailedSettlesTheTray() {
        desk.done("cuttings strike T-1 --mother K-1 --count 60 --on 2025-06-01");
        desk.done("cuttings draw C-1..C-45 --from T-1 --rest failed --on 2025-10-01");
        assertEquals("60,45,15,0,0,0", take("cuttings"));
    }

    @Test
    void trayFromSeveralMothersIsFromOneOfThem() {
        desk.done("cuttings strike T-1 --mother K-1:40,K-2:20 --count 60 --on 2025-06-01");
        desk.done("cuttings draw C-1..C-30 --from T-1 --rest failed --on 2025-10-01");
        has(trace("C-1"), "one of several mothers of 40 K-1");
        has(trace("C-1"), "one of several mothers of 20 K-2");
        has(desk.type("take --by mother --format csv").out(), "several mothers: K-1 + K-2,60,30,30,");
        has(plant("K-1"), "60 in batches shared with other mothers");
    }

    @Test
    void sowingByWeightHasNoRateEvenWhenItIsCounted() {
        desk.done("sow S-1 --grams 12 --mother K-1 --on 2026-03-01");
        assertEquals("none", take("seed"));
        desk.done("count S-1 --there 85 --on 2026-06-01");
        assertEquals("none", take("seed"));
        has(desk.done("take --by method"), "1 sowing by weight in no row (S-1): 85 seedlings");
        has(plant("S-1"), "[85 growing]");
    }

    @Test
    void culledForQualityHasTakenAndCulledAsSurplusCountsForNothing() {
        desk.done("layer set J-1..J-3 --mother K-1 --on 2025-05-01");
        desk.done("layer sever J-1 --on 2025-09-01");
        desk.done("cull J-1 --why quality --on 2026-03-01");
        desk.done("cull J-2 --why surplus --on 2025-06-01");
        assertEquals("3,1,0,1,1,0", take("layers"));
        assertEquals(
                "ortet: J-3 has not taken yet: say that it failed, or cull it as surplus\n",
                desk.refused("cull J-3 --why quality"));
    }

    @Test
    void heldPlantsLeaveOnlyWhenTheyAreCleared() {
        desk.done("hold K-1 --sign 'leaf spots' --sample 26-17 --on 2026-05-01");
        has(plant("K-1"), "HELD");
        assertEquals(
                "ortet: K-1 is held for plant health; clear it before anything is taken from it\n",
                desk.refused("layer set J-1 --mother K-1"));
        desk.done("clear K-1 --on 2026-06-01");
        desk.done("sell K-1 --to 'An Example'");
        assertFalse(plant("K-1").contains("HELD"));
    }

    @Test
    void reservedPlantSoldToAnotherIsRemarkedOn() {
        desk.done("person add 'Another Example' --role customer");
        desk.done("reserve K-1 --to 'An Example' --on 2026-05-01");
        has(plant("K-1"), "reserved");
        has(
                desk.done("sell K-1 --to 'Another Example'"),
                "remark: K-1: sold to Another Example, but reserved for An Example");
    }

    @Test
    void reworkedLayerStaysInItsCohort() {
        desk.done("layer set J-1 --mother K-1 --on 2024-05-01");
        desk.done("layer rework J-1 --how re-ringed --ring 20 --on 2025-05-01");
        desk.done("layer sever J-1 --on 2025-10-01");
        assertEquals("1,1,0,0,0,0", take("layers"));
        has(desk.type("take --by season --format csv").out(), "2024,1,1,");
    }

    @Test
    void rootstockComesBackWhenItsGraftFails() {
        desk.done("acquire R-1 --count 10 --on 2025-01-01");
        desk.done("graft G-1..G-4 --scion K-1 --stock R-1 --kind cleft --on 2026-02-01");
        has(plant("R-1"), "[6 growing]");
        desk.done("enter failed G-1 G-2 cause=union-failed --on 2026-04-01");
        desk.done("taken G-3 G-4 --on 2026-05-01");
        has(plant("R-1"), "[8 growing]");
        assertEquals("4,2,2,0,0,0", take("grafts"));
        has(trace("G-3"), "scion K-1");
        has(trace("G-3"), "rootstock R-1");
    }

    @Test
    void motherSoldWithLayersOnNeedsAWordFirst() {
        desk.done("layer set J-1 J-2 --mother K-1 --on 2026-05-01");
        assertTrue(desk.refused("sell K-1 --to 'An Example'").contains("with 2 layers on her (J-1 J-2)"));
        desk.done("sell K-1 --to 'An Example' --layers withdrawn");
        assertEquals("2,0,0,2,0,0", take("layers"));
    }

    @Test
    void motherLostWithLayersOnFailsThem() {
        desk.done("layer set J-1 J-2 --mother K-1 --on 2026-05-01");
        desk.done("lose K-1 --cause wind --layers failed");
        assertEquals("2,0,2,0,0,0", take("layers"));
    }

    @Test
    void plantedOutAndLifted() {
        desk.done("plant-out K-1 --to 'Field bed 3' --on 2026-03-01");
        has(plant("K-1"), "at Field bed 3 since 2026-03-01, in open ground since 2026-03-01");
        desk.done("lift K-1 --into '30 L' --place 'House 1' --on 2026-05-01");
        has(plant("K-1"), "at House 1 since 2026-05-01, in 30 L since 2026-05-01");
    }

    @Test
    void intoABonsaiPot() {
        desk.done("pot K-1 --into 'oval 34 cm' --purpose bonsai-pot --on 2026-03-01");
        has(trace("K-1"), "potted into oval 34 cm: purpose bonsai-pot");
    }

    @Test
    void motherOffSiteAndNotOwnedGivesWoodAllTheSame() {
        desk.done("acquire X-1 --cultivar 'Acer palmatum' --ownership elsewhere --on 2020 --note 'in a garden nearby'");
        desk.done("cuttings strike T-1 --mother X-1 --count 10 --on 2025-06-01");
        has(trace("T-1"), "mother X-1");
        has(plant("X-1"), "ownership elsewhere");
    }

    @Test
    void divisionsAndSports() {
        desk.done("divide D-1 D-2 --mother K-2 --remainder used-up --on 2026-03-01");
        has(plant("K-2"), "[used up on 2026-03-01]");
        has(trace("D-1"), "mother K-2");
        desk.done("sport SP-1 --mother K-1 --branch 'west 2' --on 2025-05-01");
        desk.done("layer set J-1 --mother SP-1 --on 2025-05-02");
        desk.done("layer sever J-1 --on 2025-09-01");
        has(trace("J-1"), "origin: ortet SP-1, a sport found on K-1");
    }

    @Test
    void soldPlantComesBack() {
        desk.done("sell K-1 --to 'An Example' --on 2026-05-01");
        desk.done("return K-1 --from 'An Example' --reason 'too tall' --place 'House 1' --on 2026-05-20");
        has(plant("K-1"), "[growing]");
        desk.done("grade K-1 --size '60-80 mm, field' --grade A");
        desk.done("release K-1 --from stock");
        desk.done("keep K-1");
        desk.done("leave-long K-1");
        desk.done("cut-back K-1");
        desk.done("remark K-1 --text 'bleeds late'");
        has(plant("K-1"), "kept");
    }

    @Test
    void stocktakingTellsWhatIsMissingAndWhatIsStrange() {
        desk.done("acquire A-1..A-3 --place 'House 1' --on 2020");
        desk.done("acquire B-1 --place 'House 2' --on 2020");
        desk.done("lose A-3 --on 2025-01-01");
        assertEquals("""
                2 units seen at House 1 as expected
                missing    2 units: A-2 K-2
                not here   B-1, by the book at House 2
                gone       A-3, by the book; see "ortet plant A-3"
                unknown    A-9 is not in the book; nearest: A-1, A-2, A-3

                #5  seen A-1 K-1 B-1 (3); 2026-06-15, Aoife; place House 1
                """, desk.done("seen 'House 1' A-1 K-1 A-1 B-1 A-3 A-9 --by Aoife"));
        has(plant("B-1"), "at House 1 since 2026-06-15");
    }

    @Test
    void settingThatNobodyRecordedIsInTheLineageAndInNoRate() {
        desk.done("enter layer-set J-1 mother=K-1 set_unrecorded=yes --on 2020");
        desk.done("layer sever J-1 --on 2020-09-01");
        has(trace("J-1"), "mother K-1");
        assertEquals("none", take("layers"));
    }
}
