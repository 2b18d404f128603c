package ortet.yield;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.BookView;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Method;
import ortet.money.Charge;
import ortet.money.Cost;
import ortet.money.Tariff;
import ortet.money.Total;
import ortet.nursery.Cohorts;
import ortet.nursery.Lives;
import ortet.nursery.Treatment;
import ortet.nursery.Turn;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.UnitNumber;
import ortet.value.Decimal;

/**
 * Works out what one saleable tree of each size class costs on a side of a comparison, all of it by the tariff of the
 * cut-off day; the definitions are in docs/methods/yield.md.
 *
 * <p>Linear in the nursery. The facts of a few trees of each size class and method are read, to know in what and where such
 * trees stand; no timeline is.
 */
final class Costs {
    /** Of how many tags of a size class and method it is read where they stood: enough to find the usual. */
    private static final int LOOKED_AT = 12;

    private static final int DAYS_OF_A_WEEK = 7;

    private final BookView view;
    private final Samples samples;
    private final Cohorts cohorts;
    private final Lives lives;
    private final Fates fates;
    private final Treated treated;
    private final Stand stand;
    private final Tariff tariff;
    private final Ends[] ends;
    private final Map<Key, TreeMap<Integer, Integer>> units = new HashMap<>();
    private final Map<Key, Usual> usual = new HashMap<>();
    private final Set<Currency> currencies = new LinkedHashSet<>();

    private record Key(int size, Method method) {}

    private record Usual(Optional<String> container, Optional<Place> place) {}

    /** How many plants, and how many days they stood. */
    private static final class Stays {
        private int count;
        private long days;

        void add(int more, int each) {
            count += more;
            days += (long) more * each;
        }
    }

    /** What became of the plants of a side. */
    private static final class Ends {
        private final TreeMap<Integer, TreeMap<Method, Stays>> saleable = new TreeMap<>();
        private final TreeMap<Integer, TreeMap<Integer, Integer>> cultivars = new TreeMap<>();
        private final TreeMap<Method, Stays> lost = new TreeMap<>();
        private final TreeMap<Method, Stays> open = new TreeMap<>();
    }

    /**
     * Prepare to work out costs.
     *
     * @param code the code of a row's account: the side of a comparison, from 0; below 0 for what is in none
     * @param count how many codes there are
     */
    Costs(
            BookView view,
            Samples samples,
            Fates fates,
            Treated treated,
            Stand stand,
            Tariff tariff,
            IntUnaryOperator code,
            int count) {
        this.view = view;
        this.samples = samples;
        this.cohorts = samples.cohorts();
        this.lives = samples.snapshot().lives();
        this.fates = fates;
        this.treated = treated;
        this.stand = stand;
        this.tariff = tariff;
        this.ends = new Ends[count];
        Arrays.setAll(ends, at -> new Ends());
        for (int event = 0; event < fates.events(); event++) {
            add(event, code.applyAsInt(fates.eventRow(event)));
        }
    }

    private void add(int event, int code) {
        int row = fates.eventRow(event);
        Method method = cohorts.method(row);
        int days = Math.max(0, fates.eventEnd(event) - standsFrom(row));
        int count = fates.eventCount(event);
        int size = fates.eventSize(event);
        boolean saleable = fates.eventSale(event) == Fates.Saleable.YES;
        if (saleable) {
            units.computeIfAbsent(new Key(size, method), key -> new TreeMap<>())
                    .merge(fates.eventUnit(event), fates.eventEnd(event), Math::max);
        }
        if (code < 0) {
            return;
        }
        Ends its = ends[code];
        if (saleable) {
            its.cultivars
                    .computeIfAbsent(size, key -> new TreeMap<>())
                    .merge(samples.cultivar(row), count, Integer::sum);
        }
        TreeMap<Method, Stays> stood = switch (fates.eventSale(event)) {
            case YES -> its.saleable.computeIfAbsent(size, key -> new TreeMap<>());
            case NO -> its.lost;
            case CENSORED, GROWING_ON -> its.open;
        };
        stood.computeIfAbsent(method, key -> new Stays()).add(count, days);
    }

    /** Return the day from which the units of a row stand on a bench: a layer from its severing, all others at once. */
    private int standsFrom(int row) {
        if (cohorts.method(row) == Method.LAYER) {
            int unit = cohorts.unit(row);
            for (int at = lives.first(unit); at < lives.end(unit); at++) {
                if (lives.turn(at) == Turn.TAKEN) {
                    return lives.day(at);
                }
            }
        }
        return cohorts.firstDay(row);
    }

    /** Return the currencies met in all that was worked out. */
    Set<Currency> currencies() {
        return currencies;
    }

