package ortet;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import ortet.figures.MixedFit;
import ortet.figures.MixedModel;
import ortet.figures.ModelData;

/**
 * Measures mixed models on invented mothers: one grouping, mother within cultivar, and mothers that cross with batches.
 * Usage: {@code MixedSpeed [MOTHERS…]}, 5000 and 50000 unless given; {@code MixedSpeed MOTHERS --write FOLDER} writes the
 * same data for {@code seeds/mixed-speed.R}.
 */
public final class MixedSpeed {
    private static final int ROUNDS = 5;

    private MixedSpeed() {}

    /** Measure, or write. */
    public static void main(String[] arguments) throws IOException {
        List<String> words = Arrays.asList(arguments);
        int write = words.indexOf("--write");
        List<String> sizes = write < 0 ? words : words.subList(0, write);
        for (String size : sizes.isEmpty() ? List.of("5000", "50000") : sizes) {
            int mothers = Integer.parseInt(size);
            Sample sample = new Sample(mothers);
            if (write >= 0) {
                sample.write(Path.of(words.get(write + 1)).resolve("mothers-" + mothers + ".csv"));
            } else {
                measure(sample, mothers);
            }
        }
    }

    private static void measure(Sample sample, int mothers) {
        ModelData fixed = ModelData.of(sample.taken, sample.known).withColumn("cutting", sample.cutting);
        ModelData one = fixed.withGroups("mother", sample.mother);
        ModelData nested =
                fixed.withGroups("cultivar", sample.cultivar).withGroupsWithin("mother", "cultivar", sample.mother);
        ModelData own = nested.withGroups("tray", sample.tray);
        MixedModel laplace = MixedModel.laplace();
        MixedFit fit = time("mother", mothers, () -> laplace.fit(one));
        time("mother, rates at 90 %", mothers, () -> fit.rates("mother", 0.9));
        time("mother, best 20, 1000 draws", mothers, () -> fit.ranking("mother", 20, 1000, 1));
        time(
                "mother, quadrature with 9 nodes",
                mothers,
                () -> MixedModel.quadrature(9).fit(one));
        MixedFit both = time("cultivar, mother within", mothers, () -> laplace.fit(nested));
        time("cultivar, mother within, best 20, 1000 draws", mothers, () -> both.ranking("mother", 20, 1000, 1));
        time("cultivar, mother within, tray of one cultivar", mothers, () -> laplace.fit(own));
        for (int batches : new int[] {20, 200, 500, 1000}) {
            ModelData crossed = one.withGroups("batch", sample.batches(batches));
            time("mother, " + batches + " batches of any mothers", mothers, () -> laplace.fit(crossed));
        }
        ModelData all = nested.withGroups("batch", sample.batches(200));
        time("cultivar, mother within, 200 batches of any mothers", mothers, () -> laplace.fit(all));
    }

    private static <T> T time(String what, int mothers, Supplier<T> job) {
        double[] seconds = new double[ROUNDS];
        T result = null;
        for (int round = 0; round < ROUNDS; round++) {
            long begin = System.nanoTime();
            result = job.get();
            seconds[round] = (System.nanoTime() - begin) / 1e9;
        }
        String outcome = result instanceof MixedFit fit ? fit.convergence() + " " + deviations(fit) : "";
        double first = seconds[0];
        Arrays.sort(seconds);
        System.out.printf(
                Locale.ROOT,
                "| %s | %d | %.2f | %.2f | %.2f | %s |%n",
                what,
                mothers,
                first,
                seconds[0],
                seconds[ROUNDS / 2],
                outcome);
        return result;
    }

    private static String deviations(MixedFit fit) {
        List<String> words = new ArrayList<>();
        fit.deviations()
                .forEach(deviation -> words.add(deviation.grouping() + " "
                        + deviation
                                .sd()
                                .map(sd -> String.format(Locale.ROOT, "%.3f", sd))
                                .orElse("–")));
        return String.join(", ", words);
    }

    /** Three rows for each mother: layers, cuttings, and cuttings of another year. */
    private static final class Sample {
        final long[] taken;
        final long[] known;
        final double[] cutting;
        final List<String> mother = new ArrayList<>();
        final List<String> cultivar = new ArrayList<>();
        final List<String> tray = new ArrayList<>();

        Sample(int mothers) {
            SplittableRandom random = new SplittableRandom(20261126);
            int rows = 3 * mothers;
            int cultivars = Math.max(4, mothers / 125);
            taken = new long[rows];
            known = new long[rows];
            cutting = new double[rows];
            double[] cultivarEffects = random.doubles(cultivars)
                    .map(each -> random.nextGaussian() * 0.6)
                    .toArray();
            double[] trayEffects = random.doubles(cultivars * 8L)
                    .map(each -> random.nextGaussian() * 0.4)
                    .toArray();
            for (int m = 0; m < mothers; m++) {
                int c = m % cultivars;
                double effect = cultivarEffects[c] + 0.8 * random.nextGaussian();
                for (int i = 0; i < 3; i++) {
                    int row = 3 * m + i;
                    int t = c * 8 + random.nextInt(8);
                    cutting[row] = i == 0 ? 0 : 1;
                    known[row] = 1 + random.nextInt(i == 0 ? 6 : 20);
                    double p = 1 / (1 + Math.exp(-(0.7 - 1.0 * cutting[row] + effect + trayEffects[t])));
                    for (long unit = 0; unit < known[row]; unit++) {
                        taken[row] += random.nextDouble() < p ? 1 : 0;
                    }
                    mother.add("M" + m);
                    cultivar.add("C" + c);
                    tray.add("T" + t);
                }
            }
        }

        List<String> batches(int count) {
            SplittableRandom random = new SplittableRandom(count);
            List<String> batches = new ArrayList<>();
            mother.forEach(row -> batches.add("B" + random.nextInt(count)));
            return batches;
        }

        void write(Path file) throws IOException {
            Files.createDirectories(file.toAbsolutePath().getParent());
            List<String> batch = batches(200);
            try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file, StandardCharsets.UTF_8))) {
                out.print("taken,known,cutting,mother,cultivar,tray,batch\n");
                for (int row = 0; row < taken.length; row++) {
                    out.print(taken[row] + "," + known[row] + "," + (int) cutting[row] + "," + mother.get(row) + ","
                            + cultivar.get(row) + "," + tray.get(row) + "," + batch.get(row) + "\n");
                }
            }
        }
    }
}
