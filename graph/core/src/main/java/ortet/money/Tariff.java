package ortet.money;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.BookView;
import ortet.book.Listed;
import ortet.book.UnitFacts.Method;
import ortet.entry.CostListed;
import ortet.entry.Per;
import ortet.entry.PriceListed;
import ortet.entry.Task;
import ortet.money.Charge.Sort;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.value.Amount;
import ortet.value.Decimal;
import ortet.value.Money;

/**
 * What things cost and sell for on one day: of several listings of one thing the latest up to that day.
 *
 * <p>What is listed for a container counts for that container before what is listed for none; what is listed for a place
 * counts there and in all places listed within it, the nearest first, before what is listed for none; a price of a cultivar
 * counts before that of its botanical name, and that before the price of all. What nobody listed is empty, never zero.
 * Immutable.
 */
public final class Tariff {
    /** The word by which a price is listed for trees sold without a size class. */
    public static final String UNGRADED = "ungraded";

    /** Days of a year of bench. */
    static final int DAYS_OF_A_YEAR = 365;

    private static final int DAYS_OF_A_WEEK = 7;

    /** Acts by which units come to be; a rootstock is bought in for a graft. */
    private static final Set<Task> SETTING =
            Set.of(Task.LAYER_SET, Task.CUTTINGS_STRUCK, Task.ACQUIRED, Task.GRAFT_WORKED, Task.SEED_SOWN);

    private final Map<Key, Listed> costs = new LinkedHashMap<>();
    private final Map<PriceKey, Listed> prices = new LinkedHashMap<>();
    private final Map<Place, Place> within;

    private record PriceKey(String size, Optional<CultivarName> cultivar) {}

    /**
     * Make the tariff of a day.
     *
     * @param listed what was listed up to its day, in the order in which it came to hold
     * @param within the larger place that each place is listed in
     */
    Tariff(List<Listed> listed, Map<Place, Place> within) {
        this.within = Map.copyOf(within);
        for (Listed one : listed) {
            if (one.entry() instanceof CostListed cost) {
                costs.remove(Key.of(cost));
                costs.put(Key.of(cost), one);
            } else if (one.entry() instanceof PriceListed price) {
                PriceKey key = new PriceKey(Key.plain(price.size()), price.cultivar());
                prices.remove(key);
                prices.put(key, one);
            }
        }
    }

    /** Return the tariff in force on a day, as the book tells it. */
    public static Tariff of(BookView view, LocalDate asOf) {
        return Tariffs.of(view, asOf).on(asOf);
    }

    /** Return the costs in force, as listed, in the order in which they came to hold. */
    public List<Listed> costs() {
        return List.copyOf(costs.values());
    }

    /** Return the prices in force, as listed, in the order in which they came to hold. */
    public List<Listed> prices() {
        return List.copyOf(prices.values());
    }

    /** Return the currencies in which costs and prices in force are listed, each with the number of its first entry. */
    public SortedMap<String, Long> currencies() {
        SortedMap<String, Long> first = new TreeMap<>();
        for (Listed one : prices.values()) {
            first.merge(((PriceListed) one.entry()).price().currency().getCurrencyCode(), one.order(), Math::min);
        }
        for (Listed one : costs.values()) {
            ((CostListed) one.entry())
                    .amount()
                    .ifPresent(amount -> first.merge(amount.currency().getCurrencyCode(), one.order(), Math::min));
        }
        return first;
    }

    // ---- what is listed ----

    /** Return what one tree of a size class sells for; upper and lower case are alike. */
    public Optional<Money> price(String size, Optional<CultivarName> cultivar) {
        String plain = Key.plain(size);
        Set<Optional<CultivarName>> names = new LinkedHashSet<>();
        cultivar.ifPresent(name -> {
            names.add(Optional.of(name));
            taxa(name).forEach(taxon -> names.add(Optional.of(taxon)));
        });
        names.add(Optional.empty());
        return names.stream()
                .map(name -> prices.get(new PriceKey(plain, name)))
                .filter(Objects::nonNull)
                .findFirst()
                .map(listed -> ((PriceListed) listed.entry()).price());
    }

    /** Return the botanical names that a cultivar is under, the narrowest first: the taxon, and so on to the genus. */
    private static List<CultivarName> taxa(CultivarName name) {
        List<CultivarName> taxa = new ArrayList<>();
        String species = name.species();
        while (true) {
            taxa.add(new CultivarName(name.genus(), species, Optional.empty()));
            if (species.isEmpty()) {
                return taxa;
            }
            int rank = species.replaceAll(" (subsp\\.|var\\.|f\\.) \\S+$", "").length();
            species = rank < species.length() ? species.substring(0, rank) : "";
        }
    }

