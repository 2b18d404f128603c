package ortet.yield;

import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What one side of a comparison yielded.
 *
 * @param name what to call the side
 * @param tally how its units stand as to take
 * @param stood in how many batches and from how many mothers they stood
 * @param established how they stand as to establishing
 * @param saleable how they stand as to being fit for sale
 * @param bySize how many of the saleable are in which size class; under the empty word those sold without one
 * @param motherYears how many mother-years gave the units whose mothers are known
 * @param saleableOfMothers how many of the saleable those gave
 * @param toRoots weeks until they were severed or found rooted
 * @param toStem years from setting to the stem asked for; absent where none was
 * @param taking what the take comes to in the end; absent where none has taken
 * @param establishing what establishing comes to in the end; absent where none has
 * @param takeRate the take rate; absent when nothing is known
 * @param establishedRate established of those known; absent when nothing is known
 */
public record SideYield(
        String name,
        Tally tally,
        Stood stood,
        Raised established,
        Raised saleable,
        Map<String, Integer> bySize,
        int motherYears,
        int saleableOfMothers,
        Wait toRoots,
        Optional<Wait> toStem,
        Optional<InTheEnd> taking,
        Optional<InTheEnd> establishing,
        Optional<YieldRate> takeRate,
        Optional<YieldRate> establishedRate) {
    public SideYield {
        Objects.requireNonNull(name);
        Objects.requireNonNull(tally);
        Objects.requireNonNull(stood);
        Objects.requireNonNull(established);
        Objects.requireNonNull(saleable);
        bySize = Collections.unmodifiableMap(new TreeMap<>(bySize));
        Objects.requireNonNull(toRoots);
        Objects.requireNonNull(toStem);
        Objects.requireNonNull(taking);
        Objects.requireNonNull(establishing);
        Objects.requireNonNull(takeRate);
        Objects.requireNonNull(establishedRate);
    }

    /** Return the rate by a measure; absent when nothing is known. */
    public Optional<YieldRate> rate(Measure measure) {
        return measure == Measure.TAKE ? takeRate : establishedRate;
    }

    /** Return how many saleable plants each mother-year gave; absent where no mother-year is known. */
    public Optional<Double> saleablePerMotherYear() {
        return motherYears == 0 ? Optional.empty() : Optional.of((double) saleableOfMothers / motherYears);
    }
}
