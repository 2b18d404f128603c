package ortet.lineage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ortet.book.Act;
import ortet.book.Event;
import ortet.book.UnitFacts;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.entry.Mention;
import ortet.entry.Mention.Role;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/** Tells all that the book says of one unit. */
final class Teller {
    private static final String DAY = "day";
    private static final String BY = "by";

    private final Reading reading;
    private final UnitNumber unit;

    Teller(Reading reading, UnitNumber unit) {
        this.reading = reading;
        this.unit = unit;
    }

    Account account(Tag asked) {
        reading.requireBegun(unit, asked);
        UnitFacts facts = reading.facts(unit);
        List<Event> history = reading.history(unit);
        State state = reading.state(unit);
        Marks marks = state.kind() == State.Kind.GONE ? Marks.NONE : Marks.of(history, reading.asOf());
        return new Account(
                asked,
                reading.asOf(),
                unit,
                reading.tagUses(unit),
                facts.nature(),
                reading.named(unit),
                facts.names().stream()
                        .filter(naming -> reading.counts(naming.day()))
                        .flatMap(naming -> reading.deed(unit, naming.order()).stream())
                        .toList(),
                state,
                marks.stockSince(),
                marks.held().map(reading::deed),
                marks.reserved().stream().map(reading::deed).toList(),
                latest(history, EntryKind.GRADED),
                last(facts.stays().stream().filter(stay -> reading.counts(stay.day())))
                        .map(stay -> new Account.Standing(stay.place(), stay.day())),
                last(facts.pottings().stream().filter(potting -> reading.counts(potting.day())))
                        .map(potting -> new Account.Container(potting.container(), potting.day())),
                subject(history)
                        .filter(event -> event.entry().kind() == EntryKind.MEASURED)
                        .map(reading::deed)
                        .toList(),
                reading.deed(reading.begun(unit)),
                reading.origin(unit),
                parents(facts),
                new Offspring(reading, unit).tallies(),
                diary(history));
    }

    private static <T> Optional<T> last(Stream<T> things) {
        return things.reduce((before, after) -> after);
    }

    private static Stream<Event> subject(List<Event> history) {
        return history.stream().filter(event -> event.roles().contains(Role.SUBJECT));
    }

    private Optional<Deed> latest(List<Event> history, EntryKind kind) {
        return last(subject(history).filter(event -> event.entry().kind() == kind))
                .map(reading::deed);
    }

    private List<Parent> parents(UnitFacts facts) {
        Map<Act, Integer> parts = new EnumMap<>(Act.class);
        facts.links().forEach(link -> parts.merge(link.act(), 1, Integer::sum));
        return facts.links().stream()
                .map(link -> new Parent(
                        link.act(),
                        link.mother(),
                        reading.tag(link.mother()),
                        reading.named(link.mother()),
                        reading.state(link.mother()),
                        link.day(),
                        link.count(),
                        link.act().isOneOfSeveral() && parts.get(link.act()) > 1))
                .toList();
    }

    // ---- the diary ----

    private List<DiaryLine> diary(List<Event> history) {
        Set<Tag> tags = new HashSet<>(reading.view().tags(unit));
        Map<Long, Recorded> recorded = new HashMap<>();
        Map<Long, List<Amendment>> amendments = new HashMap<>();
        for (Recorded entry : reading.view().entries(unit)) {
            if (entry.entry().kind().phase() != Phase.AMENDMENT) {
                recorded.put(entry.order(), entry);
                amendments.put(entry.order(), amendments(entry, tags));
            }
        }
        List<DiaryLine> lines = new ArrayList<>();
        Set<Long> counting = new HashSet<>();
        for (Event event : history) {
            counting.add(event.order());
            List<Amendment> righted = amendments.getOrDefault(event.order(), List.of());
            lines.add(new DiaryLine(
                    reading.deed(event),
                    event.entry().tags(),
                    event.roles(),
                    recorded.get(event.order()).recordedAt(),
                    righted.isEmpty() ? DiaryLine.Mark.AS_WRITTEN : DiaryLine.Mark.CORRECTED,
                    righted));
        }
        recorded.values().stream()
                .filter(entry -> !counting.contains(entry.order()))
                .sorted(Comparator.comparing(
                                (Recorded entry) -> entry.proposed().day())
                        .thenComparingLong(Recorded::order))
                .forEach(entry ->
                        setAside(entry, amendments.get(entry.order()), tags).ifPresent(line -> insert(lines, line)));
        return lines;
    }

