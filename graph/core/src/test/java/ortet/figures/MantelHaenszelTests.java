package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Outside values: {@code oracles/stratified.csv} (R 4.2.2: formulas written out, checked with {@code mantelhaen.test} and
 * {@code metafor::rma.mh}), among them published ones; data in {@code oracles/data}, whose sources are: plum cuttings,
 * Bartlett 1935, J. R. Stat. Soc. Suppl. 2:248; admissions, Bickel, Hammel & O'Connell 1975, Science 187:398; smoking in
 * China, Liu 1992, as in Agresti, Introduction to Categorical Data Analysis, Table 3.3; the nursery files are invented.
 */
class MantelHaenszelTests {
    private static final double TO_R = 1e-8;
    private static final double EXACT_LIMITS = 1e-6;

    private static Stream<NamedCsvRecord> rows() {
        return Oracle.rows("stratified.csv").stream();
    }

    /** Read strata: columns for the stratum, the group (the first one named is first), successes and failures. */
    private static List<Stratum> strata(String file, String stratum, String group, String successes, String failures) {
        Map<String, Map<String, Count>> read = new LinkedHashMap<>();
        List<String> groups = new ArrayList<>();
        for (NamedCsvRecord row : Oracle.rows("data/" + file + ".csv")) {
            long took = Long.parseLong(row.getField(successes));
            Count count = new Count(took, took + Long.parseLong(row.getField(failures)));
            if (!groups.contains(row.getField(group))) {
                groups.add(row.getField(group));
            }
            read.computeIfAbsent(row.getField(stratum), label -> new LinkedHashMap<>())
                    .merge(row.getField(group), count, Count::plus);
        }
        return read.entrySet().stream()
                .map(entry -> new Stratum(
                        entry.getKey(),
                        entry.getValue().getOrDefault(groups.get(0), new Count(0, 0)),
                        entry.getValue().getOrDefault(groups.get(1), new Count(0, 0))))
                .toList();
    }

    private static final Map<String, List<Stratum>> CASES = Map.of(
            "bartlett-plum: time within length", strata("bartlett-plum", "length", "time", "alive", "dead"),
            "bartlett-plum: length within time", strata("bartlett-plum", "time", "length", "alive", "dead"),
            "ucb-admissions: male against female within dept",
                    strata("ucb-admissions", "dept", "gender", "admitted", "rejected"),
            "china-smoking: smoking within city", strata("china-smoking", "city", "smoking", "cancer", "control"),
            "nursery-seasons: layer against cutting within season",
                    strata("nursery-seasons", "season", "method", "taken", "failed"),
            "nursery-mothers-two-methods: layer against cutting within mother",
                    strata("nursery-mothers-two-methods", "mother", "method", "taken", "failed"));

    private static final Map<String, Odds> EXACT = new LinkedHashMap<>();

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void agreesWithR(NamedCsvRecord row) {
        String which = row.getField("case");
        List<Stratum> strata = CASES.get(which);
        MantelHaenszel all = MantelHaenszel.of(strata, 0.95);
        String quantity = row.getField("quantity");
        double found = found(all, strata, which, quantity);
        double tolerance = quantity.startsWith("exact_") && !quantity.startsWith("exact_p") ? EXACT_LIMITS : TO_R;
        Oracle.assertRelative(Oracle.number(row, "value"), found, tolerance, which + " " + quantity);
        if (!row.getField("published").isEmpty()) {
            assertEquals(Oracle.number(row, "published"), found, 0.6e-3, "as printed, to three decimals");
        }
    }

    private static double found(MantelHaenszel all, List<Stratum> strata, String which, String quantity) {
        return switch (quantity) {
            case "mh_odds_ratio" -> all.oddsRatio().finite().orElseThrow();
            case "rbg_lower95" -> all.oddsRatioInterval().orElseThrow().lower();
            case "rbg_upper95" -> all.oddsRatioInterval().orElseThrow().upper();
            case "cmh_chisq" -> all.test().orElseThrow().statistic();
            case "cmh_p" -> all.test().orElseThrow().p();
            case "cmh_chisq_cc" -> all.correctedTest().orElseThrow().statistic();
            case "cmh_p_cc" -> all.correctedTest().orElseThrow().p();
            case "breslow_day_chisq" -> all.breslowDay().orElseThrow().statistic();
            case "breslow_day_p" -> all.breslowDay().orElseThrow().p();
            case "tarone_chisq" -> all.tarone().orElseThrow().statistic();
            case "tarone_p" -> all.tarone().orElseThrow().p();
            case "homogeneity_df" -> all.tarone().orElseThrow().degrees();
            case "exact_p_two_sided" -> Fisher.twoSided(strata).orElseThrow();
            case "exact_cond_mle_odds_ratio" -> exact(which).ratio().finite().orElseThrow();
            case "exact_lower95" -> exact(which).interval().lower();
            case "exact_upper95" -> exact(which).interval().upper();
            default -> throw new AssertionError(quantity);
        };
    }

