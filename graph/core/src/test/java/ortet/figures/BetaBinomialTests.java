package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import ortet.value.Refused;

/**
 * Outside values: {@code oracles/betabinomial.csv}, maxima found in R 4.2.2 by {@code optim} and Newton steps, checked against
 * {@code VGAM::vglm(betabinomial)}.
 */
class BetaBinomialTests {
    private static List<Count> counts(long... pairs) {
        List<Count> counts = new ArrayList<>();
        for (int at = 0; at < pairs.length; at += 2) {
            counts.add(new Count(pairs[at], pairs[at + 1]));
        }
        return counts;
    }

    @TestFactory
    Stream<DynamicTest> agreesWithR() {
        Map<String, List<NamedCsvRecord>> cases = OracleData.rows("betabinomial.csv").stream()
                .collect(Collectors.groupingBy(row -> row.getField("case"), LinkedHashMap::new, Collectors.toList()));
        assertEquals(7, cases.size());
        return cases.entrySet().stream()
                .map(each -> DynamicTest.dynamicTest(each.getKey(), () -> compare(each.getKey(), each.getValue())));
    }

    private static void compare(String name, List<NamedCsvRecord> expected) {
        Map<String, Count> groups = new LinkedHashMap<>();
        String file = name.replaceFirst(":.*", "");
        String label = file.startsWith("cbpp") ? "herd" : file.startsWith("crowder") ? "plate" : "mother";
        for (NamedCsvRecord row : OracleData.rows("data/" + file + ".csv")) {
            if (!name.contains(":") || name.endsWith(": " + row.getField("cultivar"))) {
                groups.put(
                        row.getField(label),
                        new Count(Long.parseLong(row.getField("r")), Long.parseLong(row.getField("n"))));
            }
        }
        BetaBinomial fit = BetaBinomial.of(List.copyOf(groups.values()));
        assertEquals(Convergence.CONVERGED, fit.convergence());
        for (NamedCsvRecord row : expected) {
            String term = row.getField("term");
            String kind = row.getField("kind");
            String what = kind + " " + term;
            if (kind.equals("status")) {
                assertEquals("interior", term);
                continue;
            }
            double value = Double.parseDouble(row.getField("value"));
            Optional<GroupRate> rate =
                    Optional.ofNullable(groups.get(term)).flatMap(count -> fit.rate(term, count, 0.9));
            switch (kind) {
                // where two optimisers of a flat likelihood may stop apart, as the note with the values says
                case "mu" -> assertEquals(value, fit.mu().orElseThrow().value(), 1e-5, what);
                case "rho" -> assertEquals(value, fit.rho().orElseThrow().value(), 1e-5, what);
                case "alpha" -> assertEquals(value, fit.shapes().orElseThrow().alpha(), 1e-3 * value, what);
                case "beta" -> assertEquals(value, fit.shapes().orElseThrow().beta(), 1e-3 * value, what);
                case "loglik" -> assertEquals(value, fit.logLikelihood().orElseThrow(), 1e-6, what);
                case "loglik_binomial" -> assertTrue(fit.logLikelihood().orElseThrow() > value, what);
                case "eb_mean" -> assertEquals(value, rate.orElseThrow().rate(), 1e-5, what);
                case "eb_lower90" ->
                    assertEquals(value, rate.orElseThrow().interval().lower(), 1e-5, what);
                case "eb_upper90" ->
                    assertEquals(value, rate.orElseThrow().interval().upper(), 1e-5, what);
                default -> throw new AssertionError(kind);
            }
        }
    }

    @Test
    void hasStandardErrorsThatTheCurvatureOfTheLikelihoodGives() {
        // Computed another way: second differences of the log-likelihood itself in μ and ρ, inverted by hand.
        List<Count> counts = counts(9, 40, 5, 61, 12, 74, 3, 20, 0, 15, 14, 30);
        BetaBinomial fit = BetaBinomial.of(counts);
        double mu = fit.mu().orElseThrow().value();
        double rho = fit.rho().orElseThrow().value();
        double h = 1e-4;
        double here = logLikelihood(counts, mu, rho);
        double a = -(logLikelihood(counts, mu + h, rho) - 2 * here + logLikelihood(counts, mu - h, rho)) / (h * h);
        double c = -(logLikelihood(counts, mu, rho + h) - 2 * here + logLikelihood(counts, mu, rho - h)) / (h * h);
        double b = -(logLikelihood(counts, mu + h, rho + h)
                        - logLikelihood(counts, mu + h, rho - h)
                        - logLikelihood(counts, mu - h, rho + h)
                        + logLikelihood(counts, mu - h, rho - h))
                / (4 * h * h);
        assertEquals(here, fit.logLikelihood().orElseThrow(), 1e-9);
        double muError = Math.sqrt(c / (a * c - b * b));
        double rhoError = Math.sqrt(a / (a * c - b * b));
        assertEquals(muError, fit.mu().orElseThrow().standardError().orElseThrow(), 1e-4 * muError);
        assertEquals(rhoError, fit.rho().orElseThrow().standardError().orElseThrow(), 1e-4 * rhoError);
    }

