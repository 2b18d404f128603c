package ortet.yield;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.Link;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Leaving;
import ortet.book.UnitFacts.Method;
import ortet.book.UnitFacts.Outcome;
import ortet.book.UnitFacts.Standing;
import ortet.entry.EntryKind;
import ortet.entry.Graded;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * Follows cohorts to what became of them from the timelines of a book, plant by plant and plainly, with an object for
 * everything, for comparison with {@link Fates}.
 *
 * <p>Takes no part of a snapshot: what units did is read out of their facts and histories.
 */
final class FatesRowByRow {
    private static final Set<EntryKind> LIFE = Set.of(
            EntryKind.CHECKED,
            EntryKind.REWORKED,
            EntryKind.POTTED,
            EntryKind.PLANTED_OUT,
            EntryKind.LIFTED,
            EntryKind.MOVED,
            EntryKind.MEASURED,
            EntryKind.SEEN,
            EntryKind.KEPT_AS_STOCK,
            EntryKind.LEFT_LONG,
            EntryKind.CUT_BACK,
            EntryKind.GRADED,
            EntryKind.COUNTED,
            EntryKind.RETURNED);

    /** How the plants under a tag stood, and of which cohorts they are. */
    private static final class Carrier {
        private final Set<UnitNumber> cohorts = new TreeSet<>();
        private boolean isForeign;
        private Optional<LocalDate> start = Optional.empty();
        private Optional<LocalDate> seen = Optional.empty();
        private Optional<LocalDate> graded = Optional.empty();
    }

    /** What became of an account. */
    static final class Account {
        private final Set<UnitNumber> cohorts = new TreeSet<>();
        private final Map<Fates.Established, Integer> established = new EnumMap<>(Fates.Established.class);
        private final Map<Fates.Saleable, Integer> saleable = new EnumMap<>(Fates.Saleable.class);
        private boolean isBlurred;

        int count(Fates.Established how) {
            return established.getOrDefault(how, 0);
        }

        int count(Fates.Saleable how) {
            return saleable.getOrDefault(how, 0);
        }

        boolean isBlurred() {
            return isBlurred;
        }

        Set<UnitNumber> cohorts() {
            return cohorts;
        }
    }

    private record End(UnitNumber unit, Fates.Established how, Fates.Saleable sale, int count) {}

    private final BookView view;
    private final LocalDate asOf;
    private final Map<UnitNumber, Carrier> carriers = new TreeMap<>();
    private final Set<UnitNumber> open = new HashSet<>();
    private final List<Set<UnitNumber>> joined = new ArrayList<>();
    private final Set<UnitNumber> blurred = new HashSet<>();
    private final List<End> ends = new ArrayList<>();

    private FatesRowByRow(BookView view, LocalDate asOf) {
        this.view = view;
        this.asOf = asOf;
    }

    /** Return what became of the account of every cohort that had begun. */
    static Map<UnitNumber, Account> of(BookView view, LocalDate asOf) {
        return new FatesRowByRow(view, asOf).accounts();
    }

    private Map<UnitNumber, Account> accounts() {
        List<UnitNumber> all = new ArrayList<>();
        for (int number = 1; number <= view.head().lastUnit(); number++) {
            UnitNumber unit = new UnitNumber(number);
            if (view.facts(unit).filter(facts -> isPast(facts.begun().day())).isPresent()) {
                all.add(unit);
                carrier(unit);
            }
        }
        Map<UnitNumber, Account> accounts = new HashMap<>();
        for (UnitNumber unit : all) {
            if (isCohort(unit)) {
                Account own = new Account();
                own.cohorts.add(unit);
                accounts.put(unit, own);
            }
        }
        for (Set<UnitNumber> group : joined) {
            Account whole = new Account();
            group.forEach(unit -> whole.cohorts.addAll(accounts.get(unit).cohorts));
            whole.cohorts.forEach(unit -> accounts.put(unit, whole));
        }
        for (End end : ends) {
            Account account = accounts.get(end.unit());
            account.established.merge(end.how(), end.count(), Integer::sum);
            account.saleable.merge(end.sale(), end.count(), Integer::sum);
        }
        for (Account account : new HashSet<>(accounts.values())) {
            int told = account.established.values().stream()
                    .mapToInt(Integer::intValue)
                    .sum();
            int taken = account.cohorts.stream().mapToInt(this::taken).sum();
            account.isBlurred = told != taken || account.cohorts.stream().anyMatch(blurred::contains);
        }
        return accounts;
    }

