package ortet.yield;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.book.Act;
import ortet.book.UnitFacts.Method;
import ortet.figures.Count;
import ortet.figures.Interval;
import ortet.plant.Tag;
import ortet.value.Defect;
import ortet.value.Refused;
import ortet.value.Warning;

class TakeTests {
    private static final LocalDate DAY = LocalDate.of(2024, 12, 31);
    private static final String DESHOJO = "Acer palmatum 'Deshojo'";
    private static final String KATSURA = "Acer palmatum 'Katsura'";
    private static final String NANA = "Juniperus procumbens 'Nana'";

    private CohortsView view;

    @BeforeEach
    void emptyBook() {
        view = new CohortsView();
    }

    private TakeTable take(TakeBy... by) {
        return Take.ask(view, TakeQuestion.asOf(DAY).by(by));
    }

    private TakeTable take(TakeFilter filter, TakeBy... by) {
        return Take.ask(view, TakeQuestion.asOf(DAY).by(by).where(filter));
    }

    private static List<String> names(TakeTable table) {
        return table.rows().stream().map(TakeRow::shown).toList();
    }

    /** Bartlett 1935, J. R. Stat. Soc. Suppl. 2:248: plum root cuttings, alive counted as taken. */
    @ParameterizedTest(name = "{0} {1}")
    @CsvFileSource(resources = "/oracles/bartlett-1935-plum-cuttings.csv", numLinesToSkip = 1)
    void countsBartlettsPlumCuttings(String time, String length, int planted, int alive, int dead) {
        view.set("T-1", Method.CUTTING, "2023-10-01", planted).taken(alive).failed(dead);
        TakeRow total = take().total();
        assertEquals(new Tally(planted, alive, dead, 0, 0, 0), total.tally());
        assertEquals(new Count(alive, planted), total.rate().orElseThrow().count());
        assertEquals(Optional.empty(), total.bounds());
    }

    /** The intervals of {@code oracles/derived-intervals.csv} (R, and again Python), rounded to whole percents. */
    @Test
    void readsAsOneLineWithItsIntervalAndWhatIsPending() {
        view.set("T-1", Method.CUTTING, "2023-10-01", 247).taken(156).failed(84);
        TakeRate rate = take().total().rate().orElseThrow();
        assertEquals("156 of 240, 65 % (59 to 71), 7 pending, 7 of them unaccounted", rate.toString());
        assertEquals(Interval.Method.WILSON, rate.interval().method());
        assertEquals(0.95, rate.interval().confidence());
        view.set("T-2", Method.CUTTING, "2024-10-01", 3);
        assertEquals(
                "156 of 240, 65 % (59 to 71), 10 pending, 7 of them unaccounted",
                take().total().rate().orElseThrow().toString());
    }

    @Test
    void hasNoRateWhenNothingIsKnown() {
        view.set("J-1", Method.LAYER, "2024-05-03", 1).from("K-1");
        TakeRow total = take().total();
        assertEquals(Optional.empty(), total.rate());
        assertEquals(new Tally(1, 0, 0, 0, 1, 0), total.tally());
        assertEquals(
                Tally.NONE,
                Take.ask(new CohortsView(), TakeQuestion.asOf(DAY)).total().tally());
    }

    @Test
    void leavesWithdrawnUnitsOutOfTheRateAndOfThePending() {
        view.set("T-1", Method.CUTTING, "2023-05-03", 60).taken(30).failed(10).withdrawn(20);
        TakeRow total = take().total();
        assertEquals(new Tally(60, 30, 10, 20, 0, 0), total.tally());
        assertEquals(new Count(30, 40), total.rate().orElseThrow().count());
        assertFalse(total.tally().isMuchPending());
    }

    @Test
    void boundsTheRateByWhatMayHaveBecomeOfTheUnaccounted() {
        view.set("T-1", Method.CUTTING, "2023-05-03", 60).taken(30).failed(20).notSeen(10);
        TakeRow total = take().total();
        assertEquals(new Tally(60, 30, 20, 0, 10, 10), total.tally());
        Bounds bounds = total.bounds().orElseThrow();
        assertEquals(new Count(30, 60), bounds.allFailed());
        assertEquals(new Count(40, 60), bounds.allTaken());
        assertEquals("50 to 67 % whatever became of the unaccounted", bounds.toString());
    }

    @Test
    void asksForTheCohortsAsOfTheDay() {
        take();
        assertEquals(Optional.of(DAY), view.asked());
    }