    private static double logLikelihood(List<Count> counts, double mu, double rho) {
        double size = (1 - rho) / rho;
        return counts.stream()
                .mapToDouble(count -> Math.log(new BetaBinomialDistribution(count.trials(), mu * size, (1 - mu) * size)
                        .probability(count.successes())))
                .sum();
    }

    @Test
    void saysThatGroupsDoNotDiffer() {
        BetaBinomial fit = BetaBinomial.of(counts(5, 10, 5, 10, 10, 20, 4, 8));
        assertEquals(Convergence.BOUNDARY, fit.convergence());
        assertEquals(0, fit.rho().orElseThrow().value());
        assertEquals(0.5, fit.mu().orElseThrow().value());
        assertEquals(Optional.empty(), fit.rho().orElseThrow().standardError());
        assertEquals(Optional.empty(), fit.shapes());
        assertEquals(
                List.of("groups differ no more than chance would have it: ρ is 0, and all groups have one rate"),
                fit.remarks());
    }

    @Test
    void saysWhatCannotBeTold() {
        BetaBinomial none = BetaBinomial.of(counts(0, 10, 0, 4));
        assertEquals(Convergence.REDUCED, none.convergence());
        assertEquals(0, none.mu().orElseThrow().value());
        assertEquals(Optional.empty(), none.rho());
        assertEquals(0, none.logLikelihood().orElseThrow());
        BetaBinomial all = BetaBinomial.of(counts(10, 10, 4, 4));
        assertEquals(1, all.mu().orElseThrow().value());
        BetaBinomial ones = BetaBinomial.of(counts(0, 1, 1, 1, 1, 1));
        assertEquals(List.of("one trial in each group: how much groups differ cannot be told"), ones.remarks());
        assertEquals(2.0 / 3, ones.mu().orElseThrow().value());
        // 2 log(2/3) + log(1/3), by hand
        assertEquals(
                2 * Math.log(2.0 / 3) + Math.log(1.0 / 3), ones.logLikelihood().orElseThrow(), 1e-12);
        BetaBinomial one = BetaBinomial.of(counts(3, 7));
        assertEquals(List.of("one group only: how much groups differ cannot be told"), one.remarks());
        BetaBinomial nothing = BetaBinomial.of(counts(0, 0));
        assertEquals(Convergence.NO_DATA, nothing.convergence());
        assertEquals(Optional.empty(), nothing.mu());
        assertEquals(Convergence.NO_DATA, BetaBinomial.of(List.of()).convergence());
    }

    @Test
    void saysThatEveryGroupIsAllOrNothing() {
        BetaBinomial fit = BetaBinomial.of(counts(0, 10, 4, 4, 0, 3, 0, 8));
        assertEquals(Convergence.BOUNDARY, fit.convergence());
        assertEquals(1, fit.rho().orElseThrow().value());
        assertEquals(0.25, fit.mu().orElseThrow().value());
        assertEquals(Math.log(0.25) + 3 * Math.log(0.75), fit.logLikelihood().orElseThrow(), 1e-12);
    }

    @Test
    void doesNotMindTheOrderOfGroupsOrGroupsWithoutTrials() {
        List<Count> counts = counts(9, 40, 5, 61, 12, 74, 3, 20, 0, 15, 14, 30);
        List<Count> shuffled = new ArrayList<>(counts);
        shuffled.add(new Count(0, 0));
        Collections.shuffle(shuffled, new Random(1));
        // sums in another order
        assertEquals(
                BetaBinomial.of(counts).rho().orElseThrow().value(),
                BetaBinomial.of(shuffled).rho().orElseThrow().value(),
                1e-8);
    }

    @Test
    void refusesAConfidenceThatIsNone() {
        BetaBinomial fit = BetaBinomial.of(counts(9, 40, 5, 61));
        assertThrows(Refused.class, () -> fit.rate("A", new Count(1, 2), 90));
    }

    @Property(tries = 200)
    void predictsWithProbabilitiesThatAddUp(
            @ForAll @IntRange(min = 0, max = 60) int trials,
            @ForAll @DoubleRange(min = 0.05, max = 200) double alpha,
            @ForAll @DoubleRange(min = 0.05, max = 200) double beta) {
        BetaBinomialDistribution distribution = new BetaBinomialDistribution(trials, alpha, beta);
        double sum = 0;
        for (int x = 0; x <= trials; x++) {
            assertEquals(1 - sum, distribution.atLeast(x), 1e-10);
            sum += distribution.probability(x);
            assertEquals(sum, distribution.atMost(x), 1e-10);
        }
        assertEquals(1, sum, 1e-10);
        assertEquals(0, distribution.probability(-1) + distribution.probability(trials + 1) + distribution.atMost(-1));
    }

    @Test
    void predictsEveryNumberAlikeAtAUniformRate() {
        // Beta(1, 1): 1 / (n + 1) for each, by hand
        BetaBinomialDistribution uniform = new BetaBinomial.Shapes(1, 1).predict(9);
        assertEquals(0.1, uniform.probability(3), 1e-14);
        assertEquals(0.7, uniform.atLeast(3), 1e-14);
    }
}
