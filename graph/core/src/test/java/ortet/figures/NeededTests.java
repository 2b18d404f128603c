package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import ortet.value.Refused;

/** Outside values: the worked examples in the documentation of R's {@code power.prop.test} (package stats). */
class NeededTests {
    /** As printed there: n = 76.7 for 50 against 75 % with power 0.90; power 0.740 for n = 50; 80.26 % for n = 50, power 0.9. */
    @Test
    void agreesWithTheExamplesOfPowerPropTest() {
        assertEquals(76.7, Needed.exactly(0.5, 0.75, 0.95, 0.9), 0.05);
        assertEquals(50, Needed.exactly(0.5, 0.75, 0.95, 0.740), 0.1);
        assertEquals(50, Needed.exactly(0.5, 0.8026, 0.95, 0.9), 0.05);
        assertEquals(new Needed(77, Optional.empty(), 1), Needed.independent(0.5, 0.75, 0.95, 0.9));
    }

    @Test
    void inflatesByTheDesignEffectAndRoundsUpToWholeClusters() {
        // 76.65 · (1 + 59 · 0.1) = 528.9 units, 8.8 trays of 60
        assertEquals(new Needed(540, Optional.of(9L), 1 + 59 * 0.1), Needed.clustered(0.5, 0.75, 60, 0.1, 0.95, 0.9));
        // independent after all
        assertEquals(new Needed(120, Optional.of(2L), 1), Needed.clustered(0.5, 0.75, 60, 0, 0.95, 0.9));
        // one tray would be enough for the formula, and tell nobody how trays differ
        assertEquals(
                Optional.of(2L), Needed.clustered(0.1, 0.9, 1000, 0, 0.95, 0.8).clusters());
    }

    @Test
    void countsClustersAsUnitsWhenAllOfAClusterFareAlike() {
        Needed trays = Needed.clustered(0.5, 0.75, 60, 1, 0.95, 0.9);
        assertEquals(Optional.of(77L), trays.clusters());
    }

    @Test
    void refusesWhatCannotBeToldApart() {
        assertEquals(
                List.of("expected two rates that differ, found 0.5 twice"),
                assertThrows(Refused.class, () -> Needed.independent(0.5, 0.5, 0.95, 0.8))
                        .lines());
        assertEquals(
                List.of("expected a rate from 0 to 1, found 60.0"),
                assertThrows(Refused.class, () -> Needed.independent(60, 0.5, 0.95, 0.8))
                        .lines());
        assertThrows(Refused.class, () -> Needed.independent(0.5, 0.6, 0.95, 1));
        assertThrows(Refused.class, () -> Needed.independent(0.5, 0.6, 1, 0.8));
        assertThrows(Refused.class, () -> Needed.clustered(0.5, 0.6, 0, 0.1, 0.95, 0.8));
        assertThrows(Refused.class, () -> Needed.clustered(0.5, 0.6, 60, Double.NaN, 0.95, 0.8));
    }

    @Property
    void growsAsTheRatesDrawNearAndTurnsWithTheSides(
            @ForAll @DoubleRange(min = 0.05, max = 0.45) double low,
            @ForAll @DoubleRange(min = 0.55, max = 0.9) double high,
            @ForAll @IntRange(min = 1, max = 200) int size,
            @ForAll @DoubleRange(min = 0, max = 1) double correlation) {
        double units = Needed.exactly(low, high, 0.95, 0.8);
        assertEquals(units, Needed.exactly(high, low, 0.95, 0.8), 1e-9 * units);
        assertEquals(units, Needed.exactly(1 - low, 1 - high, 0.95, 0.8), 1e-9 * units);
        assertTrue(Needed.exactly(low, high - 0.05, 0.95, 0.8) > units);
        assertTrue(Needed.exactly(low, high, 0.95, 0.9) > units);
        Needed clustered = Needed.clustered(low, high, size, correlation, 0.95, 0.8);
        assertTrue(clustered.units() >= Needed.independent(low, high, 0.95, 0.8).units());
        assertEquals(clustered.units(), clustered.clusters().orElseThrow() * size);
    }
}
