package ortet.choice.inputs;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.BookView;
import ortet.book.UnitFacts.Method;
import ortet.choice.Grade;
import ortet.choice.Needs;
import ortet.choice.Raising;
import ortet.figures.Followed;
import ortet.figures.Incidence;
import ortet.money.Charge;
import ortet.money.Cost;
import ortet.money.Tariff;
import ortet.money.Total;
import ortet.nursery.Snapshot;
import ortet.yield.ClassCost;
import ortet.yield.Grown;
import ortet.yield.Past;
import ortet.yield.SideCost;

/**
 * Tells what becomes of established trees, when, and what they cost, as it was in the past.
 *
 * <p>Of established trees, the shares in each size class and the median years from setting until they were fit for sale: the
 * cumulative incidence of each end, of which those that grow on are told apart as long as they are followed, divided by that of
 * all ends together. Those set on branches of one band on one cultivar where there are {@value #ENOUGH} and the end of
 * {@value #ENDED} of them is known; else on one species, on all, on any branch of one cultivar, and so on.
 */
final class Rearing {
    static final String AS_BEFORE = "as before";

    private static final int ENOUGH = 10;
    private static final int ENDED = 5;
    private static final double CONFIDENCE = 0.95;
    private static final double ROUNDING = 1e-12;
    private static final double NEARLY_ALL = 0.9;
    private static final int SEASONS = 4;

    private final Snapshot snapshot;
    private final Past past;
    private final List<Past.Ended> ended;
    private final Woods woods;
    private final Map<Method, Integer> slowest = new EnumMap<>(Method.class);
    private final Map<Method, Spent> spent = new EnumMap<>(Method.class);
    private final TreeSet<String> missing = new TreeSet<>();
    private final Map<List<Object>, Graded> known = new HashMap<>();
    private final Map<List<Object>, Graded> circled = new HashMap<>();

    /** What one unit of a method costs: to set, and to grow on into each size class, or until it was lost. */
    private record Spent(Each set, Map<String, Each> bySize, Each lost) {}

    /** Money, hours and square metres for a year. */
    record Each(double money, double hours, double m2Years, int looked) {
        static final Each NOTHING = new Each(0, 0, 0, 0);
    }

    /**
     * What becomes of trees.
     *
     * @param grades by size class and time
     * @param behind how many trees whose end is known
     * @param followed how many trees, those that grow on too
     * @param of which
     */
    record Graded(List<Grade> grades, int behind, int followed, String of) {}

    Rearing(Snapshot snapshot, Past past, Woods woods) {
        this.snapshot = snapshot;
        this.past = past;
        this.woods = woods;
        this.ended = past.ended();
        for (Method method : Method.values()) {
            List<Integer> years = new ArrayList<>();
            for (Past.Ended one : ended) {
                if (past.method(one.row()) == method && one.end() == Past.End.SALEABLE) {
                    for (int i = 0; i < one.count(); i++) {
                        years.add(years(one));
                    }
                }
            }
            years.sort(null);
            slowest.put(method, years.isEmpty() ? 0 : years.get((int) (NEARLY_ALL * (years.size() - 1))));
        }
    }

    /** Return after how many years nine in ten of those that become fit for sale have done so. */
    int slowest(Method method) {
        return slowest.get(method);
    }

    /** Return how many trees of the planned methods were sold without a size class, and how many became fit for sale at all. */
    int[] ungraded() {
        int[] counts = new int[2];
        for (Past.Ended one : ended) {
            boolean planned = past.method(one.row()) == Method.LAYER || past.method(one.row()) == Method.CUTTING;
            if (planned && one.end() == Past.End.SALEABLE) {
                counts[1] += one.count();
                counts[0] += one.size() < snapshot.lives().sizes().size() ? 0 : one.count();
            }
        }
        return counts;
    }

    List<Past.Ended> ended() {
        return ended;
    }

    /** Return what nobody listed of what raising costs. */
    TreeSet<String> missing() {
        return missing;
    }

    private int years(Past.Ended one) {
        return Math.max(0, LocalDate.ofEpochDay(one.day()).getYear() - past.season(one.row()));
    }

    // ---- what becomes of them ----

    /** Return what becomes of trees; no grades where nothing at all is known of the method. */
    Graded graded(Method method, int cultivar, Optional<Integer> band) {
        return known.computeIfAbsent(List.of(method, cultivar, band), key -> find(method, cultivar, band));
    }

