package ortet.nursery;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import ortet.book.BookView;
import ortet.book.Chained;
import ortet.book.History;
import ortet.book.Judge;
import ortet.book.Progress;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Naming;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Recorded;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/** Fills columns by retelling a book from its entries up to one. */
final class Retold {
    private static final Set<EntryKind> SETTINGS =
            EnumSet.of(EntryKind.LAYER_SET, EntryKind.CUTTINGS_STRUCK, EntryKind.GRAFT_WORKED, EntryKind.SEED_SOWN);

    private final BookView view;
    private final LocalDate asOf;
    private final List<UnitFacts> facts = new ArrayList<>();
    private Optional<Recorded> last = Optional.empty();

    private Retold(BookView view, LocalDate asOf) {
        this.view = view;
        this.asOf = asOf;
    }

    /** Return every column as the book knew it when it ended with an entry. */
    static Columns columns(BookView view, Judge judge, LocalDate asOf, long knownBy) {
        Retold retold = new Retold(view, asOf);
        try (Stream<Chained> entries = view.since(0)) {
            judge.retell(
                    entries.map(Chained::recorded).takeWhile(retold.upTo(knownBy)),
                    view.head(),
                    view.persons(),
                    retold.facts::add,
                    Progress.NONE);
        }
        return retold.fill(view.head().lastUnit());
    }

    /** Take entries up to one, and those that were recorded at one go with it: they lean on each other in any order. */
    private Predicate<Recorded> upTo(long knownBy) {
        return entry -> {
            boolean known = entry.order() <= knownBy
                    || last.filter(before -> before.recordedAt().equals(entry.recordedAt()))
                            .isPresent();
            if (known) {
                last = Optional.of(entry);
            }
            return known;
        };
    }

    private Optional<Entry> beginning(UnitFacts unit) {
        long order = unit.begun().order();
        return view.entry(order)
                .flatMap(recorded ->
                        History.words(recorded, amendments(order), unit.begun().position()));
    }

    private boolean isPast(When day) {
        return !day.first().isAfter(asOf);
    }

    private Columns fill(int lastUnit) {
        Filling filling = new Filling(lastUnit, EnumSet.allOf(Part.class), Columns.NONE);
        for (UnitFacts unit : facts) {
            When day = unit.begun().day();
            filling.unit(
                    unit.unit().value(),
                    unit.nature().ordinal(),
                    day.first().toEpochDay(),
                    day.precision().ordinal());
            unit.links().stream().filter(link -> isPast(link.day())).forEach(link -> {
                long packed = Packed.link(unit.unit(), link.act(), link.mother());
                filling.link(packed);
                link.count().ifPresent(count -> filling.linkCount(packed, count));
            });
            unit.standings().stream()
                    .filter(standing -> isPast(standing.day()))
                    .forEach(standing -> filling.standing(
                            unit.unit().value(), standing.pending().orElse(Snapshot.NONE), standing.growing()));
            unit.leavings().stream()
                    .filter(leaving -> isPast(leaving.day()))
                    .forEach(leaving -> filling.leaving(
                            unit.unit().value(), leaving.reason().ordinal(), leaving.count()));
        }
        filling.closeLinks();
        int[] founders = filling.founders(asOf.toEpochDay());
        for (UnitFacts unit : facts) {
            if (Arrays.binarySearch(founders, unit.unit().value()) >= 0) {
                filling.beginning(
                        unit.unit().value(),
                        beginning(unit)
                                .map(entry -> Beginning.of(entry, unit.nature()))
                                .orElse(Beginning.NOT_IN_THE_BOOK));
            }
        }
        words(filling);
        lives(filling);
        return filling.columns(cohorts(filling));
    }

