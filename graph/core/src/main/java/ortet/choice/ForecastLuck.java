package ortet.choice;

/**
 * How much of their luck units share in a stage, as correlations from 0 to 1, and what goes together, as shares from 0 to 1.
 *
 * @param stage which
 * @param fateOfSeason whether they come through: units of one season
 * @param fateOfCluster units of one tray, or mother and season, beyond that
 * @param timeOfSeason when they do: units of one season
 * @param timeOfCluster units of one tray, or mother and season, beyond that
 * @param seasons from how many seasons, by methods, it is told
 * @param own how much they come through at times of their own, rather than in rounds that people make; 1 but for grading
 * @param together what share of pairs of one tray, or mother and season, that come through in one round do so in one month, beyond
 *     what all do; 0 for taking
 */
public record ForecastLuck(
        ForecastStage stage,
        double fateOfSeason,
        double fateOfCluster,
        double timeOfSeason,
        double timeOfCluster,
        int seasons,
        double own,
        double together) {}
