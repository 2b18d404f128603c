package ortet.yield;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ortet.figures.Clustered;
import ortet.figures.Count;
import ortet.nursery.Cohorts;

/**
 * Puts units that shared their luck into clusters: those of one tray, and those that one mother gave in one season. A tray
 * from several mothers puts all of them into one cluster; rows of one account are together anyhow. Where no mother is
 * known, a tray stands for itself, and what stood singly is one cluster for each season.
 */
final class Clusters {
    private static final int YEAR_BITS = 16;

    private final Samples samples;
    private final Cohorts cohorts;
    private final Fates fates;
    private final long[] keys;
    private final int[] parent;

    Clusters(Samples samples, Fates fates) {
        this.samples = samples;
        this.cohorts = samples.cohorts();
        this.fates = fates;
        long[] all = new long[16];
        int size = 0;
        for (int row = 0; row < cohorts.size(); row++) {
            if (samples.isThere(row)) {
                int mother = samples.mother(row);
                List<Integer> several = mother < 0 ? samples.several(mother) : List.of();
                int more = mother < 0 ? several.size() : 1;
                if (size + more > all.length) {
                    all = Arrays.copyOf(all, 2 * (size + more));
                }
                for (int at = 0; at < more; at++) {
                    all[size++] = key(mother < 0 ? several.get(at) : mother, samples.season(row));
                }
            }
        }
        long[] sorted = Arrays.copyOf(all, size);
        Arrays.sort(sorted);
        int distinct = 0;
        for (int at = 0; at < sorted.length; at++) {
            if (at == 0 || sorted[at] != sorted[at - 1]) {
                sorted[distinct++] = sorted[at];
            }
        }
        keys = Arrays.copyOf(sorted, distinct);
        parent = new int[cohorts.size() + keys.length];
        for (int node = 0; node < parent.length; node++) {
            parent[node] = node;
        }
    }

    private static long key(int mother, int season) {
        return (long) mother << YEAR_BITS | season & (1 << YEAR_BITS) - 1;
    }

    /** Tell whether something was taken from a mother in a season, by any method. */
    boolean isUsed(int mother, int season) {
        return Arrays.binarySearch(keys, key(mother, season)) >= 0;
    }

    /**
     * Return the sums of some rows by cluster.
     *
     * @param rows the rows of a side
     * @param yes how many of each did
     * @param known of how many it is known
     */
    Clustered of(int[] rows, int[] yes, int[] known) {
        for (int row : rows) {
            join(row);
        }
        Map<Integer, long[]> sums = new HashMap<>();
        for (int at = 0; at < rows.length; at++) {
            if (known[at] > 0) {
                long[] sum = sums.computeIfAbsent(root(rows[at]), root -> new long[2]);
                sum[0] += yes[at];
                sum[1] += known[at];
            }
        }
        for (int row : rows) {
            reset(row);
        }
        return Clustered.of(sums.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(entry -> new Count(entry.getValue()[0], entry.getValue()[1]))
                .toList());
    }

    private void join(int row) {
        union(row, fates.account(row));
        int mother = samples.mother(row);
        if (mother < 0) {
            for (int one : samples.several(mother)) {
                union(row, node(one, row));
            }
        } else if (mother > 0 || !samples.isBatch(row)) {
            union(row, node(mother, row));
        }
    }

    private void reset(int row) {
        parent[row] = row;
        parent[fates.account(row)] = fates.account(row);
        int mother = samples.mother(row);
        if (mother < 0) {
            for (int one : samples.several(mother)) {
                parent[node(one, row)] = node(one, row);
            }
        } else {
            parent[node(mother, row)] = node(mother, row);
        }
    }

    private int node(int mother, int row) {
        return cohorts.size() + Arrays.binarySearch(keys, key(mother, samples.season(row)));
    }

    private void union(int one, int other) {
        int a = root(one);
        int b = root(other);
        // the lower one stands for both, so that clusters come in the order of rows
        parent[Math.max(a, b)] = Math.min(a, b);
    }

    private int root(int node) {
        int at = node;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }
}