    /**
     * Return what raising costs on a side; the sums are told only where all is in one currency, so far.
     *
     * @param rows the rows that count
     * @param raised how their units stand as to being fit for sale
     */
    SideCost of(int code, int[] rows, Raised raised) {
        Ends its = ends[code];
        List<Charge> setting = setting(rows);
        List<ClassCost> classes = new ArrayList<>();
        int set = raised.counting() + raised.withdrawn();
        its.saleable.forEach((size, byMethod) -> {
            int count =
                    byMethod.values().stream().mapToInt(stood -> stood.count).sum();
            if (count > 0) {
                classes.add(ofClass(its, size, count, byMethod, setting, raised));
            }
        });
        classes.sort(
                (one, other) -> one.size().orElse("").compareTo(other.size().orElse("")));
        return new SideCost(set, raised.yes(), raised.unknown(), setting, classes);
    }

    // ---- setting ----

    /** Return what setting all units of some rows costs: the work by method, the materials by what was used. */
    private List<Charge> setting(int[] rows) {
        List<Charge> charges = new ArrayList<>();
        Map<Method, List<Integer>> byMethod = new TreeMap<>();
        Map<String, List<Integer>> byMaterial = new TreeMap<>();
        for (int row : rows) {
            byMethod.computeIfAbsent(cohorts.method(row), key -> new ArrayList<>())
                    .add(row);
            int way = treated.treatment(row);
            if (way >= 0) {
                Treatment treatment = lives.treatments().get(way);
                Stream.of(treatment.hormone(), treatment.medium(), treatment.wrap())
                        .flatMap(Optional::stream)
                        .forEach(material -> byMaterial
                                .computeIfAbsent(material, key -> new ArrayList<>())
                                .add(row));
            }
        }
        byMethod.forEach((method, some) -> {
            if (units(some) > 0) {
                charges.addAll(tariff.setting(method, units(some), tags(some)));
            }
        });
        byMaterial.forEach((material, some) -> {
            if (units(some) > 0) {
                charges.addAll(tariff.material(material, Optional.empty(), Optional.of(units(some)), tags(some)));
            }
        });
        meet(charges);
        return charges;
    }

    private int units(List<Integer> rows) {
        return rows.stream().mapToInt(samples::set).sum();
    }

    private int tags(List<Integer> rows) {
        Stood stood = stand.of(rows.stream().mapToInt(Integer::intValue).toArray(), 0, rows.size());
        return stood.batches() + stood.singles();
    }

    // ---- growing on ----

    private ClassCost ofClass(
            Ends its, int size, int count, Map<Method, Stays> byMethod, List<Charge> setting, Raised raised) {
        Optional<String> name =
                size < lives.sizes().size() ? Optional.of(lives.sizes().get(size)) : Optional.empty();
        Method most = byMethod.entrySet().stream()
                .max((one, other) -> Integer.compare(one.getValue().count, other.getValue().count))
                .orElseThrow()
                .getKey();
        List<Grown> grown = new ArrayList<>();
        grow(grown, Grown.Which.SALEABLE, byMethod, size, name, most);
        grow(grown, Grown.Which.LOST, its.lost, size, name, most);
        grow(grown, Grown.Which.OPEN, its.open, size, name, most);
        Set<String> missing = new LinkedHashSet<>();
        Stream.concat(setting.stream(), grown.stream().flatMap(one -> one.charges().stream()))
                .forEach(charge -> charge.missing().ifPresent(missing::add));
        Optional<Cost> price = price(its.cultivars.get(size), name, missing);
        grown.forEach(one -> meet(one.charges()));
        if (currencies.size() > 1) {
            return new ClassCost(name, count, grown, Optional.empty(), Optional.empty(), Optional.empty(), List.of());
        }
        int known = raised.yes();
        int hoped = known + raised.unknown();
        Total set = total(setting);
        Total own = share(grown, Grown.Which.SALEABLE, count);
        Total least = set.times(BigFraction.of(1, hoped)).plus(own).plus(share(grown, Grown.Which.LOST, hoped));
        Total spent = set.times(BigFraction.of(1, known))
                .plus(own)
                .plus(share(grown, Grown.Which.LOST, known))
                .plus(share(grown, Grown.Which.OPEN, known));
        // where growing on is not listed for those that are open, nothing is told at all
        Optional<Cost> all = cost(spent);
        return new ClassCost(name, count, grown, all.isPresent() ? cost(least) : all, all, price, List.copyOf(missing));
    }

    private void grow(
            List<Grown> grown,
            Grown.Which which,
            Map<Method, Stays> byMethod,
            int size,
            Optional<String> name,
            Method most) {
        byMethod.forEach((method, stood) -> {
            if (stood.count > 0) {
                Usual where = usual(units.containsKey(new Key(size, method)) ? method : most, size);
                Decimal weeks = tenths(stood.days, (long) DAYS_OF_A_WEEK * stood.count);
                grown.add(new Grown(
                        method,
                        which,
                        stood.count,
                        weeks,
                        where.container(),
                        where.place(),
                        tariff.growingOn(method, name, where.container(), where.place(), weeks)));
            }
        });
    }

