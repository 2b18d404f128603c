package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import ortet.book.Progress;
import ortet.value.Refused;

/** Holds the choice against every plan there is, against itself with more, and against what must be so. */
class ChooserTests {
    /** Relative; the solver's own tolerance on a constraint is 1e-6 or finer, and worths are some hundreds at most. */
    private static final double CLOSE = 1e-6;

    @Test
    void findsTheBestOfAllPlans() {
        isBest(0, 220, Aim.MARGIN, 180);
    }

    @Test
    void findsThePlanThatMeetsMostOfTheDemand() {
        isBest(1000, 1060, Aim.DEMAND, 45);
    }

    private static void isBest(long from, long to, Aim aim, int least) {
        int compared = 0;
        int sets = 0;
        for (long seed = from; seed < to; seed++) {
            ChoiceQuestion tiny = Nurseries.tiny(seed);
            ChoiceQuestion question = tiny.with(tiny.settings().aim(aim));
            EveryPlan.Best best = EveryPlan.of(question);
            Choice choice = choose(question);
            String which = "seed " + seed;
            assertEquals(Choice.Status.BEST, choice.status(), which);
            assertTrue(choice.bound() >= choice.worth(), which);
            if (best.exists()) {
                compared++;
                near(best.worth(), choice.worth(), which);
                assertTrue(choice.resources().stream().noneMatch(ResourceUse::isOverused), which);
                if (aim == Aim.DEMAND) {
                    assertEquals(best.met(), choice.demandMet().orElse(Double.NaN), 1e-4, which);
                }
                sets += choice.advice().stream().anyMatch(ChooserTests::sets) ? 1 : 0;
            } else {
                assertTrue(choice.resources().stream().anyMatch(ResourceUse::isOverused), which);
            }
        }
        assertTrue(compared >= least, "only " + compared + " nurseries had a plan");
        assertTrue(sets > compared / 2, "only " + sets + " plans set anything");
    }

    private static boolean sets(Advice advice) {
        return advice.years().stream().anyMatch(year -> year.layers() + year.cuttings() > 0);
    }

    @Test
    void planIsWorthWhatItsYearsSay() {
        for (long seed = 300; seed < 320; seed++) {
            ChoiceQuestion question = Nurseries.tiny(seed);
            Choice choice = choose(question);
            int licensed = 0;
            for (int at = 0; at < question.mothers().size(); at++) {
                if (question.mothers().get(at).cultivar().equals("A")) {
                    licensed += choice.advice().get(at).now().layers()
                            + choice.advice().get(at).now().cuttings();
                }
            }
            int set = licensed;
            choice.resources().stream()
                    .filter(one -> one.resource().kind() == Resource.Kind.LICENCE
                            && one.resource().year() == 0)
                    .forEach(one -> assertEquals(set, one.used(), CLOSE));
        }
    }

    @Test
    void moreOfAnythingIsNeverWorse() {
        for (long seed = 400; seed < 415; seed++) {
            ChoiceQuestion question = Nurseries.tiny(seed);
            double worth = choose(question).worth();
            Limits limits = question.limits();
            Map<String, Amounts> room = new TreeMap<>();
            limits.roomM2().forEach((place, amounts) -> room.put(place, more(amounts, 1.3)));
            List<Limits> greater = List.of(
                    new Limits(more(limits.hours(), 1.3), limits.roomM2(), limits.licences(), limits.concentrations()),
                    new Limits(limits.hours(), room, limits.licences(), limits.concentrations()),
                    new Limits(limits.hours(), limits.roomM2(), List.of(), limits.concentrations()),
                    new Limits(limits.hours(), limits.roomM2(), limits.licences(), List.of()));
            for (Limits one : greater) {
                assertTrue(choose(question.with(one)).worth() >= worth - CLOSE * Math.max(1, worth), "seed " + seed);
            }
        }
    }

    private static Amounts more(Amounts amounts, double factor) {
        List<List<Double>> years = new ArrayList<>();
        amounts.years()
                .forEach(
                        year -> years.add(year.stream().map(one -> one * factor).toList()));
        return new Amounts(years);
    }

    /** A concave value lies below each of its tangents: an hour more brings at most its price, one less costs at least it. */
    @Test
    void priceOfAnHourIsWhatAnHourBrings() {
        double step = 1e-3;
        int exact = 0;
        for (long seed = 500; seed < 540; seed++) {
            ChoiceQuestion question = Nurseries.tiny(seed);
            Relaxation.Answer now = relaxed(question);
            Limits limits = question.limits();
            for (int season = 0; season < limits.hours().seasons(); season++) {
                double price = now.prices()[season];
                double up = relaxed(question.with(hours(limits, season, step))).value() - now.value();
                double down = now.value()
                        - relaxed(question.with(hours(limits, season, -step))).value();
                assertTrue(up / step <= price + 1e-4 * Math.max(1, price), "seed " + seed);
                assertTrue(down / step >= price - 1e-4 * Math.max(1, price), "seed " + seed);
                if (price > 1e-3 && Math.abs(up - down) / step < 1e-4 * price) {
                    assertEquals(price, up / step, 2e-4 * price, "seed " + seed);
                    exact++;
                }
            }
        }
        assertTrue(exact >= 5, "only " + exact + " hours were scarce");
    }

