package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.MemoryBookStore;
import ortet.book.UnitFacts.Method;
import ortet.choice.Plan.Why;
import ortet.choice.PlanMother.LeftOut;
import ortet.figures.BetaBinomial.Shapes;
import ortet.figures.Count;
import ortet.figures.Planning;
import ortet.figures.Stages;
import ortet.nursery.Snapshot;
import ortet.plant.Person;
import ortet.plant.Tag;
import ortet.value.Refused;

/** Plans out of small nurseries counted by hand. */
class PlansTests {
    private static final String CULTIVAR = "Acer palmatum 'Deshojo'";
    private static final LocalDate DAY = LocalDate.of(2025, 3, 1);
    private static final LocalDate BY = LocalDate.of(2027, 11, 1);

    private final MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
    private final Diary diary = new Diary(store);

    private Plans plans(UnaryOperator<PlanQuestion> asked) {
        return plansAsOf(DAY, PlanQuestion.of("Deshojo", 4, BY, DAY), asked);
    }

    private Plans plansAsOf(LocalDate day, PlanQuestion question, UnaryOperator<PlanQuestion> asked) {
        return store.read(view -> Plans.ask(view, Snapshot.of(view, day, Plans.parts()), asked.apply(question)));
    }

    private Plan layers(UnaryOperator<PlanQuestion> asked) {
        return plans(question -> asked.apply(question.method(Method.LAYER)))
                .all()
                .get(0);
    }

    private void mother(String tag, String cultivar) {
        diary.write("2010-03-01 acquired " + tag + "; cultivar=" + cultivar, "2011-03-01 kept-as-stock " + tag);
    }

    /** Set layers on a mother in May; so many take, and so many of these are graded two years and some months later. */
    private void layers(String mother, int year, int set, int taken, int fit) {
        String first = mother + "-" + year + "-";
        diary.write(year + "-05-10 layer-set " + first + "1.." + first + set + "; mother=" + mother + "; stem_mm=12");
        diary.write(year + "-09-20 severed " + first + "1.." + first + taken);
        if (taken < set) {
            diary.write(year + "-09-21 failed " + first + (taken + 1) + ".." + first + set + "; cause=dried");
        }
        diary.write((year + 1) + "-09-20 seen " + first + "1.." + first + taken);
        if (fit > 0) {
            diary.write((year + 2) + "-10-01 graded " + first + "1.." + first + fit + "; size=medium");
        }
    }

    /** Ten seasons of ten layers on one mother, alternately 9 and 7 of them taken, and of each all but one fit for sale. */
    private void tenSeasons() {
        mother("K-1", CULTIVAR);
        for (int year = 2012; year < 2022; year++) {
            int taken = year % 2 == 0 ? 9 : 7;
            layers("K-1", year, 10, taken, taken - 1);
        }
        diary.write("2025-02-01 measured K-1; positions=8-12:6 12-20:8");
    }

    @Test
    void tellsTheStagesAsCountedByHand() {
        tenSeasons();
        Plan plan = layers(question -> question);
        List<PlanStage> stages = plan.stages();
        assertEquals(new Count(80, 100), stages.get(0).own());
        assertEquals(10, stages.get(0).seasons());
        assertEquals(new Count(80, 80), stages.get(1).own());
        assertEquals(new Count(70, 80), stages.get(2).own());
        // nine and seven of ten differ less than chance would have it: Bayes' rule with Jeffreys' prior
        assertEquals(0, stages.get(0).correlation());
        assertShapes(80.5, 20.5, stages.get(0).shapes());
        assertEquals(PlanStage.Spread.OWN, stages.get(0).source());
        // every one established in each of ten seasons
        assertEquals(PlanStage.Spread.OWN, stages.get(1).source());
        assertEquals(0, stages.get(1).correlation());
        assertShapes(80.5, 0.5, stages.get(1).shapes());
        assertShapes(70.5, 10.5, stages.get(2).shapes());
        assertTrue(stages.stream().allMatch(stage -> stage.lean() == PlanStage.Lean.OWN));
    }

