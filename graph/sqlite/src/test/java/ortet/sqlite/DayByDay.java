package ortet.sqlite;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.entry.Acquired;
import ortet.entry.CuttingsStruck;
import ortet.entry.Divided;
import ortet.entry.Drawn;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.FoundUntagged;
import ortet.entry.GraftWorked;
import ortet.entry.LayerSet;
import ortet.entry.Mention.Role;
import ortet.entry.Merged;
import ortet.entry.PlaceListed;
import ortet.entry.Remainder;
import ortet.entry.Roots;
import ortet.entry.SeedSown;
import ortet.entry.Severed;
import ortet.entry.Share;
import ortet.entry.Split;
import ortet.entry.SportFound;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * The slow, obvious recall that the real one is held against: the nursery is lived through day by day, and on each day
 * everything that may pass a disease on does so.
 *
 * <p>It is worked out from the entries alone, by rules of its own, and from no fact that the book derives. It holds for
 * histories in which every day is known to the day, batches lose units by entries that say how many, and seed is
 * counted.
 */
final class DayByDay {
    /** Reached through something that nobody can be sure of. */
    private static final int DOUBT = 1;

    /** Reached as what a plant without a label may be. */
    private static final int ALIAS = 2;

    /** Reached through a place that is not known. */
    private static final int ENDED = 4;

    /** A layer reached where it stood after it was severed. */
    private static final int OFF = 8;

    private static final int VARIANTS = 16;
    private static final int NEVER = Integer.MAX_VALUE;
    private static final LocalDate BEFORE = LocalDate.of(2014, 12, 31);

    private static final Set<EntryKind> HANDS = EnumSet.of(
            EntryKind.LAYER_SET,
            EntryKind.CUTTINGS_STRUCK,
            EntryKind.GRAFT_WORKED,
            EntryKind.DIVIDED,
            EntryKind.CHECKED,
            EntryKind.REWORKED,
            EntryKind.TAKEN,
            EntryKind.SEVERED,
            EntryKind.DRAWN,
            EntryKind.POTTED,
            EntryKind.PLANTED_OUT,
            EntryKind.LIFTED,
            EntryKind.MEASURED,
            EntryKind.CUT_BACK,
            EntryKind.SPLIT,
            EntryKind.MERGED,
            EntryKind.CULLED);

    /** What is asked of both. */
    record Asked(
            List<Tag> tags,
            Optional<LocalDate> since,
            int rounds,
            boolean tools,
            boolean sources,
            boolean everywhere,
            LocalDate asOf) {
        int steps() {
            return rounds > 0 ? rounds : tools ? 1 : 0;
        }
    }

    /**
     * What is found of a unit.
     *
     * @param isSure whether it is implicated
     * @param since the first day on which it may carry the disease; absent for always
     */
    record Found(boolean isSure, Optional<LocalDate> since) {}

    /** The days of one unit, by number from {@link #BEFORE} on. */
    private static final class Life {
        private final List<Event> events;
        private final Event begun;
        private final BitSet alive = new BitSet();
        private final BitSet onMother = new BitSet();
        private final BitSet nowhere = new BitSet();
        private final Map<String, BitSet> stood = new TreeMap<>();
        private final Map<String, BitSet> stoodOff = new TreeMap<>();
        private final Map<Integer, Integer> failed;
        private final Map<Integer, Set<PersonNumber>> hands = new TreeMap<>();

        Life(List<Event> events) {
            this.events = events;
            this.failed = failed(events);
            for (Event event : events) {
                if (HANDS.contains(event.entry().kind()) && event.by().isPresent()) {
                    hands.computeIfAbsent(day(event), day -> new HashSet<>())
                            .add(event.by().get());
                }
            }
            this.begun = events.stream().filter(Event::begins).findFirst().orElseThrow();
        }

        Entry beginning() {
            return begun.entry();
        }
    }

    private record Failure(int day, int count) {}

    private final BookView view;
    private final Asked asked;
    private final int today;
    private final Map<Integer, Life> lives = new TreeMap<>();
    private final Map<String, String> within = new HashMap<>();
    private final Map<Integer, Map<Integer, Boolean>> sources = new TreeMap<>();
    private final Map<Integer, Map<Integer, Boolean>> offspring = new TreeMap<>();
    private final int[][][] since;

