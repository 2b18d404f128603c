package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/**
 * How often intervals of 95 % hold the truth, in worlds where the truth is known. What the build runs is short; with
 * {@code -Dortet.simulations=20000} it runs as many samples of each world as that, and the tables that it leaves in
 * {@code target/coverage.md} are those of {@code docs/methods}. Everything is seeded: the same number gives the same
 * tables. Bounds leave room for four standard errors of the short run.
 */
class CoverageTests {
    private static final int SAMPLES = Integer.getInteger("ortet.simulations", 1500);
    private static final long SEED = 20260615;
    private static final List<String> TABLES = new ArrayList<>();

    @AfterAll
    static void leaveTheTables() throws IOException {
        Files.createDirectories(Path.of("target"));
        Files.write(Path.of("target", "coverage.md"), TABLES);
    }

    private static void row(Object... cells) {
        StringBuilder row = new StringBuilder("|");
        for (Object cell : cells) {
            row.append(' ')
                    .append(cell instanceof Double number ? String.format(Locale.ROOT, "%.1f", number) : cell)
                    .append(" |");
        }
        TABLES.add(row.toString());
    }

    /** A true rate or correlation as it was set, not rounded. */
    private static String rate(double value) {
        return Double.toString(value);
    }

    private static void head(String title, String... columns) {
        TABLES.add("");
        TABLES.add(title);
        TABLES.add("");
        row((Object[]) columns);
        TABLES.add("|" + "---|".repeat(columns.length));
    }

    private static double error(double coverage) {
        return Math.sqrt(coverage * (1 - coverage) / SAMPLES);
    }

    /** Not simulated: summed over every count there is. */
    @Test
    void wilsonHoldsOnAverage() {
        head("wilson", "n", "true rate", "covers %", "mean width, points");
        double sum = 0;
        int worlds = 0;
        for (int n : new int[] {4, 10, 20, 60, 200}) {
            for (double p : new double[] {0.5, 0.7, 0.9, 0.98}) {
                BinomialDistribution binomial = BinomialDistribution.of(n, p);
                double covers = 0;
                double width = 0;
                for (int x = 0; x <= n; x++) {
                    Interval interval = Wilson.interval(new Count(x, n), 0.95).orElseThrow();
                    covers += interval.holds(p) ? binomial.probability(x) : 0;
                    width += interval.width() * binomial.probability(x);
                }
                row(n, rate(p), 100 * covers, 100 * width);
                sum += covers;
                worlds++;
                assertTrue(covers > 0.83, "Wilson's interval is known to fall to some 84 % in narrow places");
            }
        }
        assertTrue(sum / worlds > 0.94 && sum / worlds < 0.97, "on average " + sum / worlds);
    }

    /** Not simulated: summed over every pair of counts there is. */
    @Test
    void newcombeHoldsOnAverage() {
        head("newcombe", "n first", "n second", "true rates", "covers %", "mean width, points");
        double sum = 0;
        int worlds = 0;
        for (int[] n : new int[][] {{5, 5}, {10, 40}, {20, 20}, {60, 60}}) {
            for (double[] p : new double[][] {{0.5, 0.5}, {0.8, 0.6}, {0.95, 0.9}, {0.3, 0.95}}) {
                BinomialDistribution one = BinomialDistribution.of(n[0], p[0]);
                BinomialDistribution other = BinomialDistribution.of(n[1], p[1]);
                double covers = 0;
                double width = 0;
                for (int x = 0; x <= n[0]; x++) {
                    for (int y = 0; y <= n[1]; y++) {
                        double chance = one.probability(x) * other.probability(y);
                        Interval interval = Newcombe.difference(new Count(x, n[0]), new Count(y, n[1]), 0.95)
                                .orElseThrow();
                        covers += interval.holds(p[0] - p[1]) ? chance : 0;
                        width += interval.width() * chance;
                    }
                }
                row(n[0], n[1], p[0] + " and " + p[1], 100 * covers, 100 * width);
                sum += covers;
                worlds++;
                assertTrue(covers > 0.9);
            }
        }
        assertTrue(sum / worlds > 0.945 && sum / worlds < 0.975, "on average " + sum / worlds);
    }

