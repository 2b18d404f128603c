package ortet.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import ortet.book.BookView;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts;
import ortet.inventory.Places;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * What the book expects at a place, beside what was seen there.
 *
 * @param place the place, with all places within it
 * @param asOf the day
 * @param there the tags seen that the book expects there, as they were read
 * @param missing what the book expects there and was not seen
 * @param strangers what was seen there, and stands elsewhere or nowhere by the book
 * @param gone what was seen there, and is gone by the book
 * @param unknown tags seen that are not in the book
 */
public record Sighting(
        Place place,
        LocalDate asOf,
        List<Tag> there,
        List<Expected> missing,
        List<Stranger> strangers,
        List<Tag> gone,
        List<Unknown> unknown) {
    private static final QueryName AT_PLACE = new QueryName("units-at-place");

    /**
     * A unit expected at a place.
     *
     * @param tag its present tag
     * @param place where exactly
     * @param since since when
     */
    public record Expected(Tag tag, Place place, String since) {}

    /**
     * A unit seen where the book does not expect it.
     *
     * @param tag the tag as it was read
     * @param elsewhere where the book has it, where it says
     */
    public record Stranger(Tag tag, Optional<Place> elsewhere) {}

    /**
     * A tag that is not in the book.
     *
     * @param tag the tag as it was read
     * @param nearest tags that may have been meant
     */
    public record Unknown(Tag tag, List<String> nearest) {}

    public Sighting {
        Objects.requireNonNull(place);
        Objects.requireNonNull(asOf);
        there = List.copyOf(there);
        missing = List.copyOf(missing);
        strangers = List.copyOf(strangers);
        gone = List.copyOf(gone);
        unknown = List.copyOf(unknown);
    }

    /** Return the tags that were seen and are in the book and not gone: what can be recorded as seen. */
    public List<Tag> seen() {
        List<Tag> seen = new ArrayList<>(there);
        strangers.forEach(stranger -> seen.add(stranger.tag()));
        return seen;
    }

    /** Compare the tags seen at a place with what the book expects there on a day. */
    public static Sighting of(BookView view, Place place, Collection<Tag> seen, LocalDate asOf) {
        Set<Place> places = Places.within(view, place);
        List<Expected> expected = new ArrayList<>();
        Set<UnitNumber> expectedUnits = new LinkedHashSet<>();
        for (Place here : places) {
            Rows rows = view.ask(
                    AT_PLACE, Parameters.NONE.with("place", here.name()).with("as_of", asOf));
            for (Rows.Row row : rows) {
                expectedUnits.add(new UnitNumber(row.whole("unit").orElseThrow().intValue()));
                expected.add(new Expected(
                        new Tag(row.text("tag").orElseThrow()),
                        here,
                        row.text("since").orElseThrow()));
            }
        }
        List<Tag> there = new ArrayList<>();
        List<Stranger> strangers = new ArrayList<>();
        List<Tag> gone = new ArrayList<>();
        List<Unknown> unknown = new ArrayList<>();
        Set<UnitNumber> found = new LinkedHashSet<>();
        for (Tag tag : new LinkedHashSet<>(seen)) {
            Optional<UnitFacts> facts = view.unit(tag).flatMap(view::facts);
            if (facts.isEmpty()) {
                unknown.add(new Unknown(tag, view.nearest(tag)));
                continue;
            }
            if (!found.add(facts.get().unit())) {
                continue;
            }
            if (expectedUnits.contains(facts.get().unit()) || isOnOneOf(facts.get(), expectedUnits, asOf)) {
                there.add(tag);
            } else if (isGone(facts.get(), asOf)) {
                gone.add(tag);
            } else {
                strangers.add(new Stranger(tag, standsAt(facts.get(), asOf)));
            }
        }
        List<Expected> missing = expected.stream()
                .filter(one -> view.unit(one.tag()).filter(found::contains).isEmpty())
                .sorted((one, other) -> one.tag().compareTo(other.tag()))
                .toList();
        return new Sighting(place, asOf, there, missing, strangers, gone, unknown);
    }

    /** Tell whether a unit is a layer still on one of the plants expected. */
    private static boolean isOnOneOf(UnitFacts facts, Set<UnitNumber> plants, LocalDate asOf) {
        return facts.nature() == UnitFacts.Nature.LAYER
                && last(facts, asOf).flatMap(UnitFacts.Standing::pending).orElse(0) > 0
                && facts.links().stream().anyMatch(link -> link.act().isLayering() && plants.contains(link.mother()));
    }

    private static Optional<UnitFacts.Standing> last(UnitFacts facts, LocalDate asOf) {
        return facts.standings().stream()
                .filter(standing -> !standing.day().first().isAfter(asOf))
                .reduce((first, second) -> second);
    }

    private static boolean isGone(UnitFacts facts, LocalDate asOf) {
        return last(facts, asOf)
                .filter(standing -> standing.growing() == 0)
                .flatMap(UnitFacts.Standing::pending)
                .filter(pending -> pending == 0)
                .isPresent();
    }

    private static Optional<Place> standsAt(UnitFacts facts, LocalDate asOf) {
        Optional<Place> place = Optional.empty();
        for (UnitFacts.Stay stay : facts.stays()) {
            if (!stay.day().first().isAfter(asOf)) {
                place = Optional.of(stay.place());
            }
        }
        return place;
    }
}
