package ortet.choice;

import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is given of one stage before anything is drawn.
 *
 * @param model what the book says of it
 * @param kinds of what is in it, or will be
 * @param batches units that are in it
 * @param clusters how likely every luck of each cluster is, by its place
 * @param standsOn what part of the curve of each kind stands on each season
 * @param inOneGo what share of pairs of one cluster that come through in one round do so in one month, beyond what all do
 */
record ForecastGiven(
        ForecastModel model,
        Set<Integer> kinds,
        List<ForecastBatch> batches,
        ForecastLikely[] clusters,
        Map<Integer, double[]> standsOn,
        double inOneGo) {}
