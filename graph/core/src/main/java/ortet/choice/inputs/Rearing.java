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
import java.util.stream.IntStream;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.BookView;
import ortet.book.UnitFacts.Method;
import ortet.choice.Grade;
import ortet.choice.Needs;
import ortet.choice.Raising;
import ortet.figures.EndShares;
import ortet.figures.Followed;
import ortet.figures.Leaning;
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
 * all ends together. Those set on branches of one band on one cultivar lean on those of its species, these on all, and all of
 * one band on all of any ({@link EndShares}), the more the more such kinds are alike ({@link Leaning}). Where the stems of
 * most are not known, the bands are left aside.
 */
final class Rearing {
    static final String AS_BEFORE = "as before";

    /** A size class that a smaller share of those fit for sale comes to is left out. */
    private static final double LEAST_SHARE = 0.02;

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
    private final Map<Method, Map<Circle, Trees>> sorted = new EnumMap<>(Method.class);
    private final Map<List<Object>, List<Circle>> surroundings = new HashMap<>();
    private final Map<List<Object>, Double> strengths = new HashMap<>();
    private final Map<Circle, EndShares> circled = new HashMap<>();

    /** How wide a circle is. */
    private enum Reach {
        CULTIVAR,
        SPECIES,
        ALL
    }

    /** Trees of one method and one kind, set on stems of one band or of any. */
    private record Circle(Method method, Optional<Integer> band, Reach reach, String name) {}

    /** What came of a tree: no size where it never came to be fit for sale. */
    private record End(Optional<String> size, int years) {}

    /**
     * What came of the trees of a circle.
     *
     * @param causes the number of each end, the same for all circles of a method
     * @param counts how many came to it by age in days, or grow on
     */
    private record Trees(Map<End, Integer> causes, Map<Followed, Double> counts) {
        int followed() {
            return (int) Math.round(sum(counts));
        }

        int known() {
            return (int) Math.round(counts.entrySet().stream()
                    .filter(one -> one.getKey().hasHappened())
                    .mapToDouble(Map.Entry::getValue)
                    .sum());
        }

        private static double sum(Map<Followed, Double> counts) {
            return counts.values().stream().mapToDouble(Double::doubleValue).sum();
        }

