package ortet.figures;

/**
 * The distribution of the number of successes in the first group, given all margins, as it depends on the odds ratio ω:
 * each number k of {@code low} to {@code high} weighs c(k) ω^k.
 */
interface Tilted {
    /** Return the smallest number possible. */
    long low();

    /** Return the largest number possible. */
    long high();

    /** Return what the distribution says about x when the logarithm of the odds ratio is the given one. */
    Sums at(double logOdds, long x);

    /**
     * What the distribution says about x.
     *
     * @param mean of the number of successes, less x
     * @param atMost probability of x or fewer
     * @param atLeast probability of x or more
     */
    record Sums(double mean, double atMost, double atLeast) {}
}
