package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
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
 * Outside values: {@code oracles/survival.csv} (R 4.2.2 {@code survfit}, each computed a second time). Data: {@code aml}
 * (Miller 1997) and {@code lung} (Loprinzi et al. 1994) of R's package survival; the layers are invented.
 */
class KaplanMeierTests {
    private static final double TO_R = 1e-9;

    private static Stream<NamedCsvRecord> rows() {
        return Oracle.rows("survival.csv", "analysis", "kaplan_meier");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void agreesWithR(NamedCsvRecord row) {
        KaplanMeier curve = KaplanMeier.of(Followings.caseOf(row.getField("data"), row.getField("group")), 0.95);
        double expected = Oracle.number(row, "value");
        String quantity = row.getField("quantity");
        if (quantity.equals("median")) {
            assertEquals(expected, curve.median().orElseThrow(), TO_R);
            return;
        }
        double time = Oracle.number(row, "time");
        KaplanMeier.Step step = curve.at(time).orElseThrow();
        switch (quantity) {
            case "survival" -> assertEquals(expected, step.survival(), TO_R);
            case "greenwood_se" -> assertMatches(expected, step.error());
            case "loglog_lower95" -> assertMatches(expected, step.interval().map(Interval::lower));
            case "loglog_upper95" -> assertMatches(expected, step.interval().map(Interval::upper));
            case "at_risk" -> assertEquals(expected, step.atRisk());
            default -> throw new AssertionError(quantity);
        }
    }

    /** An empty field is a figure that is not defined. */
    private static void assertMatches(double expected, Optional<Double> found) {
        assertEquals(!Double.isNaN(expected), found.isPresent());
        found.ifPresent(value -> assertEquals(expected, value, TO_R));
    }

    @Test
    void isAbsentWhenNobodyWasFollowed() {
        KaplanMeier nobody = KaplanMeier.of(List.of(), 0.95);
        assertTrue(nobody.steps().isEmpty()
                && nobody.at(1).isEmpty()
                && nobody.median().isEmpty());
        assertTrue(nobody.medianInterval().isEmpty() && nobody.end().isEmpty());
    }

    @Test
    void staysAtOneWhenEverybodyIsCensored() {
        KaplanMeier all = KaplanMeier.of(List.of(Followed.censored(5), Followed.censored(9)), 0.95);
        assertEquals(1, all.at(6).orElseThrow().survival());
        assertTrue(all.at(6).orElseThrow().interval().isEmpty());
        assertTrue(all.median().isEmpty() && all.at(10).isEmpty());
    }

    @Test
    void fallsToZeroWhenItHappensToAllAtOnce() {
        KaplanMeier all = KaplanMeier.of(List.of(Followed.happened(5), Followed.happened(5)), 0.95);
        assertEquals(0, all.at(5).orElseThrow().survival());
        assertEquals(1, all.at(4.9).orElseThrow().survival());
        assertTrue(all.at(5).orElseThrow().error().isEmpty());
        assertEquals(Optional.of(5.0), all.median());
        assertTrue(all.medianInterval().isEmpty());
        assertEquals(0, all.at(99).orElseThrow().survival());
    }

    @Test
    void knowsNothingOfOneButWhatHappened() {
        assertEquals(
                Optional.of(7.0),
                KaplanMeier.of(List.of(Followed.happened(7)), 0.95).median());
        assertTrue(KaplanMeier.of(List.of(Followed.censored(7)), 0.95).median().isEmpty());
    }

    @Test
    void takesTheMiddleOfAFlatStretchForTheMedian() {
        KaplanMeier four = KaplanMeier.of(
                List.of(Followed.happened(1), Followed.happened(2), Followed.happened(4), Followed.happened(8)), 0.95);
        assertEquals(Optional.of(3.0), four.median());
    }

    /** The interval of the median of aml: R's {@code survfit(conf.type = "log-log")} prints 13 to NA for Maintained (memory). */
    @Test
    void leavesTheMedianWithoutAnUpperLimitWhereTheDataEnd() {
        Interval interval = KaplanMeier.of(Followings.caseOf("aml", "Maintained"), 0.95)
                .medianInterval()
                .orElseThrow();
        assertEquals(13, interval.lower());
        assertEquals(Double.POSITIVE_INFINITY, interval.upper());
    }

    @Property(tries = 200)
    void isTheShareWithoutCensoringAndNeverRises(@ForAll @IntRange(min = 1, max = 40) int n, @ForAll int seed) {
        Random random = new Random(seed);
        List<Followed> happened = new ArrayList<>();
        List<Followed> some = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double time = 1 + random.nextInt(10);
            happened.add(Followed.happened(time));
            some.add(new Followed(time, random.nextInt(2)));
        }
        KaplanMeier all = KaplanMeier.of(happened, 0.95);
        for (int time = 0; time <= 11; time++) {
            int t = time;
            double later = happened.stream().filter(one -> one.time() > t).count() / (double) n;
            assertEquals(later, all.at(t).orElseThrow().survival(), 1e-12);
        }
        KaplanMeier curve = KaplanMeier.of(some, 0.95);
        Collections.shuffle(some, random);
        assertEquals(curve.steps(), KaplanMeier.of(some, 0.95).steps());
        double before = 1;
        for (KaplanMeier.Step step : curve.steps()) {
            assertTrue(step.survival() < before);
            before = step.survival();
            step.interval().ifPresent(interval -> assertTrue(interval.holds(step.survival())));
        }
    }
}
