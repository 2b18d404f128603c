package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import ortet.figures.Lasting.Law;
import ortet.figures.Lasting.Subject;
import ortet.value.Refused;

/**
 * Outside values: {@code oracles/survival.csv} (R 4.2.2 {@code survreg}, checked there with a likelihood written out). Data
 * as in {@link KaplanMeierTests} and {@link TurnbullTests}.
 */
class LastingTests {
    private static final double ESTIMATES = 1e-5;
    private static final double ERRORS = 1e-4;
    private static final double LIKELIHOOD = 1e-6;
    private static final Map<String, Lasting.Fitted> FITS = new LinkedHashMap<>();

    private static Stream<NamedCsvRecord> rows() {
        return Oracle.rows("survival.csv").stream()
                .filter(row -> row.getField("analysis").startsWith("aft_"));
    }

    private static Within exact(NamedCsvRecord row, String column) {
        double time = Double.parseDouble(row.getField("time"));
        return row.getField(column).equals("1") ? Within.exactly(time) : Within.after(time);
    }

    private static List<Subject> subjects(
            String file, Function<NamedCsvRecord, Within> seen, Function<NamedCsvRecord, List<Double>> covariates) {
        return Oracle.rows("data/" + file + ".csv").stream()
                .map(row -> new Subject(seen.apply(row), covariates.apply(row)))
                .toList();
    }

    private static Function<NamedCsvRecord, List<Double>> is(String column, String text) {
        return row -> List.of(row.getField(column).equals(text) ? 1.0 : 0.0);
    }

    private static List<Subject> subjects(String data) {
        Function<NamedCsvRecord, Within> between = row -> new Within(
                Double.parseDouble(row.getField("left")),
                row.getField("right").isEmpty() ? Double.POSITIVE_INFINITY : Double.parseDouble(row.getField("right")));
        return switch (data) {
            case "breast-cosmesis ~ chemo" -> subjects("breast-cosmesis", between, is("treatment", "radiation+chemo"));
            case "layers-visits ~ tourniquet" -> subjects("layers-visits", between, is("wound", "tourniquet"));
            case "layers-visits ~ 1" -> subjects("layers-visits", between, row -> List.of());
            case "aml ~ nonmaintained" -> subjects("aml", row -> exact(row, "event"), is("group", "Nonmaintained"));
            case "lung ~ male + age" ->
                subjects(
                        "lung",
                        row -> exact(row, "event"),
                        row -> List.of(
                                row.getField("sex").equals("male") ? 1.0 : 0.0,
                                Double.parseDouble(row.getField("age"))));
            case "layers-competing (death as censoring) ~ 1" ->
                subjects("layers-competing", row -> exact(row, "status"), row -> List.of());
            default -> throw new AssertionError(data);
        };
    }

    private static List<String> names(String data) {
        String right = data.substring(data.indexOf("~ ") + 2);
        return right.equals("1") ? List.of() : Arrays.asList(right.split(" \\+ "));
    }

