package ortet.lineage;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * A clone at a glance.
 *
 * @param first its first unit in the book: the ortet, or the earliest known
 * @param tag the tag of that unit
 * @param kind what is known of its beginning
 * @param isBatch whether the first unit is a batch, so that nobody knows whether all in it are one clone
 * @param begun when the first unit began
 * @param cultivar the name that its first unit bears, by itself or by what it is from
 * @param others other names that members bear by their own entries, sorted
 * @param tags how many units, each under a tag of its own, were ever of it, whatever became of them
 * @param living how many plants of it grow
 * @param pending how many units of it are neither taken nor failed
 * @param sold how many were sold and have not come back
 * @param generations how many acts of propagation lie between the first unit and the farthest
 */
public record CloneRow(
        UnitNumber first,
        Tag tag,
        CloneKind kind,
        boolean isBatch,
        When begun,
        Optional<CultivarName> cultivar,
        List<CultivarName> others,
        int tags,
        long living,
        long pending,
        long sold,
        int generations) {
    public CloneRow {
        Objects.requireNonNull(first);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(kind);
        Objects.requireNonNull(begun);
        Objects.requireNonNull(cultivar);
        others = List.copyOf(others);
    }
}
