package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.entry.EntryKind;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Refused;

class TraceTests {
    private final Diary diary = new Diary();

    @BeforeEach
    void growTheMotherOfTheHouse() {
        diary.person(1, "Nuala", Person.Role.STAFF);
        diary.person(2, "Harte and Daughter", Person.Role.CUSTOMER);
        diary.person(3, "Glenmoy Plants", Person.Role.SUPPLIER);
        diary.write(
                "2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'; supplier=#3; raised=graft; container=10 L;"
                        + " place=House 1",
                "2016-03-01 potted K-1; container=20 L; by=#1",
                "2018-04-01 moved K-1; place=House 2");
    }

    private Trace trace(String tag) {
        return trace(tag, Diary.TODAY);
    }

    private Trace trace(String tag, LocalDate asOf) {
        return diary.store().read(view -> Lineage.trace(view, new Tag(tag), asOf));
    }

    /** A step with all above it, as {@code J-1 <LAYERED_FROM K-1 <…}. */
    private static String shape(Step step) {
        StringBuilder text = new StringBuilder(step.tag().text());
        for (Source source : step.sources()) {
            text.append(" (")
                    .append(source.act())
                    .append(' ')
                    .append(source.step()
                            .map(TraceTests::shape)
                            .orElseGet(() -> source.tag() + (source.isToldElsewhere() ? " as told" : " left out")))
                    .append(')');
        }
        return text.toString();
    }

    private static List<String> days(List<Deed> deeds) {
        return deeds.stream().map(deed -> deed.day() + " " + deed.kind().word()).toList();
    }

    private void layer() {
        diary.write(
                "2020-05-03 layer-set J-1; mother=K-1; stem_mm=12; ring_mm=15; wound=full-ring; hormone=IBA;"
                        + " strength=0.3%; by=#1",
                "2020-06-01 moved K-1; place=House 3",
                "2021-08-20 severed J-1; roots=full; container=2 L; place=Bench 4; by=#1",
                "2021-09-10 potted K-1; container=30 L",
                "2022-03-15 potted J-1; container=5 L; purpose=pot-on",
                "2022-05-01 moved J-1 ; place=Yard",
                "2022-06-01 moved K-1; place=Yard",
                "2022-07-01 noted K-1; note=scale on two shoots",
                "2024-05-03 sold J-1; customer=#2; price=240 EUR");
    }

    @Test
    void leadsFromASaleTreeThroughEveryPottingToItsMother() {
        layer();
        Trace trace = trace("J-1");
        assertEquals("J-1 (LAYERED_FROM K-1)", shape(trace.tree()));
        Step tree = trace.tree();
        assertEquals("Acer palmatum 'Deshojo'", tree.named().toString());
        assertEquals(Named.How.FROM_ITS_SOURCE, tree.named().how());
        assertEquals(Optional.of(new Tag("K-1")), tree.named().through());
        assertEquals("sold on 2024-05-03 to Harte and Daughter", tree.state().toString());
        assertEquals(
                List.of("2021-08-20 severed", "2022-03-15 potted", "2022-05-01 moved", "2024-05-03 sold"),
                days(tree.between()));
        assertEquals(Optional.of("2 L"), tree.between().get(0).container());
        assertEquals(Optional.of(new Place("Bench 4")), tree.between().get(0).place());
        assertEquals(Optional.of("Nuala"), tree.between().get(0).by());
        assertEquals(Map.of("purpose", "pot-on"), tree.between().get(1).details());
        assertEquals(
                "Harte and Daughter", tree.between().get(3).detail("customer").orElseThrow());
        assertEquals(2, trace.units());
        assertTrue(trace.isWhole());
    }

    @Test
    void tellsTheWordsThatMatterOfTheActThatMadeIt() {
        layer();
        Deed set = trace("J-1").tree().begun();
        assertEquals(EntryKind.LAYER_SET, set.kind());
        assertEquals("2020-05-03", set.day().toString());
        assertEquals(Optional.of("Nuala"), set.by());
        assertEquals(
                Map.of("stem_mm", "12", "ring_mm", "15", "wound", "full-ring", "hormone", "IBA", "strength", "0.3%"),
                set.details());
        Deed acquired =
                trace("J-1").tree().sources().get(0).step().orElseThrow().begun();
        assertEquals(Optional.of("Glenmoy Plants"), acquired.detail("supplier"));
        assertEquals(Optional.of("graft"), acquired.detail("raised"));
        assertEquals(Optional.of("10 L"), acquired.container());
    }

