package ortet.book;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ortet.book.UnitFacts.Begun;
import ortet.book.UnitFacts.Fate;
import ortet.book.UnitFacts.Outcome;
import ortet.entry.LayerSet;
import ortet.entry.Mention.Role;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/** Tells whoever reads one unit's timeline what is true of others, as the book would then stand, and hears objections. */
interface Witness {
    /** How far a name is looked for from mother to mother. */
    int DEEPEST = 1000;

    /** Return the unit that the tag names. */
    Optional<UnitNumber> resolve(Tag tag);

    /** Return the timeline of a unit. */
    List<Event> timeline(UnitNumber unit);

    /** Return the story of a unit; empty when nothing begins it, or while it is being told. */
    Optional<Story> story(UnitNumber unit);

    /** Return the strands of an entry: what it says once its amendments are applied. */
    List<Strand> strands(long order);

    /** Return the number of the first unit that an entry began; the others follow. */
    int firstUnit(long order);

    /** Return the tag under which an event began the unit. */
    default Tag begunTag(UnitNumber unit, Event begun) {
        int first = firstUnit(begun.order());
        for (Strand strand : strands(begun.order())) {
            List<Tag> tags = strand.entry().tags();
            if (strand.positions().isEmpty()) {
                return tags.get(unit.value() - first);
            }
            for (int at = 0; at < tags.size(); at++) {
                if (first + strand.position(at) == unit.value()) {
                    return tags.get(at);
                }
            }
        }
        return begun.entry().tags().get(0);
    }

    /** Return the tag under which a unit began, where anything begins it. */
    default Optional<Tag> begunAs(UnitNumber unit) {
        return timeline(unit).stream().filter(Event::begins).findFirst().map(event -> begunTag(unit, event));
    }

    /** Return by which entry, and as which of its tags, the unit began. */
    default Begun begun(UnitNumber unit, Event begun) {
        return new Begun(begun.order(), unit.value() - firstUnit(begun.order()), begun.day());
    }

    /** Return the recorded order of what gave the tag that an event ties on: the entry, or the correction of its tag. */
    default long tagOrder(Event event) {
        return strands(event.order()).stream()
                .filter(strand -> strand.entry() == event.entry())
                .mapToLong(Strand::tagsOrder)
                .findFirst()
                .orElse(event.order());
    }

    /** Return the units that a unit comes from. */
    default List<UnitNumber> sources(UnitNumber unit) {
        return timeline(unit).stream()
                .filter(Event::begins)
                .findFirst()
                .map(event -> event.entry().mentions().stream()
                        .filter(mention -> mention.role() != Role.BEGUN && mention.role() != Role.BESIDE)
                        .map(mention -> resolve(mention.tag()))
                        .flatMap(Optional::stream)
                        .filter(other -> !other.equals(unit))
                        .distinct()
                        .toList())
                .orElse(List.of());
    }

    /** Return a tag that the unit bore before. */
    Tag oldTag(UnitNumber unit);

    /** Return what to call a person. */
    String name(PersonNumber number);

    /** Object to an event of a unit's timeline. */
    void object(UnitNumber unit, Event event, String rule, String text);

    /** Remark on something odd in an event. */
    void remark(Event event, String rule, String text);

    /** Remark on something odd in an entry. */
    void remark(long order, String rule, String text);

    /** Return the outcomes by which units of a graft, or of what was split off it, failed or were withdrawn. */
    default List<Outcome> failures(UnitNumber graft) {
        List<Outcome> found = new ArrayList<>();
        Set<UnitNumber> met = new HashSet<>(Set.of(graft));
        Deque<UnitNumber> parts = new ArrayDeque<>(List.of(graft));
        while (!parts.isEmpty()) {
            story(parts.poll()).ifPresent(story -> {
                story.facts().outcomes().stream()
                        .filter(outcome -> outcome.fate() == Fate.FAILED || outcome.fate() == Fate.WITHDRAWN)
                        .forEach(found::add);
                story.bySplit().stream().filter(met::add).forEach(parts::add);
            });
        }
        return found;
    }

    /** Return the cultivar of a unit on a day: its own name, else that of the plant whose clone it keeps. */
    default Optional<CultivarName> cultivar(UnitNumber unit, LocalDate day) {
        return cultivar(unit, day, 0);
    }

    /** Return the cultivar of a unit that was come to over so many mothers. */
    default Optional<CultivarName> cultivar(UnitNumber unit, LocalDate day, int depth) {
        Optional<Story> story = depth > DEEPEST ? Optional.empty() : story(unit);
        if (story.isEmpty()) {
            return Optional.empty();
        }
        Optional<CultivarName> own = story.get().ownName(day);
        if (own.isPresent()) {
            return own;
        }
        Set<Optional<CultivarName>> names = new HashSet<>();
        for (Link link : story.get().facts().links()) {
            if (link.act().keepsTheClone()) {
                names.add(cultivar(link.mother(), day, depth + 1));
            }
        }
        return names.size() == 1 ? names.iterator().next() : Optional.empty();
    }

    /** Return the layers that were set on a mother, as events of her timeline. */
    default List<Event> layersOf(UnitNumber mother) {
        return timeline(mother).stream()
                .filter(event ->
                        event.entry() instanceof LayerSet && event.roles().contains(Role.MOTHER))
                .toList();
    }
}
