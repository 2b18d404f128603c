package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import ortet.value.Defect;
import ortet.value.Refused;

class MixedModelTests {
    /** Two fits of the same data stop within this of each other, sums taken in another order. */
    private static final double SAME = 1e-6;

    private static ModelData data(long[] r, long[] n, String... mothers) {
        return ModelData.of(r, n).withGroups("mother", List.of(mothers));
    }

    /** Invented: mothers within cultivars, batches across them, a column. */
    private static ModelData invented(long seed, int rows) {
        SplittableRandom random = new SplittableRandom(seed);
        long[] r = new long[rows];
        long[] n = new long[rows];
        double[] column = new double[rows];
        List<String> mothers = new ArrayList<>();
        List<String> cultivars = new ArrayList<>();
        List<String> batches = new ArrayList<>();
        double[] effects = random.doubles(12).map(u -> 2 * u - 1).toArray();
        for (int row = 0; row < rows; row++) {
            int mother = random.nextInt(12);
            n[row] = 1 + random.nextInt(15);
            column[row] = random.nextInt(2);
            double p = 1 / (1 + Math.exp(-effects[mother] - 0.5 * column[row]));
            for (long unit = 0; unit < n[row]; unit++) {
                r[row] += random.nextDouble() < p ? 1 : 0;
            }
            mothers.add("M" + mother);
            cultivars.add("C" + mother / 4);
            batches.add("B" + random.nextInt(5));
        }
        return ModelData.of(r, n)
                .withColumn("cutting", column)
                .withGroups("cultivar", cultivars)
                .withGroupsWithin("mother", "cultivar", mothers)
                .withGroups("batch", batches);
    }

    private static ModelData reordered(ModelData data, List<Integer> order) {
        ModelData result = ModelData.of(
                order.stream().mapToLong(row -> (long) data.successes[row]).toArray(),
                order.stream().mapToLong(row -> (long) data.trials[row]).toArray());
        for (ModelData.Column column : data.columns) {
            if (!column.name().equals(ModelData.INTERCEPT)) {
                result = result.withColumn(
                        column.name(),
                        order.stream().mapToDouble(row -> column.values()[row]).toArray());
            }
        }
        for (ModelData.Groups groups : data.groupings) {
            List<String> labels = order.stream()
                    .map(row -> groups.labels().get(groups.of()[row]))
                    .toList();
            result = groups.within().isPresent()
                    ? result.withGroupsWithin(groups.name(), groups.within().get(), labels)
                    : result.withGroups(groups.name(), labels);
        }
        return result;
    }

    private static void assertSame(MixedFit expected, MixedFit found, double constant) {
        assertEquals(expected.convergence(), found.convergence());
        for (int j = 0; j < expected.fixed().size(); j++) {
            Estimate one = expected.fixed().get(j).estimate().orElseThrow();
            Estimate two = found.fixed().get(j).estimate().orElseThrow();
            assertEquals(one.value(), two.value(), SAME);
            assertEquals(one.standardError(), two.standardError(), 1e-3 * one.standardError());
        }
        for (int k = 0; k < expected.deviations().size(); k++) {
            assertEquals(
                    expected.deviations().get(k).sd().orElseThrow(),
                    found.deviations().get(k).sd().orElseThrow(),
                    SAME * 10);
        }
        assertEquals(
                expected.logLikelihood().orElseThrow() + constant,
                found.logLikelihood().orElseThrow(),
                1e-8);
    }

    @Property(tries = 10)
    void doesNotMindTheOrderOfRows(@ForAll long seed) {
        ModelData data = invented(seed, 60);
        List<Integer> order = new ArrayList<>();
        for (int row = 0; row < data.rows(); row++) {
            order.add(row);
        }
        Collections.shuffle(order, new Random(seed));
        MixedFit fit = MixedModel.laplace().fit(data);
        MixedFit other = MixedModel.laplace().fit(reordered(data, order));
        assertSame(fit, other, 0);
        for (GroupEffect effect : fit.effects("mother")) {
            GroupEffect same = other.effects("mother").stream()
                    .filter(each -> each.label().equals(effect.label()))
                    .findFirst()
                    .orElseThrow();
            assertEquals(effect.mode(), same.mode(), 1e-5);
            assertEquals(effect.count(), same.count());
        }
    }

