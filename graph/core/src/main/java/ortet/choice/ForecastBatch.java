package ortet.choice;

/**
 * Units of one kind that entered a stage in one week, and are in it still: they are drawn together.
 *
 * @param kind the place in {@link ForecastPast#kinds()}
 * @param age how old they are by the clock of each stage, in months
 * @param counts how many are of each cluster
 * @param seasons the season of each cluster, from the first of which anything is known
 * @param places where the luck of each cluster is kept; of one that is pending, where it is now, and then where it will be if it takes
 *     in the first year of the forecast, the second and so on
 * @param units how many are of all clusters
 */
record ForecastBatch(int kind, double[] age, int[] counts, int[] seasons, int[][] places, int units) {
    /** Return how old they are by the clock of a stage, in months. */
    double ageBy(ForecastStage stage) {
        return age[stage.ordinal()];
    }
}