    private static void assertShapes(double alpha, double beta, Shapes shapes) {
        assertEquals(alpha, shapes.alpha(), 1e-6);
        assertEquals(beta, shapes.beta(), 1e-6);
    }

    @Test
    void givesTheSmallestNumberThatIsEnough() {
        tenSeasons();
        Plan plan = layers(question -> question);
        Plan.Answer answer = plan.answer().orElseThrow();
        Planning.Outlook outlook = Stages.of(
                        List.of(new Shapes(80.5, 20.5), new Shapes(80.5, 0.5), new Shapes(70.5, 10.5)))
                .outlook();
        assertEquals(outlook.atLeast(4, answer.toSet()), answer.chance(), 1e-9);
        assertTrue(answer.chance() >= 0.9);
        assertTrue(outlook.atLeast(4, answer.toSet() - 1) < 0.9);
        // at the means alone 0.689 of each are fit for sale: 4 or more of 7 in 87 of 100, of 8 in 94
        assertEquals(8, answer.toSet());
        assertEquals(8 * 80.5 / 101 * 80.5 / 81 * 70.5 / 81, answer.expected(), 1e-9);
        // always set on 10 May; fit for sale 874 days later or sooner, in steps of four weeks: 32 of 28
        assertEquals(LocalDate.of(2025, 5, 10), answer.from());
        assertEquals(LocalDate.of(2025, 5, 10), answer.to());
        assertEquals(answer.to().plusDays(896), answer.fitBy());
        assertEquals(
                new PlanWeeks(MonthDay.of(5, 10), MonthDay.of(5, 10), PlanStage.Lean.OWN, 10),
                plan.weeks().get());
        assertEquals(133, answer.ready().orElseThrow().days());
    }

    @Test
    void takesTheThickestPositionsOfTheMothersKnownBest() {
        tenSeasons();
        mother("K-2", CULTIVAR);
        layers("K-2", 2020, 10, 3, 2);
        diary.write("2025-02-01 measured K-2; positions=8-12:9");
        mother("K-3", CULTIVAR);
        diary.write("2025-02-01 measured K-3; positions=8-12:2");
        Plan plan = layers(question -> question.sure(0.99));
        assertEquals(
                List.of(new Tag("K-1"), new Tag("K-2"), new Tag("K-3")),
                plan.mothers().stream().map(PlanMother::tag).toList());
        PlanMother first = plan.mothers().get(0);
        assertEquals(12, first.positions().get(0).lowMm().value().intValue());
        assertEquals(8, first.positions().get(0).use());
        assertEquals(
                plan.answer().orElseThrow().toSet(),
                plan.mothers().stream().mapToInt(PlanMother::use).sum());
        assertTrue(plan.mothers().get(2).rate().isEmpty());
    }

    @Test
    void countsNoPositionTwice() {
        tenSeasons();
        // one of the thick ones, one of the thin, and one of no known stem: of the thickest
        diary.write(
                "2025-02-02 layer-set X-1; mother=K-1; stem_mm=15",
                "2025-02-02 layer-set X-2; mother=K-1; stem_mm=9",
                "2025-02-02 layer-set X-3; mother=K-1");
        diary.write("2025-02-20 failed X-1; cause=dried");
        PlanMother mother = layers(question -> question).mothers().get(0);
        assertEquals(
                List.of(6, 5),
                mother.positions().stream().map(PlanMother.Position::free).toList());
        // set before they were counted, and pending still: that branch is no position either
        diary.write("2025-01-20 layer-set X-4; mother=K-1; stem_mm=9");
        assertEquals(10, layers(question -> question).mothers().get(0).free());
    }