    @Property(tries = 10)
    void splittingARowChangesOnlyTheBinomialConstant(@ForAll long seed) {
        ModelData data = invented(seed, 40);
        List<Integer> twice = new ArrayList<>();
        for (int row = 0; row < data.rows(); row++) {
            twice.add(row);
            twice.add(row);
        }
        ModelData apart = reordered(data, twice);
        double before = ModelRows.coefficients(data.successes, data.trials);
        for (int row = 0; row < data.rows(); row++) {
            // one unit of each row goes apart, a success where there is one
            boolean isSuccess = data.successes[row] > 0;
            apart.successes[2 * row] = isSuccess ? 1 : 0;
            apart.trials[2 * row] = 1;
            apart.successes[2 * row + 1] = data.successes[row] - (isSuccess ? 1 : 0);
            apart.trials[2 * row + 1] = data.trials[row] - 1;
        }
        double after = ModelRows.coefficients(apart.successes, apart.trials);
        assertSame(MixedModel.laplace().fit(data), MixedModel.laplace().fit(apart), after - before);
    }

    @Test
    void doesNotMindWhatGroupsAreCalled() {
        MixedFit one =
                MixedModel.laplace().fit(data(new long[] {3, 9, 1, 7}, new long[] {10, 10, 8, 12}, "a", "b", "c", "d"));
        MixedFit two =
                MixedModel.laplace().fit(data(new long[] {3, 9, 1, 7}, new long[] {10, 10, 8, 12}, "z", "楓", "x", "a"));
        assertSame(one, two, 0);
        for (int group = 0; group < 4; group++) {
            assertEquals(
                    one.effects("mother").get(group).mode(),
                    two.effects("mother").get(group).mode(),
                    1e-12);
        }
    }

    @Test
    void isLaplacesWithOneNode() {
        ModelData data = data(new long[] {3, 9, 1, 7, 0}, new long[] {10, 10, 8, 12, 3}, "a", "b", "c", "d", "e");
        assertSame(MixedModel.laplace().fit(data), MixedModel.quadrature(1).fit(data), 0);
        // more nodes than are needed tell no more
        assertSame(
                MixedModel.quadrature(25).fit(data), MixedModel.quadrature(40).fit(data), 0);
    }

    @Test
    void tellsLabelsApartByTheirOuterGroup() {
        ModelData data = ModelData.of(new long[4], new long[4])
                .withGroups("cultivar", List.of("K", "K", "L", "L"))
                .withGroupsWithin("mother", "cultivar", List.of("1", "2", "1", "2"));
        assertEquals(
                List.of("K/1", "K/2", "L/1", "L/2"), data.grouping("mother").labels());
    }

    // ---------------------------------------------------------------- edges

    private static void assertFinite(MixedFit fit) {
        fit.logLikelihood().ifPresent(value -> assertTrue(Double.isFinite(value)));
        for (MixedFit.Deviation deviation : fit.deviations()) {
            deviation.sd().ifPresent(value -> assertTrue(Double.isFinite(value)));
            deviation.standardError().ifPresent(value -> assertTrue(Double.isFinite(value)));
            for (GroupEffect effect : fit.effects(deviation.grouping())) {
                assertTrue(Double.isFinite(effect.mode())
                        && Double.isFinite(effect.conditionalSd())
                        && Double.isFinite(effect.fullSd()));
            }
            for (GroupRate rate : fit.rates(deviation.grouping(), 0.9)) {
                assertTrue(rate.rate() > 0 && rate.rate() < 1, rate::toString);
                assertTrue(rate.interval().lower() >= 0 && rate.interval().upper() <= 1, rate::toString);
            }
        }
    }

    @Test
    void estimatesNothingFromNothing() {
        for (ModelData data : List.of(
                ModelData.of(new long[0], new long[0]).withGroups("mother", List.of()),
                data(new long[2], new long[2], "a", "b"))) {
            MixedFit fit = MixedModel.laplace().fit(data);
            assertEquals(Convergence.NO_DATA, fit.convergence());
            assertEquals(List.of("no trials: nothing can be estimated"), fit.remarks());
            assertEquals(Optional.empty(), fit.fixed().get(0).estimate());
            assertEquals(Optional.empty(), fit.logLikelihood());
            assertEquals(List.of(), fit.effects("mother"));
            assertEquals(List.of(), fit.rates("mother", 0.9));
            assertEquals(Optional.empty(), fit.ranking("mother", 1, 10, 1));
        }
    }

