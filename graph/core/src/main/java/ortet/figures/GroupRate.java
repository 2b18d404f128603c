package ortet.figures;

/**
 * What a model says about one group's rate.
 *
 * @param label of the group
 * @param count all its successes and trials
 * @param rate half likely to be above, half below the true one; in (0, 1)
 * @param interval of the rate, holding it
 */
public record GroupRate(String label, Count count, double rate, Interval interval) {}
