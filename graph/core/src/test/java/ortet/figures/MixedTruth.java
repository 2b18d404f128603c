package ortet.figures;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Invents groups whose true rates are known, fits mixed models to what they show, and counts how often the truth is where
 * the model says. {@code main} prints the tables of docs/methods/mixed.md.
 */
final class MixedTruth {
    static final double CONFIDENCE = 0.9;
    private static final double[] BINS = {0, 0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1.0000001};

    private MixedTruth() {}

    /**
     * A world.
     *
     * @param name what to call it
     * @param groups how many mothers
     * @param sd of their log odds
     * @param mean of their log odds
     * @param kind how the log odds are spread and what else goes on
     */
    record World(String name, int groups, double sd, double mean, Kind kind) {}

    enum Kind {
        NORMAL,
        SKEWED,
        TWO_HUMPED,
        INFORMATIVE,
        NESTED,
        TRAYS_LEFT_OUT,
        TRAYS_MODELLED,
        ALL_THREE,
        ONE_TRAY_EACH
    }

    /** How often an interval held the truth, and how well ranks were foretold. */
    static final class Score {
        long held;
        long asked;
        long above;
        long failed;
        final double[] foretold = new double[BINS.length - 1];
        final double[] happened = new double[BINS.length - 1];
        final long[] binned = new long[BINS.length - 1];

        double coverage() {
            return (double) held / asked;
        }

        void add(Score other) {
            held += other.held;
            asked += other.asked;
            above += other.above;
            failed += other.failed;
            for (int bin = 0; bin < binned.length; bin++) {
                foretold[bin] += other.foretold[bin];
                happened[bin] += other.happened[bin];
                binned[bin] += other.binned[bin];
            }
        }
    }

    static Score score(World world, int repetitions, int draws) {
        Score total = new Score();
        IntStream.range(0, repetitions)
                .parallel()
                .mapToObj(repetition -> once(world, repetition, draws))
                .forEachOrdered(total::add);
        return total;
    }

    private static Score once(World world, int repetition, int draws) {
        SplittableRandom random =
                new SplittableRandom(world.name().hashCode() * 1_000_003L + 7919L * repetition).split();
        int groups = world.groups();
        double[] truth = new double[groups];
        List<String> mothers = new ArrayList<>();
        List<String> cultivars = new ArrayList<>();
        List<String> trays = new ArrayList<>();
        List<Long> taken = new ArrayList<>();
        List<Long> known = new ArrayList<>();
        double[] cultivarEffects = normals(random, Math.max(4, groups / 8));
        double[] trayEffects = normals(random, groups);
        for (int mother = 0; mother < groups; mother++) {
            int cultivar = mother % cultivarEffects.length;
            double effect = world.sd() * deviate(world.kind(), random);
            boolean isNested = world.kind() == Kind.NESTED || world.kind() == Kind.ALL_THREE;
            if (isNested) {
                effect += 0.8 * cultivarEffects[cultivar];
            }
            truth[mother] = 1 / (1 + Math.exp(-(world.mean() + effect)));
            int units = 1 + random.nextInt(60);
            if (world.kind() == Kind.INFORMATIVE) {
                // the better a mother, the more is taken from her
                double liking = 1 / (1 + Math.exp(-2 * effect / Math.max(world.sd(), 1e-9)));
                units = 1 + (int) Math.round(liking * random.nextInt(60));
            }
            boolean hasTrays = world.kind() == Kind.TRAYS_LEFT_OUT || isTrayModelled(world);
            int parts = hasTrays ? Math.min(units, 3) : 1;
            for (int part = 0; part < parts; part++) {
                int tray = hasTrays ? random.nextInt(Math.max(5, groups / 2)) : mother;
                boolean isInTray = hasTrays || world.kind() == Kind.ONE_TRAY_EACH;
                double logit = world.mean() + effect + (isInTray ? 0.8 * trayEffects[tray] : 0);
                int size = units / parts + (part < units % parts ? 1 : 0);
                double p = 1 / (1 + Math.exp(-logit));
                long success = 0;
                for (int unit = 0; unit < size; unit++) {
                    success += random.nextDouble() < p ? 1 : 0;
                }
                taken.add(success);
                known.add((long) size);
                mothers.add("M" + mother);
                cultivars.add("C" + cultivar);
                trays.add("T" + tray);
            }
        }
        ModelData data = ModelData.of(
                taken.stream().mapToLong(Long::longValue).toArray(),
                known.stream().mapToLong(Long::longValue).toArray());
        if (world.kind() == Kind.NESTED || world.kind() == Kind.ALL_THREE) {
            data = data.withGroups("cultivar", cultivars).withGroupsWithin("mother", "cultivar", mothers);
        } else {
            data = data.withGroups("mother", mothers);
        }
        if (isTrayModelled(world)) {
            data = data.withGroups("tray", trays);
        }
        MixedFit fit = MixedModel.laplace().fit(data);
        Score score = new Score();
        if (!fit.convergence().hasEstimates()) {
            score.failed++;
            return score;
        }
        for (GroupRate rate : fit.rates("mother", CONFIDENCE)) {
            double own = truth[Integer.parseInt(rate.label().substring(1))];
            score.asked++;
            score.held += rate.interval().holds(own) ? 1 : 0;
            score.above += own > rate.interval().upper() ? 1 : 0;
        }
        if (draws > 0) {
            int best = Math.max(1, groups / 10);
            double least =
                    truth.clone().length == 0 ? 0 : Selection.largest(truth.clone(), best, new SplittableRandom(1));
            for (Ranking.Standing standing :
                    fit.ranking("mother", best, draws, repetition).orElseThrow().standings()) {
                int bin = 0;
                while (standing.probability() >= BINS[bin + 1]) {
                    bin++;
                }
                score.binned[bin]++;
                score.foretold[bin] += standing.probability();
                score.happened[bin] += truth[Integer.parseInt(standing.label().substring(1))] >= least ? 1 : 0;
            }
        }
        return score;
    }

