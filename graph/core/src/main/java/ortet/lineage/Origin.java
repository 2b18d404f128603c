package ortet.lineage;

import java.util.List;
import java.util.Optional;

/**
 * Where the clone of a unit begins: one founder, or several of which it is one and nobody knows which.
 *
 * @param founders at least one, by unit
 */
public record Origin(List<Founder> founders) {
    public Origin {
        founders = List.copyOf(founders);
    }

    /** Tell whether it is one of several. */
    public boolean isOneOfSeveral() {
        return founders.size() > 1;
    }

    /** Return the ortet, where the book knows it for certain. */
    public Optional<Founder> ortet() {
        return isOneOfSeveral()
                ? Optional.empty()
                : founders.stream().filter(Founder::isOrtet).findFirst();
    }

    /** Return this in words: a founder, or {@code one of N: …; …}. */
    @Override
    public String toString() {
        String all = String.join("; ", founders.stream().map(Founder::toString).toList());
        return isOneOfSeveral() ? "one of " + founders.size() + ": " + all : all;
    }
}
