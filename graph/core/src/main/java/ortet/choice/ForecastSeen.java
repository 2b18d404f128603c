package ortet.choice;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

/**
 * What has been seen of the units of one cluster in one season, and how likely every luck of theirs makes it.
 *
 * <p>With a normal score δ of whether they come through, and τ of when, a unit comes through with chance p(δ) = Φ((q + δ)/√o),
 * and by the age at which the share F of its like that come through has, with chance Φ((z − τ)/√t); q and z are the scores of
 * the kind's share and of F, o and t what of the spread of fates and of times is every unit's own. One that is waiting comes
 * through later, or fails later, or nobody knows.
 */
final class ForecastSeen {
    private static final double OPEN = 1e-6;

    private final int kind;
    private final int method;
    private final int season;
    private final double score;
    private long good;
    private long bad;
    private long timed;
    private double sum;
    private final Map<Integer, double[]> waiting = new TreeMap<>();

    /**
     * Nothing yet.
     *
     * @param score of the share of its kind that comes through
     */
    ForecastSeen(int kind, int method, int season, double score) {
        this.kind = kind;
        this.method = method;
        this.season = season;
        this.score = score;
    }

    int kind() {
        return kind;
    }

    int method() {
        return method;
    }

    int season() {
        return season;
    }

    /** Count units that came through, at an age of which z is the score. */
    void good(double z, int count) {
        good += count;
        timed += count;
        sum += z * count;
    }

    /** Count units that failed, at an age that says nothing of the luck of their like. */
    void bad(int count) {
        bad += count;
    }

    /** Count units that failed, at an age of which z is the score: their times are shared as those of the others are. */
    void bad(double z, int count) {
        bad += count;
        timed += count;
        sum += z * count;
    }

    /**
     * Count units that wait, or left, at a step.
     *
     * @param z the score of the share of those coming through that had by then
     * @param badZ the score of the share of those failing that had
     * @param badShared whether the times of failing are shared as those of coming through
     * @param rest how many there are of which nobody knows how they end, for one of which one does
     */
    void waiting(int step, double z, double badZ, boolean badShared, double rest, int count) {
        waiting.computeIfAbsent(step, any -> new double[] {z, badZ, badShared ? 1 : 0, rest, 0})[4] += count;
    }

    /** Return how likely every luck makes what was seen. */
    ForecastLikely likely(ForecastShared fate, ForecastShared timing) {
        ForecastLikely wide = new ForecastLikely(fate.cluster(), timing.cluster());
        fill(wide, fate, timing);
        ForecastLikely found = wide.closer();
        fill(found, fate, timing);
        ForecastLikely last = found.closer();
        fill(last, fate, timing);
        return last;
    }

    private void fill(ForecastLikely likely, ForecastShared fate, ForecastShared timing) {
        double own = Math.sqrt(fate.own());
        double timingOwn = timing.own();
        double timingRoot = Math.sqrt(timingOwn);
        int places = ForecastLikely.PLACES;
        double[] through = new double[places];
        double[] fates = new double[places];
        double[] times = new double[places];
        for (int at = 0; at < places; at++) {
            through[at] = Math.min(1 - OPEN, Math.max(OPEN, ForecastDice.phi((score + likely.fate(at)) / own)));
            fates[at] = (good > 0 ? good * Math.log(through[at]) : 0) + (bad > 0 ? bad * Math.log(1 - through[at]) : 0);
            double late = likely.timing(at);
            times[at] = (sum * late - timed * late * late / 2) / timingOwn;
        }
        double[] logs = new double[places * places];
        for (int row = 0; row < places; row++) {
            for (int column = 0; column < places; column++) {
                logs[row * places + column] = fates[row] + times[column];
            }
        }
        double[] still = new double[places];
        double[] badStill = new double[places];
        for (double[] one : waiting.values()) {
            for (int at = 0; at < places; at++) {
                still[at] = 1 - ForecastDice.phi((one[0] - likely.timing(at)) / timingRoot);
                badStill[at] = 1
                        - (one[2] > 0
                                ? ForecastDice.phi((one[1] - likely.timing(at)) / timingRoot)
                                : ForecastDice.phi(one[1]));
            }
            for (int row = 0; row < places; row++) {
                for (int column = 0; column < places; column++) {
                    logs[row * places + column] += one[4]
                            * Math.log(through[row] * still[column]
                                    + (1 - through[row]) * badStill[column]
                                    + one[3]
                                    + OPEN);
                }
            }
        }
        double top = Arrays.stream(logs).max().orElse(0);
        for (int at = 0; at < logs.length; at++) {
            likely.set(at, Math.exp(logs[at] - top));
        }
    }
}
