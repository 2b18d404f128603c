package ortet.money;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * One thing that costs, and how much by the tariff; where the tariff does not say, what is missing stands in the place of
 * the cost, never a zero.
 *
 * @param sort what is paid for
 * @param what it in words: {@code potted}, {@code 2 L}
 * @param hours hours of work, 0 where none are listed
 * @param m2Years square metres times years of bench, 0 for anything else
 * @param cost how much; empty when it is not priced
 * @param missing what is missing, where it is not priced
 * @param how how the cost was worked out, in words; empty when it is not priced
 * @param sources recorded orders of the entries that list it, ascending
 */
public record Charge(
        Sort sort,
        String what,
        BigFraction hours,
        BigFraction m2Years,
        Optional<Cost> cost,
        Optional<String> missing,
        String how,
        List<Long> sources) {

    /** What is paid for. */
    public enum Sort {
        /** Hours of work. */
        HOURS,
        /** What an act costs besides its hours. */
        WORK,
        /** Going to a mother, once however many units are set on her. */
        VISIT,
        /** A material. */
        MATERIAL,
        /** Bench, or ground. */
        BENCH
    }

    public Charge {
        Objects.requireNonNull(sort);
        Objects.requireNonNull(what);
        Objects.requireNonNull(hours);
        Objects.requireNonNull(m2Years);
        if (cost.isPresent() == missing.isPresent()) {
            throw new IllegalArgumentException("either a cost or what is missing");
        }
        Objects.requireNonNull(how);
        sources = sources.stream().sorted().distinct().toList();
    }

    static Charge priced(Sort sort, String what, BigFraction hours, Cost cost, String how, List<Long> sources) {
        return new Charge(sort, what, hours, BigFraction.ZERO, Optional.of(cost), Optional.empty(), how, sources);
    }

    static Charge notPriced(Sort sort, String what, BigFraction hours, String missing, List<Long> sources) {
        return new Charge(sort, what, hours, BigFraction.ZERO, Optional.empty(), Optional.of(missing), "", sources);
    }

    /** Tell whether the tariff gives its cost. */
    public boolean isPriced() {
        return cost.isPresent();
    }
}
