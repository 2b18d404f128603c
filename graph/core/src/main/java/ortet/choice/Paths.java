package ortet.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** All mothers, what each draw or the plan makes of them, and the paths that have been found for each. */
final class Paths {
    final Layout layout;
    final Products products;
    final Stock[] stocks;
    final Taking[] takings;
    final double[] woodFactors;
    final List<List<Path>> found = new ArrayList<>();

    Paths(Layout layout, Products products, Stock[] stocks, Taking[] takings, double[] woodFactors) {
        this.layout = layout;
        this.products = products;
        this.stocks = stocks;
        this.takings = takings;
        this.woodFactors = woodFactors;
        for (int at = 0; at < stocks.length; at++) {
            found.add(new ArrayList<>());
        }
    }

    /** What was found at some prices. */
    record Answer(double[] prices, double bound, Path[] paths, double[] worths) {}

    /** Find the best path of each mother at the prices, and so a bound of every plan. */
    Answer best(double[] prices) {
        Priced priced = new Priced(layout, products, prices);
        Path[] paths = new Path[stocks.length];
        double[] worths = new double[stocks.length];
        int chunk = 256;
        IntStream.range(0, (stocks.length + chunk - 1) / chunk).parallel().forEach(part -> {
            Walk walk = new Walk(layout);
            for (int at = part * chunk; at < Math.min(stocks.length, (part + 1) * chunk); at++) {
                worths[at] = walk.of(stocks[at], priced, takings[at], woodFactors[at], 1);
                paths[at] = walk.path(woodFactors[at]);
            }
        });
        double bound = Priced.ofLimits(layout, prices);
        for (double worth : worths) {
            bound += worth;
        }
        return new Answer(prices, bound, paths, worths);
    }

    Column column(int at, Path path) {
        return path.column(layout, products, stocks[at], takings[at]);
    }

    /** Return the number of a path among those found for a mother, or -1. */
    int number(int at, Path path) {
        List<Path> known = found.get(at);
        for (int i = 0; i < known.size(); i++) {
            if (known.get(i).isSame(path)) {
                return i;
            }
        }
        return -1;
    }

    /** Return the path on which nothing is ever done to a mother. */
    Path idle(int at) {
        Shape shape = stocks[at].shape;
        int[] states = new int[layout.years];
        for (int year = 0; year + 1 < layout.years; year++) {
            states[year + 1] = shape.arcs(year, states[year])[0].next();
        }
        return new Path(states, new int[layout.years], new int[0]);
    }

    /** Return a path with no more set in any year than a mother's wood allows as it was drawn. */
    Path asFarAsWoodGoes(int at, Path path) {
        Stock stock = stocks[at];
        int[] sets = path.sets().clone();
        int[] wood = new int[stock.bands + 1];
        int[] used = new int[stock.bands + 1];
        int year = -1;
        for (int i = 0; i < sets.length; i += Path.WIDTH) {
            if (sets[i] != year) {
                year = sets[i];
                stock.wood(year, stock.shape.arcs(year, path.states()[year])[path.arcs()[year]], woodFactors[at], wood);
                java.util.Arrays.fill(used, 0);
            }
            int band = sets[i + 1];
            sets[i + 3] = Math.min(sets[i + 3], wood[band] - used[band]);
            used[band] += sets[i + 3];
        }
        return new Path(path.states(), path.arcs(), sets);
    }
}
