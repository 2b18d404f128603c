package ortet.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Divides a nursery into parts that share nothing of which there could be too little: the best plan of all is then the best
 * of each part. Mothers of one cultivar share what is asked for; cultivars share hours, room and rights where all mothers
 * together could use more than there is, whatever is done with them.
 */
final class Parts {
    /**
     * A part.
     *
     * @param members the numbers of its mothers among all, ascending
     * @param paths its mothers
     */
    record Part(int[] members, Paths paths) {
        /** Return it as if nobody had planned it yet. */
        Part afresh() {
            return new Part(members, paths.of(IntStream.range(0, members.length).toArray(), paths.rows));
        }
    }

    private final Paths paths;
    private final Layout layout;
    /** By cultivar and row: the most that its mothers could use. */
    private final Map<String, double[]> most = new LinkedHashMap<>();

    private Parts(Paths paths) {
        this.paths = paths;
        this.layout = paths.layout;
    }

    /** Divide. */
    static List<Part> of(Paths paths) {
        return new Parts(paths).divide();
    }

    private List<Part> divide() {
        for (Stock stock : paths.stocks) {
            add(most.computeIfAbsent(stock.mother.cultivar(), fresh -> new double[layout.firstSales]), stock);
        }
        List<String> cultivars = List.copyOf(most.keySet());
        int[] leader = new int[cultivars.size()];
        Arrays.setAll(leader, at -> at);
        boolean[] shared = new boolean[layout.rows];
        for (int row = 0; row < layout.firstSales; row++) {
            double sum = 0;
            for (double[] one : most.values()) {
                sum += one[row];
            }
            shared[row] = layout.isShare(row) || sum > layout.available[row];
            int first = -1;
            for (int at = 0; shared[row] && at < leader.length; at++) {
                if (layout.isShare(row) || most.get(cultivars.get(at))[row] > 0) {
                    first = first < 0 ? at : first;
                    join(leader, first, at);
                }
            }
        }
        Map<Integer, List<Integer>> members = new LinkedHashMap<>();
        for (int at = 0; at < paths.stocks.length; at++) {
            int cultivar = cultivars.indexOf(paths.stocks[at].mother.cultivar());
            members.computeIfAbsent(root(leader, cultivar), fresh -> new ArrayList<>())
                    .add(at);
        }
        List<Part> parts = new ArrayList<>();
        for (List<Integer> one : members.values()) {
            int[] some = one.stream().mapToInt(Integer::intValue).toArray();
            parts.add(new Part(some, paths.of(some, rows(some, shared))));
        }
        return parts;
    }

    /** Return the rows that some mothers could fill. */
    private boolean[] rows(int[] members, boolean[] shared) {
        boolean[] rows = new boolean[layout.rows];
        for (int at : members) {
            String cultivar = paths.stocks[at].mother.cultivar();
            double[] use = most.get(cultivar);
            for (int row = 0; row < layout.firstSales; row++) {
                rows[row] |= shared[row] && (layout.isShare(row) || use[row] > 0);
            }
            Stock stock = paths.stocks[at];
            for (int[] products : stock.layerProducts) {
                sells(rows, products);
            }
            sells(rows, stock.cuttingProducts);
        }
        return rows;
    }

    private void sells(boolean[] rows, int[] products) {
        for (int number : products) {
            Products.Product product = paths.products.all.get(number);
            for (int i = 0; i < product.outlets().length; i++) {
                for (int year = 0; year < layout.years; year++) {
                    for (int scenario = 0; scenario < layout.scenarios; scenario++) {
                        rows[layout.sales(product.outlets()[i], year + product.years()[i], scenario)] = true;
                    }
                }
            }
        }
    }

    /** Add the most that a mother could use of each limit: all her wood, in every way at once, whatever is done with her. */
    private void add(double[] use, Stock stock) {
        int[] wood = stock.mostWood();
        for (int year = 0; year < layout.years; year++) {
            add(use, paths.products.upkeep.get(stock.upkeepLong)[year], 1);
            add(use, paths.products.upkeep.get(stock.upkeepShort)[year], 1);
            for (Column[] visit : paths.products.setUp) {
                add(use, visit[year], 1);
            }
            for (int band = 0; band <= stock.bands; band++) {
                boolean layer = band < stock.bands;
                for (int product : layer ? stock.layerProducts[band] : stock.cuttingProducts) {
                    add(use, paths.products.all.get(product).set()[year], wood[band]);
                    add(use, paths.products.all.get(product).established()[year], wood[band]);
                }
            }
        }
    }

    private void add(double[] use, Column column, double often) {
        for (int i = 0; i < column.size; i++) {
            if (column.rows[i] < layout.firstSales) {
                use[column.rows[i]] += often * column.amounts[i];
            }
        }
    }

    private static void join(int[] leader, int one, int other) {
        int first = root(leader, one);
        int second = root(leader, other);
        leader[Math.max(first, second)] = Math.min(first, second);
    }

    private static int root(int[] leader, int at) {
        int root = at;
        while (leader[root] != root) {
            root = leader[root];
        }
        return root;
    }
}
