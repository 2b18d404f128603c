package ortet.figures;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.value.Defect;
import ortet.value.Refused;

/**
 * What a {@link MixedModel} is fitted to: counts, one row each, with the columns that may explain them and the groups they
 * belong to. Immutable; every {@code with} returns new data.
 *
 * <p>A model has an intercept unless {@link #withoutIntercept} is called. Rows that agree in every column and group may be
 * given apart or added up: the fit is the same but for the binomial coefficients in the log-likelihood.
 */
public final class ModelData {
    /** The name of the column of ones. */
    public static final String INTERCEPT = "(Intercept)";

    final double[] successes;
    final double[] trials;
    final List<Column> columns;
    final List<Groups> groupings;

    private ModelData(double[] successes, double[] trials, List<Column> columns, List<Groups> groupings) {
        this.successes = successes;
        this.trials = trials;
        this.columns = List.copyOf(columns);
        this.groupings = List.copyOf(groupings);
    }

    /** A fixed column. */
    record Column(String name, double[] values) {}

    /** The groups of one random intercept: the label of each group, and the group of each row. */
    record Groups(String name, Optional<String> within, List<String> labels, int[] of) {}

    /**
     * Begin with counts and an intercept.
     *
     * @param successes of each row, at least 0 and at most the trials
     * @param trials of each row, at least 0; a row of 0 trials tells nothing, but its groups are known
     */
    public static ModelData of(long[] successes, long[] trials) {
        if (successes.length != trials.length) {
            throw new Defect(successes.length + " successes for " + trials.length + " trials");
        }
        double[] taken = new double[trials.length];
        double[] known = new double[trials.length];
        for (int row = 0; row < trials.length; row++) {
            Count count = new Count(successes[row], trials[row]);
            taken[row] = count.successes();
            known[row] = count.trials();
        }
        double[] ones = new double[trials.length];
        Arrays.fill(ones, 1);
        return new ModelData(taken, known, List.of(new Column(INTERCEPT, ones)), List.of());
    }

    /** Return how many rows there are. */
    public int rows() {
        return trials.length;
    }

    /** Return the names of the fixed columns, in order. */
    public List<String> columns() {
        return columns.stream().map(Column::name).toList();
    }

    /** Return the names of the groupings, in order. */
    public List<String> groupings() {
        return groupings.stream().map(Groups::name).toList();
    }

    /** Return the same data without the column of ones. */
    public ModelData withoutIntercept() {
        return new ModelData(
                successes,
                trials,
                columns.stream()
                        .filter(column -> !column.name().equals(INTERCEPT))
                        .toList(),
                groupings);
    }

    /**
     * Add a fixed column.
     *
     * @param values one finite number for each row
     */
    public ModelData withColumn(String name, double[] values) {
        requireRows(name, values.length);
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new Defect("column " + name + " holds " + value);
            }
        }
        if (columns().contains(name)) {
            throw Refused.because("same-column", "there are two columns " + name);
        }
        List<Column> more = new ArrayList<>(columns);
        more.add(new Column(name, values.clone()));
        return new ModelData(successes, trials, more, groupings);
    }

    /**
     * Add a factor: for every level but the first that occurs, a column that is 1 where a row has it and 0 elsewhere. Each
     * column bears the factor's name and the level's.
     *
     * @param levels one for each row
     */
    public ModelData withFactor(String name, List<String> levels) {
        requireRows(name, levels.size());
        Groups groups = groups(name, Optional.empty(), levels);
        ModelData data = this;
        for (int level = 1; level < groups.labels().size(); level++) {
            double[] values = new double[levels.size()];
            for (int row = 0; row < values.length; row++) {
                values[row] = groups.of()[row] == level ? 1 : 0;
            }
            data = data.withColumn(name + " " + groups.labels().get(level), values);
        }
        return data;
    }

    /**
     * Add a grouping: each of its groups has a random intercept of its own.
     *
     * @param labels the group of each row
     */
    public ModelData withGroups(String name, List<String> labels) {
        requireRows(name, labels.size());
        return with(groups(name, Optional.empty(), labels));
    }

    /**
     * Add a grouping that is nested in one already there: its groups are told apart by their label and by the outer group,
     * and what is said of one of them includes what is known of its outer group.
     *
     * @param outer the name of a grouping already added
     * @param labels the group of each row
     */
    public ModelData withGroupsWithin(String name, String outer, List<String> labels) {
        requireRows(name, labels.size());
        Groups around = grouping(outer);
        // Labels that occur in one outer group alone stay as they are.
        Map<String, Integer> first = new LinkedHashMap<>();
        boolean[] ambiguous = {false};
        for (int row = 0; row < labels.size(); row++) {
            Integer other = first.putIfAbsent(labels.get(row), around.of()[row]);
            ambiguous[0] |= other != null && other != around.of()[row];
        }
        List<String> full = new ArrayList<>(labels);
        if (ambiguous[0]) {
            for (int row = 0; row < full.size(); row++) {
                full.set(row, around.labels().get(around.of()[row]) + "/" + labels.get(row));
            }
        }
        return with(groups(name, Optional.of(outer), full));
    }

    Groups grouping(String name) {
        return groupings.stream()
                .filter(groups -> groups.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Defect("no grouping " + name));
    }

    private ModelData with(Groups groups) {
        if (groupings().contains(groups.name())) {
            throw Refused.because("same-grouping", "there are two groupings " + groups.name());
        }
        List<Groups> more = new ArrayList<>(groupings);
        more.add(groups);
        return new ModelData(successes, trials, columns, more);
    }

    private void requireRows(String name, int length) {
        if (length != trials.length) {
            throw new Defect(name + " has " + length + " values for " + trials.length + " rows");
        }
    }

    private static Groups groups(String name, Optional<String> within, List<String> labels) {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        int[] of = new int[labels.size()];
        int row = 0;
        for (String label : labels) {
            Integer number = numbers.get(label);
            if (number == null) {
                number = numbers.size();
                numbers.put(label, number);
            }
            of[row++] = number;
        }
        return new Groups(name, within, List.copyOf(numbers.keySet()), of);
    }
}
