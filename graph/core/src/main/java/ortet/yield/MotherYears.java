package ortet.yield;

import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
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
        Map<Integer, TreeSet<Integer>> years = new TreeMap<>();
        for (int row : rows) {
            int mother = samples.mother(row);
            if (samples.set(row) <= 0 || mother == 0) {
                continue;
            }
            if (mother > 0) {
                add(years, mother, row);
            } else {
                samples.several(mother).forEach(one -> add(years, one, row));
            }
        }
        int count = 0;
        for (Map.Entry<Integer, TreeSet<Integer>> one : years.entrySet()) {
            count += one.getValue().size();
            for (int year = one.getValue().first() + 1; year < one.getValue().last(); year++) {
                if (!clusters.isUsed(one.getKey(), year) && isStock(one.getKey(), year)) {
                    count++;
                }
            }
        }
        return count;
    }

    private void add(Map<Integer, TreeSet<Integer>> years, int mother, int row) {
        years.computeIfAbsent(mother, one -> new TreeSet<>()).add(samples.season(row));
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