    private Graded find(Method method, int cultivar, Optional<Integer> band) {
        String own = name(cultivar);
        String species = species(cultivar);
        Predicate<Past.Ended> sameBand = one -> band.equals(past.stem(one.row()).map(mm -> woods.at(mm / 100.0)));
        Predicate<Past.Ended> sameCultivar = one -> past.cultivar(one.row()) == cultivar;
        Predicate<Past.Ended> sameSpecies =
                one -> species(past.cultivar(one.row())).equals(species);
        Map<String, Predicate<Past.Ended>> circles = new LinkedHashMap<>();
        if (band.isPresent()) {
            circles.put(own + ", stems of this band", sameCultivar.and(sameBand));
            circles.put(species + ", stems of this band", sameSpecies.and(sameBand));
            circles.put("all, stems of this band", sameBand);
        }
        circles.put(own, sameCultivar);
        circles.put(species, sameSpecies);
        circles.put("all", one -> true);
        Graded any = new Graded(List.of(), 0, 0, "nothing");
        for (Map.Entry<String, Predicate<Past.Ended>> circle : circles.entrySet()) {
            Graded found = circled.computeIfAbsent(
                    List.of(method, band, circle.getKey()),
                    key -> of(
                            ended.stream()
                                    .filter(one -> past.method(one.row()) == method)
                                    .filter(one -> one.end() == Past.End.SALEABLE || one.established())
                                    .filter(circle.getValue())
                                    .toList(),
                            circle.getKey()));
            if (found.followed() >= ENOUGH
                    && found.behind() >= ENDED
                    && !found.grades().isEmpty()) {
                return found;
            }
            any = found.grades().isEmpty() ? any : found;
        }
        return any;
    }

    /** What came of a tree: no size where it never came to be fit for sale. */
    private record End(Optional<String> size, int years) {}

    /**
     * Follow trees from their setting to their end, or as long as they grow on, and share them out by what Aalen and Johansen
     * find: trees that are ready soon are not taken for all because those that take longer are still growing.
     */
    private Graded of(List<Past.Ended> some, String of) {
        Map<End, Integer> causes = new LinkedHashMap<>();
        List<Followed> followed = new ArrayList<>();
        int known = 0;
        for (Past.Ended one : some) {
            boolean ends = one.end() == Past.End.SALEABLE || one.end() == Past.End.NEVER_SALEABLE;
            int cause = 0;
            if (ends) {
                End end = new End(size(one), one.end() == Past.End.SALEABLE ? years(one) : 0);
                cause = causes.computeIfAbsent(end, key -> causes.size() + 1);
                known += one.count();
            }
            Followed tree =
                    new Followed(Math.max(0, one.day() - snapshot.cohorts().firstDay(one.row())), cause);
            for (int i = 0; i < one.count(); i++) {
                followed.add(tree);
            }
            // what came back is followed anew
            for (int i = one.count(); i < 0; i++) {
                if (!followed.remove(tree)) {
                    followed.remove(followed.stream()
                            .filter(other -> other.cause() == tree.cause())
                            .findFirst()
                            .orElse(tree));
                }
            }
        }
        Map<String, TreeMap<Integer, Double>> bySize = new TreeMap<>();
        double all = 0;
        double last = followed.stream().mapToDouble(Followed::time).max().orElse(0);
        for (Map.Entry<End, Integer> end : causes.entrySet()) {
            double share = Incidence.of(followed, end.getValue(), CONFIDENCE)
                    .at(last)
                    .map(Incidence.Step::share)
                    .orElse(0.0);
            all += share;
            end.getKey()
                    .size()
                    .ifPresent(size -> bySize.computeIfAbsent(size, key -> new TreeMap<>())
                            .merge(end.getKey().years(), share, Double::sum));
        }
        List<Grade> grades = new ArrayList<>();
        for (Map.Entry<String, TreeMap<Integer, Double>> size : bySize.entrySet()) {
            double share = size.getValue().values().stream()
                    .mapToDouble(Double::doubleValue)
                    .sum();
            if (share > 0) {
                grades.add(new Grade(size.getKey(), median(size.getValue(), share), Math.min(1, share / all)));
            }
        }
        return new Graded(grades, Math.max(0, known), followed.size(), of);
    }

    private Optional<String> size(Past.Ended one) {
        List<String> sizes = snapshot.lives().sizes();
        return one.end() != Past.End.SALEABLE
                ? Optional.empty()
                : Optional.of(one.size() < sizes.size() ? sizes.get(one.size()) : Tariff.UNGRADED);
    }

    private static int median(TreeMap<Integer, Double> years, double all) {
        double below = 0;
        for (Map.Entry<Integer, Double> one : years.entrySet()) {
            below += one.getValue();
            if (2 * below >= all - ROUNDING) {
                return one.getKey();
            }
        }
        return years.lastKey();
    }

    String name(int cultivar) {
        return cultivar < 0
                ? "cultivar not known"
                : snapshot.cultivars().get(cultivar).toString();
    }

    String species(int cultivar) {
        if (cultivar < 0) {
            return "cultivar not known";
        }
        return (snapshot.cultivars().get(cultivar).genus() + " "
                        + snapshot.cultivars().get(cultivar).species())
                .strip();
    }

    String genus(int cultivar) {
        return cultivar < 0
                ? "cultivar not known"
                : snapshot.cultivars().get(cultivar).genus();
    }

    // ---- what they cost ----

