package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import ortet.value.Refused;

/**
 * Outside values: {@code oracles/planning.csv}, R 4.2.2 {@code pbinom} and the beta-binomial summed directly, checked by {@code
 * integrate}.
 */
class PlanningTests {
    @ParameterizedTest(name = "{0}: {1} at {2}{3} {4}, {5}")
    @CsvFileSource(resources = "/oracles/planning.csv", numLinesToSkip = 1)
    void agreesWithR(ArgumentsAccessor row) {
        Planning.Outlook outlook = row.getString(0).equals("binomial")
                ? Planning.binomial(row.getDouble(2))
                : Planning.betaBinomial(new BetaBinomial.Shapes(row.getDouble(3), row.getDouble(4)));
        Optional<Planning.Plan> plan = Planning.smallest(row.getLong(1), row.getDouble(5), outlook);
        if (row.getString(6) == null) {
            assertEquals(Optional.empty(), plan);
            return;
        }
        if (row.getString(8) != null && Math.abs(row.getDouble(8) - row.getDouble(5)) < 1e-12) {
            // One less is likely by exactly what was asked, and R's last digit fell short of it: 20 of 39 at one half
            // (by symmetry), 100 of 1999 at a uniform rate (1900 in 2000).
            assertEquals(row.getLong(6) - 1, plan.orElseThrow().trials());
            assertEquals(row.getDouble(5), plan.orElseThrow().probability(), 1e-12);
            return;
        }
        assertEquals(row.getLong(6), plan.orElseThrow().trials());
        // what R's own sums can be trusted to
        assertEquals(row.getDouble(7), plan.orElseThrow().probability(), 1e-9);
        if (row.getString(8) != null) {
            assertEquals(
                    row.getDouble(8), plan.orElseThrow().probabilityOfOneLess().orElseThrow(), 1e-9);
        }
    }

    @Test
    void takesEqualProbabilitiesAsEqual() {
        // by symmetry 20 or more of 39, and 100 or more of 199, are as likely as not
        assertEquals(
                39,
                Planning.smallest(20, 0.5, Planning.binomial(0.5)).orElseThrow().trials());
        assertEquals(
                199,
                Planning.smallest(100, 0.5, Planning.binomial(0.5))
                        .orElseThrow()
                        .trials());
    }

    @Test
    void plansNothingForNothing() {
        assertEquals(
                new Planning.Plan(0, 1, Optional.empty()),
                Planning.smallest(0, 0.9, Planning.binomial(0.5)).orElseThrow());
    }

    @Test
    void hasNoPlanWhereAMillionAreNotEnough() {
        assertEquals(Optional.empty(), Planning.smallest(1, 0.9, Planning.binomial(0)));
        assertEquals(Optional.empty(), Planning.smallest(2_000_000, 0.9, Planning.binomial(1)));
    }

    @Test
    void refusesWhatIsNoProbability() {
        Refused refused = assertThrows(Refused.class, () -> Planning.smallest(1, 90, Planning.binomial(0.5)));
        assertEquals(List.of("expected a probability above 0 and below 1, such as 0.9, found 90.0"), refused.lines());
        assertThrows(Refused.class, () -> Planning.smallest(-1, 0.9, Planning.binomial(0.5)));
        assertThrows(Refused.class, () -> Planning.binomial(Double.NaN));
    }
}
