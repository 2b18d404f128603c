package ortet.yield;

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
import ortet.figures.ClusteredRatio;
import ortet.figures.Count;
import ortet.figures.Interval;
import ortet.figures.Newcombe;
import ortet.figures.Range;
import ortet.plant.Person.Role;
import ortet.plant.Tag;
import ortet.value.Decimal;
import ortet.value.Refused;

/** Comparisons of small nurseries, counted by hand. The statistics have tests of their own in ortet.figures. */
class CompareTests {
    private static final LocalDate END = LocalDate.of(2025, 12, 31);

    private final Diary diary = new Diary();

    @BeforeEach
    void mothers() {
        diary.person(1, "Nuala", Role.STAFF);
        diary.person(2, "Aoife", Role.STAFF);
        diary.write(
                "2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Deshojo'",
                "2015-03-01 acquired K-3; cultivar=Acer palmatum 'Katsura'");
    }

    private static CompareQuestion methods() {
        return CompareQuestion.of(CompareOn.METHOD, "layering", "cuttings", END);
    }

    private Comparison compare(CompareQuestion question) {
        return table(question).rows().get(0);
    }

    private ComparisonTable table(CompareQuestion question) {
        return diary.store().read(view -> Compare.ask(view, question));
    }

    /** Strike a tray in a season of which some are found rooted, potted and seen a year later; the others fail. */
    private void tray(String tag, String mother, int year, int count, int rooted, String more) {
        diary.write(year + "-06-01 cuttings-struck " + tag + "; mothers=" + mother + "; count=" + count + more);
        if (rooted < count) {
            diary.write(year + "-08-01 failed " + tag + "; count=" + (count - rooted));
        }
        if (rooted > 0) {
            diary.write(year + "-09-01 potted " + tag + "; container=9 cm", (year + 1) + "-09-01 seen " + tag);
        }
    }

    private void layers(String tags, String mother, int year, String severed) {
        diary.write(year + "-05-01 layer-set " + tags + "; mother=" + mother);
        if (!severed.isEmpty()) {
            diary.write(year + "-09-01 severed " + severed + "; roots=full", (year + 1) + "-09-01 seen " + severed);
        }
    }

    @Test
    void saysNothingOfAnEmptyBook() {
        Comparison empty = compare(methods());
        assertEquals(Verdict.NOTHING_KNOWN, empty.verdict());
        assertEquals(Optional.empty(), empty.difference());
        assertEquals(Optional.empty(), empty.interval());
        assertEquals(Optional.empty(), empty.first().saleablePerMotherYear());
        assertEquals(Tally.NONE, empty.second().tally());
        assertEquals(List.of(), empty.imbalances());
        assertEquals(new Wait(0, 0, Optional.empty()), empty.first().toRoots());
        assertEquals(List.of(), table(methods().by(TakeBy.CULTIVAR)).rows());
    }

    @Test
    void givesNoVerdictFromOneTrayASide() {
        tray("T-1", "K-1", 2022, 60, 55, "; hormone=IBA; strength=0.3%");
        tray("T-2", "K-2", 2022, 60, 5, "; hormone=IBA; strength=0.8%");
        CompareQuestion question = CompareQuestion.of(CompareOn.HORMONE, "0.3%", "0.8 %", END);
        Comparison one = compare(question);
        assertEquals(Verdict.ONE_CLUSTER, one.verdict());
        assertFalse(one.allowsForClusters());
        // what independent units would say
        assertEquals(Newcombe.difference(new Count(55, 60), new Count(5, 60), 0.95), one.interval());
        assertEquals(Optional.empty(), one.settle());
        // a second tray of the same mother and season shares her luck
        tray("T-3", "K-1", 2022, 60, 55, "; hormone=IBA; strength=0.3%");
        tray("T-4", "K-2", 2022, 60, 5, "; hormone=IBA; strength=0.8%");
        assertEquals(Verdict.ONE_CLUSTER, compare(question).verdict());
        tray("T-5", "K-1", 2023, 60, 54, "; hormone=IBA; strength=0.3%");
        tray("T-6", "K-2", 2023, 60, 6, "; hormone=IBA; strength=0.8%");
        Comparison two = compare(question);
        assertTrue(two.allowsForClusters());
        assertEquals(2, two.first().establishedRate().orElseThrow().clusters());
        assertEquals(
                Interval.Method.NEWCOMBE_CLUSTERED, two.interval().orElseThrow().method());
    }