    private DayByDay(BookView view, Asked asked) {
        this.view = view;
        this.asked = asked;
        this.today = number(asked.asOf());
        int last = view.head().lastUnit();
        for (int unit = 1; unit <= last; unit++) {
            List<Event> events = History.of(view, new UnitNumber(unit), asked.asOf());
            if (events.stream().anyMatch(Event::begins)) {
                lives.put(unit, new Life(events));
            }
        }
        view.listings().forEach(listed -> {
            if (listed.entry() instanceof PlaceListed place && place.within().isPresent()) {
                within.put(place.place().name(), place.within().get().name());
            }
        });
        lives.keySet().forEach(unit -> {
            sources.put(unit, sourcesOf(unit));
            sources.get(unit)
                    .forEach((mother, several) -> offspring
                            .computeIfAbsent(mother, one -> new TreeMap<>())
                            .put(unit, several));
        });
        lives.forEach(this::live);
        since = new int[asked.steps() + 1][last + 1][VARIANTS];
        for (int[][] level : since) {
            for (int[] one : level) {
                Arrays.fill(one, NEVER);
            }
        }
    }

    /** Return what is found of each unit that is reached. */
    static Map<Integer, Found> recall(BookView view, Asked asked) {
        DayByDay nursery = new DayByDay(view, asked);
        nursery.spread();
        return nursery.found();
    }

    private static int number(LocalDate date) {
        return (int) (date.toEpochDay() - BEFORE.toEpochDay());
    }

    private static int day(Event event) {
        return number(event.day().first());
    }

    private int unit(Tag tag) {
        return view.unit(tag).orElseThrow().value();
    }

    // ---- how each unit lived ----

    private void live(int unit, Life life) {
        int total = 0;
        int from = 0;
        boolean apart = !(life.beginning() instanceof LayerSet) && !(life.beginning() instanceof SportFound);
        int off = apart ? 0 : NEVER;
        List<Failure> failures = new ArrayList<>(failures(unit));
        List<Object[]> stops = new ArrayList<>();
        for (Event event : life.events) {
            int now = day(event);
            while (!failures.isEmpty()
                    && (now > failures.get(0).day()
                            || now == failures.get(0).day()
                                    && event.entry().kind().rank() > EntryKind.FAILED.rank())) {
                Failure back = failures.remove(0);
                if (total == 0) {
                    from = back.day();
                }
                total += back.count();
            }
            int change = change(unit, event);
            if (total == 0 && change > 0) {
                from = now;
            } else if (total > 0 && total + change == 0) {
                life.alive.set(from, now + 1);
            }
            total += change;
            boolean cut = event.entry().kind() == EntryKind.SEVERED && total > 0;
            if (cut) {
                off = now;
            }
            boolean about = event.begins() || event.roles().contains(Role.SUBJECT);
            boolean failed = event.entry().kind() == EntryKind.SEVERED && total == 0;
            Optional<String> place = Form.write(event.entry(), "place").filter(name -> about && !failed);
            if (place.isPresent()) {
                stops.add(new Object[] {now, place.get(), event.begins()});
            }
        }
        for (Failure back : failures) {
            if (total == 0) {
                from = back.day();
            }
            total += back.count();
        }
        if (total > 0) {
            life.alive.set(from, today + 2);
        }
        if (life.beginning() instanceof SportFound) {
            life.onMother.set(day(life.begun), today + 2);
        } else if (life.beginning() instanceof LayerSet) {
            life.onMother.set(day(life.begun), off == NEVER ? life.alive.length() : off + 1);
        }
        for (int at = 0; at < stops.size(); at++) {
            int start = (Integer) stops.get(at)[0];
            int end = at + 1 < stops.size() ? (Integer) stops.get(at + 1)[0] : today + 1;
            BitSet days = new BitSet();
            days.set(start, end + 1);
            days.and(life.alive);
            boolean later = life.beginning() instanceof LayerSet && start >= off && !((Boolean) stops.get(at)[2]);
            (later ? life.stoodOff : life.stood)
                    .computeIfAbsent((String) stops.get(at)[1], name -> new BitSet())
                    .or(days);
        }
        if (off != NEVER) {
            int known = stops.isEmpty() ? today + 2 : (Integer) stops.get(0)[0];
            int lost = life.beginning() instanceof LayerSet ? off + 1 : day(life.begun);
            if (lost < known) {
                life.nowhere.set(lost, known);
                life.nowhere.and(life.alive);
            }
        }
    }

