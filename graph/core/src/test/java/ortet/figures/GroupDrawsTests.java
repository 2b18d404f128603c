package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import ortet.value.Defect;

class GroupDrawsTests {
    private static final int DRAWS = 4000;

    private static MixedFit fit() {
        long[] taken = {9, 7, 3, 10, 2, 6, 8, 5, 1, 9, 4, 7};
        long[] known = new long[taken.length];
        Arrays.fill(known, 10);
        List<String> mothers = List.of("a", "b", "c", "d", "e", "f", "a", "b", "c", "d", "e", "f");
        return MixedModel.laplace().fit(ModelData.of(taken, known).withGroups("mother", mothers));
    }

    private static double quantile(double[] draws, double share) {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        return 1 / (1 + Math.exp(-sorted[(int) (share * (sorted.length - 1))]));
    }

    @Test
    void liesAsTheIntervalsOfTheRatesDo() {
        MixedFit fit = fit();
        GroupDraws draws = fit.draws(List.of("mother"), DRAWS, 1).orElseThrow();
        for (GroupRate rate : fit.rates("mother", 0.9)) {
            double[] one = draws.of("mother", rate.label());
            // a quantile of 4000 draws has a standard error of at most 0.01 of a share here
            assertEquals(rate.rate(), quantile(one, 0.5), 0.02, rate.label());
            assertEquals(rate.interval().lower(), quantile(one, 0.05), 0.03, rate.label());
            assertEquals(rate.interval().upper(), quantile(one, 0.95), 0.03, rate.label());
        }
    }

    @Test
    void drawsTheSameFromTheSameSeedAndOthersFromAnother() {
        MixedFit fit = fit();
        double[] first = fit.draws(List.of("mother"), 50, 7).orElseThrow().of("mother", "c");
        assertArrayEquals(
                first, fit.draws(List.of("mother"), 50, 7).orElseThrow().of("mother", "c"));
        assertFalse(Arrays.equals(
                first, fit.draws(List.of("mother"), 50, 8).orElseThrow().of("mother", "c")));
    }

    @Test
    void drawsGroupsThatItNeverMetAsFarApartAsTheOthersLie() {
        MixedFit fit = fit();
        GroupDraws draws = fit.draws(List.of("mother"), DRAWS, 1).orElseThrow();
        double[] unmet = draws.unmet("mother", 99);
        double square = Arrays.stream(unmet).map(one -> one * one).average().orElseThrow();
        double sd = fit.deviations().get(0).sd().orElseThrow();
        // wider than the estimate, for the deviation itself is not known; not twice as wide
        assertTrue(Math.sqrt(square) > 0.9 * sd && Math.sqrt(square) < 2 * sd, Math.sqrt(square) + " beside " + sd);
        assertFalse(Arrays.equals(unmet, draws.unmet("mother", 100)));
        assertArrayEquals(unmet, draws.unmet("mother", 99));
    }

    @Test
    void knowsWhomItMet() {
        GroupDraws draws = fit().draws(List.of("mother"), 2, 1).orElseThrow();
        assertTrue(draws.knows("mother", "a"));
        assertFalse(draws.knows("mother", "z"));
        assertThrows(Defect.class, () -> draws.of("mother", "z"));
        assertTrue(MixedModel.laplace()
                .fit(ModelData.of(new long[0], new long[0]).withGroups("mother", List.of()))
                .draws(List.of("mother"), 2, 1)
                .isEmpty());
    }
}