    private boolean isPast(When day) {
        return !day.first().isAfter(asOf);
    }

    private UnitFacts facts(UnitNumber unit) {
        return view.facts(unit).orElseThrow();
    }

    private boolean isCohort(UnitNumber unit) {
        return facts(unit).cohort().isPresent();
    }

    private int taken(UnitNumber unit) {
        return outcomes(unit).stream()
                .filter(outcome -> outcome.fate() == Fate.TAKEN)
                .mapToInt(Outcome::count)
                .sum();
    }

    private List<Outcome> outcomes(UnitNumber unit) {
        return facts(unit).outcomes().stream()
                .filter(outcome -> isPast(outcome.day()))
                .toList();
    }

    private Carrier carrier(UnitNumber unit) {
        Carrier known = carriers.get(unit);
        if (known != null) {
            return known;
        }
        Carrier carrier = new Carrier();
        carriers.put(unit, carrier);
        if (isCohort(unit)) {
            carrier.cohorts.add(unit);
        }
        UnitFacts facts = facts(unit);
        LocalDate begun = facts.begun().day().first();
        boolean drawn = false;
        boolean rooted = false;
        int undecided = facts.cohort().flatMap(UnitFacts.Cohort::count).orElse(0);
        List<Link> mergers = new ArrayList<>();
        for (Link link : facts.links()) {
            if (link.act() == Act.DRAWN_FROM || link.act() == Act.SPLIT_FROM) {
                Carrier source = carrier(link.mother());
                drawn |= link.act() == Act.DRAWN_FROM;
                rooted |= link.act() == Act.DRAWN_FROM || link.count().orElse(0) > undecided;
                receive(unit, carrier, source);
                carrier.start = by(source.start, begun);
                carrier.seen = by(source.seen, begun);
                carrier.graded = by(source.graded, begun);
            } else if (link.act() == Act.MERGED_FROM) {
                carrier(link.mother());
                mergers.add(link);
            }
        }
        int given = mergers.stream().mapToInt(link -> link.count().orElse(0)).sum();
        if (given > undecided) {
            rooted = true;
            merge(unit, carrier, mergers, begun, given - undecided);
        }
        if (!carrier.isForeign && !carrier.cohorts.isEmpty()) {
            live(unit, carrier, rooted, drawn);
        }
        return carrier;
    }

    private static Optional<LocalDate> by(Optional<LocalDate> day, LocalDate begun) {
        return day.filter(one -> !one.isAfter(begun));
    }

    private void receive(UnitNumber unit, Carrier carrier, Carrier source) {
        if (source.isForeign || carrier.isForeign) {
            carrier.isForeign = true;
            if (isCohort(unit)) {
                blurred.add(unit);
            }
        } else if (!source.cohorts.isEmpty()) {
            carrier.cohorts.addAll(source.cohorts);
            join(carrier.cohorts);
        }
    }

    private void join(Set<UnitNumber> units) {
        Set<UnitNumber> all = new TreeSet<>(units);
        joined.removeIf(group -> group.stream().anyMatch(units::contains) && all.addAll(group) | true);
        // a group may now touch others by what it took over
        boolean grew = true;
        while (grew) {
            grew = joined.removeIf(group -> group.stream().anyMatch(all::contains) && all.addAll(group) | true);
        }
        joined.add(all);
    }

