package ortet.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import ortet.book.Progress;

/**
 * Chooses what to do with each mother, this year and in the years after, so that the aim is served best within what the
 * nursery has.
 *
 * <p>The programme is an integer one; {@code docs/methods/choice.md} has it whole. Its relaxation gives the worth of hours,
 * room and trees, and a bound of every plan. A handful of mothers goes whole to a branch-and-bound solver; of more, each
 * follows one of her best paths, and the plan is bettered mother by mother. The same question gets the same answer, unless
 * the time limit strikes. Safe for use by several threads.
 */
public final class Chooser {
    /** How many times as many mothers are solved anew in parts as in one. */
    private static final int PARTS = 5;

    private Chooser() {}

    /**
     * Choose.
     *
     * @throws ortet.value.Unavailable when the solver does not run on this kind of computer
     */
    public static Choice choose(ChoiceQuestion question, Progress progress) {
        Settings settings = question.settings();
        Deadline late = Deadline.in(
                settings.draws() > 0 ? settings.atMost().multipliedBy(3).dividedBy(4) : settings.atMost());
        Deadline end = Deadline.in(settings.atMost());
        Paths paths = Paths.planned(question);
        List<PartPlans.One> planned = new PartPlans(
                        settings, late, progress, ForkJoinPool.getCommonPoolParallelism() + 1)
                .of(Parts.of(paths));
        List<Parts.Part> parts = planned.stream().map(PartPlans.One::part).toList();
        List<Planner.Plan> plans = planned.stream().map(PartPlans.One::plan).toList();
        boolean anew = paths.stocks.length <= PARTS * settings.anewUpTo()
                && parts.stream().allMatch(part -> part.members().length <= settings.anewUpTo());
        Planner.Plan plan = new Planner(settings.gap(), late, progress).together(paths, parts, plans);
        Surety surety = new Surety(paths, plan, parts, plans, anew, end, progress);
        return answer(paths, plan, surety, parts.stream().allMatch(part -> Planner.isExact(part.paths())));
    }

    private static Choice answer(Paths paths, Planner.Plan plan, Surety surety, boolean whole) {
        Layout layout = paths.layout;
        Priced priced = new Priced(layout, paths.products, plan.prices());
        Reasoning reasoning = new Reasoning(paths, plan.prices());
        int[] same = surety.same();
        List<Advice> advice = new ArrayList<>();
        Walk walk = new Walk(layout);
        for (int at = 0; at < paths.stocks.length; at++) {
            Stock stock = paths.stocks[at];
            Path path = plan.paths()[at];
            Deed chosen = deed(stock, path, 0);
            walk.of(stock, priced, paths.takings[at], 1, 1);
            advice.add(new Advice(
                    stock.mother.key(),
                    planned(paths, at, path),
                    paths.worth(at, path, plan.prices()) + path.reluctance(layout, stock),
                    new Sureness(same[at], surety.draws(), surety.way()),
                    surety.next(at, walk, chosen),
                    reasoning.of(at, path, chosen)));
        }
        Account account = plan.account();
        return new Choice(
                plan.isBest() ? Choice.Status.BEST : Choice.Status.STOPPED,
                account.worth(),
                plan.bound(),
                account.margin(),
                Double.isNaN(account.met()) ? Optional.empty() : Optional.of(account.met()),
                advice,
                resources(layout, account, plan.prices()),
                sales(layout, account, plan.prices()),
                surety.outlook(),
                whole);
    }

    static Deed deed(Stock stock, Path path, int year) {
        int state = path.states()[year];
        return stock.named(year, state, stock.shape.arcs(year, state)[path.arcs()[year]]);
    }

    private static List<Planned> planned(Paths paths, int at, Path path) {
        Stock stock = paths.stocks[at];
        List<Planned> years = new ArrayList<>();
        for (int year = 0; year < path.arcs().length; year++) {
            List<ToSet> sets = new ArrayList<>();
            for (int i = 0; i < path.sets().length; i += Path.WIDTH) {
                if (path.sets()[i] == year) {
                    Products.Product product = paths.products.all.get(path.sets()[i + 2]);
                    int band = path.sets()[i + 1];
                    sets.add(new ToSet(
                            product.method(),
                            product.method() == Method.CUTTING ? 0 : band,
                            product.raising().key(),
                            path.sets()[i + 3]));
                }
            }
            years.add(new Planned(year, deed(stock, path, year), sets));
        }
        return years;
    }

    private static List<ResourceUse> resources(Layout layout, Account account, double[] prices) {
        List<ResourceUse> all = new ArrayList<>();
        double[] use = account.use();
        for (int row = 0; row < layout.firstSales; row++) {
            double used = use[row];
            if (layout.isShare(row)) {
                Resource resource = layout.resource(row);
                int concentration = layout.concentrationOf(row);
                used -= layout.share(concentration) * use[layout.rows + concentration * layout.years + resource.year()];
            }
            all.add(new ResourceUse(layout.resource(row), used, layout.available[row], prices[row]));
        }
        return all;
    }

    private static List<Sales> sales(Layout layout, Account account, double[] prices) {
        List<Sales> all = new ArrayList<>();
        List<Outlet> outlets = layout.question.outlets();
        for (int outlet = 0; outlet < outlets.size(); outlet++) {
            for (int year = 0; year < layout.allYears; year++) {
                double ready = 0;
                double sold = 0;
                double price = 0;
                double most = 0;
                double demand = outlets.get(outlet).demandIn(year);
                for (int scenario = 0; scenario < layout.scenarios; scenario++) {
                    int row = layout.sales(outlet, year, scenario);
                    ready += Math.max(0, -account.use()[row]) / layout.scenarios;
                    sold += Math.min(Math.max(0, -account.use()[row]), demand) / layout.scenarios;
                    price += prices[row];
                    most += layout.most[row];
                }
                all.add(new Sales(
                        outlets.get(outlet).cultivar(),
                        outlets.get(outlet).sizeClass(),
                        year,
                        demand,
                        ready,
                        sold,
                        Math.max(0, most - price),
                        price));
            }
        }
        return all;
    }
}