    /** A world of trays: draws a sample of them. */
    private interface Trays extends Supplier<List<Count>> {}

    private static int took(int size, double rate, SplittableRandom random) {
        int took = 0;
        for (int i = 0; i < size; i++) {
            took += random.nextDouble() < rate ? 1 : 0;
        }
        return took;
    }

    /** Rates of trays as the beta distribution deals them out, with the mean and the correlation within a tray. */
    private static DoubleSupplier beta(double mean, double correlation, SplittableRandom random) {
        if (correlation == 0) {
            return () -> mean;
        }
        double both = (1 - correlation) / correlation;
        UniformRandomProvider source = random::nextLong;
        return BetaDistribution.of(mean * both, (1 - mean) * both).createSampler(source)::sample;
    }

    private static Trays trays(Supplier<int[]> sizes, DoubleSupplier rates, SplittableRandom random) {
        return () -> {
            List<Count> trays = new ArrayList<>();
            for (int size : sizes.get()) {
                trays.add(new Count(took(size, rates.getAsDouble(), random), size));
            }
            return trays;
        };
    }

    private static int[] equal(int trays, int size) {
        int[] sizes = new int[trays];
        Arrays.fill(sizes, size);
        return sizes;
    }

    /** How often each way of making an interval held the truth, and how wide it was. */
    private static final class Tally {
        private double naive;
        private double normal;
        private double student;
        private double effective;
        private double width;

        Tally(Trays world, double truth) {
            for (int sample = 0; sample < SAMPLES; sample++) {
                Clustered clustered = Clustered.of(world.get());
                Interval ours = clustered.interval(0.95).orElseThrow().interval();
                Clustered.Widening widening = clustered.widening().orElseThrow();
                naive += holds(Wilson.interval(clustered.total(), 0.95).orElseThrow(), truth);
                normal += holds(other(clustered, widening, 1.959963984540054), truth);
                double t = TDistribution.of(clustered.clusters() - 1).inverseSurvivalProbability(0.025);
                student += holds(other(clustered, widening, t), truth);
                effective += holds(ours, truth);
                width += ours.width() / SAMPLES;
            }
        }

        private static Interval other(Clustered clustered, Clustered.Widening widening, double z) {
            return Wilson.interval(
                    clustered.share().orElseThrow(), widening.effective(), z, 0.95, Interval.Method.WILSON_CLUSTERED);
        }

        private static double holds(Interval interval, double truth) {
            return interval.holds(truth) ? 1.0 / SAMPLES : 0;
        }

        void tell(String world, double truth, double correlation) {
            row(
                    world,
                    rate(truth),
                    rate(correlation),
                    100 * naive,
                    100 * normal,
                    100 * student,
                    100 * effective,
                    100 * width);
        }
    }

    private static final String[] CLUSTER_COLUMNS = {
        "trays",
        "true rate",
        "ρ",
        "naive covers %",
        "effective count, z",
        "effective count, t on k − 1",
        "effective count, t on effective clusters − 1 (ours)",
        "its mean width, points"
    };

