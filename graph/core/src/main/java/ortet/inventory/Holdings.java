package ortet.inventory;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.Lookup;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.entry.Words;
import ortet.inventory.HoldingFilter.Standing;
import ortet.lineage.Lineage;
import ortet.lineage.Marks;
import ortet.lineage.State;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;
import ortet.value.When;

/**
 * The units of a book on a day, as many as are asked for.
 *
 * <p>Reads every link and name of the book once, and of the units those of the kinds and places asked for.
 *
 * @param asOf the day
 * @param all those asked for, by tag
 */
public record Holdings(LocalDate asOf, List<Holding> all) {
    private static final QueryName UNITS = new QueryName("units");
    private static final QueryName TAG = new QueryName("tag-of-unit");
    private static final QueryName LINKS = new QueryName("links");
    private static final QueryName NAMES = new QueryName("names");
    private static final QueryName MARKING = new QueryName("entries-that-mark");

    public Holdings {
        Objects.requireNonNull(asOf);
        all = List.copyOf(all);
    }

    /**
     * How much it is.
     *
     * @param units units, each under a tag of its own
     * @param growing plants on their own roots; a sport is none
     * @param pending neither taken nor failed, as far as they are counted
     */
    public record Count(int units, long growing, long pending) {}

    /** Return how much it is in all. */
    public Count count() {
        long growing = 0;
        long pending = 0;
        for (Holding one : all) {
            growing += one.nature() == Nature.SPORT ? 0 : one.growing();
            pending += one.pending().orElse(0);
        }
        return new Count(all.size(), growing, pending);
    }

    /**
     * Return the units asked for.
     *
     * @throws Refused when the book knows no such cultivar, place or mother
     */
    public static Holdings of(BookView view, HoldingFilter filter, LocalDate asOf) {
        return new Reader(view, filter, asOf).holdings();
    }

    private record Source(Act act, int mother) {}

    /** What a row of the question {@code units} says. */
    private record Stand(
            int unit,
            Tag tag,
            Nature nature,
            When begun,
            Optional<Integer> pending,
            int growing,
            boolean counted,
            Optional<Reason> last,
            Optional<Place> place,
            Optional<When> since,
            Optional<String> container) {
        boolean isUndecided() {
            return counted && (pending.isEmpty() || pending.get() > 0);
        }
    }

    private static final class Reader {
        private final BookView view;
        private final HoldingFilter filter;
        private final LocalDate asOf;
        private final Map<Integer, Stand> stands = new HashMap<>();
        private final Map<Integer, List<Source>> sources = new HashMap<>();
        private final Map<Integer, CultivarName> own = new HashMap<>();
        private final Map<Integer, Set<CultivarName>> borne = new HashMap<>();
        private final Map<String, CultivarName> names = new HashMap<>();
        private final Map<String, Place> places = new HashMap<>();
        private final Map<String, Nature> natures = new HashMap<>();
        private final Map<String, Reason> reasons = new HashMap<>();
        private final Map<String, Act> acts = new HashMap<>();
        private final Map<String, When> days = new HashMap<>();
        private final Map<Integer, Optional<Tag>> tags = new HashMap<>();
        private final Map<UnitNumber, Marks> marks = new HashMap<>();

        Reader(BookView view, HoldingFilter filter, LocalDate asOf) {
            this.view = view;
            this.filter = filter;
            this.asOf = asOf;
        }

        Holdings holdings() {
            Optional<Set<Place>> wanted = filter.place().map(place -> Places.within(view, place));
            Optional<Integer> mother =
                    filter.mother().map(tag -> Lookup.unit(view, tag).value());
            read(wanted);
            Optional<Set<CultivarName>> cultivars =
                    filter.cultivar().map(name -> Lookup.cultivars(view, name, own.values()));
            List<Holding> found = new ArrayList<>();
            for (Stand stand : stands.values()) {
                if (begins(stand.tag())) {
                    Holding holding = holding(stand);
                    if (keeps(holding, cultivars)
                            && mother.map(unit -> mothers(stand.unit()).contains(unit))
                                    .orElse(true)) {
                        found.add(holding);
                    }
                }
            }
            found.sort(Comparator.comparing(Holding::tag));
            return new Holdings(asOf, found);
        }

