package ortet.choice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ortet.book.BookView;
import ortet.money.Total;
import ortet.nursery.Snapshot;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Where;

/**
 * Plans for several orders that share the nursery's mothers: the one wanted first is served first, and the positions that
 * it uses are gone for the next. An order without a method gets the cheapest that can be met, where the costs of all that can
 * are listed in full, else the one with the fewest to set; where none can be met, the one by which most can be had.
 *
 * @param filled the orders in the order of their days, with their plans
 * @param total what those that are set for take together
 * @param uses how much of the limited hours and room all of them use; none where nothing is limited
 */
public record PlanOrders(List<Filled> filled, Total total, List<PlanMeans.Use> uses) {
    /**
     * An order with its plan.
     *
     * @param order the order
     * @param plan the plan made for it, out of the wood that the orders before it had left
     * @param had how many trees of it can be had as sure as asked: all, or fewer; absent where nobody can tell
     */
    public record Filled(PlanOrder order, Plan plan, Optional<Integer> had) {
        /** Return how many trees are missing; absent where nobody can tell. */
        public Optional<Integer> missing() {
            return had.map(count -> order.question().wanted() - count);
        }
    }

    public PlanOrders {
        filled = List.copyOf(filled);
        uses = List.copyOf(uses);
    }

    /**
     * Return the plans out of a snapshot with the parts that {@link Plans#parts} names.
     *
     * @throws Refused when an order names a cultivar or a size class that the book does not know; every such place is named
     */
    public static PlanOrders ask(BookView view, Snapshot snapshot, List<PlanOrder> orders) {
        return ask(view, snapshot, orders, Optional.empty());
    }

    /**
     * Return the plans for orders that share hours and room as well as mothers.
     *
     * @param means hours and room that there are; empty for no limit
     */
    public static PlanOrders ask(BookView view, Snapshot snapshot, List<PlanOrder> orders, Optional<PlanMeans> means) {
        check(view, snapshot, orders);
        PlanMaker maker = new PlanMaker(view, snapshot, means);
        List<PlanOrder> sorted = new ArrayList<>(orders);
        sorted.sort(
                Comparator.comparing((PlanOrder order) -> order.question().by()).thenComparing(PlanOrder::where));
        List<Filled> filled = new ArrayList<>();
        Total total = Total.NOTHING;
        for (PlanOrder order : sorted) {
            Plan plan = best(maker.plans(order.question()));
            maker.use(plan);
            if (plan.answer().isPresent()) {
                total = total.plus(plan.answer().get().cost().total());
            }
            filled.add(new Filled(
                    order,
                    plan,
                    plan.answer().isPresent()
                            ? Optional.of(order.question().wanted())
                            : plan.shortfall().orElseThrow().most()));
        }
        return new PlanOrders(filled, total, means.map(PlanMeans::uses).orElse(List.of()));
    }

    private static void check(BookView view, Snapshot snapshot, List<PlanOrder> orders) {
        List<Fault> faults = new ArrayList<>();
        for (PlanOrder order : orders) {
            try {
                Plans.names(view, snapshot, order.question().cultivar());
            } catch (Refused unknown) {
                unknown.faults().forEach(fault -> faults.add(fault.at(column(order, "cultivar"))));
            }
            Optional<String> size = order.question().size();
            if (size.isPresent() && snapshot.lives().sizes().stream().noneMatch(size.get()::equalsIgnoreCase)) {
                faults.add(Fault.of(
                                "unknown-size",
                                "nothing was ever graded in the size class \"" + size.get() + "\"; there are "
                                        + String.join(", ", snapshot.lives().sizes()))
                        .at(column(order, "size")));
            }
        }
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
    }

    private static Where column(PlanOrder order, String column) {
        return new Where(order.where().file(), order.where().line(), Optional.of(column));
    }

    private static Plan best(List<Plan> plans) {
        List<Plan> met =
                plans.stream().filter(plan -> plan.answer().isPresent()).toList();
        if (met.isEmpty()) {
            return plans.stream()
                    .max(Comparator.comparingInt(
                            plan -> plan.shortfall().orElseThrow().most().orElse(-1)))
                    .orElseThrow();
        }
        boolean isPriced = met.stream()
                .map(plan -> plan.answer().orElseThrow().cost())
                .allMatch(
                        cost -> cost.missing().isEmpty() && cost.total().cost().isPresent());
        Comparator<Plan> fewest =
                Comparator.comparingInt(plan -> plan.answer().orElseThrow().toSet());
        Comparator<Plan> cheapest = Comparator.comparing(plan ->
                plan.answer().orElseThrow().cost().total().cost().orElseThrow().value());
        return met.stream()
                .min(isPriced ? cheapest.thenComparing(fewest) : fewest)
                .orElseThrow();
    }
}
