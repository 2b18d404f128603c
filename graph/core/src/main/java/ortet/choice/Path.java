package ortet.choice;

import java.util.Arrays;

/**
 * What is done with one mother over all years.
 *
 * @param states by year, the state she is in
 * @param arcs by year, the number of the deed among those open in the state
 * @param sets quadruples of year, band (bands are followed by one for cuttings), product and count
 */
record Path(int[] states, int[] arcs, int[] sets) {
    static final int WIDTH = 4;

    /** Return what it brings and uses. */
    Column column(Layout layout, Products products, Stock stock, Taking taking) {
        Column column = new Column();
        addTo(column, layout, products, stock, taking);
        return column;
    }

    /** Add what it brings and uses. */
    void addTo(Column column, Layout layout, Products products, Stock stock, Taking taking) {
        Shape shape = stock.shape;
        for (int year = 0; year < arcs.length; year++) {
            Shape.Arc arc = shape.arcs(year, states[year])[arcs[year]];
            addEffort(column, products, stock, arc, year);
            column.money += fixed(layout, stock, year, states[year], arc);
        }
        for (int i = 0; i < sets.length; i += WIDTH) {
            addUnits(column, layout, products, stock, taking, sets[i], sets[i + 1], sets[i + 2], sets[i + 3]);
        }
    }

    private static void addEffort(Column column, Products products, Stock stock, Shape.Arc arc, int year) {
        double parts = stock.shape.parts();
        add(column, products.upkeep.get(stock.upkeepLong)[year], arc.longParts() / parts);
        add(column, products.upkeep.get(stock.upkeepShort)[year], arc.shortParts() / parts);
        addSetUp(column, products, arc.deed(), year);
    }

    /** Add what going to a mother for a deed takes. */
    static void addSetUp(Column column, Products products, Deed deed, int year) {
        add(column, products.setUp[deed.ordinal()][year], 1);
    }

    private static void add(Column column, Column part, double often) {
        if (often == 0) {
            return;
        }
        column.money += part.money * often;
        for (int i = 0; i < part.size; i++) {
            column.add(part.rows[i], part.amounts[i] * often);
        }
    }

    /**
     * Return the money of an arc that hangs on nothing: her sale, what a trial teaches, her worth when the plan ends, and
     * how reluctantly it is done.
     */
    static double fixed(Layout layout, Stock stock, int year, int state, Shape.Arc arc) {
        double money = -stock.reluctance(layout, arc.deed(), year);
        if (arc.deed() == Deed.SELL) {
            money += stock.worth(stock.tree, year, stock.shape.stagesOf(year, state));
        } else if (arc.deed() == Deed.LAYER_AND_SELL) {
            money += stock.severedWorth(year);
        } else if (arc.deed() == Deed.TRY_OUT) {
            money += stock.learning;
        }
        if (arc.next() >= 0 && year + 1 == layout.years) {
            money += stock.worth(stock.end, layout.years, stock.shape.stagesOf(layout.years, arc.next()));
        }
        return money;
    }

    /** Return by how much less it counts for how severe its deeds are. */
    double reluctance(Layout layout, Stock stock) {
        double sum = 0;
        for (int year = 0; year < arcs.length; year++) {
            sum += stock.reluctance(layout, stock.shape.arcs(year, states[year])[arcs[year]].deed(), year);
        }
        return sum;
    }

    /** Add what an arc brings and uses, without what is set. */
    static Column column(Layout layout, Products products, Stock stock, int year, int state, Shape.Arc arc) {
        Column column = new Column();
        addEffort(column, products, stock, arc, year);
        column.money += fixed(layout, stock, year, state, arc);
        return column;
    }

    /** Add what some units set bring and use. */
    static void addUnits(
            Column column,
            Layout layout,
            Products products,
            Stock stock,
            Taking taking,
            int year,
            int band,
            int number,
            int count) {
        Products.Product product = products.all.get(number);
        boolean layer = band < stock.bands;
        double mean = (layer ? taking.meanLayers() : taking.meanCuttings())[year];
        double[] shares = (layer ? taking.layers() : taking.cuttings())[year];
        add(column, product.set()[year], count);
        add(column, product.established()[year], count * mean);
        for (int i = 0; i < product.outlets().length; i++) {
            for (int scenario = 0; scenario < layout.scenarios; scenario++) {
                // what sells counts against use: a sales row's price is paid, not asked
                column.add(
                        layout.sales(product.outlets()[i], year + product.years()[i], scenario),
                        -count * shares[scenario] * product.shares()[i]);
            }
        }
        for (int at = 0; at < layout.concentrations(); at++) {
            column.add(stock.shareRows[at][year], count * mean);
            column.add(layout.rows + at * layout.years + year, count * mean);
        }
    }

    boolean isSame(Path other) {
        return Arrays.equals(states, other.states)
                && Arrays.equals(arcs, other.arcs)
                && Arrays.equals(sets, other.sets);
    }
}