    @Test
    void followsTheIntervalAndNeverTheFigureInItsMiddle() {
        for (int year = 2016; year < 2022; year++) {
            tray("A-" + year, "K-1", year, 20, 16, "; medium=perlite");
            tray("B-" + year, "K-1", year, 20, 5, "; medium=pumice");
            tray("C-" + year, "K-1", year, 20, year % 2 == 0 ? 19 : 4, "; medium=sand");
        }
        Comparison more = compare(CompareQuestion.of(CompareOn.MEDIUM, "perlite", "pumice", END));
        assertEquals(Verdict.FIRST_YIELDS_MORE, more.verdict());
        assertTrue(more.interval().orElseThrow().lower() > 0);
        assertEquals(Measure.ESTABLISHED, more.measure());
        assertEquals(
                new Count(96, 120), more.first().establishedRate().orElseThrow().count());
        assertEquals(Optional.empty(), more.settle());
        Comparison turned = compare(CompareQuestion.of(CompareOn.MEDIUM, "pumice", "perlite", END));
        assertEquals(Verdict.SECOND_YIELDS_MORE, turned.verdict());
        // 80 against 58 of 100: far apart for independent units, not for trays that differ so
        Comparison apart = compare(CompareQuestion.of(CompareOn.MEDIUM, "perlite", "sand", END));
        assertTrue(Newcombe.difference(new Count(96, 120), new Count(69, 120), 0.95)
                        .orElseThrow()
                        .lower()
                > 0);
        assertEquals(Verdict.NOT_TOLD_APART, apart.verdict());
        assertTrue(apart.settle().orElseThrow().isObserved());
        assertEquals(20, apart.settle().orElseThrow().clusterSize());
        assertTrue(apart.settle().orElseThrow().needed().units() > 120);
    }

    @Test
    void fallsBackToTakeWhereEstablishingIsNotKnown() {
        diary.write("2024-05-01 layer-set J-1..J-5; mother=K-1", "2024-09-30 severed J-1..J-4; roots=full");
        tray("T-1", "K-1", 2022, 10, 5, "");
        Comparison unseen = compare(methods());
        assertEquals(Measure.TAKE, unseen.measure());
        assertEquals(new Raised(0, 0, 0, 0, 5, 4, 0), unseen.first().established());
        assertEquals(Optional.empty(), unseen.first().establishedRate());
        assertEquals(new Count(4, 4), unseen.first().takeRate().orElseThrow().count());
        diary.write("2025-09-30 seen J-1..J-4");
        // 1 of 5 is not above a fifth
        Comparison seen = compare(methods());
        assertEquals(Measure.ESTABLISHED, seen.measure());
        assertEquals(new Raised(4, 0, 0, 0, 1, 0, 0), seen.first().established());
        assertEquals(List.of(), table(methods()).warnings());
        // sold before they were due: as unknown as those of which nobody wrote
        assertEquals(Measure.TAKE, compareWithSales().measure());
    }

    private Comparison compareWithSales() {
        diary.write(
                "2024-05-02 layer-set J-11 J-12; mother=K-1",
                "2024-09-30 severed J-11 J-12; roots=full",
                "2024-10-01 sold J-11 J-12");
        return compare(methods());
    }