    /** Return what some of those that were grown on cost together, for each of so many. */
    private static Total share(List<Grown> grown, Grown.Which which, int among) {
        Total all = Total.NOTHING;
        for (Grown one : grown) {
            if (one.which() == which) {
                all = all.plus(total(one.charges()).times(BigFraction.of(one.count(), among)));
            }
        }
        return all;
    }

    /** Return what one of some trees sells for, the mean of them; empty where one of them has no price. */
    private Optional<Cost> price(Map<Integer, Integer> cultivars, Optional<String> size, Set<String> missing) {
        if (size.isEmpty()) {
            missing.add("what is sold ungraded has no price");
            return Optional.empty();
        }
        BigFraction sum = BigFraction.ZERO;
        int count = 0;
        boolean bare = false;
        for (Map.Entry<Integer, Integer> some : cultivars.entrySet()) {
            if (some.getValue() <= 0) {
                continue;
            }
            Optional<CultivarName> cultivar = some.getKey() < 0
                    ? Optional.empty()
                    : Optional.of(samples.snapshot().cultivars().get(some.getKey()));
            Optional<Cost> each = tariff.price(size.get(), cultivar).map(Cost::of);
            if (each.isEmpty()) {
                bare = true;
                missing.add("no price of \"" + size.get() + "\" is listed"
                        + cultivar.map(name -> " for " + name).orElse(""));
            } else {
                currencies.add(each.get().currency());
                sum = sum.add(each.get().value().multiply(some.getValue()));
            }
            count += some.getValue();
        }
        return bare || count == 0 || currencies.isEmpty()
                ? Optional.empty()
                : Optional.of(new Cost(sum.divide(count), currencies.iterator().next()));
    }

    // ---- where such trees stand ----

    private Usual usual(Method method, int size) {
        return usual.computeIfAbsent(new Key(size, method), this::usual);
    }

    /** Return the container and the place in which trees of a size class and method stood the most days. */
    private Usual usual(Key key) {
        TreeMap<Integer, Integer> all = units.getOrDefault(key, new TreeMap<>());
        int[] numbers = all.keySet().stream().mapToInt(Integer::intValue).toArray();
        Map<Optional<String>, Long> containers = new HashMap<>();
        Map<Optional<String>, Long> places = new HashMap<>();
        int looked = Math.min(LOOKED_AT, numbers.length);
        IntStream.range(0, looked)
                .map(at -> numbers[(int) ((long) at * numbers.length / looked)])
                .forEach(number -> {
                    LocalDate until = LocalDate.ofEpochDay(all.get(number));
                    view.facts(new UnitNumber(number)).ifPresent(facts -> {
                        List<UnitFacts.Potting> pottings = facts.pottings();
                        for (int at = 0; at < pottings.size(); at++) {
                            LocalDate next = at + 1 < pottings.size()
                                    ? pottings.get(at + 1).day().first()
                                    : until;
                            stood(
                                    containers,
                                    pottings.get(at).container(),
                                    pottings.get(at).day().first(),
                                    next,
                                    until);
                        }
                        List<UnitFacts.Stay> stays = facts.stays();
                        for (int at = 0; at < stays.size(); at++) {
                            LocalDate next = at + 1 < stays.size()
                                    ? stays.get(at + 1).day().first()
                                    : until;
                            stood(
                                    places,
                                    Optional.of(stays.get(at).place().name()),
                                    stays.get(at).day().first(),
                                    next,
                                    until);
                        }
                    });
                });
        return new Usual(longest(containers), longest(places).map(Place::new));
    }

    private static void stood(
            Map<Optional<String>, Long> days, Optional<String> where, LocalDate from, LocalDate next, LocalDate until) {
        LocalDate end = next.isBefore(until) ? next : until;
        if (from.isBefore(end)) {
            days.merge(where, end.toEpochDay() - from.toEpochDay(), Long::sum);
        }
    }

    private static Optional<String> longest(Map<Optional<String>, Long> days) {
        return days.entrySet().stream()
                .max(Map.Entry.<Optional<String>, Long>comparingByValue()
                        .thenComparing(one -> one.getKey().orElse("")))
                .flatMap(Map.Entry::getKey);
    }

    // ---- sums ----

    private void meet(List<Charge> charges) {
        charges.forEach(charge -> charge.cost().ifPresent(cost -> currencies.add(cost.currency())));
    }

    /** Return the sum of charges in one currency; empty where one has no price. */
    static Optional<Cost> sum(List<Charge> charges) {
        return cost(total(charges));
    }

    private static Total total(List<Charge> charges) {
        Total total = Total.NOTHING;
        for (Charge charge : charges) {
            total = total.plus(charge, BigFraction.ONE);
        }
        return total;
    }

    private static Optional<Cost> cost(Total total) {
        return total.notPriced() == 0 ? total.cost() : Optional.empty();
    }

    /** Return a quotient to a tenth. */
    static Decimal tenths(long part, long of) {
        return Decimal.of(BigDecimal.valueOf(part).divide(BigDecimal.valueOf(of), 1, RoundingMode.HALF_EVEN));
    }
}