    private void merge(UnitNumber unit, Carrier carrier, List<Link> mergers, LocalDate day, int growing) {
        Map<UnitNumber, Integer> grew = new TreeMap<>();
        for (Link link : mergers) {
            List<Outcome> passed = outcomes(link.mother()).stream()
                    .filter(outcome -> outcome.fate() == Fate.MOVED_ON)
                    .toList();
            int undecided = passed.isEmpty()
                            || !passed.get(passed.size() - 1).day().first().equals(day)
                    ? 0
                    : passed.get(passed.size() - 1).count();
            grew.put(link.mother(), link.count().orElse(0) - undecided);
        }
        boolean told = grew.values().stream().mapToInt(n -> Math.max(0, n)).sum() == growing;
        boolean foreign = false;
        List<Carrier> sources = new ArrayList<>();
        for (Link link : mergers) {
            if (grew.get(link.mother()) > 0 || !told) {
                Carrier source = carrier(link.mother());
                foreign |= source.isForeign || source.cohorts.isEmpty();
                receive(unit, carrier, source);
                sources.add(source);
            }
        }
        carrier.start = latest(sources.stream().map(one -> by(one.start, day)).toList());
        carrier.seen = latest(sources.stream().map(one -> by(one.seen, day)).toList());
        carrier.graded = latest(sources.stream().map(one -> by(one.graded, day)).toList());
        if (foreign) {
            blurred.addAll(carrier.cohorts);
            carrier.isForeign = true;
        }
    }

    private static Optional<LocalDate> latest(List<Optional<LocalDate>> days) {
        return days.stream().allMatch(Optional::isPresent)
                ? days.stream().map(Optional::get).max(LocalDate::compareTo)
                : Optional.empty();
    }

    // ---- the life of one unit ----

    /** Something that happened, with its place among what happened that day. */
    private record Step(LocalDate day, int rank, Runnable deed) {}

    private void live(UnitNumber unit, Carrier carrier, boolean grew, boolean drawn) {
        UnitFacts facts = facts(unit);
        UnitNumber of = carrier.cohorts.iterator().next();
        boolean[] rooted = {grew};
        if (drawn && carrier.start.isEmpty()) {
            carrier.start = Optional.of(facts.begun().day().last());
        }
        boolean stands = facts.cohort()
                .map(UnitFacts.Cohort::method)
                .filter(method -> method == Method.LAYER || method == Method.GRAFT)
                .isPresent();
        List<Step> steps = new ArrayList<>();
        for (Outcome outcome : outcomes(unit)) {
            if (outcome.fate() == Fate.TAKEN) {
                steps.add(new Step(outcome.day().last(), 0, () -> {
                    rooted[0] = true;
                    if (stands && carrier.start.isEmpty()) {
                        carrier.start = Optional.of(outcome.day().last());
                    }
                }));
            }
        }
        facts.pottings().stream()
                .filter(potting -> isPast(potting.day()))
                .forEach(potting -> steps.add(new Step(potting.day().last(), 1, () -> {
                    if (rooted[0] && carrier.start.isEmpty()) {
                        carrier.start = Optional.of(potting.day().last());
                    }
                    see(carrier, potting.day());
                })));
        for (Event event : History.of(view, unit, asOf)) {
            EntryKind kind = event.entry().kind();
            if (!LIFE.contains(kind)
                    || kind == EntryKind.RETURNED
                    || !event.roles().contains(ortet.entry.Mention.Role.SUBJECT)) {
                continue;
            }
            steps.add(new Step(event.day().last(), kind == EntryKind.GRADED ? 4 : 2, () -> {
                see(carrier, event.day());
                if (event.entry() instanceof Graded && carrier.graded.isEmpty()) {
                    carrier.graded = Optional.of(event.day().first());
                }
            }));
        }
        Map<String, Fates.Established> last = new HashMap<>();
        for (Leaving leaving : facts.leavings()) {
            if (isPast(leaving.day())) {
                steps.add(new Step(leaving.day().last(), 10 + rank(leaving), () -> leave(of, carrier, leaving, last)));
            }
        }
        // a stable sort: what is alike stays in the order of the timeline
        steps.sort((one, other) -> one.day().equals(other.day())
                ? Integer.compare(one.rank(), other.rank())
                : one.day().compareTo(other.day()));
        steps.forEach(step -> step.deed().run());
        int there = facts.standings().stream()
                .filter(standing -> isPast(standing.day()))
                .reduce((before, after) -> after)
                .map(Standing::growing)
                .orElse(0);
        if (there > 0) {
            Fates.Established how = carrier.seen.isPresent()
                    ? Fates.Established.YES
                    : carrier.start.isEmpty() || asOf.isBefore(due(carrier.start.get()))
                            ? Fates.Established.TOO_YOUNG
                            : Fates.Established.UNSEEN;
            ends.add(new End(
                    of, how, carrier.graded.isPresent() ? Fates.Saleable.YES : Fates.Saleable.GROWING_ON, there));
        }
    }

