package ortet.choice.inputs;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import ortet.book.UnitFacts.Method;
import ortet.choice.Grade;
import ortet.money.Tariff;
import ortet.nursery.Lives;
import ortet.nursery.Names;
import ortet.nursery.Snapshot;
import ortet.nursery.Turn;
import ortet.yield.Past;

/** Tells how many trees are asked for, and how many are on the way already. */
final class Demands {
    private static final int YEARS = 3;

    private final Snapshot snapshot;
    private final Names names;
    private final int firstYear;
    private final int years;

    /** A cultivar, by its place in {@link Snapshot#cultivars()}, and a size class, or the word for none. */
    record Kind(int cultivar, String size) {}

    /**
     * Prepare.
     *
     * @param years for how many years from the first on
     */
    Demands(Snapshot snapshot, int firstYear, int years) {
        this.snapshot = snapshot;
        this.names = Names.of(snapshot);
        this.firstYear = firstYear;
        this.years = years;
    }

    /** Return how many were sold in a year, on average over the last three, up to the day. */
    Map<Kind, Double> sold() {
        Map<Kind, Double> sold = new HashMap<>();
        Lives lives = snapshot.lives();
        long from = snapshot.asOf().minusYears(YEARS).toEpochDay();
        for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
            int size = -1;
            int soldSize = -1;
            for (int at = lives.first(unit); at < lives.end(unit); at++) {
                switch (lives.turn(at)) {
                    case GRADED -> size = lives.value(at);
                    case SOLD -> {
                        soldSize = size;
                        add(sold, unit, soldSize, lives.day(at) > from ? lives.value(at) : 0);
                    }
                    case RETURNED -> add(sold, unit, soldSize, lives.day(at) > from ? -lives.value(at) : 0);
                    default -> {}
                }
            }
        }
        sold.replaceAll((kind, count) -> Math.max(0, count) / YEARS);
        return sold;
    }

    private void add(Map<Kind, Double> sold, int unit, int size, int count) {
        if (names.name(unit) >= 0 && count != 0) {
            String word = size < 0 ? Tariff.UNGRADED : snapshot.lives().sizes().get(size);
            sold.merge(new Kind(names.name(unit), word), (double) count, Double::sum);
        }
    }

    /**
     * Return how many trees that are there already are expected to become fit for sale, by year from the first on: those
     * graded in the first, those growing on and those set by what became of others of their cultivar and method. What has
     * grown on for longer than nine in ten took to become fit for sale is not waited for.
     */
    Map<Kind, double[]> onTheWay(Past past, Rearing rearing) {
        Map<Kind, double[]> ready = new HashMap<>();
        Map<List<Object>, int[]> counts = new HashMap<>();
        for (Past.Ended one : rearing.ended()) {
            int[] sums = counts.computeIfAbsent(
                    List.of(past.method(one.row()), past.cultivar(one.row())), key -> new int[4]);
            boolean failed = one.end() == Past.End.NEVER_SALEABLE && !one.established();
            sums[failed ? 3 : 2] += one.count();
            int age = firstYear - past.season(one.row());
            if (one.end() == Past.End.GROWING_ON && age <= rearing.slowest(past.method(one.row())) + 1) {
                share(past, rearing, one.row(), one.established() ? one.count() : -one.count(), ready, counts);
            }
        }
        graded(ready);
        for (Method method : Method.values()) {
            for (int row : past.rows(method)) {
                if (past.awaited(row) > 0) {
                    share(
                            past,
                            rearing,
                            row,
                            past.awaited(row) * taking(past, method, past.cultivar(row)),
                            ready,
                            counts);
                }
            }
        }
        return ready;
    }

    private final Map<List<Object>, double[]> takings = new HashMap<>();

    /** Return the share of a cultivar's units of a method that took, with one more on either side. */
    private double taking(Past past, Method method, int cultivar) {
        double[] sums = takings.computeIfAbsent(List.of(method, cultivar), key -> {
            double[] all = {1, 2};
            for (int row : past.rows(method)) {
                if (past.cultivar(row) == cultivar) {
                    all[0] += snapshot.cohorts().taken(row);
                    all[1] += snapshot.cohorts().taken(row) + snapshot.cohorts().failed(row);
                }
            }
            return all;
        });
        return sums[0] / sums[1];
    }

    private void share(
            Past past,
            Rearing rearing,
            int row,
            double count,
            Map<Kind, double[]> ready,
            Map<List<Object>, int[]> counts) {
        int cultivar = past.cultivar(row);
        if (cultivar < 0) {
            return;
        }
        int[] sums = counts.getOrDefault(List.of(past.method(row), cultivar), new int[4]);
        double living = count >= 0 ? count : -count * (sums[2] + 1.0) / (sums[2] + sums[3] + 2.0);
        for (Grade grade :
                rearing.graded(past.method(row), cultivar, Optional.empty()).grades()) {
            int year = past.season(row) + grade.years() - firstYear;
            add(ready, new Kind(cultivar, grade.sizeClass()), year, living * grade.share());
        }
    }

    private void graded(Map<Kind, double[]> ready) {
        Lives lives = snapshot.lives();
        for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
            if (!snapshot.isThere(unit) || snapshot.growing(unit) <= 0 || names.name(unit) < 0) {
                continue;
            }
            int size = -1;
            boolean stock = false;
            for (int at = lives.first(unit); at < lives.end(unit); at++) {
                size = lives.turn(at) == Turn.GRADED ? lives.value(at) : size;
                stock = lives.turn(at) == Turn.STOCK || stock && lives.turn(at) != Turn.NO_STOCK;
            }
            if (size >= 0 && !stock) {
                add(ready, new Kind(names.name(unit), lives.sizes().get(size)), 0, snapshot.growing(unit));
            }
        }
    }

    private void add(Map<Kind, double[]> ready, Kind kind, int year, double count) {
        double[] byYear = ready.computeIfAbsent(kind, key -> new double[years]);
        byYear[Math.max(0, Math.min(years - 1, year))] += count;
    }

    /** Return what is still asked for when what is ready has been sold; what is left of it is sold in later years. */
    static List<Double> net(double[] asked, double[] ready) {
        List<Double> net = new ArrayList<>();
        double left = 0;
        for (int year = 0; year < asked.length; year++) {
            left += ready[year];
            double served = Math.min(left, asked[year]);
            left -= served;
            net.add(asked[year] - served);
        }
        return net;
    }

    /** Return the same number in every year. */
    double[] everyYear(double count) {
        double[] all = new double[years];
        Arrays.fill(all, count);
        return all;
    }

    /** Return what lines ask for: by year where a line names it, else what stands for every year. */
    double[] asked(List<DemandLine> lines) {
        Map<Integer, Double> byYear = new TreeMap<>();
        double usual = 0;
        for (DemandLine line : lines) {
            if (line.year().isPresent()) {
                byYear.merge(line.year().get(), line.count(), Double::sum);
            } else {
                usual += line.count();
            }
        }
        double[] asked = everyYear(usual);
        byYear.forEach((year, count) -> {
            if (year >= firstYear && year < firstYear + years) {
                asked[year - firstYear] = count;
            }
        });
        return asked;
    }

    LocalDate from() {
        return snapshot.asOf().minusYears(YEARS).plusDays(1);
    }
}
