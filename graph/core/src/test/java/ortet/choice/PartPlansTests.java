package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import ortet.book.Progress;

/** What time running out does to parts, by a clock that goes on by a second whenever somebody looks at it. */
class PartPlansTests {
    private static final int PLENTY = 1_000_000;

    /** Six cultivars that share nothing. */
    private static final ChoiceQuestion SIX = Nurseries.like(
                    24, 6, 20, 13, Settings.DEFAULTS.anewUpTo(40).draws(0).years(2))
            .with(new Limits(Amounts.everyYear(List.of(1e6, 1e6, 1e6, 1e6)), Map.of(), List.of(), List.of()));

    private final AtomicLong looks = new AtomicLong();

    private List<PartPlans.One> planned(int seconds) {
        looks.set(0);
        Deadline late = Deadline.in(Duration.ofSeconds(seconds), () -> looks.getAndIncrement() * 1_000_000_000L);
        return new PartPlans(SIX.settings(), late, Progress.NONE, 1).of(Parts.of(Paths.planned(SIX)));
    }

    private static double gap(PartPlans.One one) {
        return (one.plan().bound() - one.plan().account().worth()) / one.plan().bound();
    }

    @Test
    void letsNoPartStarveWhereTimeRunsOut() {
        List<PartPlans.One> all = planned(PLENTY);
        long needed = looks.get();
        List<PartPlans.One> cut = planned((int) needed / 5);
        assertTrue(looks.get() < needed / 2);
        for (int at = 0; at < all.size(); at++) {
            // whoever came last was a quarter and more off when the first took what they liked
            assertTrue(gap(cut.get(at)) < 0.05, "part " + at + ": " + gap(cut.get(at)));
            assertTrue(
                    cut.get(at).plan().bound() >= all.get(at).plan().account().worth() * (1 - 1e-6));
        }
    }

    @Test
    void comesToTheSameWhereThereIsTimeEnough() {
        List<PartPlans.One> all = planned(PLENTY);
        // the shares of the largest are too short; what the others leave is not
        List<PartPlans.One> again = planned((int) looks.get() * 2);
        for (int at = 0; at < all.size(); at++) {
            assertArrayEquals(all.get(at).part().members(), again.get(at).part().members());
            Planner.Plan plan = all.get(at).plan();
            assertEquals(plan.account().worth(), again.get(at).plan().account().worth(), 0);
            assertEquals(plan.bound(), again.get(at).plan().bound(), 0);
            assertArrayEquals(plan.prices(), again.get(at).plan().prices());
        }
    }
}