    /** Return by how many units an event changes a unit. */
    private int change(int unit, Event event) {
        Entry entry = event.entry();
        int count = Form.write(entry, "count").map(Integer::parseInt).orElse(1);
        if (event.begins()) {
            return entry instanceof Merged merged
                    ? merged.sources().stream()
                            .mapToInt(source -> before(unit(source), event.order()))
                            .sum()
                    : count;
        }
        int change = 0;
        for (Role role : event.roles()) {
            change += switch (role) {
                case SUBJECT ->
                    switch (entry.kind()) {
                        case FAILED, LOST, SOLD, CULLED -> -count;
                        case RETURNED -> count;
                        case SEVERED -> ((Severed) entry).roots().equals(Optional.of(Roots.NONE)) ? -1 : 0;
                        default -> 0;
                    };
                case SOURCE, STOCK -> -count * entry.tags().size();
                case MERGED -> -before(unit, event.order());
                case MOTHER ->
                    entry instanceof Divided divided && divided.remainder().equals(Optional.of(Remainder.USED_UP))
                            ? -1
                            : 0;
                default -> 0;
            };
        }
        return change;
    }

    /** Return how many units there were before an entry. */
    private int before(int unit, long order) {
        int total = 0;
        for (Event event : lives.get(unit).events) {
            if (event.order() == order) {
                return total;
            }
            total += change(unit, event);
        }
        return total;
    }

    /** Return when grafts on a stock failed, in order. */
    private List<Failure> failures(int stock) {
        List<Failure> failures = new ArrayList<>();
        lives.forEach((unit, life) -> {
            if (stocks(unit).contains(stock)) {
                life.failed.forEach((day, count) -> failures.add(new Failure(day, count)));
            }
        });
        failures.sort(Comparator.comparingInt(Failure::day));
        return failures;
    }

    private static Map<Integer, Integer> failed(List<Event> events) {
        Map<Integer, Integer> failed = new TreeMap<>();
        for (Event event : events) {
            if (event.entry().kind() == EntryKind.FAILED && event.roles().contains(Role.SUBJECT)) {
                failed.merge(
                        day(event),
                        Form.write(event.entry(), "count")
                                .map(Integer::parseInt)
                                .orElse(1),
                        Integer::sum);
            }
        }
        return failed;
    }

    /** Return the stocks that a graft stands on, through the batches of grafts that it was split from. */
    private Set<Integer> stocks(int unit) {
        Set<Integer> stocks = new HashSet<>();
        Entry begun = lives.get(unit).beginning();
        if (begun instanceof GraftWorked graft) {
            graft.stock().ifPresent(tag -> stocks.add(unit(tag)));
        } else if (begun instanceof Split split) {
            stocks.addAll(stocks(unit(split.source())));
        }
        return stocks;
    }

    // ---- how a disease passes ----

    private static int flags(int variant, int keep, int add) {
        return variant & keep | add;
    }

    private void reach(int level, int unit, int variant, int day) {
        for (int more = level; more < since.length; more++) {
            since[more][unit][variant] = Math.min(since[more][unit][variant], day);
        }
    }

    private void spread() {
        int first = asked.since().map(DayByDay::number).orElse(-1);
        for (Tag tag : asked.tags()) {
            sources(unit(tag), 0, first, new HashSet<>());
        }
        for (int day = Math.max(0, first); day <= today; day++) {
            boolean more = true;
            while (more) {
                long before = sum();
                for (int level = 0; level < since.length; level++) {
                    for (int unit : lives.keySet()) {
                        for (int variant = 0; variant < VARIANTS; variant++) {
                            if (since[level][unit][variant] <= day) {
                                related(level, unit, variant, day);
                                if (level + 1 < since.length && (variant & ENDED) == 0) {
                                    beside(level + 1, unit, variant, day);
                                }
                            }
                        }
                    }
                }
                more = sum() != before;
            }
        }
    }

