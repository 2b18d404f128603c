package ortet.decade;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import ortet.decade.Doing.What;

/**
 * A competent grower who ranks mothers, and layers them from the top down as far as past rates say that it takes: each on as
 * many of her positions, thick ones first, as fill what will be missing and bring more than they cost.
 */
final class ByRank implements Policy {
    /** By what mothers are ranked. */
    enum Rank {
        /** By taken / known; those never tried last. */
        PERCENTAGE,
        /** By that, as if each had four more layers with her cultivar's rate. */
        SMOOTHED,
        /** By how many thick stems they have, then middling ones. */
        THICKEST
    }

    private static final double MORE = 4;
    private static final int SELL_FROM = 2;
    private static final int IDLE = 4;
    /** How much thicker stems count, so that thinner ones only decide between equals. */
    private static final double THICKER = 100;

    private final Rank rank;
    private final boolean sells;

    ByRank(Rank rank, boolean sells) {
        this.rank = rank;
        this.sells = sells;
    }

    @Override
    public List<Doing> decide(Records records) {
        double[][] missing = new double[records.cultivars()][Truth.SIZES];
        for (int cultivar = 0; cultivar < records.cultivars(); cultivar++) {
            for (int size = 0; size < Truth.SIZES; size++) {
                missing[cultivar][size] = records.missing(cultivar, size, records.year() + size + 1);
            }
        }
        ToDoubleFunction<Integer> worth = mother -> switch (rank) {
            case PERCENTAGE -> records.known[mother] == 0 ? -1 : rate(records, mother);
            case SMOOTHED -> rate(records, mother);
            case THICKEST ->
                records.positions[mother][2] * THICKER * THICKER
                        + records.positions[mother][1] * THICKER
                        + records.positions[mother][0];
        };
        List<Integer> ranked = IntStream.range(0, records.mothers())
                .boxed()
                .filter(records::isFree)
                .sorted(Comparator.comparingDouble(worth).reversed().thenComparing(mother -> mother))
                .toList();
        double layers =
                Math.floor(records.means().springHours() / records.means().setHours());
        double room = records.means().roomM2() - records.roomTaken(records.year() + 1);
        List<Doing> doings = new ArrayList<>();
        for (int mother : ranked) {
            int cultivar = records.cultivar(mother);
            List<Integer> sets = new ArrayList<>(List.of(0, 0, 0));
            double rate = rate(records, mother) * records.establishing(cultivar);
            for (int band = Truth.BANDS - 1; band >= 0; band--) {
                double[] sizes = records.sizes(band);
                for (int at = 0; at < records.positions[mother][band]; at++) {
                    double squares = rate * Cost.square(0);
                    if (layers < 1 || room < squares || gain(records, cultivar, rate, sizes, missing[cultivar]) <= 0) {
                        break;
                    }
                    for (int size = 0; size < Truth.SIZES; size++) {
                        missing[cultivar][size] -= rate * sizes[size];
                    }
                    layers--;
                    room -= squares;
                    sets.set(band, sets.get(band) + 1);
                }
            }
            if (sets.stream().anyMatch(count -> count > 0)) {
                doings.add(new Doing(mother, sets, What.CROPPED));
            } else if (isIdle(records, mother)) {
                doings.add(Doing.without(mother, What.SOLD));
            }
        }
        return doings;
    }

    private boolean isIdle(Records records, int mother) {
        return sells
                && records.year() >= Truth.FIRST + SELL_FROM
                && records.lastLayered[mother] < records.year() - IDLE;
    }

    /** Return what one more layer is expected to bring, less what it costs. */
    private static double gain(Records records, int cultivar, double rate, double[] sizes, double[] missing) {
        Truth.Means means = records.means();
        double gain = -means.moss() - means.setHours() * means.hour();
        double perTree = Cost.FIRST_POT + (Cost.SEVERING_HOURS + Cost.SELLING_HOURS) * means.hour();
        for (int size = 0; size < Truth.SIZES; size++) {
            double wanted = Math.min(rate * sizes[size], Math.max(0, missing[size]));
            double bench = means.m2Year()
                    * (Cost.square(0) * Math.min(1.2, size + 0.9) + Cost.square(2) * Math.max(0, size - 0.2));
            double potting = size == 0 ? 0 : Cost.SECOND_POT + Cost.POTTING_HOURS * means.hour();
            gain += wanted * records.price(cultivar, size) - rate * sizes[size] * (perTree + bench + potting);
        }
        return gain;
    }

    private double rate(Records records, int mother) {
        double usual = records.rate(records.cultivar(mother));
        if (rank == Rank.SMOOTHED) {
            return (records.taken[mother] + MORE * usual) / (records.known[mother] + MORE);
        }
        return records.known[mother] == 0 ? usual : (double) records.taken[mother] / records.known[mother];
    }
}
