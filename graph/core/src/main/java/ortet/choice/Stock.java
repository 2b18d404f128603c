package ortet.choice;

import java.util.List;
import java.util.stream.IntStream;

/** One mother made ready to be gone through many times. */
final class Stock {
    final Mother mother;
    final Shape shape;
    final int bands;
    final int[][] layerProducts;
    final int[] cuttingProducts;
    final int upkeepLong;
    final int upkeepShort;
    /** By concentration and year. */
    final int[][] shareRows;
    /** By stage and year: positions by band, then cuttings. */
    private final int[][][] wood;
    /** By arc. */
    private final boolean[] open;
    /** By arc, and in it positions by band, then cuttings, as expected; in one piece, for this is what walks read most. */
    private final int[] free;

    /** What a step of severity counts in money. */
    final double step;

    final double[][] tree;
    final double[][] end;
    /** By year: what she is worth when all of her has just been layered and severed; empty when she is not for sale. */
    private final double[] severed;
    /** By state in which the plan ends: what she is worth then. */
    final double[] endByState;
    /** What trying out teaches is worth; set between two solutions. */
    double learning;

    Stock(Layout layout, Products products, Mother mother) {
        this.mother = mother;
        this.shape = Shape.of(mother.parts(), layout.years);
        Growth growth = mother.growth();
        int most = 0;
        for (List<Wood> list : List.of(growth.leftLong(), growth.afterLayering(), growth.afterCuttingBack())) {
            for (Wood one : list) {
                most = Math.max(most, one.positions().size());
            }
        }
        this.bands = most;
        this.layerProducts = new int[bands][];
        for (int band = 0; band < bands; band++) {
            layerProducts[band] = products.layers(mother.cultivar(), band);
        }
        this.cuttingProducts = products.cuttings(mother.cultivar());
        this.upkeepLong = products.upkeepOf(mother.whileLong());
        this.upkeepShort = products.upkeepOf(mother.whileShort());
        this.shareRows = new int[layout.concentrations()][layout.years];
        for (int at = 0; at < shareRows.length; at++) {
            for (int year = 0; year < layout.years; year++) {
                shareRows[at][year] = layout.share(at, mother, year);
            }
        }
        this.step = layout.step(mother.cultivar());
        int stages = shape.stages();
        this.wood = new int[stages][][];
        wood[0] = new int[layout.years][];
        for (int year = 0; year < layout.years; year++) {
            wood[0][year] = flat(Checks.lastRepeats(growth.leftLong(), year));
        }
        for (int age = 1; age <= layout.years; age++) {
            wood[age] = new int[][] {flat(Checks.lastRepeats(growth.afterLayering(), age - 1))};
            wood[layout.years + age] = new int[][] {flat(Checks.lastRepeats(growth.afterCuttingBack(), age - 1))};
        }
        this.tree = mother.asTree().map(worth -> worths(layout, worth)).orElse(new double[0][]);
        this.end = worths(layout, mother.atEnd());
        this.severed = mother.asTree().stream()
                .flatMapToDouble(worth -> IntStream.range(0, layout.years)
                        .mapToDouble(year -> worth.afterLayering().get(0) * layout.discount(year)))
                .toArray();
        this.endByState = new double[shape.states(layout.years)];
        for (int state = 0; state < endByState.length; state++) {
            endByState[state] = worth(end, layout.years, shape.stagesOf(layout.years, state));
        }
        this.open = new boolean[shape.arcCount()];
        this.free = new int[shape.arcCount() * (bands + 1)];
        int[] place = new int[bands + 1];
        for (int year = 0; year < layout.years; year++) {
            for (int state = 0; state < shape.states(year); state++) {
                for (Shape.Arc arc : shape.arcs(year, state)) {
                    open[arc.number()] = mayDo(year, arc);
                    if (arc.stages().length > 0) {
                        count(year, arc, 1, place);
                        System.arraycopy(place, 0, free, arc.number() * (bands + 1), bands + 1);
                    }
                }
            }
        }
    }

    private int[] flat(Wood one) {
        int[] flat = new int[bands + 1];
        for (int band = 0; band < one.positions().size(); band++) {
            flat[band] = one.positions().get(band);
        }
        flat[bands] = one.cuttings();
        return flat;
    }

