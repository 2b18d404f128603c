package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import ortet.value.Refused;

/** Outside values: R 4.2.2, {@code survfit(Surv(t, factor(k)) ~ 1, weights = w)} of survival 3.5.3. */
class EndSharesTests {
    private static final double NEAR = 1e-12;

    private static Followed end(double time, int cause) {
        return new Followed(time, cause);
    }

    @Test
    void addsAShareOfTheWiderKindAsByHand() {
        EndShares wider = EndShares.of(Map.of(end(1, 1), 30.0, end(1, 2), 10.0));
        // four of ten, and as ten more of which three quarters: (4 + 7.5) / 20
        EndShares own = EndShares.of(Map.of(end(1, 1), 4.0, end(1, 2), 6.0), wider, 10);
        assertEquals(11.5 / 20, own.of(1), NEAR);
        assertEquals(8.5 / 20, own.of(2), NEAR);
        assertEquals(0, own.open(), NEAR);
        // an end that it never came to itself; nobody followed is the wider kind
        EndShares one = EndShares.of(Map.of(end(1, 1), 10.0), wider, 10);
        assertEquals(2.5 / 20, one.of(2), NEAR);
        assertEquals(0.75, EndShares.of(Map.of(), wider, 10).of(1), NEAR);
    }

    @Test
    void sharesOutThoseStillFollowedByWhatTheWiderKindCameToLater() {
        EndShares wider = EndShares.of(Map.of(end(1, 1), 2.0, end(2, 1), 2.0, end(2, 2), 6.0));
        // ten of which one ended at 1, by the wider kind as ten more: 3 of 20; the other 17 by 2 to 6
        EndShares own = EndShares.of(Map.of(end(1, 1), 1.0, end(1.5, 0), 9.0), wider, 10);
        assertEquals(3.0 / 20 + 17.0 / 20 * 2 / 8, own.of(1), NEAR);
        assertEquals(17.0 / 20 * 6 / 8, own.of(2), NEAR);
    }

    @Test
    void agreesWithRWhereTheWiderKindStandsAsWeights() {
        EndShares wider = EndShares.of(
                Map.of(end(1, 1), 30.0, end(2, 2), 20.0, end(2, 1), 10.0, end(3, 2), 15.0, end(4, 0), 25.0));
        assertEquals(0.25, wider.open(), NEAR);
        EndShares own = EndShares.of(
                Map.of(end(1, 1), 4.0, end(1, 0), 2.0, end(2, 2), 3.0, end(2, 0), 2.0, end(2, 1), 1.0, end(3, 0), 3.0),
                wider,
                4);
        assertEquals(0.359857270294380, own.of(1), NEAR);
        assertEquals(0.286886708296164, own.of(2), NEAR);
        assertEquals(0.353256021409456, own.open(), NEAR);
    }

    @Test
    void isTheIncidenceOfAalenAndJohansenWhereItLeansOnNothing() {
        Random random = new Random(5);
        for (int world = 0; world < 50; world++) {
            List<Followed> all = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                all.add(end(random.nextInt(8), random.nextInt(4)));
            }
            EndShares shares = EndShares.of(
                    all.stream().collect(Collectors.groupingBy(one -> one, Collectors.summingDouble(one -> 1))));
            double last = all.stream().mapToDouble(Followed::time).max().orElseThrow();
            for (int cause = 1; cause < 4; cause++) {
                double share =
                        Incidence.of(all, cause, 0.95).at(last).orElseThrow().share();
                assertEquals(share, shares.of(cause), NEAR);
            }
            // and leaning on itself it stays as it is
            EndShares again = EndShares.of(
                    all.stream().collect(Collectors.groupingBy(one -> one, Collectors.summingDouble(one -> 1))),
                    shares,
                    7);
            assertEquals(shares.of(1), again.of(1), NEAR);
            assertEquals(shares.open(), again.open(), NEAR);
        }
    }

    @Test
    void refusesAStrengthThatIsNone() {
        EndShares none = EndShares.of(Map.of());
        assertEquals(1, none.open());
        assertThrows(Refused.class, () -> EndShares.of(Map.of(), none, 0));
        assertThrows(Refused.class, () -> EndShares.of(Map.of(), none, Double.NaN));
    }
}
