package ortet.entry;

import java.util.Objects;
import ortet.plant.Tag;

/**
 * A unit that an entry names, with the part it plays there.
 *
 * @param tag the tag as written
 * @param role the part it plays
 */
public record Mention(Tag tag, Role role) {
    /** The part that a unit plays in an entry. */
    public enum Role {
        /** The entry begins this unit. */
        BEGUN,
        /** The entry is about this unit. */
        SUBJECT,
        /** It gives a layer, cuttings, divisions or a sport. */
        MOTHER,
        /** It gives the scion of a graft. */
        SCION,
        /** It is the rootstock of a graft. */
        STOCK,
        /** It bore the seed. */
        SEED_PARENT,
        /** It gave the pollen. */
        POLLEN_PARENT,
        /** The batch that plants are drawn from or that is split. */
        SOURCE,
        /** A batch that is merged with others. */
        MERGED,
        /** What a plant without a label may be. */
        CANDIDATE,
        /** A layer on the same branch, named only to say where. */
        BESIDE
    }

    public Mention {
        Objects.requireNonNull(tag);
        Objects.requireNonNull(role);
    }
}