    @Test
    void tellsAMotherUpToTheSeveringAndCountsWhatCameLater() {
        layer();
        Step mother = trace("J-1").tree().sources().get(0).step().orElseThrow();
        assertEquals(List.of("2016-03-01 potted", "2018-04-01 moved", "2020-06-01 moved"), days(mother.between()));
        assertEquals(new Later(1, 1, 1), mother.later());
        assertEquals("growing", mother.state().toString());
    }

    @Test
    void tellsAMotherUpToTheActWhereTheChildLeftAtOnce() {
        diary.write(
                "2018-04-01 cuttings-struck T-1; mothers=K-1; count=60",
                "2018-04-02 potted K-1; container=25 L",
                "2018-10-01 drawn P-1; source=T-1; container=9 cm",
                "2018-10-02 moved T-1; place=House 9");
        Step tray = trace("P-1").tree().sources().get(0).step().orElseThrow();
        assertEquals(List.of(), days(tray.between()));
        assertEquals(new Later(0, 1, 0), tray.later());
        Step mother = tray.sources().get(0).step().orElseThrow();
        // both on 2018-04-01: the house move is of a later rank than the striking
        assertEquals(List.of("2016-03-01 potted"), days(mother.between()));
        assertEquals(new Later(1, 1, 0), mother.later());
    }

    @Test
    void tellsAllOfTheMotherWhileTheLayerIsOnHer() {
        diary.write("2024-05-03 layer-set J-1; mother=K-1", "2025-06-01 moved K-1; place=House 3");
        Trace trace = trace("J-1");
        assertEquals("on its mother", trace.tree().state().toString());
        Step mother = trace.tree().sources().get(0).step().orElseThrow();
        assertEquals(List.of("2016-03-01 potted", "2018-04-01 moved", "2025-06-01 moved"), days(mother.between()));
        assertTrue(mother.later().isNothing());
    }

    @Test
    void tellsTheMotherOfAFailedLayerUpToItsFailure() {
        diary.write(
                "2024-05-03 layer-set J-1; mother=K-1",
                "2025-06-01 failed J-1; cause=dried",
                "2025-07-01 moved K-1; place=House 3");
        Trace trace = trace("J-1");
        assertEquals("failed on 2025-06-01", trace.tree().state().toString());
        assertEquals(
                new Later(0, 1, 0),
                trace.tree().sources().get(0).step().orElseThrow().later());
    }

    @Test
    void callsABoughtPlantTheEarliestKnownAndNeverTheOrtet() {
        layer();
        Trace trace = trace("J-1");
        assertEquals(
                "earliest known K-1, acquired (2015-03-01), origin unknown",
                trace.origin().toString());
        assertEquals(Optional.empty(), trace.origin().ortet());
        Step mother = trace.tree().sources().get(0).step().orElseThrow();
        assertEquals(Founder.Kind.ACQUIRED, mother.founder().orElseThrow().kind());
        assertEquals(Optional.empty(), trace.tree().founder());
        assertEquals(trace.origin(), trace("K-1").origin());
    }

    @Test
    void endsAtTheSeedlingThatWasDrawnFromASowing() {
        diary.write(
                "2016-03 seed-sown S-1; count=100; seed_parent=K-1; pollen_parent=K-1",
                "2017-05-01 drawn M-1; source=S-1; container=9 cm",
                "2020-05-01 layer-set J-1; mother=M-1",
                "2021-05-01 severed J-1");
        Trace trace = trace("J-1");
        assertEquals(
                "J-1 (LAYERED_FROM M-1 (DRAWN_FROM S-1 (SEED_OF K-1) (POLLEN_OF K-1 as told)))", shape(trace.tree()));
        assertEquals("ortet M-1, a seedling of S-1 (2017-05-01)", trace.origin().toString());
        assertEquals(new Tag("M-1"), trace.origin().ortet().orElseThrow().tag());
        assertEquals(
                Optional.of(Founder.Kind.SEEDLING),
                trace.tree().sources().get(0).step().orElseThrow().founder().map(Founder::kind));
        assertEquals(
                "each seedling of S-1 (2016-03) is the ortet of its own clone",
                trace("S-1").origin().toString());
        // the seedling's name is not its parent's
        assertEquals("cultivar not known", trace("M-1").tree().named().toString());
    }

