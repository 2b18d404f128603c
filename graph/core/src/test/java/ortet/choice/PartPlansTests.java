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

/** What time running out does to parts, by a clock that goes on by a minute whenever somebody looks at it. */
class PartPlansTests {
    private static final int PLENTY = 1_000_000;

    private final AtomicLong looks = new AtomicLong();

    /** Return six cultivars that share nothing. */
    private static ChoiceQuestion six(long seed) {
        return Nurseries.like(
                        24, 6, 20, seed, Settings.DEFAULTS.anewUpTo(40).draws(0).years(2))
                .with(new Limits(Amounts.everyYear(List.of(1e6, 1e6, 1e6, 1e6)), Map.of(), List.of(), List.of()));
    }

    private List<PartPlans.One> planned(ChoiceQuestion question, long minutes) {
        looks.set(0);
        Deadline late = Deadline.in(Duration.ofMinutes(minutes), () -> looks.getAndIncrement() * 60_000_000_000L);
        return new PartPlans(question.settings(), late, Progress.NONE, 1).of(Parts.of(Paths.planned(question)));
    }

    private static double gap(PartPlans.One one) {
        return (one.plan().bound() - one.plan().account().worth()) / one.plan().bound();
    }

    @Test
    void letsNoPartStarveWhereTimeRunsOut() {
        List<PartPlans.One> all = planned(six(13), PLENTY);
        long needed = looks.get();
        List<PartPlans.One> cut = planned(six(13), needed / 4);
        assertTrue(looks.get() < needed / 2);
        for (int at = 0; at < all.size(); at++) {
            // whoever came last was a quarter and more off when the first took what they liked
            assertTrue(gap(cut.get(at)) < 0.1, "part " + at + ": " + gap(cut.get(at)));
            assertTrue(
                    cut.get(at).plan().bound() >= all.get(at).plan().account().worth() * (1 - 1e-6));
        }
    }

    @Test
    void comesToTheSameWhereThereIsTimeEnough() {
        List<PartPlans.One> all = planned(six(16), PLENTY);
        long needed = looks.get();
        // the share of one is too short; what the others leave is not, and it is planned anew
        List<PartPlans.One> again = planned(six(16), needed * 3 / 2);
        assertTrue(looks.get() > needed);
        for (int at = 0; at < all.size(); at++) {
            assertArrayEquals(all.get(at).part().members(), again.get(at).part().members());
            Planner.Plan plan = all.get(at).plan();
            assertEquals(plan.account().worth(), again.get(at).plan().account().worth(), 0);
            assertEquals(plan.bound(), again.get(at).plan().bound(), 0);
            assertArrayEquals(plan.prices(), again.get(at).plan().prices());
        }
    }
}