    @Test
    void leavesOutMothersThatMayNotBeUsedAndSaysWhich() {
        tenSeasons();
        diary.person(4, "Lough nursery", Person.Role.CUSTOMER);
        for (String tag : List.of("K-2", "K-3", "K-4")) {
            mother(tag, CULTIVAR);
        }
        diary.write(
                "2025-02-01 measured K-2 K-3; positions=8-12:30",
                "2025-02-10 held K-2; sign=cankers",
                "2025-02-10 reserved K-3; customer=#4");
        Plan plan = layers(question -> question);
        assertEquals(
                List.of(
                        new LeftOut(new Tag("K-2"), PlanMother.Why.HELD),
                        new LeftOut(new Tag("K-3"), PlanMother.Why.RESERVED),
                        new LeftOut(new Tag("K-4"), PlanMother.Why.NOT_COUNTED)),
                plan.leftOut());
        diary.write("2025-02-11 cultivar-listed; cultivar=" + CULTIVAR + "; right=protected");
        Plan guarded = layers(question -> question);
        assertEquals(
                new LeftOut(new Tag("K-1"), PlanMother.Why.PROTECTED),
                guarded.leftOut().get(1));
        assertEquals(Why.POSITIONS, guarded.shortfall().orElseThrow().why());
        assertEquals(Optional.of(0), guarded.shortfall().orElseThrow().positions());
    }

    @Test
    void tellsTheNearestThatCanBeMetWherePositionsAreFew() {
        tenSeasons();
        Plan plan = layers(
                question -> new PlanQuestion("Deshojo", 12, BY, 0.9, Optional.empty(), Optional.of(Method.LAYER), DAY));
        Plan.Shortfall shortfall = plan.shortfall().orElseThrow();
        assertEquals(Why.POSITIONS, shortfall.why());
        assertEquals(Optional.of(14), shortfall.positions());
        assertTrue(shortfall.needed().orElseThrow() > 14);
        int most = shortfall.most().orElseThrow();
        assertTrue(layers(question ->
                        new PlanQuestion("Deshojo", most, BY, 0.9, Optional.empty(), Optional.of(Method.LAYER), DAY))
                .answer()
                .isPresent());
        assertTrue(layers(question -> new PlanQuestion(
                        "Deshojo", most + 1, BY, 0.9, Optional.empty(), Optional.of(Method.LAYER), DAY))
                .answer()
                .isEmpty());
        double chance = shortfall.chance().orElseThrow();
        assertTrue(layers(question -> new PlanQuestion(
                        "Deshojo", 12, BY, chance - 1e-9, Optional.empty(), Optional.of(Method.LAYER), DAY))
                .answer()
                .isPresent());
        assertEquals(Optional.empty(), shortfall.soonest(), "the book knows of nothing that comes later");
    }

    @Test
    void saysThatItIsTooLateAndWhenItCouldBe() {
        tenSeasons();
        LocalDate soon = LocalDate.of(2026, 6, 1);
        Plan plan = layers(question ->
                new PlanQuestion("Deshojo", 4, soon, 0.9, Optional.empty(), Optional.of(Method.LAYER), DAY));
        Plan.Shortfall shortfall = plan.shortfall().orElseThrow();
        assertEquals(Why.TOO_LATE, shortfall.why());
        assertEquals(Optional.of(0), shortfall.most());
        LocalDate day = shortfall.soonest().orElseThrow();
        assertEquals(LocalDate.of(2025, 5, 10).plusDays(896), day);
        assertTrue(layers(question ->
                        new PlanQuestion("Deshojo", 4, day, 0.9, Optional.empty(), Optional.of(Method.LAYER), DAY))
                .answer()
                .isPresent());
        assertTrue(layers(question -> new PlanQuestion(
                        "Deshojo", 4, day.minusDays(1), 0.9, Optional.empty(), Optional.of(Method.LAYER), DAY))
                .answer()
                .isEmpty());
    }