    /** Return the line of an entry that does not count for the unit; none for one that is still to come. */
    private Optional<DiaryLine> setAside(Recorded recorded, List<Amendment> righted, Set<Tag> tags) {
        Proposed written = recorded.proposed();
        boolean crossedOut = righted.stream().anyMatch(Amendment::isCrossingOut);
        boolean moved = righted.stream().anyMatch(amendment -> amendment.field().equals(Optional.of(DAY)));
        Set<Role> roles = roles(written.entry(), tags);
        if (!reading.counts(written.day()) || !crossedOut && (roles.isEmpty() || moved || righted.isEmpty())) {
            return Optional.empty();
        }
        return Optional.of(new DiaryLine(
                reading.deed(recorded.order(), written.day(), written.by(), written.entry()),
                written.entry().tags(),
                roles,
                recorded.recordedAt(),
                crossedOut ? DiaryLine.Mark.CROSSED_OUT : DiaryLine.Mark.NO_LONGER_ABOUT_IT,
                righted));
    }

    private static void insert(List<DiaryLine> lines, DiaryLine line) {
        int at = 0;
        while (at < lines.size()
                && lines.get(at).deed().day().compareTo(line.deed().day()) <= 0) {
            at++;
        }
        lines.add(at, line);
    }

    private static Set<Role> roles(Entry entry, Set<Tag> tags) {
        Set<Role> roles = new HashSet<>();
        for (Mention mention : entry.mentions()) {
            if (tags.contains(mention.tag())) {
                roles.add(mention.role());
            }
        }
        return roles;
    }

    private List<Amendment> amendments(Recorded recorded, Set<Tag> tags) {
        List<Amendment> found = new ArrayList<>();
        Proposed written = recorded.proposed();
        Map<String, String> texts = new HashMap<>(Form.write(written.entry()));
        texts.put(DAY, written.day().toString());
        written.by().ifPresent(by -> texts.put(BY, by.toString()));
        boolean isSubject = written.entry().tags().stream().anyMatch(tags::contains);
        for (Recorded amendment : reading.view().amendments(recorded.order())) {
            Proposed words = amendment.proposed();
            if (words.entry() instanceof CrossedOut crossedOut) {
                found.add(new Amendment(
                        amendment.order(),
                        amendment.recordedAt(),
                        words.day(),
                        words.by().map(reading::shown),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        Optional.of(crossedOut.reason())));
            } else if (words.entry() instanceof Corrected corrected) {
                boolean others = isSubject
                        && !corrected.tags().isEmpty()
                        && corrected.tags().stream().noneMatch(tags::contains);
                if (!others) {
                    String field = corrected.field();
                    Optional<String> was = Optional.ofNullable(texts.get(field));
                    corrected.value().ifPresentOrElse(value -> texts.put(field, value), () -> texts.remove(field));
                    found.add(new Amendment(
                            amendment.order(),
                            amendment.recordedAt(),
                            words.day(),
                            words.by().map(reading::shown),
                            Optional.of(field),
                            was.map(text -> person(written.entry().kind(), field, text)),
                            corrected.value().map(text -> person(written.entry().kind(), field, text)),
                            corrected.tags(),
                            corrected.reason()));
                }
            }
        }
        return found;
    }

    private String person(EntryKind kind, String field, String text) {
        boolean isPerson = field.equals(BY)
                || Form.of(kind)
                        .field(field)
                        .filter(column -> column.nature() == Form.Nature.PERSON)
                        .isPresent();
        return isPerson && PersonNumber.isWritten(text) ? reading.shown(PersonNumber.parse(text)) : text;
    }
}