        /** Take those that came back, and are followed anew, off those that had come to the same end. */
        void settle() {
            List<Followed> back =
                    counts.keySet().stream().filter(one -> counts.get(one) < 0).toList();
            for (Followed one : back) {
                double over = -counts.remove(one);
                List<Followed> alike = counts.keySet().stream()
                        .filter(other -> other.cause() == one.cause())
                        .sorted(Comparator.comparingDouble(other -> Math.abs(other.time() - one.time())))
                        .toList();
                for (Followed other : alike) {
                    double taken = Math.min(over, counts.get(other));
                    counts.merge(other, -taken, Double::sum);
                    over -= taken;
                }
            }
            counts.values().removeIf(count -> count <= 0);
        }
    }

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
     * @param leaning on which others their shares lean, in words; blank where on none
     */
    record Graded(List<Grade> grades, int behind, int followed, String of, String leaning) {}

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
        Optional<Integer> told = band.filter(at -> hasStems(method, at));
        List<Circle> known = new ArrayList<>();
        Optional<Circle> circle = Optional.of(circle(method, cultivar, told, Reach.CULTIVAR));
        for (; circle.isPresent(); circle = wider(circle.get(), cultivar)) {
            circle.filter(trees(method)::containsKey).ifPresent(known::add);
        }
        return known.isEmpty() ? new Graded(List.of(), 0, 0, "nothing", "") : graded(known);
    }

    /** Tell whether the stems of most trees of a method are known, and some of them in a band. */
    private boolean hasStems(Method method, int band) {
        int all = followed(circle(method, -1, Optional.empty(), Reach.ALL));
        int measured = 0;
        for (Circle circle : trees(method).keySet()) {
            measured += circle.reach() == Reach.ALL && circle.band().isPresent() ? followed(circle) : 0;
        }
        Trees here = trees(method).get(circle(method, -1, Optional.of(band), Reach.ALL));
        return here != null && here.known() > 0 && 2 * measured >= all;
    }

    private int followed(Circle circle) {
        return Optional.ofNullable(trees(circle.method()).get(circle))
                .map(Trees::followed)
                .orElse(0);
    }

    /** Share trees out by what the first of some circles came to, each leaning on the next. */
    private Graded graded(List<Circle> circles) {
        Trees own = trees(circles.get(0).method()).get(circles.get(0));
        List<End> ends = List.copyOf(own.causes().keySet());
        EndShares shares = shares(circles);
        Map<String, TreeMap<Integer, Double>> bySize = new TreeMap<>();
        double all = 0;
        for (Map.Entry<Followed, Double> one : shares.shares().entrySet()) {
            End end = ends.get(one.getKey().cause() - 1);
            all += one.getValue();
            end.size()
                    .ifPresent(size -> bySize.computeIfAbsent(size, key -> new TreeMap<>())
                            .merge(end.years(), one.getValue(), Double::sum));
        }
        // what hardly any come to is left out, and counts as what the others come to
        Map<String, Double> fit = new TreeMap<>();
        bySize.forEach((size, years) -> fit.put(
                size, years.values().stream().mapToDouble(Double::doubleValue).sum()));
        double saleable = fit.values().stream().mapToDouble(Double::doubleValue).sum();
        fit.values().removeIf(share -> share < LEAST_SHARE * saleable);
        double kept = fit.values().stream().mapToDouble(Double::doubleValue).sum();
        List<Grade> grades = new ArrayList<>();
        for (Map.Entry<String, Double> size : fit.entrySet()) {
            double share = size.getValue() * saleable / kept / all;
            grades.add(
                    new Grade(size.getKey(), median(bySize.get(size.getKey()), size.getValue()), Math.min(1, share)));
        }
        return new Graded(grades, own.known(), own.followed(), circles.get(0).name(), leaning(circles));
    }

    private EndShares shares(List<Circle> circles) {
        Circle own = circles.get(0);
        EndShares found = circled.get(own);
        if (found == null) {
            Map<Followed, Double> followed = trees(own.method()).get(own).counts();
            found = circles.size() == 1
                    ? EndShares.of(followed)
                    : EndShares.of(followed, shares(circles.subList(1, circles.size())), strength(own));
            circled.put(own, found);
        }
        return found;
    }

    private String leaning(List<Circle> circles) {
        StringBuilder told = new StringBuilder();
        for (int at = 1; at < circles.size(); at++) {
            told.append(at == 1 ? "" : ", these on ")
                    .append(circles.get(at).name())
                    .append(String.format(Locale.ROOT, " as on %.0f more", strength(circles.get(at - 1))));
        }
        return told.toString();
    }

    // ---- circles ----

    private Circle circle(Method method, int cultivar, Optional<Integer> band, Reach reach) {
        String name = reach == Reach.CULTIVAR ? name(cultivar) : reach == Reach.SPECIES ? species(cultivar) : "all";
        return new Circle(method, band, reach, name + (band.isPresent() ? ", stems of this band" : ""));
    }

    /** Return the next wider circle: the species, all, and last all on stems of any band. */
    private Optional<Circle> wider(Circle circle, int cultivar) {
        return switch (circle.reach()) {
            case CULTIVAR -> Optional.of(circle(circle.method(), cultivar, circle.band(), Reach.SPECIES));
            case SPECIES -> Optional.of(circle(circle.method(), cultivar, circle.band(), Reach.ALL));
            case ALL -> circle.band().map(band -> circle(circle.method(), cultivar, Optional.empty(), Reach.ALL));
        };
    }

    /** Return the trees of a method that established or were ready for sale, by the circles that they are in. */
    private Map<Circle, Trees> trees(Method method) {
        return sorted.computeIfAbsent(method, key -> {
            Map<Circle, Trees> trees = new HashMap<>();
            Map<End, Integer> causes = new LinkedHashMap<>();
            for (Past.Ended one : ended) {
                if (past.method(one.row()) == method && (one.end() == Past.End.SALEABLE || one.established())) {
                    int cause = 0;
                    if (one.end() == Past.End.SALEABLE || one.end() == Past.End.NEVER_SALEABLE) {
                        End end = new End(size(one), one.end() == Past.End.SALEABLE ? years(one) : 0);
                        cause = causes.computeIfAbsent(end, fresh -> causes.size() + 1);
                    }
                    for (Circle circle : around(one)) {
                        trees.computeIfAbsent(circle, fresh -> new Trees(causes, new HashMap<>()))
                                .counts()
                                .merge(new Followed(age(one), cause), (double) one.count(), Double::sum);
                    }
                }
            }
            trees.values().forEach(Trees::settle);
            return trees;
        });
    }

    /** Return the circles that a tree is in, from the narrowest on: with the band of its stem, where it is known, and without. */
    private List<Circle> around(Past.Ended one) {
        Method method = past.method(one.row());
        int cultivar = past.cultivar(one.row());
        Optional<Integer> band = past.stem(one.row()).map(mm -> woods.at(mm / 100.0));
        return surroundings.computeIfAbsent(List.of(method, cultivar, band), key -> {
            List<Circle> circles = new ArrayList<>();
            for (Reach reach : Reach.values()) {
                band.ifPresent(at -> circles.add(circle(method, cultivar, Optional.of(at), reach)));
                circles.add(circle(method, cultivar, Optional.empty(), reach));
            }
            return circles;
        });
    }

    // ---- how strongly they lean ----

    /** Return as how many trees the next wider circle counts. */
    private double strength(Circle circle) {
        List<Object> key =
                List.of(circle.method(), circle.reach(), circle.band().isPresent());
        return strengths.computeIfAbsent(key, fresh -> Leaning.strength(kinds(circle)));
    }

    /**
     * Return circles like one, by the next wider that they are in, with their trees by size class: of cohorts only that are
     * so old that nine in ten ends came sooner, lest the quick ones be taken for all.
     */
    private List<List<int[]>> kinds(Circle like) {
        List<Past.Ended> ends = ended.stream()
                .filter(one -> past.method(one.row()) == like.method())
                .filter(one ->
                        one.end() == Past.End.SALEABLE || one.end() == Past.End.NEVER_SALEABLE && one.established())
                .filter(one -> one.count() > 0)
                .toList();
        int[] ages = ends.stream()
                .flatMapToInt(one -> IntStream.generate(() -> age(one)).limit(one.count()))
                .sorted()
                .toArray();
        if (ages.length == 0) {
            return List.of();
        }
        int old = ages[(int) (NEARLY_ALL * (ages.length - 1))];
        int day = Math.toIntExact(snapshot.asOf().toEpochDay());
        List<String> sizes = new ArrayList<>();
        Map<Circle, Map<Circle, Map<Integer, Integer>>> counts = new LinkedHashMap<>();
        for (Past.Ended one : ends) {
            if (day - snapshot.cohorts().firstDay(one.row()) >= old) {
                String size = size(one).orElse("");
                if (!sizes.contains(size)) {
                    sizes.add(size);
                }
                around(one).stream()
                        .filter(circle -> circle.reach() == like.reach()
                                && circle.band().isPresent() == like.band().isPresent())
                        .forEach(circle -> wider(circle, past.cultivar(one.row()))
                                .ifPresent(kind -> counts.computeIfAbsent(kind, fresh -> new LinkedHashMap<>())
                                        .computeIfAbsent(circle, fresh -> new HashMap<>())
                                        .merge(sizes.indexOf(size), one.count(), Integer::sum)));
            }
        }
        return counts.values().stream()
                .map(groups -> groups.values().stream()
                        .map(group -> IntStream.range(0, sizes.size())
                                .map(at -> group.getOrDefault(at, 0))
                                .toArray())
                        .toList())
                .toList();
    }

    private int age(Past.Ended one) {
        return Math.max(0, one.day() - snapshot.cohorts().firstDay(one.row()));
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
    void explainCosts(Method method, String currency, List<Explained> explained) {
        String unit = method == Method.LAYER ? "a layer" : "a cutting";
        Spent all = spent.get(method);
        explained.add(told(
                "setting " + unit,
                all.set(),
                currency,
                "listed costs, of all " + all.set().looked() + " set"));
        all.bySize()
                .forEach((size, each) -> explained.add(told(
                        "growing on one " + size + " from " + unit,
                        each,
                        currency,
                        "listed costs, and the diaries of " + each.looked() + " tags")));
        explained.add(told(
                "growing on one from " + unit + " that was lost",
                all.lost(),
                currency,
                "listed costs, and the diaries of " + all.lost().looked() + " tags"));
    }

    private static Explained told(String figure, Each each, String currency, String source) {
        return new Explained(
                "all",
                figure,
                String.format(
                        Locale.ROOT,
                        "%.2f %s, %.3f hours, %.3f m² for a year",
                        each.money(),
                        currency,
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