    private static Limits hours(Limits limits, int season, double change) {
        List<List<Double>> years = new ArrayList<>(limits.hours().years());
        List<Double> first = new ArrayList<>(years.get(0));
        first.set(season, first.get(season) + change);
        years.set(0, first);
        return new Limits(new Amounts(years), limits.roomM2(), limits.licences(), limits.concentrations());
    }

    private static Relaxation.Answer relaxed(ChoiceQuestion question) {
        Paths paths = Paths.planned(question);
        try (Relaxation relaxation = new Relaxation(paths, paths.first())) {
            Relaxation.Answer answer = relaxation.solve(0, Deadline.in(Duration.ofMinutes(1)), Progress.NONE);
            near(answer.value(), answer.bound(), "the relaxed plan and its bound");
            return answer;
        }
    }

    @Test
    void boundHoldsHoweverEarlyTheSearchStops() {
        for (long seed = 600; seed < 630; seed++) {
            ChoiceQuestion question = Nurseries.tiny(seed);
            EveryPlan.Best best = EveryPlan.of(question);
            Settings early = question.settings().anewUpTo(0).atMost(Duration.ofNanos(1));
            Choice choice = choose(question.with(early));
            if (best.exists()) {
                assertTrue(
                        choice.bound() >= best.worth() - CLOSE * Math.max(1, Math.abs(best.worth())), "seed " + seed);
                assertTrue(
                        choice.worth() <= best.worth() + CLOSE * Math.max(1, Math.abs(best.worth())), "seed " + seed);
            }
        }
    }

    @Test
    void stepsLeadNearTheRelaxedPlanOfManyMothers() {
        ChoiceQuestion question = Nurseries.like(120, 5, 20, 3, large(0));
        Paths paths = Paths.planned(question);
        Relaxation.Answer steps =
                new Descent(paths, paths.first()).solve(100, 0.5, Deadline.in(Duration.ofMinutes(5)), Progress.NONE);
        Relaxation.Answer exact = relaxed(question);
        assertTrue(steps.bound() >= exact.value() * (1 - CLOSE));
        assertTrue(steps.bound() <= exact.value() * 1.02, steps.bound() + " above " + exact.value());
    }

    @Test
    void planOfManyMothersIsNearItsBound() {
        Choice choice = choose(Nurseries.like(800, 12, 20, 5, large(0)));
        assertFalse(choice.whole());
        assertTrue(choice.gap() < 0.02, "gap " + choice.gap());
        assertTrue(choice.resources().stream().noneMatch(ResourceUse::isOverused));
        assertTrue(choice.resources().stream().anyMatch(one -> one.worth() > 0));
    }

    private static Settings large(int draws) {
        return Settings.DEFAULTS.anewUpTo(0).draws(draws).atMost(Duration.ofMinutes(5));
    }

    @Test
    void sameQuestionGetsTheSameAnswer() {
        ChoiceQuestion few = Nurseries.tiny(7);
        assertEquals(choose(few), choose(few));
        ChoiceQuestion many = Nurseries.like(16, 3, 20, 11, large(10).years(3));
        assertEquals(choose(many), choose(many));
    }

    @Test
    void aCultivarAloneGetsTheSamePlanAsAmongAllWhereNothingTiesThem() {
        ChoiceQuestion like = Nurseries.like(9, 3, 20, 13, large(0).anewUpTo(40).years(2));
        ChoiceQuestion all =
                like.with(new Limits(Amounts.everyYear(List.of(1e6, 1e6, 1e6, 1e6)), Map.of(), List.of(), List.of()));
        Choice together = choose(all);
        double worth = 0;
        double bound = 0;
        for (String cultivar : List.of("Cultivar 0", "Cultivar 1", "Cultivar 2")) {
            Choice alone = choose(only(all, cultivar));
            worth += alone.worth();
            bound += alone.bound();
            for (Advice advice : alone.advice()) {
                Advice other = together.advice().stream()
                        .filter(one -> one.mother().equals(advice.mother()))
                        .findFirst()
                        .orElseThrow();
                assertEquals(advice.years(), other.years(), advice.mother());
            }
        }
        near(worth, together.worth(), "worth");
        near(bound, together.bound(), "bound");
    }

    private static ChoiceQuestion only(ChoiceQuestion all, String cultivar) {
        return new ChoiceQuestion(
                all.mothers().stream()
                        .filter(one -> one.cultivar().equals(cultivar))
                        .toList(),
                all.ways(),
                all.outlets().stream()
                        .filter(one -> one.cultivar().equals(cultivar))
                        .toList(),
                all.limits(),
                all.costs(),
                all.seasons(),
                all.settings());
    }