    @Test
    void clusteredHoldsWhereNaiveFailsForTraysOfOneSize() {
        head("clusters, one size, beta-binomial", CLUSTER_COLUMNS);
        for (int trays : new int[] {3, 5, 10, 30}) {
            for (double rate : new double[] {0.6, 0.9, 0.97}) {
                for (double correlation : new double[] {0, 0.05, 0.3}) {
                    SplittableRandom random = new SplittableRandom(SEED);
                    Tally tally =
                            new Tally(trays(() -> equal(trays, 60), beta(rate, correlation, random), random), rate);
                    tally.tell(trays + " of 60", rate, correlation);
                    if (correlation == 0.3 && rate == 0.6) {
                        assertTrue(tally.naive < 0.5, "naive: " + tally.naive);
                    }
                    if (correlation == 0.05) {
                        assertTrue(tally.naive < 0.85, "naive: " + tally.naive);
                        assertTrue(tally.effective > 0.9, "ours: " + tally.effective);
                    }
                    if (rate == 0.6) {
                        assertTrue(tally.effective > 0.94 - 4 * error(0.94), "ours: " + tally.effective);
                    }
                    assertTrue(tally.effective >= tally.naive);
                }
            }
        }
    }

    /** Where all took or none did, the trays seem perfectly alike; taken at their word they would say far too much. */
    @Test
    void clustersThatFaredAlikeCountAsOneEachForAReason() {
        head(
                "clusters, where all or none took",
                "trays",
                "true rate",
                "ρ",
                "all alike %",
                "counted as units: covers %",
                "each cluster as one (ours)");
        for (int trays : new int[] {3, 5, 10}) {
            for (double rate : new double[] {0.9, 0.97}) {
                SplittableRandom random = new SplittableRandom(SEED);
                Trays world = trays(() -> equal(trays, 60), beta(rate, 0.3, random), random);
                double alike = 0;
                double asUnits = 0;
                double ours = 0;
                for (int sample = 0; sample < SAMPLES; sample++) {
                    Clustered clustered = Clustered.of(world.get());
                    Clustered.Widening widening = clustered.widening().orElseThrow();
                    Interval interval = clustered.interval(0.95).orElseThrow().interval();
                    boolean all = widening.basis() == Clustered.Basis.ALL_ALIKE;
                    double t = TDistribution.of(widening.degrees()).inverseSurvivalProbability(0.025);
                    Interval units = Wilson.interval(
                            clustered.share().orElseThrow(),
                            all ? clustered.total().trials() : widening.effective(),
                            t,
                            0.95,
                            Interval.Method.WILSON_CLUSTERED);
                    alike += all ? 1.0 / SAMPLES : 0;
                    asUnits += Tally.holds(units, rate);
                    ours += Tally.holds(interval, rate);
                }
                row(trays + " of 60", rate(rate), rate(0.3), 100 * alike, 100 * asUnits, 100 * ours);
                assertTrue(ours >= asUnits);
                if (trays == 5 && rate == 0.97) {
                    assertTrue(asUnits < 0.8 && ours > 0.95, asUnits + ", " + ours);
                }
            }
        }
    }

    @Test
    void clusteredIsToldOfWorldsThatItIsNotMadeFor() {
        head("clusters, other worlds", CLUSTER_COLUMNS);
        for (double rate : new double[] {0.6, 0.9}) {
            for (double correlation : new double[] {0.05, 0.3}) {
                SplittableRandom random = new SplittableRandom(SEED);
                DoubleSupplier beta = beta(rate, correlation, random);
                Tally unequal = new Tally(trays(() -> random.ints(10, 5, 121).toArray(), beta, random), rate);
                unequal.tell("10 of 5 to 120", rate, correlation);
                assertTrue(unequal.effective > unequal.naive);
                Tally large = new Tally(
                        trays(() -> new int[] {20, 20, 20, 20, 20, 20, 20, 20, 400, 400}, beta, random), rate);
                large.tell("8 of 20 and 2 of 400", rate, correlation);
                // with the usual degrees of freedom these two trays pass for ten
                assertTrue(large.student < 0.85 && large.effective > 0.88, large.student + ", " + large.effective);
                Tally one = new Tally(trays(() -> new int[] {20, 20, 20, 20, 400}, beta, random), rate);
                one.tell("4 of 20 and 1 of 400", rate, correlation);
                assertTrue(one.student < 0.85 && one.effective > 0.95);
            }
        }
        // two kinds of tray: most do well, one in five damps off
        SplittableRandom random = new SplittableRandom(SEED);
        DoubleSupplier damping = () -> random.nextInt(5) == 0 ? 0.05 : 0.85;
        double truth = 0.69; // a fifth at 0.05, the others at 0.85
        for (int trays : new int[] {5, 10, 30}) {
            new Tally(trays(() -> equal(trays, 60), damping, random), truth)
                    .tell(trays + " of 60, one in five damps off", truth, 0.47);
        }
        // the bigger the tray, the worse it does: the rate of all units is meant, each size as common as the other
        double ofUnits = (20 * 0.9 + 100 * 0.5) / 120;
        Trays crowded = () -> {
            List<Count> drawn = new ArrayList<>();
            for (int tray = 0; tray < 12; tray++) {
                boolean big = random.nextBoolean();
                int size = big ? 100 : 20;
                drawn.add(new Count(took(size, big ? 0.5 : 0.9, random), size));
            }
            return drawn;
        };
        Tally crowd = new Tally(crowded, ofUnits);
        crowd.tell("12 of 20 (rate 0.9) or 100 (rate 0.5)", Math.round(ofUnits * 1000) / 1000.0, 0);
    }

