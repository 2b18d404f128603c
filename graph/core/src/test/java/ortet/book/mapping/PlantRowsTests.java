package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One row for each plant: where it comes from, what was done to it, and what became of it. */
class PlantRowsTests {
    private static final String COLUMNS = "tag,method,mother,begun day,severed day,outcome,outcome day";

    private static Sheets sheets(String... more) {
        return Sheets.plants(COLUMNS, more);
    }

    /** Return what becomes of rows below the usual header, none of which has a fault. */
    private static List<String> entries(Sheets sheets, String... rows) {
        Imported imported = sheets.write(lines(rows));
        assertEquals(List.of(), Sheets.lines(imported));
        return sheets.entries();
    }

    private static List<String> entries(String... rows) {
        return entries(sheets(), rows);
    }

    private static String[] lines(String... rows) {
        return (COLUMNS + "\n" + String.join("\n", rows)).split("\n");
    }

    private static List<String> faults(String... rows) {
        return sheets().faults(lines(rows));
    }

    // ---- parents ----

    @Test
    void takesChildrenBeforeTheirMothers() {
        assertEquals(
                List.of(
                        "2010 acquired tags=K-1",
                        "2015-05-01 layer-set tags=L-1 mother=K-1",
                        "2015-09-01 severed tags=L-1",
                        "2018-05-01 layer-set tags=L-2 mother=L-1"),
                entries(
                        "L-2,layer,L-1,2018-05-01,,,",
                        "L-1,layer,K-1,2015-05-01,2015-09-01,,",
                        "K-1,acquired,,2010,,,"));
    }

    @Test
    void acquiresMothersWithoutARowInTheEarliestYearOfTheirChildren() {
        Sheets sheets = sheets();
        Imported imported = sheets.write(lines("L-1,layer,K-9,2015-05-01,,,", "L-2,layer,K-9,2012-05-01,,,"));
        assertEquals(
                "2012 acquired tags=K-9 note=earliest known, origin unknown: had no row of its own",
                sheets.entries().get(0));
        assertEquals(1, imported.withoutRow());
        assertEquals(
                List.of(
                        "a.csv:2: K-9 has no row of its own (named here and 1 other row): acquired in 2012, earliest known, origin"
                                + " unknown"),
                Sheets.remarks(imported));
    }

    @Test
    void asksWhetherAMotherWithoutARowIsAnotherMisread() {
        Imported imported = sheets().write(lines("K-12,acquired,,2010,,,", "L-1,layer,K-l2,2015-05-01,,,"));
        assertTrue(
                Sheets.remarks(imported).get(0).endsWith("origin unknown; or is it K-12?"),
                () -> Sheets.remarks(imported).toString());
    }

    @Test
    void refusesMothersWithoutARowWhereTheMappingSaysSo() {
        assertEquals(
                List.of("a.csv:2:mother: no plant or batch K-9 in the rows or in the book; nearest: K-1, L-1"),
                sheets("mothers without a row = refuse")
                        .faults(lines("L-1,layer,K-9,2015,,,", "K-1,acquired,,2010,,,")));
    }

    @Test
    void findsTagsWhateverTheirCaseAndKeepsTheSpellingOfTheRow() {
        assertEquals(
                List.of("2010 acquired tags=K-1", "2015 layer-set tags=L-1 mother=K-1"),
                entries("L-1,layer,k-1,2015,,,", "K-1,acquired,,2010,,,"));
    }

    @Test
    void findsPlantsOfTheBook() {
        Sheets sheets = sheets();
        sheets.diary().write("2010 acquired K-1");
        assertEquals(
                List.of("2010 acquired tags=K-1", "2015 layer-set tags=L-1 mother=K-1"),
                entries(sheets, "L-1,layer,k-1,2015,,,"));
    }

    @Test
    void asksForTheMotherOfALayer() {
        assertEquals(
                List.of(
                        "a.csv:2:mother: must not be empty: a layer has a mother; where nobody knows her, a line without a mother ="
                                + " acquire in the mapping takes it as earliest known, origin unknown"),
                faults("L-1,layer,,2015,,,"));
        assertEquals(
                List.of("2015 acquired tags=L-1 raised=layer note=the mother was not recorded"),
                entries(sheets("without a mother = acquire"), "L-1,layer,,2015,,,"));
    }

