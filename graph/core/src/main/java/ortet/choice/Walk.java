package ortet.choice;

import java.util.Arrays;

/**
 * Finds the best path of one mother at given prices, by going through her states from the last year back.
 *
 * <p>Each layer's worth hangs on nothing but its year, band and way of raising; so of the positions that an arc frees, all
 * with a worth above 0 are used, in the way that is worth most. Time: the arcs of her shape times her bands. Not for several
 * threads at once.
 */
final class Walk {
    private static final double NEVER = Double.NEGATIVE_INFINITY;

    private final Layout layout;
    private double[][] worth = {};
    private int[][] best = {};
    private double[] unit = {};
    private int[] product = {};
    private int[] wood = {};
    private final double[] byDeed = new double[Deed.values().length];

    private Stock stock;
    private Shape last;
    private double[] upkeepLong = {};
    private double[] upkeepShort = {};
    private double[][] setUp = {};
    private int bands;

    Walk(Layout layout) {
        this.layout = layout;
    }

    /**
     * Go through a mother.
     *
     * @param woodFactor by what to multiply her wood
     * @param layerFactor by what to multiply the share of her layers that establish
     * @return what her best path is worth
     */
    double of(Stock who, Priced priced, Taking taking, double woodFactor, double layerFactor) {
        stock = who;
        bands = who.bands;
        Shape shape = who.shape;
        if (shape != last || wood.length < bands + 1) {
            room(shape);
            last = shape;
        }
        units(priced, taking, layerFactor);
        int years = layout.years;
        System.arraycopy(who.endByState, 0, worth[years], 0, who.endByState.length);
        Arrays.fill(byDeed, NEVER);
        upkeepLong = priced.upkeep[who.upkeepLong];
        upkeepShort = priced.upkeep[who.upkeepShort];
        setUp = priced.setUp;
        for (int year = years - 1; year >= 0; year--) {
            int states = shape.states(year);
            for (int state = 0; state < states; state++) {
                Shape.Arc[] arcs = shape.arcs(year, state);
                double most = NEVER;
                int which = -1;
                for (int at = 0; at < arcs.length; at++) {
                    Shape.Arc arc = arcs[at];
                    if (!who.isOpen(arc)) {
                        continue;
                    }
                    double sum = arc(year, state, arc, woodFactor);
                    if (arc.next() >= 0) {
                        sum += worth[year + 1][arc.next()];
                    }
                    if (sum > most) {
                        most = sum;
                        which = at;
                    }
                    if (year == 0 && sum > byDeed[arc.deed().ordinal()]) {
                        byDeed[arc.deed().ordinal()] = sum;
                    }
                }
                worth[year][state] = most;
                best[year][state] = which;
            }
        }
        return worth[0][0];
    }

    /** Return what a deed brings in its year, without what she is worth after it; minus infinity when it cannot be done. */
    double arc(int year, int state, Shape.Arc arc, double woodFactor) {
        double sum = (arc.longParts() * upkeepLong[year] + arc.shortParts() * upkeepShort[year]) / stock.shape.parts()
                + setUp[arc.deed().ordinal()][year]
                - stock.step * layout.severity[arc.deed().ordinal()][year];
        if (arc.deed() == Deed.SELL) {
            sum += stock.worth(stock.tree, year, stock.shape.stagesOf(year, state));
        } else if (arc.deed().sets()) {
            sum += worthOfUnits(year, arc, woodFactor);
            if (arc.deed() == Deed.LAYER_AND_SELL) {
                sum += stock.severedWorth(year);
            } else if (arc.deed() == Deed.TRY_OUT) {
                sum += stock.learning;
            }
        }
        return sum;
    }

    /** Return what the best path that begins with a deed is worth; minus infinity when it is not open. */
    double with(Deed deed) {
        return byDeed[(deed == Deed.REST ? Deed.LEAVE_LONG : deed).ordinal()];
    }

    /** Return what a unit set in a year and band is worth when it is raised in the best way. */
    double unit(int year, int band) {
        return unit[year * (bands + 1) + band];
    }

    /** Return what a unit is worth when it is raised in one way. */
    double unit(Priced priced, Taking taking, int year, int band, int number) {
        boolean layer = band < bands;
        double mean = (layer ? taking.meanLayers() : taking.meanCuttings())[year];
        double[] takes = (layer ? taking.layers() : taking.cuttings())[year];
        return unit(priced, number, year, mean, takes, 1, share(priced, year));
    }

    /** Return what she is worth in a state at the beginning of a year. */
    double at(int year, int state) {
        return worth[year][state];
    }

    /** Return the best path. */
    Path path(double woodFactor) {
        int[] states = new int[layout.years];
        int[] arcs = new int[layout.years];
        int[] sets = new int[Path.WIDTH * layout.years * (bands + 1)];
        int size = 0;
        int state = 0;
        int year = 0;
        while (year < layout.years && state >= 0) {
            Shape.Arc arc = stock.shape.arcs(year, state)[best[year][state]];
            states[year] = state;
            arcs[year] = best[year][state];
            if (arc.deed().sets()) {
                units(year, arc, woodFactor);
                for (int band = 0; band <= bands; band++) {
                    if (wood[band] > 0) {
                        sets[size++] = year;
                        sets[size++] = band;
                        sets[size++] = product[year * (bands + 1) + band];
                        sets[size++] = wood[band];
                    }
                }
            }
            state = arc.next();
            year++;
        }
        return new Path(Arrays.copyOf(states, year), Arrays.copyOf(arcs, year), Arrays.copyOf(sets, size));
    }

