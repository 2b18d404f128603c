package ortet.choice;

import java.util.Arrays;

/** One simulation: what becomes of every unit, and of every tree that stands. */
final class ForecastDrawing {
    private static final double HALF = 0.5;
    private static final double SURE = 1 - 1e-9;
    private static final double DAYS_OF_MONTH = 365.25 / 12;

    private final ForecastGround ground;
    private final ForecastHorizon horizon;
    private final int months;
    private final int classes;
    private final ForecastLayout layout;
    private final ForecastDice dice;
    private final ForecastDrawnStage taking;
    private final ForecastDrawnStage grading;
    private final ForecastDrawnStage selling;
    private final ForecastGraded trees;
    private final int[] became;
    private final int[] standing;

    // how many units at hand take, are graded, or sold in each month
    private final int[] taken;
    private final int[] graded;
    private final int[] sold;
    private boolean anyGraded;
    private boolean anySold;

    /** Draw the curves and the luck of seasons. */
    ForecastDrawing(ForecastGround ground, ForecastDice dice) {
        this.ground = ground;
        this.horizon = ground.horizon();
        this.months = horizon.months();
        this.classes = ground.sizes().classes();
        this.layout = ground.layout();
        this.dice = dice;
        this.taking = new ForecastDrawnStage(ground, ForecastStage.TAKING, dice);
        this.grading = new ForecastDrawnStage(ground, ForecastStage.GRADING, dice);
        this.selling = new ForecastDrawnStage(ground, ForecastStage.SELLING, dice);
        this.trees = new ForecastGraded(ground, dice);
        this.became = new int[layout.cells()];
        this.standing = new int[layout.cells()];
        this.taken = new int[months];
        this.graded = new int[months];
        this.sold = new int[months];
    }

    /** Draw all else. */
    ForecastDrawing draw() {
        for (ForecastBatch batch : ground.of(ForecastStage.TAKING).batches()) {
            take(batch);
        }
        for (ForecastBatch batch : ground.of(ForecastStage.GRADING).batches()) {
            growOn(batch);
        }
        trees.inOneGo(became);
        stand();
        return this;
    }

    /** Return how many became saleable, laid out by cultivar, size class and month. */
    int[] became() {
        return became;
    }

    /** Return how many stood saleable at the end of each month, laid out alike. */
    int[] standing() {
        return standing;
    }

    // ---- units ----

    /** Let what is pending take, and grow on. */
    private void take(ForecastBatch batch) {
        int kind = batch.kind();
        taking.stand(kind, batch.ageBy(ForecastStage.TAKING));
        taking.expect(taking.chance(), taking.good());
        for (int at = 0; at < batch.counts().length; at++) {
            int[] places = batch.places()[at];
            Arrays.fill(taken, 0);
            taking.luck(kind, batch.seasons()[at], places[0]);
            int through = taking.through(batch.counts()[at]);
            if (through > 0) {
                taking.spread(through, taken);
                growOn(kind, places);
            }
        }
    }

    /** Let what has taken in some month grow on from the middle of it. */
    private void growOn(int kind, int[] places) {
        for (int month = 0; month < months; month++) {
            int year = horizon.year(month);
            if (taken[month] > 0) {
                grading.standFresh(kind, month);
                selling.standFresh(kind, month);
                expect();
                grow(kind, ground.season(month), places[year - horizon.year(0) + 1], taken[month]);
            }
            if (month == months - 1 || horizon.year(month + 1) != year) {
                count(kind, ground.season(month));
            }
        }
    }

    /** Let what had taken before grow on. */
    private void growOn(ForecastBatch batch) {
        int kind = batch.kind();
        grading.stand(kind, batch.ageBy(ForecastStage.GRADING));
        selling.stand(kind, batch.ageBy(ForecastStage.SELLING));
        expect();
        for (int at = 0; at < batch.counts().length; at++) {
            int season = batch.seasons()[at];
            grow(kind, season, batch.places()[at][0], batch.counts()[at]);
            count(kind, season);
        }
    }

    /** Take it that what is not sold may be graded. */
    private void expect() {
        selling.expect(selling.chance(), selling.good());
        grading.expect(ofOthers(grading.chance(), 1 - selling.chance()), ofOthers(grading.good(), 1 - selling.good()));
    }

    /** Return the share of those not sold that is graded; both curves are drawn, and may together be more than all. */
    private static double ofOthers(double share, double others) {
        return others > 0 ? Math.min(SURE, share / others) : 0;
    }

    /** Draw how many of one cluster are sold and how many graded, and when. */
    private void grow(int kind, int season, int place, int count) {
        selling.luck(kind, season, place);
        int sells = selling.through(count);
        if (sells > 0) {
            selling.spread(sells, sold);
            anySold = true;
        }
        grading.luck(kind, season, place);
        int grades = grading.through(count - sells);
        if (grades > 0) {
            grading.spread(grades, graded);
            anyGraded = true;
        }
    }

    /** Count what is graded and sold of one cluster. */
    private void count(int kind, int season) {
        if (anyGraded) {
            trees.add(kind, season, graded);
            Arrays.fill(graded, 0);
            anyGraded = false;
        }
        if (anySold) {
            int ungraded = layout.cell(ground.slot(kind), classes - 1);
            for (int month = 0; month < months; month++) {
                became[ungraded + month] += sold[month];
            }
            Arrays.fill(sold, 0);
            anySold = false;
        }
    }

    // ---- trees that stand ----

    /** Let trees stand until they are lost or sold. */
    private void stand() {
        ForecastLeaving leaving = ground.past().leaving();
        boolean isSold = ground.sales() == ForecastSales.AS_BEFORE;
        double lost = leaving.lostMonths() > 0 ? dice.gamma(leaving.lost() + HALF) / leaving.lostMonths() : 0;
        double[] sells = new double[ForecastLeaving.MONTHS];
        for (int month = 0; isSold && month < sells.length; month++) {
            sells[month] = leaving.soldMonths()[month] > 0
                    ? dice.gamma(leaving.sold()[month] + HALF) / leaving.soldMonths()[month]
                    : 0;
        }
        int[] now = new int[layout.slots() * classes];
        for (ForecastStock stock : ground.past().stock()) {
            if (layout.has(stock.cultivar())) {
                now[layout.slot(stock.cultivar()) * classes + stock.size()] += stock.count();
            }
        }
        for (int month = 0; month < months; month++) {
            double days = horizon.end(month) - horizon.before(month);
            double share = 1 - Math.exp(-(lost + sells[horizon.monthOfYear(month)]) * days / DAYS_OF_MONTH);
            for (int at = 0; at < now.length; at++) {
                boolean soldAtOnce = isSold && at % classes == classes - 1;
                int fresh = soldAtOnce ? 0 : became[at * months + month];
                now[at] = now[at] - dice.binomial(now[at], share) + fresh;
                standing[at * months + month] = now[at];
            }
        }
    }
}
