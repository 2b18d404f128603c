package ortet.choice;

/** What everything is worth at given prices of the shared rows. */
final class Priced {
    final double[] prices;
    /** By product and year: a unit set. */
    final double[][] set;
    /** By product and year: a tree established, without its sale. */
    final double[][] established;
    /** By product, year and scenario: the sale of a tree established. */
    final double[][][] sale;
    /** By kind of upkeep and year: below 0. */
    final double[][] upkeep;
    /** By deed and year: what going to a mother for it costs, as a sum below 0. */
    final double[][] setUp;
    /** By concentration and year: what a tree established anywhere earns by letting the others have more. */
    final double[][] total;

    Priced(Layout layout, Products products, double[] prices) {
        this.prices = prices;
        int size = products.all.size();
        this.set = new double[size][layout.years];
        this.established = new double[size][layout.years];
        this.sale = new double[size][layout.years][layout.scenarios];
        for (int at = 0; at < size; at++) {
            Products.Product product = products.all.get(at);
            for (int year = 0; year < layout.years; year++) {
                set[at][year] = product.set()[year].at(prices);
                established[at][year] = product.established()[year].at(prices);
                for (int scenario = 0; scenario < layout.scenarios; scenario++) {
                    double sum = 0;
                    for (int i = 0; i < product.outlets().length; i++) {
                        int row = layout.sales(product.outlets()[i], year + product.years()[i], scenario);
                        sum += product.shares()[i] * prices[row];
                    }
                    sale[at][year][scenario] = sum;
                }
            }
        }
        this.upkeep = new double[products.upkeep.size()][layout.years];
        for (int at = 0; at < upkeep.length; at++) {
            for (int year = 0; year < layout.years; year++) {
                upkeep[at][year] = products.upkeep.get(at)[year].at(prices);
            }
        }
        this.setUp = new double[products.setUp.length][layout.years];
        for (int at = 0; at < setUp.length; at++) {
            for (int year = 0; year < layout.years; year++) {
                setUp[at][year] = products.setUp[at][year].at(prices);
            }
        }
        this.total = new double[layout.concentrations()][layout.years];
        for (int at = 0; at < total.length; at++) {
            for (int year = 0; year < layout.years; year++) {
                for (int row : layout.shares(at, year)) {
                    total[at][year] += layout.share(at) * prices[row];
                }
            }
        }
    }

    /** Return what the limits themselves are worth at these prices: the part of the bound that no mother has. */
    static double ofLimits(Layout layout, double[] prices) {
        double sum = 0;
        for (int row = 0; row < layout.rows; row++) {
            sum += layout.available[row] * (layout.isSales(row) ? layout.most[row] - prices[row] : prices[row]);
        }
        return sum;
    }

    /** Put prices within what they can be. */
    static void clip(Layout layout, double[] prices) {
        for (int row = 0; row < layout.rows; row++) {
            prices[row] = Math.max(layout.least[row], Math.min(layout.most[row], prices[row]));
        }
    }
}
