package ortet.choice;

/**
 * Trees that stand saleable.
 *
 * @param cultivar its place in {@link ForecastPast#cultivars()}
 * @param size the class in which they were graded last, as its place in {@link ForecastPast#sizes()}
 * @param count how many
 */
record ForecastStock(int cultivar, int size, int count) {}