    @Test
    void callsOneOfTheSeedlingsTheOrtetOfCuttingsFromATrayOfThem() {
        diary.write(
                "2016-03-01 seed-sown S-1; count=100",
                "2016-06-01 taken S-1; count=60",
                "2018-05-01 cuttings-struck T-1; mothers=S-1; count=40",
                "2018-09-01 drawn P-1; source=T-1");
        assertEquals(
                "ortet not known: one of the seedlings of S-1 (2016-03-01)",
                trace("P-1").origin().toString());
    }

    @Test
    void endsAtTheSportAndTellsItsPlantBeside() {
        diary.write(
                "2019-06-01 sport-found V-1; mother=K-1; branch=third from below; cultivar=Acer palmatum 'Nuala's Red'",
                "2019-07-01 moved K-1; place=House 4",
                "2020-05-01 layer-set J-1; mother=V-1",
                "2021-06-01 severed J-1",
                "2021-07-01 moved K-1; place=House 5");
        Trace trace = trace("J-1");
        assertEquals("J-1 (LAYERED_FROM V-1 (SPORT_OF K-1))", shape(trace.tree()));
        assertEquals(
                "ortet V-1, a sport found on K-1 (2019-06-01)", trace.origin().toString());
        assertEquals("Acer palmatum 'Nuala's Red'", trace.tree().named().toString());
        Step sport = trace.tree().sources().get(0).step().orElseThrow();
        assertEquals(Nature.SPORT, sport.nature());
        assertEquals("on its mother", sport.state().toString());
        Step plant = sport.sources().get(0).step().orElseThrow();
        assertEquals("plant that sported", sport.sources().get(0).part());
        // the sport stands where its plant stands, up to the severing
        assertEquals(List.of("2016-03-01 potted", "2018-04-01 moved", "2019-07-01 moved"), days(plant.between()));
        assertEquals(new Later(0, 1, 0), plant.later());
        diary.write("2022-01-10 lost K-1; cause=frost");
        assertEquals("lost on 2022-01-10", trace("V-1").tree().state().toString());
    }

    @Test
    void followsBothSidesOfAGraftAndTheCloneByItsScion() {
        diary.write(
                "2016-03-01 seed-sown S-1; count=100; cultivar=Acer palmatum",
                "2017-05-01 drawn R-1; source=S-1",
                "2020-02-01 graft-worked G-1; scion=K-1; stock=R-1; graft=side-veneer",
                "2020-06-01 taken G-1");
        Trace trace = trace("G-1");
        assertEquals("G-1 (SCION_OF K-1) (ROOTSTOCK_OF R-1 (DRAWN_FROM S-1))", shape(trace.tree()));
        assertEquals(
                List.of("scion", "rootstock"),
                trace.tree().sources().stream().map(Source::part).toList());
        assertEquals(
                "earliest known K-1, acquired (2015-03-01), origin unknown",
                trace.origin().toString());
        assertEquals("Acer palmatum 'Deshojo'", trace.tree().named().toString());
        assertEquals(Map.of("graft", "side-veneer"), trace.tree().begun().details());
        Step stock = trace.tree().sources().get(1).step().orElseThrow();
        assertEquals("worked as a rootstock on 2020-02-01", stock.state().toString());
        assertEquals(Optional.of(Founder.Kind.SEEDLING), stock.founder().map(Founder::kind));
        assertEquals("Acer palmatum", stock.named().toString());
    }

    @Test
    void saysThatTheScionIsNotInTheBook() {
        diary.write("2020-02-01 graft-worked G-1; cultivar=Acer palmatum 'Katsura'; stock_cultivar=Acer palmatum");
        assertEquals(
                "earliest known G-1, raised here (2020-02-01) from what is not in the book, origin unknown",
                trace("G-1").origin().toString());
        assertEquals(Optional.of("Acer palmatum"), trace("G-1").tree().begun().detail("stock_cultivar"));
    }