    @Test
    void saysThatGroupsDifferNoMoreThanByChance() {
        MixedFit fit =
                MixedModel.laplace().fit(data(new long[] {5, 5, 6, 4}, new long[] {10, 10, 12, 8}, "a", "b", "c", "d"));
        assertEquals(Convergence.BOUNDARY, fit.convergence());
        assertEquals(Optional.of(0.0), fit.deviations().get(0).sd());
        assertEquals(Optional.empty(), fit.deviations().get(0).standardError());
        assertEquals(
                List.of(
                        "mother: groups differ no more than chance would have it; the estimate of their standard deviation"
                                + " is 0, and has no standard error"),
                fit.remarks());
        // half of 40: 0 on the scale of log odds, standard error √(4 / 40), by hand
        assertEquals(0, fit.fixed().get(0).estimate().orElseThrow().value(), 1e-9);
        assertEquals(Math.sqrt(0.1), fit.fixed().get(0).estimate().orElseThrow().standardError(), 1e-6);
        // but that they do not differ at all is not known, and so their intervals are wider than the common one
        GroupRate rate = fit.rates("mother", 0.9).get(0);
        assertTrue(rate.interval().upper() > 1 / (1 + Math.exp(-1.645 * Math.sqrt(0.1))) + 0.02);
        assertFinite(fit);
    }

    @Test
    void leavesOutAGroupingThatCannotBeTold() {
        MixedFit one = MixedModel.laplace().fit(data(new long[] {3, 4}, new long[] {10, 10}, "a", "a"));
        assertEquals(Convergence.REDUCED, one.convergence());
        assertEquals(
                List.of("mother: one group only, so that how much groups differ cannot be told; left out"),
                one.remarks());
        assertEquals(Optional.empty(), one.deviations().get(0).sd());
        // log(7 / 13), by hand
        assertEquals(
                Math.log(7.0 / 13), one.fixed().get(0).estimate().orElseThrow().value(), 1e-6);
        assertFinite(one);
        MixedFit ones = MixedModel.laplace().fit(data(new long[] {1, 0, 1}, new long[] {1, 1, 1}, "a", "b", "c"));
        assertEquals(
                List.of("mother: one trial in each group, so that how much groups differ cannot be told; left out"),
                ones.remarks());
        assertFinite(ones);
        MixedFit same = MixedModel.laplace()
                .fit(data(new long[] {3, 9, 1, 7}, new long[] {10, 10, 8, 12}, "a", "b", "c", "d")
                        .withGroups("tray", List.of("1", "2", "3", "4")));
        assertEquals("tray: the same groups as mother; left out", same.remarks().get(0));
        assertFinite(same);
    }

    @Test
    void holdsTheRateWhereEverythingOrNothingSucceeded() {
        for (boolean all : new boolean[] {false, true}) {
            long[] n = {10, 4, 6};
            MixedFit fit = MixedModel.laplace().fit(data(all ? n : new long[3], n, "a", "b", "c"));
            assertEquals(Convergence.PENALIZED, fit.convergence());
            assertEquals(
                    (all ? "everything" : "nothing")
                            + " succeeded: how much groups differ cannot be told, and the rate is held off "
                            + (all ? "1" : "0") + " by a weak penalty",
                    fit.remarks().get(0));
            double value = fit.fixed().get(0).estimate().orElseThrow().value();
            double sign = all ? 1 : -1;
            // where the slope of 20 log(1 − p) − β² / 12.5 vanishes: 20 p = −β / 6.25
            assertEquals(20 / (1 + Math.exp(sign * value)), sign * value / 6.25, 1e-5);
            assertTrue(fit.fixed().get(0).isPenalized());
            assertFinite(fit);
        }
    }

