package ortet.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import ortet.book.Progress;

/**
 * The relaxed plan of a large nursery: prices are raised where more is used than there is and lowered where less is, by steps
 * that shrink, and the mean of the late prices is taken. How often each mother took a path in the late steps is near its
 * weight in the relaxed plan; at any prices the bound holds.
 *
 * @see "Held, Wolfe and Crowder 1974, Mathematical Programming 6:62 (subgradient steps)"
 * @see "Barahona and Anbil 2000, Mathematical Programming 87:385 (weights from the steps)"
 */
final class Descent {
    private static final double LAST = 0.01;

    private final Paths paths;
    private final Layout layout;
    private double bound = Double.POSITIVE_INFINITY;
    private double[] best;

    Descent(Paths paths, double[] first) {
        this.paths = paths;
        this.layout = paths.layout;
        this.best = first.clone();
    }

    /**
     * Go down.
     *
     * @param steps how many
     * @param begin by what share of their range prices move at first; less where the first prices are good already
     */
    Relaxation.Answer solve(int steps, double begin, Deadline late, Progress progress) {
        double[] prices = best.clone();
        double[] mean = new double[prices.length];
        double sum = 0;
        int size = paths.stocks.length;
        List<double[]> weights = new ArrayList<>();
        for (int at = 0; at < size; at++) {
            paths.found.get(at).clear();
            paths.found.get(at).add(paths.idle(at));
            weights.add(new double[] {0});
        }
        for (int step = 0; step < steps && (step == 0 || !late.isOver()); step++) {
            double eagerness = begin * Math.pow(LAST / begin, (double) step / steps);
            Paths.Answer answer = price(prices);
            if (step >= steps / 2) {
                sum++;
                for (int row = 0; row < mean.length; row++) {
                    mean[row] += prices[row];
                }
                for (int at = 0; at < size; at++) {
                    count(at, answer.paths()[at], weights);
                }
            }
            progress.at("pricing", step + 1, steps);
            prices = next(prices, answer.use(), eagerness, answer.bound());
        }
        if (sum > 0) {
            for (int row = 0; row < mean.length; row++) {
                mean[row] /= sum;
            }
            Paths.Answer answer = price(mean);
            for (int at = 0; at < size; at++) {
                count(at, answer.paths()[at], weights);
            }
        }
        return new Relaxation.Answer(best, bound, Double.NaN, weights.toArray(double[][]::new), false);
    }

    /** Go down from prices that are good already, and return the best met; no paths are kept. */
    double[] prices(int steps, double begin, Deadline late) {
        double[] prices = best.clone();
        double[] mean = new double[prices.length];
        int from = steps / 2;
        for (int step = 0; step < steps && !late.isOver(); step++) {
            Paths.Answer answer = price(prices);
            for (int row = 0; row < mean.length && step >= from; row++) {
                mean[row] += prices[row] / (steps - from);
            }
            prices = next(prices, answer.use(), begin * Math.pow(LAST / begin, (double) step / steps), answer.bound());
        }
        if (!late.isOver()) {
            price(mean);
        }
        return best.clone();
    }

    private void count(int at, Path path, List<double[]> weights) {
        int number = paths.number(at, path);
        double[] mine = weights.get(at);
        if (number < 0) {
            number = mine.length;
            paths.found.get(at).add(path);
            mine = Arrays.copyOf(mine, number + 1);
            weights.set(at, mine);
        }
        mine[number]++;
    }

    private Paths.Answer price(double[] prices) {
        Paths.Answer answer = paths.best(prices);
        if (answer.bound() < bound) {
            bound = answer.bound();
            best = prices.clone();
        }
        return answer;
    }

    /** Return prices moved by the share by which use misses what there is. */
    private double[] next(double[] prices, double[] use, double eagerness, double worth) {
        double[] next = prices.clone();
        double each = Math.abs(worth) / layout.seasons / layout.years;
        for (int row = 0; row < layout.rows; row++) {
            double available = Math.max(1, layout.available[row]);
            if (layout.isSales(row)) {
                double missing = (layout.available[row] + use[row]) / available;
                next[row] += eagerness * layout.most[row] * Math.max(-1, Math.min(1, missing));
            } else if (layout.isShare(row)) {
                int concentration = layout.concentrationOf(row);
                double total = use[
                        layout.rows
                                + concentration * layout.years
                                + layout.resource(row).year()];
                double over = total == 0 ? 0 : use[row] / (layout.share(concentration) * total) - 1;
                next[row] += eagerness * layout.dearest * 0.1 * Math.max(-1, Math.min(1, over));
            } else {
                double over = (use[row] - layout.available[row]) / available;
                next[row] += eagerness * 0.2 * each / available * Math.max(-1, Math.min(1, over));
            }
        }
        Priced.clip(layout, next);
        return next;
    }
}
