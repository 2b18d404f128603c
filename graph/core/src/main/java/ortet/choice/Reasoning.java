package ortet.choice;

import java.util.Optional;

/** Finds why a path is the one for a mother, and puts it in figures. */
final class Reasoning {
    /** What is not worth telling apart, in money, or in trees where demand is to be met. */
    private static final double ALIKE = 0.05;

    private final Paths paths;
    private final Layout layout;
    private final double[] prices;
    private final Priced priced;
    private final Priced meansFree;
    private final Walk walk;
    private final Walk freely;

    Reasoning(Paths paths, double[] prices) {
        this.paths = paths;
        this.layout = paths.layout;
        this.prices = prices;
        this.priced = new Priced(layout, paths.products, prices);
        double[] free = prices.clone();
        java.util.Arrays.fill(free, 0, layout.firstSales, 0);
        this.meansFree = new Priced(layout, paths.products, free);
        this.walk = new Walk(layout);
        this.freely = new Walk(layout);
    }

    Reasons of(int at, Path path, Deed deed) {
        Stock stock = paths.stocks[at];
        Taking taking = paths.takings[at];
        Column column = new Column();
        Path.addSetUp(column, paths.products, deed, 0);
        double trees = 0;
        for (int i = 0; i < path.sets().length; i += Path.WIDTH) {
            if (path.sets()[i] == 0) {
                int band = path.sets()[i + 1];
                int number = path.sets()[i + 2];
                int count = path.sets()[i + 3];
                Path.addUnits(column, layout, paths.products, stock, taking, 0, band, number, count);
                double share = (band < stock.bands ? taking.meanLayers() : taking.meanCuttings())[0];
                trees += count * share * paths.products.all.get(number).trees();
            }
        }
        double sales = 0;
        double[] byRow = new double[layout.firstSales];
        for (int i = 0; i < column.size; i++) {
            int row = column.rows[i];
            if (row < layout.firstSales) {
                byRow[row] += prices[row] * column.amounts[i];
            } else if (row < layout.rows) {
                sales -= prices[row] * column.amounts[i];
            }
        }
        double means = 0;
        int dearest = -1;
        for (int row = 0; row < byRow.length; row++) {
            means += byRow[row];
            if (byRow[row] > 0 && (dearest < 0 || byRow[row] > byRow[dearest])) {
                dearest = row;
            }
        }
        return new Reasons(
                why(at, path, deed),
                stock.mother.growth().leftLong().get(0).layers(),
                taking.meanLayers()[0],
                trees,
                sales,
                -column.money,
                means,
                dearest < 0 ? Optional.empty() : Optional.of(layout.resource(dearest)),
                stock.learning);
    }

    private Why why(int at, Path path, Deed deed) {
        Stock stock = paths.stocks[at];
        Mother mother = stock.mother;
        if (mother.heldYears() > 0) {
            return Why.HELD;
        }
        walk.of(stock, priced, paths.takings[at], 1, 1);
        freely.of(stock, meansFree, paths.takings[at], 1, 1);
        return switch (deed) {
            case REST ->
                mother.restNow() > 0 && mother.growth().leftLong().get(0).layers() > 0
                        ? Why.RECOVERING
                        : Why.NOTHING_TO_TAKE;
            case LAYER, LAYER_AND_SELL, TAKE_CUTTINGS -> Why.EARNS_MOST;
            case TRY_OUT -> walk.with(deed) - stock.learning < secondBest(walk, deed) ? Why.TEACHES : Why.EARNS_MOST;
            case SELL -> secondBest(freely, deed) > freely.with(deed) ? Why.ROOM_IS_WORTH_MORE : Why.EARNS_MOST;
            case LEAVE_LONG, CUT_BACK -> waiting(mother, path);
        };
    }

    private Why waiting(Mother mother, Path path) {
        boolean hasNoLicence = layout.question.limits().licences().stream()
                .anyMatch(licence -> licence.cultivar().equals(mother.cultivar()) && licence.in(0) == 0);
        if (hasNoLicence) {
            return Why.NO_LICENCE;
        }
        if (path.sets().length > 0) {
            return Why.WORTH_MORE_LATER;
        }
        double gain = settingRatherThanWaiting(walk);
        double freelyGain = settingRatherThanWaiting(freely);
        double alike = ALIKE * (layout.wantsDemand ? layout.wanted : 1);
        if (freelyGain > alike && gain < freelyGain - alike) {
            return Why.MEANS_ARE_SHORT;
        }
        return Math.abs(gain) <= alike ? Why.AS_GOOD : Why.NO_DEMAND;
    }

    private static double settingRatherThanWaiting(Walk walk) {
        return Math.max(walk.with(Deed.LAYER), walk.with(Deed.TAKE_CUTTINGS)) - walk.with(Deed.LEAVE_LONG);
    }

    private static double secondBest(Walk walk, Deed not) {
        double best = Double.NEGATIVE_INFINITY;
        for (Deed deed : Deed.values()) {
            if (deed != not && deed != Deed.REST) {
                best = Math.max(best, walk.with(deed));
            }
        }
        return best;
    }
}
