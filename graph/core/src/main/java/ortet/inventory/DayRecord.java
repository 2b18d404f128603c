package ortet.inventory;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import ortet.book.BookView;
import ortet.book.CanonicalText;
import ortet.book.Lookup;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.EntryId;
import ortet.entry.Recorded;
import ortet.lineage.Deed;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.value.Defect;

/**
 * What was recorded on one day, in the order in which it was recorded, in the words in which it was written.
 *
 * @param day the day, in the time zone of the book
 * @param byWhom how many entries there are by each person, as they are shown, and by nobody named
 * @param lines the entries, the last of them where there are many
 */
public record DayRecord(LocalDate day, Map<Optional<String>, Integer> byWhom, List<Line> lines) {
    private static final QueryName BETWEEN = new QueryName("recorded-between");

    /** Whether the words of an entry still count. */
    public enum Mark {
        /** They count as written. */
        AS_WRITTEN,
        /** Some of them have been corrected since. */
        CORRECTED,
        /** They have been crossed out since. */
        CROSSED_OUT
    }

    /**
     * An entry.
     *
     * @param deed what it says, as first written
     * @param recorded the day on which it was recorded
     * @param at the time of day at which it was recorded
     * @param tags the units that it is about
     * @param target the recorded order of the entry that it corrects or crosses out
     * @param mark whether its words still count
     */
    public record Line(Deed deed, LocalDate recorded, LocalTime at, List<Tag> tags, Optional<Long> target, Mark mark) {
        public Line {
            Objects.requireNonNull(deed);
            Objects.requireNonNull(recorded);
            Objects.requireNonNull(at);
            tags = List.copyOf(tags);
            Objects.requireNonNull(target);
            Objects.requireNonNull(mark);
        }
    }

    public DayRecord {
        Objects.requireNonNull(day);
        byWhom = Collections.unmodifiableMap(new LinkedHashMap<>(byWhom));
        lines = List.copyOf(lines);
    }

    /** Return how many entries there are in all. */
    public int count() {
        return byWhom.values().stream().mapToInt(Integer::intValue).sum();
    }

    /**
     * Return what was recorded on a day.
     *
     * @param by only what this person did, by name or number
     * @param most how many entries are told at most
     * @throws ortet.value.Refused when there is no such person
     */
    public static DayRecord of(BookView view, LocalDate day, Optional<String> by, int most) {
        ZoneId zone = view.head().zone();
        Optional<PersonNumber> only = by.map(name -> Lookup.person(view, name).number());
        Rows rows = view.ask(
                BETWEEN, Parameters.NONE.with("from", start(day, zone)).with("until", start(day.plusDays(1), zone)));
        Map<PersonNumber, String> persons = persons(view);
        Map<Optional<PersonNumber>, Integer> counts = new LinkedHashMap<>();
        List<Long> orders = new ArrayList<>();
        for (Rows.Row row : rows) {
            Optional<PersonNumber> who = row.whole("by_person").map(number -> new PersonNumber(number.intValue()));
            if (only.isEmpty() || who.equals(only)) {
                counts.merge(who, 1, Integer::sum);
                orders.add(row.whole("recorded_order").orElseThrow());
            }
        }
        List<Line> lines = new ArrayList<>();
        for (long order : orders.subList(Math.max(0, orders.size() - most), orders.size())) {
            Recorded recorded = view.entry(order).orElseThrow(() -> new Defect("no entry " + order + " in the book"));
            lines.add(line(view, recorded, persons));
        }
        Map<Optional<String>, Integer> byWhom = new LinkedHashMap<>();
        counts.entrySet().stream()
                .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                .forEach(one -> byWhom.put(
                        one.getKey().map(person -> persons.getOrDefault(person, person.toString())), one.getValue()));
        return new DayRecord(day, byWhom, lines);
    }

    private static String start(LocalDate day, ZoneId zone) {
        return CanonicalText.INSTANT.format(day.atStartOfDay(zone).toInstant());
    }

    /** Return how persons are shown. */
    static Map<PersonNumber, String> persons(BookView view) {
        Map<PersonNumber, String> persons = new HashMap<>();
        view.persons().forEach(person -> persons.put(person.number(), person.shown()));
        return persons;
    }

    /** Return one entry as a line. */
    static Line line(BookView view, Recorded recorded, Map<PersonNumber, String> persons) {
        ZoneId zone = view.head().zone();
        return new Line(
                Deed.of(
                        recorded.order(),
                        recorded.proposed().day(),
                        recorded.proposed().by(),
                        recorded.entry(),
                        person -> persons.getOrDefault(person, person.toString())),
                LocalDate.ofInstant(recorded.recordedAt(), zone),
                LocalTime.ofInstant(recorded.recordedAt(), zone),
                recorded.entry().tags(),
                target(recorded).flatMap(view::entry).map(Recorded::order),
                mark(view.amendments(recorded.order())));
    }

    private static Optional<EntryId> target(Recorded recorded) {
        if (recorded.entry() instanceof Corrected corrected) {
            return Optional.of(corrected.target());
        }
        return recorded.entry() instanceof CrossedOut crossedOut ? Optional.of(crossedOut.target()) : Optional.empty();
    }

    private static Mark mark(List<Recorded> amendments) {
        if (amendments.isEmpty()) {
            return Mark.AS_WRITTEN;
        }
        return amendments.stream().anyMatch(amendment -> amendment.entry() instanceof CrossedOut)
                ? Mark.CROSSED_OUT
                : Mark.CORRECTED;
    }
}