    @Test
    void saysOneOfSeveralWhereSeveralMothersGaveTheCuttings() {
        diary.write(
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2019-06-01 cuttings-struck T-1; mothers=K-1:30 K-2; count=60",
                "2019-10-01 drawn P-1; source=T-1");
        Trace trace = trace("P-1");
        assertEquals("P-1 (DRAWN_FROM T-1 (STRUCK_FROM K-1) (STRUCK_FROM K-2))", shape(trace.tree()));
        assertTrue(trace.origin().isOneOfSeveral());
        assertEquals(
                "one of 2: earliest known K-1, acquired (2015-03-01), origin unknown; earliest known K-2, acquired"
                        + " (2015-03-01), origin unknown",
                trace.origin().toString());
        assertEquals(
                "one of Acer palmatum 'Deshojo', Acer palmatum 'Katsura'",
                trace.tree().named().toString());
        List<Source> mothers =
                trace.tree().sources().get(0).step().orElseThrow().sources();
        assertEquals("one of several mothers", mothers.get(0).part());
        assertEquals(Optional.of(30), mothers.get(0).count());
        assertEquals(Optional.empty(), mothers.get(1).count());
        diary.write("2020-06-01 redetermined P-1; cultivar=Acer palmatum 'Katsura'");
        assertEquals(Named.How.DETERMINED, trace("P-1").tree().named().how());
        assertEquals("Acer palmatum 'Katsura'", trace("P-1").tree().named().toString());
    }

    @Test
    void isCertainWhereAllOfSeveralLeadToTheSameBeginning() {
        diary.write(
                "2018-05-01 layer-set K-2 K-3; mother=K-1",
                "2018-09-01 severed K-2 K-3",
                "2020-06-01 cuttings-struck T-1; mothers=K-2 K-3; count=60",
                "2020-10-01 drawn P-1; source=T-1");
        Trace trace = trace("P-1");
        assertFalse(trace.origin().isOneOfSeveral());
        assertEquals(
                "earliest known K-1, acquired (2015-03-01), origin unknown",
                trace.origin().toString());
        assertEquals("Acer palmatum 'Deshojo'", trace.tree().named().toString());
        assertEquals(
                "P-1 (DRAWN_FROM T-1 (STRUCK_FROM K-2 (LAYERED_FROM K-1)) (STRUCK_FROM K-3 (LAYERED_FROM K-1 as"
                        + " told)))",
                shape(trace.tree()));
    }

