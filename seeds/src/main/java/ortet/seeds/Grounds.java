package ortet.seeds;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import ortet.plant.Place;

/** The places of Sallowfield: two premises, houses on them, benches in the houses, and open ground. */
final class Grounds {
    static final String HOME = "Sallowfield";
    static final String FAR = "Inishfallow";

    /**
     * A place.
     *
     * @param year since when there is one
     * @param premises for what lies in no larger place
     */
    record Spot(
            Place place,
            int year,
            Optional<Place> within,
            Optional<String> premises,
            double areaM2,
            Optional<String> note) {}

    private final List<Spot> spots = new ArrayList<>();

    final Place mist;
    final Place secondMist;
    final Place graftCase;
    final Place quarantine;
    final Place shop;
    final List<Place> frames;
    final List<Place> benches;
    final List<Place> standings;
    final List<Place> stockRows;
    final List<Place> fieldRows;
    final List<Place> bays;

    Grounds() {
        Place house = on(HOME, "Propagation house", 1988, 96, "heated");
        mist = within(house, "Mist bench 1", 1988, 14);
        secondMist = within(house, "Mist bench 2", 2014, 14);
        graftCase = within(house, "Graft case", 1988, 6);
        List<Place> inHouses = new ArrayList<>();
        Place one = on(HOME, "House 1", 1988, 180, "frost-free");
        Place two = on(HOME, "House 2", 1988, 180, "unheated");
        for (Place in : List.of(one, two)) {
            inHouses.addAll(numbered(in, in + " bench ", 4, 1988, 22));
        }
        within(inHouses.get(7), "House 2 bench 4, door end", 2015, 5);
        benches = List.copyOf(inHouses);
        Place frameYard = on(HOME, "Frame yard", 1988, 120, "");
        frames = numbered(frameYard, "Cold frame ", 3, 1988, 16);
        Place yard = on(HOME, "Yard", 1988, 900, "gravel over matting");
        standings = numbered(yard, "Standing ground ", 4, 1988, 180);
        shop = within(yard, "Shop table", 1988, 12);
        quarantine = within(yard, "Quarantine pen", 2013, 20);
        Place stockField = on(HOME, "Stock field", 1988, 2600, "mother plants, branches left long");
        stockRows = numbered(stockField, "Stock row ", 8, 1988, 240);
        Place farField = on(FAR, "Far field", 2012, 5200, "open ground, sandy; an cladach thiar");
        fieldRows = numbered(farField, "Far field row ", 6, 2012, 700);
        Place tunnel = on(FAR, "Tunnel", 2017, 240, "");
        bays = numbered(tunnel, "Tunnel bay ", 4, 2017, 50);
    }

    List<Spot> spots() {
        return spots;
    }

    private Place on(String premises, String name, int year, double areaM2, String note) {
        Place place = new Place(name);
        spots.add(new Spot(
                place,
                year,
                Optional.empty(),
                Optional.of(premises),
                areaM2,
                Optional.of(note).filter(words -> !words.isEmpty())));
        return place;
    }

    private Place within(Place outer, String name, int year, double areaM2) {
        Place place = new Place(name);
        spots.add(new Spot(place, year, Optional.of(outer), Optional.empty(), areaM2, Optional.empty()));
        return place;
    }

    private List<Place> numbered(Place outer, String name, int count, int year, double areaM2) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(number -> within(outer, name + number, year, areaM2))
                .toList();
    }
}
