package ortet.decade;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.TDistribution;

/** Puts results into tables. */
final class Summary {
    private static final List<List<Player>> RIVALS = List.of(
            List.of(Player.PERCENTAGE_KEEP, Player.PERCENTAGE_SELL),
            List.of(Player.SMOOTHED_KEEP, Player.SMOOTHED_SELL),
            List.of(Player.THICKEST_KEEP, Player.THICKEST_SELL),
            List.of(Player.AS_BEFORE));

    private static final Set<Player> ALL = EnumSet.complementOf(EnumSet.of(Player.KNOWING));

    private Summary() {}

    /** Return the tables of the lines of a file of results, of the nurseries that all have played. */
    static String of(List<String> lines) {
        Map<World, Map<Integer, Map<Player, Double>>> margins = new EnumMap<>(World.class);
        for (String line : lines.subList(1, lines.size())) {
            String[] fields = line.split(",");
            margins.computeIfAbsent(World.valueOf(fields[0]), key -> new TreeMap<>())
                    .computeIfAbsent(Integer.valueOf(fields[1]), key -> new EnumMap<>(Player.class))
                    .put(Player.valueOf(fields[2]), Double.valueOf(fields[3]));
        }
        margins.values()
                .forEach(all -> all.values().removeIf(one -> !one.keySet().containsAll(ALL)));
        StringBuilder text = new StringBuilder("| world | nurseries | advice | best percentage | smoothed | thickest"
                + " | as before |\n|---|---|---|---|---|---|---|\n");
        List<List<Double>> total = new ArrayList<>();
        RIVALS.forEach(one -> total.add(new ArrayList<>()));
        List<double[]> everywhere = new ArrayList<>();
        StringBuilder differences = new StringBuilder("\n| world | to best percentage | ahead | to smoothed | ahead"
                + " | to thickest | ahead | to as before |\n|---|---|---|---|---|---|---|---|\n");
        StringBuilder behind = new StringBuilder("\n| world | nursery | advice | behind the best rival, in hindsight"
                + " | which | by |\n|---|---|---|---|---|---|\n");
        List<double[]> marks = new ArrayList<>();
        for (World world : World.values()) {
            List<Map<Player, Double>> all =
                    List.copyOf(margins.getOrDefault(world, Map.of()).values());
            if (all.isEmpty()) {
                continue;
            }
            List<List<Double>> here = new ArrayList<>();
            double[] means = new double[RIVALS.size() + 1];
            all.forEach(one -> everywhere.add(new double[RIVALS.size() + 1]));
            for (int rival = 0; rival < RIVALS.size(); rival++) {
                Player better = better(RIVALS.get(rival), all);
                means[rival + 1] = mean(all, better);
                List<Double> ahead = all.stream()
                        .map(one -> one.get(Player.ADVICE) - one.get(better))
                        .toList();
                here.add(ahead);
                total.get(rival).addAll(ahead);
                for (int at = 0; at < all.size(); at++) {
                    double[] row = everywhere.get(everywhere.size() - all.size() + at);
                    row[0] = all.get(at).get(Player.ADVICE);
                    row[rival + 1] = all.get(at).get(better);
                }
            }
            means[0] = mean(all, Player.ADVICE);
            Player percentage = better(RIVALS.get(0), all);
            margins.get(world).forEach((nursery, one) -> {
                behind(behind, world, nursery, one);
                if (one.containsKey(Player.KNOWING)) {
                    marks.add(new double[] {one.get(percentage), one.get(Player.ADVICE), one.get(Player.KNOWING)});
                }
            });
            row(text, world.words(), all.size(), means);
            compared(differences, world.words(), here);
        }
        double[] means = new double[RIVALS.size() + 1];
        for (int at = 0; at < means.length; at++) {
            int column = at;
            means[at] = everywhere.stream()
                    .mapToDouble(row -> row[column])
                    .average()
                    .orElse(0);
        }
        row(text, "**all**", everywhere.size(), means);
        compared(differences, "**all**", total);
        double[] mark = new double[3];
        marks.forEach(one -> {
            for (int at = 0; at < mark.length; at++) {
                mark[at] += one[at] / marks.size();
            }
        });
        text.append(differences)
                .append(String.format(
                        Locale.ROOT,
                        "%nIn the %d nurseries in which one who knows plays: best percentage %,.0f, advice %,.0f, one who knows"
                                + " %,.0f.%n",
                        marks.size(),
                        mark[0],
                        mark[1],
                        mark[2]));
        return text.append(behind).toString();
    }

    /** Tell of a nursery in which somebody else was ahead. */
    private static void behind(StringBuilder text, World world, int nursery, Map<Player, Double> one) {
        Player best = ALL.stream().max(Comparator.comparingDouble(one::get)).orElseThrow();
        if (best != Player.ADVICE) {
            text.append(String.format(
                    Locale.ROOT,
                    "| %s | %d | %,.0f | %,.0f | %s | %.0f %% |%n",
                    world.words(),
                    nursery,
                    one.get(Player.ADVICE),
                    one.get(Player.ADVICE) - one.get(best),
                    best.words(),
                    100 * (one.get(best) - one.get(Player.ADVICE)) / Math.max(1, Math.abs(one.get(best)))));
        }
    }

    private static Player better(List<Player> variants, List<Map<Player, Double>> all) {
        return variants.stream()
                .max(Comparator.comparingDouble(one -> mean(all, one)))
                .orElseThrow();
    }

    private static double mean(List<Map<Player, Double>> all, Player player) {
        return all.stream().mapToDouble(one -> one.get(player)).average().orElse(0);
    }

    private static void row(StringBuilder text, String name, int nurseries, double[] means) {
        text.append(String.format(Locale.ROOT, "| %s | %d |", name, nurseries));
        for (double mean : means) {
            text.append(String.format(Locale.ROOT, " %,.0f |", mean));
        }
        text.append('\n');
    }

    private static void compared(StringBuilder text, String name, List<List<Double>> rivals) {
        text.append(String.format("| %s |", name));
        for (int rival = 0; rival < rivals.size(); rival++) {
            List<Double> ahead = rivals.get(rival);
            double mean = ahead.stream().mapToDouble(one -> one).average().orElse(0);
            double half = half(ahead, mean);
            text.append(String.format(Locale.ROOT, " %+,.0f (%+,.0f to %+,.0f) |", mean, mean - half, mean + half));
            if (rival < 3) {
                text.append(String.format(
                        Locale.ROOT,
                        " %d of %d |",
                        ahead.stream().filter(one -> one > 0).count(),
                        ahead.size()));
            }
        }
        text.append('\n');
    }

    /** Return half the width of the interval of Student's t at 95 %; none of fewer than two. */
    private static double half(List<Double> all, double mean) {
        int count = all.size();
        if (count < 2) {
            return Double.NaN;
        }
        double squares =
                all.stream().mapToDouble(one -> (one - mean) * (one - mean)).sum();
        return TDistribution.of(count - 1).inverseCumulativeProbability(0.975)
                * Math.sqrt(squares / (count - 1) / count);
    }
}
