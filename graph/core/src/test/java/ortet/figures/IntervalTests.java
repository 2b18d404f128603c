package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import ortet.value.Defect;

class IntervalTests {
    @Test
    void holdsItsLimits() {
        Interval interval = new Interval(0.25, 0.5, 0.95, Interval.Method.WILSON);
        assertTrue(interval.holds(0.25) && interval.holds(0.5) && interval.holds(0.3));
        assertFalse(interval.holds(0.24) || interval.holds(0.51) || interval.holds(Double.NaN));
    }

    @Test
    void cannotRunBackwardsOrHoldWhatIsNoNumber() {
        assertThrows(Defect.class, () -> new Interval(0.5, 0.25, 0.95, Interval.Method.WILSON));
        assertThrows(Defect.class, () -> new Interval(Double.NaN, 0.5, 0.95, Interval.Method.WILSON));
        Defect defect = assertThrows(Defect.class, () -> new Interval(0.25, 0.5, 95, Interval.Method.WILSON));
        assertEquals("no interval from 0.25 to 0.5 at 95.0", defect.getMessage());
    }
}
