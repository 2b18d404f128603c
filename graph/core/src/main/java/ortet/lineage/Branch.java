package ortet.lineage;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.Act;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * A unit raised from another, and what was raised from it.
 *
 * @param unit the unit
 * @param tag its tag on the day asked about
 * @param act how it comes from the one above
 * @param begun when it began
 * @param count how many of its units come from the one above, where the book says
 * @param isOneOfSeveral whether it may come from another than the one above
 * @param stands how it stands
 * @param own the name that it bears by its own entries
 * @param depth how many links lie between it and the unit asked about, at least 1
 * @param isAskedFor whether it passes the filters; otherwise it is told for what is below it
 * @param isToldElsewhere whether what was raised from it is told elsewhere in the same answer
 * @param below what was raised from it
 */
public record Branch(
        UnitNumber unit,
        Tag tag,
        Act act,
        When begun,
        Optional<Integer> count,
        boolean isOneOfSeveral,
        Stands stands,
        Optional<CultivarName> own,
        int depth,
        boolean isAskedFor,
        boolean isToldElsewhere,
        List<Branch> below) {
    public Branch {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(act);
        Objects.requireNonNull(begun);
        Objects.requireNonNull(count);
        Objects.requireNonNull(stands);
        Objects.requireNonNull(own);
        below = List.copyOf(below);
    }

    /** Return how it comes from the one above, in words: {@code layer}, {@code cuttings}, {@code graft by its scion}. */
    public String how() {
        String what = switch (act) {
            case LAYERED_FROM -> "layer";
            case LAYERED_BELOW -> "layer below the union";
            case STRUCK_FROM -> "cuttings";
            case STRUCK_BELOW -> "cuttings below the union";
            case STOCK_WOOD_OF -> "wood of this stock";
            case SCION_OF -> "graft, as scion";
            case ROOTSTOCK_OF -> "graft, as rootstock";
            case SEED_OF -> "seed";
            case POLLEN_OF -> "seed by its pollen";
            case DIVIDED_FROM -> "division";
            case SPORT_OF -> "sport";
            case DRAWN_FROM -> "drawn";
            case SPLIT_FROM -> "split off";
            case MERGED_FROM -> "merged";
            case ONE_OF -> "found, may be it";
        };
        return isOneOfSeveral ? what + ", from one of several" : what;
    }
}
