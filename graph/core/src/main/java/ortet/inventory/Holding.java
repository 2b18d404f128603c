package ortet.inventory;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.lineage.State;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * One unit on a day, as a list shows it.
 *
 * @param unit the unit
 * @param tag the tag that it bears
 * @param nature what it is
 * @param cultivar its name, by itself or by what it keeps the clone of; absent when not known or one of several
 * @param oneOf the names between which nobody can tell, sorted; empty otherwise
 * @param kind whether it is there
 * @param pending how many are neither taken nor failed; absent when nobody counted
 * @param growing how many grow on their own roots
 * @param last why the last of it left; absent while any is there
 * @param begun when it began
 * @param place where it stands, or stood last
 * @param since since when it stands there
 * @param container what it stands in; absent in open ground or where nobody said
 * @param from what it was raised from: its mothers, through the batches that it was drawn from, split off or merged
 * @param stockSince since when it is kept as stock, while it is
 * @param held whether it is held for plant health
 * @param reserved whether it is reserved
 */
public record Holding(
        UnitNumber unit,
        Tag tag,
        Nature nature,
        Optional<CultivarName> cultivar,
        List<CultivarName> oneOf,
        State.Kind kind,
        Optional<Integer> pending,
        int growing,
        Optional<Reason> last,
        When begun,
        Optional<Place> place,
        Optional<When> since,
        Optional<String> container,
        List<Tag> from,
        Optional<When> stockSince,
        boolean held,
        boolean reserved) {
    public Holding {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(nature);
        Objects.requireNonNull(cultivar);
        oneOf = List.copyOf(oneOf);
        Objects.requireNonNull(kind);
        Objects.requireNonNull(pending);
        Objects.requireNonNull(last);
        Objects.requireNonNull(begun);
        Objects.requireNonNull(place);
        Objects.requireNonNull(since);
        Objects.requireNonNull(container);
        from = List.copyOf(from);
        Objects.requireNonNull(stockSince);
    }

    /** Return the name in words: {@code Acer palmatum 'Deshojo'}, {@code one of …}, or nothing when it is not known. */
    public Optional<String> named() {
        if (!oneOf.isEmpty()) {
            return Optional.of("one of "
                    + String.join(
                            ", ", oneOf.stream().map(CultivarName::toString).toList()));
        }
        return cultivar.map(CultivarName::toString);
    }

    /** Return the state in words: {@code on its mother}, {@code 12 growing, 48 pending}, {@code sold}. */
    public String state() {
        return switch (kind) {
            case ON_ITS_MOTHER -> "on its mother";
            case GROWING -> growing == 1 ? "growing" : growing + " growing";
            case PENDING -> growing == 0 ? undecided() : growing + " growing, " + undecided();
            case GONE -> last.map(State::words).orElse("gone");
        };
    }

    private String undecided() {
        return pending.map(count -> count == 1 ? "pending" : count + " pending").orElse("pending, not counted");
    }
}
