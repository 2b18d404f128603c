package ortet.yield;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The take of the units that have something in common.
 *
 * @param groups what they have in common, one for each thing that take is told apart by; empty for the total
 * @param tally how they stand
 * @param rate their take rate; absent when nothing is known
 * @param bounds the bounds of the rate; absent when nothing is unaccounted
 * @param stood in how many batches and from how many mothers they stood
 */
public record TakeRow(List<Group> groups, Tally tally, Optional<TakeRate> rate, Optional<Bounds> bounds, Stood stood) {
    public TakeRow {
        groups = List.copyOf(groups);
        Objects.requireNonNull(tally);
        Objects.requireNonNull(rate);
        Objects.requireNonNull(bounds);
        Objects.requireNonNull(stood);
    }

    /** Return what to call the row: its groups, or {@code all}. */
    public String shown() {
        return groups.isEmpty()
                ? "all"
                : String.join(", ", groups.stream().map(Group::shown).toList());
    }
}
