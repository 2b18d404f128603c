package ortet.lineage;

import java.time.LocalDate;
import java.util.Objects;
import ortet.plant.Tag;

/**
 * Where a unit comes from, through every link in the book.
 *
 * @param asked the tag asked about
 * @param asOf the day as of which it is answered
 * @param tree the unit asked about, with its sources, and theirs; each unit is told once
 * @param origin where its clone begins
 * @param units how many units the trace tells of
 * @param isWhole whether nothing was left out because there were too many units
 */
public record Trace(Tag asked, LocalDate asOf, Step tree, Origin origin, int units, boolean isWhole) {
    public Trace {
        Objects.requireNonNull(asked);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(tree);
        Objects.requireNonNull(origin);
    }
}
