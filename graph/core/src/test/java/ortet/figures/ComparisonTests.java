package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import ortet.value.Refused;

/** Counts: plum root cuttings, Bartlett 1935, J. R. Stat. Soc. Suppl. 2:248. */
class ComparisonTests {
    private static Comparison.Row row(String group, String stratum, String cluster, long took, long of) {
        return new Comparison.Row(
                group,
                Optional.of(stratum).filter(text -> !text.isEmpty()),
                Optional.of(cluster).filter(text -> !text.isEmpty()),
                new Count(took, of));
    }

    private static final List<Comparison.Row> PLUM = List.of(
            row("spring", "long", "", 84, 240),
            row("now", "long", "", 156, 240),
            row("spring", "short", "", 31, 240),
            row("now", "short", "", 107, 240));

    @Test
    void holdsEveryGroupAgainstTheFirst() {
        Comparison plum = Comparison.of(PLUM, 0.95);
        assertEquals(
                List.of("spring", "now"),
                plum.rates().stream().map(Comparison.Rate::group).toList());
        Comparison.Pair pair = plum.pairs().get(0);
        assertEquals("now", pair.group());
        assertEquals("spring", pair.against());
        assertEquals((263 - 115) / 480.0, pair.difference().orElseThrow(), 1e-15);
        assertEquals(Newcombe.difference(new Count(263, 480), new Count(115, 480), 0.95), pair.differenceInterval());
        // from oracles/stratified.csv
        assertEquals(
                4.17738617049826,
                pair.within().orElseThrow().oddsRatio().finite().orElseThrow(),
                1e-8);
        assertEquals(
                4.15528013697019,
                pair.exactWithin().orElseThrow().ratio().finite().orElseThrow(),
                1e-7);
        assertTrue(plum.stratified() && !plum.clustered() && !pair.claimsNothing());
    }

    @Test
    void claimsNothingWhereOneSideHasOneCluster() {
        Comparison one = Comparison.of(
                List.of(row("a", "", "T1", 30, 60), row("a", "", "T2", 40, 60), row("b", "", "T1", 50, 60)), 0.95);
        assertTrue(one.pairs().get(0).claimsNothing());
        // the same name in another group is another cluster
        Comparison two = Comparison.of(
                List.of(
                        row("a", "", "T1", 30, 60),
                        row("a", "", "T2", 40, 60),
                        row("b", "", "T1", 50, 60),
                        row("b", "", "T2", 55, 60)),
                0.95);
        assertFalse(two.pairs().get(0).claimsNothing());
        assertEquals(2, two.rates().get(1).clusters().orElseThrow().clusters());
        assertTrue(two.pairs().get(0).within().isEmpty());
    }

    @Test
    void putsRowsOfOneClusterTogether() {
        Comparison split = Comparison.of(
                List.of(row("a", "", "T1", 30, 40), row("a", "", "T1", 10, 20), row("a", "", "T2", 20, 60)), 0.95);
        Comparison whole = Comparison.of(List.of(row("a", "", "T1", 40, 60), row("a", "", "T2", 20, 60)), 0.95);
        assertEquals(whole.rates().get(0).interval(), split.rates().get(0).interval());
        assertTrue(split.pairs().isEmpty());
    }

    @Test
    void isAbsentWhereNothingIsKnown() {
        Comparison nobody = Comparison.of(List.of(row("a", "", "", 0, 0), row("b", "", "", 3, 4)), 0.95);
        assertTrue(nobody.rates().get(0).interval().isEmpty());
        assertTrue(nobody.pairs().get(0).difference().isEmpty());
        assertTrue(nobody.pairs().get(0).differenceInterval().isEmpty());
        assertEquals(Ratio.UNDEFINED, nobody.pairs().get(0).odds().ratio());
        assertTrue(Comparison.of(List.of(), 0.95).rates().isEmpty());
        assertThrows(Refused.class, () -> Comparison.of(List.of(), 95));
    }
}
