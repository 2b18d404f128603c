package ortet.choice.inputs;

import java.util.Objects;
import java.util.Optional;
import ortet.plant.Tag;

/**
 * A plant that could be grown on for layering wood.
 *
 * @param unit the unit
 * @param tag the tag that she bears
 * @param cultivar her name; empty when not known
 * @param place where she stands; empty when not known
 * @param stock whether she is kept as stock; else she was used as a mother
 * @param held whether she is held for plant health
 * @param tried whether the outcome of a layer on her is known
 * @param evidence how much is known of how she takes
 * @param wood where her positions come from
 * @param lastLayered the season in which she was last layered; empty when never
 */
public record Candidate(
        int unit,
        Tag tag,
        Optional<String> cultivar,
        Optional<String> place,
        boolean stock,
        boolean held,
        boolean tried,
        Evidence evidence,
        WoodFrom wood,
        Optional<Integer> lastLayered) {
    /** Where the positions of a mother come from. */
    public enum WoodFrom {
        /** Measured on her, less what was set since. */
        MEASURED,
        /** Expected by those measured on others, by stem. */
        OTHERS,
        /** Expected by what was set on her, or on others, in one season. */
        SET_BEFORE,
        /** Nothing is known. */
        NOTHING
    }

    public Candidate {
        Objects.requireNonNull(tag);
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(place);
        Objects.requireNonNull(evidence);
        Objects.requireNonNull(wood);
        Objects.requireNonNull(lastLayered);
    }
}
