package ortet.decade;

import java.util.Locale;
import ortet.decade.Luck.Of;

/**
 * What a nursery is like and what becomes of what is done in it; nobody who decides may look here, but for the one who knows.
 * Log odds of take are a cultivar's, with what a mother, a season and a mother's season add to them.
 */
final class Truth {
    /** The first year of which anything is written. */
    static final int PAST = 2012;

    /** The first of the years that are played. */
    static final int FIRST = 2016;

    /** For how many years trees grow on after the last. */
    static final int AFTER = 4;

    /** How many size classes there are: small, medium, large. */
    static final int SIZES = 3;

    /** How many bands of stems there are. */
    static final int BANDS = 3;

    /** How many years ahead orders are taken. */
    static final int AHEAD = 4;

    private static final int RESTED = 4;
    private static final int MOST_POSITIONS = 40;
    private static final double[][] SIZED = {{0.88, 0.12, 0}, {0.24, 0.70, 0.06}, {0, 0.35, 0.65}};
    private static final double[][] PRICES = {{20, 45}, {50, 110}, {110, 250}};
    private static final double[] BANDED = {0.45, 0.35, 0.20};

    private final World world;
    private final Luck luck;
    private final int cultivars;
    private final int mothers;
    private final double[] levels;
    private final double[] odds;
    private final double[] establishing;
    private final double[][] full;
    private final double[] asTree;
    private final double[][] prices;
    private final double[][] asked;
    private final double firm;
    private final double seasons;
    private final double mothersSeasons;
    private final double neverFit;
    private final double late;
    private final double[] regrowth;
    private final int disaster;
    private final Means means;

    /** What one unit takes of everything. */
    record Means(double hour, double setHours, double moss, double m2Year, double springHours, double roomM2) {}

    /**
     * What becomes of a layer.
     *
     * @param taken whether it takes
     * @param established whether it lives when it has taken
     * @param size its size class; below 0 when it is never fit for sale
     * @param ready the year in which it is fit for sale, or thrown out
     */
    record Fate(boolean taken, boolean established, int size, int ready) {}

    /**
     * Make up a nursery.
     *
     * @param least the fewest mothers
     * @param most the most mothers
     */
    Truth(World world, Luck luck, int least, int most) {
        this.world = world;
        this.luck = luck;
        this.cultivars = 2 + (int) (4 * ground(0));
        this.mothers = least + (int) ((most - least + 1) * ground(1));
        double mothersDiffer = world == World.MOTHERS_ALIKE ? 0 : range(2, 0.3, 1.0);
        this.seasons = range(3, 0.2, 0.6);
        this.mothersSeasons = range(4, 0.2, 0.6);
        this.neverFit = range(5, 0.05, 0.25);
        this.late = range(6, 0.1, 0.4);
        this.firm = range(7, 0.2, 0.5);
        this.regrowth = world == World.SLOW_WOOD
                ? new double[] {0, 0.2, 0.5, 0.8, 1}
                : new double[] {0, range(8, 0.35, 0.6), range(9, 0.8, 1), 1, 1};
        this.disaster = FIRST + 3 + (int) (4 * ground(10));
        levels = new double[cultivars];
        establishing = new double[cultivars];
        prices = new double[cultivars][SIZES];
        double[] usual = new double[SIZES];
        for (int size = 0; size < SIZES; size++) {
            usual[size] = range(11 + size, PRICES[size][0], PRICES[size][1]);
        }
        for (int at = 0; at < cultivars; at++) {
            levels[at] = 0.4 + 0.8 * gauss(20, at);
            establishing[at] = 0.80 + 0.17 * ground(21, at);
            double factor = Math.exp(0.2 * gauss(22, at));
            for (int size = 0; size < SIZES; size++) {
                prices[at][size] = Math.round(100 * usual[size] * factor) / 100.0;
            }
        }
        odds = new double[mothers];
        full = new double[mothers][BANDS];
        asTree = new double[mothers];
        for (int mother = 0; mother < mothers; mother++) {
            double own = world == World.TWO_HUMPS
                    ? (ground(30, mother) < 0.5 ? -1.2 : 1.2)
                    : mothersDiffer * gauss(31, mother);
            odds[mother] = levels[cultivar(mother)] + own;
            double total = Math.min(MOST_POSITIONS, 14 * Math.exp(0.35 * gauss(32, mother)));
            double sum = 0;
            for (int band = 0; band < BANDS; band++) {
                full[mother][band] = BANDED[band] * Math.exp(0.4 * gauss(33, mother, band));
                sum += full[mother][band];
            }
            for (int band = 0; band < BANDS; band++) {
                full[mother][band] *= total / sum;
            }
            asTree[mother] = Math.round(80 + 320 * ground(34, mother));
        }
        asked = demand();
        means = needs();
    }