    @Test
    void nextBestDeedCostsWhatAPlanWithoutTheDeedLacks() {
        int compared = 0;
        for (long seed = 700; seed < 720; seed++) {
            ChoiceQuestion question = Nurseries.tiny(seed);
            Choice choice = choose(question);
            EveryPlan.Best every = EveryPlan.of(question);
            for (int at = 0; at < choice.advice().size(); at++) {
                Advice advice = choice.advice().get(at);
                EveryPlan.Best without =
                        EveryPlan.without(question, at, advice.now().deed());
                if (without.exists() && choice.resources().stream().noneMatch(ResourceUse::isOverused)) {
                    Alternative next = advice.next().orElseThrow();
                    assertEquals(Sureness.Way.ANEW, next.way());
                    assertEquals(
                            Math.max(0, choice.worth() + every.reluctance() - without.worth() - without.reluctance()),
                            next.cost(),
                            2 * CLOSE * Math.max(1, Math.abs(choice.worth())),
                            "seed " + seed + ", mother " + at);
                    compared++;
                }
            }
        }
        assertTrue(compared > 25, "only " + compared + " compared");
    }

    @Test
    void twoWaysToFindSurenessAgree() {
        Settings settings = large(40).anewUpTo(40);
        ChoiceQuestion question = Nurseries.like(20, 4, 40, 9, settings);
        Choice anew = choose(question);
        Choice priced = choose(question.with(settings.anewUpTo(0)));
        double apart = 0;
        int both = 0;
        for (int at = 0; at < anew.advice().size(); at++) {
            Advice one = anew.advice().get(at);
            Advice other = priced.advice().get(at);
            assertEquals(Sureness.Way.ANEW, one.sureness().way());
            assertEquals(Sureness.Way.PRICED, other.sureness().way());
            if (one.now().deed() == other.now().deed()) {
                apart += Math.abs(one.sureness().share().orElseThrow()
                        - other.sureness().share().orElseThrow());
                both++;
            }
        }
        assertTrue(both >= 12, "only " + both + " deeds alike");
        assertTrue(apart / both < 0.06, "apart by " + apart / both);
    }

    @Test
    void isSureOfWhatIsKnown() {
        ChoiceQuestion tiny = Nurseries.tiny(2);
        Choice choice = choose(tiny.with(tiny.settings().draws(5).anewUpTo(0)));
        assertEquals(5, choice.outlook().margins().size());
        assertTrue(choice.outlook().margins().stream().allMatch(one -> Math.abs(one - choice.margin()) < 1e-9));
        assertTrue(choice.advice().stream().allMatch(one -> one.sureness().draws() == 5));
    }

    @Test
    void takesNothingFromAMotherWhoIsHeld() {
        int held = 0;
        for (long seed = 800; seed < 840; seed++) {
            ChoiceQuestion question = Nurseries.tiny(seed);
            Choice choice = choose(question);
            for (int at = 0; at < question.mothers().size(); at++) {
                if (question.mothers().get(at).heldYears() > 0) {
                    Advice advice = choice.advice().get(at);
                    assertEquals(0, advice.now().layers() + advice.now().cuttings());
                    assertFalse(advice.now().deed() == Deed.SELL);
                    assertEquals(Why.HELD, advice.reasons().why());
                    held++;
                }
            }
        }
        assertTrue(held >= 4);
    }

    @Test
    void planOnSeveralDrawsIsWorthNoMoreThanOnTheirMean() {
        Settings settings = large(0);
        ChoiceQuestion question =
                Nurseries.like(8, 2, 4, 4, settings.scenarios(4).years(3));
        Choice together = choose(question);
        // what is asked for caps each draw by itself, so that a good season cannot make up for a bad one
        assertTrue(together.bound() <= choose(means(question)).bound() * (1 + CLOSE));
    }

    private static ChoiceQuestion means(ChoiceQuestion question) {
        return question.with(question.settings().scenarios(1));
    }

    @Test
    void refusesAShareThatCannotBeKept() {
        ChoiceQuestion question = Nurseries.tiny(3);
        Limits limits = question.limits();
        Limits tight = new Limits(
                limits.hours(),
                limits.roomM2(),
                limits.licences(),
                List.of(new Concentration(Concentration.On.CLONE, 0.2)));
        Refused refused = assertThrows(Refused.class, () -> question.with(tight));
        long clones = question.mothers().stream().map(Mother::ortet).distinct().count();
        assertEquals(
                "share on one clone: expected at least 1/" + clones + ", for there are " + clones + ", found 0.2",
                refused.getMessage());
    }

    @Test
    void nobodyToPlanIsAnEmptyPlan() {
        ChoiceQuestion tiny = Nurseries.tiny(1);
        Choice choice = choose(new ChoiceQuestion(
                List.of(), List.of(), List.of(), tiny.limits(), Costs.NONE, SeasonEffects.NONE, tiny.settings()));
        assertEquals(0, choice.worth());
        assertEquals(List.of(), choice.advice());
        assertEquals(Optional.empty(), choice.demandMet());
    }

    private static Choice choose(ChoiceQuestion question) {
        return Chooser.choose(question, Progress.NONE);
    }

    private static void near(double expected, double found, String which) {
        assertEquals(expected, found, CLOSE * Math.max(1, Math.abs(expected)), which);
    }
}
