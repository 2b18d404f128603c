package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Outside values: {@code oracles/survival.csv} (R 4.2.2 {@code survfit} with a factor, its standard error checked there by
 * numerical derivatives). Data: {@code mgus2} of R's package survival (Kyle et al. 2002); the layers are invented.
 */
class IncidenceTests {
    private static final double TO_R = 1e-9;
    private static final Map<String, Integer> CAUSES = Map.of("pcm", 1, "death", 2, "rooted", 1, "died", 2);

    private static Stream<NamedCsvRecord> rows() {
        return Oracle.rows("survival.csv", "analysis", "aalen_johansen");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void agreesWithR(NamedCsvRecord row) {
        Incidence incidence =
                Incidence.of(Followings.caseOf(row.getField("data"), "all"), CAUSES.get(row.getField("group")), 0.95);
        Incidence.Step step = incidence.at(Oracle.number(row, "time")).orElseThrow();
        double expected = Oracle.number(row, "value");
        Optional<Double> found = switch (row.getField("quantity")) {
            case "cumulative_incidence" -> Optional.of(step.share());
            case "se_infinitesimal_jackknife" -> Optional.of(step.error());
            case "se_delta" -> Optional.of(step.deltaError());
            case "loglog_lower95" -> step.interval().map(Interval::lower);
            case "loglog_upper95" -> step.interval().map(Interval::upper);
            default -> throw new AssertionError(row);
        };
        assertEquals(!Double.isNaN(expected), found.isPresent());
        found.ifPresent(value -> assertEquals(expected, value, TO_R));
    }

    @Test
    void isAbsentOrZeroWhereNothingHappened() {
        assertTrue(Incidence.of(List.of(), 1, 0.95).at(3).isEmpty());
        Incidence nothing = Incidence.of(List.of(Followed.censored(4), Followed.censored(6)), 1, 0.95);
        assertEquals(0, nothing.at(5).orElseThrow().share());
        assertTrue(nothing.at(5).orElseThrow().interval().isEmpty());
        assertTrue(nothing.at(7).isEmpty()
                && nothing.steps().isEmpty()
                && nothing.quantile(0.5).isEmpty());
        Incidence one = Incidence.of(List.of(Followed.happened(4)), 1, 0.95);
        assertEquals(1, one.at(4).orElseThrow().share());
        assertEquals(0, one.at(4).orElseThrow().error());
        assertEquals(1, one.at(9).orElseThrow().share());
        assertEquals(Optional.of(4.0), one.quantile(0.5));
    }

    @Property(tries = 200)
    void sharesAddUpAndBothErrorsAgree(@ForAll @IntRange(min = 1, max = 40) int n, @ForAll int seed) {
        Random random = new Random(seed);
        List<Followed> followed = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            followed.add(new Followed(1 + random.nextInt(12), random.nextInt(4)));
        }
        List<Followed> ended = followed.stream()
                .map(one -> one.hasHappened() ? Followed.happened(one.time()) : one)
                .toList();
        KaplanMeier left = KaplanMeier.of(ended, 0.95);
        Incidence alone = Incidence.of(ended, 1, 0.95);
        for (int time = 0; time <= 12; time++) {
            double t = time;
            if (left.at(t).isEmpty()) {
                continue;
            }
            double sum = left.at(t).orElseThrow().survival();
            for (int cause = 1; cause <= 3; cause++) {
                Incidence.Step step = Incidence.of(followed, cause, 0.95).at(t).orElseThrow();
                sum += step.share();
                // a variance of nothing is a difference of what is 1e-16
                assertEquals(step.error(), step.deltaError(), 1e-8);
            }
            assertEquals(1, sum, 1e-12);
            // with one cause it is what Kaplan and Meier leave, with Greenwood's error
            assertEquals(
                    1 - left.at(t).orElseThrow().survival(),
                    alone.at(t).orElseThrow().share(),
                    1e-12);
            left.at(t)
                    .orElseThrow()
                    .error()
                    .ifPresent(error ->
                            assertEquals(error, alone.at(t).orElseThrow().error(), 1e-8));
        }
    }
}
