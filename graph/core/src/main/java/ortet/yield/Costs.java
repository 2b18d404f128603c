package ortet.yield;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntUnaryOperator;
import java.util.stream.Stream;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.BookView;
import ortet.book.Event;
import ortet.book.History;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Method;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Mention.Role;
import ortet.entry.Task;
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
 * Works out what one saleable tree of each size class costs on either side of a comparison, all of it by the tariff of the
 * cut-off day; the definitions are in docs/methods/yield.md.
 *
 * <p>What was set is counted in whole and linear in the nursery. What growing on costs is read from the timelines of at most
 * {@value #LOOKED_AT} tags of each side, size class and method, spread evenly over them; so it takes as long in a large
 * nursery as in a small one.
 */
final class Costs {
    /** Of how many tags of one kind the timeline is read. */
    private static final int LOOKED_AT = 20;

    private static final int DAYS_OF_A_WEEK = 7;
    private static final int NO_SIZE = -1;
    private static final List<String> MATERIALS = List.of("container", "medium", "wrap", "hormone");
    private static final Set<EntryKind> SETTING =
            Set.of(EntryKind.LAYER_SET, EntryKind.CUTTINGS_STRUCK, EntryKind.GRAFT_WORKED, EntryKind.SEED_SOWN);

    private final BookView view;
    private final Samples samples;
    private final Cohorts cohorts;
    private final Lives lives;
    private final Fates fates;
    private final Treated treated;
    private final Stand stand;
    private final Tariff tariff;
    private final LocalDate asOf;
    private final Map<Kind, Lot> lots = new TreeMap<>();
    private final Map<Integer, UnitFacts> facts = new HashMap<>();
    private final Set<Currency> currencies = new LinkedHashSet<>();

    /** Trees of one side that came to one end; the size class is none but for saleable ones. */
    private record Kind(int code, Grown.Which which, int size, Method method) implements Comparable<Kind> {
        private static final Comparator<Kind> ORDER = Comparator.comparingInt(Kind::code)
                .thenComparing(Kind::which)
                .thenComparingInt(Kind::size)
                .thenComparing(Kind::method);

        @Override
        public int compareTo(Kind other) {
            return ORDER.compare(this, other);
        }
    }

    /** How many trees of a kind there are, how long they stood, and their tags. */
    private static final class Lot {
        private final TreeMap<Integer, Tagged> tags = new TreeMap<>();
        private final TreeMap<Integer, Integer> cultivars = new TreeMap<>();
        private int count;
        private long days;
    }

    /** Plants under one tag: how many, until when, and in which row they were set. */
    private record Tagged(int unit, int row, int count, int end) {
        Tagged and(Tagged other) {
            return new Tagged(unit, row, count + other.count, Math.max(end, other.end));
        }
    }

    /**
     * Prepare to work out costs.
     *
     * @param code the code of a row's account: the side of a comparison, from 0; below 0 for what is in none
     */
    Costs(
            BookView view,
            Samples samples,
            Fates fates,
            Treated treated,
            Stand stand,
            Tariff tariff,
            IntUnaryOperator code) {
        this.view = view;
        this.samples = samples;
        this.cohorts = samples.cohorts();
        this.lives = samples.snapshot().lives();
        this.fates = fates;
        this.treated = treated;
        this.stand = stand;
        this.tariff = tariff;
        this.asOf = samples.snapshot().asOf();
        for (int event = 0; event < fates.events(); event++) {
            int one = code.applyAsInt(fates.eventRow(event));
            if (one >= 0) {
                add(event, one);
            }
        }
    }

    private void add(int event, int code) {
        int row = fates.eventRow(event);
        int count = fates.eventCount(event);
        Grown.Which which = switch (fates.eventSale(event)) {
            case YES -> Grown.Which.SALEABLE;
            case NO -> Grown.Which.LOST;
            case CENSORED, GROWING_ON -> Grown.Which.OPEN;
        };
        int size = which == Grown.Which.SALEABLE ? fates.eventSize(event) : NO_SIZE;
        Lot lot = lots.computeIfAbsent(new Kind(code, which, size, cohorts.method(row)), key -> new Lot());
        lot.count += count;
        lot.days += (long) count * Math.max(0, fates.eventEnd(event) - standsFrom(row));
        lot.cultivars.merge(samples.cultivar(row), count, Integer::sum);
        lot.tags.merge(
                fates.eventUnit(event),
                new Tagged(fates.eventUnit(event), row, count, fates.eventEnd(event)),
                Tagged::and);
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
     * Return what raising costs on a side; the sums are worth telling only if all is in one currency in the end.
     *
     * @param rows the rows that count
     * @param raised how their units stand as to being fit for sale
     */
    SideCost of(int code, int[] rows, Raised raised) {
        List<Charge> setting = setting(rows);
        List<Grown> carried = new ArrayList<>();
        TreeMap<Integer, List<Grown>> grown = new TreeMap<>();
        TreeMap<Integer, TreeMap<Integer, Integer>> cultivars = new TreeMap<>();
        lots.forEach((kind, lot) -> {
            if (kind.code() == code && lot.count > 0) {
                Grown one = grown(kind, lot);
                if (kind.which() == Grown.Which.SALEABLE) {
                    grown.computeIfAbsent(kind.size(), key -> new ArrayList<>()).add(one);
                    lot.cultivars.forEach((name, count) -> cultivars
                            .computeIfAbsent(kind.size(), key -> new TreeMap<>())
                            .merge(name, count, Integer::sum));
                } else {
                    carried.add(one);
                }
            }
        });
        List<ClassCost> classes = new ArrayList<>();
        grown.forEach((size, some) -> classes.add(ofClass(size, some, cultivars.get(size), setting, carried, raised)));
        classes.sort(Comparator.comparing((ClassCost one) -> one.size().isEmpty())
                .thenComparing(one -> one.size().orElse("")));
        return new SideCost(
                raised.counting() + raised.withdrawn(), raised.yes(), raised.unknown(), setting, carried, classes);
    }

    // ---- setting ----

    /** Return what setting all units of some rows costs: the work by method, the materials by what was used. */
    private List<Charge> setting(int[] rows) {
        List<Charge> charges = new ArrayList<>();
        Map<Method, List<Integer>> byMethod = new TreeMap<>();
        Map<String, List<Integer>> byMaterial = new TreeMap<>();
        for (int row : rows) {
            if (samples.set(row) <= 0) {
                continue;
            }
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
            charges.addAll(tariff.setting(method, units(some), tags(some)));
            charges.addAll(tariff.visits(method, visits(some)));
        });
        byMaterial.forEach((material, some) ->
                charges.addAll(tariff.material(material, Optional.empty(), Optional.of(units(some)), tags(some))));
        meet(charges.stream());
        return charges;
    }

    private int units(List<Integer> rows) {
        return rows.stream().mapToInt(samples::set).sum();
    }

    /** Return how often somebody went to a mother for some rows: once for all that was taken from her on one day. */
    private int visits(List<Integer> rows) {
        Map<List<Integer>, Integer> goings = new HashMap<>();
        rows.forEach(row -> goings.put(
                List.of(samples.mother(row), cohorts.firstDay(row)),
                samples.mother(row) < 0 ? samples.several(samples.mother(row)).size() : 1));
        return goings.values().stream().mapToInt(Integer::intValue).sum();
    }

    private int tags(List<Integer> rows) {
        Stood stood = stand.of(rows.stream().mapToInt(Integer::intValue).toArray(), 0, rows.size());
        return stood.batches() + stood.singles();
    }

    // ---- growing on ----

    /** Return what growing one tree of a lot on cost, on average over the tags looked at. */
    private Grown grown(Kind kind, Lot lot) {
        List<Tagged> tags =
                lot.tags.values().stream().filter(tag -> tag.count() > 0).toList();
        int looked = Math.min(LOOKED_AT, tags.size());
        List<Tagged> chosen = new ArrayList<>();
        for (int at = 0; at < looked; at++) {
            chosen.add(tags.get((int) ((long) at * tags.size() / looked)));
        }
        int trees = chosen.stream().mapToInt(Tagged::count).sum();
        Optional<String> size = kind.size() >= 0 && kind.size() < lives.sizes().size()
                ? Optional.of(lives.sizes().get(kind.size()))
                : Optional.empty();
        Map<String, Total> parts = new TreeMap<>();
        Set<String> missing = new TreeSet<>();
        for (Tagged tag : chosen) {
            for (Map.Entry<Charge, BigFraction> one : charges(tag, size).entrySet()) {
                Charge charge = one.getKey();
                charge.missing().ifPresent(missing::add);
                charge.cost().ifPresent(cost -> currencies.add(cost.currency()));
                if (currencies.size() < 2) {
                    Total share = Total.NOTHING.plus(charge, one.getValue().divide(trees));
                    parts.merge(charge.sort() == Charge.Sort.BENCH ? "bench" : charge.what(), share, Total::plus);
                }
            }
        }
        return new Grown(
                kind.method(),
                kind.which(),
                lot.count,
                tags.size(),
                looked,
                tenths(lot.days, (long) DAYS_OF_A_WEEK * lot.count),
                parts,
                missing);
    }

    /** Return what growing the plants of a tag on cost them all, each charge with how often it counts. */
    private Map<Charge, BigFraction> charges(Tagged tag, Optional<String> size) {
        Map<Charge, BigFraction> charges = new LinkedHashMap<>();
        LocalDate end = LocalDate.ofEpochDay(tag.end());
        UnitNumber unit = new UnitNumber(tag.unit());
        for (Event event : History.of(view, unit, end)) {
            boolean itself = event.begins() || event.roles().contains(Role.SUBJECT);
            boolean sells = event.entry().kind() == EntryKind.SOLD;
            if (!itself || sells || SETTING.contains(event.entry().kind())) {
                continue;
            }
            Map<String, String> texts = new LinkedHashMap<>();
            MATERIALS.forEach(column -> Form.write(event.entry(), column).ifPresent(text -> texts.put(column, text)));
            Optional<String> pot = Optional.ofNullable(texts.get("container"));
            Optional<Integer> units = Optional.of(tag.count());
            Task.of(event.entry().kind())
                    .ifPresent(
                            task -> tariff.work(task, pot, units).forEach(one -> count(charges, one, BigFraction.ONE)));
            texts.values()
                    .forEach(material ->
                            tariff.material(material, pot, units).forEach(one -> count(charges, one, BigFraction.ONE)));
        }
        LocalDate from = LocalDate.ofEpochDay(standsFrom(tag.row()));
        int set = cohorts.unit(tag.row());
        LocalDate begun = LocalDate.ofEpochDay(samples.snapshot().begunDay(tag.unit()));
        if (set != tag.unit() && from.isBefore(begun)) {
            bench(set, from, begun, size, tag.count(), charges);
        }
        bench(tag.unit(), from.isAfter(begun) ? from : begun, end, size, tag.count(), charges);
        return charges;
    }

    /** Add what standing from one day to another cost, container by container and place by place. */
    private void bench(
            int unit,
            LocalDate from,
            LocalDate to,
            Optional<String> size,
            int count,
            Map<Charge, BigFraction> charges) {
        UnitFacts its = facts.computeIfAbsent(
                unit, number -> view.facts(new UnitNumber(number)).orElseThrow());
        TreeSet<LocalDate> changes = new TreeSet<>();
        changes.add(from);
        its.pottings().forEach(potting -> changes.add(potting.day().first()));
        its.stays().forEach(stay -> changes.add(stay.day().first()));
        for (LocalDate begin : changes.subSet(from, to)) {
            LocalDate next = Optional.ofNullable(changes.higher(begin))
                    .filter(to::isAfter)
                    .orElse(to);
            count(
                    charges,
                    tariff.bench(place(its, begin), container(its, begin), size, Optional.of(count), 1),
                    BigFraction.of(next.toEpochDay() - begin.toEpochDay()));
        }
    }

    /** Return the place on a day; before the first that is told, that. */
    private static Optional<Place> place(UnitFacts facts, LocalDate day) {
        return facts.stays().stream()
                .filter(stay -> !stay.day().first().isAfter(day))
                .reduce((before, after) -> after)
                .or(() -> facts.stays().stream().findFirst())
                .map(UnitFacts.Stay::place);
    }

    private static Optional<String> container(UnitFacts facts, LocalDate day) {
        return facts.pottings().stream()
                .filter(potting -> !potting.day().first().isAfter(day))
                .reduce((before, after) -> after)
                .or(() -> facts.pottings().stream().findFirst())
                .flatMap(UnitFacts.Potting::container);
    }

    private static void count(Map<Charge, BigFraction> charges, Charge charge, BigFraction times) {
        charges.merge(charge, times, BigFraction::add);
    }

    // ---- size classes ----

    private ClassCost ofClass(
            int size,
            List<Grown> grown,
            Map<Integer, Integer> cultivars,
            List<Charge> setting,
            List<Grown> carried,
            Raised raised) {
        Optional<String> name =
                size < lives.sizes().size() ? Optional.of(lives.sizes().get(size)) : Optional.empty();
        int count = grown.stream().mapToInt(Grown::count).sum();
        Set<String> missing = new LinkedHashSet<>();
        setting.forEach(charge -> charge.missing().ifPresent(missing::add));
        Stream.concat(grown.stream(), carried.stream()).forEach(one -> missing.addAll(one.missing()));
        boolean whole = missing.isEmpty();
        Optional<Cost> price = price(cultivars, name, missing);
        if (currencies.size() > 1 || !whole) {
            return new ClassCost(name, count, grown, Optional.empty(), Optional.empty(), price, List.copyOf(missing));
        }
        int known = raised.yes();
        int hoped = known + raised.unknown();
        Total set = total(setting);
        Total own = share(grown, Grown.Which.SALEABLE, count);
        Total least = set.times(BigFraction.of(1, hoped)).plus(own).plus(share(carried, Grown.Which.LOST, hoped));
        Total most = set.times(BigFraction.of(1, known))
                .plus(own)
                .plus(share(carried, Grown.Which.LOST, known))
                .plus(share(carried, Grown.Which.OPEN, known));
        return new ClassCost(name, count, grown, least.cost(), most.cost(), price, List.copyOf(missing));
    }

    /** Return what those of one kind cost together, for each of so many. */
    private static Total share(List<Grown> grown, Grown.Which which, int among) {
        return grown.stream()
                .filter(one -> one.which() == which)
                .map(one -> one.total().times(BigFraction.of(one.count(), among)))
                .reduce(Total.NOTHING, Total::plus);
    }

    /** Return what one of some trees sells for, the mean of them; empty where one of them has no price. */
    private Optional<Cost> price(Map<Integer, Integer> cultivars, Optional<String> size, Set<String> missing) {
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
            Optional<Cost> each =
                    tariff.price(size.orElse(Tariff.UNGRADED), cultivar).map(Cost::of);
            if (each.isEmpty()) {
                bare = true;
                size.ifPresent(word -> missing.add("no price of \"" + word + "\" is listed"
                        + cultivar.map(name -> " for " + name).orElse("")));
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

    // ---- sums ----

    private void meet(Stream<Charge> charges) {
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
