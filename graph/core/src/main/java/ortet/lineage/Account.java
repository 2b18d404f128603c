package ortet.lineage;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.TagUse;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * All that the book says of one unit as of a day.
 *
 * @param asked the tag asked about
 * @param asOf the day as of which it is answered
 * @param unit the unit
 * @param tags every tag that it bears or bore, the present one last
 * @param nature what it is
 * @param named its cultivar
 * @param namings every name that it was said or found to bear, by the entries that say so
 * @param state how it stands
 * @param stockSince since when it is kept as stock, while it is
 * @param held by which entry it is held for plant health, while it is
 * @param reserved the reservations that hold
 * @param graded how it was last graded
 * @param place where it stands
 * @param container what it stands in
 * @param measured every measurement, in order
 * @param begun the act that made it
 * @param origin where its clone begins
 * @param parents what it comes from
 * @param offspring what was raised from it, by act
 * @param diary every entry that names it, in the order in which things happened
 */
public record Account(
        Tag asked,
        LocalDate asOf,
        UnitNumber unit,
        List<TagUse> tags,
        Nature nature,
        Named named,
        List<Deed> namings,
        State state,
        Optional<When> stockSince,
        Optional<Deed> held,
        List<Deed> reserved,
        Optional<Deed> graded,
        Optional<Standing> place,
        Optional<Container> container,
        List<Deed> measured,
        Deed begun,
        Origin origin,
        List<Parent> parents,
        List<OffspringTally> offspring,
        List<DiaryLine> diary) {
    /**
     * Where a unit stands.
     *
     * @param place the place
     * @param since since when
     */
    public record Standing(Place place, When since) {}

    /**
     * What a unit stands in.
     *
     * @param container the container; absent for open ground
     * @param since since when
     */
    public record Container(Optional<String> container, When since) {}

    public Account {
        Objects.requireNonNull(asked);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(unit);
        tags = List.copyOf(tags);
        Objects.requireNonNull(nature);
        Objects.requireNonNull(named);
        namings = List.copyOf(namings);
        Objects.requireNonNull(state);
        Objects.requireNonNull(stockSince);
        Objects.requireNonNull(held);
        reserved = List.copyOf(reserved);
        Objects.requireNonNull(graded);
        Objects.requireNonNull(place);
        Objects.requireNonNull(container);
        measured = List.copyOf(measured);
        Objects.requireNonNull(begun);
        Objects.requireNonNull(origin);
        parents = List.copyOf(parents);
        offspring = List.copyOf(offspring);
        diary = List.copyOf(diary);
    }

    /** Return the tag that the unit bears now. */
    public Tag tag() {
        return tags.get(tags.size() - 1).tag();
    }
}
