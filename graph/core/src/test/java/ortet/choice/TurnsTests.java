package ortet.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How time is shared among parts, by a clock that is set by hand. */
class TurnsTests {
    private static final double NEAR = 1e-9;

    private long now;

    private Deadline eightSeconds() {
        return Deadline.in(Duration.ofSeconds(8), () -> now);
    }

    private void passes(double seconds) {
        now += Math.round(seconds * 1e9);
    }

    @Test
    void givesEachPartWhatItsMothersAreOfThoseNotDone() {
        Turns turns = new Turns(eightSeconds(), List.of(1, 1, 2, 4), 1);
        assertEquals(1, turns.begin(0).seconds(), NEAR);
        passes(1);
        turns.done(0);
        assertEquals(1, turns.begin(1).seconds(), NEAR);
        // it needs no more than a quarter of that: what it leaves goes to the others
        passes(0.25);
        turns.done(1);
        Deadline third = turns.begin(2);
        assertEquals(6.75 * 2 / 6, third.seconds(), NEAR);
        passes(2.25);
        assertTrue(third.isOver());
        turns.done(2);
        Deadline last = turns.begin(3);
        assertEquals(4.5, last.seconds(), NEAR);
        assertFalse(last.isOver());
    }

    @Test
    void countsThoseThatArePlannedAtOnce() {
        Turns turns = new Turns(eightSeconds(), List.of(3, 3, 3, 3), 2);
        assertEquals(4, turns.begin(0).seconds(), NEAR);
        assertEquals(4, turns.begin(1).seconds(), NEAR);
        passes(4);
        turns.done(0);
        assertEquals(8.0 / 3, turns.begin(2).seconds(), NEAR);
        turns.done(1);
        assertEquals(4, turns.begin(3).seconds(), NEAR);
    }

    @Test
    void givesOneAloneAllThereIs() {
        Deadline all = eightSeconds();
        assertSame(all, new Turns(all, List.of(30), 2).begin(0));
        passes(9);
        assertTrue(new Turns(all, List.of(1, 1), 1).begin(0).isOver());
    }
}
