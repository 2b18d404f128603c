package ortet.choice;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;

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

    /** What the relaxation says. */
    record Answer(double[] prices, double bound, double value, double[][] weights, boolean isDone) {}

    private final Paths paths;
    private final Layout layout;
    private final Programme programme;
    private final MPConstraint[] mothers;
    private final List<List<MPVariable>> variables = new ArrayList<>();
    private double[] best;
    private double bound = Double.POSITIVE_INFINITY;

    Relaxation(Paths paths, double[] first) {
        this.paths = paths;
        this.layout = paths.layout;
        int size = paths.stocks.length;
        this.programme = new Programme(paths, Programme.Kind.SIMPLEX, true);
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

    Answer solve(double gap, Deadline late, ortet.book.Progress progress) {
        addAll(price(best));
        double value = Double.NEGATIVE_INFINITY;
        double[][] weights = new double[mothers.length][0];
        boolean done = false;
        for (int round = 0; !done && !late.isOver(); round++) {
            if (!programme.solve(late.seconds(), 0, 0)) {
                break; // the prices known so far still give a bound, and the paths a plan
            }
            value = programme.value();
            weights = weights();
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
        return new Answer(best, bound, value, weights, done);
    }

    private double[][] weights() {
        double[][] weights = new double[mothers.length][];
        for (int at = 0; at < weights.length; at++) {
            weights[at] = variables.get(at).stream()
                    .mapToDouble(MPVariable::solutionValue)
                    .toArray();
        }
        return weights;
    }

    @Override
    public void close() {
        programme.close();
    }
}
