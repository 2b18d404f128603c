package ortet.lineage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.History;
import ortet.book.Link;
import ortet.book.Lookup;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts.Leaving;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.book.UnitFacts.Standing;
import ortet.lineage.RecallReading.Arrival;
import ortet.lineage.Spread.Reach;
import ortet.lineage.Spread.Start;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Finds where a recall begins, lets the disease spread twice, by what is sure and by all that may be, and tells of both. */
final class Recaller {
    private static final QueryName PLACES = new QueryName("places-in-use");
    private static final QueryName MARKS = new QueryName("marks-of-units");

    private final BookView view;
    private final RecallQuestion question;
    private final RecallReading book;
    private final Reading reading;

    Recaller(BookView view, RecallQuestion question) {
        this.view = view;
        this.question = question;
        this.book = new RecallReading(view, question.asOf());
        this.reading = new Reading(view, question.asOf());
    }

    Recall recall() {
        List<Start> starts = starts();
        Spread sure = new Spread(book, question, true);
        sure.from(starts);
        Spread all = new Spread(book, question, false);
        all.from(starts);
        List<Integer> units = all.first().keySet().stream().sorted().toList();
        book.readWhereabouts(units);
        book.readLeavings(units);
        Set<Integer> named = new TreeSet<>(units);
        named.addAll(all.tooOld());
        book.readNames(named, reading);
        Set<Integer> held = held(units);
        List<Finding> implicated = new ArrayList<>();
        List<Finding> notRuledOut = new ArrayList<>();
        for (int unit : units) {
            if (sure.first().containsKey(unit)) {
                implicated.add(finding(unit, sure, all, held));
            } else {
                notRuledOut.add(finding(unit, all, all, held));
            }
        }
        implicated.sort(Comparator.comparing(Finding::tag));
        notRuledOut.sort(Comparator.comparing(Finding::tag));
        Set<Integer> older = new TreeSet<>(all.tooOld());
        older.removeAll(all.first().keySet());
        return new Recall(
                question,
                view.head(),
                (int) starts.stream().map(Start::unit).distinct().count(),
                implicated,
                notRuledOut,
                all.gaps().stream()
                        .map(gap -> new Recall.Unplaced(
                                reading.tag(new UnitNumber(gap.unit())),
                                Span.day(gap.span().from()),
                                Span.day(gap.span().to())))
                        .sorted(Comparator.comparing(Recall.Unplaced::tag))
                        .toList(),
                all.nobodys(),
                older.stream()
                        .map(unit -> reading.tag(new UnitNumber(unit)))
                        .sorted()
                        .toList());
    }

    // ---- where it begins ----

    private List<Start> starts() {
        Map<Integer, Start> starts = new LinkedHashMap<>();
        for (Tag tag : question.tags()) {
            UnitNumber unit = Lookup.unit(view, tag);
            reading.requireBegun(unit, tag);
            starts.putIfAbsent(
                    unit.value(), new Start(unit.value(), Tie.Kind.ASKED, Optional.empty(), Optional.empty(), true));
        }
        if (question.consignment().isPresent() || question.supplier().isPresent()) {
            came().forEach(start -> starts.putIfAbsent(start.unit(), start));
        }
        question.place()
                .ifPresent(place -> stood(place)
                        .forEach(start -> starts.merge(
                                start.unit(), start, (before, after) -> before.isSure() ? before : after)));
        return List.copyOf(starts.values());
    }

    private List<Start> came() {
        Optional<Person> supplier = question.supplier().map(name -> Lookup.person(view, name));
        String words = question.consignment()
                        .map(text -> "with consignment " + text.strip())
                        .orElse("")
                + supplier.map(person -> (question.consignment().isPresent() ? " " : "") + "from " + person.shown())
                        .orElse("");
        List<Start> starts = new ArrayList<>();
        Set<String> known = new TreeSet<>();
        book.arrivals().forEach((unit, arrival) -> {
            boolean his = supplier.map(Person::number)
                    .map(number -> arrival.supplier().equals(Optional.of(number)))
                    .orElse(true);
            if (his) {
                arrival.consignment().ifPresent(known::add);
                if (question.consignment()
                        .map(text -> arrival.consignment()
                                .filter(text.strip()::equalsIgnoreCase)
                                .isPresent())
                        .orElse(true)) {
                    start(unit, arrival, words).ifPresent(starts::add);
                }
            }
        });
        if (starts.isEmpty()) {
            Optional<String> near = question.consignment().flatMap(text -> Nearest.of(text.strip(), known));
            throw new Refused(Fault.of("unknown-consignment", "nothing in the book came " + words + period())
                    .nearest(near));
        }
        return starts;
    }

    private String period() {
        return question.from().map(day -> ", from " + day).orElse("")
                + question.to().map(day -> ", to " + day).orElse("");
    }