    private long sum() {
        long sum = 0;
        for (int[][] level : since) {
            for (int[] one : level) {
                for (int day : one) {
                    sum += day;
                }
            }
        }
        return sum;
    }

    /** Go up to every source, and to what came together. */
    private void sources(int unit, int variant, int first, Set<List<Integer>> met) {
        if (!met.add(List.of(unit, variant))) {
            return;
        }
        reach(0, unit, variant, first);
        if (!asked.sources()) {
            return;
        }
        Life life = lives.get(unit);
        int day = day(life.begun);
        for (Map.Entry<Integer, Boolean> source : sources.get(unit).entrySet()) {
            int last = life.beginning() instanceof LayerSet
                    ? life.onMother.length() - 1
                    : life.beginning() instanceof SportFound || life.beginning() instanceof FoundUntagged ? NEVER : day;
            if (last >= first) {
                sources(source.getKey(), variant | (source.getValue() ? DOUBT : 0), first, met);
            }
        }
        if (life.beginning() instanceof Acquired mine && day >= first) {
            lives.forEach((other, theirs) -> {
                if (other != unit && theirs.beginning() instanceof Acquired his) {
                    boolean consignment = mine.consignment().isPresent()
                            && his.consignment().isPresent()
                            && mine.consignment()
                                    .get()
                                    .equalsIgnoreCase(his.consignment().get())
                            && (mine.supplier().isEmpty()
                                    || his.supplier().isEmpty()
                                    || mine.supplier().equals(his.supplier()));
                    boolean delivery =
                            (mine.consignment().isEmpty() || his.consignment().isEmpty())
                                    && mine.supplier().isPresent()
                                    && mine.supplier().equals(his.supplier())
                                    && (day == day(theirs.begun) || life.begun.order() == theirs.begun.order());
                    if (consignment || delivery) {
                        reach(0, other, variant | (delivery ? DOUBT : 0), first);
                    }
                }
            });
        }
    }

    /** Return the units that a unit comes from, and whether it comes from only one of several of them. */
    private Map<Integer, Boolean> sourcesOf(int unit) {
        Map<Integer, Boolean> sources = new TreeMap<>();
        Entry begun = lives.get(unit).beginning();
        if (begun instanceof LayerSet layer) {
            sources.put(unit(layer.mother()), false);
        } else if (begun instanceof CuttingsStruck cuttings) {
            for (Share mother : cuttings.mothers()) {
                sources.put(unit(mother.tag()), cuttings.mothers().size() > 1);
            }
        } else if (begun instanceof GraftWorked graft) {
            graft.scion().ifPresent(tag -> sources.put(unit(tag), false));
            graft.stock().ifPresent(tag -> sources.put(unit(tag), false));
        } else if (begun instanceof SeedSown seed) {
            seed.seedParent().ifPresent(tag -> sources.put(unit(tag), false));
            seed.pollenParent().ifPresent(tag -> sources.put(unit(tag), false));
        } else if (begun instanceof Divided divided) {
            sources.put(unit(divided.mother()), false);
        } else if (begun instanceof SportFound sport) {
            sources.put(unit(sport.mother()), false);
        } else if (begun instanceof Drawn drawn) {
            sources.put(unit(drawn.source()), false);
        } else if (begun instanceof Split split) {
            sources.put(unit(split.source()), false);
        } else if (begun instanceof Merged merged) {
            for (Tag source : merged.sources()) {
                sources.put(unit(source), merged.sources().size() > 1);
            }
        } else if (begun instanceof FoundUntagged found) {
            found.candidates().forEach(tag -> sources.put(unit(tag), true));
        }
        sources.remove(unit);
        return sources;
    }

