package ortet.decade;

import java.util.ArrayList;
import java.util.List;
import ortet.decade.Truth.Means;

/** What is written down or plain to see on the day in February on which a grower decides: what nobody else may look behind. */
final class Records {
    /** How long a mother must have rested, for those who go by a rule. */
    static final int REST = 2;

    private static final int YEARS_ASKED = 3;

    private final Truth truth;
    private int year;
    final int[] lastLayered;
    final boolean[] gone;
    final int[][] positions;
    final long[] taken;
    final long[] known;
    final long[][] established;
    final long[][] graded = new long[Truth.BANDS][Truth.SIZES];
    final long[] neverFit = new long[Truth.BANDS];
    final List<Tree> trees = new ArrayList<>();

    Records(Truth truth) {
        this.truth = truth;
        lastLayered = new int[truth.mothers()];
        gone = new boolean[truth.mothers()];
        positions = new int[truth.mothers()][Truth.BANDS];
        taken = new long[truth.mothers()];
        known = new long[truth.mothers()];
        established = new long[truth.cultivars()][2];
    }

    /** A tree that stands: severed, established or graded. */
    static final class Tree {
        final int cultivar;
        final int band;
        final int set;
        final String tag;
        private final Truth.Fate fate;
        /** Below 0 until it is graded. */
        int size = -1;

        int gradedIn;

        Tree(int cultivar, int band, int set, String tag, Truth.Fate fate) {
            this.cultivar = cultivar;
            this.band = band;
            this.set = set;
            this.tag = tag;
            this.fate = fate;
        }

        /** Return what is still to come, which only the world may ask. */
        Truth.Fate fate() {
            return fate;
        }
    }

    void begin(int now) {
        year = now;
    }

    int year() {
        return year;
    }

    Means means() {
        return truth.means();
    }

    int mothers() {
        return truth.mothers();
    }

    int cultivars() {
        return truth.cultivars();
    }

    int cultivar(int mother) {
        return truth.cultivar(mother);
    }

    double price(int cultivar, int size) {
        return truth.price(cultivar, size, year);
    }

    double asTree(int mother) {
        return truth.asTree(mother);
    }

    /** Return the trees ordered for a year, or none where nobody can know of it yet. */
    int ordered(int cultivar, int size, int due) {
        return due <= year + Truth.AHEAD ? truth.ordered(cultivar, size, due) : 0;
    }

    /** Return how many trees to expect to be asked for in a year: the orders, and the rest as in the last three years. */
    double expected(int cultivar, int size, int due) {
        double all = 0;
        double free = 0;
        for (int before = 1; before <= YEARS_ASKED; before++) {
            free += (double) truth.asked(cultivar, size, year - before) / YEARS_ASKED;
            all += (double) (truth.asked(cultivar, size, year - before) + truth.ordered(cultivar, size, year - before))
                    / YEARS_ASKED;
        }
        return due <= year + Truth.AHEAD ? ordered(cultivar, size, due) + free : all;
    }

    boolean isFree(int mother) {
        return !gone[mother]
                && lastLayered[mother] <= year - REST
                && positions[mother][0] + positions[mother][1] + positions[mother][2] > 0;
    }

    /** Return the share of what took that established, of a cultivar. */
    double establishing(int cultivar) {
        long[] own = established[cultivar];
        return (own[0] + 9.0) / (own[0] + own[1] + 10.0);
    }

    /** Return the shares of the established that came to each size from stems of a band, as if one of the usual size more. */
    double[] sizes(int band) {
        double[] shares = new double[Truth.SIZES];
        double all = neverFit[band] + 1;
        for (int size = 0; size < Truth.SIZES; size++) {
            all += graded[band][size];
        }
        for (int size = 0; size < Truth.SIZES; size++) {
            shares[size] = (graded[band][size] + (size == band ? 1 : 0)) / all;
        }
        return shares;
    }

    /** Return the share of a cultivar's layers that took. */
    double rate(int cultivar) {
        long yes = 1;
        long all = 2;
        for (int mother = 0; mother < mothers(); mother++) {
            if (cultivar(mother) == cultivar) {
                yes += taken[mother];
                all += known[mother];
            }
        }
        return (double) yes / all;
    }

    /** Return how many trees of a size to expect in each year from this one on, as past shares go. */
    double[] coming(int cultivar, int size, int years) {
        double[] coming = new double[years];
        for (Tree tree : trees) {
            if (tree.cultivar != cultivar) {
                continue;
            }
            if (tree.size >= 0) {
                coming[0] += tree.size == size ? 1 : 0;
            } else {
                int at = Math.max(0, tree.set + size + 1 - year);
                double lives = tree.set == year - 1 ? establishing(cultivar) : 1;
                coming[Math.min(years - 1, at)] += lives * sizes(tree.band)[size];
            }
        }
        return coming;
    }

    /** Return what of the expected demand of a year nothing that stands will meet. */
    double missing(int cultivar, int size, int due) {
        double[] coming = coming(cultivar, size, due - year + 1);
        double left = 0;
        double missing = 0;
        for (int at = 0; at < coming.length; at++) {
            double asked = expected(cultivar, size, year + at);
            left += coming[at];
            missing = Math.max(0, asked - left);
            left = Math.max(0, left - asked);
        }
        return missing;
    }

    /** Return the square metres that the trees that stand take in a year to come, at most. */
    double roomTaken(int due) {
        double squares = 0;
        for (Tree tree : trees) {
            if (tree.size < 0 || due == year) {
                squares += Cost.square(due - tree.set);
            }
        }
        return squares;
    }
}
