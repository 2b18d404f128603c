package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import ortet.value.Refused;

/** Outside values: R 4.2.2, the likelihood written out with {@code lgamma}. */
class LeaningTests {
    private static final List<int[]> APART =
            List.of(new int[] {8, 2, 0}, new int[] {3, 5, 2}, new int[] {1, 1, 8}, new int[] {4, 4, 2});
    private static final List<int[]> ALIKE =
            List.of(new int[] {20, 10}, new int[] {18, 13}, new int[] {25, 11}, new int[] {16, 9});

    @Test
    void findsTheLikelihoodAsByHand() {
        // shares a half each; of (1, 0) and (0, 1): (a/2 / a) twice
        List<List<int[]>> two = List.of(List.of(new int[] {1, 0}, new int[] {0, 1}));
        assertEquals(Math.log(0.25), Leaning.logLikelihood(two, 3), 1e-12);
        // of (2, 0) and (0, 2), a = 2: (1 · 2) / (2 · 3) twice
        List<List<int[]>> four = List.of(List.of(new int[] {2, 0}, new int[] {0, 2}));
        assertEquals(2 * Math.log(1.0 / 3), Leaning.logLikelihood(four, 2), 1e-12);
    }

    @Test
    void agreesWithR() {
        assertEquals(-40.5493603865576, Leaning.logLikelihood(List.of(APART), 5), 1e-9);
        assertEquals(-80.7368606691041, Leaning.logLikelihood(List.of(ALIKE), 20), 1e-9);
        assertEquals(-122.505377288665, Leaning.logLikelihood(List.of(APART, ALIKE), 10), 1e-9);
        assertEquals(7.52064665884523, Leaning.strength(List.of(APART)), 1e-9);
        assertEquals(52.0899059948933, Leaning.strength(List.of(ALIKE)), 1e-9);
        assertEquals(25.9823596231006, Leaning.strength(List.of(APART, ALIKE)), 1e-9);
    }

    @Test
    void isUsualWhereThereIsNothingToLearnFrom() {
        assertEquals(Leaning.USUAL, Leaning.strength(List.of()), 1e-9);
        assertEquals(
                Leaning.USUAL,
                Leaning.strength(List.of(List.of(new int[] {3, 9}), List.of(new int[] {0, 0}, new int[] {5, 1}))),
                1e-9);
    }

    @Test
    void growsWithHowMuchGroupsAreAlike() {
        assertTrue(Leaning.strength(List.of(APART)) < Leaning.strength(List.of(ALIKE)));
        assertThrows(Refused.class, () -> Leaning.strength(List.of(List.of(new int[] {1, 2}, new int[] {1, 2, 3}))));
    }
}
