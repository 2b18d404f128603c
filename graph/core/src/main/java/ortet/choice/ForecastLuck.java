package ortet.choice;

/**
 * How much of their luck units share in a stage, as correlations from 0 to 1.
 *
 * @param stage which
 * @param fateOfSeason whether they come through: units of one season
 * @param fateOfCluster units of one tray, or mother and season, beyond that
 * @param timeOfSeason when they do: units of one season
 * @param timeOfCluster units of one tray, or mother and season, beyond that
 * @param seasons from how many seasons, by methods, it is told
 */
public record ForecastLuck(
        ForecastStage stage,
        double fateOfSeason,
        double fateOfCluster,
        double timeOfSeason,
        double timeOfCluster,
        int seasons) {}
