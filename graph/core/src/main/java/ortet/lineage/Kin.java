package ortet.lineage;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.BookView;
import ortet.book.UnitFacts.Nature;
import ortet.plant.Tag;

/**
 * How two plants are related, as far as the book knows.
 *
 * @param first the one, as asked about
 * @param second the other, as asked about
 * @param asOf the day as of which it is answered
 * @param sameClone whether they are of one clone
 * @param nearest every nearest common ancestor, by tag; none where the book knows of no common ancestor
 * @param least the coefficient of kinship if all plants of unknown origin are unrelated and not inbred; it cannot be
 *     less. Where one of the plants is one of several, that of the least related of these. Absent where there are too many
 *     of these to be gone through
 * @param most the same for the most related of these
 * @param unknown the plants and batches of unknown origin behind the two, by tag: if they are related, so are these, more
 *     closely than said
 */
public record Kin(
        Tag first,
        Tag second,
        LocalDate asOf,
        SameClone sameClone,
        List<Ancestor> nearest,
        Optional<BigFraction> least,
        Optional<BigFraction> most,
        List<Tag> unknown) {
    /** Whether two plants are of one clone. */
    public enum SameClone {
        /** They are: both come from one plant, by acts that keep the clone. */
        YES,
        /** They are not. */
        NO,
        /** Nobody knows: the origin of one is not known, or one is one of several. */
        NOT_KNOWN
    }

    /**
     * A common ancestor that has no common ancestor among its own offspring.
     *
     * @param tag its tag
     * @param nature what it is
     * @param named its cultivar
     * @param firstGenerations how many acts of propagation lead from it to the first plant, by the shortest way
     * @param firstBySeed how many of these were by seed, by the way with the fewest
     * @param secondGenerations the same for the second plant
     * @param secondBySeed the same for the second plant
     */
    public record Ancestor(
            Tag tag,
            Nature nature,
            Named named,
            int firstGenerations,
            int firstBySeed,
            int secondGenerations,
            int secondBySeed) {
        public Ancestor {
            Objects.requireNonNull(tag);
            Objects.requireNonNull(nature);
            Objects.requireNonNull(named);
        }
    }

    public Kin {
        Objects.requireNonNull(first);
        Objects.requireNonNull(second);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(sameClone);
        nearest = List.copyOf(nearest);
        Objects.requireNonNull(least);
        Objects.requireNonNull(most);
        unknown = List.copyOf(unknown);
    }

    /**
     * Tell how two plants are related.
     *
     * @throws ortet.value.Refused when there is no such plant, or none yet on that day
     */
    public static Kin of(BookView view, Tag first, Tag second, LocalDate asOf) {
        return new Pedigree(new Reading(view, asOf)).kin(first, second);
    }

    /** Tell whether the two stand on paths of which nobody knows which is the right one. */
    public boolean isOneOfSeveral() {
        return !least.equals(most);
    }
}