        private void read(Optional<Set<Place>> wanted) {
            Parameters parameters = Parameters.NONE.with("as_of", asOf);
            Parameters units = parameters
                    .with("natures", lines(filter.natures().stream().map(Words::of)))
                    .with("gone", filter.standings().contains(Standing.GONE) ? 1 : 0);
            units = wanted.isPresent()
                    ? units.with("places", lines(wanted.get().stream().map(Place::name)))
                    : units.without("places");
            for (Rows.Row row : view.ask(UNITS, units)) {
                Stand stand = stand(row);
                stands.put(stand.unit(), stand);
            }
            for (Rows.Row row : view.ask(LINKS, Parameters.NONE)) {
                sources.computeIfAbsent(number(row, "child"), child -> new ArrayList<>(1))
                        .add(new Source(
                                acts.computeIfAbsent(
                                        row.text("act").orElseThrow(), word -> Words.parse(Act.class, word)),
                                number(row, "mother")));
            }
            for (Rows.Row row : view.ask(NAMES, parameters)) {
                own.put(
                        number(row, "unit"),
                        names.computeIfAbsent(row.text("cultivar").orElseThrow(), CultivarName::parse));
            }
            List<Long> marking = new ArrayList<>();
            for (Rows.Row row : view.ask(MARKING, Parameters.NONE)) {
                marking.add(row.whole("recorded_order").orElseThrow());
            }
            History.of(view, marking, asOf).forEach((unit, events) -> {
                boolean exact = events.size() < 2
                        || events.stream().allMatch(event -> event.day().isExact());
                List<Event> history = exact ? events : History.of(view, unit, asOf);
                marks.put(unit, Marks.of(history, asOf));
            });
        }

        private static String lines(Stream<String> words) {
            return words.collect(Collectors.joining("\n", "\n", "\n"));
        }

        private static int number(Rows.Row row, String column) {
            return row.whole(column).orElseThrow().intValue();
        }

        private Stand stand(Rows.Row row) {
            return new Stand(
                    number(row, "unit"),
                    row.text("tag").map(Tag::new).orElseThrow(),
                    natures.computeIfAbsent(row.text("nature").orElseThrow(), word -> Words.parse(Nature.class, word)),
                    day(row.text("begun").orElseThrow()),
                    row.whole("pending").map(Long::intValue),
                    number(row, "growing"),
                    row.whole("standing_order").isPresent(),
                    row.text("reason")
                            .map(text -> reasons.computeIfAbsent(text, word -> Words.parse(Reason.class, word))),
                    row.text("place").map(name -> places.computeIfAbsent(name, Place::new)),
                    row.text("since").map(this::day),
                    row.text("container"));
        }

        private When day(String text) {
            return days.computeIfAbsent(text, When::parse);
        }

        private boolean begins(Tag tag) {
            return filter.beginning()
                    .map(text -> tag.text().regionMatches(true, 0, text, 0, text.length()))
                    .orElse(true);
        }

        private Holding holding(Stand stand) {
            Set<CultivarName> mayBe = borne(stand.unit(), new HashSet<>());
            State.Kind kind = kind(stand);
            boolean gone = kind == State.Kind.GONE;
            Marks marked = gone ? Marks.NONE : marks.getOrDefault(new UnitNumber(stand.unit()), Marks.NONE);
            return new Holding(
                    new UnitNumber(stand.unit()),
                    stand.tag(),
                    stand.nature(),
                    mayBe.size() == 1 ? mayBe.stream().findFirst() : Optional.empty(),
                    mayBe.size() > 1 ? List.copyOf(mayBe) : List.of(),
                    kind,
                    stand.counted() ? stand.pending() : Optional.of(0),
                    stand.growing(),
                    gone ? stand.last() : Optional.empty(),
                    stand.begun(),
                    stand.place(),
                    stand.since(),
                    stand.container(),
                    mothers(stand.unit()).stream()
                            .flatMap(unit -> tag(unit).stream())
                            .toList(),
                    marked.stockSince(),
                    marked.held().isPresent(),
                    !marked.reserved().isEmpty());
        }