    /** Pass on to what is related, on one day. */
    private void related(int level, int unit, int variant, int day) {
        int kept = flags(variant, DOUBT | ENDED, 0);
        int ofBody = flags(variant, DOUBT | ENDED | ALIAS, 0);
        Life mine = lives.get(unit);
        offspring.getOrDefault(unit, Map.of()).forEach((other, several) -> {
            Life theirs = lives.get(other);
            int doubt = several ? DOUBT : 0;
            if (theirs.beginning() instanceof LayerSet || theirs.beginning() instanceof SportFound) {
                if (theirs.onMother.get(day)) {
                    reach(level, other, ofBody, day);
                }
            } else if (theirs.beginning() instanceof FoundUntagged) {
                if (day >= day(theirs.begun)) {
                    reach(level, other, kept | ALIAS | DOUBT, day);
                }
            } else if (day == day(theirs.begun)) {
                reach(level, other, kept | doubt, day);
            }
        });
        sources.get(unit).forEach((mother, several) -> {
            if (mine.onMother.get(day) && (variant & OFF) == 0) {
                reach(level, mother, ofBody, day);
            }
            if (mine.beginning() instanceof FoundUntagged && (variant & ALIAS) == 0) {
                reach(level, mother, kept | DOUBT, day);
            }
        });
        if (mine.failed.containsKey(day)) {
            stocks(unit).forEach(stock -> reach(level, stock, kept, day));
        }
    }

    /** Pass on to what stands beside, or is worked on by the same hands, on one day. */
    private void beside(int level, int unit, int variant, int day) {
        int kept = flags(variant, DOUBT, 0);
        Life mine = lives.get(unit);
        Set<String> here = places(mine, day);
        if (here.isEmpty() && !mine.nowhere.get(day) && !mine.hands.containsKey(day)) {
            return;
        }
        lives.forEach((other, theirs) -> {
            if (other == unit) {
                return;
            }
            if (asked.rounds() > 0) {
                if (isNear(here, places(theirs.stood, day))) {
                    reach(level, other, kept, day);
                }
                if (isNear(here, places(theirs.stoodOff, day))) {
                    reach(level, other, kept | OFF, day);
                }
                if (!here.isEmpty() && theirs.nowhere.get(day)) {
                    reach(level, other, kept | DOUBT | ENDED | OFF, day);
                }
                if (asked.everywhere() && mine.nowhere.get(day) && theirs.alive.get(day)) {
                    reach(level, other, kept | DOUBT | ENDED, day);
                }
            }
            if (asked.tools() && isSameHand(mine, theirs, day)) {
                reach(level, other, kept, day);
            }
        });
    }

    private static Set<String> places(Life life, int day) {
        Set<String> places = new HashSet<>(places(life.stood, day));
        places.addAll(places(life.stoodOff, day));
        return places;
    }

    private static Set<String> places(Map<String, BitSet> stood, int day) {
        Set<String> places = new HashSet<>();
        stood.forEach((place, days) -> {
            if (days.get(day)) {
                places.add(place);
            }
        });
        return places;
    }

    private boolean isNear(Set<String> here, Set<String> there) {
        return here.stream().anyMatch(one -> there.stream().anyMatch(other -> isIn(one, other) || isIn(other, one)));
    }

    private boolean isIn(String inner, String outer) {
        return inner.equals(outer)
                || Optional.ofNullable(within.get(inner))
                        .filter(around -> isIn(around, outer))
                        .isPresent();
    }

    private static boolean isSameHand(Life mine, Life theirs, int day) {
        Set<PersonNumber> hands = mine.hands.getOrDefault(day, Set.of());
        return theirs.hands.getOrDefault(day, Set.of()).stream().anyMatch(hands::contains);
    }

    private Map<Integer, Found> found() {
        Map<Integer, Found> found = new TreeMap<>();
        int[][] last = since[since.length - 1];
        lives.keySet().forEach(unit -> {
            int first = Arrays.stream(last[unit]).min().orElseThrow();
            if (first != NEVER) {
                boolean sure = false;
                for (int variant = 0; variant < VARIANTS; variant++) {
                    sure |= (variant & DOUBT) == 0 && last[unit][variant] != NEVER;
                }
                found.put(unit, new Found(sure, first <= 0 ? Optional.empty() : Optional.of(BEFORE.plusDays(first))));
            }
        });
        return found;
    }
}