    private static Odds exact(String which) {
        return EXACT.computeIfAbsent(
                which, name -> ConditionalOdds.within(CASES.get(name), 0.95).orElseThrow());
    }

    /**
     * Of one stratum the common odds ratio is that of the table, and the difference that of the shares. Sato's variance is
     * then, worked out by hand for 56 of 70 against 48 of 80: (0.2 ΣU + ΣV) / (Σw)² with w = 70·80/150, U = (70²·48 −
     * 80²·56 + 70·80·10/2)/150², V = (56·32 + 48·14)/300.
     */
    @Test
    void isTheTableItselfForOneStratum() {
        MantelHaenszel one =
                MantelHaenszel.of(List.of(new Stratum("only", new Count(56, 70), new Count(48, 80))), 0.95);
        assertEquals(56.0 * 32 / (14 * 48), one.oddsRatio().finite().orElseThrow(), 1e-14);
        MantelHaenszel.Difference difference = one.difference().orElseThrow();
        assertEquals(0.2, difference.value(), 1e-15);
        double w = 70.0 * 80 / 150;
        double u = (4900.0 * 48 - 6400.0 * 56 + 5600.0 * 5) / 22500;
        double v = (56.0 * 32 + 48.0 * 14) / 300;
        double reach = 1.959963984540054 * Math.sqrt((0.2 * u + v) / (w * w));
        assertEquals(0.2 - reach, difference.interval().orElseThrow().lower(), 1e-14);
        assertEquals(0.2 + reach, difference.interval().orElseThrow().upper(), 1e-14);
        assertEquals(Optional.empty(), one.breslowDay());
    }

    @Test
    void countsAndNamesStrataWithoutInformation() {
        MantelHaenszel all = MantelHaenszel.of(
                List.of(
                        new Stratum("2019", new Count(5, 10), new Count(3, 10)),
                        new Stratum("2020", new Count(5, 5), new Count(7, 7)),
                        new Stratum("2021", new Count(0, 5), new Count(0, 7)),
                        new Stratum("2022", new Count(3, 5), new Count(0, 0)),
                        new Stratum("2023", new Count(0, 0), new Count(0, 0))),
                0.95);
        assertEquals(1, all.informing());
        assertEquals(
                List.of(
                        new MantelHaenszel.Silent("2020", MantelHaenszel.Why.ALL),
                        new MantelHaenszel.Silent("2021", MantelHaenszel.Why.NONE),
                        new MantelHaenszel.Silent("2022", MantelHaenszel.Why.ONE_GROUP),
                        new MantelHaenszel.Silent("2023", MantelHaenszel.Why.EMPTY)),
                all.silent());
        // those that hold both groups still count for the difference: weights 5, 35/12 and 35/12
        assertEquals(0.2 * 5 / (5 + 35.0 / 6), all.difference().orElseThrow().value(), 1e-14);
    }

    @Test
    void isAbsentWhereNothingCanBeSaid() {
        MantelHaenszel nobody = MantelHaenszel.of(List.of(), 0.95);
        assertEquals(Ratio.UNDEFINED, nobody.oddsRatio());
        assertTrue(nobody.oddsRatioInterval().isEmpty() && nobody.difference().isEmpty());
        assertTrue(nobody.test().isEmpty() && nobody.correctedTest().isEmpty());
        assertTrue(nobody.breslowDay().isEmpty() && nobody.tarone().isEmpty());
        assertEquals(
                Ratio.UNDEFINED,
                ConditionalOdds.within(List.of(), 0.95).orElseThrow().ratio());
        assertEquals(1, Fisher.twoSided(List.of()).orElseThrow());
        MantelHaenszel apart = MantelHaenszel.of(
                List.of(
                        new Stratum("a", new Count(5, 5), new Count(0, 5)),
                        new Stratum("b", new Count(3, 3), new Count(0, 4))),
                0.95);
        assertEquals(Ratio.INFINITE, apart.oddsRatio());
        assertTrue(apart.oddsRatioInterval().isEmpty() && apart.breslowDay().isEmpty());
        // everything against nothing: the variance comes out as 0, which is no interval
        assertEquals(1, apart.difference().orElseThrow().value(), 1e-15);
        assertTrue(apart.difference().orElseThrow().interval().isEmpty());
        assertTrue(apart.test().orElseThrow().p() < 0.001);
    }

