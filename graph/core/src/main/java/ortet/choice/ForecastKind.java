package ortet.choice;

/**
 * A cultivar raised by a method.
 *
 * @param cultivar its place in {@link ForecastPast#cultivars()}
 * @param taxon a number for its taxon
 * @param method the place in {@code UnitFacts.Method}
 */
record ForecastKind(int cultivar, int taxon, int method) {}