    /** The defaults are common practice: layer 78 weeks, cuttings 52, graft 40, seed 104. */
    @ParameterizedTest
    @CsvSource({"LAYER, 78", "CUTTING, 52", "GRAFT, 40", "SEED, 104"})
    void callsUnaccountedWhatIsPendingPastItsTime(Method method, int weeks) {
        view.set("X-1", method, "2023-01-01", 1);
        LocalDate due = LocalDate.of(2023, 1, 1).plusWeeks(weeks);
        assertEquals(0, asOf(due).tally().unaccounted());
        assertEquals(1, asOf(due.plusDays(1)).tally().unaccounted());
        TakeRow longer = Take.ask(
                        view, TakeQuestion.asOf(due.plusDays(1)).with(Periods.DEFAULTS.with(method, weeks + 1)))
                .total();
        assertEquals(0, longer.tally().unaccounted());
    }

    private TakeRow asOf(LocalDate day) {
        return Take.ask(view, TakeQuestion.asOf(day)).total();
    }

    @Test
    void countsThePeriodFromTheLastDayOnWhichSomebodyLooked() {
        LocalDate longAfter = LocalDate.of(2024, 6, 30);
        CohortsView.Line line = view.set("T-1", Method.CUTTING, "2022-05-03", 5);
        assertEquals(5, asOf(longAfter).tally().unaccounted());
        line.lastSeen("2023-09-01");
        assertEquals(0, asOf(longAfter).tally().unaccounted());
        line.lastSeen("2022-06-01").stillOn("2023-08-01");
        assertEquals(0, asOf(longAfter).tally().unaccounted());
        line.stillOn("2023-05-01");
        assertEquals(5, asOf(longAfter).tally().unaccounted());
    }

    @Test
    void givesADayKnownToTheYearTheWholeYear() {
        view.set("T-1", Method.CUTTING, "2022", 5);
        assertEquals(0, asOf(LocalDate.of(2023, 12, 30)).tally().unaccounted());
        assertEquals(5, asOf(LocalDate.of(2024, 1, 1)).tally().unaccounted());
    }

    @Test
    void keepsWhatCouldNotBeFoundUnaccountedForGood() {
        view.set("T-1", Method.CUTTING, "2024-11-03", 5).notSeen(2).taken(1);
        assertEquals(new Tally(5, 1, 0, 0, 4, 2), take().total().tally());
    }

    @Test
    void warnsAboveAFifthPending() {
        view.set("T-1", Method.CUTTING, "2024-05-03", 60)
                .taken(30)
                .failed(8)
                .withdrawn(10)
                .cultivar(DESHOJO);
        view.set("T-2", Method.CUTTING, "2024-05-03", 50).taken(30).failed(10).cultivar(KATSURA);
        TakeTable table = take(TakeBy.CULTIVAR);
        // 12 of 50 is above a fifth, 10 of 50 is not, 22 of 100 is
        assertEquals(
                List.of(
                        new Warning(
                                "much-pending",
                                DESHOJO + ": 12 of 50 are not known yet, more than a fifth; the rate may still change"
                                        + " much"),
                        new Warning(
                                "much-pending",
                                "all: 22 of 100 are not known yet, more than a fifth; the rate may still change much")),
                table.warnings());
    }

    @Test
    void sortsByNameAndPutsWhatIsNotKnownLast() {
        view.set("T-1", Method.CUTTING, "2023-05-03", 5).cultivar(NANA);
        view.set("T-2", Method.CUTTING, "2023-05-03", 5);
        view.set("T-3", Method.CUTTING, "2023-05-03", 5).cultivar(DESHOJO);
        assertEquals(List.of(DESHOJO, NANA, "cultivar not known"), names(take(TakeBy.CULTIVAR)));
        assertEquals(List.of("Acer palmatum", "Juniperus procumbens", "taxon not known"), names(take(TakeBy.TAXON)));
    }

    @Test
    void keepsMethodsInTheirOwnOrderAndSeasonsByYear() {
        view.set("S-1", Method.SEED, "2021", 5);
        view.set("G-1", Method.GRAFT, "2023-02", 1);
        view.set("T-1", Method.CUTTING, "2022-05-03", 5);
        view.set("J-1", Method.LAYER, "2020-12-31", 1);
        assertEquals(List.of("layers", "cuttings", "grafts", "seed"), names(take(TakeBy.METHOD)));
        assertEquals(List.of("2020", "2021", "2022", "2023"), names(take(TakeBy.SEASON)));
        Group layers = take(TakeBy.METHOD).rows().get(0).groups().get(0);
        assertEquals(Optional.of("layer"), layers.value());
    }

