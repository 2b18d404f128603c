package ortet.yield;

import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import ortet.figures.ClusteredRatio;

/**
 * What one side of a comparison yielded.
 *
 * @param name what to call the side
 * @param tally how its units stand as to take
 * @param stood in how many batches and from how many mothers they stood
 * @param established how they stand as to establishing
 * @param saleable how they stand as to being fit for sale
 * @param bySize how many of the saleable are in which size class; under the empty word those sold without one
 * @param ofMothers how many of the saleable each mother-year gave so far, of those whose mothers are known
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
        ClusteredRatio ofMothers,
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
        Objects.requireNonNull(ofMothers);
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

    /** Return how many mother-years gave the units whose mothers are known. */
    public int motherYears() {
        return (int) ofMothers.units();
    }

    /** Return how many of the saleable those gave. */
    public int saleableOfMothers() {
        return Math.toIntExact(ofMothers.count());
    }

    /** Return how many saleable plants each mother-year gave so far; absent where no mother-year is known. */
    public Optional<Double> saleablePerMotherYear() {
        return ofMothers.ratio();
    }
}
