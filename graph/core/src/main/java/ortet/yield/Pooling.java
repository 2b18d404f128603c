package ortet.yield;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.book.UnitFacts.Method;
import ortet.figures.GroupRate;
import ortet.figures.MixedFit;
import ortet.figures.MixedModel;
import ortet.figures.ModelData;
import ortet.nursery.Cohorts;
import ortet.nursery.Names;

/**
 * What one method takes on every mother, each told with the help of the others.
 *
 * <p>A binomial mixed model ({@link MixedModel}): mothers within cultivars, the seasons of a mother within her, trays within
 * these; and where there were several seasons, what each was like for all. A mother of whom little is known is drawn towards
 * the others of her cultivar, one of whom much is known stands by herself.
 */
final class Pooling {
    /** The grouping by mother, in the model. */
    static final String MOTHER = "mother";

    private static final String CULTIVAR = "cultivar";
    private static final String YEAR = "season of a mother";
    private static final String TRAY = "tray";

    private final Pooled pooled;
    private final MixedFit fit;
    private final Map<Integer, GroupRate> rates;

    private Pooling(Pooled pooled, MixedFit fit, Map<Integer, GroupRate> rates) {
        this.pooled = pooled;
        this.fit = fit;
        this.rates = rates;
    }

    /** What goes into the model as one row: what one mother gave in one season, in one tray where there are trays. */
    private record Place(int mother, int season, int tray) {}

    /**
     * Pool some rows of one method; those of no mother or of one of several are left out and counted.
     *
     * @param confidence of the intervals, above 0 and below 1
     */
    static Pooling of(Samples samples, int[] rows, Method method, double confidence) {
        Cohorts cohorts = samples.cohorts();
        Names names = Names.of(samples.snapshot());
        Map<Place, long[]> sums = new LinkedHashMap<>();
        int leftOut = 0;
        for (int row : rows) {
            if (cohorts.method(row) != method) {
                continue;
            }
            long known = (long) cohorts.taken(row) + cohorts.failed(row);
            if (samples.mother(row) <= 0) {
                leftOut += Math.toIntExact(known);
            } else if (known > 0) {
                int tray = samples.isBatch(row) ? cohorts.root(row) : 0;
                long[] sum = sums.computeIfAbsent(
                        new Place(samples.mother(row), samples.season(row), tray), place -> new long[2]);
                sum[0] += cohorts.taken(row);
                sum[1] += known;
            }
        }
        List<Place> places = List.copyOf(sums.keySet());
        ModelData data = ModelData.of(
                sums.values().stream().mapToLong(sum -> sum[0]).toArray(),
                sums.values().stream().mapToLong(sum -> sum[1]).toArray());
        List<String> mothers = words(places, Place::mother);
        List<String> seasons = words(places, Place::season);
        List<String> cultivars = words(places, place -> names.name(place.mother()));
        if (seasons.stream().distinct().count() > 1) {
            data = data.withFactor("season", seasons);
        }
        boolean several = cultivars.stream().distinct().count() > 1;
        if (several) {
            data = data.withGroups(CULTIVAR, cultivars).withGroupsWithin(MOTHER, CULTIVAR, mothers);
        } else {
            data = data.withGroups(MOTHER, mothers);
        }
        data = data.withGroupsWithin(YEAR, MOTHER, seasons);
        if (places.stream().anyMatch(place -> place.tray() != 0)) {
            data = data.withGroupsWithin(TRAY, YEAR, words(places, Place::tray));
        }
        MixedFit fit = MixedModel.laplace().fit(data);
        Map<Integer, GroupRate> rates = new HashMap<>();
        for (GroupRate rate : fit.rates(MOTHER, confidence)) {
            rates.put(Integer.valueOf(rate.label()), rate);
        }
        int count = Math.toIntExact(mothers.stream().distinct().count());
        return new Pooling(new Pooled(method, count, leftOut, confidence, fit), fit, rates);
    }

    private static List<String> words(List<Place> places, java.util.function.ToIntFunction<Place> what) {
        List<String> words = new ArrayList<>(places.size());
        places.forEach(place -> words.add(Integer.toString(what.applyAsInt(place))));
        return words;
    }

    /** Return how the pooling went. */
    Pooled pooled() {
        return pooled;
    }

    /** Return the fitted model. */
    MixedFit fit() {
        return fit;
    }

    /** Return what is said of a mother; absent where nothing is known of her, or nothing could be fitted. */
    Optional<GroupRate> rate(int mother) {
        return Optional.ofNullable(rates.get(mother));
    }
}
