package ortet.lineage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import ortet.book.Act;
import ortet.book.Link;
import ortet.book.UnitFacts.Leaving;
import ortet.book.UnitFacts.Nature;
import ortet.book.UnitFacts.Reason;
import ortet.lineage.RecallReading.Arrival;
import ortet.lineage.RecallReading.Handling;
import ortet.lineage.RecallReading.Occupant;
import ortet.lineage.Tie.Kind;
import ortet.plant.Place;

/**
 * Works out how far a disease may have gone, either by what is sure alone or by all that cannot be ruled out.
 *
 * <p>Each unit that is reached is known with the first day on which it could have carried the disease, and goes on from
 * there only to what happened on that day or later. First all is followed that needs no contact, wave by wave; then, for
 * each round, the contacts of all that is new or was reached earlier than before, and from these again all that needs
 * none. A unit reached on an earlier day than before is followed anew, so that the order in which the book is gone
 * through does not matter. What a state was reached by is kept, so that each finding can be explained; of the first
 * state of a unit the path has the fewest rounds, and the fewest ties within them.
 *
 * <p>Each round takes O(n log n) time for n ties looked at, times the number of days by which a unit is reached earlier
 * and earlier, which is small.
 */
final class Spread {
    /** Reached as one that a plant without a label may be: does not go on to the others that it may be. */
    private static final int ALIAS = 1;

    /** Reached by a place that is not known: goes on to what is raised from it, and to no contacts. */
    private static final int ENDED = 2;

    /** Reached by where it stood after it was off its mother: does not go back to her. */
    private static final int OFF = 4;

    /**
     * A unit that may carry the disease.
     *
     * @param unit the unit
     * @param since the first day on which it may
     * @param flags {@link #ALIAS}, {@link #ENDED}, {@link #OFF}
     * @param kind how it was reached
     * @param from from which other, absent for what was asked about
     * @param link by which link, where by one
     * @param what by which consignment, place or person, where by one
     * @param day the first day of what reached it, {@link Span#ALWAYS} when there is none
     * @param until the last day together with the other, {@link Span#OPEN} when there is none
     * @param doubt why it is not sure, where it is not
     */
    record Reach(
            int unit,
            int since,
            int flags,
            Kind kind,
            Optional<Reach> from,
            Optional<Link> link,
            Optional<String> what,
            int day,
            int until,
            Optional<Doubt> doubt) {}

    /**
     * Where it begins.
     *
     * @param unit the unit
     * @param kind how it is asked about
     * @param what in which words
     * @param day since when it stood or when it came; absent when asked about by its tag
     * @param isSure whether it surely is what was asked about
     */
    record Start(int unit, Kind kind, Optional<String> what, Optional<Span> day, boolean isSure) {}

    /** A time in which a suspect stood somewhere. */
    private record Window(int from, int to, Reach suspect, Optional<Place> place, Span span) {}

    /**
     * A time in which nobody knows where a suspect stood.
     *
     * @param unit the suspect
     * @param span when
     */
    record Gap(int unit, Span span) {}

    /** From which two suspects an entry was first gone on from: the second, for the first of them itself. */
    private static final class Touched {
        private int suspect;
        private int day = Span.OPEN;
        private int next = Span.OPEN;

        /** Tell whether anything is reached earlier than before, and remember it. */
        boolean isNews(int unit, int on) {
            if (unit == suspect || day == Span.OPEN) {
                boolean news = on < day;
                suspect = unit;
                day = Math.min(day, on);
                return news;
            }
            if (on < day) {
                next = day;
                suspect = unit;
                day = on;
                return true;
            }
            boolean news = on < next;
            next = Math.min(next, on);
            return news;
        }
    }