    /** Trees to a mother-year: 2 on average, mothers differing by a gamma law, each kept for 1 to 8 years. */
    @Test
    void ratiosOfMothersHold() {
        head("trees to a mother-year", "mothers", "their spread", "as counts at random covers %", "ours covers %");
        for (int mothers : new int[] {3, 8, 30}) {
            for (double spread : new double[] {0, 0.5, 1}) {
                SplittableRandom random = new SplittableRandom(SEED);
                double naive = 0;
                double ours = 0;
                double told = 0;
                for (int sample = 0; sample < SAMPLES; sample++) {
                    List<ClusteredRatio.Part> parts = new ArrayList<>();
                    for (int mother = 0; mother < mothers; mother++) {
                        double rate = spread == 0
                                ? 2
                                : GammaDistribution.of(1 / (spread * spread), 2 * spread * spread)
                                        .inverseCumulativeProbability(random.nextDouble());
                        int years = 1 + random.nextInt(8);
                        long trees = Math.round(PoissonDistribution.of(Math.max(rate, 1e-9) * years)
                                .inverseCumulativeProbability(random.nextDouble()));
                        parts.add(new ClusteredRatio.Part(trees, years));
                    }
                    ClusteredRatio ratio = ClusteredRatio.of(parts);
                    if (ratio.count() > 0) {
                        double wide = 1.959963984540054 / Math.sqrt(ratio.count());
                        double found = ratio.ratio().orElseThrow();
                        naive += found * Math.exp(-wide) <= 2 && 2 <= found * Math.exp(wide) ? 1 : 0;
                        ours += ratio.interval(0.95).orElseThrow().holds(2) ? 1 : 0;
                        told++;
                    }
                }
                row(mothers, rate(spread), 100 * naive / told, 100 * ours / told);
                assertTrue(ours / told > (spread < 1 ? 0.91 : 0.88), mothers + ", " + spread + ": " + ours / told);
                assertTrue(spread == 0 || ours > naive);
            }
        }
    }

