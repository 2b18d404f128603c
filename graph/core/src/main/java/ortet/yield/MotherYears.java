package ortet.yield;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import ortet.figures.ClusteredRatio;
import ortet.nursery.Lives;
import ortet.nursery.Turn;

/**
 * Counts the mother-years that went into a side: for each mother the years in which something was taken from her for it,
 * and those between the first and the last of them in which she stood as stock and nothing at all was taken from her.
 */
final class MotherYears {
    private final Samples samples;
    private final Clusters clusters;
    private final Lives lives;

    MotherYears(Samples samples, Clusters clusters) {
        this.samples = samples;
        this.clusters = clusters;
        this.lives = samples.snapshot().lives();
    }

    int count(int[] rows) {
        return counts(rows).values().stream().mapToInt(Integer::intValue).sum();
    }

    /**
     * Return what each mother gave for the years that went into it. Mothers that stood in one tray are one cluster, for
     * nobody can tell what is whose.
     *
     * @param rows the rows of a side
     * @param given how many came of each of them; counted where a mother is known
     */
    ClusteredRatio ratio(int[] rows, int[] given) {
        Map<Integer, Integer> years = counts(rows);
        Map<Integer, Integer> first = new HashMap<>();
        for (int row : rows) {
            List<Integer> mothers = mothers(row);
            for (int one : mothers) {
                join(first, mothers.get(0), one);
            }
        }
        Map<Integer, long[]> sums = new TreeMap<>();
        years.forEach((mother, count) -> sums.computeIfAbsent(root(first, mother), one -> new long[2])[1] += count);
        for (int at = 0; at < rows.length; at++) {
            List<Integer> mothers = mothers(rows[at]);
            if (!mothers.isEmpty() && sums.containsKey(root(first, mothers.get(0)))) {
                sums.get(root(first, mothers.get(0)))[0] += given[at];
            }
        }
        return ClusteredRatio.of(sums.values().stream()
                .map(sum -> new ClusteredRatio.Part(sum[0], sum[1]))
                .toList());
    }

    private static int root(Map<Integer, Integer> first, int mother) {
        int at = mother;
        while (first.getOrDefault(at, at) != at) {
            at = first.get(at);
        }
        return at;
    }

    private static void join(Map<Integer, Integer> first, int one, int other) {
        int a = root(first, one);
        int b = root(first, other);
        first.put(Math.max(a, b), Math.min(a, b));
    }

    private List<Integer> mothers(int row) {
        int mother = samples.mother(row);
        if (mother == 0) {
            return List.of();
        }
        return mother > 0 ? List.of(mother) : samples.several(mother);
    }

    /** Return the years of each mother. */
    private Map<Integer, Integer> counts(int[] rows) {
        Map<Integer, TreeSet<Integer>> years = new TreeMap<>();
        for (int row : rows) {
            if (samples.set(row) > 0) {
                mothers(row)
                        .forEach(mother -> years.computeIfAbsent(mother, one -> new TreeSet<>())
                                .add(samples.season(row)));
            }
        }
        Map<Integer, Integer> counts = new TreeMap<>();
        for (Map.Entry<Integer, TreeSet<Integer>> one : years.entrySet()) {
            int count = one.getValue().size();
            for (int year = one.getValue().first() + 1; year < one.getValue().last(); year++) {
                if (!clusters.isUsed(one.getKey(), year) && isStock(one.getKey(), year)) {
                    count++;
                }
            }
            counts.put(one.getKey(), count);
        }
        return counts;
    }

    /** Tell whether a plant stood as stock on some day of a year. */
    private boolean isStock(int unit, int year) {
        int first = Math.toIntExact(LocalDate.of(year, 1, 1).toEpochDay());
        int last = Math.toIntExact(LocalDate.of(year, 12, 31).toEpochDay());
        boolean stock = false;
        for (int at = lives.first(unit); at < lives.end(unit) && lives.day(at) <= last; at++) {
            boolean ends = lives.turn(at) == Turn.NO_STOCK;
            if (lives.turn(at) == Turn.STOCK) {
                stock = true;
            } else if (ends && stock && lives.day(at) >= first) {
                return true;
            } else if (ends) {
                stock = false;
            }
        }
        return stock;
    }
}