    /** Return what an hour of work costs, of one act or of work in general. */
    public Optional<Amount> wage(Optional<Task> task) {
        return wageListed(task).flatMap(listed -> ((CostListed) listed.entry()).amount());
    }

    private Optional<Listed> wageListed(Optional<Task> task) {
        return first(task.isPresent() ? List.of(Key.hour(task), Key.hour(Optional.empty())) : List.of(Key.hour(task)));
    }

    /** Return what one square metre costs for a year at a place, or anywhere. */
    public Optional<Amount> bench(Optional<Place> place) {
        return benchListed(place).flatMap(listed -> ((CostListed) listed.entry()).amount());
    }

    private Optional<Listed> benchListed(Optional<Place> place) {
        return first(around(place).stream().map(Key::bench).toList());
    }

    /**
     * Return how many units stand on one square metre: as listed for the container, the size class and the place, where all
     * that the listing names is so; a listing that names the container counts before one that does not, then one that names
     * the size class, then the nearest place.
     */
    public Optional<Decimal> unitsPerM2(Optional<String> container, Optional<String> size, Optional<Place> place) {
        return spaceListed(container, size, place).flatMap(listed -> ((CostListed) listed.entry()).unitsPerM2());
    }

    private Optional<Listed> spaceListed(Optional<String> container, Optional<String> size, Optional<Place> place) {
        List<Key> keys = new ArrayList<>();
        for (Optional<String> pot : orNone(container)) {
            for (Optional<String> graded : orNone(size)) {
                for (Optional<Place> where : around(place)) {
                    keys.add(Key.space(where, pot, graded));
                }
            }
        }
        return first(keys);
    }

    /** Return what a material costs for one unit, alone or for a container. */
    public Optional<Amount> material(String material, Optional<String> container) {
        return materialListed(material, container, Per.UNIT).flatMap(listed -> ((CostListed) listed.entry()).amount());
    }

    private Optional<Listed> materialListed(String material, Optional<String> container, Per per) {
        return first(orNone(container).stream()
                .map(pot -> Key.material(material, pot, per))
                .toList());
    }

    private Optional<Listed> workListed(Task task, Optional<String> container, Per per) {
        return first(
                orNone(container).stream().map(pot -> Key.work(task, pot, per)).toList());
    }

    private Optional<Listed> first(Collection<Key> keys) {
        return keys.stream().map(costs::get).filter(Objects::nonNull).findFirst();
    }

    private static List<Optional<String>> orNone(Optional<String> words) {
        return words.isPresent() ? List.of(words, Optional.empty()) : List.of(Optional.empty());
    }

    /** Return a place, then those around it, then none. */
    private List<Optional<Place>> around(Optional<Place> place) {
        List<Optional<Place>> around = new ArrayList<>();
        Set<Place> met = new HashSet<>();
        Optional<Place> at = place;
        while (at.isPresent() && met.add(at.get())) {
            around.add(at);
            at = Optional.ofNullable(within.get(at.get()));
        }
        around.add(Optional.empty());
        return around;
    }

    // ---- what it makes ----

    /**
     * Return what an act costs for some units under one tag: its hours, and what it costs besides, per unit and per tag.
     *
     * @param units how many; empty when nobody has counted them
     */
    public List<Charge> work(Task task, Optional<String> container, Optional<Integer> units) {
        return work(task, container, units, 1);
    }

    private List<Charge> work(Task task, Optional<String> container, Optional<Integer> units, int tags) {
        List<Charge> charges = new ArrayList<>();
        String what = words(task);
        for (Per per : List.of(Per.UNIT, Per.TAG)) {
            workListed(task, container, per)
                    .ifPresent(listed -> work(
                            listed, what, task, times(per, units, tags).map(BigFraction::of), Sort.HOURS, charges));
        }
        if (charges.isEmpty()) {
            charges.add(Charge.notPriced(
                    Sort.WORK, what, BigFraction.ZERO, "no cost of \"" + what + "\" is listed", List.of()));
        }
        return charges;
    }

    /**
     * Return what going to mothers costs at an act: the way, and tools laid out and put away, once for each mother however
     * many units are set on her. None where nobody listed it.
     *
     * @param mothers to how many, or the share of a going to one that some of its units carry
     */
    public List<Charge> visits(Task task, BigFraction mothers) {
        List<Charge> charges = new ArrayList<>();
        workListed(task, Optional.empty(), Per.MOTHER)
                .ifPresent(listed -> work(
                        listed, words(task) + ", for each mother", task, Optional.of(mothers), Sort.VISIT, charges));
        return charges;
    }

