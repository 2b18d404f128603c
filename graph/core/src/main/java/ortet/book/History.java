package ortet.book;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Mention;
import ortet.entry.Mention.Role;
import ortet.entry.Recorded;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Defect;

/** Reads the timeline of one unit: every entry that names it, as amended, in the order in which things happened. */
public final class History {
    private static final Set<EntryKind> ENDINGS = EnumSet.of(
            EntryKind.SOLD, EntryKind.LOST, EntryKind.CULLED, EntryKind.FAILED, EntryKind.MERGED, EntryKind.CLOSED);

    private History() {}

    /** Return the timeline of a unit up to a day, crossed-out entries left out. */
    public static List<Event> of(BookView view, UnitNumber unit, LocalDate asOf) {
        Set<Tag> tags = new HashSet<>(view.tags(unit));
        List<Event> events = new ArrayList<>();
        for (Recorded recorded : view.entries(unit)) {
            for (Strand strand : Strand.of(recorded, view.amendments(recorded.order()))) {
                if (!strand.day().first().isAfter(asOf)) {
                    event(unit, strand, tags).ifPresent(events::add);
                }
            }
        }
        return inOrder(events);
    }

    /**
     * Return, for each unit that some entries are about, what they say of it up to a day, in the order in which it
     * happened; crossed-out entries left out.
     *
     * @param orders the recorded orders of the entries
     */
    public static Map<UnitNumber, List<Event>> of(BookView view, Collection<Long> orders, LocalDate asOf) {
        Map<UnitNumber, List<Event>> events = new HashMap<>();
        for (long order : orders) {
            Recorded recorded = view.entry(order).orElseThrow(() -> new Defect("no entry " + order + " in the book"));
            for (Event event : events(recorded, view.amendments(order), view::unit, asOf)) {
                events.computeIfAbsent(event.unit(), one -> new ArrayList<>()).add(event);
            }
        }
        events.replaceAll((unit, all) -> inOrder(all));
        return events;
    }

    /**
     * Return what an entry says of each of its units up to a day; nothing where it was crossed out.
     *
     * @param amendments of the entry, in recorded order
     * @param units finds the unit that bears a tag
     */
    public static List<Event> events(
            Recorded recorded, List<Recorded> amendments, Function<Tag, Optional<UnitNumber>> units, LocalDate asOf) {
        List<Event> events = new ArrayList<>();
        for (Strand strand : Strand.of(recorded, amendments)) {
            if (!strand.day().first().isAfter(asOf)) {
                for (Tag tag : strand.entry().tags()) {
                    UnitNumber unit = units.apply(tag).orElseThrow(() -> new Defect("no unit bears " + tag));
                    event(unit, strand, Set.of(tag)).ifPresent(events::add);
                }
            }
        }
        return events;
    }

    /** Return a strand as an event of a unit, where it names one of the unit's tags. */
    static Optional<Event> event(UnitNumber unit, Strand strand, Set<Tag> tags) {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        for (Mention mention : strand.entry().mentions()) {
            if (tags.contains(mention.tag())) {
                roles.add(mention.role());
            }
        }
        return roles.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Event(unit, strand.recorded().order(), strand.day(), strand.by(), strand.entry(), roles));
    }

    /**
     * Return events in the order in which they are read: by day, rank of the kind, recorded order; what
     * begins the unit comes before all else of its day.
     *
     * <p>A day known to the month or year only is placed where it contradicts least: what begins the unit on the first
     * day that it may have been, anything else on the last, but no later than an ending within that month or year.
     */
    static List<Event> inOrder(List<Event> events) {
        List<Event> sorted = new ArrayList<>(events);
        if (sorted.size() > 1) {
            boolean exact = sorted.stream().allMatch(event -> event.day().isExact());
            Comparator<Event> byDay = exact
                    ? Comparator.comparing(event -> event.day().first())
                    : Comparator.comparing(event -> placed(event, events));
            sorted.sort(byDay.thenComparingInt(
                            event -> event.begins() ? -1 : event.entry().kind().rank())
                    .thenComparingLong(Event::order));
        }
        return sorted;
    }

    private static LocalDate placed(Event event, List<Event> all) {
        if (event.day().isExact() || event.begins()) {
            return event.day().first();
        }
        LocalDate last = event.day().last();
        LocalDate end = last;
        boolean ends = false;
        for (Event other : all) {
            LocalDate day = other.day().first();
            if (other.day().isExact()
                    && ENDINGS.contains(other.entry().kind())
                    && !day.isBefore(event.day().first())
                    && !day.isAfter(last)
                    && (!ends || day.isAfter(end))) {
                end = day;
                ends = true;
            }
        }
        return end;
    }

    /**
     * Return what an entry says, once amended, of the unit that stood in some place among its tags as first written, from
     * 0; nothing where it was crossed out or taken out.
     *
     * @param amendments of the entry, in recorded order
     */
    public static Optional<Entry> words(Recorded recorded, List<Recorded> amendments, int position) {
        for (Strand strand : Strand.of(recorded, amendments)) {
            for (int at = 0; at < strand.entry().tags().size(); at++) {
                if (strand.position(at) == position) {
                    return Optional.of(strand.entry());
                }
            }
        }
        return Optional.empty();
    }
}
