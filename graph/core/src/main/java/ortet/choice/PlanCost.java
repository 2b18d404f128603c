package ortet.choice;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.UnitFacts.Method;
import ortet.entry.Task;
import ortet.money.Charge;
import ortet.money.Tariff;
import ortet.money.Total;
import ortet.nursery.Treatment;
import ortet.value.Decimal;
import ortet.yield.Outcomes.Cohort;

/**
 * What a plan takes: work, material and bench, by the costs in force on the cut-off day.
 *
 * @param lines one for each thing that costs, or has no cost listed
 * @param total of all; its cost is empty where nothing has a price
 */
public record PlanCost(List<Line> lines, Total total) {
    private static final int DAYS_OF_A_WEEK = 7;
    private static final String OF_A_TAG = "it is listed for a tag";
    private static final int THOUSANDTHS = 1_000;

    /**
     * One thing that costs.
     *
     * @param charge for one unit
     * @param units of how many units it is expected to be spent
     * @param isMaterial whether it is a material, of which so many portions are needed
     */
    public record Line(Charge charge, double units, boolean isMaterial) {}

    public PlanCost {
        lines = List.copyOf(lines);
        Objects.requireNonNull(total);
    }

    /** Return what has no price, in words, each once. */
    public Set<String> missing() {
        Set<String> missing = new LinkedHashSet<>();
        lines.forEach(line -> line.charge()
                .missing()
                .ifPresent(why -> missing.add(
                        why.startsWith(OF_A_TAG)
                                ? line.charge().what() + " (" + why.substring("it is ".length()) + ")"
                                : why)));
        return missing;
    }

    /**
     * Work out what a plan takes.
     *
     * @param toSet how many are set
     * @param taken how many are expected to take
     * @param days how long each of those stands on the bench
     * @param own the cohorts of the cultivar and method, whose usual materials are reckoned with
     * @param pot into what they are potted first, and where that stands
     * @param mothers to how many mothers somebody goes
     */
    static PlanCost of(
            Tariff tariff,
            Method method,
            Optional<String> size,
            int toSet,
            double taken,
            long days,
            List<Cohort> own,
            List<Treatment> treatments,
            PlanPots.Pot pot,
            int mothers) {
        List<Line> lines = new ArrayList<>();
        Decimal weeks = Decimal.of(BigDecimal.valueOf(Math.max(0, days))
                .divide(BigDecimal.valueOf(DAYS_OF_A_WEEK), 1, RoundingMode.HALF_EVEN));
        for (Charge charge : tariff.raising(method, size.orElse("any"), pot.container(), pot.place(), weeks)
                .charges()) {
            lines.add(new Line(
                    charge, isOfSetting(charge, method) ? toSet : taken, charge.sort() == Charge.Sort.MATERIAL));
        }
        for (Charge charge : tariff.visits(method, 1)) {
            lines.add(new Line(charge, mothers, false));
        }
        for (Function<Treatment, Optional<String>> what : List.<Function<Treatment, Optional<String>>>of(
                Treatment::medium, Treatment::wrap, Treatment::hormone)) {
            usual(own, treatments, what)
                    .ifPresent(material -> tariff.material(material, Optional.empty(), Optional.of(1))
                            .forEach(charge ->
                                    lines.add(new Line(ofOne(charge, tariff, material, method), toSet, true))));
        }
        Total total = Total.NOTHING;
        for (Line line : lines) {
            total = total.plus(line.charge(), BigFraction.of(Math.round(line.units() * THOUSANDTHS), THOUSANDTHS));
        }
        return new PlanCost(lines, total);
    }

    static boolean isOfSetting(Charge charge, Method method) {
        Set<Task> first = switch (method) {
            case LAYER -> Set.of(Task.LAYER_SET);
            case CUTTING -> Set.of(Task.CUTTINGS_STRUCK);
            case GRAFT -> Set.of(Task.ACQUIRED, Task.GRAFT_WORKED);
            case SEED -> Set.of(Task.SEED_SOWN);
        };
        return first.stream().map(task -> task.kind().word().replace('-', ' ')).anyMatch(charge.what()::equals);
    }

    /** Return a charge for one unit, without a price where it is listed for a tag and many units share one. */
    private static Charge ofOne(Charge charge, Tariff tariff, String material, Method method) {
        boolean isPerTag = charge.cost().isPresent()
                && tariff.material(material, Optional.empty()).isEmpty();
        if (method != Method.CUTTING || !isPerTag) {
            return charge;
        }
        return new Charge(
                charge.sort(),
                charge.what(),
                charge.hours(),
                charge.m2Years(),
                Optional.empty(),
                Optional.of("\"" + material + "\" is listed for a tag, and how many units that will have is not known"),
                "",
                charge.sources());
    }

    /** Return the words that most of what was set had; absent where nobody wrote any. */
    private static Optional<String> usual(
            List<Cohort> own, List<Treatment> treatments, Function<Treatment, Optional<String>> what) {
        Map<String, Integer> counts = new HashMap<>();
        for (Cohort cohort : own) {
            if (cohort.treatment() >= 0) {
                what.apply(treatments.get(cohort.treatment()))
                        .ifPresent(word -> counts.merge(word, cohort.tally().set(), Integer::sum));
            }
        }
        return counts.entrySet().stream()
                .max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey);
    }
}