    /** Trays are not all there is: those struck from one mother share her luck as well. */
    @Test
    void clusteredByTrayFailsWhereMothersAreShared() {
        head(
                "mothers: 12 trays of 60, 3 from each of 4 mothers; 24 from 8",
                "mothers",
                "true rate",
                "clusters are trays: covers %",
                "clusters are mothers: covers %",
                "width by trays, points",
                "width by mothers, points");
        for (int mothers : new int[] {4, 8}) {
            for (double rate : new double[] {0.6, 0.9}) {
                SplittableRandom random = new SplittableRandom(SEED);
                DoubleSupplier ofMother = beta(rate, 0.15, random);
                double byTray = 0;
                double byMother = 0;
                double trayWidth = 0;
                double motherWidth = 0;
                for (int sample = 0; sample < SAMPLES; sample++) {
                    List<Count> trays = new ArrayList<>();
                    List<Count> all = new ArrayList<>();
                    for (int mother = 0; mother < mothers; mother++) {
                        double hers = Math.min(0.999, Math.max(0.001, ofMother.getAsDouble()));
                        DoubleSupplier ofTray = beta(hers, 0.05, random);
                        Count together = new Count(0, 0);
                        for (int tray = 0; tray < 3; tray++) {
                            Count count = new Count(took(60, ofTray.getAsDouble(), random), 60);
                            trays.add(count);
                            together = together.plus(count);
                        }
                        all.add(together);
                    }
                    Interval tray =
                            Clustered.of(trays).interval(0.95).orElseThrow().interval();
                    Interval mother =
                            Clustered.of(all).interval(0.95).orElseThrow().interval();
                    byTray += tray.holds(rate) ? 1.0 / SAMPLES : 0;
                    byMother += mother.holds(rate) ? 1.0 / SAMPLES : 0;
                    trayWidth += tray.width() / SAMPLES;
                    motherWidth += mother.width() / SAMPLES;
                }
                row(mothers, rate(rate), 100 * byTray, 100 * byMother, 100 * trayWidth, 100 * motherWidth);
                assertTrue(byTray < 0.9, "by tray: " + byTray);
                assertTrue(byMother > 0.88 && byMother > byTray + 0.03, "by mother: " + byMother);
            }
        }
    }

    @Test
    void differenceOfClusteredRatesHoldsWhereNewcombeFails() {
        head(
                "difference of two clustered rates, trays of 60",
                "trays a side",
                "true rates",
                "ρ",
                "naive covers %",
                "ours covers %",
                "its mean width, points");
        for (int[] trays : new int[][] {{3, 3}, {5, 5}, {10, 10}, {3, 20}}) {
            for (double[] rate : new double[][] {{0.6, 0.6}, {0.8, 0.5}, {0.95, 0.85}}) {
                for (double correlation : new double[] {0.05, 0.3}) {
                    SplittableRandom random = new SplittableRandom(SEED);
                    Trays first = trays(() -> equal(trays[0], 60), beta(rate[0], correlation, random), random);
                    Trays second = trays(() -> equal(trays[1], 60), beta(rate[1], correlation, random), random);
                    double naive = 0;
                    double ours = 0;
                    double width = 0;
                    for (int sample = 0; sample < SAMPLES; sample++) {
                        Clustered one = Clustered.of(first.get());
                        Clustered other = Clustered.of(second.get());
                        Interval interval = Clustered.difference(one, other, 0.95)
                                .orElseThrow()
                                .interval();
                        ours += interval.holds(rate[0] - rate[1]) ? 1.0 / SAMPLES : 0;
                        width += interval.width() / SAMPLES;
                        naive += Newcombe.difference(one.total(), other.total(), 0.95)
                                        .orElseThrow()
                                        .holds(rate[0] - rate[1])
                                ? 1.0 / SAMPLES
                                : 0;
                    }
                    row(
                            trays[0] + " and " + trays[1],
                            rate[0] + " and " + rate[1],
                            rate(correlation),
                            100 * naive,
                            100 * ours,
                            100 * width);
                    assertTrue(naive < 0.85, "naive: " + naive);
                    assertTrue(ours > 0.9, "ours: " + ours);
                }
            }
        }
    }

    /** Looks at one layer, half to one and a half times the usual number of days apart, until one day it is given up. */
    private static Within looked(double time, int every, SplittableRandom random) {
        double end = 60 + 120 * random.nextDouble();
        double last = 0;
        double day = every * (0.5 + random.nextDouble());
        while (day < end) {
            if (day >= time) {
                return new Within(last, day);
            }
            last = day;
            day += every * (0.5 + random.nextDouble());
        }
        return Within.after(last);
    }

