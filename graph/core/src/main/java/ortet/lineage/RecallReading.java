package ortet.lineage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.Link;
import ortet.book.Listings;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts.Leaving;
import ortet.book.UnitFacts.Naming;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.book.UnitFacts.Standing;
import ortet.book.UnitFacts.Stay;
import ortet.book.UnitFacts.TagUse;
import ortet.entry.Acquired;
import ortet.entry.SeedSown;
import ortet.entry.Words;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Defect;
import ortet.value.When;

/**
 * A book as a recall reads it: links, places and times of as many units at a time as are needed, each read once.
 *
 * <p>What is asked for is fetched many units at once, so that a recall costs a few questions for each step that it
 * takes away from where it began, however wide it grows.
 */
final class RecallReading {
    private static final QueryName LINKS = new QueryName("links-of-units");
    private static final QueryName OFFSPRING = new QueryName("offspring-of-units");
    private static final QueryName NATURES = new QueryName("natures-of-units");
    private static final QueryName STAYS = new QueryName("stays-of-units");
    private static final QueryName STANDINGS = new QueryName("standings-of-units");
    private static final QueryName LEAVINGS = new QueryName("leavings-of-units");
    private static final QueryName IN_PLACES = new QueryName("units-in-places");
    private static final QueryName WITHOUT_PLACE = new QueryName("units-without-place");
    private static final QueryName ARRIVALS = new QueryName("arrivals");
    private static final QueryName HANDLINGS = new QueryName("handlings");
    private static final QueryName TAGS = new QueryName("tag-uses-of-units");
    private static final QueryName NAMINGS = new QueryName("namings-of-units");
    private static final QueryName INVOLVEMENTS = new QueryName("involvements-of-units");

    /** How many units are asked for at one go. */
    private static final int AT_ONCE = 10_000;

    /**
     * How a unit came from outside.
     *
     * @param consignment the consignment or delivery note, where told
     * @param supplier who supplied it, where told
     * @param day when
     * @param order the entry
     */
    record Arrival(Optional<String> consignment, Optional<PersonNumber> supplier, When day, long order) {}

    /**
     * A unit in a place.
     *
     * @param unit the unit
     * @param span when
     * @param isOff whether it is a layer that was off its mother by then
     */
    record Occupant(int unit, Span span, boolean isOff) {}

    /**
     * Somebody's hands or tools on plants.
     *
     * @param key its number: that of its entry, or below 0 for one that was amended
     * @param day when
     * @param by who; absent when nobody said
     */
    record Handling(long key, When day, Optional<PersonNumber> by) {}

    private final BookView view;
    private final LocalDate asOf;
    private final Parameters day;
    private final Set<Integer> linked = new HashSet<>();
    private final Set<Integer> bred = new HashSet<>();
    private final Set<Integer> placed = new HashSet<>();
    private final Set<Integer> emptied = new HashSet<>();
    private final Map<Integer, List<Link>> links = new HashMap<>();
    private final Map<Integer, List<Link>> offspring = new HashMap<>();
    private final Map<Integer, Whereabouts> whereabouts = new HashMap<>();
    private final Map<Integer, List<Standing>> standings = new HashMap<>();
    private final Map<Integer, List<Stay>> stays = new HashMap<>();
    private final Map<Integer, List<Leaving>> leavings = new HashMap<>();
    private final Map<Place, List<Occupant>> occupants = new HashMap<>();
    private final Map<Place, Set<Place>> near = new HashMap<>();
    private final Map<String, When> days = new HashMap<>();
    private final Map<String, Place> places = new HashMap<>();
    private final Map<String, Act> acts = new HashMap<>();
    private final Map<Integer, Arrival> arrivals = new TreeMap<>();
    private boolean arrivalsRead;
    private Optional<Listings> listings = Optional.empty();
    private Optional<List<Integer>> withoutPlace = Optional.empty();
    private Optional<List<Integer>> everything = Optional.empty();
    private final Map<Long, Handling> handlings = new HashMap<>();
    private final Map<PersonNumber, TreeMap<Integer, List<Handling>>> byHand = new HashMap<>();
    private final Map<Long, Set<Integer>> handled = new HashMap<>();
    private final Map<Integer, Set<Long>> handlingsOf = new HashMap<>();
    private final Set<Integer> handsRead = new HashSet<>();
    private boolean handlingsRead;