    /** Read what a method costs off its past, by a tariff. */
    void price(BookView view, Tariff tariff, Method method) {
        SideCost side = past.costs(view, tariff, method);
        Total setting = Total.NOTHING;
        for (Charge charge : side.setting()) {
            // going to a mother is reckoned by the deed on her, not by the unit
            if (charge.sort() != Charge.Sort.VISIT) {
                setting = setting.plus(charge, BigFraction.ONE);
                charge.missing().ifPresent(missing::add);
            }
        }
        Map<String, Each> bySize = new TreeMap<>();
        for (ClassCost size : side.classes()) {
            size.grown().forEach(grown -> missing.addAll(grown.missing()));
            bySize.put(size.size().orElse(Tariff.UNGRADED), each(size.grown()));
        }
        side.carried().forEach(grown -> missing.addAll(grown.missing()));
        Each lost = each(side.carried().stream()
                .filter(grown -> grown.which() == Grown.Which.LOST)
                .toList());
        spent.put(method, new Spent(each(setting, Math.max(1, side.set()), side.set()), bySize, lost));
    }

    /** Tell what setting and growing on cost, and from how many diaries. */
    void explainCosts(Method method, List<Explained> explained) {
        String unit = method == Method.LAYER ? "a layer" : "a cutting";
        Spent all = spent.get(method);
        explained.add(told(
                "setting " + unit,
                all.set(),
                "listed costs, of all " + all.set().looked() + " set"));
        all.bySize()
                .forEach((size, each) -> explained.add(told(
                        "growing on one " + size + " from " + unit,
                        each,
                        "listed costs, and the diaries of " + each.looked() + " tags")));
        explained.add(told(
                "growing on one from " + unit + " that was lost",
                all.lost(),
                "listed costs, and the diaries of " + all.lost().looked() + " tags"));
    }

    private static Explained told(String figure, Each each, String source) {
        return new Explained(
                "all",
                figure,
                String.format(
                        Locale.ROOT,
                        "%.2f in money, %.3f hours, %.3f m² for a year",
                        each.money(),
                        each.hours(),
                        each.m2Years()),
                "mean; hours and room at their listed costs are in the money",
                source);
    }

    private static Each each(List<Grown> grown) {
        double money = 0;
        double hours = 0;
        double m2Years = 0;
        int count = 0;
        int looked = 0;
        for (Grown one : grown) {
            Total total = one.parts().values().stream().reduce(Total.NOTHING, Total::plus);
            Each each = each(total, 1, one.looked());
            money += one.count() * each.money();
            hours += one.count() * each.hours();
            m2Years += one.count() * each.m2Years();
            count += one.count();
            looked += one.looked();
        }
        return count == 0 ? Each.NOTHING : new Each(money / count, hours / count, m2Years / count, looked);
    }

    private static Each each(Total total, int units, int looked) {
        return new Each(
                total.cost()
                        .map(Cost::value)
                        .map(value -> value.doubleValue() / units)
                        .orElse(0.0),
                total.hours().doubleValue() / units,
                total.m2Years().doubleValue() / units,
                looked);
    }

    Each setting(Method method) {
        return spent.get(method).set();
    }

    Each growing(Method method, String size) {
        return spent.get(method).bySize().getOrDefault(size, spent.get(method).lost());
    }

    Each lost(Method method) {
        return spent.get(method).lost();
    }

    /**
     * Return the way in which trees are raised.
     *
     * @param place where they grow on
     * @param season the season of setting, where hours are told by the season; empty where by the year
     */
    Raising raising(Method method, Graded graded, String place, Optional<Integer> season) {
        int years = graded.grades().stream().mapToInt(Grade::years).max().orElse(0);
        double[] money = new double[years + 1];
        double[] hours = new double[years + 1];
        double[] areas = new double[years + 1];
        double rest = 1;
        for (Grade grade : graded.grades()) {
            spread(growing(method, grade.sizeClass()), grade.share(), grade.years(), money, hours, areas);
            rest -= grade.share();
        }
        spread(lost(method), Math.max(0, rest), Math.min(1, years), money, hours, areas);
        List<Needs> perEstablished = new ArrayList<>();
        for (int year = 0; year <= years; year++) {
            perEstablished.add(new Needs(
                    money[year],
                    evenly(hours[year], season.isPresent(), 1.0 / SEASONS),
                    evenly(areas[year], season.isPresent(), 1),
                    place));
        }
        Each set = setting(method);
        return new Raising(
                AS_BEFORE,
                new Needs(set.money(), within(set.hours(), season), List.of(), ""),
                perEstablished,
                graded.grades().stream()
                        .sorted(Comparator.comparing(Grade::sizeClass))
                        .toList());
    }

    private static void spread(Each each, double share, int years, double[] money, double[] hours, double[] areas) {
        for (int year = 0; year <= years; year++) {
            money[year] += share * each.money() / (years + 1);
            hours[year] += share * each.hours() / (years + 1);
            areas[year] += share * each.m2Years() / (years + 1);
        }
    }

    private static List<Double> evenly(double all, boolean seasons, double share) {
        return seasons ? java.util.Collections.nCopies(SEASONS, all * share) : List.of(all);
    }

    static List<Double> within(double all, Optional<Integer> season) {
        if (season.isEmpty()) {
            return List.of(all);
        }
        List<Double> hours = new ArrayList<>(java.util.Collections.nCopies(SEASONS, 0.0));
        hours.set(season.get(), all);
        return hours;
    }
}
