package ortet.lineage;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.book.Act;
import ortet.book.Direction;
import ortet.book.Event;
import ortet.book.Family;
import ortet.book.Link;
import ortet.book.UnitFacts;
import ortet.entry.EntryKind;
import ortet.entry.Mention.Role;
import ortet.entry.Seen;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * Builds the tree of a trace.
 *
 * <p>First the family is fetched, from the unit up through every link; then it is told from the unit on, each unit once,
 * so that a family in which somebody is reached by two ways, or even a damaged one that runs in a circle, comes to an
 * end. A mother is told up to the moment at which the last of what is traced left her: a layer when it was severed, a
 * sport when something was taken from it, anything else by the act itself.
 */
final class Tracer {
    private static final Set<EntryKind> POTTINGS =
            EnumSet.of(EntryKind.POTTED, EntryKind.PLANTED_OUT, EntryKind.LIFTED);
    private static final Set<EntryKind> MOVES = EnumSet.of(EntryKind.MOVED, EntryKind.SEEN, EntryKind.RETURNED);
    private static final Set<EntryKind> TURNS =
            EnumSet.of(EntryKind.TAKEN, EntryKind.SEVERED, EntryKind.RETAGGED, EntryKind.REDETERMINED, EntryKind.SOLD);
    private static final Set<String> SOURCE_COLUMNS = Set.of(
            "mother", "mothers", "scion", "stock", "source", "sources", "candidates", "seed_parent", "pollen_parent");

    private final Reading reading;
    private final UnitNumber asked;
    private final int most;
    private final Set<UnitNumber> inFamily = new HashSet<>();
    private final Map<UnitNumber, List<Link>> children = new HashMap<>();
    private final Map<UnitNumber, Moment> ends = new HashMap<>();
    private final Set<UnitNumber> told = new HashSet<>();

    Tracer(Reading reading, UnitNumber asked, int most) {
        this.reading = reading;
        this.asked = asked;
        this.most = most;
    }

    Trace trace(Tag tag) {
        reading.requireBegun(asked, tag);
        Family family = reading.view().family(asked, Direction.UP, most);
        inFamily.addAll(family.units());
        for (Link link : family.links()) {
            children.computeIfAbsent(link.mother(), mother -> new ArrayList<>()).add(link);
        }
        Step tree = step(asked);
        return new Trace(tag, reading.asOf(), tree, reading.origin(asked), told.size(), family.whole());
    }

    private Step step(UnitNumber unit) {
        told.add(unit);
        UnitFacts facts = reading.facts(unit);
        Moment end = end(unit);
        List<Deed> between = new ArrayList<>();
        int pottings = 0;
        int moves = 0;
        int others = 0;
        for (Event event : reading.history(unit)) {
            boolean potted = POTTINGS.contains(event.entry().kind());
            boolean moved = isMove(event);
            if (Moment.of(event).compareTo(end) < 0) {
                boolean turned = TURNS.contains(event.entry().kind());
                if (event.roles().contains(Role.SUBJECT) && (potted || moved || turned)) {
                    between.add(reading.deed(event));
                }
            } else if (Moment.of(event).compareTo(end) > 0) {
                pottings += potted ? 1 : 0;
                moves += moved ? 1 : 0;
                others += potted || moved ? 0 : 1;
            }
        }
        return new Step(
                unit,
                reading.tag(unit),
                reading.earlierTags(unit),
                facts.nature(),
                reading.named(unit),
                reading.state(unit),
                withoutSources(reading.deed(reading.begun(unit))),
                between,
                new Later(pottings, moves, others),
                reading.origin(unit).founders().stream()
                        .filter(founder -> founder.unit().equals(unit))
                        .findFirst(),
                sources(facts));
    }

    private static boolean isMove(Event event) {
        return MOVES.contains(event.entry().kind())
                && !(event.entry() instanceof Seen seen && seen.place().isEmpty());
    }

    private static Deed withoutSources(Deed deed) {
        Map<String, String> details = new LinkedHashMap<>(deed.details());
        details.keySet().removeAll(SOURCE_COLUMNS);
        return new Deed(deed.order(), deed.kind(), deed.day(), deed.by(), deed.container(), deed.place(), details);
    }

    private List<Source> sources(UnitFacts facts) {
        List<Source> sources = new ArrayList<>();
        for (Link link : facts.links()) {
            boolean several = link.act().isOneOfSeveral()
                    && facts.links().stream()
                                    .filter(other -> other.act() == link.act())
                                    .count()
                            > 1;
            boolean elsewhere = told.contains(link.mother());
            boolean here = !elsewhere && inFamily.contains(link.mother());
            sources.add(new Source(
                    link.act(),
                    link.mother(),
                    reading.tag(link.mother()),
                    link.count(),
                    several,
                    here ? Optional.of(step(link.mother())) : Optional.empty(),
                    elsewhere));
        }
        return sources;
    }

    /** Return when the last of what is traced left a unit; never for the one asked about. */
    private Moment end(UnitNumber unit) {
        if (unit.equals(asked)) {
            return Moment.NEVER;
        }
        Moment known = ends.putIfAbsent(unit, Moment.NEVER);
        if (known == null) {
            known = children.getOrDefault(unit, List.of()).stream()
                    .map(this::left)
                    .max(Moment::compareTo)
                    .orElse(Moment.NEVER);
            ends.put(unit, known);
        }
        return known;
    }

    private Moment left(Link link) {
        if (link.act() == Act.SPORT_OF) {
            return end(link.child());
        }
        if (link.act() == Act.STOCK_WOOD_OF) {
            return leftAsStock(link.mother());
        }
        if (link.act().isLayering()) {
            return reading.history(link.child()).stream()
                    .filter(event -> event.entry().kind() == EntryKind.SEVERED)
                    .findFirst()
                    .map(Moment::of)
                    .orElseGet(() -> gone(link.child()));
        }
        return reading.history(link.mother()).stream()
                .filter(event -> event.order() == link.order())
                .map(Moment::of)
                .findFirst()
                .orElseGet(() -> new Moment(link.day().last(), 0, link.order()));
    }

    /** Return when the last of a rootstock was worked, where it was: its wood went on under the graft. */
    private Moment leftAsStock(UnitNumber stock) {
        return reading.history(stock).stream()
                .filter(event -> event.roles().contains(Role.STOCK))
                .map(Moment::of)
                .max(Moment::compareTo)
                .orElse(Moment.NEVER);
    }

    /** Return when a layer that was never severed came to nothing; never while it is on its mother. */
    private Moment gone(UnitNumber layer) {
        return reading.state(layer)
                .end()
                .flatMap(deed -> reading.history(layer).stream()
                        .filter(event -> event.order() == deed.order())
                        .map(Moment::of)
                        .findFirst())
                .orElse(Moment.NEVER);
    }
}