    @Test
    void tellsWhatItComesToInTheEndWithFailuresInTheWay() {
        // of 10, 2 fail in week 9 and 4 are found rooted in week 13, when the other 4 are still undecided: Aalen and
        // Johansen
        // by hand: 10 at risk, 0.8 are left; of 8 at risk 4 take: 0.8 x 4/8 = 0.4
        diary.write(
                "2025-01-01 cuttings-struck T-1; mothers=K-1; count=10",
                "2025-03-05 failed T-1; count=2",
                "2025-04-02 taken T-1; count=4",
                "2025-12-01 seen T-1");
        InTheEnd end = compare(methods()).second().taking().orElseThrow();
        assertEquals(0.4, end.step().share(), 1e-12);
        assertEquals(13, end.step().time());
        assertEquals(10, end.followed());
        // lost sight of after the failures: of 4 at risk, 4 took
        diary.write("2025-01-01 cuttings-struck T-2; mothers=K-1; count=4", "2025-03-10 closed T-2; rest=not-seen");
        InTheEnd other = compare(methods()).second().taking().orElseThrow();
        // 14 at risk in week 9, 2 fail; week 0: T-2's four were never looked at, so they are followed for 0 weeks
        assertEquals(0.8 * 4 / 8, other.step().share(), 1e-12);
    }

    @Test
    void countsSaleableTreesBySizeAndByMotherYear() {
        layers("J-1..J-4", "K-1", 2018, "J-1 J-2 J-3");
        layers("J-5 J-6", "K-1", 2021, "J-5");
        layers("J-7", "K-2", 2018, "J-7");
        diary.write(
                "2017-01-01 kept-as-stock K-1",
                "2020-12-01 released K-1; from=stock",
                "2022-09-01 graded J-1 J-2 J-5; size=medium",
                "2022-10-01 graded J-1; size=large",
                "2022-10-01 sold J-3",
                "2022-10-02 culled J-5; cull=quality");
        SideYield layers = compare(methods()).first();
        // K-1 used in 2018 and 2021, at rest as stock in 2019 and 2020; K-2 used in 2018
        assertEquals(5, layers.motherYears());
        assertEquals(3, layers.saleableOfMothers());
        assertEquals(Map.of("large", 1, "medium", 1, "", 1), layers.bySize());
        assertEquals(Optional.of(0.6), layers.saleablePerMotherYear());
        assertEquals(2, layers.ofMothers().clusters());
        assertEquals(
                ClusteredRatio.of(List.of(new ClusteredRatio.Part(3, 4), new ClusteredRatio.Part(0, 1)))
                        .standardError(),
                layers.ofMothers().standardError());
        // a year in which cuttings were taken is no rest for layering
        tray("T-1", "K-1", 2019, 5, 5, "");
        assertEquals(4, compare(methods()).first().motherYears());
        assertEquals(1, compare(methods()).second().motherYears());
    }

    /** Nobody can tell which of two mothers of one tray a tree came from: what they gave is one cluster. */
    @Test
    void mothersOfOneTrayAreOneClusterOfWhatAMotherYearGave() {
        tray("T-1", "K-1 K-2", 2018, 10, 8, "");
        tray("T-2", "K-2", 2019, 10, 8, "");
        tray("T-3", "K-3", 2019, 10, 8, "");
        SideYield cuttings = compare(methods()).second();
        assertEquals(4, cuttings.motherYears());
        assertEquals(2, cuttings.ofMothers().clusters());
    }

    @Test
    void countsNowhereWhatIsOfBothSidesButSaysHowMuch() {
        tray("T-1", "K-1", 2020, 10, 8, "; medium=perlite");
        tray("T-2", "K-1", 2020, 10, 6, "; medium=pumice");
        tray("T-3", "K-2", 2021, 10, 7, "; medium=perlite");
        diary.write("2022-01-01 merged M-1; sources=T-1 T-2");
        Comparison mixed = compare(CompareQuestion.of(CompareOn.MEDIUM, "perlite", "pumice", END));
        assertEquals(new Raised(7, 3, 0, 0, 0, 0, 10), mixed.first().established());
        assertEquals(new Raised(0, 0, 0, 0, 0, 0, 10), mixed.second().established());
        // take was known before they were put together
        assertEquals(new Count(15, 20), mixed.first().takeRate().orElseThrow().count());
    }