    /** Work out what is asked for from what the mothers can give when each is layered every other year. */
    private double[][] demand() {
        double[][] given = new double[cultivars][SIZES];
        for (int mother = 0; mother < mothers; mother++) {
            int cultivar = cultivar(mother);
            for (int band = 0; band < BANDS; band++) {
                double trees = 0.5 * full[mother][band] * regrowth[2] * rate(mother, FIRST) * (1 - neverFit);
                for (int size = 0; size < SIZES; size++) {
                    given[cultivar][size] += trees * SIZED[band][size];
                }
            }
        }
        double[][] wanted = new double[cultivars][SIZES];
        for (int at = 0; at < cultivars; at++) {
            double scarce = 0.7 * Math.pow(2.5 / 0.7, ground(23, at));
            double sum = 0;
            double moved = 0;
            for (int size = 0; size < SIZES; size++) {
                sum += given[at][size];
                wanted[at][size] = given[at][size] * Math.exp(0.3 * gauss(24, at, size));
                moved += wanted[at][size];
            }
            for (int size = 0; size < SIZES && moved > 0; size++) {
                wanted[at][size] *= sum / moved / scarce;
            }
        }
        return wanted;
    }

    private Means needs() {
        double layers = 0;
        double squares = 0;
        for (int mother = 0; mother < mothers; mother++) {
            for (int band = 0; band < BANDS; band++) {
                layers += 0.5 * full[mother][band] * regrowth[2];
            }
        }
        for (double[] sizes : asked) {
            for (int size = 0; size < SIZES; size++) {
                squares += sizes[size]
                        / (1 - neverFit)
                        * (Cost.square(0) * 1.5 + Cost.square(2) * Math.max(0, size - 0.2));
            }
        }
        double setHours = Math.round(100 * range(15, 0.2, 0.5)) / 100.0;
        return new Means(
                Math.round(range(16, 14, 22)),
                setHours,
                Math.round(100 * range(17, 1, 3)) / 100.0,
                Math.round(range(18, 8, 20)),
                Math.round(layers * setHours * range(19, 0.6, 1.5)),
                Math.max(1, Math.round(squares * range(14, 1, 1.8))));
    }

    private double ground(int... which) {
        return luck.share(Of.GROUND, 0, which);
    }

    private double gauss(int... which) {
        return luck.normal(Of.GROUND, 0, which);
    }

    private double range(int which, double low, double high) {
        return low + (high - low) * ground(which);
    }

    // ---- what everybody may know ----

    World world() {
        return world;
    }

    Luck luck() {
        return luck;
    }

    int cultivars() {
        return cultivars;
    }

    int mothers() {
        return mothers;
    }

    int cultivar(int mother) {
        return mother % cultivars;
    }

    Means means() {
        return means;
    }

    /** Return what a mother fetches as a tree. */
    double asTree(int mother) {
        return asTree[mother];
    }

    /** Return what a tree sells for in a year. */
    double price(int cultivar, int size, int year) {
        double fallen = world == World.PRICES_FALL && year > FIRST ? Math.pow(0.93, year - FIRST) : 1;
        return Math.round(100 * prices[cultivar][size] * fallen) / 100.0;
    }

    // ---- what shows in its time ----

    /** Return how many positions a mother carries, so many years after she was cropped. */
    int positions(int mother, int band, int year, int age) {
        double noise = Math.exp(0.1 * luck.normal(Of.POSITIONS, year, mother, band));
        return (int) Math.round(full[mother][band] * regrowth[Math.min(RESTED, age)] * noise);
    }

    /** Return how many trees are ordered firmly for a year; they are ordered {@link #AHEAD} years before. */
    int ordered(int cultivar, int size, int year) {
        return luck.poisson(mean(cultivar, size, year) * firm, Of.ORDERS, year - AHEAD, cultivar, size);
    }

    /** Return how many trees are asked for in a year beside the orders. */
    int asked(int cultivar, int size, int year) {
        double moved = Math.exp(0.2 * luck.normal(Of.ASKED, year, cultivar));
        return luck.poisson(mean(cultivar, size, year) * (1 - firm) * moved, Of.ASKED, year, cultivar, size);
    }