    RecallReading(BookView view, LocalDate asOf) {
        this.view = view;
        this.asOf = asOf;
        this.day = Parameters.NONE.with("as_of", asOf);
    }

    BookView view() {
        return view;
    }

    LocalDate asOf() {
        return asOf;
    }

    private Iterable<Parameters> parameters(Collection<Integer> wanted, Set<Integer> known, Parameters with) {
        List<Integer> fresh =
                wanted.stream().filter(known::add).distinct().sorted().toList();
        return IntStream.iterate(0, from -> from < fresh.size(), from -> from + AT_ONCE)
                .mapToObj(from -> fresh.subList(from, Math.min(fresh.size(), from + AT_ONCE)))
                .map(some ->
                        with.with("units", some.stream().map(String::valueOf).collect(Collectors.joining(","))))
                .toList();
    }

    private static int number(Rows.Row row, String column) {
        return row.whole(column).orElseThrow().intValue();
    }

    private When when(Rows.Row row) {
        return days.computeIfAbsent(row.text("day").orElseThrow(), When::parse);
    }

    private Link link(Rows.Row row) {
        return new Link(
                new UnitNumber(number(row, "child")),
                new UnitNumber(number(row, "mother")),
                acts.computeIfAbsent(row.text("act").orElseThrow(), word -> Words.parse(Act.class, word)),
                when(row),
                row.whole("recorded_order").orElseThrow(),
                row.whole("count").map(Long::intValue));
    }

    // ---- links ----

    /** Read the links of units both ways, and those of their offspring to all that these come from. */
    void readLinks(Collection<Integer> units) {
        List<Integer> children = new ArrayList<>(units);
        for (Parameters some : parameters(units, bred, day)) {
            for (Rows.Row row : view.ask(OFFSPRING, some)) {
                Link link = link(row);
                offspring
                        .computeIfAbsent(link.mother().value(), mother -> new ArrayList<>())
                        .add(link);
                children.add(link.child().value());
            }
        }
        readUp(children);
    }

    /** Read the links of units to what they come from. */
    void readUp(Collection<Integer> units) {
        if (linked.containsAll(units)) {
            return;
        }
        for (Parameters some : parameters(units, linked, day)) {
            for (Rows.Row row : view.ask(LINKS, some)) {
                Link link = link(row);
                links.computeIfAbsent(link.child().value(), child -> new ArrayList<>(1))
                        .add(link);
            }
        }
    }

    /** Return the links to what a unit comes from; they were read. */
    List<Link> up(int unit) {
        return links.getOrDefault(unit, List.of());
    }

    /** Return the links to what was raised from a unit; they were read. */
    List<Link> down(int unit) {
        return offspring.getOrDefault(unit, List.of());
    }

    /** Tell whether the child comes from one of several by this act, and nobody knows from which. */
    boolean isOneOfSeveral(Link link) {
        return link.act().isOneOfSeveral()
                && up(link.child().value()).stream()
                                .filter(other -> other.act() == link.act())
                                .count()
                        > 1;
    }

    // ---- places and times ----

