package ortet.lineage;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Nature;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;

/**
 * One unit on the way to the ortet.
 *
 * @param unit the unit
 * @param tag its present tag
 * @param earlierTags the tags that it bore before, the first one first
 * @param nature what it is
 * @param named its cultivar
 * @param state how it stands on the day of the question
 * @param begun the act that made it
 * @param between every potting and move, and what else changed its name or its roots, in order: all of its life for the
 *     unit asked about, up to where it gave what is traced for others
 * @param later what happened to it afterwards
 * @param founder that its clone begins with this very unit, where it does
 * @param sources the units that it comes from; none for one that came from outside
 */
public record Step(
        UnitNumber unit,
        Tag tag,
        List<Tag> earlierTags,
        Nature nature,
        Named named,
        State state,
        Deed begun,
        List<Deed> between,
        Later later,
        Optional<Founder> founder,
        List<Source> sources) {
    public Step {
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        earlierTags = List.copyOf(earlierTags);
        Objects.requireNonNull(nature);
        Objects.requireNonNull(named);
        Objects.requireNonNull(state);
        Objects.requireNonNull(begun);
        between = List.copyOf(between);
        Objects.requireNonNull(later);
        Objects.requireNonNull(founder);
        sources = List.copyOf(sources);
    }
}