    private double mean(int cultivar, int size, int year) {
        if (world != World.DEMAND_SHIFTS) {
            return asked[cultivar][size];
        }
        double done = Math.max(0, Math.min(1, (year - FIRST - 1) / 4.0));
        double end = (cultivar + (ground(40) < 0.5 ? 1 : 0)) % 2 == 0 ? 2 : 0.4;
        return asked[cultivar][size] * Math.pow(end, done);
    }

    /** Return what becomes of the layer of a number on a stem of a band that was set on a mother in a year. */
    Fate fate(int mother, int band, int year, int number) {
        double chance = logistic(odds(mother, year) + stem(band) + season(mother, year));
        boolean taken = luck.share(Of.TAKING, year, mother, band, number) < chance;
        boolean established =
                luck.share(Of.ESTABLISHING, year + 1, mother, band, number) < establishing[cultivar(mother)];
        double left = luck.share(Of.SIZE, year + 1, mother, band, number) - neverFit;
        if (left < 0) {
            return new Fate(taken, established, -1, year + 2);
        }
        int size = 0;
        left /= 1 - neverFit;
        while (size < SIZES - 1 && left >= SIZED[band][size]) {
            left -= SIZED[band][size++];
        }
        boolean isLate = luck.share(Of.LATE, year + 1, mother, band, number) < late;
        return new Fate(taken, established, size, year + size + 1 + (isLate ? 1 : 0));
    }

    private double season(int mother, int year) {
        double shared = seasons * luck.normal(Of.SEASON, year);
        if (world == World.CULTIVARS_SEASONS) {
            shared += 0.6 * luck.normal(Of.CULTIVAR_SEASON, year, cultivar(mother));
        }
        if (world == World.DISASTER && year == disaster) {
            shared -= 2.5;
        }
        return shared + mothersSeasons * luck.normal(Of.MOTHER_SEASON, year, mother);
    }

    private double odds(int mother, int year) {
        boolean ages = world == World.AGEING && ground(41, mother) < 0.5;
        return odds[mother] - (ages ? 0.2 * (year - PAST) : 0);
    }

    private double stem(int band) {
        return world == World.STEMS ? 0.6 * (1 - band) : 0;
    }

    /** Tell whether what failed on a mother in a year is written down. */
    boolean isWritten(int mother, int year) {
        return world != World.UNWRITTEN_FAILURES || luck.share(Of.WRITING, year, mother) >= 0.3;
    }

    // ---- what nobody knows ----

    /** Return the share of what is set on a mother that establishes in the middle of all seasons to come, over her stems. */
    double rate(int mother, int year) {
        double spread = Math.hypot(seasons, mothersSeasons);
        double sum = 0;
        double all = 0;
        for (int band = 0; band < BANDS; band++) {
            double weight = full[mother][band];
            double mean = 0;
            for (int point = -2; point <= 2; point++) {
                // normal weights of the quadrature by Hermite polynomials with five points (memory)
                double[] at = {0, 1.355626179974266, 2.856970013872806};
                double[] weights = {0.533333333333333, 0.222075922005613, 0.011257411327721};
                double z = Math.signum(point) * at[Math.abs(point)];
                mean += weights[Math.abs(point)] * logistic(odds(mother, year) + stem(band) + spread * z);
            }
            sum += weight * mean;
            all += weight;
        }
        return sum / all * establishing[cultivar(mother)];
    }

    /** Return the share of established trees from stems of a band that become fit for sale in a size class. */
    double share(int band, int size) {
        return (1 - neverFit) * SIZED[band][size];
    }

    /** Return the share of established trees that never become fit for sale. */
    double neverFit() {
        return neverFit;
    }

    private static double logistic(double odds) {
        return 1 / (1 + Math.exp(-odds));
    }

    /** Return the name of a cultivar. */
    static String name(int cultivar) {
        return "Acer palmatum '" + new String[] {"Arakawa", "Deshojo", "Katsura", "Seiryu", "Shishigashira"}[cultivar]
                + "'";
    }

    /** Return the word for a size class. */
    static String size(int size) {
        return new String[] {"small", "medium", "large"}[size];
    }

    /** Return the tag of a mother. */
    static String tag(int mother) {
        return String.format(Locale.ROOT, "M-%02d", mother + 1);
    }
}