    private Optional<Start> start(int unit, Arrival arrival, String words) {
        Span day = Span.between(arrival.day(), Optional.of(arrival.day()));
        return asked(day)
                .map(isSure ->
                        new Start(unit, Tie.Kind.CAME, Optional.of(words), Optional.of(day), isSure || isWhole(day)));
    }

    /** Return whether something surely was in the time asked about, or nothing when it was not. */
    private Optional<Boolean> asked(Span span) {
        int from = question.from().map(day -> (int) day.toEpochDay()).orElse(Span.ALWAYS);
        int to = question.to().map(day -> (int) day.toEpochDay()).orElse(Span.OPEN);
        Span both = span.and(new Span(from, to, from, to));
        return both.isPossible() ? Optional.of(both.surelyFrom() <= both.surelyTo()) : Optional.empty();
    }

    /** Tell whether any day on which something may have been is in the time asked about. */
    private boolean isWhole(Span span) {
        return question.from().map(day -> day.toEpochDay() <= span.from()).orElse(true)
                && question.to().map(day -> day.toEpochDay() >= span.to()).orElse(true);
    }

    private List<Start> stood(Place wanted) {
        Set<Place> places = book.within(wanted);
        book.readOccupants(places);
        Map<Integer, Start> starts = new TreeMap<>();
        boolean isKnown = false;
        for (Place place : places) {
            for (RecallReading.Occupant occupant : book.occupants(place)) {
                isKnown = true;
                asked(occupant.span()).ifPresent(isSure -> {
                    Span span = bounded(occupant.span());
                    starts.merge(
                            occupant.unit(),
                            new Start(
                                    occupant.unit(),
                                    Tie.Kind.STOOD,
                                    Optional.of(place.name()),
                                    Optional.of(span),
                                    isSure),
                            Recaller::earlier);
                });
            }
        }
        if (!isKnown) {
            List<String> names = new ArrayList<>();
            for (Rows.Row row : view.ask(PLACES, Parameters.NONE)) {
                row.text("place").ifPresent(names::add);
            }
            throw new Refused(Fault.of("unknown-place", "nothing ever stood in " + wanted)
                    .nearest(Nearest.of(wanted.name(), names)));
        }
        return List.copyOf(starts.values());
    }

    private Span bounded(Span span) {
        int from = question.from().map(day -> (int) day.toEpochDay()).orElse(Span.ALWAYS);
        int to = question.to().map(day -> (int) day.toEpochDay()).orElse(Span.OPEN);
        return span.and(new Span(from, to, from, to));
    }

    /** Return the one that surely stood there, with the earliest days of both. */
    private static Start earlier(Start one, Start other) {
        Start better = one.isSure() == other.isSure()
                ? (one.day().orElseThrow().from() <= other.day().orElseThrow().from() ? one : other)
                : one.isSure() ? one : other;
        Start worse = better == one ? other : one;
        Span span = better.day().orElseThrow();
        Span rest = worse.day().orElseThrow();
        return new Start(
                better.unit(),
                better.kind(),
                better.what(),
                Optional.of(new Span(
                        Math.min(span.from(), rest.from()),
                        Math.max(span.to(), rest.to()),
                        worse.isSure() ? Math.min(span.surelyFrom(), rest.surelyFrom()) : span.surelyFrom(),
                        span.surelyTo())),
                better.isSure());
    }

    // ---- what is told of each ----

    private Finding finding(int unit, Spread spread, Spread all, Set<Integer> held) {
        UnitNumber number = new UnitNumber(unit);
        Whereabouts where = book.whereabouts(unit);
        Optional<Standing> standing = book.standing(unit);
        Optional<Integer> pending = standing.map(Standing::pending).orElse(Optional.of(0));
        int growing = standing.map(Standing::growing).orElse(0);
        boolean part = Spread.isOnMother(where);
        boolean here = isHere(unit, new HashSet<>());
        List<Tie> path = path(spread.first().get(unit));
        boolean implicated = spread != all;
        EnumSet<Doubt> doubts = EnumSet.noneOf(Doubt.class);
        if (!implicated) {
            path.forEach(tie -> tie.doubt().ifPresent(doubts::add));
            if (doubts.isEmpty()) {
                doubts.add(Doubt.COARSE_DAY);
            }
        }
        return new Finding(
                number,
                reading.tag(number),
                where.nature(),
                reading.named(number),
                (int) path.stream()
                        .filter(tie -> tie.kind() == Tie.Kind.STOOD_WITH || tie.kind() == Tie.Kind.SAME_HAND)
                        .count(),
                Span.day(all.since(unit)),
                path,
                doubts,
                here ? pending : Optional.of(0),
                here ? growing : 0,
                part && here,
                place(unit, new HashSet<>()),
                held.contains(unit),
                sales(unit, all.since(unit), implicated ? spread.since(unit) : Span.OPEN),
                here ? Optional.empty() : Optional.of(gone(unit)));
    }

