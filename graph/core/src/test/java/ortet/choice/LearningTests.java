package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import ortet.book.Progress;

/** Holds what a trial teaches against every order in which its layers can take and fail. */
class LearningTests {
    private static final Amounts PLENTY = Amounts.everyYear(List.of(1e6));

    @Test
    void chancesAreThoseOfDrawingFromAnUrn() {
        for (Trial trial : List.of(new Trial(4, 2.6, 1.4), new Trial(1, 0.5, 0.5), new Trial(7, 3, 9))) {
            double[] urn = new double[trial.layers() + 1];
            draw(trial, 0, 0, 1, (taken, chance) -> urn[taken] += chance);
            double[] chances = Learning.outcomes(trial);
            for (int taken = 0; taken < urn.length; taken++) {
                assertEquals(urn[taken], chances[taken], 1e-12);
            }
        }
    }

    @Test
    void teachesWhatEveryOutcomeIsWorthOnTheMean() {
        int useful = 0;
        for (int n = 1; n <= 4; n++) {
            for (double tree : new double[] {5, 20, 35, 60, 200}) {
                Trial trial = new Trial(n, 2, 2);
                ChoiceQuestion question = question(trial, 2, 0.5, tree);
                double[] sum = {0};
                draw(
                        trial,
                        0,
                        0,
                        1,
                        (taken, chance) -> sum[0] += chance * later(trial, (2.0 + taken) / (4 + trial.layers()), tree));
                double teaches = sum[0] - later(trial, 0.5, tree);
                Choice choice = Chooser.choose(question, Progress.NONE);
                double found = choice.advice().get(0).reasons().learning();
                assertEquals(teaches, found, 1e-9 * Math.max(1, teaches), n + " layers, tree at " + tree);
                useful += teaches > 1e-6 ? 1 : 0;
            }
        }
        assertTrue(useful >= 6, "only " + useful + " trials would teach anything");
    }

    @Test
    void triesAMotherWhomNobodyKnowsWhenThatTeachesEnough() {
        Choice choice = Chooser.choose(question(new Trial(2, 1, 1), 5, 0.5, 60), Progress.NONE);
        Advice advice = choice.advice().get(0);
        assertEquals(Deed.TRY_OUT, advice.now().deed());
        assertEquals(2, advice.now().layers());
        assertEquals(Why.TEACHES, advice.reasons().why());
        assertTrue(choice.margin() < choice.worth(), "what is learnt is no money yet");
    }

    private interface Outcome {
        void is(int taken, double chance);
    }

    /** Go through every order of takes and failures: after a of a + f have taken, the next takes at (α + a) / (α + β + a + f). */
    private static void draw(Trial trial, int taken, int failed, double chance, Outcome outcome) {
        if (taken + failed == trial.layers()) {
            outcome.is(taken, chance);
            return;
        }
        double next = (trial.alpha() + taken) / (trial.alpha() + trial.beta() + taken + failed);
        draw(trial, taken + 1, failed, chance * next, outcome);
        draw(trial, taken, failed + 1, chance * (1 - next), outcome);
    }

    /** What the second year is worth, by going through every plan of it. */
    private static double later(Trial trial, double rate, double tree) {
        return EveryPlan.of(question(trial, 1, rate, tree)).worth();
    }

    /** One mother with six positions a year, whose layers earn 20 each when they take and cost 8 each in any case. */
    private static ChoiceQuestion question(Trial trial, int years, double rate, double tree) {
        Raising raising =
                new Raising("r", new Needs(8, List.of(), List.of(), ""), List.of(), List.of(new Grade("S", 0, 1)));
        Wood six = new Wood(List.of(3, 3), 0);
        Mother mother = new Mother(
                "K-1",
                "A",
                "O-1",
                "P",
                1,
                1,
                0,
                0,
                new Growth(List.of(six), List.of(six), List.of(new Wood(List.of(0, 0), 0))),
                Optional.of(Worth.always(tree)),
                Worth.NOTHING,
                Needs.NONE,
                Needs.NONE,
                Rates.known(rate, 0),
                Optional.of(trial));
        return new ChoiceQuestion(
                List.of(mother),
                List.of(new Ways("A", List.of(List.of(raising), List.of(raising)), List.of())),
                List.of(new Outlet("A", "S", 20, 0, List.of(1e6))),
                new Limits(PLENTY, Map.of(), List.of(), List.of()),
                Costs.NONE,
                SeasonEffects.NONE,
                new Settings(Aim.MARGIN, years, 1, 0, 0, 40, 0, 0, Duration.ofMinutes(1)));
    }
}