    @Test
    void needsNoFewerForMoreOrToBeSurerAndNoMoreForLater() {
        tenSeasons();
        diary.write("2025-02-02 measured K-1; positions=8-12:600");
        // some of a season become fit for sale later than the rest
        for (int year = 2012; year < 2018; year++) {
            diary.write((year + 4) + "-04-01 graded K-1-" + year + "-" + (year % 2 == 0 ? 9 : 7) + "; size=small");
        }
        store.read(view -> {
            PlanMaker maker = new PlanMaker(view, Snapshot.of(view, DAY, Plans.parts()), Optional.empty());
            int before = 0;
            for (int count = 1; count <= 40; count += 3) {
                int needed = needed(maker, count, 0.9, BY);
                assertTrue(needed >= before, "for " + count);
                before = needed;
            }
            before = 0;
            for (double sure : new double[] {0.1, 0.5, 0.8, 0.9, 0.95, 0.99}) {
                int needed = needed(maker, 10, sure, BY);
                assertTrue(needed >= before, "at " + sure);
                before = needed;
            }
            before = PlanQuestion.MOST;
            for (LocalDate by = BY; by.isBefore(BY.plusYears(4)); by = by.plusDays(40)) {
                int needed = needed(maker, 10, 0.9, by);
                assertTrue(needed <= before, "by " + by);
                before = needed;
            }
            assertTrue(before < needed(maker, 10, 0.9, BY), "with time fewer are enough");
            return before;
        });
    }

    private static int needed(PlanMaker maker, int count, double sure, LocalDate by) {
        PlanQuestion question =
                new PlanQuestion("Deshojo", count, by, sure, Optional.empty(), Optional.of(Method.LAYER), DAY);
        return maker.plans(question).get(0).answer().map(Plan.Answer::toSet).orElse(PlanQuestion.MOST);
    }

    @Test
    void setsAsLateAsTheSameNumberIsEnough() {
        tenSeasons();
        Plan.Answer early = layers(question -> question).answer().orElseThrow();
        Plan.Answer late = layers(question -> new PlanQuestion(
                        "Deshojo", 4, BY.plusYears(2), 0.9, Optional.empty(), Optional.of(Method.LAYER), DAY))
                .answer()
                .orElseThrow();
        assertEquals(early.toSet(), late.toSet());
        assertEquals(early.from().plusYears(2), late.from());
    }

    @Test
    void leansOnOthersWhereLittleIsKnownAndSaysSo() {
        tenSeasons();
        for (String epithet : List.of("Arakawa", "Katsura", "Orange Dream", "Shishigashira")) {
            String tag = "M-" + epithet.charAt(0);
            mother(tag, "Acer palmatum '" + epithet + "'");
            layers(tag, 2019, 20, 10, 8);
            layers(tag, 2020, 20, 12, 9);
        }
        mother("N-1", "Acer palmatum 'Sango-kaku'");
        diary.write("2025-02-01 measured N-1; positions=8-12:90");
        layers("N-1", 2021, 3, 3, 2);
        Plan plan = plansAsOf(DAY, PlanQuestion.of("Sango-kaku", 4, BY, DAY).method(Method.LAYER), question -> question)
                .all()
                .get(0);
        PlanStage take = plan.stages().get(0);
        assertEquals(PlanStage.Lean.TAXON, take.lean());
        assertEquals(5, take.others());
        assertEquals(new Count(3, 3), take.own());
        assertEquals(new Count(80 + 4 * 22, 100 + 4 * 40), take.helped());
        assertTrue(take.rate() > 0.55 && take.rate() < 0.85, "between three of three and the others: " + take.rate());
        assertEquals(PlanStage.Lean.TAXON, plan.weeks().orElseThrow().lean());
        assertTrue(plan.answer().isPresent());
        // of another genus: on all
        mother("Q-1", "Prunus mume 'Kobai'");
        diary.write("2025-02-01 measured Q-1; positions=8-12:90");
        Plan other = plansAsOf(DAY, PlanQuestion.of("Kobai", 4, BY, DAY).method(Method.LAYER), question -> question)
                .all()
                .get(0);
        assertEquals(PlanStage.Lean.ALL, other.stages().get(0).lean());
        assertEquals(new Count(0, 0), other.stages().get(0).own());
    }

