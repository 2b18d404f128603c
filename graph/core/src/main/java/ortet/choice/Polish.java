package ortet.choice;

import java.util.Arrays;

/**
 * Betters a plan mother by mother: each in turn takes that of the paths known for her which, with the numbers set on it
 * fitted to what is still asked for, adds most to the plan as it then stands; until no mother gains by another path. What
 * breaks a right or a share counts as dearly as an overrun, so that a plan that breaks some mends itself.
 */
final class Polish {
    private static final double ROUNDING = 1e-9;

    private final Paths paths;
    private final Layout layout;
    private final Path[] plan;
    private final double[] use;
    private final int[] touched;
    private final double[] change;
    private final boolean[] isTouched;
    /** By mother: what her path brings and uses of the rows that have a say. */
    private final Column[] columns;

    private Fitted best;
    private double most;

    Polish(Paths paths, Path[] begin) {
        this.paths = paths;
        this.layout = paths.layout;
        this.plan = begin.clone();
        int size = layout.rows + layout.concentrations() * layout.years;
        this.use = new double[size];
        this.touched = new int[size];
        this.change = new double[size];
        this.isTouched = new boolean[size];
        this.columns = new Column[plan.length];
        for (int at = 0; at < plan.length; at++) {
            columns[at] = paths.column(at, plan[at]).only(paths.rows);
            add(columns[at], 1);
        }
    }

    /** Better the plan, each mother so often at most. */
    Path[] run(int rounds) {
        boolean betters = true;
        for (int round = 0; betters && round < rounds; round++) {
            betters = false;
            for (int at = 0; at < plan.length; at++) {
                betters |= better(at);
            }
        }
        return plan.clone();
    }

    private boolean better(int at) {
        add(columns[at], -1);
        double now = gain(columns[at], 1);
        best = new Fitted(plan[at], columns[at]);
        most = now + ROUNDING * Math.max(1, Math.abs(now));
        tryOut(at, plan[at], columns[at]);
        for (Path known : paths.found.get(at)) {
            tryOut(at, known, paths.kept(at, known));
        }
        boolean betters = best.path() != plan[at];
        plan[at] = best.path();
        columns[at] = best.column();
        add(columns[at], 1);
        return betters;
    }

    private void tryOut(int at, Path path, Column column) {
        Fitted fitted = fitted(at, path, column);
        double worth = gain(fitted.column(), 1);
        if (worth > most) {
            most = worth;
            best = fitted;
        }
    }

    /** A path with numbers that fit the plan as it stands, and what it brings and uses. */
    private record Fitted(Path path, Column column) {}

    /**
     * Return a path with other numbers set on it: each in turn as many as add most. What a number adds is concave in it, so
     * it is found by halving. The use is left as it was.
     */
    private Fitted fitted(int at, Path path, Column column) {
        if (path.sets().length == 0) {
            return new Fitted(path, column);
        }
        Stock stock = paths.stocks[at];
        int[] sets = path.sets().clone();
        add(column, 1);
        int[] wood = new int[stock.bands + 1];
        Column other = column;
        for (int i = 0; i < sets.length; i += Path.WIDTH) {
            int year = sets[i];
            Shape.Arc arc = stock.shape.arcs(year, path.states()[year])[path.arcs()[year]];
            if (arc.deed() == Deed.TRY_OUT) {
                continue;
            }
            stock.wood(year, arc, paths.woodFactors[at], wood);
            int band = sets[i + 1];
            int room = wood[band];
            int others = 0;
            for (int j = 0; j < sets.length; j += Path.WIDTH) {
                if (j != i && sets[j] == year) {
                    others += sets[j + 3];
                    room -= sets[j + 1] == band ? sets[j + 3] : 0;
                }
            }
            Column unit = paths.unit(at, year, band, sets[i + 2]);
            add(unit, -sets[i + 3]);
            int count = best(unit, others > 0 ? 0 : 1, room);
            add(unit, count);
            if (count != sets[i + 3]) {
                if (other == column) {
                    other = new Column();
                    other.add(column, 1);
                }
                other.add(unit, count - sets[i + 3]);
                sets[i + 3] = count;
            }
        }
        add(other, -1);
        if (other == column) {
            return new Fitted(path, column);
        }
        return new Fitted(new Path(path.states(), path.arcs(), without(sets)), other.only(paths.rows));
    }

    /** Return how many units add most. */
    private int best(Column unit, int least, int most) {
        int low = least;
        int high = most;
        while (low < high) {
            int middle = (low + high) / 2;
            if (gain(unit, middle + 1) > gain(unit, middle) + ROUNDING) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static int[] without(int[] sets) {
        int[] some = new int[sets.length];
        int size = 0;
        for (int i = 0; i < sets.length; i += Path.WIDTH) {
            if (sets[i + 3] > 0) {
                System.arraycopy(sets, i, some, size, Path.WIDTH);
                size += Path.WIDTH;
            }
        }
        return Arrays.copyOf(some, size);
    }

    private void add(Column column, double often) {
        for (int i = 0; i < column.size; i++) {
            use[column.rows[i]] += often * column.amounts[i];
        }
    }

    /** Return what so much of a column would add. */
    private double gain(Column column, double often) {
        int count = 0;
        for (int i = 0; i < column.size; i++) {
            int row = column.rows[i];
            if (!isTouched[row]) {
                isTouched[row] = true;
                touched[count++] = row;
            }
            change[row] += often * column.amounts[i];
        }
        double gain = column.money * often;
        for (int i = 0; i < count; i++) {
            int row = touched[i];
            if (row >= layout.rows) {
                gain += shares(row, change[row]);
            } else if (!layout.isShare(row)) {
                gain += worth(row, use[row] + change[row]) - worth(row, use[row]);
            }
        }
        for (int i = 0; i < count; i++) {
            change[touched[i]] = 0;
            isTouched[touched[i]] = false;
        }
        return gain;
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