    @Test
    void holdsAFixedEffectThatIsSeparated() {
        // every layer took, cuttings took by half
        List<String> mothers = List.of("a", "b", "c", "a", "b", "c");
        long[] n = {10, 10, 10, 10, 10, 10};
        double[] layer = {1, 1, 1, 0, 0, 0};
        MixedFit separated = MixedModel.laplace()
                .fit(ModelData.of(new long[] {10, 10, 10, 3, 5, 8}, n)
                        .withColumn("layer", layer)
                        .withGroups("mother", mothers));
        assertEquals(Convergence.PENALIZED, separated.convergence());
        assertEquals(
                "layer: success and failure are told apart without exception, so that no finite estimate exists; held by a"
                        + " weak penalty (normal, standard deviation 2.5)",
                separated.remarks().get(0));
        assertFalse(separated.fixed().get(0).isPenalized());
        assertTrue(separated.fixed().get(1).isPenalized());
        double held = separated.fixed().get(1).estimate().orElseThrow().value();
        assertTrue(held > 2 && held < 6, () -> "held at " + held);
        assertFinite(separated);

        // one layer in thirty failed: a finite estimate exists and nothing holds it
        MixedFit nearly = MixedModel.laplace()
                .fit(ModelData.of(new long[] {10, 9, 10, 3, 5, 8}, n)
                        .withColumn("layer", layer)
                        .withGroups("mother", mothers));
        assertTrue(nearly.convergence() == Convergence.CONVERGED || nearly.convergence() == Convergence.BOUNDARY);
        assertFalse(nearly.fixed().get(1).isPenalized());
        // without mothers log(29) − log(16/14); they can only take the two further apart
        double free = nearly.fixed().get(1).estimate().orElseThrow().value();
        assertTrue(free > Math.log(29) - Math.log(16.0 / 14) - 0.05 && free < 5, () -> "free at " + free);
        assertFinite(nearly);
    }

    @Test
    void doesNotTakeANearlySeparatedCellForASeparatedOne() {
        // Ridout, Hinde & Demétrio 1998: three of eight treatments without failure, but none tells success for certain
        long[] rooted = {30, 30, 40, 38, 15, 14, 18, 21};
        long[] shoots = {30, 30, 40, 40, 30, 30, 30, 40};
        double[] hours = {8, 8, 8, 8, 16, 16, 16, 16};
        List<String> bap = List.of("2.2", "4.4", "8.8", "17.6", "2.2", "4.4", "8.8", "17.6");
        MixedFit slope = MixedModel.laplace()
                .fit(ModelData.of(rooted, shoots).withColumn("hours", hours).withGroups("bap", bap));
        assertFalse(slope.fixed().get(1).isPenalized());
        // log(138/2) − log(68/62), over 8 hours, as no difference between concentrations is seen
        assertEquals(
                -(Math.log(138.0 / 2) - Math.log(68.0 / 62)) / 8,
                slope.fixed().get(1).estimate().orElseThrow().value(),
                1e-5);
        // with both factors crossed, whole treatments have no failure
        double[] low = {1, 1, 1, 0, 0, 0, 0, 0};
        MixedFit cells = MixedModel.laplace()
                .fit(ModelData.of(rooted, shoots).withColumn("low", low).withGroups("bap", bap));
        assertTrue(cells.fixed().get(1).isPenalized());
        assertFinite(cells);
    }

    @Test
    void leavesOutAColumnThatOthersMakeUp() {
        MixedFit fit = MixedModel.laplace()
                .fit(data(new long[] {3, 9, 1, 7}, new long[] {10, 10, 8, 12}, "a", "b", "c", "d")
                        .withColumn("layer", new double[] {1, 0, 1, 0})
                        .withColumn("cutting", new double[] {0, 1, 0, 1}));
        assertEquals(Optional.empty(), fit.fixed().get(2).estimate());
        assertEquals(
                "cutting: made up of other columns, or without trials; left out",
                fit.remarks().get(0));
        assertFinite(fit);
    }

    @Test
    void knowsAGroupWithoutTrialsByTheOthers() {
        MixedFit fit = MixedModel.laplace()
                .fit(data(new long[] {3, 9, 1, 7, 0}, new long[] {10, 10, 8, 12, 0}, "a", "b", "c", "d", "new"));
        GroupEffect unseen = fit.effects("mother").get(4);
        assertEquals(new Count(0, 0), unseen.count());
        assertEquals(0, unseen.mode());
        assertEquals(fit.deviations().get(0).sd().orElseThrow(), unseen.conditionalSd(), 1e-9);
        List<GroupRate> rates = fit.rates("mother", 0.9);
        assertTrue(width(rates.get(4)) > width(rates.get(3)));
        assertFinite(fit);
    }

    private static double width(GroupRate rate) {
        return rate.interval().upper() - rate.interval().lower();
    }

