package ortet.figures;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.ejml.data.DMatrixRMaj;

/**
 * The log-rank test that something happens in all groups at the same rate.
 *
 * <p>At each time at which it happened to d of n, a group with nₖ of them should have had dnₖ/n; observed less expected is
 * summed over time, with the variance of the multivariate hypergeometric distribution. The statistic has about the
 * chi-square distribution on groups − 1 degrees of freedom. A group to which nothing could have happened (nobody in it at
 * the time of any event) does not count and is named.
 *
 * @param groups in the order given, those that do not count included
 * @param silent groups that do not count
 * @param test absent with fewer than two groups that count, or when nothing happened
 * @see "Mantel 1966, Cancer Chemotherapy Reports 50:163"
 * @see "Kalbfleisch & Prentice 2002, The Statistical Analysis of Failure Time Data, section 1.5"
 */
public record LogRank(Map<String, Group> groups, List<String> silent, Optional<ChiSquare> test) {
    /**
     * One group.
     *
     * @param followed how many
     * @param observed to how many it happened
     * @param expected to how many it would have, at the rate of all together
     */
    public record Group(long followed, long observed, double expected) {}

    public LogRank {
        groups = Collections.unmodifiableMap(new LinkedHashMap<>(groups));
        silent = List.copyOf(silent);
        Objects.requireNonNull(test);
    }

    /**
     * Compare groups.
     *
     * @param groups by name, in the order in which they shall be told
     */
    public static LogRank of(Map<String, List<Followed>> groups) {
        List<String> names = new ArrayList<>(groups.keySet());
        int count = names.size();
        List<Followed> all = new ArrayList<>();
        List<TreeMap<Double, AtRisk.Moment>> byGroup = new ArrayList<>();
        for (String name : names) {
            all.addAll(groups.get(name));
            TreeMap<Double, AtRisk.Moment> moments = new TreeMap<>();
            AtRisk.moments(groups.get(name)).forEach(moment -> moments.put(moment.time(), moment));
            byGroup.add(moments);
        }
        double[] observed = new double[count];
        double[] expected = new double[count];
        double[][] variance = new double[count][count];
        for (AtRisk.Moment moment : AtRisk.moments(all)) {
            double d = moment.events();
            double n = moment.atRisk();
            if (d == 0) {
                continue;
            }
            double[] share = new double[count];
            for (int k = 0; k < count; k++) {
                Map.Entry<Double, AtRisk.Moment> next = byGroup.get(k).ceilingEntry(moment.time());
                if (next != null) {
                    share[k] = next.getValue().atRisk() / n;
                    observed[k] +=
                            next.getKey() == moment.time() ? next.getValue().events() : 0;
                }
                expected[k] += d * share[k];
            }
            if (n > 1) {
                double scale = d * ((n - d) / (n - 1));
                for (int j = 0; j < count; j++) {
                    for (int k = 0; k < count; k++) {
                        variance[j][k] += scale * share[j] * ((j == k ? 1 : 0) - share[k]);
                    }
                }
            }
        }
        Map<String, Group> told = new LinkedHashMap<>();
        List<String> silent = new ArrayList<>();
        List<Integer> counting = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            told.put(names.get(k), new Group(groups.get(names.get(k)).size(), (long) observed[k], expected[k]));
            if (variance[k][k] > 0) {
                counting.add(k);
            } else {
                silent.add(names.get(k));
            }
        }
        return new LogRank(told, silent, statistic(counting, observed, expected, variance));
    }

    private static Optional<ChiSquare> statistic(
            List<Integer> counting, double[] observed, double[] expected, double[][] variance) {
        int degrees = counting.size() - 1;
        if (degrees < 1) {
            return Optional.empty();
        }
        DMatrixRMaj spread = new DMatrixRMaj(degrees, degrees);
        double[] away = new double[degrees];
        for (int j = 0; j < degrees; j++) {
            int group = counting.get(j);
            away[j] = observed[group] - expected[group];
            for (int k = 0; k < degrees; k++) {
                spread.set(j, k, variance[group][counting.get(k)]);
            }
        }
        return Positive.of(spread, 1e-12).map(solver -> {
            double[] solved = solver.solve(away);
            double statistic = 0;
            for (int j = 0; j < degrees; j++) {
                statistic += away[j] * solved[j];
            }
            return new ChiSquare(Math.max(0, statistic), degrees);
        });
    }
}
