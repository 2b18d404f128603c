package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import ortet.book.Progress;

class ChooserTests {
    @Test
    void findsTheBestOfAllPlans() {
        int compared = 0;
        long plans = 0;
        for (long seed = 0; seed < 60; seed++) {
            ChoiceQuestion question = Nurseries.tiny(seed);
            EveryPlan.Best best = EveryPlan.of(question);
            Choice choice = Chooser.choose(question, Progress.NONE);
            System.out.println(
                    seed + " " + best + " " + choice.worth() + " " + choice.bound() + " " + choice.status() + " "
                            + choice.advice().stream()
                                    .flatMap(a -> a.years().stream())
                                    .map(y -> y.deed().word() + (y.layers() + y.cuttings()))
                                    .toList());
            if (best.exists()) {
                assertEquals(best.worth(), choice.worth(), 1e-6 * Math.max(1, Math.abs(best.worth())), "seed " + seed);
                compared++;
                plans += best.plans();
            }
        }
        System.out.println(compared + " " + plans);
        assertTrue(compared > 10);
    }
}