    @Test
    void namesInWhatTheSidesDifferAndByHowMuch() {
        diary.write(
                "2020-05-01 layer-set J-1..J-4; mother=K-1; by=#1; stock_age_years=12",
                "2021-05-01 layer-set J-5..J-10; mother=K-1; by=#1; stock_age_years=13",
                "2021-06-01 cuttings-struck T-1; mothers=K-1; count=5; by=#1",
                "2022-06-01 cuttings-struck T-2; mothers=K-1; count=5; by=#2");
        List<Imbalance> found = compare(methods()).imbalances();
        // seasons: layers 0.4 0.6 0, cuttings 0 0.5 0.5: half of 0.4 + 0.1 + 0.5
        assertEquals(
                List.of(
                        new Imbalance("operator", 0.5, "Nuala", 1, 0.5, 1, 1),
                        new Imbalance("season", 0.5, "2022", 0, 0.5, 1, 1),
                        new Imbalance("cultivar", 0, "Acer palmatum 'Deshojo'", 1, 1, 1, 1),
                        new Imbalance("stock age", 0, "", 0, 0, 1, 0)),
                found);
        assertFalse(compare(methods()).isFair());
        assertFalse(found.get(3).isTold());
    }

    @Test
    void takesAVerdictBackThatDoesNotHoldWithinSeasons() {
        // in either season both media do alike; but perlite was used in the good one
        for (int at = 0; at < 8; at++) {
            tray("A-" + at, at % 2 == 0 ? "K-1" : "K-2", 2018, 10, 9, "; medium=perlite; note=" + at);
        }
        tray("A-9", "K-1", 2019, 10, 2, "; medium=perlite");
        for (int at = 0; at < 8; at++) {
            tray("B-" + at, at % 2 == 0 ? "K-1" : "K-2", 2019, 10, 2, "; medium=pumice; note=" + at);
        }
        tray("B-9", "K-1", 2018, 10, 9, "; medium=pumice");
        CompareQuestion question = CompareQuestion.of(CompareOn.MEDIUM, "perlite", "pumice", END);
        Comparison within = compare(question.within(Strata.SEASON));
        Stratified strata = within.stratified().orElseThrow();
        assertEquals(2, strata.strata());
        assertEquals(0, strata.difference().orElseThrow().value(), 1e-12);
        assertEquals(Optional.of(1.0), strata.oddsRatio().finite());
        assertEquals(Verdict.NOT_TOLD_APART, within.verdict());
        assertFalse(within.isFair());
    }

    @Test
    void comparesCultivarByCultivar() {
        layers("J-1 J-2", "K-1", 2020, "J-1");
        tray("T-1", "K-2", 2020, 10, 5, "");
        layers("J-3", "K-3", 2020, "J-3");
        ComparisonTable table = table(methods().by(TakeBy.CULTIVAR));
        assertEquals(
                List.of("Acer palmatum 'Deshojo'"),
                table.rows().stream().map(Comparison::shown).toList());
        assertEquals(2, table.rows().get(0).first().tally().set());
        assertEquals(
                List.of("Acer palmatum 'Katsura'"),
                table.oneSided().stream().map(Group::shown).toList());
        Comparison only = compare(methods().where(TakeFilter.ALL.cultivar("Katsura")));
        assertEquals(1, only.first().tally().set());
        assertEquals(Verdict.NOTHING_KNOWN, only.verdict());
    }

    @Test
    void tellsWeeksToRootsAndYearsToAStem() {
        diary.write(
                "2020-05-01 layer-set J-1..J-3; mother=K-1; stem_mm=20",
                "2020-09-18 severed J-1 J-2; roots=full",
                "2020-10-01 checked J-3; findings=callus",
                "2021-05-01 measured J-1; stem_mm=24",
                "2022-05-01 measured J-1; stem_mm=26",
                "2022-05-01 measured J-2; stem_mm=24.9",
                "2020-06-01 cuttings-struck T-1; mothers=K-1; count=10",
                "2020-07-01 checked T-1; findings=callus",
                "2020-08-01 taken T-1; count=8");
        Comparison all = compare(methods().stem(Decimal.parse("25")));
        // 140 days are 20 weeks to the day
        assertEquals(new Wait(2, 1, Optional.of(new Range(20, 20))), all.first().toRoots());
        // not yet after 30 days, in the 5th week; found after 61, in the 9th
        assertEquals(new Wait(8, 2, Optional.of(new Range(5, 9))), all.second().toRoots());
        Wait stem = all.first().toStem().orElseThrow();
        assertEquals(1, stem.happened());
        assertEquals(1, stem.open());
        assertEquals(new Wait(0, 0, Optional.empty()), all.second().toStem().orElseThrow());
    }