    private final RecallReading reading;
    private final RecallQuestion question;
    private final boolean sure;
    private final int origin;
    private final Map<Integer, Reach> first = new LinkedHashMap<>();
    private final Map<Integer, List<Reach>> best = new HashMap<>();
    private final Map<Integer, Gap> gaps = new TreeMap<>();
    private final Set<Long> nobodys = new TreeSet<>();
    private final Set<Integer> tooOld = new TreeSet<>();
    private final Map<Long, Touched> handled = new HashMap<>();
    private List<Reach> wave = new ArrayList<>();
    private List<Reach> fresh = new ArrayList<>();

    Spread(RecallReading reading, RecallQuestion question, boolean sure) {
        this.reading = reading;
        this.question = question;
        this.sure = sure;
        this.origin = question.since().map(day -> (int) day.toEpochDay()).orElse(Span.ALWAYS);
    }

    /** Spread from where it begins, as far as it goes. */
    void from(List<Start> starts) {
        List<Reach> seeds = new ArrayList<>();
        for (Start start : starts) {
            if (start.isSure() || !sure) {
                int since = start.kind() == Kind.STOOD && !question.sources()
                        ? Math.max(origin, start.day().orElseThrow().low(sure))
                        : origin;
                seeds.add(new Reach(
                        start.unit(),
                        since,
                        0,
                        start.kind(),
                        Optional.empty(),
                        Optional.empty(),
                        start.what(),
                        start.day().map(Span::from).orElse(Span.ALWAYS),
                        start.day().map(Span::to).orElse(Span.OPEN),
                        start.isSure() ? Optional.empty() : Optional.of(Doubt.COARSE_DAY)));
            }
        }
        seeds.forEach(this::add);
        if (question.sources()) {
            sources(seeds);
        }
        follow();
        for (int round = 1; round <= question.steps() && !fresh.isEmpty(); round++) {
            List<Reach> suspects = fresh.stream()
                    .filter(state -> (state.flags() & ENDED) == 0)
                    .filter(state -> best.get(state.unit()).contains(state))
                    .toList();
            fresh = new ArrayList<>();
            if (question.rounds() > 0) {
                stand(suspects);
            }
            if (question.tools()) {
                hands(suspects);
            }
            follow();
        }
    }

    /** Return the state by which each unit was first reached, in the order in which they were. */
    Map<Integer, Reach> first() {
        return first;
    }

    /** Return the first day on which a unit that was reached may have carried the disease. */
    int since(int unit) {
        return best.get(unit).stream().mapToInt(Reach::since).min().orElseThrow();
    }

    /** Return the suspects of which nobody knows, for a time that counts, where they stood, by unit. */
    List<Gap> gaps() {
        return List.copyOf(gaps.values());
    }

    /** Return how many entries on suspects do not say who did it. */
    int nobodys() {
        return nobodys.size();
    }

    /** Return the units whose links were left alone because they are older than the day asked for. */
    Set<Integer> tooOld() {
        return tooOld;
    }

    // ---- keeping count ----

    private boolean isKnown(int unit, int flags, int since) {
        for (Reach state : best.getOrDefault(unit, List.of())) {
            if (state.since() <= since && (state.flags() & flags) == state.flags()) {
                return true;
            }
        }
        return false;
    }

    private void add(Reach state) {
        if (isKnown(state.unit(), state.flags(), state.since())) {
            return;
        }
        List<Reach> states = best.computeIfAbsent(state.unit(), unit -> new ArrayList<>(1));
        states.removeIf(other -> state.since() <= other.since() && (state.flags() & other.flags()) == state.flags());
        states.add(state);
        first.putIfAbsent(state.unit(), state);
        wave.add(state);
        fresh.add(state);
    }

    private void reach(
            Reach from, int unit, int since, int flags, Kind kind, Link link, int day, Optional<Doubt> doubt) {
        add(new Reach(
                unit,
                since,
                flags,
                kind,
                Optional.of(from),
                Optional.of(link),
                Optional.empty(),
                day,
                Span.OPEN,
                doubt));
    }

    // ---- up to every possible source ----

