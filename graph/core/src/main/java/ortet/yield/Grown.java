package ortet.yield;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import ortet.book.UnitFacts.Method;
import ortet.money.Cost;
import ortet.money.Total;
import ortet.value.Decimal;

/**
 * What growing trees on cost for one, after they were set, on average over some of them that were looked at.
 *
 * @param method how they were raised
 * @param which what became of them
 * @param count how many trees there are, above 0
 * @param tags under how many tags
 * @param looked how many of those tags were looked at; the figures are those of these
 * @param weeks how long all of them stood on the bench on average, to a tenth
 * @param parts what it cost, by what it was for: an act, a material, the bench
 * @param missing what is not listed of it
 */
public record Grown(
        Method method,
        Which which,
        int count,
        int tags,
        int looked,
        Decimal weeks,
        Map<String, Total> parts,
        Set<String> missing) {

    /** What became of trees that were grown on. */
    public enum Which {
        /** Fit for sale, in the size class. */
        SALEABLE,
        /** Lost before they were graded, or culled for quality. */
        LOST,
        /** Growing on, or gone without being graded. */
        OPEN
    }

    public Grown {
        Objects.requireNonNull(method);
        Objects.requireNonNull(which);
        Objects.requireNonNull(weeks);
        parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
        missing = Set.copyOf(missing);
    }

    Total total() {
        return parts.values().stream().reduce(Total.NOTHING, Total::plus);
    }

    /** Return what growing one on cost; empty where a part of it is not listed. */
    public Optional<Cost> cost() {
        return missing.isEmpty() ? total().cost() : Optional.empty();
    }
}