    @Test
    void tellsSeveralMothersFromOneAndOrdersThemAsPeopleDo() {
        view.set("T-1", Method.CUTTING, "2023-05-03", 5).from("K-10");
        view.set("T-2", Method.CUTTING, "2023-05-03", 5).from("K-2");
        view.set("T-3", Method.CUTTING, "2023-05-03", 5).from("K-1 + K-2");
        view.set("T-4", Method.CUTTING, "2023-05-03", 5);
        view.set("T-5", Method.CUTTING, "2023-05-03", 5).from("K-2 + K-1");
        TakeTable table = take(TakeBy.MOTHER);
        assertEquals(List.of("K-2", "K-10", "several mothers: K-1 + K-2", "mother not known"), names(table));
        assertEquals(Optional.empty(), table.rows().get(3).groups().get(0).value());
        assertEquals(
                "in 5 batches, from 3 mothers and others not known",
                table.total().stood().toString());
    }

    @Test
    void namesTheOperatorOrTheNumberOfOneWhoIsErased() {
        view.person(1, Optional.of("Nuala"));
        view.person(2, Optional.empty());
        view.person(3, Optional.of("aoife"));
        view.set("J-1", Method.LAYER, "2024-05-03", 1).by(1);
        view.set("J-2", Method.LAYER, "2024-05-03", 1).by(2);
        view.set("J-3", Method.LAYER, "2024-05-03", 1).by(3);
        view.set("J-4", Method.LAYER, "2024-05-03", 1);
        TakeTable table = take(TakeBy.OPERATOR);
        assertEquals(List.of("#2", "aoife", "Nuala", "not told"), names(table));
        assertEquals(Optional.of("#1"), table.rows().get(2).groups().get(0).value());
    }

    @Test
    void combinesTwoGroups() {
        view.set("J-1", Method.LAYER, "2023-05-03", 1).cultivar(NANA).taken(1);
        view.set("T-1", Method.CUTTING, "2023-05-03", 20)
                .cultivar(NANA)
                .taken(5)
                .failed(15);
        view.set("T-2", Method.CUTTING, "2023-05-03", 20).cultivar(DESHOJO).failed(20);
        TakeTable table = take(TakeBy.CULTIVAR, TakeBy.METHOD);
        assertEquals(List.of(DESHOJO + ", cuttings", NANA + ", layers", NANA + ", cuttings"), names(table));
        assertEquals(new Count(6, 41), table.total().rate().orElseThrow().count());
        assertEquals(
                List.of("layers, " + NANA, "cuttings, " + DESHOJO, "cuttings, " + NANA),
                names(take(TakeBy.METHOD, TakeBy.CULTIVAR)));
    }

    @Test
    void refusesThreeGroupsAndTheSameTwice() {
        TakeQuestion question = TakeQuestion.asOf(DAY);
        assertEquals(
                List.of("by: expected at most two of cultivar, taxon, mother, method, season, operator, found cultivar,"
                        + " mother, method"),
                assertThrows(Refused.class, () -> question.by(TakeBy.CULTIVAR, TakeBy.MOTHER, TakeBy.METHOD))
                        .lines());
        assertEquals(
                List.of("by: expected each but once, found cultivar twice"),
                assertThrows(Refused.class, () -> question.by(TakeBy.CULTIVAR, TakeBy.CULTIVAR))
                        .lines());
    }

    @Test
    void filtersByMethodSeasonAndOperator() {
        view.person(1, Optional.of("Nuala"));
        view.set("J-1", Method.LAYER, "2021-05-03", 1).by(1);
        view.set("J-2", Method.LAYER, "2022", 1);
        view.set("J-3", Method.LAYER, "2023-05", 1).by(1);
        view.set("T-1", Method.CUTTING, "2022-05-03", 20).by(1);
        assertEquals(3, set(TakeFilter.ALL.method(Method.LAYER)));
        assertEquals(22, set(TakeFilter.ALL.from(2022)));
        assertEquals(22, set(TakeFilter.ALL.to(2022)));
        assertEquals(21, set(TakeFilter.ALL.from(2022).to(2022)));
        assertEquals(22, set(TakeFilter.ALL.operator("nuala")));
        assertEquals(22, set(TakeFilter.ALL.operator("#1")));
        assertEquals(
                1, set(TakeFilter.ALL.operator("Nuala").method(Method.LAYER).from(2022)));
    }

    private int set(TakeFilter filter) {
        return take(filter).total().tally().set();
    }

