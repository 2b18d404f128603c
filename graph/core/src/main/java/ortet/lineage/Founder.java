package ortet.lineage;

import java.util.Objects;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.When;

/**
 * Where a clone begins, as far as the book knows.
 *
 * @param kind what is known of it
 * @param unit the first unit of the clone in the book, or the batch in which it was
 * @param tag the present tag of that unit
 * @param day when that unit began
 * @param of the batch that a seedling came from, or the plant on which a sport was found, where there is one
 */
public record Founder(Kind kind, UnitNumber unit, Tag tag, When day, Optional<Tag> of) {
    /** What is known of the beginning of a clone. */
    public enum Kind {
        /** The unit is the ortet: a seedling raised here. */
        SEEDLING,
        /** The unit is the ortet: a sport found here. */
        SPORT,
        /** The unit came from outside: the earliest known, origin unknown, not an ortet. */
        ACQUIRED,
        /** The unit was raised here from something that is not in the book: the earliest known, origin unknown. */
        NOT_IN_THE_BOOK,
        /** The unit is a batch of seedlings, each the ortet of its own clone. */
        EACH_SEEDLING,
        /** The unit is a batch that came from outside and was not propagated from one plant: each its own clone. */
        EACH_ACQUIRED,
        /** The unit is a batch of seedlings, one of which is the ortet; nobody knows which. */
        SOME_SEEDLING,
        /** The unit is a batch that came from outside; one of it is the earliest known, nobody knows which. */
        SOME_ACQUIRED
    }

    public Founder {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(unit);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(day);
        Objects.requireNonNull(of);
    }

    /** Tell whether the unit itself is the ortet of the clone. */
    public boolean isOrtet() {
        return kind == Kind.SEEDLING || kind == Kind.SPORT;
    }

    /** Return this in words, such as {@code ortet S-7, a seedling of S-1 (2019-03-02)}. */
    @Override
    public String toString() {
        String began = " (" + day + ")";
        String source = of.map(Tag::text).orElse("");
        return switch (kind) {
            case SEEDLING -> "ortet " + tag + ", a seedling of " + source + began;
            case SPORT -> "ortet " + tag + ", a sport found on " + source + began;
            case ACQUIRED ->
                "earliest known " + tag
                        + of.map(batch -> ", drawn from " + batch + began + ", which was acquired")
                                .orElse(", acquired" + began)
                        + ", origin unknown";
            case NOT_IN_THE_BOOK ->
                "earliest known " + tag + ", raised here" + began + " from what is not in the book, origin unknown";
            case EACH_SEEDLING -> "each seedling of " + tag + began + " is the ortet of its own clone";
            case EACH_ACQUIRED -> "each plant of " + tag + ", acquired" + began + ", is a clone of unknown origin";
            case SOME_SEEDLING -> "ortet not known: one of the seedlings of " + tag + began;
            case SOME_ACQUIRED -> "origin unknown: one of the plants of " + tag + ", acquired" + began;
        };
    }
}
