package ortet.choice;

/**
 * What a plan uses, sells and is worth.
 *
 * @param use by row, and after them by concentration and year the totals; of sales rows, what is ready, below 0
 * @param worth by the aim, less the reluctance
 * @param reluctance by how much the plan counts less for how severe its deeds are
 * @param margin in money
 * @param met share of all trees asked for that is delivered; NaN when none is asked for
 * @param broken by how much rights and shares are broken, which no plan that is handed out may do
 */
record Account(double[] use, double worth, double reluctance, double margin, double met, double broken) {
    static Account of(Paths paths, Path[] plan) {
        Layout layout = paths.layout;
        double[] use = new double[layout.rows + layout.concentrations() * layout.years];
        Column column = new Column();
        double money = 0;
        double learning = 0;
        double reluctance = 0;
        for (int at = 0; at < plan.length; at++) {
            column.clear();
            plan[at].addTo(column, layout, paths.products, paths.stocks[at], paths.takings[at]);
            money += column.money;
            for (int i = 0; i < column.size; i++) {
                use[column.rows[i]] += column.amounts[i];
            }
            Stock stock = paths.stocks[at];
            reluctance += plan[at].reluctance(layout, stock);
            if (stock.shape.arcs(0, 0)[plan[at].arcs()[0]].deed() == Deed.TRY_OUT) {
                learning += stock.learning;
            }
        }
        double worth = money;
        double margin = money + reluctance - learning;
        double asked = 0;
        double delivered = 0;
        double broken = 0;
        for (int row = 0; row < layout.rows; row++) {
            if (layout.isSales(row)) {
                double sold = Math.min(-use[row], layout.available[row]);
                double beyond = layout.least[row] * (-use[row] - sold);
                worth += layout.most[row] * sold + beyond;
                margin += (layout.most[row] - layout.wanted / layout.scenarios) * sold + beyond;
                asked += layout.available[row];
                delivered += sold;
            } else if (Double.isFinite(layout.most[row])) {
                worth -= layout.most[row] * Math.max(0, use[row] - layout.available[row]);
            } else {
                broken += layout.beyond(row, use);
            }
        }
        return new Account(
                use,
                worth - layout.overrun * broken,
                reluctance,
                margin,
                asked > 0 ? delivered / asked : Double.NaN,
                broken);
    }
}