    private static double weibull(double shape, double scale, SplittableRandom random) {
        return scale * Math.pow(-Math.log(1 - random.nextDouble()), 1 / shape);
    }

    /** A median interval holds the truth, however many looks were missed; and so does that of the fitted law. */
    @Test
    void medianOfTimesBetweenLooksIsHeld() {
        head(
                "median time between looks",
                "law",
                "looked at",
                "days between looks",
                "bootstrap (Turnbull) covers %",
                "mean width where it ends, days",
                "without an upper limit %",
                "Weibull fit covers %",
                "its mean width, days",
                "no fit %");
        int samples = Math.max(60, SAMPLES / 25);
        boolean isLong = SAMPLES > 5000;
        int repeats = isLong ? 399 : 99;
        for (int n : isLong ? new int[] {15, 30, 60} : new int[] {15, 30}) {
            for (int every : isLong ? new int[] {7, 21} : new int[] {21}) {
                for (boolean twoKinds : new boolean[] {false, true}) {
                    SplittableRandom random = new SplittableRandom(SEED);
                    // one law of shape 3; or two kinds of layer, quick and slow, half and half, at 40 and at 110 days
                    double truth = twoKinds ? twoKindsMedian() : 75 * Math.pow(Math.log(2), 1.0 / 3);
                    double held = 0;
                    double width = 0;
                    double ended = 0;
                    double fitHeld = 0;
                    double fitWidth = 0;
                    double fits = 0;
                    for (int sample = 0; sample < samples; sample++) {
                        List<Within> seen = new ArrayList<>();
                        List<Lasting.Subject> subjects = new ArrayList<>();
                        for (int i = 0; i < n; i++) {
                            double time = twoKinds
                                    ? weibull(6, random.nextBoolean() ? 40 : 110, random)
                                    : weibull(3, 75, random);
                            Within one = looked(time, every, random);
                            seen.add(one);
                            subjects.add(new Lasting.Subject(one, List.of()));
                        }
                        Interval interval =
                                Turnbull.of(seen).orElseThrow().medianInterval(0.95, repeats, SEED + sample);
                        held += interval.holds(truth) ? 1 : 0;
                        ended += interval.isBounded() ? 1 : 0;
                        width += interval.isBounded() ? interval.width() : 0;
                        Lasting.Fit fit = Lasting.fit(Lasting.Law.WEIBULL, List.of(), subjects);
                        if (fit.fitted().isPresent()) {
                            Interval median = fit.fitted()
                                    .get()
                                    .quantile(0.5, List.of(), 0.95)
                                    .interval();
                            fits++;
                            fitHeld += median.holds(truth) ? 1 : 0;
                            fitWidth += median.width();
                        }
                    }
                    row(
                            twoKinds ? "two kinds" : "Weibull, shape 3",
                            n,
                            every,
                            100 * held / samples,
                            ended == 0 ? "–" : (Object) (width / ended),
                            100 - 100 * ended / samples,
                            fits == 0 ? "–" : (Object) (100 * fitHeld / fits),
                            fits == 0 ? "–" : (Object) (fitWidth / fits),
                            100 - 100 * fits / samples);
                    double room = 4 * Math.sqrt(0.95 * 0.05 / samples);
                    assertTrue(held / samples > 0.9 - room, "bootstrap: " + held / samples);
                    if (!twoKinds && n >= 30) {
                        assertTrue(fitHeld / fits > 0.93 - room, "fit: " + fitHeld / fits);
                    }
                }
            }
        }
    }

    /** Solved by halving: half of the mass of both kinds. */
    private static double twoKindsMedian() {
        double low = 1;
        double high = 200;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            double survival = 0.5 * Math.exp(-Math.pow(middle / 40, 6)) + 0.5 * Math.exp(-Math.pow(middle / 110, 6));
            if (survival > 0.5) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
