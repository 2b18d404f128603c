package ortet.choice;

import java.util.List;

/**
 * Betters a plan mother by mother: each in turn takes that of the paths known for her which adds most to the plan as it then
 * stands, until no mother gains by another path. What breaks a right or a share counts as dearly as an overrun, so that a
 * plan that breaks some mends itself.
 */
final class Polish {
    private static final int MOST_ROUNDS = 30;
    private static final double ROUNDING = 1e-9;

    private final Paths paths;
    private final Layout layout;
    private final Column[][] columns;
    private final double[] use;
    private final int[] chosen;
    private final int[] touched;
    private final double[] change;
    private final boolean[] isTouched;

    Polish(Paths paths, int[] chosen) {
        this.paths = paths;
        this.layout = paths.layout;
        this.chosen = chosen.clone();
        this.columns = new Column[chosen.length][];
        int size = layout.rows + layout.concentrations() * layout.years;
        this.use = new double[size];
        this.touched = new int[size];
        this.change = new double[size];
        this.isTouched = new boolean[size];
        for (int at = 0; at < chosen.length; at++) {
            List<Path> known = paths.found.get(at);
            columns[at] = new Column[known.size()];
            for (int i = 0; i < columns[at].length; i++) {
                columns[at][i] = paths.column(at, known.get(i));
            }
            Column column = columns[at][chosen[at]];
            for (int i = 0; i < column.size; i++) {
                use[column.rows[i]] += column.amounts[i];
            }
        }
    }

    /** Better the plan; return the number of the path of each mother. */
    int[] run() {
        boolean betters = true;
        for (int round = 0; betters && round < MOST_ROUNDS; round++) {
            betters = false;
            for (int at = 0; at < chosen.length; at++) {
                betters |= better(at);
            }
        }
        return chosen.clone();
    }

    private boolean better(int at) {
        int best = chosen[at];
        double most = ROUNDING;
        for (int i = 0; i < columns[at].length; i++) {
            if (i != chosen[at]) {
                double gain = gain(columns[at][chosen[at]], columns[at][i]);
                if (gain > most) {
                    most = gain;
                    best = i;
                }
            }
        }
        if (best == chosen[at]) {
            return false;
        }
        add(columns[at][chosen[at]], -1);
        add(columns[at][best], 1);
        chosen[at] = best;
        return true;
    }

    private void add(Column column, int sign) {
        for (int i = 0; i < column.size; i++) {
            use[column.rows[i]] += sign * column.amounts[i];
        }
    }

    private double gain(Column from, Column to) {
        int count = 0;
        count = note(from, -1, count);
        count = note(to, 1, count);
        double gain = to.money - from.money;
        for (int i = 0; i < count; i++) {
            int row = touched[i];
            if (row < layout.rows) {
                if (!layout.isShare(row)) {
                    gain += worth(row, use[row] + change[row]) - worth(row, use[row]);
                }
            } else {
                gain += shares(row, change[row]);
            }
        }
        for (int i = 0; i < count; i++) {
            change[touched[i]] = 0;
            isTouched[touched[i]] = false;
        }
        return gain;
    }

    /** Note what changes by row; a total always comes with its groups, so those are seen to there. */
    private int note(Column column, int sign, int before) {
        int count = before;
        for (int i = 0; i < column.size; i++) {
            int row = column.rows[i];
            if (!isTouched[row]) {
                isTouched[row] = true;
                touched[count++] = row;
            }
            change[row] += sign * column.amounts[i];
        }
        return count;
    }

    private double worth(int row, double used) {
        double available = layout.available[row];
        if (layout.isSales(row)) {
            double sold = Math.min(-used, available);
            return layout.most[row] * sold + layout.least[row] * (-used - sold);
        }
        return -layout.overrun * Math.max(0, used - available - ROUNDING * Math.max(1, available));
    }

    private double shares(int total, double changed) {
        int concentration = (total - layout.rows) / layout.years;
        double share = layout.share(concentration);
        double gain = 0;
        for (int row : layout.shares(concentration, (total - layout.rows) % layout.years)) {
            double before = use[row] - share * use[total];
            double after = before + change[row] - share * changed;
            gain -= layout.overrun * (Math.max(0, after - ROUNDING) - Math.max(0, before - ROUNDING));
        }
        return gain;
    }
}
