package ortet.lineage;

import java.util.Objects;
import ortet.book.Act;

/**
 * What was raised from a unit by one act.
 *
 * <p>Of what counts for take, each unit is taken, failed, withdrawn, pending, or went on into a batch that was merged
 * with others, where nobody can tell any more which are from this unit. Units in batches that were struck from several
 * mothers are {@code shared} and in none of these. Trays that were split are counted with their parts.
 *
 * @param act how
 * @param tags how many tags were given by it
 * @param set how many units were set, struck, worked or sown; for other acts how many units there were at first
 * @param taken how many have taken; 0 where the act does not count for take
 * @param failed how many have failed
 * @param withdrawn how many were taken out before anybody could know
 * @param pending how many are not known, those that could not be found included
 * @param merged how many went on into merged batches before anybody knew
 * @param shared how many units are in batches struck from several mothers, this one among them
 * @param unrecorded how many tags were given by acts that nobody recorded when they were done, which are in no rate and in none
 *     of the numbers before
 * @param weighed how many sowings by weight, in which nobody knows how many there are
 * @param growing how many plants grow now under the tags given by the act, and under the tags of what was drawn from
 *     these
 */
public record OffspringTally(
        Act act,
        int tags,
        int set,
        int taken,
        int failed,
        int withdrawn,
        int pending,
        int merged,
        int shared,
        int unrecorded,
        int weighed,
        int growing) {
    public OffspringTally {
        Objects.requireNonNull(act);
    }

    /** Tell whether units raised by the act count for take. */
    public boolean countsForTake() {
        return countsForTake(act);
    }

    /** Return what the units are called: {@code layers}, {@code cuttings}. */
    public String what() {
        return switch (act) {
            case LAYERED_FROM -> "layers";
            case LAYERED_BELOW -> "layers below the union";
            case STRUCK_FROM -> "cuttings";
            case STRUCK_BELOW -> "cuttings below the union";
            case STOCK_WOOD_OF -> "units of its wood below unions";
            case SCION_OF -> "grafts as scion";
            case ROOTSTOCK_OF -> "grafts as rootstock";
            case SEED_OF -> "seeds";
            case POLLEN_OF -> "seeds by its pollen";
            case DIVIDED_FROM -> "divisions";
            case SPORT_OF -> "sports";
            case DRAWN_FROM -> "plants drawn";
            case SPLIT_FROM -> "units split off";
            case MERGED_FROM -> "units merged on";
            case ONE_OF -> "plants that may be it";
        };
    }

    static boolean countsForTake(Act act) {
        return switch (act) {
            case LAYERED_FROM, LAYERED_BELOW, STRUCK_FROM, STRUCK_BELOW, SCION_OF, ROOTSTOCK_OF, SEED_OF, POLLEN_OF ->
                true;
            case DIVIDED_FROM, SPORT_OF, DRAWN_FROM, SPLIT_FROM, MERGED_FROM, ONE_OF, STOCK_WOOD_OF -> false;
        };
    }
}
