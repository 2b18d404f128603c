package ortet.figures;

import java.util.List;
import java.util.Optional;
import ortet.value.Refused;

/**
 * Warmth as growers count it: degree-days above a base temperature, out of monthly normals.
 *
 * <p>A day gives max(0, T − base), its T the normal of its month ({@link Course#STEP}) or interpolated between the middles
 * of the months ({@link Course#LINEAR}): month m has its normal at its middle, half its days after those before it, day k
 * of the year has the temperature at k − ½, and December goes over into January. The year has 365 days, without 29
 * February, and begins anew after its end.
 *
 * <p>Temperatures are whatever is given, in degrees Celsius: normals are averages over years, so that a single year is
 * warmer or colder, and the maximum with 0 of a mean is below the mean of the maxima near the base. A rough guide to when to
 * look, not a clock.
 *
 * @see "McMaster & Wilhelm 1997, Agricultural and Forest Meteorology 87:291, method 1 on daily means"
 */
public final class Warmth {
    private static final int[] DAYS = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    private static final int YEAR = 365;
    private static final int MONTHS = 12;
    private static final int LONGEST = 730;

    private final double[] daily;

    /** How a day's temperature follows from the normals. */
    public enum Course {
        /** Every day has its month's. */
        STEP,
        /** Straight lines between the middles of the months. */
        LINEAR
    }

    /**
     * When a sum was reached.
     *
     * @param days on which day it was reached, the day of the start the first
     * @param dayOfYear the day of the year, from 1, of a year of 365 days
     * @param yearsLater how often the year had begun anew
     * @param sum the warmth up to the end of that day
     * @param before the warmth up to the end of the day before
     */
    public record Reached(int days, int dayOfYear, int yearsLater, double sum, double before) {}

    private Warmth(double[] daily) {
        this.daily = daily;
    }

    /**
     * Return the warmth of a year of monthly normals.
     *
     * @param normals of January to December, degrees Celsius, twelve finite numbers
     * @throws Refused when they are not
     */
    public static Warmth of(List<Double> normals, Course course) {
        if (normals.size() != MONTHS || !normals.stream().allMatch(Double::isFinite)) {
            throw Refused.because("bad-normals", "expected twelve monthly temperatures, found " + normals);
        }
        double[] daily = new double[YEAR];
        double[] middles = new double[MONTHS];
        int before = 0;
        for (int month = 0; month < MONTHS; month++) {
            middles[month] = before + DAYS[month] / 2.0;
            for (int day = before; day < before + DAYS[month]; day++) {
                daily[day] = normals.get(month);
            }
            before += DAYS[month];
        }
        if (course == Course.LINEAR) {
            for (int day = 0; day < YEAR; day++) {
                daily[day] = between(normals, middles, day + 0.5);
            }
        }
        return new Warmth(daily);
    }

    private static double between(List<Double> normals, double[] middles, double time) {
        int next = 0;
        while (next < MONTHS && middles[next] <= time) {
            next++;
        }
        int last = (next + MONTHS - 1) % MONTHS;
        double from = next == 0 ? middles[last] - YEAR : middles[last];
        double to = next == MONTHS ? middles[0] + YEAR : middles[next];
        double share = (time - from) / (to - from);
        return normals.get(last) + share * (normals.get(next % MONTHS) - normals.get(last));
    }

    /**
     * Return the degree-days of some days in a row, in full days.
     *
     * @param dayOfYear the first of them, 1 to 365
     * @param days how many, at least 0
     * @param baseC the temperature above which warmth counts
     */
    public double sum(int dayOfYear, int days, double baseC) {
        double sum = 0;
        for (int day = 0; day < days; day++) {
            sum += Math.max(0, daily[(dayOfYear - 1 + day) % YEAR] - baseC);
        }
        return sum;
    }

    /**
     * Return when the sum from a day on is first at least a target.
     *
     * @param dayOfYear the first day, which counts in full, 1 to 365
     * @param target degree-days, above 0
     * @param baseC the temperature above which warmth counts
     * @return absent when it is not reached within 730 days
     */
    public Optional<Reached> reach(int dayOfYear, double target, double baseC) {
        double sum = 0;
        for (int day = 0; day < LONGEST; day++) {
            double before = sum;
            int at = dayOfYear - 1 + day;
            sum += Math.max(0, daily[at % YEAR] - baseC);
            if (sum >= target) {
                return Optional.of(new Reached(day + 1, at % YEAR + 1, at / YEAR, sum, before));
            }
        }
        return Optional.empty();
    }
}
