package ortet.choice;

import ortet.book.UnitFacts.Method;

/**
 * What a forecast of one cultivar and method goes by in one stage.
 *
 * @param cultivar its name, empty where it is not known
 * @param method how it was raised
 * @param stage which stretch of the way
 * @param waiting how many units are in it now
 * @param good how many of its units came through
 * @param bad how many did not
 * @param open how many left otherwise or are still in it
 * @param clusters of how many trays, or mothers and seasons
 * @param lean the share of the weight that is leant from the wider kind, 0 to 1
 * @param wider what it leans on
 * @param widerKnown how many units of known end are in that
 * @param chance the share that comes through in the end
 * @param months after how many months of the stage's own clock half of these have; below 0 where none do
 */
public record ForecastBehind(
        String cultivar,
        Method method,
        ForecastStage stage,
        int waiting,
        long good,
        long bad,
        long open,
        int clusters,
        double lean,
        Wider wider,
        long widerKnown,
        double chance,
        double months) {
    /** What few units lean on. */
    public enum Wider {
        /** The other cultivars of the taxon, by the same method. */
        TAXON,
        /** All cultivars, by the same method. */
        METHOD,
        /** All cultivars by all methods. */
        ALL
    }
}