    @Test
    void leavesExactnessToTheLargeSampleWhereStrataAreHuge() {
        Count half = new Count(500_000, 1_000_000);
        List<Stratum> huge = List.of(new Stratum("a", half, half), new Stratum("b", half, half));
        assertEquals(Optional.empty(), ConditionalOdds.within(huge, 0.95));
        assertEquals(Optional.empty(), Fisher.twoSided(huge));
        assertEquals(1, MantelHaenszel.of(huge, 0.95).oddsRatio().finite().orElseThrow(), 1e-15);
    }

    @Property(tries = 200)
    void doesNotHeedTheOrderAndTurnsOverWithTheSides(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 0, max = 1_000_000) Integer> seeds) {
        List<Stratum> strata = new ArrayList<>();
        for (int seed : seeds) {
            Random random = new Random(seed);
            int m = random.nextInt(8);
            int n = random.nextInt(8);
            strata.add(new Stratum(
                    "s" + strata.size(), new Count(random.nextInt(m + 1), m), new Count(random.nextInt(n + 1), n)));
        }
        List<Stratum> shuffled = new ArrayList<>(strata);
        Collections.shuffle(shuffled, new Random(1));
        List<Stratum> turned = strata.stream()
                .map(stratum -> new Stratum(stratum.label(), stratum.second(), stratum.first()))
                .toList();
        MantelHaenszel all = MantelHaenszel.of(strata, 0.95);
        MantelHaenszel mixed = MantelHaenszel.of(shuffled, 0.95);
        MantelHaenszel other = MantelHaenszel.of(turned, 0.95);
        assertEquals(all.informing() + all.silent().size(), strata.size());
        assertEquals(all.informing(), mixed.informing());
        assertSame(all.test().map(ChiSquare::statistic), mixed.test().map(ChiSquare::statistic));
        assertSame(all.test().map(ChiSquare::statistic), other.test().map(ChiSquare::statistic));
        assertSame(all.tarone().map(ChiSquare::statistic), other.tarone().map(ChiSquare::statistic));
        assertSame(
                all.oddsRatioInterval().map(Interval::lower),
                other.oddsRatioInterval().map(i -> 1 / i.upper()));
        assertSame(
                all.difference().map(MantelHaenszel.Difference::value),
                other.difference().map(difference -> -difference.value()));
        assertSame(
                all.difference().flatMap(MantelHaenszel.Difference::interval).map(Interval::upper),
                other.difference().flatMap(MantelHaenszel.Difference::interval).map(i -> -i.lower()));
        Odds exact = ConditionalOdds.within(strata, 0.95).orElseThrow();
        Odds exactTurned = ConditionalOdds.within(turned, 0.95).orElseThrow();
        if (exact.interval().isBounded() && exact.interval().lower() > 0) {
            Oracle.assertRelative(
                    1 / exact.interval().upper(), exactTurned.interval().lower(), 1e-8, "exact");
        }
        if (strata.size() == 1) {
            Odds single =
                    ConditionalOdds.of(strata.get(0).first(), strata.get(0).second(), 0.95);
            assertEquals(
                    single.ratio().finite().isPresent(), exact.ratio().finite().isPresent());
            Oracle.assertRelative(single.interval().lower(), exact.interval().lower(), 1e-9, "one stratum");
            assertEquals(
                    Fisher.twoSided(strata.get(0).first(), strata.get(0).second()),
                    Fisher.twoSided(strata).orElseThrow(),
                    1e-12);
        }
    }

    private static void assertSame(Optional<Double> expected, Optional<Double> found) {
        assertEquals(expected.isPresent(), found.isPresent());
        expected.ifPresent(value -> assertEquals(value, found.orElseThrow(), 1e-9 * (1 + Math.abs(value))));
    }
}