    @Test
    void doesNotMindAColumnFarFromZero() {
        ModelData data = data(new long[] {3, 9, 1, 7, 6}, new long[] {10, 10, 8, 12, 9}, "a", "b", "c", "d", "e");
        double[] years = {2019, 2020, 2021, 2022, 2023};
        double[] since = {0, 1, 2, 3, 4};
        MixedFit far = MixedModel.laplace().fit(data.withColumn("year", years));
        MixedFit near = MixedModel.laplace().fit(data.withColumn("year", since));
        Estimate one = far.fixed().get(1).estimate().orElseThrow();
        Estimate two = near.fixed().get(1).estimate().orElseThrow();
        assertEquals(two.value(), one.value(), 1e-6);
        assertEquals(two.standardError(), one.standardError(), 1e-5);
        GroupRate inOne = far.rates("mother", Map.of("year", 2021.0), 0.9).get(0);
        GroupRate inTwo = near.rates("mother", Map.of("year", 2.0), 0.9).get(0);
        assertEquals(inTwo.interval().lower(), inOne.interval().lower(), 1e-5);
    }

    @Test
    void refusesWhatItCannotDo() {
        ModelData two = invented(1, 20);
        Refused refused =
                assertThrows(Refused.class, () -> MixedModel.quadrature(9).fit(two));
        assertEquals(List.of("quadrature needs exactly one random grouping, found 3"), refused.lines());
        assertThrows(Refused.class, () -> MixedModel.quadrature(0));
        assertThrows(
                Refused.class,
                () -> two.withGroups(
                        "batch",
                        two.grouping("batch").labels().subList(0, 0).isEmpty()
                                ? Collections.nCopies(20, "x")
                                : List.of()));
        assertThrows(Defect.class, () -> two.withColumn("bad", new double[20 - 1]));
        MixedFit fit = MixedModel.laplace().fit(two);
        assertThrows(Refused.class, () -> fit.rates("mother", 90));
        assertThrows(Refused.class, () -> fit.ranking("mother", 0, 100, 1));
    }

    // ---------------------------------------------------------------- what is inside

    @Property(tries = 15)
    void climbsByItsTrueGradient(@ForAll long seed) {
        ModelData data = invented(seed, 30);
        double[][] columns = data.columns.stream().map(ModelData.Column::values).toArray(double[][]::new);
        int[][] groups = data.groupings.stream().map(ModelData.Groups::of).toArray(int[][]::new);
        int[] sizes =
                data.groupings.stream().mapToInt(each -> each.labels().size()).toArray();
        ModelRows crossed = ModelRows.of(data.successes, data.trials, columns, groups, sizes)
                .with(columnsOf(data, columns, groups, sizes), new double[] {0, 0.16});
        check(new Laplace(crossed), new double[] {0.2, -0.3, 0.7, 0.4, 0.9});
        ModelRows single =
                ModelRows.of(data.successes, data.trials, columns, new int[][] {groups[1]}, new int[] {sizes[1]});
        check(new Laplace(single), new double[] {0.2, -0.3, 0.8});
        check(new Quadrature(single, 5), new double[] {0.2, -0.3, 0.8});
        check(new Quadrature(single, 2), new double[] {-0.5, 0.1, 1.5});
    }

    private static double[][] columnsOf(ModelData data, double[][] columns, int[][] groups, int[] sizes) {
        return ModelRows.of(data.successes, data.trials, columns, groups, sizes).columns();
    }

    /** Central differences over ±1e-4 are good to about 1e-8 times the third derivative, here of order 10. */
    private static void check(Laplace likelihood, double[] theta) {
        double[] zeros = new double[likelihood.rows.intercepts()];
        double h = 1e-4;
        Likelihood.Point here = likelihood.at(theta, zeros);
        double[][] moves = likelihood.sensitivities();
        for (int m = 0; m < theta.length; m++) {
            double[] up = theta.clone();
            up[m] += h;
            double[] down = theta.clone();
            down[m] -= h;
            Likelihood.Point above = likelihood.at(up, zeros);
            Likelihood.Point below = likelihood.at(down, zeros);
            assertEquals((above.value() - below.value()) / (2 * h), here.gradient()[m], 2e-6, "slope " + m);
            for (int node = 0; node < zeros.length; node++) {
                assertEquals((above.modes()[node] - below.modes()[node]) / (2 * h), moves[m][node], 2e-6);
            }
        }
    }