    private static int rank(Leaving leaving) {
        return switch (leaving.reason()) {
            case MOVED_ON -> 0;
            case WORKED -> 1;
            case UNWORKED -> 2;
            case USED_UP -> 3;
            case SOLD -> 4;
            case RETURNED -> 5;
            case CULLED -> 6;
            case SURPLUS -> 7;
            case LOST -> 8;
            case FAILED, WITHDRAWN, NOT_SEEN -> 9;
        };
    }

    private static LocalDate due(LocalDate start) {
        LocalDate day = start;
        for (int left = Establishment.DEFAULTS.days(); left > 0; ) {
            day = day.plusDays(1);
            MonthDay at = MonthDay.from(day);
            if (!at.isBefore(MonthDay.of(4, 1)) && !at.isAfter(MonthDay.of(10, 31))) {
                left--;
            }
        }
        return day;
    }

    private static boolean isDue(Carrier carrier, When day) {
        return carrier.start.filter(start -> !day.first().isBefore(due(start))).isPresent();
    }

    private static void see(Carrier carrier, When day) {
        if (isDue(carrier, day) && carrier.seen.isEmpty()) {
            carrier.seen = Optional.of(day.first());
        }
    }

    private void leave(UnitNumber of, Carrier carrier, Leaving leaving, Map<String, Fates.Established> last) {
        Fates.Established alive = carrier.seen.isPresent() || isDue(carrier, leaving.day())
                ? Fates.Established.YES
                : Fates.Established.CENSORED;
        Fates.Saleable kept = carrier.graded.isPresent() ? Fates.Saleable.YES : Fates.Saleable.CENSORED;
        int count = leaving.count();
        switch (leaving.reason()) {
            case SOLD -> {
                last.put("sold", alive);
                ends.add(new End(of, alive, Fates.Saleable.YES, count));
            }
            case RETURNED -> {
                see(carrier, leaving.day());
                ends.add(new End(of, last.get("sold"), Fates.Saleable.YES, -count));
            }
            case LOST ->
                ends.add(new End(
                        of,
                        carrier.seen.isPresent() ? Fates.Established.YES : Fates.Established.NO,
                        carrier.graded.isPresent() ? Fates.Saleable.YES : Fates.Saleable.NO,
                        count));
            case CULLED ->
                ends.add(new End(
                        of, alive == Fates.Established.YES ? alive : Fates.Established.NO, Fates.Saleable.NO, count));
            case SURPLUS, USED_UP -> ends.add(new End(of, alive, kept, count));
            case WORKED -> {
                last.put("worked", alive);
                ends.add(new End(of, alive, kept, count));
            }
            case UNWORKED -> ends.add(new End(of, last.get("worked"), kept, -count));
            case MOVED_ON, FAILED, WITHDRAWN, NOT_SEEN -> {}
        }
    }
}
