package ortet.choice;

import java.util.Arrays;

/**
 * Where a number of trees may lie: quantiles of the simulations, each a number that was drawn.
 *
 * @param mean of all
 * @param median half were no greater
 * @param lower50 a quarter were no greater
 * @param upper50 three quarters were no greater
 * @param lower90 one in twenty were no greater
 * @param upper90 nineteen in twenty were no greater
 * @param within50 the share of the simulations that lie in the first band: more than half, where numbers are small
 * @param within90 the share that lie in the second
 */
public record ForecastBand(
        double mean, int median, int lower50, int upper50, int lower90, int upper90, double within50, double within90) {
    /** Return the band of so many draws. */
    static ForecastBand of(int[] drawn) {
        int[] sorted = drawn.clone();
        Arrays.sort(sorted);
        int lower50 = quantile(sorted, 0.25);
        int upper50 = quantile(sorted, 0.75);
        int lower90 = quantile(sorted, 0.05);
        int upper90 = quantile(sorted, 0.95);
        return new ForecastBand(
                Arrays.stream(sorted).average().orElse(0),
                quantile(sorted, 0.5),
                lower50,
                upper50,
                lower90,
                upper90,
                within(sorted, lower50, upper50),
                within(sorted, lower90, upper90));
    }

    private static int quantile(int[] sorted, double share) {
        return sorted[Math.max(0, (int) Math.ceil(share * sorted.length) - 1)];
    }

    private static double within(int[] sorted, int lower, int upper) {
        return (double) Arrays.stream(sorted)
                        .filter(one -> lower <= one && one <= upper)
                        .count()
                / sorted.length;
    }

    /** Tell whether a number lies in the 50 % band. */
    public boolean holds50(int number) {
        return lower50 <= number && number <= upper50;
    }

    /** Tell whether a number lies in the 90 % band. */
    public boolean holds90(int number) {
        return lower90 <= number && number <= upper90;
    }
}