    @Test
    void filtersByCultivarByEpithetAndByTaxon() {
        view.set("J-1", Method.LAYER, "2024-05-03", 1).cultivar(DESHOJO);
        view.set("J-2", Method.LAYER, "2024-05-03", 1).cultivar(KATSURA);
        view.set("J-3", Method.LAYER, "2024-05-03", 1).cultivar("Acer palmatum var. dissectum 'Garnet'");
        view.set("J-4", Method.LAYER, "2024-05-03", 1).cultivar("Acer buergerianum");
        view.set("J-5", Method.LAYER, "2024-05-03", 1);
        assertEquals(1, set(TakeFilter.ALL.cultivar(DESHOJO)));
        assertEquals(1, set(TakeFilter.ALL.cultivar("Acer  palmatum \u2018Deshojo\u2019")));
        assertEquals(1, set(TakeFilter.ALL.cultivar("acer palmatum \u2018deshojo\u2019")));
        assertEquals(1, set(TakeFilter.ALL.cultivar("deshojo")));
        assertEquals(1, set(TakeFilter.ALL.cultivar("'Deshojo'")));
        assertEquals(3, set(TakeFilter.ALL.cultivar("Acer palmatum")));
        assertEquals(4, set(TakeFilter.ALL.cultivar("Acer")));
    }

    @Test
    void namesTheNearestWhenACultivarMotherOrOperatorIsUnknown() {
        view.person(1, Optional.of("Nuala"));
        view.plant(90, "K-12");
        view.set("J-1", Method.LAYER, "2024-05-03", 1).cultivar(DESHOJO);
        assertRefused(
                "no cultivar Acer palmatum 'Deshojio'; nearest: " + DESHOJO,
                TakeFilter.ALL.cultivar("Acer palmatum 'Deshojio'"));
        assertRefused("no cultivar deshoji; nearest: " + DESHOJO, TakeFilter.ALL.cultivar("deshoji"));
        assertRefused("no plant or batch K-21; nearest: K-12", TakeFilter.ALL.mother(new Tag("K-21")));
        assertRefused("no person Nuela; nearest: Nuala", TakeFilter.ALL.operator("Nuela"));
        assertRefused("no person #7", TakeFilter.ALL.operator("#7"));
    }

    private void assertRefused(String line, TakeFilter filter) {
        assertEquals(
                List.of(line), assertThrows(Refused.class, () -> take(filter)).lines());
    }

    @Test
    void refusesSeasonsThatRunBackwards() {
        assertEquals(
                List.of("expected seasons from the first to the last, found 2023 to 2021"),
                assertThrows(Refused.class, () -> TakeFilter.ALL.from(2023).to(2021))
                        .lines());
    }

    @Test
    void filtersByAMotherUnderAnyOfHerTagsAndSaysWhatIsShared() {
        view.plant(90, "K-1", "K-1A");
        view.plant(91, "K-2");
        view.set("T-1", Method.CUTTING, "2024-05-03", 20).from("K-1A");
        view.set("T-2", Method.CUTTING, "2024-05-03", 30).from("K-1A + K-2");
        view.set("T-3", Method.CUTTING, "2024-05-03", 5).from("K-2");
        view.set("T-4", Method.CUTTING, "2024-05-03", 5);
        for (String tag : List.of("K-1", "K-1A")) {
            TakeTable table = take(TakeFilter.ALL.mother(new Tag(tag)));
            assertEquals(20, table.total().tally().set());
            assertEquals(30, table.shared());
        }
        assertEquals(0, take().shared());
    }

    @Test
    void listsSowingsByWeightApart() {
        view.set("S-1", Method.SEED, "2023", 100).taken(40).failed(60);
        view.weighed("S-2", Method.SEED, "2023")
                .taken(300)
                .cultivar("Acer palmatum")
                .from("K-1");
        TakeTable table = take(TakeBy.METHOD);
        assertEquals(new Tally(100, 40, 60, 0, 0, 0), table.total().tally());
        assertEquals(1, table.rows().size());
        WeighedSowing sowing = table.weighed().get(0);
        assertEquals(new Tag("S-2"), sowing.tag());
        assertEquals(Optional.of("Acer palmatum"), sowing.cultivar());
        assertEquals(List.of(new Tag("K-1")), sowing.mothers());
        assertEquals(300, sowing.taken());
        assertEquals(List.of(), take(TakeFilter.ALL.method(Method.CUTTING)).weighed());
    }