    /** Computed another way: the likelihood written out for one grouping, and every derivative a difference. */
    @Test
    void knowsHowSureAGroupIsWithEverythingThatIsUncertain() {
        double[] r = {3, 9, 1, 7, 20, 11};
        double[] n = {10, 10, 8, 12, 40, 15};
        long[] taken = Arrays.stream(r).mapToLong(Math::round).toArray();
        long[] known = Arrays.stream(n).mapToLong(Math::round).toArray();
        MixedFit fit = MixedModel.laplace().fit(data(taken, known, "a", "b", "c", "d", "e", "f"));
        double beta = fit.fixed().get(0).estimate().orElseThrow().value();
        double sigma = fit.deviations().get(0).sd().orElseThrow();
        double h = 1e-3;
        double here = byHand(r, n, beta, sigma);
        double a = (byHand(r, n, beta + h, sigma) - 2 * here + byHand(r, n, beta - h, sigma)) / (h * h);
        double d = (byHand(r, n, beta, sigma + h) - 2 * here + byHand(r, n, beta, sigma - h)) / (h * h);
        double c = (byHand(r, n, beta + h, sigma + h)
                        - byHand(r, n, beta + h, sigma - h)
                        - byHand(r, n, beta - h, sigma + h)
                        + byHand(r, n, beta - h, sigma - h))
                / (4 * h * h);
        double determinant = a * d - c * c;
        for (int group = 0; group < r.length; group++) {
            double mode = mode(r[group], n[group], beta, sigma);
            double p = 1 / (1 + Math.exp(-beta - mode));
            double own = 1 / (1 / (sigma * sigma) + n[group] * p * (1 - p));
            double byBeta =
                    (mode(r[group], n[group], beta + h, sigma) - mode(r[group], n[group], beta - h, sigma)) / (2 * h);
            double bySigma =
                    (mode(r[group], n[group], beta, sigma + h) - mode(r[group], n[group], beta, sigma - h)) / (2 * h);
            double more = -(byBeta * byBeta * d - 2 * byBeta * bySigma * c + bySigma * bySigma * a) / determinant;
            GroupEffect effect = fit.effects("mother").get(group);
            assertEquals(mode, effect.mode(), 1e-5);
            assertEquals(Math.sqrt(own), effect.conditionalSd(), 1e-5);
            // differences over 1e-3 are good to about 1e-5 of themselves
            assertEquals(Math.sqrt(own + more), effect.fullSd(), 1e-4);
        }
    }

    /** Laplace's approximation for one grouping of one row each, but for constants. */
    private static double byHand(double[] r, double[] n, double beta, double sigma) {
        double sum = 0;
        for (int group = 0; group < r.length; group++) {
            double b = mode(r[group], n[group], beta, sigma);
            double p = 1 / (1 + Math.exp(-beta - b));
            sum += r[group] * Math.log(p)
                    + (n[group] - r[group]) * Math.log(1 - p)
                    - b * b / (2 * sigma * sigma)
                    - Math.log(1 + sigma * sigma * n[group] * p * (1 - p)) / 2;
        }
        return sum;
    }

    /** Solve r − n p = b / σ² by halving. */
    private static double mode(double r, double n, double beta, double sigma) {
        double low = -20;
        double high = 20;
        for (int halving = 0; halving < 100; halving++) {
            double b = (low + high) / 2;
            if (r - n / (1 + Math.exp(-beta - b)) > b / (sigma * sigma)) {
                low = b;
            } else {
                high = b;
            }
        }
        return low;
    }

    @Test
    void ranksByDrawingAllTogether() {
        MixedFit fit = MixedModel.laplace()
                .fit(data(
                        new long[] {2, 50, 30, 30, 28, 31},
                        new long[] {60, 60, 60, 60, 60, 60},
                        "worst",
                        "best",
                        "c",
                        "c2",
                        "d",
                        "e"));
        Ranking ranking = fit.ranking("mother", 2, 4000, 7).orElseThrow();
        assertEquals("best", ranking.standings().get(0).label());
        assertEquals("worst", ranking.standings().get(5).label());
        assertTrue(ranking.standings().get(0).probability() > 0.99);
        double sum = 0;
        for (Ranking.Standing standing : ranking.standings()) {
            sum += standing.probability();
            assertTrue(standing.standardError() > 0);
        }
        assertEquals(2, sum, 1e-9);
        // two mothers of the same counts are equally likely, but for the draws: 4 standard errors of a difference
        double one = probability(ranking, "c");
        double two = probability(ranking, "c2");
        assertEquals(one, two, 4 * Math.sqrt(2 * one / 4000));
        assertEquals(ranking, fit.ranking("mother", 2, 4000, 7).orElseThrow());
        assertEquals(1, probability(fit.ranking("mother", 6, 10, 7).orElseThrow(), "worst"));
    }

    private static double probability(Ranking ranking, String label) {
        return ranking.standings().stream()
                .filter(standing -> standing.label().equals(label))
                .findFirst()
                .orElseThrow()
                .probability();
    }
}
