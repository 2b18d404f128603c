package ortet.lineage;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.plant.CultivarName;
import ortet.plant.Tag;

/**
 * The cultivar of a unit, and how it is known.
 *
 * @param cultivar the name; absent when it is not known, or one of several
 * @param how how it is known
 * @param through the unit whose name it is, where it is not its own
 * @param oneOf the names between which nobody can tell, sorted; empty otherwise
 */
public record Named(Optional<CultivarName> cultivar, How how, Optional<Tag> through, List<CultivarName> oneOf) {
    /** How a cultivar is known. */
    public enum How {
        /** Somebody determined it. */
        DETERMINED,
        /** It is said of the unit itself. */
        SAID,
        /** It is the name of what the unit was taken from, whose clone it keeps. */
        FROM_ITS_SOURCE,
        /** What it was taken from is one of several, of different names. */
        ONE_OF_SEVERAL,
        /** Nobody said. */
        NOT_KNOWN
    }

    static final Named NOT_KNOWN = new Named(Optional.empty(), How.NOT_KNOWN, Optional.empty(), List.of());

    public Named {
        Objects.requireNonNull(cultivar);
        Objects.requireNonNull(how);
        Objects.requireNonNull(through);
        oneOf = List.copyOf(oneOf);
    }

    /** Return the name in words: {@code Acer palmatum 'Deshojo'}, {@code one of …, …}, {@code cultivar not known}. */
    @Override
    public String toString() {
        if (how == How.ONE_OF_SEVERAL) {
            return "one of "
                    + String.join(
                            ", ", oneOf.stream().map(CultivarName::toString).toList());
        }
        return cultivar.map(CultivarName::toString).orElse("cultivar not known");
    }
}