    @Test
    void asksHowSomethingComesFromItsMother() {
        assertEquals(
                List.of(
                        "a.csv:2:method: must not be empty: how does it come from K-1? expected a method such as layer, cuttings or"
                                + " graft"),
                faults("L-1,,K-1,2015,,,"));
    }

    @Test
    void refusesAMotherOfWhatWasAcquired() {
        assertEquals(
                List.of(
                        "a.csv:2:mother: what was acquired comes from nothing in the book, so K-1 cannot be its mother; expected a"
                                + " method such as layer, or nothing here"),
                faults("L-1,acquired,K-1,2015,,,"));
    }

    @Test
    void sortsTwoParentsByTheMethod() {
        Sheets sheets = Sheets.plants("tag,method,mother,other parent,begun day");
        sheets.write(
                "tag,method,mother,other parent,begun day",
                "G-1,graft,K-1,Acer palmatum,2015-02-01",
                "G-2,graft,K-1,R-1,2015-02-01",
                "S-1,seed,K-1,K-2,2015-10-01",
                "C-1,cuttings,K-1,,2015-07-01");
        assertEquals(
                List.of(
                        "2015 acquired tags=K-1 note=earliest known, origin unknown: had no row of its own",
                        "2015 acquired tags=K-2 note=earliest known, origin unknown: had no row of its own",
                        "2015 acquired tags=R-1 note=earliest known, origin unknown: had no row of its own",
                        "2015-02-01 graft-worked tags=G-1 scion=K-1 stock_cultivar=Acer palmatum",
                        "2015-02-01 graft-worked tags=G-2 scion=K-1 stock=R-1",
                        "2015-07-01 cuttings-struck tags=C-1 mothers=K-1 count=1",
                        "2015-10-01 seed-sown tags=S-1 count=1 seed_parent=K-1 pollen_parent=K-2"),
                sheets.entries().stream().sorted().toList());
    }

    // ---- days that nobody wrote down ----

    @Test
    void keepsAnOutcomeWithoutASettingInTheLineageAndOutOfEveryRate() {
        assertEquals(
                List.of(
                        "2010 acquired tags=K-1",
                        "2017 layer-set tags=L-1 mother=K-1 set_unrecorded=yes",
                        "2017-09-01 severed tags=L-1"),
                entries("L-1,layer,K-1,,2017-09-01,,", "K-1,acquired,,2010,,,"));
    }

    @Test
    void putsABeginningWithoutADayIntoTheYearOfTheFirstThatRestsOnIt() {
        assertEquals(
                List.of(
                        "2012 acquired tags=K-1 note=the day is not known: there by 2012",
                        "2012 layer-set tags=L-1 mother=K-1 set_unrecorded=yes",
                        "2012-04-30 severed tags=L-1 note=the day is not known: severed by then",
                        "2012-05-01 layer-set tags=L-2 mother=L-1"),
                entries("L-1,layer,K-1,,,,", "L-2,layer,L-1,2012-05-01,,,", "K-1,acquired,,,,,"));
    }

    @Test
    void refusesABeginningWithoutADayWhereNothingTellsTheYear() {
        assertEquals(
                List.of(
                        "a.csv:2:begun day: must not be empty: nothing in the rows says when K-1 was there; expected a day, month or"
                                + " year, or a line such as otherwise begun day = 2010 in the mapping"),
                faults("K-1,acquired,,,,,"));
        assertEquals(
                List.of("2010 acquired tags=K-1"), entries(sheets("otherwise begun day = 2010"), "K-1,acquired,,,,,"));
    }

    @Test
    void tellsThatWhatGaveWoodHadTakenBefore() {
        Sheets sheets = sheets();
        Imported imported = sheets.write(
                lines("K-1,acquired,,2010,,,", "L-1,layer,K-1,2012-05-01,,,", "L-2,layer,L-1,2015-05-04,,,"));
        assertTrue(
                sheets.entries().contains("2015-05-03 severed tags=L-1 note=the day is not known: severed by then"),
                () -> sheets.entries().toString());
        assertEquals(
                List.of("a.csv:4: nothing tells when L-1 was severed: it counts as severed by 2015-05-03"),
                Sheets.remarks(imported));
    }