        private boolean keeps(Holding holding, Optional<Set<CultivarName>> cultivars) {
            boolean pending = holding.pending().map(count -> count > 0).orElse(true);
            boolean standing = holding.kind() == State.Kind.GONE
                    ? filter.standings().contains(Standing.GONE)
                    : pending && filter.standings().contains(Standing.PENDING)
                            || holding.growing() > 0 && filter.standings().contains(Standing.GROWING);
            return standing
                    && cultivars
                            .map(some ->
                                    holding.cultivar().filter(some::contains).isPresent())
                            .orElse(true)
                    && (!filter.stock() || holding.stockSince().isPresent())
                    && (!filter.held() || holding.held())
                    && (!filter.reserved() || holding.reserved());
        }

        private Optional<Tag> tag(int unit) {
            return tags.computeIfAbsent(unit, wanted -> {
                Stand known = stands.get(wanted);
                if (known != null) {
                    return Optional.of(known.tag());
                }
                Rows rows = view.ask(TAG, Parameters.NONE.with("unit", wanted).with("as_of", asOf));
                return rows.size() == 0
                        ? Optional.empty()
                        : rows.iterator().next().text("tag").map(Tag::new);
            });
        }

        /** Return how a unit stands; a sport stands and falls with its plant. */
        private State.Kind kind(Stand stand) {
            if (stand.isUndecided()) {
                return stand.nature() == Nature.LAYER ? State.Kind.ON_ITS_MOTHER : State.Kind.PENDING;
            }
            if (stand.growing() == 0) {
                return State.Kind.GONE;
            }
            if (stand.nature() != Nature.SPORT) {
                return State.Kind.GROWING;
            }
            UnitNumber plant = new UnitNumber(sources.getOrDefault(stand.unit(), List.of()).stream()
                    .filter(source -> source.act() == Act.SPORT_OF)
                    .findFirst()
                    .map(Source::mother)
                    .orElse(stand.unit()));
            boolean gone = !plant.equals(new UnitNumber(stand.unit())) && isGone(plant);
            return gone ? State.Kind.GONE : State.Kind.ON_ITS_MOTHER;
        }

        private boolean isGone(UnitNumber plant) {
            return Lineage.glances(view, List.of(plant), asOf).stream()
                    .anyMatch(glance -> glance.state().kind() == State.Kind.GONE);
        }

        /** Return every name that a unit may bear, its own or those of what it keeps the clone of; none when unknown. */
        private Set<CultivarName> borne(int unit, Set<Integer> beingRead) {
            CultivarName known = own.get(unit);
            if (known != null) {
                return Set.of(known);
            }
            Set<CultivarName> read = borne.get(unit);
            if (read != null) {
                return read;
            }
            if (!beingRead.add(unit)) {
                return Set.of();
            }
            Set<CultivarName> found = new TreeSet<>();
            boolean unknown = false;
            for (Source source : sources.getOrDefault(unit, List.of())) {
                if (source.act().keepsTheClone()) {
                    Set<CultivarName> theirs = borne(source.mother(), beingRead);
                    unknown |= theirs.isEmpty();
                    found.addAll(theirs);
                }
            }
            beingRead.remove(unit);
            Set<CultivarName> result = unknown ? Set.of() : found;
            borne.put(unit, result);
            return result;
        }

        /** Return the mothers of a unit, through the batches that it was drawn from, split off or merged. */
        private Set<Integer> mothers(int unit) {
            Set<Integer> mothers = new LinkedHashSet<>();
            mothers(unit, new HashSet<>(), mothers);
            return mothers;
        }

        private void mothers(int unit, Set<Integer> seen, Set<Integer> mothers) {
            if (!seen.add(unit)) {
                return;
            }
            for (Source source : sources.getOrDefault(unit, List.of())) {
                switch (source.act()) {
                    case DRAWN_FROM, SPLIT_FROM, MERGED_FROM -> mothers(source.mother(), seen, mothers);
                    case STOCK_WOOD_OF -> {}
                    default -> mothers.add(source.mother());
                }
            }
        }
    }
}