    private void room(Shape shape) {
        int years = layout.years;
        if (worth.length == 0) {
            worth = new double[years + 1][0];
            best = new int[years + 1][0];
        }
        for (int year = 0; year <= years; year++) {
            if (worth[year].length < shape.states(year)) {
                worth[year] = new double[shape.states(year)];
                best[year] = new int[shape.states(year)];
            }
        }
        if (wood.length < bands + 1) {
            wood = new int[bands + 1];
            unit = new double[years * (bands + 1)];
            product = new int[years * (bands + 1)];
        }
    }

    /** Find what a unit is worth in each year and band, and how it is best raised. */
    private void units(Priced priced, Taking taking, double layerFactor) {
        for (int year = 0; year < layout.years; year++) {
            double share = share(priced, year);
            for (int band = 0; band <= bands; band++) {
                boolean layer = band < bands;
                int[] products = layer ? stock.layerProducts[band] : stock.cuttingProducts;
                double factor = layer ? layerFactor : 1;
                double mean = (layer ? taking.meanLayers() : taking.meanCuttings())[year] * factor;
                double[] takes = (layer ? taking.layers() : taking.cuttings())[year];
                double most = NEVER;
                int which = -1;
                for (int number : products) {
                    double sum = unit(priced, number, year, mean, takes, factor, share);
                    if (sum > most) {
                        most = sum;
                        which = number;
                    }
                }
                unit[year * (bands + 1) + band] = most;
                product[year * (bands + 1) + band] = which;
            }
        }
    }

    /** Return what an established tree earns or costs by the limits on shares. */
    private double share(Priced priced, int year) {
        double share = 0;
        for (int at = 0; at < priced.total.length; at++) {
            share += priced.total[at][year] - priced.prices[stock.shareRows[at][year]];
        }
        return share;
    }

    private static double unit(
            Priced priced, int number, int year, double mean, double[] takes, double factor, double share) {
        double sum = priced.set[number][year] + mean * (priced.established[number][year] + share);
        double[] sale = priced.sale[number][year];
        if (takes.length == sale.length) {
            for (int scenario = 0; scenario < sale.length; scenario++) {
                sum += takes[scenario] * factor * sale[scenario];
            }
        } else { // one draw, judged at the prices of several together
            for (double one : sale) {
                sum += takes[0] * factor * one;
            }
        }
        return sum;
    }

    /** Return what the units are worth that an arc best sets; minus infinity when none can be. */
    private double worthOfUnits(int year, Shape.Arc arc, double woodFactor) {
        if (arc.deed() == Deed.TRY_OUT) {
            return units(year, arc, woodFactor);
        }
        int[] free = stock.free();
        int from = arc.number() * (bands + 1);
        if (woodFactor != 1) {
            stock.wood(year, arc, woodFactor, wood);
            free = wood;
            from = 0;
        }
        boolean cuttings = arc.deed() == Deed.TAKE_CUTTINGS;
        int to = cuttings ? bands + 1 : bands;
        int offset = year * (bands + 1);
        double sum = 0;
        double most = NEVER;
        for (int band = cuttings ? bands : 0; band < to; band++) {
            int many = free[from + band];
            if (many > 0) {
                double one = unit[offset + band];
                sum += one > 0 ? many * one : 0;
                most = one > most ? one : most;
            }
        }
        return most > 0 ? sum : most;
    }

    /** Fill how many units an arc best sets in each band, and return what they are worth; minus infinity when none can be. */
    private double units(int year, Shape.Arc arc, double woodFactor) {
        stock.wood(year, arc, woodFactor, wood);
        boolean cuttings = arc.deed() == Deed.TAKE_CUTTINGS;
        int from = cuttings ? bands : 0;
        int to = cuttings ? bands + 1 : bands;
        int offset = year * (bands + 1);
        Arrays.fill(wood, 0, from, 0);
        Arrays.fill(wood, to, bands + 1, 0);
        if (arc.deed() == Deed.TRY_OUT) {
            return trial(offset);
        }
        double sum = 0;
        double most = NEVER;
        int which = -1;
        boolean any = false;
        for (int band = from; band < to; band++) {
            double one = unit[offset + band];
            if (wood[band] > 0 && one > most) {
                most = one;
                which = band;
            }
            if (wood[band] > 0 && one > 0) {
                sum += wood[band] * one;
                any = true;
            } else {
                wood[band] = 0;
            }
        }
        if (!any) {
            if (which < 0) {
                return NEVER;
            }
            wood[which] = 1;
            return most;
        }
        return sum;
    }

    /** Choose so many positions as the trial asks for, those worth most first. */
    private double trial(int offset) {
        int left = stock.mother.trial().orElseThrow().layers();
        double sum = 0;
        int[] free = Arrays.copyOf(wood, bands);
        Arrays.fill(wood, 0);
        while (left > 0) {
            int which = -1;
            for (int band = 0; band < bands; band++) {
                if (free[band] > 0
                        && unit[offset + band] > NEVER
                        && (which < 0 || unit[offset + band] > unit[offset + which])) {
                    which = band;
                }
            }
            if (which < 0) {
                return NEVER;
            }
            int many = Math.min(left, free[which]);
            free[which] = 0;
            wood[which] = many;
            left -= many;
            sum += many * unit[offset + which];
        }
        return sum;
    }
}