    @Test
    void asksWhenItTookWhereNothingTells() {
        assertEquals(
                List.of(
                        "a.csv:2:severed day: must not be empty: nothing says when L-1 took; expected a day, month or year, or a line"
                                + " such as otherwise outcome day = same year in the mapping"),
                faults("L-1,layer,K-1,2015-05-01,,taken,"));
        assertTrue(entries(sheets("otherwise outcome day = same year"), "L-1,layer,K-1,2015-05-01,,taken,")
                .contains("2015 severed tags=L-1"));
        assertTrue(entries(sheets("otherwise outcome day = next year"), "L-1,layer,K-1,2015-05-01,,taken,")
                .contains("2016 severed tags=L-1"));
    }

    // ---- outcomes ----

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "layer | taken | 2016-09-01 severed tags=X-1",
                "cuttings | taken | 2016-09-01 taken tags=X-1",
                "graft | taken | 2016-09-01 taken tags=X-1",
                "layer | failed rotted | 2016-09-01 failed tags=X-1 cause=rotted",
                "layer | withdrawn | 2016-09-01 failed tags=X-1 cause=withdrawn",
                "layer | dead frost | 2016-09-01 failed tags=X-1 cause=frost",
                "acquired | dead | 2016-09-01 lost tags=X-1",
                "acquired | sold | 2016-09-01 sold tags=X-1",
                "acquired | culled surplus | 2016-09-01 culled tags=X-1 cull=surplus",
                "acquired | growing | 2016-09-01 seen tags=X-1",
            })
    void readsWhatBecameOfIt(String method, String outcome, String entry) {
        String mother = method.equals("acquired") ? "" : "K-1";
        List<String> entries = entries("X-1," + method + "," + mother + ",2016-05-01,," + outcome + ",2016-09-01");
        assertEquals(entry, entries.get(entries.size() - 1));
    }

    @Test
    void saysNothingOfWhatIsStillPending() {
        List<String> entries = entries("X-1,layer,K-1,2016-05-01,,pending,");
        assertEquals(2, entries.size());
    }

    @Test
    void losesWhatDiedAfterItWasSevered() {
        List<String> entries = entries("X-1,layer,K-1,2016-05-01,2016-09-01,dead,2017-01-01");
        assertEquals(
                List.of("2016-09-01 severed tags=X-1", "2017-01-01 lost tags=X-1"),
                entries.subList(entries.size() - 2, entries.size()));
    }

    @Test
    void readsFailedOnTheDayOfSeveringAsNoRoots() {
        List<String> entries = entries("X-1,layer,K-1,2016-05-01,2016-09-01,failed,");
        assertEquals("2016-09-01 severed tags=X-1 roots=none", entries.get(entries.size() - 1));
    }

    @Test
    void readsPotsSideBySide() {
        Sheets sheets = Sheets.plants(
                "tag,begun day,potted day,potted container,potted 2 day,potted 2 container",
                "otherwise method = acquired");
        sheets.write(
                "tag,begun day,potted day,potted container,potted 2 day,potted 2 container",
                "T-1,2010,2012,2 L,2015-04-01,5 L",
                "T-2,2010,,,,");
        assertEquals(
                List.of("2012 potted tags=T-1 container=2 L", "2015-04-01 potted tags=T-1 container=5 L"),
                sheets.entries().stream()
                        .filter(line -> line.contains("potted"))
                        .toList());
    }

    @Test
    void asksForTheDayOfAnActThatARowTellsOf() {
        Sheets sheets = Sheets.plants("tag,begun day,potted day,potted container", "otherwise method = acquired");
        assertEquals(
                List.of(
                        "a.csv:2:potted day: must not be empty, for the row says something of what was potted; expected a day, month"
                                + " or year, or a line such as otherwise potted day = same year in the mapping"),
                sheets.faults("tag,begun day,potted day,potted container", "T-1,2010,,2 L"));
    }

    // ---- what stands twice ----

    @Test
    void takesARowThatStandsTwiceOnce() {
        Sheets sheets = sheets();
        Imported imported = sheets.write(lines(
                "K-1,acquired,,2010,,,", "L-1,layer,K-1,2015,,,", "L-1,layer,K-1,2015,,,", "l-1,layer,k-1,2015,,,"));
        assertEquals(2, imported.files().get(0).repeated());
        assertEquals(2, sheets.entries().size());
    }

    @Test
    void refusesTwoRowsAboutOnePlantThatDoNotAgree() {
        assertEquals(
                List.of(
                        "a.csv:2:tag: L-1 has another row, a.csv:3, that does not say the same (mother \"K-1\" here, \"K-2\" there);"
                                + " expected one row for a plant",
                        "a.csv:3:tag: L-1 has another row, a.csv:2, that does not say the same (mother \"K-2\" here, \"K-1\" there);"
                                + " expected one row for a plant"),
                faults("L-1,layer,K-1,2015,,,", "L-1,layer,K-2,2015,,,"));
    }

    @Test
    void refusesAPlantThatComesFromItself() {
        List<String> faults = faults("L-1,layer,L-2,2015,,,", "L-2,layer,L-1,2016,,,");
        assertEquals(1, faults.size(), faults::toString);
    }

    // ---- the same sheet again, with more in it ----

    @Test
    void addsWhatHasComeSinceAndLeavesTheRest() {
        Sheets sheets = sheets();
        sheets.write(lines("K-1,acquired,,2010,,,", "L-1,layer,K-1,2015,,,"));
        Imported again = sheets.write(lines(
                "K-1,acquired,,2010,,,",
                "L-1,layer,K-1,2015,2016,,",
                "L-2,layer,K-1,2017,,,",
                "L-3,layer,K-9,2017,,,"));
        assertEquals(List.of(), Sheets.lines(again));
        assertEquals(
                List.of(
                        "2016 severed tags=L-1",
                                "2017 acquired tags=K-9 note=earliest known, origin unknown: had no row of its own",
                        "2017 layer-set tags=L-2 mother=K-1", "2017 layer-set tags=L-3 mother=K-9"),
                sheets.entries().subList(2, 6));
        assertEquals(2, again.loaded().orElseThrow().repeated());
    }

    @Test
    void refusesARowThatSaysSomethingElseThanBefore() {
        Sheets sheets = sheets();
        sheets.write(lines("K-1,acquired,,2010,,,", "L-1,layer,K-1,2015,,,"));
        List<String> faults = sheets.faults(lines("K-1,acquired,,2010,,,", "L-1,layer,K-2,2015,,,"));
        assertEquals(1, faults.size(), faults::toString);
        assertTrue(faults.get(0).startsWith("a.csv:3:"), faults::toString);
    }

    // ---- rows that rest on others ----

    @Test
    void leavesOutWhatRestsOnARowThatDoesNotHold() {
        Sheets sheets = sheets();
        Imported imported = sheets.writeWhatHolds(lines(
                "K-1,acquired,,2010-13-01,,,",
                "L-1,layer,K-1,2015,2016,,",
                "L-2,layer,L-1,2018,,,",
                "K-2,acquired,,2010,,,"));
        assertEquals(
                List.of(
                        "a.csv:2:begun day: there is no day 2010-13-01",
                        "a.csv:3:tag: rests on K-1, whose row is not taken (a.csv:2)",
                        "a.csv:4:tag: rests on L-1, whose row is not taken (a.csv:3)"),
                Sheets.lines(imported));
        assertEquals(List.of("2010 acquired tags=K-2"), sheets.entries());
        assertEquals(1, imported.wrong());
        assertEquals(2, imported.resting());
    }

    @Test
    void writesNothingUnlessAskedToTakeWhatHolds() {
        Sheets sheets = sheets();
        Imported imported = sheets.write(lines("K-1,acquired,,2010-13-01,,,", "K-2,acquired,,2010,,,"));
        assertTrue(imported.loaded().isEmpty());
        assertEquals(List.of(), sheets.entries());
    }

    @Test
    void wondersAboutAFileThatHoldsOnlyWhatTook() {
        StringBuilder rows = new StringBuilder("K-1,acquired,,2010,,,");
        for (int layer = 1; layer <= 25; layer++) {
            rows.append("\nL-").append(layer).append(",layer,K-1,2015,2016,,");
        }
        Imported imported = sheets().write(lines(rows.toString()));
        assertEquals(
                List.of(
                        "a.csv: of 25 raised as layer none failed; if the sheet holds only what took, a line otherwise set unrecorded ="
                                + " yes in the mapping keeps them out of every rate"),
                Sheets.remarks(imported));
        assertEquals(
                List.of(),
                Sheets.remarks(sheets("otherwise set unrecorded = yes").write(lines(rows.toString()))));
    }
}