    private void lives(Filling filling) {
        Map<Tag, UnitNumber> units = new HashMap<>();
        for (UnitFacts unit : facts) {
            int number = unit.unit().value();
            unit.tags().forEach(use -> units.put(use.tag(), unit.unit()));
            unit.outcomes().stream()
                    .filter(outcome -> isPast(outcome.day()))
                    .forEach(outcome -> filling.outcomeTurn(
                            number, outcome.fate().ordinal(), outcome.count(), Days.packed(outcome.day())));
            unit.pottings().stream()
                    .filter(potting -> isPast(potting.day()))
                    .forEach(potting -> filling.turn(number, Turn.POTTED, Days.packed(potting.day()), 0));
            unit.leavings().stream()
                    .filter(leaving -> isPast(leaving.day()))
                    .forEach(leaving -> filling.leavingTurn(
                            number, leaving.reason().ordinal(), leaving.count(), Days.packed(leaving.day())));
            if (SETTINGS.contains(began(unit))) {
                beginning(unit).ifPresent(entry -> Signs.set(number, entry, asOf, filling));
            }
        }
        long end = last.map(Recorded::order).orElse(0L);
        try (Stream<Chained> entries = view.since(0)) {
            entries.map(Chained::recorded)
                    .takeWhile(entry -> entry.order() <= end)
                    .filter(entry -> Signs.KINDS.contains(entry.entry().kind()))
                    .flatMap(entry -> History.events(
                            entry, amendments(entry.order()), tag -> Optional.ofNullable(units.get(tag)), asOf)
                            .stream())
                    .forEach(event -> Signs.add(event, filling));
        }
    }

    private EntryKind began(UnitFacts unit) {
        return view.entry(unit.begun().order()).orElseThrow().entry().kind();
    }

    private List<Recorded> amendments(long order) {
        long end = last.map(Recorded::order).orElse(0L);
        return view.amendments(order).stream()
                .filter(amendment -> amendment.order() <= end)
                .toList();
    }

    private int[] cohorts(Filling filling) {
        for (UnitFacts unit : facts) {
            unit.cohort()
                    .filter(cohort -> isPast(cohort.day()))
                    .ifPresent(cohort -> filling.cohort(
                            unit.unit().value(),
                            cohort.method().ordinal(),
                            cohort.day().first().toEpochDay(),
                            cohort.day().precision().ordinal(),
                            cohort.by().map(PersonNumber::value).orElse(Cohorts.NONE),
                            cohort.count().orElse(Cohorts.NONE),
                            cohort.root().value()));
        }
        filling.closeCohorts();
        int[] units = filling.cohortUnits();
        for (UnitFacts unit : facts) {
            unit.outcomes().stream()
                    .filter(outcome -> isPast(outcome.day()))
                    .forEach(outcome -> filling.outcome(
                            units,
                            unit.unit().value(),
                            outcome.fate().ordinal(),
                            outcome.count(),
                            Math.toIntExact(outcome.day().first().toEpochDay())));
        }
        return units;
    }

    private void words(Filling filling) {
        Map<String, Integer> cultivars = numbered(
                facts.stream().flatMap(unit -> unit.names().stream()),
                naming -> naming.cultivar().toString());
        filling.cultivars(cultivars.keySet().stream().map(CultivarName::parse).toList());
        for (UnitFacts unit : facts) {
            List<Naming> past =
                    unit.names().stream().filter(naming -> isPast(naming.day())).toList();
            Optional<Naming> latest = past.stream()
                    .filter(Naming::isTrue)
                    .reduce((before, after) -> after)
                    .or(() -> past.stream().reduce((before, after) -> after));
            latest.ifPresent(naming -> filling.name(
                    unit.unit().value(), cultivars.get(naming.cultivar().toString()), naming.isTrue()));
        }
    }

    /** Return texts with their places in the order of their code points, from 0; the map is in that order. */
    private static <T> Map<String, Integer> numbered(Stream<T> things, Function<T, String> text) {
        TreeMap<String, Integer> numbers = new TreeMap<>((one, other) ->
                Arrays.compare(one.codePoints().toArray(), other.codePoints().toArray()));
        things.map(text).forEach(word -> numbers.put(word, 0));
        int next = 0;
        for (Map.Entry<String, Integer> word : numbers.entrySet()) {
            word.setValue(next++);
        }
        return numbers;
    }
}
