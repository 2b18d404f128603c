package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Outside values: {@code oracles/glmm.csv}, maxima found in R 4.2.2 by the likelihood written out there (dense Newton for
 * the modes, derivatives by numDeriv), each checked against {@code lme4::glmer} 1.1-31 and, nested, {@code glmmTMB}.
 */
class MixedModelOracleTests {
    /** Fixed effects, standard deviations and modes: how far two optimisers of the same likelihood may stop apart. */
    private static final double ESTIMATE = 1e-4;
    /** Standard errors, relative: they come from differenced second derivatives on both sides. */
    private static final double STANDARD_ERROR = 1e-3;
    /** At a maximum the likelihood is flat. */
    private static final double LOG_LIKELIHOOD = 1e-5;

    @TestFactory
    Stream<DynamicTest> agreesWithR() {
        Map<String, List<NamedCsvRecord>> models = OracleData.rows("glmm.csv").stream()
                .collect(Collectors.groupingBy(
                        row -> row.getField("case") + ": " + row.getField("model") + ", " + row.getField("method"),
                        TreeMap::new,
                        Collectors.toList()));
        assertEquals(11, models.size());
        return models.entrySet().stream()
                .map(model -> DynamicTest.dynamicTest(model.getKey(), () -> compare(model.getValue())));
    }

    private static void compare(List<NamedCsvRecord> expected) {
        NamedCsvRecord first = expected.get(0);
        MixedFit fit = fit(first.getField("case"), first.getField("model"), first.getField("method"));
        assertEquals(Convergence.CONVERGED, fit.convergence());
        for (NamedCsvRecord row : expected) {
            String kind = row.getField("kind");
            String term = row.getField("term");
            double value = Double.parseDouble(row.getField("value"));
            String what = kind + " " + term;
            switch (kind) {
                case "fixed" -> assertEquals(value, fixed(fit, term).value(), ESTIMATE, what);
                case "fixed_se" -> assertEquals(value, fixed(fit, term).standardError(), STANDARD_ERROR * value, what);
                case "random_sd" ->
                    assertEquals(value, deviation(fit, term).sd().orElseThrow(), ESTIMATE, what);
                case "random_sd_se" ->
                    assertEquals(
                            value, deviation(fit, term).standardError().orElseThrow(), STANDARD_ERROR * value, what);
                case "loglik" -> assertEquals(value, fit.logLikelihood().orElseThrow(), LOG_LIKELIHOOD, what);
                default -> {
                    String grouping = kind.replaceFirst("cond_(mode|sd)_?", "");
                    GroupEffect effect = effect(fit, grouping.isEmpty() ? only(fit) : grouping, term);
                    if (kind.startsWith("cond_mode")) {
                        assertEquals(value, effect.mode(), ESTIMATE, what);
                    } else {
                        assertEquals(value, effect.conditionalSd(), ESTIMATE, what);
                    }
                }
            }
        }
    }

    private static MixedFit fit(String name, String model, String method) {
        List<NamedCsvRecord> rows = OracleData.rows("data/" + name + ".csv");
        ModelData data = OracleData.model(rows);
        String group = name.equals("cbpp") ? "herd" : name.equals("crowder-seeds") ? "plate" : "mother";
        if (model.contains("period")) {
            data = data.withFactor("period", OracleData.column(rows, "period"));
        }
        if (model.contains("seed")) {
            data = data.withColumn("seed", OracleData.numbers(rows, row -> Integer.valueOf(row.getField("seed"))))
                    .withColumn("extract", OracleData.numbers(rows, row -> Integer.valueOf(row.getField("extract"))))
                    .withColumn(
                            "seed:extract",
                            OracleData.numbers(
                                    rows,
                                    row -> Integer.parseInt(row.getField("seed"))
                                            * Integer.parseInt(row.getField("extract"))));
        }
        List<String> groups = OracleData.column(rows, group);
        if (model.contains("(1|cultivar)")) {
            data = data.withGroups("cultivar", OracleData.column(rows, "cultivar"))
                    .withGroupsWithin("mother", "cultivar", groups);
        } else {
            if (model.contains("cultivar")) {
                data = data.withFactor("cultivar", OracleData.column(rows, "cultivar"));
            }
            data = data.withGroups(group, groups);
        }
        return (method.equals("Laplace") ? MixedModel.laplace() : MixedModel.quadrature(9)).fit(data);
    }

    private static String only(MixedFit fit) {
        return fit.deviations().get(0).grouping();
    }

    /** R glues a factor's name to the level, ours stand apart. */
    private static Estimate fixed(MixedFit fit, String term) {
        return fit.fixed().stream()
                .filter(fixed -> fixed.name().replace(" ", "").equals(term))
                .findFirst()
                .orElseThrow()
                .estimate()
                .orElseThrow();
    }

    private static MixedFit.Deviation deviation(MixedFit fit, String grouping) {
        return fit.deviations().stream()
                .filter(deviation -> deviation.grouping().equals(grouping))
                .findFirst()
                .orElseThrow();
    }

    private static GroupEffect effect(MixedFit fit, String grouping, String label) {
        return fit.effects(grouping).stream()
                .filter(effect -> effect.label().equals(label))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void agreesWithCrowdersSeedsAsQuotedFromThePaper() {
        // maximum likelihood as quoted in the BUGS manual, to three decimals (from memory)
        MixedFit fit = fit("crowder-seeds", "r/n ~ seed * extract + (1|plate)", "AGQ9");
        assertEquals(-0.548, fixed(fit, "(Intercept)").value(), 0.0006);
        assertEquals(0.097, fixed(fit, "seed").value(), 0.0006);
        assertEquals(1.337, fixed(fit, "extract").value(), 0.0006);
        assertEquals(-0.811, fixed(fit, "seed:extract").value(), 0.0006);
        assertEquals(0.385, fixed(fit, "seed:extract").standardError(), 0.0006);
        assertEquals(0.236, deviation(fit, "plate").sd().orElseThrow(), 0.0006);
        assertEquals(0.110, deviation(fit, "plate").standardError().orElseThrow(), 0.0006);
    }
}