    private static Lasting.Fitted fit(String analysis, String data) {
        Law law = analysis.equals("aft_weibull") ? Law.WEIBULL : Law.LOG_LOGISTIC;
        return FITS.computeIfAbsent(
                analysis + data,
                name -> Lasting.fit(law, names(data), subjects(data)).fitted().orElseThrow());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void agreesWithR(NamedCsvRecord row) {
        String data = row.getField("data");
        Lasting.Fitted fit = fit(row.getField("analysis"), data);
        double expected = Oracle.number(row, "value");
        String quantity = row.getField("quantity");
        if (quantity.equals("loglik")) {
            assertEquals(expected, fit.logLikelihood(), LIKELIHOOD);
        } else if (quantity.startsWith("quantile_")) {
            double share = Double.parseDouble(quantity.substring("quantile_".length()));
            Lasting.Quantile quantile =
                    fit.quantile(share, subjects(data).get(0).covariates(), 0.95);
            Oracle.assertRelative(expected, quantile.time(), ESTIMATES, data);
            assertTrue(quantile.interval().holds(quantile.time()));
        } else if (row.getField("group").equals("scale")) {
            Oracle.assertRelative(expected, fit.scale(), ESTIMATES, data);
        } else {
            Lasting.Estimate estimate = fit.estimates().stream()
                    .filter(one -> one.name().equals(row.getField("group")))
                    .findAny()
                    .orElseThrow();
            if (quantity.equals("estimate")) {
                assertEquals(expected, estimate.value(), ESTIMATES);
            } else {
                Oracle.assertRelative(expected, estimate.error(), ERRORS, data);
            }
        }
    }

    /** A Weibull law of shape 1 is the exponential one, whose median is the mean times log 2. */
    @Test
    void fitsTimesThatAreExponentialByHand() {
        List<Subject> subjects = new ArrayList<>();
        for (int i = 1; i <= 400; i++) {
            // quantiles of the exponential law with mean 10, evenly
            subjects.add(new Subject(Within.exactly(-10 * Math.log1p(-(i - 0.5) / 400)), List.of()));
        }
        Lasting.Fitted fit =
                Lasting.fit(Law.WEIBULL, List.of(), subjects).fitted().orElseThrow();
        assertEquals(1, fit.scale(), 0.01);
        assertEquals(10 * Math.log(2), fit.quantile(0.5, List.of(), 0.95).time(), 0.05);
        // the standard error of log σ for a complete Weibull sample is √(6/π²/n), Kalbfleisch & Prentice, section 3.4
        assertEquals(
                Math.sqrt(6 / (Math.PI * Math.PI) / 400),
                fit.estimates().get(1).error(),
                0.02 * Math.sqrt(6 / (Math.PI * Math.PI) / 400));
    }

    @ParameterizedTest
    @EnumSource
    void goesWithTheUnitOfTime(Law law) {
        List<Subject> days = subjects("layers-visits ~ tourniquet");
        List<Subject> weeks = days.stream()
                .map(one ->
                        new Subject(new Within(one.seen().left() / 7, one.seen().right() / 7), one.covariates()))
                .toList();
        Lasting.Fitted inDays =
                Lasting.fit(law, List.of("tourniquet"), days).fitted().orElseThrow();
        Lasting.Fitted inWeeks =
                Lasting.fit(law, List.of("tourniquet"), weeks).fitted().orElseThrow();
        assertEquals(
                inDays.estimates().get(0).value() - Math.log(7),
                inWeeks.estimates().get(0).value(),
                1e-7);
        assertEquals(
                inDays.estimates().get(1).value(), inWeeks.estimates().get(1).value(), 1e-7);
        assertEquals(inDays.scale(), inWeeks.scale(), 1e-7);
    }

    private static String reason(Law law, List<String> names, List<Subject> subjects) {
        return Lasting.fit(law, names, subjects).accept(new Lasting.Fit.Visitor<>() {
            @Override
            public String fitted(Lasting.Fitted fit) {
                return "fitted " + fit.estimates();
            }

            @Override
            public String failed(Lasting.Failed fit) {
                return fit.reason();
            }
        });
    }

    private static Subject of(Within seen, Double... covariates) {
        return new Subject(seen, List.of(covariates));
    }

    @ParameterizedTest
    @EnumSource
    void saysWhyThereIsNoMaximum(Law law) {
        assertEquals("nobody was looked at", reason(law, List.of(), List.of()));
        assertEquals(
                "it has not happened to anybody yet",
                reason(law, List.of(), List.of(of(Within.after(5)), of(Within.after(9)))));
        assertEquals("the times do not spread", reason(law, List.of(), List.of(of(Within.exactly(5)))));
        assertEquals(
                "the times do not spread",
                reason(law, List.of(), List.of(of(Within.exactly(5)), of(Within.exactly(5)), of(Within.exactly(5)))));
        assertEquals(
                "wound is the same for all",
                reason(law, List.of("wound"), List.of(of(Within.exactly(5), 1.0), of(Within.exactly(6), 1.0))));
        assertEquals(
                "the covariates cannot be told apart",
                reason(
                        law,
                        List.of("warm", "cold"),
                        List.of(
                                of(Within.exactly(5), 1.0, 0.0),
                                of(Within.exactly(6), 0.0, 1.0),
                                of(Within.exactly(7), 1.0, 0.0))));
        assertEquals(
                "the times do not spread",
                reason(law, List.of(), List.of(of(new Within(5, 10)), of(new Within(7, 12)), of(Within.after(6)))));
        // nothing has happened to those with the covariate, so its effect is without limit
        String apart = reason(
                law,
                List.of("wound"),
                List.of(
                        of(Within.after(9), 1.0),
                        of(Within.after(8), 1.0),
                        of(Within.exactly(3), 0.0),
                        of(Within.exactly(4), 0.0)));
        assertTrue(apart.equals("the likelihood has no single maximum") || apart.startsWith("no "), apart);
    }

    /** Computed another way: the derivatives of every term by differences. */
    @Property(tries = 300)
    void knowsItsDerivatives(
            @ForAll Law law,
            @ForAll @DoubleRange(min = -4, max = 2) double low,
            @ForAll @DoubleRange(min = 0.05, max = 3) double apart) {
        double high = low + apart;
        double h = 1e-5;
        Lasting.Term term = law.between(low, high);
        Lasting.Term right = law.between(low, high + h);
        Lasting.Term left = law.between(low, high - h);
        Lasting.Term above = law.between(low + h, high);
        Lasting.Term below = law.between(low - h, high);
        double scale = 1 + Math.abs(term.highHigh());
        assertEquals((right.value() - left.value()) / (2 * h), term.high(), 1e-5 * scale);
        assertEquals((above.value() - below.value()) / (2 * h), term.low(), 1e-5 * scale);
        assertEquals((right.high() - left.high()) / (2 * h), term.highHigh(), 1e-4 * scale);
        assertEquals((above.low() - below.low()) / (2 * h), term.lowLow(), 1e-4 * scale);
        assertEquals((right.low() - left.low()) / (2 * h), term.lowHigh(), 1e-4 * scale);
        Lasting.Term exact = law.exact(low);
        assertEquals((law.exact(low + h).value() - law.exact(low - h).value()) / (2 * h), exact.low(), 1e-5 * scale);
        assertEquals((law.exact(low + h).low() - law.exact(low - h).low()) / (2 * h), exact.lowLow(), 1e-4 * scale);
        // the parts of the line add up: before, between and after
        double sum = Math.exp(law.between(Double.NEGATIVE_INFINITY, low).value())
                + Math.exp(term.value())
                + Math.exp(law.between(high, Double.POSITIVE_INFINITY).value());
        assertEquals(1, sum, 1e-12);
        assertEquals(
                0.3,
                Math.exp(
                        law.between(Double.NEGATIVE_INFINITY, law.quantile(0.3)).value()),
                1e-12);
    }

    @Test
    void refusesCovariatesThatDoNotMatch() {
        assertThrows(Refused.class, () -> Lasting.fit(Law.WEIBULL, List.of("wound"), List.of(of(Within.exactly(3)))));
        assertThrows(
                Refused.class,
                () -> Lasting.fit(Law.WEIBULL, List.of("wound"), List.of(of(Within.exactly(3), Double.NaN))));
        Lasting.Fitted fit = fit("aft_weibull", "layers-visits ~ 1");
        assertThrows(Refused.class, () -> fit.quantile(0.5, List.of(1.0), 0.95));
        assertThrows(Refused.class, () -> fit.quantile(1, List.of(), 0.95));
    }
}