    @Test
    void saysInHowManyBatchesAndFromHowManyMothersTheUnitsStood() {
        view.set("T-1", Method.CUTTING, "2024-05-03", 60).from("K-1");
        assertEquals("in 1 batch, from 1 mother", take().total().stood().toString());
        view.set("J-1", Method.LAYER, "2024-05-03", 1).from("K-1");
        view.set("J-2", Method.LAYER, "2024-05-03", 1).from("K-2");
        view.set("G-1", Method.GRAFT, "2024-02-03", 1);
        assertEquals(new Stood(1, 3, 2, 1), take().total().stood());
        assertEquals(
                "in 1 batch and 3 singly, from 2 mothers and others not known",
                take().total().stood().toString());
        assertEquals("from 2 mothers", take(TakeBy.METHOD).rows().get(0).stood().toString());
        view.set("G-2", Method.GRAFT, "2024-02-03", 12);
        assertEquals(new Stood(1, 1, 0, 13), take(TakeBy.METHOD).rows().get(2).stood());
        assertEquals(
                "in 1 batch and 1 singly, from mothers not known",
                take(TakeBy.METHOD).rows().get(2).stood().toString());
    }

    @Test
    void countsATrayThatWasSplitAsOne() {
        CohortsView.Line tray =
                view.set("T-1", Method.CUTTING, "2024-05-03", 60).from("K-1").movedOn(60);
        CohortsView.Line left =
                view.set("T-2", Method.CUTTING, "2024-05-03", 30).from("K-1").movedOn(10);
        CohortsView.Line right =
                view.set("T-3", Method.CUTTING, "2024-05-03", 30).from("K-1");
        CohortsView.Line third =
                view.set("T-4", Method.CUTTING, "2024-05-03", 10).from("K-1");
        view.link(Act.SPLIT_FROM, left, tray, "2024-06-01");
        view.link(Act.SPLIT_FROM, right, tray, "2024-06-01");
        view.link(Act.SPLIT_FROM, third, left, "2024-07-01");
        assertEquals(60, take().total().tally().set());
        assertEquals(1, take().total().stood().batches());
    }

    @Test
    void countsTraysThatWereMergedAsTheyWere() {
        CohortsView.Line one = view.set("T-1", Method.CUTTING, "2024-05-03", 60)
                .from("K-1")
                .taken(20)
                .movedOn(40);
        CohortsView.Line two =
                view.set("T-2", Method.CUTTING, "2024-05-03", 30).from("K-2").movedOn(30);
        CohortsView.Line merged =
                view.set("T-3", Method.CUTTING, "2024-05-03", 70).from("K-1 + K-2");
        view.link(Act.MERGED_FROM, merged, one, "2024-06-01");
        view.link(Act.MERGED_FROM, merged, two, "2024-06-01");
        TakeTable table = take(TakeBy.MOTHER);
        assertEquals(90, table.total().tally().set());
        assertEquals(2, table.total().stood().batches());
        // nothing is left of K-2's own tray; the merged one stands by itself in its row
        assertEquals(List.of("K-1", "several mothers: K-1 + K-2"), names(table));
        assertEquals(1, table.rows().get(1).stood().batches());
    }

    @Test
    void addsWhatWasFoundBeyondTheCount() {
        view.set("T-1", Method.CUTTING, "2024-05-03", 60).foundMore(2).taken(62);
        assertEquals(new Tally(62, 62, 0, 0, 0, 0), take().total().tally());
    }

    @Test
    void saysThatItIsOursToMendWhenMoreCameOfATrayThanWasSet() {
        view.set("T-1", Method.CUTTING, "2024-05-03", 60).taken(70);
        assertEquals(
                "more came of T-1 than was set",
                assertThrows(Defect.class, this::take).getMessage());
    }

    @Property
    void conservesTheTotalOverEverySplit(
            @ForAll @IntRange(min = 1, max = 500) int count,
            @ForAll @IntRange(max = 500) int moved,
            @ForAll @IntRange(max = 500) int taken) {
        int away = Math.min(count, moved);
        int took = Math.min(count - away, taken);
        CohortsView split = new CohortsView();
        CohortsView.Line tray = split.set("T-1", Method.CUTTING, "2024-05-03", count)
                .movedOn(away)
                .taken(took);
        if (away > 0) {
            CohortsView.Line part = split.set("T-2", Method.CUTTING, "2024-05-03", away);
            split.link(Act.SPLIT_FROM, part, tray, "2024-06-01");
        }
        CohortsView whole = new CohortsView();
        whole.set("T-1", Method.CUTTING, "2024-05-03", count).taken(took);
        TakeRow total = Take.ask(split, TakeQuestion.asOf(DAY)).total();
        assertEquals(Take.ask(whole, TakeQuestion.asOf(DAY)).total(), total);
        assertTrue(total.tally().set() == count);
    }
}
