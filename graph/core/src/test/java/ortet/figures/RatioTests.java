package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import ortet.value.Defect;

class RatioTests {
    @Test
    void tellsWhatIsNoNumberByItsType() {
        assertEquals(Optional.of(1.5), Ratio.of(3, 2).finite());
        assertEquals(Optional.of(0.0), Ratio.of(0, 2).finite());
        assertEquals(Ratio.INFINITE, Ratio.of(3, 0));
        assertEquals(Ratio.UNDEFINED, Ratio.of(0, 0));
        assertEquals(Ratio.INFINITE, Ratio.of(Double.POSITIVE_INFINITY));
        assertEquals(Optional.empty(), Ratio.INFINITE.finite());
        assertEquals(Optional.empty(), Ratio.UNDEFINED.finite());
        assertEquals("1.5, infinite, not defined", Ratio.of(1.5) + ", " + Ratio.INFINITE + ", " + Ratio.UNDEFINED);
    }

    @Test
    void isNeverBelowZeroOrNoNumber() {
        assertThrows(Defect.class, () -> Ratio.of(-1, 2));
        assertThrows(Defect.class, () -> Ratio.of(Double.NaN));
        assertThrows(Defect.class, () -> Ratio.of(Double.NaN, 1));
    }
}
