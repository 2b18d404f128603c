package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import ortet.figures.ClusteredRatio.Part;
import ortet.value.Defect;
import ortet.value.Refused;

class ClusteredRatioTests {
    private static ClusteredRatio of(int... countsAndUnits) {
        List<Part> parts = new ArrayList<>();
        for (int at = 0; at < countsAndUnits.length; at += 2) {
            parts.add(new Part(countsAndUnits[at], countsAndUnits[at + 1]));
        }
        return ClusteredRatio.of(parts);
    }

    /** Ratio and standard error as svyratio of the R package survey 4.1-1 prints them, mothers as clusters. */
    @Test
    void agreesWithTheSurveyPackage() {
        ClusteredRatio nine = of(4, 3, 0, 2, 7, 4, 12, 6, 3, 1, 9, 5, 1, 2, 5, 3, 22, 9);
        assertEquals(1.8, nine.ratio().orElseThrow(), 1e-12);
        assertEquals(0.231587247190, nine.standardError().orElseThrow(), 1e-11);
        ClusteredRatio three = of(2, 4, 3, 2, 10, 6);
        assertEquals(1.25, three.ratio().orElseThrow(), 1e-12);
        assertEquals(0.401818781708, three.standardError().orElseThrow(), 1e-11);
    }

    @Test
    void limitsLieEvenlyOnTheLogarithmWithStudentsT() {
        Interval limits = of(20, 4, 60, 4, 10, 4).interval(0.9).orElseThrow();
        // by hand: R = 7.5, v = 3/2 (10² + 30² + 20²) / 12² = 2100 / 144, more than 7.5 / 12; three alike: 2 degrees
        double wide = TDistribution.of(2).inverseSurvivalProbability(0.05) * Math.sqrt(2100.0 / 144) / 7.5;
        assertEquals(7.5 * Math.exp(-wide), limits.lower(), 1e-9);
        assertEquals(7.5 * Math.exp(wide), limits.upper(), 1e-9);
        assertEquals(Interval.Method.RATIO_CLUSTERED, limits.method());
    }

    /** Mothers that happen to be alike say no more than counts at random: R / Σx is 10 / 20. */
    @Test
    void countsAtRandomAreTheLeastThatMayBeSaid() {
        ClusteredRatio alike = of(50, 5, 50, 5, 50, 5, 50, 5);
        assertEquals(0, alike.standardError().orElseThrow(), 1e-12);
        double wide = TDistribution.of(3).inverseSurvivalProbability(0.025) * Math.sqrt(0.5) / 10;
        assertEquals(10 * Math.exp(wide), alike.interval(0.95).orElseThrow().upper(), 1e-9);
    }

    @Test
    void oneLargeClusterAmongSmallOnesTeachesLittle() {
        Interval even = of(8, 4, 16, 4, 8, 4, 16, 4).interval(0.95).orElseThrow();
        Interval uneven = of(20, 13, 16, 1, 4, 1, 8, 1).interval(0.95).orElseThrow();
        assertEquals(even.lower() * even.upper(), 9, 1e-9);
        assertEquals(uneven.lower() * uneven.upper(), 9, 1e-9);
        // 16² / (13² + 3) - 1 is below 1, so one degree of freedom
        double v = 4.0 / 3 * (19 * 19 + 13 * 13 + 1 + 5 * 5) / 16 / 16;
        double wide = TDistribution.of(1).inverseSurvivalProbability(0.025) * Math.sqrt(v) / 3;
        assertEquals(3 * Math.exp(wide), uneven.upper(), 3 * Math.exp(wide) * 1e-12);
    }

    @Test
    void saysNothingOfOneClusterOrOfNone() {
        assertEquals(Optional.empty(), of().ratio());
        assertEquals(Optional.empty(), of().interval(0.95));
        assertEquals(Optional.of(2.0), of(4, 2).ratio());
        assertEquals(Optional.empty(), of(4, 2).standardError());
        assertEquals(Optional.empty(), of(4, 2).interval(0.95));
        assertEquals(Optional.of(0.0), of(0, 2, 0, 3).ratio());
        assertEquals(Optional.empty(), of(0, 2, 0, 3).interval(0.95));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThrows(Defect.class, () -> new Part(-1, 2));
        assertThrows(Defect.class, () -> new Part(1, 0));
        assertThrows(Refused.class, () -> of(1, 2, 3, 4).interval(1));
    }
}
