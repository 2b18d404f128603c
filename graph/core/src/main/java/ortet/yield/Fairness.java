package ortet.yield;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntUnaryOperator;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;

/**
 * Tells in what two sides differ besides what is compared, unit by unit: how large a share of either side would have to be
 * otherwise for both to be alike, ½ Σ |p − q| over the values of a factor, of those units of which it is told. The place is
 * left out where methods are compared: a layer is where its mother is, and cuttings are on a bench.
 */
final class Fairness {
    /** Upper ends of the bands in which the age of stock plants is told, in years. */
    private static final int[] AGES = {4, 9, 19};

    private static final int UNTOLD = -1;

    private final Samples samples;
    private final Grouping grouping;
    private final Treated treated;
    private final Lives lives;
    private final int[] placeOf;
    private final List<String> places = new ArrayList<>();

    Fairness(Samples samples, Grouping grouping, Treated treated) {
        this.samples = samples;
        this.grouping = grouping;
        this.treated = treated;
        this.lives = samples.snapshot().lives();
        this.placeOf = new int[lives.treatments().size()];
        Map<String, Integer> known = new HashMap<>();
        for (int way = 0; way < placeOf.length; way++) {
            placeOf[way] = lives.treatments()
                    .get(way)
                    .place()
                    .map(place -> known.computeIfAbsent(place, fresh -> {
                        places.add(fresh);
                        return places.size() - 1;
                    }))
                    .orElse(UNTOLD);
        }
    }

    /** Return how far two sides differ in every factor that is told of either, the most first. */
    List<Imbalance> between(CompareQuestion question, int[] first, int[] second) {
        List<Imbalance> found = new ArrayList<>();
        if (question.by().filter(by -> by == TakeBy.CULTIVAR).isEmpty()) {
            found.addAll(
                    grouped("cultivar", TakeBy.CULTIVAR, first, second).stream().toList());
        }
        if (question.on() != CompareOn.METHOD) {
            found.addAll(
                    grouped("method", TakeBy.METHOD, first, second).stream().toList());
        }
        found.addAll(grouped("season", TakeBy.SEASON, first, second).stream().toList());
        if (question.on() != CompareOn.OPERATOR) {
            found.addAll(
                    grouped("operator", TakeBy.OPERATOR, first, second).stream().toList());
        }
        factor("stock age", this::age, Fairness::ages, first, second).ifPresent(found::add);
        if (question.on() != CompareOn.METHOD) {
            factor(
                            "place",
                            row -> treated.treatment(row) < 0 ? UNTOLD : placeOf[treated.treatment(row)],
                            places::get,
                            first,
                            second)
                    .ifPresent(found::add);
        }
        found.sort(Comparator.comparingDouble(Imbalance::apart).reversed().thenComparing(Imbalance::factor));
        return found;
    }

    private Optional<Imbalance> grouped(String factor, TakeBy by, int[] first, int[] second) {
        return factor(
                factor,
                row -> grouping.number(by, row) == Cohorts.NONE ? UNTOLD : grouping.number(by, row),
                number -> grouping.keys(by, Set.of(number)).get(number).group().shown(),
                first,
                second);
    }

    private int age(int row) {
        if (treated.treatment(row) < 0) {
            return UNTOLD;
        }
        Optional<Integer> years = lives.treatments().get(treated.treatment(row)).stockAgeYears();
        if (years.isEmpty()) {
            return UNTOLD;
        }
        int band = 0;
        while (band < AGES.length && years.get() > AGES[band]) {
            band++;
        }
        return band;
    }

    private static String ages(int band) {
        int from = band == 0 ? 0 : AGES[band - 1] + 1;
        return band == AGES.length ? from + " years and more" : from + " to " + AGES[band] + " years";
    }

    private interface Naming {
        String name(int value);
    }

    private Optional<Imbalance> factor(
            String factor, IntUnaryOperator value, Naming naming, int[] first, int[] second) {
        Map<Integer, long[]> units = new TreeMap<>();
        long[] all = {count(first, value, units, 0), count(second, value, units, 1)};
        long[] untold = Optional.ofNullable(units.remove(UNTOLD)).orElse(new long[2]);
        if (units.isEmpty() || all[0] == 0 || all[1] == 0) {
            return Optional.empty();
        }
        double[] told = {(double) (all[0] - untold[0]) / all[0], (double) (all[1] - untold[1]) / all[1]};
        if (told[0] == 0 || told[1] == 0) {
            return Optional.of(new Imbalance(factor, 0, "", 0, 0, told[0], told[1]));
        }
        double apart = 0;
        int most = UNTOLD;
        double gap = -1;
        for (Map.Entry<Integer, long[]> entry : units.entrySet()) {
            double here = Math.abs(
                    share(entry.getValue()[0], all[0] - untold[0]) - share(entry.getValue()[1], all[1] - untold[1]));
            apart += here / 2;
            if (here > gap) {
                gap = here;
                most = entry.getKey();
            }
        }
        long[] there = units.get(most);
        return Optional.of(new Imbalance(
                factor,
                Math.min(1, apart),
                naming.name(most),
                share(there[0], all[0] - untold[0]),
                share(there[1], all[1] - untold[1]),
                told[0],
                told[1]));
    }

    private static double share(long part, long whole) {
        return (double) part / whole;
    }

    private long count(int[] rows, IntUnaryOperator value, Map<Integer, long[]> units, int side) {
        long all = 0;
        for (int row : rows) {
            int set = samples.set(row);
            if (set > 0) {
                units.computeIfAbsent(value.applyAsInt(row), one -> new long[2])[side] += set;
                all += set;
            }
        }
        return all;
    }
}
