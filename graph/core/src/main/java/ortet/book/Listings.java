package ortet.book;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import ortet.entry.CultivarListed;
import ortet.entry.MakeUp;
import ortet.entry.PlaceListed;
import ortet.entry.Recorded;
import ortet.entry.Right;
import ortet.plant.CultivarName;
import ortet.plant.Place;

/** The cultivars and places that the nursery has listed; of several listings of one name the latest counts. */
public final class Listings {
    private final Map<CultivarName, CultivarListed> cultivars = new TreeMap<>();
    private final Map<Place, PlaceListed> places = new TreeMap<>();

    /** Start with nothing listed. */
    Listings() {}

    /** Return what is listed in a book. */
    public static Listings of(BookView view) {
        Listings listings = new Listings();
        for (Recorded recorded : view.listings()) {
            listings.add(Strand.of(recorded, view.amendments(recorded.order())));
        }
        return listings;
    }

    void add(List<Strand> strands) {
        for (Strand strand : strands) {
            if (strand.entry() instanceof CultivarListed listed) {
                cultivars.put(listed.cultivar(), listed);
            } else if (strand.entry() instanceof PlaceListed listed) {
                places.put(listed.place(), listed);
            }
        }
    }

    /** Return every listed cultivar, by name. */
    public Collection<CultivarListed> cultivars() {
        return List.copyOf(cultivars.values());
    }

    /** Return every listed place, by name. */
    public Collection<PlaceListed> places() {
        return List.copyOf(places.values());
    }

    /** Return the listing of a cultivar. */
    public Optional<CultivarListed> cultivar(CultivarName name) {
        return Optional.ofNullable(cultivars.get(name));
    }

    /** Return the listing of a place. */
    public Optional<PlaceListed> place(Place place) {
        return Optional.ofNullable(places.get(place));
    }

    /** Return a place and every place that is listed as being within it, directly or not. */
    public Set<Place> within(Place place) {
        Set<Place> within = new TreeSet<>(Set.of(place));
        boolean more = true;
        while (more) {
            more = false;
            for (PlaceListed one : places.values()) {
                if (one.within().filter(within::contains).isPresent()) {
                    more |= within.add(one.place());
                }
            }
        }
        return within;
    }

    /** Tell whether any place is listed. */
    boolean hasPlaces() {
        return !places.isEmpty();
    }

    /** Tell whether any cultivar is listed. */
    boolean hasCultivars() {
        return !cultivars.isEmpty();
    }

    /** Tell whether a cultivar is listed as one that root cuttings do not keep. */
    boolean isChimera(CultivarName name) {
        return cultivar(name).flatMap(CultivarListed::chimera).orElse(false);
    }

    /** Tell whether a cultivar is listed as protected on a day, and no licence is named. */
    public boolean isProtected(CultivarName name, LocalDate day) {
        return cultivar(name)
                .filter(listed ->
                        listed.right().filter(right -> right == Right.PROTECTED).isPresent())
                .filter(listed -> listed.licence().isEmpty())
                .filter(listed -> listed.protectedUntil()
                        .map(until -> !until.last().isBefore(day))
                        .orElse(true))
                .isPresent();
    }

    /** Tell whether a name stands for plants raised from seed. */
    boolean isSeedRaised(CultivarName name) {
        return name.epithet().isEmpty()
                || cultivar(name)
                        .flatMap(CultivarListed::makeUp)
                        .filter(makeUp -> makeUp == MakeUp.SEED_RAISED)
                        .isPresent();
    }
}