    private void work(
            Listed listed, String what, Task task, Optional<BigFraction> times, Sort sort, List<Charge> charges) {
        CostListed cost = (CostListed) listed.entry();
        if (times.isEmpty()) {
            charges.add(Charge.notPriced(
                    Sort.WORK, what, BigFraction.ZERO, "nobody has counted the units", List.of(listed.order())));
            return;
        }
        BigFraction factor = times.get();
        Sort besides = sort == Sort.HOURS ? Sort.WORK : sort;
        cost.hours().ifPresent(hours -> {
            BigFraction all = Fractions.of(hours.value()).multiply(factor);
            Optional<Listed> wage = wageListed(Optional.of(task));
            if (wage.isEmpty()) {
                charges.add(Charge.notPriced(sort, what, all, "no cost of an hour is listed", List.of(listed.order())));
                return;
            }
            Amount hourly = ((CostListed) wage.get().entry()).amount().orElseThrow();
            charges.add(Charge.priced(
                    sort,
                    what,
                    all,
                    Cost.of(hourly).times(all),
                    times(factor, hours + " h") + " × " + hourly,
                    List.of(listed.order(), wage.get().order())));
        });
        cost.amount()
                .ifPresent(amount -> charges.add(Charge.priced(
                        besides,
                        what,
                        BigFraction.ZERO,
                        Cost.of(amount).times(factor),
                        times(factor, amount.toString()),
                        List.of(listed.order()))));
    }

    /**
     * Return what a material costs for some units under one tag.
     *
     * @param units how many; empty when nobody has counted them
     */
    public List<Charge> material(String material, Optional<String> container, Optional<Integer> units) {
        return material(material, container, units, 1);
    }

    /**
     * Return what a material costs for some units under so many tags.
     *
     * @param units how many; empty when nobody has counted them
     * @param tags under how many tags they stand
     */
    public List<Charge> material(String material, Optional<String> container, Optional<Integer> units, int tags) {
        List<Charge> charges = new ArrayList<>();
        for (Per per : List.of(Per.UNIT, Per.TAG)) {
            materialListed(material, container, per).ifPresent(listed -> {
                Amount amount = ((CostListed) listed.entry()).amount().orElseThrow();
                Optional<Integer> times = times(per, units, tags);
                charges.add(
                        times.isEmpty()
                                ? Charge.notPriced(
                                        Sort.MATERIAL,
                                        material,
                                        BigFraction.ZERO,
                                        "nobody has counted the units",
                                        List.of(listed.order()))
                                : Charge.priced(
                                        Sort.MATERIAL,
                                        material,
                                        BigFraction.ZERO,
                                        Cost.of(amount).times(BigFraction.of(times.get())),
                                        times(BigFraction.of(times.get()), amount.toString()),
                                        List.of(listed.order())));
            });
        }
        if (charges.isEmpty()) {
            charges.add(Charge.notPriced(
                    Sort.MATERIAL, material, BigFraction.ZERO, "no cost of \"" + material + "\" is listed", List.of()));
        }
        return charges;
    }

    /**
     * Return what standing on a bench, or in the ground, costs: units times days, by 365, by units on a square metre, times
     * the cost of a square metre for a year.
     *
     * @param units how many; empty when nobody has counted them
     */
    public Charge bench(
            Optional<Place> place,
            Optional<String> container,
            Optional<String> size,
            Optional<Integer> units,
            long days) {
        String what = place.map(where -> "at " + where).orElse("place not known");
        Optional<Listed> space = spaceListed(container, size, place);
        Optional<Listed> rate = benchListed(place);
        List<Long> sources = new ArrayList<>();
        space.map(Listed::order).ifPresent(sources::add);
        rate.map(Listed::order).ifPresent(sources::add);
        Optional<String> missing = units.isEmpty()
                ? Optional.of("nobody has counted the units")
                : space.isEmpty()
                        ? Optional.of("nothing lists how many stand on a square metre"
                                + container
                                        .map(pot -> " in " + pot)
                                        .or(() -> place.map(where -> " at " + where))
                                        .orElse(""))
                        : rate.isEmpty()
                                ? Optional.of("no cost of a bench is listed"
                                        + place.map(where -> " for " + where).orElse(""))
                                : Optional.empty();
        BigFraction area = BigFraction.ZERO;
        if (units.isPresent() && space.isPresent()) {
            Decimal perM2 = ((CostListed) space.get().entry()).unitsPerM2().orElseThrow();
            area = BigFraction.of(BigInteger.valueOf(units.get()).multiply(BigInteger.valueOf(days)))
                    .divide(BigFraction.of(DAYS_OF_A_YEAR))
                    .divide(Fractions.of(perM2.value()));
        }
        if (missing.isPresent()) {
            return new Charge(Sort.BENCH, what, BigFraction.ZERO, area, Optional.empty(), missing, "", sources);
        }
        Amount yearly = ((CostListed) rate.orElseThrow().entry()).amount().orElseThrow();
        Decimal perM2 = ((CostListed) space.orElseThrow().entry()).unitsPerM2().orElseThrow();
        return new Charge(
                Sort.BENCH,
                what,
                BigFraction.ZERO,
                area,
                Optional.of(Cost.of(yearly).times(area)),
                Optional.empty(),
                units.orElseThrow() + " × " + days + " days / 365 / " + perM2 + " on a m² × " + yearly,
                sources);
    }