    @Test
    void saysWhenItCannotTellHowMuchSeasonsDiffer() {
        mother("K-1", CULTIVAR);
        layers("K-1", 2021, 20, 15, 12);
        diary.write("2025-02-01 measured K-1; positions=8-12:60");
        Plan plan = layers(question -> question);
        assertTrue(plan.answer().isPresent());
        assertTrue(plan.stages().stream().allMatch(stage -> stage.source() == PlanStage.Spread.UNTOLD));
    }

    @Test
    void guessesNothingInABookThatTellsNothing() {
        mother("K-1", CULTIVAR);
        diary.write("2025-02-01 measured K-1; positions=8-12:9");
        Plans empty = plans(question -> question);
        assertEquals(1, empty.all().size());
        assertEquals(Why.NOT_KNOWN, empty.all().get(0).shortfall().orElseThrow().why());
        // they took, and nothing was ever fit for sale
        layers("K-1", 2023, 5, 4, 0);
        Plans young = plans(question -> question);
        assertEquals(Why.NOT_KNOWN, young.all().get(0).shortfall().orElseThrow().why());
        assertEquals(List.of(), young.all().get(0).stages());
    }

    @Test
    void plansEachMethodThatTheBookKnowsOfIt() {
        tenSeasons();
        List<String> lines = new ArrayList<>();
        for (int year = 2014; year < 2022; year++) {
            String tray = "T-" + year;
            lines.add(year + "-06-15 cuttings-struck " + tray + "; mothers=K-1:20; count=20; medium=perlite");
            lines.add(year + "-08-15 drawn " + tray + "-1.." + tray + "-8; source=" + tray);
            lines.add(year + "-08-16 failed " + tray + "; count=12; cause=damped-off");
            lines.add((year + 1) + "-07-01 seen " + tray + "-1.." + tray + "-8");
            lines.add((year + 2) + "-06-01 graded " + tray + "-1.." + tray + "-6; size=small");
        }
        diary.write(lines.toArray(new String[0]));
        Plans plans = plans(question -> question);
        assertEquals(
                List.of(Method.LAYER, Method.CUTTING),
                plans.all().stream().map(Plan::method).toList());
        Plan cuttings = plans.all().get(1);
        assertEquals(new Count(64, 160), cuttings.stages().get(0).own());
        assertEquals(new Count(48, 64), cuttings.stages().get(2).own());
        assertEquals(20, cuttings.mothers().get(0).most());
        // small is not medium: none of the cuttings ever was
        Plans medium = plans(question -> question.size("Medium"));
        assertEquals(
                Why.NOT_KNOWN, medium.all().get(1).shortfall().orElseThrow().why());
        assertTrue(medium.all().get(0).answer().isPresent());
    }

    @Test
    void refusesWhatCannotBeAsked() {
        tenSeasons();
        assertLine(
                "expected a day after 2025-03-01 to plan for, found 2025-03-01",
                () -> PlanQuestion.of("Deshojo", 4, DAY, DAY));
        assertLine("expected 1 to 5000 trees, found 0", () -> PlanQuestion.of("Deshojo", 0, BY, DAY));
        assertLine(
                "expected how sure as a share from 0.01 to 0.999, such as 0.9, found 90.0",
                () -> PlanQuestion.of("Deshojo", 4, BY, DAY).sure(90));
        assertLine(
                "plans are made for layers, cuttings and grafts, not for seed",
                () -> PlanQuestion.of("Deshojo", 4, BY, DAY).method(Method.SEED));
        assertLine(
                "nothing was ever graded in the size class \"huge\"; there are medium",
                () -> plans(question -> question.size("huge")));
        assertLine(
                "no cultivar Deshoj; nearest: " + CULTIVAR,
                () -> plansAsOf(DAY, PlanQuestion.of("Deshoj", 4, BY, DAY), question -> question));
    }

    private static void assertLine(String line, org.junit.jupiter.api.function.Executable asked) {
        assertEquals(List.of(line), assertThrows(Refused.class, asked).lines());
    }
}