    private void sources(List<Reach> seeds) {
        Set<Integer> met = new HashSet<>();
        List<Reach> now = new ArrayList<>(seeds);
        seeds.forEach(seed -> met.add(seed.unit()));
        while (!now.isEmpty()) {
            List<Integer> units = now.stream().map(Reach::unit).toList();
            reading.readUp(units);
            reading.readWhereabouts(units);
            List<Reach> next = new ArrayList<>();
            for (Reach state : now) {
                for (Link link : reading.up(state.unit())) {
                    int mother = link.mother().value();
                    if (!question.follows(link) || sure && reading.isOneOfSeveral(link)) {
                        continue;
                    }
                    if (lastDay(link) < origin) {
                        tooOld.add(state.unit());
                    } else if (met.add(mother)) {
                        Reach source = new Reach(
                                mother,
                                origin,
                                0,
                                Kind.SOURCE_OF,
                                Optional.of(state),
                                Optional.of(link),
                                Optional.empty(),
                                Span.first(link.day()),
                                Span.OPEN,
                                doubtOf(link));
                        add(source);
                        next.add(source);
                    }
                }
            }
            if (question.followsConsignments()) {
                now.forEach(this::consignment);
            }
            now = next;
        }
    }

    /** Return the last day on which anything could pass by a link. */
    private int lastDay(Link link) {
        return switch (link.act()) {
            case LAYERED_FROM -> whileOnMother(link.child().value()).high(sure);
            case SPORT_OF, ONE_OF -> Span.OPEN;
            default -> sure ? Span.first(link.day()) : Span.last(link.day());
        };
    }

    private Span whileOnMother(int unit) {
        return reading.whereabouts(unit)
                .onMother()
                .orElseGet(() -> new Span(Span.ALWAYS, Span.OPEN, Span.ALWAYS, Span.OPEN));
    }

    private Optional<Doubt> doubtOf(Link link) {
        if (sure || !reading.isOneOfSeveral(link)) {
            return Optional.empty();
        }
        return Optional.of(
                switch (link.act()) {
                    case STRUCK_FROM -> Doubt.SEVERAL_MOTHERS;
                    case MERGED_FROM -> Doubt.MERGED;
                    default -> Doubt.LOST_LABEL;
                });
    }

    private void consignment(Reach state) {
        Arrival mine = reading.arrivals().get(state.unit());
        if (mine == null || mine.consignment().isEmpty() && mine.supplier().isEmpty()) {
            return;
        }
        if ((sure ? Span.first(mine.day()) : Span.last(mine.day())) < origin) {
            tooOld.add(state.unit());
            return;
        }
        reading.arrivals().forEach((unit, other) -> {
            Optional<Doubt> doubt = together(mine, other);
            boolean same = doubt.isPresent() ? !sure : isSameConsignment(mine, other);
            if (same && unit != state.unit()) {
                add(new Reach(
                        unit,
                        origin,
                        0,
                        Kind.SAME_CONSIGNMENT,
                        Optional.of(state),
                        Optional.empty(),
                        mine.consignment().or(other::consignment),
                        Span.first(other.day()),
                        Span.OPEN,
                        doubt));
            }
        });
    }

    private static boolean isSameConsignment(Arrival one, Arrival other) {
        return one.consignment().isPresent()
                && other.consignment().isPresent()
                && one.consignment().get().equalsIgnoreCase(other.consignment().get())
                && (one.supplier().isEmpty()
                        || other.supplier().isEmpty()
                        || one.supplier().equals(other.supplier()));
    }

    /** Return a doubt when two may have come from one supplier on one day and the consignment of one of them is not told. */
    private static Optional<Doubt> together(Arrival one, Arrival other) {
        boolean untold = one.consignment().isEmpty() || other.consignment().isEmpty();
        boolean supplied = one.supplier().isPresent() && one.supplier().equals(other.supplier());
        boolean day =
                Span.first(one.day()) <= Span.last(other.day()) && Span.first(other.day()) <= Span.last(one.day());
        return untold && supplied && day ? Optional.of(Doubt.SAME_DELIVERY) : Optional.empty();
    }