    private static boolean isTrayModelled(World world) {
        return world.kind() == Kind.TRAYS_MODELLED || world.kind() == Kind.ALL_THREE;
    }

    private static double[] normals(SplittableRandom random, int count) {
        double[] values = new double[count];
        for (int at = 0; at < count; at++) {
            values[at] = random.nextGaussian();
        }
        return values;
    }

    /** Mean 0 and standard deviation 1, whatever the shape. */
    private static double deviate(Kind kind, SplittableRandom random) {
        return switch (kind) {
            case SKEWED -> -Math.log(1 - random.nextDouble()) - 1;
            case TWO_HUMPED ->
                (random.nextBoolean() ? 0.95 : -0.95) + Math.sqrt(1 - 0.95 * 0.95) * random.nextGaussian();
            default -> random.nextGaussian();
        };
    }

    static List<World> right() {
        List<World> worlds = new ArrayList<>();
        for (int groups : new int[] {50, 200}) {
            for (double sd : new double[] {0.3, 0.8, 1.5}) {
                worlds.add(new World("normal", groups, sd, 0.4, Kind.NORMAL));
            }
        }
        worlds.add(new World("normal, rates about 90 %", 50, 0.8, 2.2, Kind.NORMAL));
        worlds.add(new World("mother within cultivar", 64, 0.6, 0.4, Kind.NESTED));
        worlds.add(new World("mother within cultivar", 600, 0.6, 0.4, Kind.NESTED));
        worlds.add(new World("trays, in the model", 60, 0.8, 0.4, Kind.TRAYS_MODELLED));
        worlds.add(new World("mother within cultivar, trays", 96, 0.8, 0.4, Kind.ALL_THREE));
        return worlds;
    }

    static List<World> wrong() {
        return List.of(
                new World("normal, hardly different", 50, 0.15, 0.4, Kind.NORMAL),
                new World("skewed", 50, 0.8, 0.4, Kind.SKEWED),
                new World("skewed", 200, 1.5, 0.4, Kind.SKEWED),
                new World("two humps", 50, 0.8, 0.4, Kind.TWO_HUMPED),
                new World("two humps", 200, 1.5, 0.4, Kind.TWO_HUMPED),
                new World("more from the better", 50, 0.8, 0.4, Kind.INFORMATIVE),
                new World("trays, not in the model", 60, 0.8, 0.4, Kind.TRAYS_LEFT_OUT),
                new World("a tray for each mother", 60, 0.8, 0.4, Kind.ONE_TRAY_EACH));
    }

    /** Print the tables. */
    public static void main(String[] arguments) {
        int repetitions = Integer.parseInt(arguments[0]);
        System.out.println(
                "| world | mothers | SD | held of 90 % | truth above | truth below | fits without estimates |");
        System.out.println("|---|---|---|---|---|---|---|");
        ToDoubleFunction<Score> below = score -> score.asked - score.held - score.above;
        List<World> worlds = new ArrayList<>(right());
        worlds.addAll(wrong());
        List<String> ranks = new ArrayList<>();
        for (World world : worlds) {
            Score score = score(world, repetitions, 1000);
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %.2g | %.1f %% | %.1f %% | %.1f %% | %d |%n",
                    world.name(),
                    world.groups(),
                    world.sd(),
                    100 * score.coverage(),
                    100.0 * score.above / score.asked,
                    100 * below.applyAsDouble(score) / score.asked,
                    score.failed);
            StringBuilder line = new StringBuilder("| " + world.name() + ", " + world.groups() + ", "
                    + String.format(Locale.ROOT, "%.2g", world.sd()) + " |");
            for (int bin = 0; bin < score.binned.length; bin++) {
                line.append(
                        score.binned[bin] < 20
                                ? " – |"
                                : String.format(
                                        Locale.ROOT,
                                        " %.0f → %.0f |",
                                        100 * score.foretold[bin] / score.binned[bin],
                                        100 * score.happened[bin] / score.binned[bin]));
            }
            ranks.add(line.toString());
        }
        System.out.println();
        System.out.println(
                "| world, mothers, SD | 0–5 % | 5–20 % | 20–40 % | 40–60 % | 60–80 % | 80–95 % | 95–100 % |");
        System.out.println("|---|---|---|---|---|---|---|---|");
        ranks.forEach(System.out::println);
    }
}