    private Optional<Integer> mother(int unit) {
        book.readUp(List.of(unit));
        return book.up(unit).stream()
                .filter(link -> link.act().isLayering() || link.act() == Act.SPORT_OF)
                .map(Link::mother)
                .map(UnitNumber::value)
                .findFirst();
    }

    private boolean isHere(int unit, Set<Integer> met) {
        Optional<Standing> standing = book.standing(unit);
        boolean here = standing.map(last ->
                        last.growing() > 0 || last.pending().map(n -> n > 0).orElse(true))
                .orElse(false);
        boolean sport = book.whereabouts(unit).nature() == Nature.SPORT;
        return here
                && (!sport
                        || !met.add(unit)
                        || mother(unit).map(plant -> isHere(plant, met)).orElse(true));
    }

    private Optional<Place> place(int unit, Set<Integer> met) {
        Optional<Integer> mother =
                Spread.isOnMother(book.whereabouts(unit)) && met.add(unit) ? mother(unit) : Optional.empty();
        return mother.flatMap(plant -> place(plant, met)).or(() -> book.place(unit));
    }

    private String gone(int unit) {
        Optional<Leaving> last = book.leavings(unit).stream()
                .filter(leaving -> leaving.reason() != Reason.RETURNED && leaving.reason() != Reason.UNWORKED)
                .reduce((before, after) -> after);
        return last.map(leaving -> State.words(leaving.reason()) + " on " + leaving.day())
                .orElse("gone with its plant");
    }

    private List<Sale> sales(int unit, int since, int surelySince) {
        List<Sale> sales = new ArrayList<>();
        for (Leaving leaving : book.leavings(unit)) {
            if (leaving.reason() == Reason.SOLD && Span.last(leaving.day()) >= since) {
                sales.add(new Sale(
                        leaving.person(),
                        leaving.person().map(reading::shown),
                        leaving.day(),
                        leaving.count(),
                        0,
                        Span.first(leaving.day()) >= surelySince));
            } else if (leaving.reason() == Reason.RETURNED) {
                takeBack(sales, leaving);
            }
        }
        return sales;
    }

    /** Count what came back against the sales to the customer who brought it, then against others, the last first. */
    private static void takeBack(List<Sale> sales, Leaving back) {
        int left = back.count();
        for (boolean his : new boolean[] {true, false}) {
            for (int at = sales.size() - 1; at >= 0; at--) {
                Sale sale = sales.get(at);
                if (sale.customer().equals(back.person()) == his) {
                    int count = Math.min(left, sale.count() - sale.back());
                    sales.set(at, sale.back(count));
                    left -= count;
                }
            }
        }
    }

    private Set<Integer> held(Collection<Integer> units) {
        Set<Integer> held = new TreeSet<>();
        String list = units.stream().map(String::valueOf).collect(Collectors.joining(","));
        for (Rows.Row row : view.ask(MARKS, Parameters.NONE.with("units", list))) {
            int unit = row.whole("unit").orElseThrow().intValue();
            if (Marks.of(History.of(view, new UnitNumber(unit), question.asOf()), question.asOf())
                    .held()
                    .isPresent()) {
                held.add(unit);
            }
        }
        return held;
    }

    private List<Tie> path(Reach found) {
        List<Tie> path = new ArrayList<>();
        Optional<Reach> next = Optional.of(found);
        while (next.isPresent()) {
            path.add(tie(next.get()));
            next = next.get().from();
        }
        return path;
    }

    private Tie tie(Reach state) {
        UnitNumber unit = new UnitNumber(state.unit());
        boolean person = state.kind() == Tie.Kind.SAME_HAND;
        Optional<LocalDate> day = Span.day(state.day());
        return new Tie(
                state.kind(),
                unit,
                reading.tag(unit),
                state.link().map(Link::act),
                state.what().map(text -> person ? reading.shown(PersonNumber.parse(text)) : text),
                told(state).or(() -> day.map(LocalDate::toString)),
                Span.day(state.until()),
                state.doubt());
    }

    /** Return the day as the book tells it, where the tie is an act or an arrival. */
    private Optional<String> told(Reach state) {
        return switch (state.kind()) {
            case RAISED_FROM, SOURCE_OF, MAY_BE ->
                state.link().map(link -> link.day().toString());
            case CAME, SAME_CONSIGNMENT ->
                Optional.ofNullable(book.arrivals().get(state.unit()))
                        .map(arrival -> arrival.day().toString());
            case ASKED, STOOD, BODY_OF, CAME_BACK, STOOD_WITH, SAME_HAND -> Optional.empty();
        };
    }
}