    // ---- what needs no contact ----

    private void follow() {
        while (!wave.isEmpty()) {
            List<Reach> now = wave;
            wave = new ArrayList<>();
            List<Integer> units = now.stream().map(Reach::unit).toList();
            reading.readLinks(units);
            List<Integer> parts = new ArrayList<>(units);
            units.forEach(unit -> reading.down(unit).stream()
                    .filter(link -> link.act().isLayering() || link.act() == Act.SPORT_OF)
                    .forEach(link -> parts.add(link.child().value())));
            reading.readWhereabouts(parts);
            for (Reach state : now) {
                down(state);
                across(state);
            }
        }
    }

    private void down(Reach state) {
        for (Link link : reading.down(state.unit())) {
            if (!question.follows(link) || sure && reading.isOneOfSeveral(link)) {
                continue;
            }
            int child = link.child().value();
            switch (link.act()) {
                case LAYERED_FROM, SPORT_OF -> {
                    Span span = whileOnMother(child);
                    if (state.since() <= span.high(sure)) {
                        reach(
                                state,
                                child,
                                Math.max(state.since(), span.low(sure)),
                                keepBody(state),
                                Kind.RAISED_FROM,
                                link,
                                span.from(),
                                coarse(state.since() <= span.surelyTo()));
                    } else {
                        tooOld(state, child);
                    }
                }
                case ONE_OF ->
                    reach(
                            state,
                            child,
                            Math.max(state.since(), Span.first(link.day())),
                            keep(state) | ALIAS,
                            Kind.RAISED_FROM,
                            link,
                            Span.first(link.day()),
                            Optional.of(Doubt.LOST_LABEL));
                default -> {
                    if (state.since() <= (sure ? Span.first(link.day()) : Span.last(link.day()))) {
                        reach(
                                state,
                                child,
                                Math.max(state.since(), sure ? Span.last(link.day()) : Span.first(link.day())),
                                keep(state),
                                Kind.RAISED_FROM,
                                link,
                                Span.first(link.day()),
                                doubtOf(link).or(() -> coarse(state.since() <= Span.first(link.day()))));
                    } else {
                        tooOld(state, child);
                    }
                }
            }
        }
    }

    private void tooOld(Reach state, int unit) {
        if (state.since() == origin) {
            tooOld.add(unit);
        }
    }

    private static int keep(Reach state) {
        return state.flags() & ENDED;
    }

    /** Return what a part shares with its plant: what may be another through the one may not be through the other. */
    private static int keepBody(Reach state) {
        return state.flags() & (ENDED | ALIAS);
    }

    private Optional<Doubt> coarse(boolean isSure) {
        return sure || isSure ? Optional.empty() : Optional.of(Doubt.COARSE_DAY);
    }

    /** Go on from a part to the whole plant, from a plant without a label to what it may be, and back to a rootstock. */
    private void across(Reach state) {
        for (Link link : reading.up(state.unit())) {
            if (!question.follows(link)) {
                continue;
            }
            int mother = link.mother().value();
            if (link.act().isLayering() || link.act() == Act.SPORT_OF) {
                Span span = whileOnMother(state.unit());
                if (state.since() <= span.high(sure) && (state.flags() & OFF) == 0) {
                    reach(
                            state,
                            mother,
                            Math.max(state.since(), span.low(sure)),
                            keepBody(state),
                            Kind.BODY_OF,
                            link,
                            span.from(),
                            coarse(state.since() <= span.surelyTo()));
                }
            } else if (link.act() == Act.ONE_OF && !sure && (state.flags() & ALIAS) == 0) {
                reach(
                        state,
                        mother,
                        state.since(),
                        keep(state),
                        Kind.MAY_BE,
                        link,
                        Span.first(link.day()),
                        Optional.of(Doubt.LOST_LABEL));
            }
        }
        back(state);
    }

