package ortet.lineage;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.plant.Tag;

/**
 * Something odd in the graph of a nursery: it may be so, but it is worth a look.
 *
 * @param kind what sort of oddity
 * @param tags the units that it is about, the doubtful one first
 * @param day when it began to be so, or was last otherwise, as it is known
 * @param text what is odd, in words
 * @param remedies lines that would put it right
 */
public record Oddity(Kind kind, List<Tag> tags, Optional<String> day, String text, List<Remedy> remedies) {
    /** What sort of oddity. */
    public enum Kind {
        /** A unit is said to be another cultivar than the plant whose clone it keeps. */
        CULTIVAR_DIFFERS,
        /** A mother began later than what was raised from her. */
        MOTHER_YOUNGER,
        /** Two tags look alike, so that one may be a slip for the other. */
        TAGS_ALIKE,
        /** What should be growing was not seen for long. */
        NOT_SEEN
    }

    /**
     * A line that would put it right.
     *
     * @param condition when it is the right one: {@code if K-1 is its mother}
     * @param line the line; a word in capitals stands for what only the grower knows
     */
    public record Remedy(String condition, String line) {}

    public Oddity {
        Objects.requireNonNull(kind);
        tags = List.copyOf(tags);
        Objects.requireNonNull(day);
        Objects.requireNonNull(text);
        remedies = List.copyOf(remedies);
    }
}
