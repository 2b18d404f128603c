package ortet.choice.inputs;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
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
    /** More units of a licence than anybody sets. */
    private static final int MOST_UNITS = 1_000_000;

    private final List<LimitLine> lines;
    private final int firstYear;
    private final int years;
    private final Map<Place, Place> within = new HashMap<>();
    private final Set<String> rooms = new TreeSet<>();
    private final boolean bySeason;
    private final List<String> notes = new ArrayList<>();

    LimitsRead(List<LimitLine> lines, int firstYear, int years, BookView view) {
        this.firstYear = firstYear;
        this.years = years;
        Set<String> known = new TreeSet<>();
        for (PlaceListed place : Listings.of(view).places()) {
            known.add(place.place().name());
            place.within().ifPresent(larger -> within.put(place.place(), larger));
        }
        List<Fault> faults = new ArrayList<>();
        Set<List<Object>> told = new HashSet<>();
        List<LimitLine> read = new ArrayList<>();
        for (LimitLine line : lines) {
            LimitLine one = line;
            Optional<Fault> fault = fault(line, known);
            if (fault.isEmpty()) {
                one = named(line, known);
                fault = told.add(List.of(one.what(), one.where(), one.year()))
                        ? Optional.empty()
                        : Optional.of(bad("told-twice", one, told(one) + " is told twice"));
            }
            fault.ifPresent(faults::add);
            read.add(one);
        }
        this.bySeason = read.stream().anyMatch(LimitsRead::isOfASeason);
        read.stream()
                .filter(line -> bySeason
                        && line.what() == LimitLine.What.HOURS
                        && line.where().isEmpty())
                .findFirst()
                .ifPresent(line -> faults.add(
                        bad("mixed-hours", line, "expected hours either by season or for the whole year, found both")));
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        this.lines = List.copyOf(read);
        read.stream().filter(line -> line.what() == LimitLine.What.ROOM).forEach(line -> rooms.add(line.where()));
        if (lines.isEmpty()) {
            notes.add(
                    "limits: none, so that the plan may need more hours or room than there are (--limits FILE tells them)");
        }
        read.stream()
                .filter(line -> line.year()
                        .filter(year -> year < firstYear || year >= firstYear + years)
                        .isPresent())
                .forEach(line -> notes.add(told(line) + " is not of a planned year, and was not looked at"));
    }

    private static boolean isOfASeason(LimitLine line) {
        return line.what() == LimitLine.What.HOURS && !line.where().isEmpty();
    }

    private static Fault bad(String rule, LimitLine line, String text) {
        Fault fault = Fault.of(rule, text);
        return line.at().map(fault::at).orElse(fault);
    }

    private static String told(LimitLine line) {
        return line.what().word()
                + (line.where().isEmpty() ? "" : " of " + line.where())
                + line.year().map(year -> " in " + year).orElse("");
    }

    /** Return what is wrong with a line, as far as the book tells. */
    private static Optional<Fault> fault(LimitLine line, Set<String> places) {
        String where = line.where();
        return switch (line.what()) {
            case HOURS ->
                where.isEmpty() || SEASONS.contains(where.toLowerCase(Locale.ROOT))
                        ? Optional.empty()
                        : Optional.of(bad(
                                        "unknown-season",
                                        line,
                                        "\"" + where + "\" is no season; expected " + String.join(", ", SEASONS))
                                .nearest(Nearest.of(where, SEASONS)));
            case ROOM ->
                where.isEmpty() || places.isEmpty() || listed(where, places).isPresent()
                        ? Optional.empty()
                        : Optional.of(bad("unknown-place", line, "no place \"" + where + "\" is listed")
                                .nearest(Nearest.of(where, places)));
            case LICENCE ->
                where.isEmpty()
                        ? Optional.of(bad("no-cultivar", line, "expected the cultivar of the licence, found nothing"))
                        : line.amount() == Math.rint(line.amount()) && line.amount() <= MOST_UNITS
                                ? Optional.empty()
                                : Optional.of(bad(
                                        "bad-number",
                                        line,
                                        "expected a whole number of units, at most " + MOST_UNITS + ", found "
                                                + line.amount()));
            case CLONE_SHARE, PLACE_SHARE ->
                line.amount() > 0 && line.amount() <= 1
                        ? line.year().isEmpty() && where.isEmpty()
                                ? Optional.empty()
                                : Optional.of(bad(
                                        "bad-share",
                                        line,
                                        "expected nothing under where and year, for "
                                                + line.what().word() + " is one for all"))
                        : Optional.of(bad(
                                "bad-share",
                                line,
                                "expected a share above 0, to 1, such as 0.5, found " + line.amount()));
        };
    }

    private static Optional<String> listed(String where, Set<String> places) {
        return places.contains(where)
                ? Optional.of(where)
                : places.stream().filter(where::equalsIgnoreCase).findFirst();
    }

    private static LimitLine named(LimitLine line, Set<String> places) {
        String where = switch (line.what()) {
            case ROOM -> listed(line.where(), places).orElse(line.where());
            case HOURS -> line.where().toLowerCase(Locale.ROOT);
            case LICENCE, CLONE_SHARE, PLACE_SHARE -> line.where();
        };
        return new LimitLine(line.what(), where, line.year(), line.amount(), line.at());
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

    /**
     * Return the limits.
     *
     * @param unlicensed the protected cultivars of which no licence is listed in the book
     * @param wholeName returns the one cultivar that a name stands for
     */
    Limits limits(Set<String> unlicensed, UnaryOperator<String> wholeName) {
        Map<String, List<LimitLine>> licensed = new TreeMap<>();
        List<Concentration> shares = new ArrayList<>();
        for (LimitLine line : lines) {
            switch (line.what()) {
                case LICENCE ->
                    licensed.computeIfAbsent(named(line, wholeName), name -> new ArrayList<>())
                            .add(line);
                case CLONE_SHARE -> shares.add(new Concentration(Concentration.On.CLONE, line.amount()));
                case PLACE_SHARE -> shares.add(new Concentration(Concentration.On.PLACE, line.amount()));
                case HOURS, ROOM -> {}
            }
        }
        unlicensed.forEach(name -> licensed.putIfAbsent(name, List.of()));
        List<Licence> licences = new ArrayList<>();
        licensed.forEach((cultivar, some) -> {
            List<Integer> perYear = new ArrayList<>();
            for (int year = firstYear; year < firstYear + years; year++) {
                perYear.add(units(some, year, unlicensed.contains(cultivar) ? 0 : MOST_UNITS));
            }
            licences.add(new Licence(cultivar, perYear));
        });
        Limits means = hoursAndRoom();
        return new Limits(means.hours(), means.roomM2(), licences, shares);
    }

    /** Return the limits of hours and room alone. */
    Limits hoursAndRoom() {
        Map<String, Amounts> room = new HashMap<>();
        for (String place : rooms) {
            room.put(place.isEmpty() ? "all room" : place, amounts(LimitLine.What.ROOM, place, false));
        }
        return new Limits(amounts(LimitLine.What.HOURS, "", bySeason), room, List.of(), List.of());
    }

    private static String named(LimitLine line, UnaryOperator<String> wholeName) {
        try {
            return wholeName.apply(line.where());
        } catch (Refused unknown) {
            throw line.at().isEmpty()
                    ? unknown
                    : new Refused(unknown.faults().stream()
                            .map(fault -> fault.at(line.at().get()))
                            .toList());
        }
    }

    /** Return how many units may be set in a year: by a line of its own, else by the one for every year, else as usual. */
    private static int units(List<LimitLine> lines, int year, int otherwise) {
        return lines.stream()
                .filter(line -> line.year().filter(own -> own != year).isEmpty())
                .max(Comparator.comparing(line -> line.year().isPresent()))
                .map(line -> (int) line.amount())
                .orElse(otherwise);
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
