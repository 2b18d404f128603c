package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import ortet.value.Refused;

/**
 * Outside values: {@code oracles/survival.csv} (R 4.2.2, self-consistency to 1e-13 with the conditions of Kuhn and Tucker
 * checked; {@code survfit} stops earlier). Data: Finkelstein & Wolfe 1985, Biometrics 41:933; the layers are invented.
 */
class TurnbullTests {
    /** What the note with the values grants. */
    private static final double TO_R = 1e-5;

    private static final Pattern STRETCH = Pattern.compile("(mass|survival after) ([(\\[])(.*),(.*)]");
    private static final Map<String, Turnbull> FITS = new LinkedHashMap<>();

    private static Stream<NamedCsvRecord> rows() {
        return Oracle.rows("survival.csv", "analysis", "turnbull");
    }

    private static Turnbull fit(String data, String group) {
        return FITS.computeIfAbsent(
                data + ": " + group,
                name -> Turnbull.of(Followings.within(
                                data,
                                row -> group.equals("all") || row.getFields().contains(group)))
                        .orElseThrow());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void agreesWithR(NamedCsvRecord row) {
        Turnbull fit = fit(row.getField("data"), row.getField("group"));
        double expected = Oracle.number(row, "value");
        if (row.getField("quantity").equals("loglik")) {
            assertEquals(expected, fit.logLikelihood(), TO_R);
            return;
        }
        Matcher stretch = STRETCH.matcher(row.getField("quantity"));
        assertTrue(stretch.matches());
        double left = Double.parseDouble(stretch.group(3));
        double right = Double.parseDouble(stretch.group(4));
        double after = 1;
        double found = Double.NaN;
        for (Turnbull.Mass mass : fit.masses()) {
            after -= mass.mass();
            if (mass.left() == left && mass.right() == right) {
                found = stretch.group(1).equals("mass") ? mass.mass() : after;
            }
        }
        assertEquals(expected, found, TO_R);
    }

    @Test
    void putsMassNowhereElse() {
        Stream.of("breast-cosmesis: radiation", "breast-cosmesis: radiation+chemo", "layers-visits: all")
                .forEach(name -> {
                    String[] parts = name.split(": ");
                    long stretches = rows().filter(row -> row.getField("data").equals(parts[0])
                                    && row.getField("group").equals(parts[1])
                                    && row.getField("quantity").startsWith("mass"))
                            .count();
                    assertEquals(stretches, fit(parts[0], parts[1]).masses().size(), name);
                });
    }

    /** Finkelstein & Wolfe 1985, radiation alone, as quoted (memory), to four decimals. */
    @Test
    void agreesWithThePublishedMasses() {
        double[] published = {0.0463, 0.0334, 0.0887, 0.0708, 0.0926, 0.0818, 0.1209, 0.4656};
        List<Turnbull.Mass> masses = fit("breast-cosmesis", "radiation").masses();
        for (int i = 0; i < published.length; i++) {
            assertEquals(published[i], masses.get(i).mass(), 0.5e-4);
        }
    }

    @Test
    void satisfiesTheConditionsOfKuhnAndTucker() {
        rows().forEach(row -> {
            Turnbull fit = fit(row.getField("data"), row.getField("group"));
            assertTrue(fit.hasConverged() && fit.kuhnTucker() < 1e-9);
        });
    }

    @Test
    void isAbsentWhenNobodyWasLookedAt() {
        assertTrue(Turnbull.of(List.of()).isEmpty());
    }

    @Test
    void knowsOneOnlyBetweenTheLooks() {
        Turnbull one = Turnbull.of(List.of(new Within(3, 7))).orElseThrow();
        assertEquals(List.of(new Turnbull.Mass(3, 7, 1)), one.masses());
        assertEquals(new Range(3, 7), one.median());
        assertEquals(new Range(0, 1), one.survival(5));
        assertEquals(new Range(1, 1), one.survival(3));
        assertEquals(new Range(0, 0), one.survival(7));
        Interval interval = one.medianInterval(0.95, 99, 1);
        assertEquals(3, interval.lower());
        assertEquals(7, interval.upper());
        assertEquals(Interval.Method.BOOTSTRAP, interval.method());
    }

    @Test
    void hasNoUpperEndWhereItHasHappenedToNobody() {
        Turnbull none = Turnbull.of(List.of(Within.after(5), Within.after(9))).orElseThrow();
        assertEquals(new Range(9, Double.POSITIVE_INFINITY), none.median());
        assertEquals(Double.POSITIVE_INFINITY, none.medianInterval(0.95, 99, 1).upper());
        assertEquals(0, none.logLikelihood(), 1e-12);
    }

    @Test
    void refusesTimesThatAreNone() {
        assertThrows(Refused.class, () -> new Within(5, 4));
        assertThrows(Refused.class, () -> new Within(-1, 4));
        assertThrows(Refused.class, () -> new Within(Double.NaN, 4));
        assertThrows(Refused.class, () -> Within.exactly(0));
        assertThrows(Refused.class, () -> Within.after(Double.POSITIVE_INFINITY));
        assertThrows(Refused.class, () -> new Followed(-1, 1));
        assertThrows(Refused.class, () -> new Followed(Double.NaN, 1));
        assertThrows(Refused.class, () -> new Followed(1, -1));
    }

    @Test
    void drawsTheSameIntervalFromTheSameSeed() {
        Turnbull fit = fit("layers-visits", "all");
        Interval interval = fit.medianInterval(0.95, 199, 7);
        assertEquals(interval, fit.medianInterval(0.95, 199, 7));
        assertTrue(interval.lower() <= fit.median().lower()
                && interval.upper() >= fit.median().upper());
    }

    /** With exact times and censoring it is the estimate of Kaplan and Meier. */
    @Property(tries = 100)
    void isKaplanAndMeiersForTimesKnownExactly(@ForAll @IntRange(min = 1, max = 30) int n, @ForAll int seed) {
        Random random = new Random(seed);
        List<Followed> followed = new ArrayList<>();
        List<Within> seen = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double time = 1 + random.nextInt(15);
            boolean happened = random.nextInt(3) > 0;
            followed.add(happened ? Followed.happened(time) : Followed.censored(time));
            seen.add(happened ? Within.exactly(time) : Within.after(time));
        }
        KaplanMeier curve = KaplanMeier.of(followed, 0.95);
        Turnbull fit = Turnbull.of(seen).orElseThrow();
        assertTrue(fit.hasConverged());
        for (KaplanMeier.Step step : curve.steps()) {
            assertEquals(step.survival(), fit.survival(step.time()).upper(), 1e-8);
        }
    }

    @Property(tries = 200)
    void alwaysReachesTheMaximumAndGoesWithTheUnitOfTime(@ForAll @IntRange(min = 1, max = 60) int n, @ForAll int seed) {
        Random random = new Random(seed);
        List<Within> seen = new ArrayList<>();
        List<Within> inWeeks = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double left = random.nextInt(20);
            int wide = random.nextInt(12);
            double right = wide > 9 ? Double.POSITIVE_INFINITY : left + (left > 0 ? wide : wide + 1);
            seen.add(new Within(left, right));
            inWeeks.add(new Within(left / 8, right / 8));
        }
        Turnbull fit = Turnbull.of(seen).orElseThrow();
        assertTrue(fit.hasConverged(), () -> seen + " " + fit.kuhnTucker());
        double sum = fit.masses().stream().mapToDouble(Turnbull.Mass::mass).sum();
        assertEquals(1, sum, 1e-7);
        Turnbull weeks = Turnbull.of(inWeeks).orElseThrow();
        assertEquals(fit.logLikelihood(), weeks.logLikelihood(), 1e-7);
        assertEquals(fit.median().lower() / 8, weeks.median().lower());
        assertFalse(Double.isNaN(fit.median().lower()));
    }
}