    /**
     * Return what raising one unit by a method to a size class takes, if it comes to nothing amiss: setting, striking,
     * working (with a rootstock bought in) or sowing; severing or drawing; potting once; and its time on the bench. What
     * those that fail cost is not in it: divide by the share that is expected to take.
     *
     * @param container what it is potted into, where that is known
     * @param place where it stands, where that is known
     * @param weeks how long it stands on the bench, in weeks
     */
    public Raising raising(
            Method method, String size, Optional<String> container, Optional<Place> place, Decimal weeks) {
        List<Charge> charges = new ArrayList<>();
        for (Task task : steps(method)) {
            Optional<String> into = task == Task.POTTED ? container : Optional.empty();
            boolean aBatch = method == Method.CUTTING || method == Method.SEED;
            for (Per per : List.of(Per.UNIT, Per.TAG)) {
                Optional<Listed> listed = workListed(task, into, per);
                if (listed.isPresent() && per == Per.TAG && aBatch && task != Task.POTTED) {
                    charges.add(Charge.notPriced(
                            Sort.WORK,
                            words(task),
                            BigFraction.ZERO,
                            "it is listed for a tag, and how many units that will have is not known",
                            List.of(listed.get().order())));
                } else {
                    listed.ifPresent(
                            one -> work(one, words(task), task, Optional.of(BigFraction.ONE), Sort.HOURS, charges));
                }
            }
            if (workListed(task, into, Per.UNIT).isEmpty()
                    && workListed(task, into, Per.TAG).isEmpty()) {
                charges.addAll(work(task, into, Optional.of(1)));
            }
        }
        container.ifPresent(pot -> charges.addAll(material(pot, container, Optional.of(1))));
        charges.add(bench(place, container, Optional.of(size), weeks));
        return new Raising(method, size, charges);
    }

    private Charge bench(Optional<Place> place, Optional<String> container, Optional<String> size, Decimal weeks) {
        Charge day = bench(place, container, size, Optional.of(1), 1);
        BigFraction days = Fractions.of(weeks.value()).multiply(BigFraction.of(DAYS_OF_A_WEEK));
        return new Charge(
                day.sort(),
                place.isPresent() ? day.what() : weeks + " weeks on the bench",
                day.hours(),
                day.m2Years().multiply(days),
                day.cost().map(cost -> cost.times(days)),
                day.missing(),
                day.isPriced() ? day.how().replace("1 × 1 days", weeks + " weeks × 7 days") : "",
                day.sources());
    }

    /**
     * Return the work of setting, striking, working (with a rootstock bought in for each) or sowing some units.
     *
     * @param units how many
     * @param tags under how many tags they were set
     */
    public List<Charge> setting(Method method, int units, int tags) {
        return steps(method).stream()
                .filter(task -> SETTING.contains(task))
                .flatMap(task -> work(task, Optional.empty(), Optional.of(units), tags).stream())
                .toList();
    }

    /** Return what going to mothers costs when units of a method are set. */
    public List<Charge> visits(Method method, int mothers) {
        return switch (method) {
            case LAYER -> visits(Task.LAYER_SET, BigFraction.of(mothers));
            case CUTTING -> visits(Task.CUTTINGS_STRUCK, BigFraction.of(mothers));
            case GRAFT -> visits(Task.GRAFT_WORKED, BigFraction.of(mothers));
            case SEED -> List.of();
        };
    }

    private static List<Task> steps(Method method) {
        return switch (method) {
            case LAYER -> List.of(Task.LAYER_SET, Task.SEVERED, Task.POTTED);
            case CUTTING -> List.of(Task.CUTTINGS_STRUCK, Task.DRAWN, Task.POTTED);
            case GRAFT -> List.of(Task.ACQUIRED, Task.GRAFT_WORKED, Task.POTTED);
            case SEED -> List.of(Task.SEED_SOWN, Task.DRAWN, Task.POTTED);
        };
    }

    private static Optional<Integer> times(Per per, Optional<Integer> units, int tags) {
        return per == Per.TAG ? Optional.of(tags) : units;
    }

    private static String times(BigFraction times, String what) {
        return times.equals(BigFraction.ONE) ? what : times.toString().replace(" ", "") + " × " + what;
    }

    static String words(Task task) {
        return task.kind().word().replace('-', ' ');
    }
}
