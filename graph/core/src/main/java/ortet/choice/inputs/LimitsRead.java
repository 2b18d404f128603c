package ortet.choice.inputs;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import ortet.book.BookView;
import ortet.book.Listings;
import ortet.choice.Amounts;
import ortet.choice.Concentration;
import ortet.choice.Licence;
import ortet.choice.Limits;
import ortet.entry.PlaceListed;
import ortet.plant.Place;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Makes limits out of the lines that tell them. */
final class LimitsRead {
    private static final List<String> SEASONS = List.of("winter", "spring", "summer", "autumn");
    private static final int MORE_YEARS = 20;

    private final List<LimitLine> lines;
    private final int firstYear;
    private final int years;
    private final Map<Place, Place> within = new HashMap<>();
    private final Set<String> rooms = new TreeSet<>();
    private final boolean bySeason;
    private final List<String> notes = new ArrayList<>();

    LimitsRead(List<LimitLine> lines, int firstYear, int years, BookView view) {
        this.lines = lines;
        this.firstYear = firstYear;
        this.years = years;
        Set<String> known = new TreeSet<>();
        for (PlaceListed place : Listings.of(view).places()) {
            known.add(place.place().name());
            place.within().ifPresent(larger -> within.put(place.place(), larger));
        }
        boolean seasons = false;
        for (LimitLine line : lines) {
            if (line.what() == LimitLine.What.ROOM) {
                if (!line.where().isEmpty() && !known.isEmpty() && !known.contains(line.where())) {
                    throw new Refused(Fault.of("unknown-place", "no place \"" + line.where() + "\" is listed")
                            .nearest(Nearest.of(line.where(), known)));
                }
                rooms.add(line.where());
            } else if (line.what() == LimitLine.What.HOURS && !line.where().isEmpty()) {
                if (!SEASONS.contains(line.where().toLowerCase(Locale.ROOT))) {
                    throw new Refused(Fault.of(
                                    "unknown-season",
                                    "\"" + line.where() + "\" is no season; expected " + String.join(", ", SEASONS))
                            .nearest(Nearest.of(line.where(), SEASONS)));
                }
                seasons = true;
            }
        }
        bySeason = seasons;
        if (lines.isEmpty()) {
            notes.add(
                    "limits: none, so that the plan may need more hours or room than there are (--limits FILE tells them)");
        }
    }

    /** Return the season of a month: December to February, and so on. */
    static int season(int month) {
        return month % 12 / 3;
    }

    boolean isBySeason() {
        return bySeason;
    }

    boolean hasRoom() {
        return !rooms.isEmpty();
    }

    List<String> seasons() {
        return bySeason ? SEASONS : List.of("");
    }

    List<String> notes() {
        return notes;
    }

    /** Return the limited place that a place is, or is within; of all room where that is limited; else the place. */
    String place(Optional<Place> place) {
        Optional<Place> at = place;
        for (int depth = 0; at.isPresent() && depth < MORE_YEARS; depth++) {
            if (rooms.contains(at.get().name())) {
                return at.get().name();
            }
            at = Optional.ofNullable(within.get(at.get()));
        }
        return rooms.contains("") ? "all room" : place.map(Place::name).orElse("place not known");
    }

    List<Double> evenly(double area) {
        return Collections.nCopies(bySeason ? SEASONS.size() : 1, area);
    }

    Limits limits(Set<String> unlicensed, UnaryOperator<String> wholeName) {
        List<Licence> licences = new ArrayList<>();
        List<Concentration> shares = new ArrayList<>();
        Set<String> licensed = new TreeSet<>();
        for (LimitLine line : lines) {
            switch (line.what()) {
                case LICENCE -> {
                    String cultivar = wholeName.apply(line.where());
                    licences.add(new Licence(cultivar, (int) line.amount()));
                    licensed.add(cultivar);
                }
                case CLONE_SHARE -> shares.add(new Concentration(Concentration.On.CLONE, line.amount()));
                case PLACE_SHARE -> shares.add(new Concentration(Concentration.On.PLACE, line.amount()));
                case HOURS, ROOM -> {}
            }
        }
        unlicensed.stream()
                .filter(name -> !licensed.contains(name))
                .forEach(name -> licences.add(new Licence(name, 0)));
        Map<String, Amounts> room = new HashMap<>();
        for (String place : rooms) {
            room.put(place.isEmpty() ? "all room" : place, amounts(LimitLine.What.ROOM, place, false));
        }
        return new Limits(amounts(LimitLine.What.HOURS, "", bySeason), room, licences, shares);
    }

    private Amounts amounts(LimitLine.What what, String where, boolean seasons) {
        List<List<Double>> all = new ArrayList<>();
        for (int year = firstYear; year < firstYear + years + MORE_YEARS; year++) {
            List<Double> amounts = new ArrayList<>();
            for (String season : seasons()) {
                amounts.add(amount(what, seasons ? season : where, year));
            }
            all.add(amounts);
        }
        return new Amounts(all);
    }

    private double amount(LimitLine.What what, String where, int year) {
        double usual = ChoiceInputs.PLENTY;
        for (LimitLine line : lines) {
            if (line.what() == what && line.where().equalsIgnoreCase(where)) {
                if (line.year().isEmpty()) {
                    usual = line.amount();
                } else if (line.year().get() == year) {
                    return line.amount();
                }
            }
        }
        return usual;
    }
}
