package ortet.money;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.BookView;
import ortet.book.Link;
import ortet.book.Lookup;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Nature;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Refused;

/**
 * What a unit has cost up to a day, from its setting on.
 *
 * <p>{@code own} is what was spent on the unit itself, with its share of what was spent on the tray, batch or rootstock that
 * it comes from. Those of its cohort that failed cost something too, and bring nothing: {@code failures} is what one that did
 * not fail carries of that. Both are told apart and together. For a batch they are of all that ever stood under its tag.
 *
 * @param tag the tag as asked for
 * @param unit the unit
 * @param nature what it is
 * @param asOf the day
 * @param priced the day whose tariff prices all of it; empty where each act is priced by the tariff of its own day
 * @param ever how many units there ever were under the tag; empty where nobody counted them
 * @param failed how many of them failed, were withdrawn or were not seen again
 * @param here how many are there; empty where nobody counted them
 * @param parts of all that was spent on them, in the order of their days
 * @param failedParts of what one that did not fail carries of those of its cohort that failed, in the order of their days
 * @param lostParts of what went with those of the unit that failed, in the order of their days
 * @param survives whether there is one that did not fail, so that it can carry those that did
 * @param coarse whether a day that counts is known to the month or the year only
 */
public record TreeCost(
        Tag tag,
        UnitNumber unit,
        Nature nature,
        LocalDate asOf,
        Optional<LocalDate> priced,
        Optional<Integer> ever,
        int failed,
        Optional<Integer> here,
        List<CostPart> parts,
        List<CostPart> failedParts,
        List<CostPart> lostParts,
        boolean survives,
        boolean coarse) {

    public TreeCost {
        Objects.requireNonNull(tag);
        Objects.requireNonNull(unit);
        Objects.requireNonNull(nature);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(priced);
        Objects.requireNonNull(ever);
        Objects.requireNonNull(here);
        parts = List.copyOf(parts);
        failedParts = List.copyOf(failedParts);
        lostParts = List.copyOf(lostParts);
    }

    /**
     * Work out what a unit has cost.
     *
     * @param priced the day whose tariff prices all of it; empty prices each act by the tariff of its own day
     * @throws Refused when there is no such unit, or none yet on that day, or its costs are in several currencies
     */
    public static TreeCost of(BookView view, Tag tag, LocalDate asOf, Optional<LocalDate> priced) {
        UnitNumber unit = Lookup.unit(view, tag);
        LocalDate last = priced.filter(day -> day.isAfter(asOf)).orElse(asOf);
        Tariffs tariffs = Tariffs.of(view, last);
        return new Asking(view, asOf, priced.map(tariffs::always).orElse(tariffs)).cost(tag, unit, priced);
    }

    /** Return what was spent, on all of the units together. */
    public Total spent() {
        return total(parts);
    }

    /** Return of what was spent what went with those that failed. */
    public Total lost() {
        return total(lostParts);
    }

    /** Return how many did not fail; empty where nobody counted. */
    public Optional<Integer> survivors() {
        return ever.map(units -> units - failed);
    }

    /** Return what one cost that did not fail: all that was spent on those that did not, by their number. */
    public Optional<Total> own() {
        if (!survives || survivors().filter(units -> units > 0).isEmpty()) {
            return Optional.empty();
        }
        BigFraction each = BigFraction.of(1, survivors().get());
        Total own = spent().plus(lost().times(BigFraction.ONE.negate())).times(each);
        return Optional.of(own.without(spent().notPriced()));
    }

    /** Return what one that did not fail carries of those of its cohort that failed. */
    public Total failures() {
        return total(failedParts);
    }

    /** Return what one cost that did not fail, with what it carries of those that failed. */
    public Optional<Total> whole() {
        long bare = Stream.concat(parts.stream(), failedParts.stream())
                .map(CostPart::line)
                .filter(line -> !line.charge().isPriced())
                .distinct()
                .count();
        return own().map(cost -> cost.plus(failures()).without((int) bare));
    }

    private static Total total(List<CostPart> parts) {
        Total total = Total.NOTHING;
        for (CostPart part : parts) {
            total = total.plus(part.line().charge(), part.share());
        }
        return total;
    }

    /** Works it out. */
    private static final class Asking {
        private final BookView view;
        private final LocalDate asOf;
        private final Spender spender;
        private final Map<UnitNumber, Optional<Pool>> burdens = new LinkedHashMap<>();

        Asking(BookView view, LocalDate asOf, Tariffs tariffs) {
            this.view = view;
            this.asOf = asOf;
            this.spender = new Spender(view, asOf, tariffs);
        }

        TreeCost cost(Tag tag, UnitNumber unit, Optional<LocalDate> priced) {
            UnitFacts facts = spender.facts(unit);
            if (facts.begun().day().first().isAfter(asOf)) {
                throw Refused.because(
                        "before-it-began", tag + " began on " + facts.begun().day() + ", after " + asOf);
            }
            Spending spending = spender.of(unit);
            Optional<Pool> burden = burden(unit);
            TreeCost cost = new TreeCost(
                    tag,
                    unit,
                    facts.nature(),
                    asOf,
                    priced,
                    spending.ever,
                    spending.failures,
                    spending.units,
                    inOrder(spending.spent),
                    burden.map(Asking::inOrder).orElse(List.of()),
                    inOrder(spending.failed),
                    burden.isPresent(),
                    spender.isCoarse());
            refuseMixture(cost);
            return cost;
        }

        private static List<CostPart> inOrder(Pool pool) {
            List<CostPart> parts = new ArrayList<>(pool.list());
            parts.sort(Comparator.comparing((CostPart part) -> part.line().day())
                    .thenComparing(part -> part.line().entry()));
            return parts;
        }

        /** Return what one of a unit that did not fail carries of those that failed; nothing where none is left to. */
        private Optional<Pool> burden(UnitNumber unit) {
            Optional<Pool> known = burdens.get(unit);
            if (known == null) {
                known = work(unit);
                burdens.put(unit, known);
            }
            return known;
        }

        private Optional<Pool> work(UnitNumber unit) {
            UnitFacts facts = spender.facts(unit);
            Spending spending = spender.of(unit);
            Optional<Integer> survivors = spending.ever.map(ever -> ever - spending.failures);
            if (survivors.filter(units -> units <= 0).isPresent()) {
                return Optional.empty();
            }
            if (survivors.isEmpty()) {
                return Optional.of(new Pool());
            }
            Pool all = new Pool();
            for (Link link : facts.links()) {
                if (link.day().first().isAfter(asOf)) {
                    continue;
                }
                switch (link.act()) {
                    case DRAWN_FROM, SPLIT_FROM, MERGED_FROM, ROOTSTOCK_OF -> {
                        int units = link.count().or(() -> begunWith(facts)).orElse(1);
                        burden(link.mother()).ifPresent(each -> all.add(each, BigFraction.of(units)));
                    }
                    default -> {}
                }
            }
            all.add(spending.failed, BigFraction.ONE);
            Pool each = all.times(BigFraction.of(1, survivors.get()));
            each.add(ofItsKind(unit, facts), BigFraction.ONE);
            return Optional.of(each);
        }

        private Optional<Integer> begunWith(UnitFacts facts) {
            return facts.standings().stream()
                    .findFirst()
                    .flatMap(first -> first.pending().map(pending -> pending + first.growing()));
        }

        /** Return what one carries of those that were set singly by the same entry, and failed. */
        private Pool ofItsKind(UnitNumber unit, UnitFacts facts) {
            Pool failed = new Pool();
            boolean singly = facts.nature() != Nature.BATCH
                    && facts.cohort()
                            .filter(cohort -> cohort.order() == facts.begun().order())
                            .isPresent();
            if (!singly) {
                return failed;
            }
            int first = unit.value() - facts.begun().position();
            int tags = view.entry(facts.begun().order())
                    .map(recorded -> recorded.entry().tags().size())
                    .orElse(0);
            int survivors = 0;
            for (int at = 0; at < tags; at++) {
                UnitNumber one = new UnitNumber(first + at);
                if (view.facts(one)
                        .filter(its -> its.begun().order() == facts.begun().order())
                        .isEmpty()) {
                    continue;
                }
                Spending spending = spender.of(one);
                if (spending.failures > 0) {
                    failed.add(spending.failed, BigFraction.ONE);
                } else {
                    survivors++;
                }
            }
            return survivors == 0 ? new Pool() : failed.times(BigFraction.of(1, survivors));
        }

        /** Refuse to add what is in several currencies. */
        private static void refuseMixture(TreeCost cost) {
            Map<String, TreeSet<Long>> entries = new TreeMap<>();
            List<CostPart> all = new ArrayList<>(cost.parts());
            all.addAll(cost.failedParts());
            for (CostPart part : all) {
                Charge charge = part.line().charge();
                charge.cost()
                        .ifPresent(price -> entries.computeIfAbsent(
                                        price.currency().getCurrencyCode(), code -> new TreeSet<>())
                                .addAll(charge.sources()));
            }
            if (entries.size() > 1) {
                List<String> told = new ArrayList<>();
                entries.forEach((code, orders) -> told.add(code + " (listed in #" + orders.first() + ")"));
                throw new Refused(Fault.of(
                        "mixed-currencies",
                        "what " + cost.tag() + " cost is in " + String.join(" and ", told)
                                + " and cannot be added; list all of it in one currency"));
            }
        }
    }
}