    /** Read where units were, and when. */
    void readWhereabouts(Collection<Integer> units) {
        Map<Integer, Rows.Row> natures = new TreeMap<>();
        for (Parameters some : parameters(units, placed, day)) {
            for (Rows.Row row : view.ask(NATURES, some)) {
                natures.put(number(row, "unit"), row);
            }
            for (Rows.Row row : view.ask(STAYS, some)) {
                stays.computeIfAbsent(number(row, "unit"), unit -> new ArrayList<>())
                        .add(new Stay(
                                places.computeIfAbsent(row.text("place").orElseThrow(), Place::new),
                                when(row),
                                row.whole("recorded_order").orElseThrow()));
            }
            for (Rows.Row row : view.ask(STANDINGS, some)) {
                standings
                        .computeIfAbsent(number(row, "unit"), unit -> new ArrayList<>())
                        .add(new Standing(
                                row.whole("pending").map(Long::intValue),
                                number(row, "growing"),
                                when(row),
                                row.whole("recorded_order").orElseThrow()));
            }
        }
        natures.forEach((unit, row) -> whereabouts.put(
                unit,
                Whereabouts.of(
                        unit,
                        Words.parse(Nature.class, row.text("nature").orElseThrow()),
                        when(row),
                        row.whole("recorded_order").orElseThrow(),
                        standings.getOrDefault(unit, List.of()),
                        stays.getOrDefault(unit, List.of()))));
    }

    /** Return where a unit was, and when. */
    Whereabouts whereabouts(int unit) {
        if (!whereabouts.containsKey(unit)) {
            readWhereabouts(List.of(unit));
        }
        return Optional.ofNullable(whereabouts.get(unit))
                .orElseThrow(() -> new Defect("unit " + unit + " had not begun on " + asOf));
    }

