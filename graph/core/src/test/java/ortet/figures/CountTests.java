package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import ortet.value.Defect;

class CountTests {
    @Test
    void sharesSuccessesAmongTrials() {
        assertEquals(Optional.of(0.65), new Count(156, 240).share()); // Bartlett 1935: long cuttings planted at once
        assertEquals(Optional.of(0.0), new Count(0, 1).share());
        assertEquals(Optional.of(1.0), new Count(1, 1).share());
    }

    @Test
    void addsUp() {
        // Bartlett 1935: long and short cuttings planted at once, 263 of 480 alive
        assertEquals(new Count(263, 480), new Count(156, 240).plus(new Count(107, 240)));
        assertThrows(ArithmeticException.class, () -> new Count(0, Long.MAX_VALUE).plus(new Count(0, 1)));
    }

    @Test
    void countsFailuresAsTheRest() {
        assertEquals(new Count(84, 240), new Count(156, 240).failures());
    }

    @Test
    void cannotHaveMoreSuccessesThanTrials() {
        assertEquals(
                "70 of 60 is no count",
                assertThrows(Defect.class, () -> new Count(70, 60)).getMessage());
        assertThrows(Defect.class, () -> new Count(-1, 60));
        assertThrows(Defect.class, () -> new Count(0, -1));
    }
}