    @Test
    void saysOneOfAAndBForAPlantFoundWithoutItsLabel() {
        diary.write(
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2022-05-01 found-untagged F-1; candidates=K-1 K-2; place=Yard");
        Trace trace = trace("F-1");
        assertEquals("F-1 (ONE_OF K-1) (ONE_OF K-2)", shape(trace.tree()));
        assertEquals(
                "one of several that it may be", trace.tree().sources().get(0).part());
        assertTrue(trace.origin().isOneOfSeveral());
        assertEquals(
                "one of Acer palmatum 'Deshojo', Acer palmatum 'Katsura'",
                trace.tree().named().toString());
    }

    @Test
    void leadsThroughSplitAndMergedTrays() {
        diary.write(
                "2019-06-01 cuttings-struck T-1 T-2; mothers=K-1; count=30",
                "2019-07-01 split T-3; source=T-1; count=10",
                "2019-08-01 merged T-4; sources=T-2 T-3",
                "2020-04-01 drawn P-1; source=T-4");
        Trace trace = trace("P-1");
        assertEquals(
                "P-1 (DRAWN_FROM T-4 (MERGED_FROM T-2 (STRUCK_FROM K-1)) (MERGED_FROM T-3 (SPLIT_FROM T-1"
                        + " (STRUCK_FROM K-1 as told))))",
                shape(trace.tree()));
        assertEquals(
                "one of several batches",
                trace.tree()
                        .sources()
                        .get(0)
                        .step()
                        .orElseThrow()
                        .sources()
                        .get(0)
                        .part());
        assertFalse(trace.origin().isOneOfSeveral());
    }

    @Test
    void leadsThroughDivisions() {
        diary.write("2019-03-01 divided D-1 D-2; mother=K-1");
        assertEquals("D-1 (DIVIDED_FROM K-1)", shape(trace("D-1").tree()));
    }

    @Test
    void treatsBoughtSeedlingsAsClonesOfTheirOwn() {
        diary.write(
                "2020-11-01 acquired A-1; count=50; raised=seed",
                "2020-11-01 acquired A-2; count=50; raised=cutting",
                "2021-04-01 drawn P-1; source=A-1",
                "2021-04-01 drawn P-2; source=A-2");
        assertEquals(
                "earliest known P-1, drawn from A-1 (2021-04-01), which was acquired, origin unknown",
                trace("P-1").origin().toString());
        assertEquals(
                "earliest known A-2, acquired (2020-11-01), origin unknown",
                trace("P-2").origin().toString());
        assertEquals(
                "each plant of A-1, acquired (2020-11-01), is a clone of unknown origin",
                trace("A-1").origin().toString());
    }

    @Test
    void isFoundUnderOldAndNewTags() {
        layer();
        diary.write("2023-01-01 retagged J-1; new_tag=J-1B");
        for (String tag : List.of("J-1", "J-1B")) {
            Step tree = trace(tag).tree();
            assertEquals(new Tag("J-1B"), tree.tag());
            assertEquals(List.of(new Tag("J-1")), tree.earlierTags());
        }
        Step before = trace("J-1B", LocalDate.of(2022, 12, 31)).tree();
        assertEquals(new Tag("J-1"), before.tag());
        assertTrue(days(trace("J-1").tree().between()).contains("2023-01-01 retagged"));
    }

    @Test
    void answersAsOfADay() {
        layer();
        assertEquals(
                "on its mother",
                trace("J-1", LocalDate.of(2021, 8, 19)).tree().state().toString());
        Step growing = trace("J-1", LocalDate.of(2022, 4, 1)).tree();
        assertEquals("growing", growing.state().toString());
        assertEquals(List.of("2021-08-20 severed", "2022-03-15 potted"), days(growing.between()));
        Step back = trace("J-1", LocalDate.of(2024, 5, 3)).tree();
        assertEquals(Map.of(Reason.SOLD, 1), back.state().left());
    }

    @Test
    void refusesAnUnknownTagWithTheNearest() {
        Refused refused = assertThrows(Refused.class, () -> trace("K-2"));
        assertEquals("unknown-tag", refused.faults().get(0).rule());
        assertEquals(List.of("no plant or batch K-2; nearest: K-1"), refused.lines());
    }

    @Test
    void refusesADayBeforeItBegan() {
        Refused refused = assertThrows(Refused.class, () -> trace("K-1", LocalDate.of(2014, 12, 31)));
        assertEquals("before-it-began", refused.faults().get(0).rule());
        assertEquals(List.of("K-1 began on 2015-03-01, after 2014-12-31"), refused.lines());
    }

    @Test
    void saysWhatItLeftOutWhenTheFamilyIsTooLarge() {
        layer();
        diary.write("2024-05-04 returned J-1");
        Trace trace = diary.store().read(view -> Lineage.trace(view, new Tag("J-1"), Diary.TODAY, 1));
        assertFalse(trace.isWhole());
        assertEquals("J-1 (LAYERED_FROM K-1 left out)", shape(trace.tree()));
        assertEquals(1, trace.units());
        // where the clone begins is known all the same
        assertEquals(
                "earliest known K-1, acquired (2015-03-01), origin unknown",
                trace.origin().toString());
    }

    @Test
    void readsCorrectedWordsAndLeavesOutWhatIsCrossedOut() {
        diary.write("a: 2020-05-03 layer-set J-1 J-2; mother=K-1; stem_mm=12", "2021-08-20 severed J-1 J-2");
        diary.write("b: 2022-03-15 potted J-1; container=5 L", "2022-03-16 potted J-2; container=5 L");
        diary.write(
                "2022-04-01 corrected J-2; target=a; field=stem_mm; value=21; reason=misread",
                "2022-04-01 crossed-out; target=b; reason=other tree");
        assertEquals(Optional.of("12"), trace("J-1").tree().begun().detail("stem_mm"));
        assertEquals(Optional.of("21"), trace("J-2").tree().begun().detail("stem_mm"));
        assertEquals(List.of("2021-08-20 severed"), days(trace("J-1").tree().between()));
    }

    @Test
    void tellsEachUnitOnceHoweverManyWaysLeadToIt() {
        // ten generations of trays struck from the two layers of the one before: 2^10 ways, 31 units
        StringBuilder before = new StringBuilder("K-1");
        int year = 2016;
        for (int generation = 0; generation < 10; generation++) {
            String left = "L" + generation;
            String right = "R" + generation;
            diary.write(
                    year + "-05-01 cuttings-struck T" + left + " T" + right + "; mothers=" + before + "; count=5",
                    year + "-09-01 drawn " + left + "; source=T" + left,
                    year + "-09-01 drawn " + right + "; source=T" + right);
            before = new StringBuilder(left + " " + right);
            year++;
        }
        Trace trace = trace("L9");
        assertEquals(1 + 1 + 4 * 9 + 1, trace.units());
        assertEquals(
                "earliest known K-1, acquired (2015-03-01), origin unknown",
                trace.origin().toString());
        assertEquals("Acer palmatum 'Deshojo'", trace.tree().named().toString());
    }

    @Test
    void tellsHowManyOfABatchAreWhere() {
        diary.write(
                "2019-06-01 cuttings-struck T-1; mothers=K-1; count=60",
                "2019-07-01 failed T-1; count=10; cause=damped-off",
                "2019-09-01 taken T-1; count=20",
                "2019-10-01 drawn P-1..P-5; source=T-1");
        State state = trace("T-1").tree().state();
        assertEquals("15 growing, 30 pending", state.toString());
        assertEquals(Map.of(Reason.FAILED, 10, Reason.MOVED_ON, 5), state.left());
        assertEquals(State.Kind.PENDING, state.kind());
        assertEquals(
                "60 pending",
                trace("T-1", LocalDate.of(2019, 6, 30)).tree().state().toString());
    }

    @Test
    void knowsThatNamesPassThroughTheClone() {
        diary.write(
                "2018-05-01 layer-set J-1; mother=K-1",
                "2018-09-01 severed J-1",
                "2019-05-01 redetermined K-1; cultivar=Acer palmatum 'Seigen'");
        assertEquals("Acer palmatum 'Seigen'", trace("J-1").tree().named().toString());
        assertEquals(
                "Acer palmatum 'Deshojo'",
                trace("J-1", LocalDate.of(2019, 4, 30)).tree().named().toString());
    }

    @Test
    void followsTheStockFromWoodBelowTheUnion() {
        diary.write(
                "2010-03-01 acquired R-1; count=9; cultivar=Acer palmatum; raised=cutting",
                "2019-03-01 graft-worked G-1; scion=K-1; stock=R-1",
                "2019-06-01 taken G-1",
                "2020-05-01 layer-set J-1; mother=G-1",
                "2020-05-01 layer-set J-2; mother=G-1; below_union=yes");
        assertEquals(
                "earliest known K-1, acquired (2015-03-01), origin unknown",
                trace("J-1").origin().toString());
        Trace below = trace("J-2");
        assertEquals(
                "earliest known R-1, acquired (2010-03-01), origin unknown",
                below.origin().toString());
        assertEquals("Acer palmatum", below.tree().named().toString());
        assertEquals(
                "J-2 (LAYERED_BELOW G-1 (SCION_OF K-1) (ROOTSTOCK_OF R-1)) (STOCK_WOOD_OF R-1 as told)",
                shape(below.tree()));
        assertEquals("mother, below the union", below.tree().sources().get(0).part());
        assertEquals(Map.of("below_union", "yes"), below.tree().begun().details());
    }

    /** A mother of whom the day is known, and a layer of whom the year alone is: on a day between she seems younger. */
    @Test
    void tracesToAMotherWhoseDayIsKnownBetterThanHerChilds() {
        diary.write("2021-06-01 acquired K-7", "2021 layer-set J-7; mother=K-7");
        assertEquals(
                "J-7 (LAYERED_FROM K-7)",
                shape(trace("J-7", LocalDate.of(2021, 3, 1)).tree()));
    }
}