    /** Return the last count of a unit. */
    Optional<Standing> standing(int unit) {
        whereabouts(unit);
        List<Standing> all = standings.getOrDefault(unit, List.of());
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    /** Return the place that a unit was last said to stand in. */
    Optional<Place> place(int unit) {
        whereabouts(unit);
        List<Stay> all = stays.getOrDefault(unit, List.of());
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of(all.get(all.size() - 1).place());
    }

    /** Read which units stood in places. */
    void readOccupants(Collection<Place> wanted) {
        List<Place> fresh =
                wanted.stream().filter(place -> !occupants.containsKey(place)).toList();
        if (fresh.isEmpty()) {
            return;
        }
        fresh.forEach(place -> occupants.put(place, new ArrayList<>()));
        String lines = fresh.stream().map(Place::name).collect(Collectors.joining("\n", "\n", "\n"));
        List<Integer> units = new ArrayList<>();
        for (Rows.Row row : view.ask(IN_PLACES, day.with("places", lines))) {
            units.add(number(row, "unit"));
        }
        readWhereabouts(units);
        Set<Place> these = new HashSet<>(fresh);
        for (int unit : units) {
            if (whereabouts.containsKey(unit)) {
                for (Whereabouts.Stood stood : whereabouts(unit).stood()) {
                    if (these.contains(stood.place())) {
                        occupants.get(stood.place()).add(new Occupant(unit, stood.span(), stood.isOff()));
                    }
                }
            }
        }
    }

    /** Return who stood in a place, by unit; it was read. */
    List<Occupant> occupants(Place place) {
        return occupants.get(place);
    }

    private Listings listings() {
        if (listings.isEmpty()) {
            listings = Optional.of(Listings.of(view));
        }
        return listings.get();
    }

    /** Return a place, all that is within it, and all that it is within. */
    Set<Place> near(Place place) {
        return near.computeIfAbsent(place, here -> {
            Set<Place> all = new TreeSet<>(listings().within(here));
            Optional<Place> around = Optional.of(here);
            while (around.isPresent()) {
                around = listings().place(around.get()).flatMap(listed -> listed.within());
                if (around.isPresent() && !all.add(around.get())) {
                    break;
                }
            }
            return all;
        });
    }

    /** Return a place and all that is within it. */
    Set<Place> within(Place place) {
        return listings().within(place);
    }

    /** Return every unit of which nobody said, for a time, where it stood. */
    List<Integer> withoutPlace() {
        if (withoutPlace.isEmpty()) {
            List<Integer> units = new ArrayList<>();
            for (Rows.Row row : view.ask(WITHOUT_PLACE, day)) {
                units.add(number(row, "unit"));
            }
            readWhereabouts(units);
            withoutPlace = Optional.of(units.stream()
                    .filter(unit -> !whereabouts(unit).nowhere().isEmpty())
                    .toList());
        }
        return withoutPlace.get();
    }

    /** Return every unit that there was by the day. */
    List<Integer> everything() {
        if (everything.isEmpty()) {
            List<Integer> units =
                    IntStream.rangeClosed(1, view.head().lastUnit()).boxed().toList();
            readWhereabouts(units);
            everything =
                    Optional.of(units.stream().filter(whereabouts::containsKey).toList());
        }
        return everything.get();
    }

    // ---- what left ----

    /** Read what left the tags of units. */
    void readLeavings(Collection<Integer> units) {
        for (Parameters some : parameters(units, emptied, day)) {
            for (Rows.Row row : view.ask(LEAVINGS, some)) {
                leavings.computeIfAbsent(number(row, "unit"), unit -> new ArrayList<>())
                        .add(new Leaving(
                                Words.parse(Reason.class, row.text("reason").orElseThrow()),
                                number(row, "count"),
                                row.whole("person").map(Long::intValue).map(PersonNumber::new),
                                when(row),
                                row.whole("recorded_order").orElseThrow()));
            }
        }
    }

    /** Return what left the tag of a unit, in order. */
    List<Leaving> leavings(int unit) {
        if (!emptied.contains(unit)) {
            readLeavings(List.of(unit));
        }
        return leavings.getOrDefault(unit, List.of());
    }

    // ---- what came from outside ----

    /** Return how each unit that came from outside came, by unit. */
    Map<Integer, Arrival> arrivals() {
        if (!arrivalsRead) {
            arrivalsRead = true;
            List<Long> orders = new ArrayList<>();
            for (Rows.Row row : view.ask(ARRIVALS, Parameters.NONE)) {
                orders.add(row.whole("recorded_order").orElseThrow());
            }
            History.of(view, orders, asOf).forEach((unit, events) -> events.forEach(event -> arrive(unit, event)));
        }
        return arrivals;
    }

    private void arrive(UnitNumber unit, Event event) {
        if (event.entry() instanceof Acquired entry) {
            arrivals.put(unit.value(), new Arrival(entry.consignment(), entry.supplier(), event.day(), event.order()));
        } else if (event.entry() instanceof SeedSown entry
                && (entry.consignment().isPresent() || entry.supplier().isPresent())) {
            arrivals.put(unit.value(), new Arrival(entry.consignment(), entry.supplier(), event.day(), event.order()));
        }
    }

    // ---- hands and tools ----

    private void readHandlings() {
        if (handlingsRead) {
            return;
        }
        handlingsRead = true;
        List<Long> amended = new ArrayList<>();
        for (Rows.Row row : view.ask(HANDLINGS, day)) {
            long order = row.whole("recorded_order").orElseThrow();
            if (row.whole("is_amended").orElse(0L) == 1) {
                amended.add(order);
            } else {
                add(new Handling(
                        order,
                        when(row),
                        row.whole("by_person").map(Long::intValue).map(PersonNumber::new)));
            }
        }
        Map<List<Object>, Handling> told = new HashMap<>();
        for (List<Event> events : History.of(view, amended, asOf).values()) {
            for (Event event : events) {
                Handling handling = told.computeIfAbsent(
                        List.of(event.order(), event.day(), event.by(), event.entry()),
                        one -> new Handling(-1L - told.size(), event.day(), event.by()));
                if (!handlings.containsKey(handling.key())) {
                    add(handling);
                    Set<Integer> units = named(event);
                    handled.put(handling.key(), units);
                    units.forEach(unit -> handlingsOf
                            .computeIfAbsent(unit, one -> new TreeSet<>())
                            .add(handling.key()));
                }
            }
        }
    }

    private void add(Handling handling) {
        handlings.put(handling.key(), handling);
        handling.by()
                .ifPresent(by -> byHand.computeIfAbsent(by, hand -> new TreeMap<>())
                        .computeIfAbsent(Span.first(handling.day()), first -> new ArrayList<>())
                        .add(handling));
    }

    private Set<Integer> named(Event event) {
        Set<Integer> units = new TreeSet<>();
        event.entry()
                .mentions()
                .forEach(mention -> view.unit(mention.tag()).ifPresent(unit -> units.add(unit.value())));
        return units;
    }

    /** Read by which entries units were touched. */
    void readHands(Collection<Integer> units) {
        readHandlings();
        for (Parameters some : parameters(units, handsRead, Parameters.NONE)) {
            for (Rows.Row row : view.ask(INVOLVEMENTS, some)) {
                long order = row.whole("recorded_order").orElseThrow();
                if (handlings.containsKey(order)) {
                    handlingsOf
                            .computeIfAbsent(number(row, "unit"), unit -> new TreeSet<>())
                            .add(order);
                }
            }
        }
    }

    /** Return the entries by which hands or tools touched a unit; they were read. */
    List<Handling> handlingsOf(int unit) {
        return handlingsOf.getOrDefault(unit, Set.of()).stream()
                .map(handlings::get)
                .toList();
    }

    /** Return every entry by the same hand that may have been on a day of the given one, itself too. */
    List<Handling> sameHand(Handling handling) {
        TreeMap<Integer, List<Handling>> all =
                handling.by().map(byHand::get).orElseThrow(() -> new Defect("nobody's hand"));
        // what is known to the year alone may have begun most of a year before
        return all.subMap(Span.first(handling.day()) - 366, true, Span.last(handling.day()), true).values().stream()
                .flatMap(List::stream)
                .filter(other -> Span.last(other.day()) >= Span.first(handling.day()))
                .toList();
    }

    /** Return the units that an entry touched. */
    Set<Integer> handled(Handling handling) {
        return handled.computeIfAbsent(handling.key(), order -> {
            Set<Integer> units = new TreeSet<>();
            view.entry(order)
                    .orElseThrow()
                    .entry()
                    .mentions()
                    .forEach(mention -> view.unit(mention.tag()).ifPresent(unit -> units.add(unit.value())));
            return units;
        });
    }

    // ---- names ----

    /** Read what tells the tags and cultivars of units, and hand it on. */
    void readNames(Collection<Integer> units, Reading to) {
        Set<Integer> all = new TreeSet<>(units);
        List<Integer> now = List.copyOf(units);
        while (!now.isEmpty()) {
            readUp(now);
            now = now.stream()
                    .flatMap(unit -> up(unit).stream())
                    .filter(link -> link.act().keepsTheClone())
                    .map(link -> link.mother().value())
                    .filter(all::add)
                    .toList();
        }
        Map<Integer, List<TagUse>> tags = new HashMap<>();
        Map<Integer, List<Naming>> names = new HashMap<>();
        Map<String, CultivarName> cultivars = new HashMap<>();
        Set<Integer> asked = new HashSet<>();
        for (Parameters some : parameters(all, asked, day)) {
            for (Rows.Row row : view.ask(TAGS, some)) {
                tags.computeIfAbsent(number(row, "unit"), unit -> new ArrayList<>(1))
                        .add(new TagUse(
                                new Tag(row.text("tag").orElseThrow()),
                                when(row),
                                row.whole("recorded_order").orElseThrow()));
            }
            for (Rows.Row row : view.ask(NAMINGS, some)) {
                names.computeIfAbsent(number(row, "unit"), unit -> new ArrayList<>(1))
                        .add(new Naming(
                                cultivars.computeIfAbsent(row.text("cultivar").orElseThrow(), CultivarName::parse),
                                row.whole("is_true").orElse(0L) == 1,
                                when(row),
                                row.whole("recorded_order").orElseThrow()));
            }
        }
        for (int unit : all) {
            to.know(
                    new UnitNumber(unit),
                    new Reading.Known(
                            tags.getOrDefault(unit, List.of()), names.getOrDefault(unit, List.of()), up(unit)));
        }
    }
}
