package ortet.figures;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import ortet.value.Defect;

/**
 * Draws of what a model says of its groups, all drawn together, on the scale of log odds at the average of the fixed columns:
 * draws with the same number belong together. Each draw has a generator of its own, seeded by the seed and its number.
 */
public final class GroupDraws {
    private final int draws;
    private final long seed;
    private final double[] fixed;
    private final Map<String, Grouping> groupings = new HashMap<>();

    /**
     * A grouping.
     *
     * @param groups by label, the sum of its intercept and of those around it, by draw
     * @param deviation by draw
     */
    private record Grouping(Map<String, double[]> groups, double[] deviation) {}

    private GroupDraws(int draws, long seed) {
        this.draws = draws;
        this.seed = seed;
        this.fixed = new double[draws];
    }

    /** What a grouping is made of: its labels, the intercepts of each group, and its number, or -1 when it was left out. */
    record Source(String name, List<String> labels, int[][] paths, int number) {}

    static GroupDraws of(Posterior posterior, double[] reference, List<Source> sources, int draws, long seed) {
        GroupDraws all = new GroupDraws(draws, seed);
        for (Source source : sources) {
            Map<String, double[]> groups = new HashMap<>();
            source.labels().forEach(label -> groups.put(label, new double[draws]));
            all.groupings.put(source.name(), new Grouping(groups, new double[draws]));
        }
        JointDraw joint = new JointDraw(posterior);
        for (int draw = 0; draw < draws; draw++) {
            joint.next(new SplittableRandom(Ranking.mixed(seed, draw)));
            all.fixed[draw] = joint.fixed(reference);
            for (Source source : sources) {
                Grouping grouping = all.groupings.get(source.name());
                grouping.deviation()[draw] = source.number() < 0 ? 0 : joint.deviation(source.number());
                for (int group = 0; group < source.paths().length; group++) {
                    double sum = 0;
                    for (int node : source.paths()[group]) {
                        sum += joint.intercept(node);
                    }
                    grouping.groups().get(source.labels().get(group))[draw] = sum;
                }
            }
        }
        return all;
    }

    /** Return how many draws there are. */
    public int draws() {
        return draws;
    }

    /** Tell whether the model has met a group. */
    public boolean knows(String grouping, String label) {
        return grouping(grouping).groups().containsKey(label);
    }

    /** Return the log odds of an average group. */
    public double[] average() {
        return fixed.clone();
    }

    /** Return the log odds of a group that the model has met. */
    public double[] of(String grouping, String label) {
        double[] sums = grouping(grouping).groups().get(label);
        if (sums == null) {
            throw new Defect("no group " + label + " of " + grouping);
        }
        return plus(fixed, sums);
    }

    /**
     * Return the intercepts of a group that the model has not met, drawn about 0.
     *
     * @param number tells such groups apart: the same number draws the same
     */
    public double[] unmet(String grouping, long number) {
        double[] deviation = grouping(grouping).deviation();
        double[] drawn = new double[draws];
        for (int draw = 0; draw < draws; draw++) {
            long own = Ranking.mixed(seed ^ Ranking.mixed(number + grouping.hashCode(), 0), draw);
            drawn[draw] = deviation[draw] * new SplittableRandom(own).nextGaussian();
        }
        return drawn;
    }

    /** Return the sums of draws that belong together. */
    public static double[] plus(double[] some, double[] others) {
        double[] sums = some.clone();
        Arrays.setAll(sums, draw -> some[draw] + others[draw]);
        return sums;
    }

    private Grouping grouping(String name) {
        Grouping grouping = groupings.get(name);
        if (grouping == null) {
            throw new Defect("no grouping " + name);
        }
        return grouping;
    }
}
