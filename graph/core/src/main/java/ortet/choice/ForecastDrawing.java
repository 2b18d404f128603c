package ortet.choice;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** One simulation: what becomes of every unit, and of every tree that stands. */
final class ForecastDrawing {
    private static final double HALF = 0.5;
    private static final double SURE = 1 - 1e-9;
    private static final double DAYS_OF_MONTH = 365.25 / 12;

    private final ForecastGround ground;
    private final List<ForecastKind> kinds;
    private final ForecastHorizon horizon;
    private final int months;
    private final ForecastSizes sizes;
    private final int classes;
    private final ForecastLayout layout;
    private final ForecastTogether together;
    private final ForecastDice dice;
    private final ForecastDrawnStage taking;
    private final ForecastDrawnStage grading;
    private final ForecastDrawnStage selling;
    private final Map<Integer, double[]> sizeShares = new HashMap<>();
    private final int[] became;
    private final int[] standing;

    // how many trees of each lot are graded, by size class and month
    private final int seasons;
    private final int[][] lots;

    // how many units at hand take, are graded, or sold in each month
    private final int[] taken;
    private final int[] graded;
    private final int[] sold;
    private boolean anyGraded;
    private boolean anySold;

    /** Draw the curves and the luck of seasons. */
    ForecastDrawing(ForecastGround ground, ForecastDice dice) {
        this.ground = ground;
        this.kinds = ground.past().kinds();
        this.horizon = ground.horizon();
        this.months = horizon.months();
        this.sizes = ground.sizes();
        this.classes = sizes.classes();
        this.layout = ground.layout();
        this.together = ground.together();
        this.dice = dice;
        this.taking = new ForecastDrawnStage(ground, ForecastStage.TAKING, dice);
        this.grading = new ForecastDrawnStage(ground, ForecastStage.GRADING, dice);
        this.selling = new ForecastDrawnStage(ground, ForecastStage.SELLING, dice);
        this.became = new int[layout.cells()];
        this.standing = new int[layout.cells()];
        this.seasons = season(months - 1) + 1;
        this.lots = new int[kinds.size() * seasons][];
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
        gradeTogether();
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

    private int season(int month) {
        return ground.of(ForecastStage.GRADING).model().season(horizon.year(month));
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
                grow(kind, season(month), places[year - horizon.year(0) + 1], taken[month]);
            }
            if (month == months - 1 || horizon.year(month + 1) != year) {
                count(kind, season(month));
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

    /** Count what was graded and sold of one cluster. */
    private void count(int kind, int season) {
        if (anyGraded) {
            grade(kind, season);
            Arrays.fill(graded, 0);
            anyGraded = false;
        }
        if (anySold) {
            int ungraded = layout.cell(slot(kind), classes - 1);
            for (int month = 0; month < months; month++) {
                became[ungraded + month] += sold[month];
            }
            Arrays.fill(sold, 0);
            anySold = false;
        }
    }

    private int slot(int kind) {
        return layout.slot(kinds.get(kind).cultivar());
    }

    /** Draw the size classes of what was graded of one cluster. */
    private void grade(int kind, int season) {
        int place = kind * seasons + season;
        if (lots[place] == null) {
            lots[place] = new int[classes * months];
        }
        int[] lot = lots[place];
        double[] shares = sizeShares.computeIfAbsent(kind, any -> sizes.draw(kind, dice));
        double alike = Math.sqrt(sizes.correlation());
        int ofCluster = -1;
        for (int month = 0; month < months; month++) {
            for (int one = 0; one < graded[month]; one++) {
                int size;
                if (alike > 0 && dice.uniform() < alike) {
                    ofCluster = ofCluster < 0 ? ForecastSizes.pick(shares, dice) : ofCluster;
                    size = ofCluster;
                } else {
                    size = ForecastSizes.pick(shares, dice);
                }
                lot[size * months + month]++;
            }
        }
    }

    // ---- in one go ----

    /** Let trees of a lot, and of a cultivar, that are graded in one year be so in one month, as far as they ever were. */
    private void gradeTogether() {
        for (int place = 0; place < lots.length; place++) {
            if (lots[place] != null) {
                move(lots[place], 0, together.lot(), 1, new int[0]);
                int from = layout.cell(slot(place / seasons), 0);
                for (int at = 0; at < lots[place].length; at++) {
                    became[from + at] += lots[place][at];
                }
            }
        }
        int[] all = together.cultivar() > 0 ? allGraded() : new int[0];
        for (int slot = 0; slot < layout.slots(); slot++) {
            double habit = together.habit(layout.cultivars().get(slot));
            move(became, layout.cell(slot, 0), together.cultivar(), habit, all);
        }
    }

    /** Return how many of all cultivars are graded in each month. */
    private int[] allGraded() {
        int[] all = new int[months];
        for (int slot = 0; slot < layout.slots(); slot++) {
            for (int size = 0; size < classes - 1; size++) {
                int from = layout.cell(slot, size);
                for (int month = 0; month < months; month++) {
                    all[month] += became[from + month];
                }
            }
        }
        return all;
    }

    /**
     * Move trees to the month of one of them; each in each month is as likely as before.
     *
     * @param counts of trees, by size class and month
     * @param from where they begin
     * @param share of pairs that go together
     * @param habit how likely it is one of them, and not one of all
     * @param all how many trees of all are graded in each month
     */
    private void move(int[] counts, int from, double share, double habit, int[] all) {
        if (share > 0) {
            double goes = Math.sqrt(share);
            for (ForecastHorizon.Round round : horizon.rounds()) {
                int trees = sum(counts, from, classes - 1, round);
                if (trees > 1) {
                    int month = habit >= 1 || dice.uniform() < habit
                            ? monthOf(counts, from, classes - 1, round, dice.below(trees))
                            : monthOf(all, 0, 1, round, dice.below(sum(all, 0, 1, round)));
                    for (int size = 0; size < classes - 1; size++) {
                        int here = from + size * months;
                        for (int other = round.from(); other < round.to(); other++) {
                            int goesAlong = other == month ? 0 : dice.binomial(counts[here + other], goes);
                            counts[here + other] -= goesAlong;
                            counts[here + month] += goesAlong;
                        }
                    }
                }
            }
        }
    }

    /** Return how many trees of so many size classes there are in a round. */
    private int sum(int[] counts, int from, int many, ForecastHorizon.Round round) {
        int sum = 0;
        for (int size = 0; size < many; size++) {
            for (int month = round.from(); month < round.to(); month++) {
                sum += counts[from + size * months + month];
            }
        }
        return sum;
    }

    /** Return the month of one of them, counted month by month. */
    private int monthOf(int[] counts, int from, int many, ForecastHorizon.Round round, int tree) {
        int left = tree;
        for (int month = round.from(); month < round.to(); month++) {
            for (int size = 0; size < many; size++) {
                left -= counts[from + size * months + month];
            }
            if (left < 0) {
                return month;
            }
        }
        return round.to() - 1;
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
