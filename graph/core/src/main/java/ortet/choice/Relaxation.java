package ortet.choice;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * The plan with mothers divided at will: each follows a mixture of paths. Solved by column generation: a programme over the
 * paths found so far gives prices, at which each mother's best path is found, until none is better than those known.
 *
 * <p>Prices are taken between those of the programme and the best yet, which damps their swings (Wentges 1997). At any
 * prices, what the limits are worth and what each mother's best path is worth sum to a bound of every plan (Lagrange), so
 * the answer tells how far it is from the best even when it is stopped early.
 *
 * @see "Dantzig and Wolfe 1960, Operations Research 8:101"
 * @see "Wentges 1997, International Transactions in Operational Research 4:151"
 */
final class Relaxation implements AutoCloseable {
    private static final double DAMPING = 0.5;
    static final int MANY = 1500;

    /** What the relaxation says. */
    record Answer(double[] prices, double bound, double value, double[][] weights, boolean isDone) {}

    private final Paths paths;
    private final Layout layout;
    private final Programme programme;
    private final boolean large;
    private final MPConstraint[] mothers;
    private final List<List<MPVariable>> variables = new ArrayList<>();
    private double[] best;
    private double bound = Double.POSITIVE_INFINITY;

    Relaxation(Paths paths, double[] first) {
        this.paths = paths;
        this.layout = paths.layout;
        int size = paths.stocks.length;
        this.large = size > MANY;
        this.programme = new Programme(layout, large ? Programme.Kind.FIRST_ORDER : Programme.Kind.SIMPLEX);
        this.mothers = new MPConstraint[size];
        for (int at = 0; at < size; at++) {
            mothers[at] = programme.exactly(1);
            variables.add(new ArrayList<>());
            List<Path> known = new ArrayList<>(paths.found.get(at));
            paths.found.get(at).clear();
            add(at, paths.idle(at));
            for (Path path : known) {
                add(at, path);
            }
        }
        this.best = first;
    }

    private boolean add(int at, Path path) {
        if (paths.number(at, path) >= 0) {
            return false;
        }
        MPVariable variable = programme.variable(Double.POSITIVE_INFINITY, paths.column(at, path), false);
        mothers[at].setCoefficient(variable, 1);
        variables.get(at).add(variable);
        paths.found.get(at).add(path);
        return true;
    }

    private int addAll(Paths.Answer answer) {
        int added = 0;
        for (int at = 0; at < answer.paths().length; at++) {
            added += add(at, answer.paths()[at]) ? 1 : 0;
        }
        return added;
    }

    /** Price, and keep what was found. */
    private Paths.Answer price(double[] prices) {
        Paths.Answer answer = paths.best(prices);
        if (answer.bound() < bound) {
            bound = answer.bound();
            best = prices;
        }
        return answer;
    }

    Answer solve(double gap, BooleanSupplier isLate, ortet.book.Progress progress) {
        addAll(price(best));
        if (large) {
            descend(40, isLate);
        }
        double value = Double.NEGATIVE_INFINITY;
        boolean done = false;
        for (int round = 0; !done && !isLate.getAsBoolean(); round++) {
            if (!programme.solve(60, 0)) {
                throw new ortet.value.Defect("the relaxed plan has no solution: " + programme.status());
            }
            value = programme.value();
            double[] prices = programme.prices();
            double[] between = new double[prices.length];
            for (int row = 0; row < prices.length; row++) {
                between[row] = DAMPING * best[row] + (1 - DAMPING) * prices[row];
            }
            int added = addAll(price(between));
            added += addAll(price(prices));
            progress.at("pricing", round + 1, 0);
            done = added == 0 || bound - value <= gap * Math.max(1, Math.abs(bound));
        }
        double[][] weights = new double[mothers.length][];
        for (int at = 0; at < weights.length; at++) {
            List<MPVariable> list = variables.get(at);
            weights[at] = new double[list.size()];
            for (int i = 0; i < weights[at].length; i++) {
                weights[at][i] =
                        value == Double.NEGATIVE_INFINITY ? 0 : list.get(i).solutionValue();
            }
        }
        return new Answer(best, bound, value, weights, done);
    }

    /** Walk down the bound, step by step (Polyak's step to a target a little below), and keep the paths met on the way. */
    private void descend(int steps, BooleanSupplier isLate) {
        double[] prices = best.clone();
        double eagerness = 0.1;
        for (int step = 0; step < steps && !isLate.getAsBoolean(); step++) {
            double before = bound;
            Paths.Answer answer = price(prices);
            addAll(answer);
            if (answer.bound() > before - 1e-4 * Math.abs(before)) {
                eagerness *= 0.8;
            }
            double[] use = new double[layout.rows + layout.concentrations() * layout.years];
            for (int at = 0; at < answer.paths().length; at++) {
                Column column = paths.column(at, answer.paths()[at]);
                for (int i = 0; i < column.size; i++) {
                    use[column.rows[i]] += column.amounts[i];
                }
            }
            double[] slope = slope(use);
            double length = 0;
            for (int row = 0; row < layout.rows; row++) {
                double scale = scale(row);
                length += slope[row] * slope[row] * scale * scale;
            }
            if (length == 0) {
                return;
            }
            double stride = eagerness * Math.max(1, Math.abs(answer.bound())) / length;
            double[] next = prices.clone();
            for (int row = 0; row < layout.rows; row++) {
                double scale = scale(row);
                next[row] -= stride * slope[row] * scale * scale;
            }
            Priced.clip(layout, next);
            prices = next;
        }
    }

    private double scale(int row) {
        return 1 / Math.max(1, layout.available[row]);
    }

    /** Return by how much the bound grows with each price. */
    private double[] slope(double[] use) {
        double[] slope = Arrays.copyOf(use, layout.rows);
        for (int row = 0; row < layout.rows; row++) {
            slope[row] = layout.isSales(row) ? -use[row] - layout.available[row] : layout.available[row] - use[row];
        }
        for (int at = 0; at < layout.concentrations(); at++) {
            for (int year = 0; year < layout.years; year++) {
                for (int row : layout.shares(at, year)) {
                    slope[row] += layout.share(at) * use[layout.rows + at * layout.years + year];
                }
            }
        }
        return slope;
    }

    @Override
    public void close() {
        programme.close();
    }
}