    /** Return worths by year and stage, discounted. */
    private double[][] worths(Layout layout, Worth worth) {
        double[][] all = new double[layout.years + 1][1 + 2 * layout.years + 1];
        for (int year = 0; year <= layout.years; year++) {
            double discount = layout.discount(year);
            all[year][0] = Checks.lastRepeats(worth.leftLong(), year) * discount;
            for (int age = 1; age <= layout.years; age++) {
                all[year][age] = Checks.lastRepeats(worth.afterLayering(), age) * discount;
                all[year][layout.years + age] = Checks.lastRepeats(worth.afterCuttingBack(), age) * discount;
            }
        }
        return all;
    }

    /** Return what a mother with her parts in these stages is worth. */
    double worth(double[][] worths, int year, int[] stages) {
        double sum = 0;
        for (int stage = 0; stage < stages.length; stage++) {
            if (stages[stage] > 0) {
                sum += stages[stage] * worths[year][stage];
            }
        }
        return sum / shape.parts();
    }

    /** Return what she is worth when all of her has just been layered and severed. */
    double severedWorth(int year) {
        return severed[year];
    }

    /** Return by how much less a deed counts than leaving her would, were both worth the same. */
    double reluctance(Layout layout, Deed deed, int year) {
        return step * layout.severity[deed.ordinal()][year];
    }

    /** Tell whether a deed is open to her in a year, whatever her wood. */
    boolean isOpen(Shape.Arc arc) {
        return open[arc.number()];
    }

    /** Return by band how many layers, and then how many cuttings, an arc may set; the factor is 1 for what is expected. */
    void wood(int year, Shape.Arc arc, double factor, int[] into) {
        if (factor == 1) {
            System.arraycopy(free, arc.number() * (bands + 1), into, 0, bands + 1);
        } else {
            count(year, arc, factor, into);
        }
    }

    /** Return what {@link #wood} would fill, for all arcs at once and as expected; not to be written to. */
    int[] free() {
        return free;
    }

    private void count(int year, Shape.Arc arc, double factor, int[] into) {
        java.util.Arrays.fill(into, 0, bands + 1, 0);
        for (int i = 0; i < arc.stages().length; i++) {
            int stage = arc.stages()[i];
            int[] one = wood[stage][stage == 0 ? year : 0];
            for (int band = 0; band <= bands; band++) {
                int many = factor == 1 ? one[band] : (int) Math.rint(one[band] * factor);
                into[band] += many * arc.taken()[i] / shape.parts();
            }
        }
    }

    /** Return by band the most positions, and then the most cuttings, that she ever carries. */
    int[] mostWood() {
        int[] most = new int[bands + 1];
        for (int[][] stage : wood) {
            for (int[] one : stage) {
                for (int band = 0; band <= bands; band++) {
                    most[band] = Math.max(most[band], one[band]);
                }
            }
        }
        return most;
    }

    private boolean mayDo(int year, Shape.Arc arc) {
        if (arc.deed() == Deed.LEAVE_LONG || arc.deed() == Deed.CUT_BACK) {
            return true;
        }
        if (year < mother.heldYears()) {
            return false;
        }
        return switch (arc.deed()) {
            case SELL -> tree.length > 0;
            case LAYER_AND_SELL -> tree.length > 0 && isRested(year, arc);
            case LAYER -> isRested(year, arc);
            case TRY_OUT -> mother.trial().isPresent() && isRested(year, arc);
            case TAKE_CUTTINGS -> cuttingProducts.length > 0;
            default -> true;
        };
    }

    boolean isRested(int year, Shape.Arc arc) {
        return arc.leastAge() >= mother.restYears() && !(arc.takesLeft() && year < mother.restNow());
    }

    /** Return what a grower calls an arc: taking nothing is rest where nothing can be taken. */
    Deed named(int year, int state, Shape.Arc arc) {
        return arc.deed() == Deed.LEAVE_LONG && !couldTake(year, state) ? Deed.REST : arc.deed();
    }

    private boolean couldTake(int year, int state) {
        int[] free = new int[bands + 1];
        for (Shape.Arc arc : shape.arcs(year, state)) {
            boolean layers = arc.deed() == Deed.LAYER;
            if ((layers || arc.deed() == Deed.TAKE_CUTTINGS) && isOpen(arc)) {
                wood(year, arc, 1, free);
                for (int band = layers ? 0 : bands; band < (layers ? bands : bands + 1); band++) {
                    if (free[band] > 0 && (layers ? layerProducts[band] : cuttingProducts).length > 0) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
