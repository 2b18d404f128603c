package ortet.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** All mothers, what each draw or the plan makes of them, and the paths that have been found for each. */
final class Paths {
    private static final int CHUNK = 512;

    final Layout layout;
    final Products products;
    final Stock[] stocks;
    final Taking[] takings;
    final double[] woodFactors;
    /** Which rows could be short, or sold to, by these mothers; the others have no say in what is best for them. */
    final boolean[] rows;

    final List<List<Path>> found = new ArrayList<>();
    private final Map<Path, Column> kept = new IdentityHashMap<>();
    private final Map<Integer, Map<Integer, Column>> units = new HashMap<>();

    Paths(Layout layout, Products products, Stock[] stocks, Taking[] takings, double[] woodFactors) {
        this(layout, products, stocks, takings, woodFactors, new boolean[layout.rows]);
        Arrays.fill(rows, true);
    }

    private Paths(
            Layout layout, Products products, Stock[] stocks, Taking[] takings, double[] woodFactors, boolean[] rows) {
        this.layout = layout;
        this.products = products;
        this.stocks = stocks;
        this.takings = takings;
        this.woodFactors = woodFactors;
        this.rows = rows;
        for (int at = 0; at < stocks.length; at++) {
            found.add(new ArrayList<>());
        }
    }

    /** Make the mothers of a question ready, as the plan takes them. */
    static Paths planned(ChoiceQuestion question) {
        Layout layout = new Layout(question, question.settings().scenarios());
        Products products = new Products(layout);
        Stock[] stocks = question.mothers().stream()
                .map(mother -> new Stock(layout, products, mother))
                .toArray(Stock[]::new);
        Taking[] takings = Arrays.stream(stocks)
                .parallel()
                .map(stock -> Taking.planned(layout, stock.mother))
                .toArray(Taking[]::new);
        double[] ones = new double[stocks.length];
        Arrays.fill(ones, 1);
        return new Paths(layout, products, stocks, takings, ones);
    }

    /** Return some of these mothers, who share only some rows with each other and none with the rest. */
    Paths of(int[] members, boolean[] shared) {
        return new Paths(
                layout,
                products,
                Arrays.stream(members).mapToObj(at -> stocks[at]).toArray(Stock[]::new),
                Arrays.stream(members).mapToObj(at -> takings[at]).toArray(Taking[]::new),
                Arrays.stream(members).mapToDouble(at -> woodFactors[at]).toArray(),
                shared);
    }

    /** Return prices to begin with: means cost nothing, every tree finds a buyer. */
    double[] first() {
        double[] prices = new double[layout.rows];
        for (int row = layout.firstSales; row < layout.rows; row++) {
            prices[row] = layout.most[row];
        }
        return prices;
    }

    /** What was found at some prices; the use by row and, after the rows, by total. */
    record Answer(double[] prices, double bound, Path[] paths, double[] use) {}

    /** Find the best path of each mother at the prices, and so a bound of every plan. */
    Answer best(double[] prices) {
        Priced priced = new Priced(layout, products, prices);
        Path[] best = new Path[stocks.length];
        int parts = (stocks.length + CHUNK - 1) / CHUNK;
        double[] worths = new double[parts];
        double[][] uses = new double[parts][];
        IntStream.range(0, parts).parallel().forEach(part -> {
            Walk walk = new Walk(layout);
            Column column = new Column();
            uses[part] = new double[layout.rows + layout.concentrations() * layout.years];
            for (int at = part * CHUNK; at < Math.min(stocks.length, (part + 1) * CHUNK); at++) {
                worths[part] += walk.of(stocks[at], priced, takings[at], woodFactors[at], 1);
                best[at] = walk.path(woodFactors[at]);
                column.clear();
                best[at].addTo(column, layout, products, stocks[at], takings[at]);
                for (int i = 0; i < column.size; i++) {
                    uses[part][column.rows[i]] += column.amounts[i];
                }
            }
        });
        // in order, so that rounding is the same however many threads there are
        double bound = Priced.ofLimits(layout, prices);
        double[] use = new double[layout.rows + layout.concentrations() * layout.years];
        for (int part = 0; part < parts; part++) {
            bound += worths[part];
            for (int row = 0; row < use.length; row++) {
                use[row] += uses[part][row];
            }
        }
        return new Answer(prices, bound, best, use);
    }

    Column column(int at, Path path) {
        return path.column(layout, products, stocks[at], takings[at]);
    }

    /** Return what a path that is kept for long brings and uses of the rows that have a say. Not for several threads. */
    Column kept(int at, Path path) {
        return kept.computeIfAbsent(path, fresh -> column(at, fresh).only(rows));
    }

    /** Return what a unit set on a mother brings and uses of the rows that have a say. Not for several threads. */
    Column unit(int at, int year, int band, int product) {
        int key = (year * (stocks[at].bands + 1) + band) * products.all.size() + product;
        return units.computeIfAbsent(at, fresh -> new HashMap<>()).computeIfAbsent(key, fresh -> {
            Column unit = new Column();
            Path.addUnits(unit, layout, products, stocks[at], takings[at], year, band, product, 1);
            return unit.only(rows);
        });
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
                Arrays.fill(used, 0);
            }
            int band = sets[i + 1];
            sets[i + 3] = Math.min(sets[i + 3], wood[band] - used[band]);
            used[band] += sets[i + 3];
        }
        return new Path(path.states(), path.arcs(), sets);
    }

    /** Return what a path is worth at prices of the rows, shares of groups included. */
    double worth(int at, Path path, double[] prices) {
        Column column = column(at, path);
        double worth = column.money;
        for (int i = 0; i < column.size; i++) {
            int row = column.rows[i];
            if (row < layout.rows) {
                worth -= prices[row] * column.amounts[i];
            } else {
                int concentration = (row - layout.rows) / layout.years;
                for (int share : layout.shares(concentration, (row - layout.rows) % layout.years)) {
                    worth += layout.share(concentration) * prices[share] * column.amounts[i];
                }
            }
        }
        return worth;
    }
}