    @Test
    void keepsTheTreatmentOfATrayThatWasSplitOrMergedWithItsLike() {
        diary.write(
                "2020-06-01 cuttings-struck T-1 T-2; mothers=K-1; count=10; medium=perlite",
                "2020-06-01 cuttings-struck T-3; mothers=K-1; count=10; medium=pumice",
                "2020-06-02 split T-4; source=T-1; count=4",
                "2020-06-03 merged M-1; sources=T-2 T-4",
                "2020-06-04 merged M-2; sources=T-1 T-3");
        Comparison all = compare(CompareQuestion.of(CompareOn.MEDIUM, "perlite", "pumice", END));
        // M-2 is of both, and so of neither
        assertEquals(14, all.first().tally().set());
        assertEquals(0, all.second().tally().set());
    }

    @Test
    void saysHowManyAreLeftOutForOneMotherAndPutsTraysOfSeveralIntoOneCluster() {
        diary.write(
                "2020-06-01 cuttings-struck T-1; mothers=K-1 K-2; count=7; medium=perlite",
                "2020-06-01 cuttings-struck T-2; mothers=K-1; count=5; medium=perlite",
                "2020-06-01 cuttings-struck T-3; mothers=K-2; count=5; medium=perlite",
                "2020-06-01 cuttings-struck T-4; mothers=K-3; count=5; medium=perlite",
                "2020-06-01 cuttings-struck T-5; count=5; medium=perlite",
                "2020-07-01 taken T-1 T-2 T-3 T-4 T-5");
        CompareQuestion question = CompareQuestion.of(CompareOn.METHOD, "cuttings", "layers", END);
        // K-1 and K-2 by their common tray, K-3, and a tray of nobody
        assertEquals(3, compare(question).first().takeRate().orElseThrow().clusters());
        assertEquals(3, compare(question).first().motherYears());
        ComparisonTable one = table(question.where(TakeFilter.ALL.mother(new Tag("K-1"))));
        assertEquals(7, one.shared());
        assertEquals(5, one.rows().get(0).first().tally().set());
    }

    @Test
    void refusesSidesThatNobodyKnowsOrThatOverlap() {
        tray("T-1", "K-1", 2020, 10, 8, "; hormone=IBA; strength=0.3%");
        assertEquals(
                List.of(
                        "no method \"layerz\"; expected layers, cuttings, grafts or seed, several with + between; nearest:"
                                + " layer"),
                refusal(CompareQuestion.of(CompareOn.METHOD, "layerz", "cuttings", END)).stream()
                        .map(line -> line.replaceAll("nearest: layer.*", "nearest: layer"))
                        .toList());
        assertTrue(refusal(CompareQuestion.of(CompareOn.METHOD, "layers+grafts", "grafting", END))
                .get(0)
                .startsWith("grafts would be on both sides"));
        assertTrue(refusal(CompareQuestion.of(CompareOn.HORMONE, "IBA", "0.3%", END))
                .get(0)
                .startsWith("IBA 0.3% would be on both sides"));
        assertTrue(refusal(CompareQuestion.of(CompareOn.HORMONE, "0.3%", "0.4%", END))
                .get(0)
                .startsWith("nothing was set with hormone \"0.4%\" by this day; the book has 0.3%, IBA, IBA 0.3%"));
    }

    private List<String> refusal(CompareQuestion question) {
        return assertThrows(Refused.class, () -> compare(question)).lines();
    }
}