    /** Go back to a rootstock that outlived a graft. */
    private void back(Reach state) {
        List<Link> stocks = stocks(state.unit());
        if (stocks.isEmpty()) {
            return;
        }
        Map<Long, Leaving> failures = new HashMap<>();
        for (Leaving leaving : reading.leavings(state.unit())) {
            if (leaving.reason() == Reason.FAILED || leaving.reason() == Reason.WITHDRAWN) {
                failures.put(leaving.order(), leaving);
            }
        }
        for (Link link : stocks) {
            for (Leaving leaving : reading.leavings(link.mother().value())) {
                boolean isHis = leaving.reason() == Reason.UNWORKED && failures.containsKey(leaving.order());
                ToIntFunction<Boolean> last = exact -> exact ? Span.first(leaving.day()) : Span.last(leaving.day());
                if (isHis && state.since() <= last.applyAsInt(sure)) {
                    reach(
                            state,
                            link.mother().value(),
                            Math.max(state.since(), sure ? Span.last(leaving.day()) : Span.first(leaving.day())),
                            keep(state),
                            Kind.CAME_BACK,
                            link,
                            Span.first(leaving.day()),
                            coarse(state.since() <= last.applyAsInt(true)));
                }
            }
        }
    }

    /** Return the links to the rootstocks of a graft, or of the batch of grafts that it was split from. */
    private List<Link> stocks(int unit) {
        List<Link> stocks = new ArrayList<>();
        Set<Integer> met = new HashSet<>(Set.of(unit));
        List<Integer> parts = new ArrayList<>(List.of(unit));
        for (int at = 0; at < parts.size(); at++) {
            reading.readUp(List.of(parts.get(at)));
            for (Link link : reading.up(parts.get(at))) {
                if (link.act() == Act.ROOTSTOCK_OF && question.follows(link)) {
                    stocks.add(link);
                } else if (link.act() == Act.SPLIT_FROM && met.add(link.mother().value())) {
                    parts.add(link.mother().value());
                }
            }
        }
        return stocks;
    }

    // ---- contacts ----

    private void stand(List<Reach> suspects) {
        reading.readWhereabouts(suspects.stream().map(Reach::unit).toList());
        Map<Place, List<Window>> windows = new TreeMap<>();
        List<Window> known = new ArrayList<>();
        List<Window> nowhere = new ArrayList<>();
        for (Reach suspect : suspects) {
            Whereabouts where = reading.whereabouts(suspect.unit());
            for (Whereabouts.Stood stood : where.stood()) {
                Window window = window(suspect, stood.span(), Optional.of(stood.place()));
                if (window.from() <= window.to()) {
                    known.add(window);
                    for (Place place : reading.near(stood.place())) {
                        windows.computeIfAbsent(place, here -> new ArrayList<>())
                                .add(window);
                    }
                }
            }
            for (Span span : where.nowhere()) {
                Window window = window(suspect, span, Optional.empty());
                if (window.from() <= window.to()) {
                    nowhere.add(window);
                    gaps.merge(
                            suspect.unit(),
                            new Gap(suspect.unit(), new Span(window.from(), window.to(), window.from(), window.to())),
                            (before, after) ->
                                    before.span().from() <= after.span().from() ? before : after);
                }
            }
        }
        reading.readOccupants(windows.keySet());
        windows.forEach((place, all) -> {
            all.sort(Comparator.comparingInt(Window::from));
            for (Occupant occupant : reading.occupants(place)) {
                meet(occupant.unit(), occupant.span(), all, occupant.isOff() ? OFF : 0, Optional.of(place));
            }
        });
        if (sure) {
            return;
        }
        known.sort(Comparator.comparingInt(Window::from));
        for (int unit : known.isEmpty() ? List.<Integer>of() : reading.withoutPlace()) {
            for (Span span : reading.whereabouts(unit).nowhere()) {
                meet(unit, span, known, ENDED | OFF, Optional.empty());
            }
        }
        if (question.everywhere() && !nowhere.isEmpty()) {
            nowhere.sort(Comparator.comparingInt(Window::from));
            for (int unit : reading.everything()) {
                for (Span span : reading.whereabouts(unit).present()) {
                    meet(unit, span, nowhere, ENDED, Optional.empty());
                }
            }
        }
    }

