package ortet.choice;

import java.util.HashMap;
import java.util.Map;

/** Trees that are graded in one simulation: in which size classes, and which of them in one go. */
final class ForecastGraded {
    private final ForecastGround ground;
    private final ForecastHorizon horizon;
    private final int months;
    private final ForecastSizes sizes;
    private final int classes;
    private final ForecastLayout layout;
    private final ForecastTogether together;
    private final ForecastDice dice;
    private final Map<Integer, double[]> sizeShares = new HashMap<>();

    /** How many trees of each kind and season are graded, by size class and month; null where none are. */
    private final int[][] lots;

    private final int seasons;

    ForecastGraded(ForecastGround ground, ForecastDice dice) {
        this.ground = ground;
        this.horizon = ground.horizon();
        this.months = horizon.months();
        this.sizes = ground.sizes();
        this.classes = sizes.classes();
        this.layout = ground.layout();
        this.together = ground.together();
        this.dice = dice;
        this.seasons = ground.season(months - 1) + 1;
        this.lots = new int[ground.past().kinds().size() * seasons][];
    }

    /** Count trees of one cluster that are graded in each month, and draw their size classes. */
    void add(int kind, int season, int[] graded) {
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

    /**
     * Let trees of a lot, and of a cultivar, that are graded in one round be so in one month, as far as they ever were.
     *
     * @param became where they are added, as the layout has it
     */
    void inOneGo(int[] became) {
        for (int place = 0; place < lots.length; place++) {
            if (lots[place] != null) {
                move(lots[place], 0, together.lot(), 1, new int[0]);
                int from = layout.cell(ground.slot(place / seasons), 0);
                for (int at = 0; at < lots[place].length; at++) {
                    became[from + at] += lots[place][at];
                }
            }
        }
        int[] all = together.cultivar() > 0 ? all(became) : new int[0];
        for (int slot = 0; slot < layout.slots(); slot++) {
            double habit = together.habit(layout.cultivars().get(slot));
            move(became, layout.cell(slot, 0), together.cultivar(), habit, all);
        }
    }

    /** Return how many of all cultivars are graded in each month. */
    private int[] all(int[] became) {
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
}