    private Window window(Reach suspect, Span span, Optional<Place> place) {
        return new Window(Math.max(suspect.since(), span.low(sure)), span.high(sure), suspect, place, span);
    }

    /** Let a unit meet the first suspect that it can; the windows are sorted by their beginning. */
    private void meet(int unit, Span span, List<Window> windows, int flags, Optional<Place> place) {
        int low = span.low(sure);
        int high = span.high(sure);
        if (low > high || isKnown(unit, flags, low)) {
            return;
        }
        for (Window window : windows) {
            if (window.from() > high) {
                return;
            }
            int day = Math.max(low, window.from());
            if (window.suspect().unit() != unit && day <= window.to()) {
                if (!isKnown(unit, flags, day)) {
                    meet(unit, span, window, day, flags, place);
                }
                return;
            }
        }
    }

    private void meet(int unit, Span span, Window window, int day, int flags, Optional<Place> place) {
        Reach suspect = window.suspect();
        Optional<Doubt> doubt;
        if (place.isEmpty()) {
            doubt = Optional.of(window.place().isEmpty() ? Doubt.SUSPECT_PLACE_UNKNOWN : Doubt.PLACE_UNKNOWN);
        } else {
            int from = Math.max(Math.max(span.surelyFrom(), window.span().surelyFrom()), suspect.since());
            int to = Math.min(span.surelyTo(), window.span().surelyTo());
            doubt = coarse(from <= to);
        }
        Optional<String> what = window.place()
                .map(theirs -> place.filter(mine -> !mine.equals(theirs))
                        .map(mine -> mine + " / " + theirs)
                        .orElse(theirs.name()));
        add(new Reach(
                unit,
                day,
                flags,
                Kind.STOOD_WITH,
                Optional.of(suspect),
                Optional.empty(),
                what,
                day,
                Math.min(window.to(), span.high(sure)),
                doubt));
    }

    private void hands(List<Reach> suspects) {
        reading.readHands(suspects.stream().map(Reach::unit).toList());
        for (Reach suspect : suspects) {
            for (Handling mine : reading.handlingsOf(suspect.unit())) {
                if (suspect.since() > Span.last(mine.day())) {
                    continue;
                }
                if (mine.by().isEmpty()) {
                    nobodys.add(mine.key());
                    continue;
                }
                for (Handling theirs : reading.sameHand(mine)) {
                    hand(suspect, mine, theirs);
                }
            }
        }
    }

    private void hand(Reach suspect, Handling mine, Handling theirs) {
        boolean exact = mine.day().isExact() && theirs.day().isExact();
        int last = Math.min(Span.last(mine.day()), Span.last(theirs.day()));
        if (sure && !exact || suspect.since() > last) {
            return;
        }
        int day = Math.max(suspect.since(), Math.max(Span.first(mine.day()), Span.first(theirs.day())));
        if (!handled.computeIfAbsent(theirs.key(), key -> new Touched()).isNews(suspect.unit(), day)) {
            return;
        }
        for (int unit : reading.handled(theirs)) {
            if (unit != suspect.unit()) {
                add(new Reach(
                        unit,
                        day,
                        0,
                        Kind.SAME_HAND,
                        Optional.of(suspect),
                        Optional.empty(),
                        mine.by().map(Object::toString),
                        Math.max(Span.first(mine.day()), Span.first(theirs.day())),
                        last,
                        coarse(exact)));
            }
        }
    }

    /** Tell whether a unit is a part of its mother on the day asked about. */
    static boolean isOnMother(Whereabouts where) {
        return where.nature() == Nature.SPORT
                || where.onMother().filter(span -> span.to() == Span.OPEN).isPresent();
    }
}
