package ortet.choice;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The whole integer programme: for each mother a flow through her states, and whole numbers of layers and cuttings on every
 * arc that sets some. Arcs through which even the best path falls short of the best plan known, by the bound of the
 * relaxation, are left out; that loses no better plan.
 */
final class Whole {
    private static final double ROUNDING = 1e-6;
    /** A search that may branch less often is not begun: its root alone takes longer than it is worth. */
    private static final int FEWEST = 20;

    private final Paths paths;
    private final Layout layout;

    /** A deed in a state of a year, with its variable. */
    private record Step(int year, int state, int arc, MPVariable variable, List<Lot> lots) {}

    private record Lot(int band, int product, MPVariable count) {}

    /** The best plan found: a path for each mother, what it is worth and a bound. */
    record Answer(Path[] paths, double bound) {}

    Whole(Paths paths) {
        this.paths = paths;
        this.layout = paths.layout;
    }

    /**
     * Solve.
     *
     * @param ask what is asked
     * @param seconds after how long to stop
     * @param gap by what share the best found may fall short of the best
     * @param work after how many branchings times variables to stop
     * @return the best plan worth at least what is known; empty when none was found
     */
    Optional<Answer> solve(Ask ask, double seconds, double gap, int work) {
        try (Programme programme = new Programme(paths, Programme.Kind.INTEGER, ask.mayOverrun())) {
            Priced priced = new Priced(layout, paths.products, ask.prices());
            Walk walk = new Walk(layout);
            double slack = ask.bound() - ask.known() + ROUNDING * Math.max(1, Math.abs(ask.bound()));
            for (int at = 0; at < paths.stocks.length; at++) {
                if (ask.fixed()[at] != null) {
                    slack -= lost(walk, priced, at, ask.fixed()[at]);
                }
            }
            Path[] answer = ask.fixed().clone();
            List<List<Step>> steps = new ArrayList<>();
            for (int at = 0; at < answer.length; at++) {
                int who = at;
                if (answer[at] == null) {
                    Optional<Deed> not =
                            ask.barred().filter(one -> one.mother() == who).map(Barred::deed);
                    List<Step> open = steps(programme, priced, walk, at, Math.max(0, slack), not);
                    if (open.isEmpty()) {
                        return Optional.empty(); // whatever she may still do is too far from the best
                    }
                    steps.add(open);
                } else {
                    programme.fixed(paths.column(at, answer[at]));
                    steps.add(List.of());
                }
            }
            int nodes = programme.nodes(work);
            if (nodes < FEWEST || !programme.solve(seconds, gap, nodes)) {
                return Optional.empty();
            }
            for (int at = 0; at < answer.length; at++) {
                if (answer[at] == null) {
                    answer[at] = path(steps.get(at));
                }
            }
            return Optional.of(new Answer(answer, programme.bound()));
        }
    }

    /** Return by how much a path falls short of a mother's best, at the prices. */
    private double lost(Walk walk, Priced priced, int at, Path path) {
        double best = walk.of(paths.stocks[at], priced, paths.takings[at], paths.woodFactors[at], 1);
        return Math.max(0, best - paths.worth(at, path, priced.prices));
    }

    /**
     * What is asked.
     *
     * @param prices at which arcs are judged
     * @param bound of every plan at these prices
     * @param known a plan worth less than this is of no use
     * @param barred a mother who may not begin with some deed
     * @param mayOverrun whether hours and room may be overrun, at their price
     * @param fixed the path of each mother who stays as she is; null for the others
     */
    record Ask(
            double[] prices, double bound, double known, Optional<Barred> barred, boolean mayOverrun, Path[] fixed) {}

    /** A deed that a mother may not begin with. */
    record Barred(int mother, Deed deed) {}

    private List<Step> steps(Programme programme, Priced priced, Walk walk, int at, double slack, Optional<Deed> not) {
        Stock stock = paths.stocks[at];
        Shape shape = stock.shape;
        double best = walk.of(stock, priced, paths.takings[at], paths.woodFactors[at], 1);
        double[][] reach = new double[layout.years + 1][];
        MPConstraint[][] flow = new MPConstraint[layout.years][];
        for (int year = 0; year <= layout.years; year++) {
            reach[year] = new double[shape.states(year)];
            Arrays.fill(reach[year], Double.NEGATIVE_INFINITY);
            if (year < layout.years) {
                flow[year] = new MPConstraint[shape.states(year)];
            }
        }
        reach[0][0] = 0;
        List<Step> steps = new ArrayList<>();
        int[] wood = new int[stock.bands + 1];
        for (int year = 0; year < layout.years; year++) {
            for (int state = 0; state < shape.states(year); state++) {
                if (reach[year][state] == Double.NEGATIVE_INFINITY) {
                    continue;
                }
                Shape.Arc[] arcs = shape.arcs(year, state);
                for (int number = 0; number < arcs.length; number++) {
                    Shape.Arc arc = arcs[number];
                    boolean isBarred =
                            year == 0 && not.isPresent() && not.orElseThrow() == stock.named(year, state, arc);
                    double worth = stock.isOpen(arc) && !isBarred
                            ? walk.arc(year, state, arc, paths.woodFactors[at])
                            : Double.NEGATIVE_INFINITY;
                    double through = reach[year][state] + worth + (arc.next() < 0 ? 0 : walk.at(year + 1, arc.next()));
                    if (through == Double.NEGATIVE_INFINITY || through < best - slack) {
                        continue;
                    }
                    if (arc.next() >= 0) {
                        reach[year + 1][arc.next()] = Math.max(reach[year + 1][arc.next()], reach[year][state] + worth);
                    }
                    steps.add(step(programme, priced, walk, at, year, state, number, wood, slack - (best - through)));
                    if (flow[year][state] == null) {
                        flow[year][state] = programme.exactly(year == 0 ? 1 : 0);
                    }
                    flow[year][state].setCoefficient(steps.get(steps.size() - 1).variable(), 1);
                    if (arc.next() >= 0 && year + 1 < layout.years) {
                        if (flow[year + 1][arc.next()] == null) {
                            flow[year + 1][arc.next()] = programme.exactly(0);
                        }
                        flow[year + 1][arc.next()].setCoefficient(
                                steps.get(steps.size() - 1).variable(), -1);
                    }
                }
            }
        }
        return steps;
    }

    /** Add an arc and what it may set; with the slack that is left for it, whatever costs more than that is left out. */
    private Step step(
            Programme programme,
            Priced priced,
            Walk walk,
            int at,
            int year,
            int state,
            int number,
            int[] wood,
            double slack) {
        Stock stock = paths.stocks[at];
        Shape.Arc arc = stock.shape.arcs(year, state)[number];
        MPVariable taken = programme.variable(1, Path.column(layout, paths.products, stock, year, state, arc), true);
        List<Lot> lots = new ArrayList<>();
        if (arc.deed().sets()) {
            stock.wood(year, arc, paths.woodFactors[at], wood);
            boolean cuttings = arc.deed() == Deed.TAKE_CUTTINGS;
            int trial = arc.deed() == Deed.TRY_OUT
                    ? stock.mother.trial().orElseThrow().layers()
                    : 0;
            MPConstraint some = trial > 0 ? programme.exactly(0) : programme.atLeast(0);
            some.setCoefficient(taken, trial > 0 ? -trial : -1);
            for (int band = cuttings ? stock.bands : 0; band < (cuttings ? stock.bands + 1 : stock.bands); band++) {
                int[] ways = cuttings ? stock.cuttingProducts : stock.layerProducts[band];
                if (wood[band] == 0 || ways.length == 0) {
                    continue;
                }
                double unit = walk.unit(year, band);
                double best = trial > 0 ? unit : Math.max(0, unit);
                MPConstraint room = programme.atMost(0);
                room.setCoefficient(taken, -wood[band]);
                boolean mustUse = trial == 0 && unit > 0 && slack < wood[band] * unit;
                MPConstraint least = mustUse ? programme.atLeast(0) : room;
                if (mustUse) {
                    least.setCoefficient(taken, -(wood[band] - Math.floor(slack / unit)));
                }
                for (int product : ways) {
                    double lost = best - walk.unit(priced, paths.takings[at], year, band, product);
                    int most = lost * wood[band] <= slack ? wood[band] : (int) Math.max(1, slack / lost);
                    Column column = new Column();
                    Path.addUnits(column, layout, paths.products, stock, paths.takings[at], year, band, product, 1);
                    MPVariable count = programme.variable(most, column, true);
                    room.setCoefficient(count, 1);
                    some.setCoefficient(count, 1);
                    if (mustUse) {
                        least.setCoefficient(count, 1);
                    }
                    lots.add(new Lot(band, product, count));
                }
            }
        }
        return new Step(year, state, number, taken, lots);
    }

    private Path path(List<Step> steps) {
        int[] states = new int[layout.years];
        int[] arcs = new int[layout.years];
        List<Integer> sets = new ArrayList<>();
        int years = 0;
        for (Step step : steps) {
            if (step.variable().solutionValue() > 0.5) {
                states[step.year()] = step.state();
                arcs[step.year()] = step.arc();
                years = Math.max(years, step.year() + 1);
                for (Lot lot : step.lots()) {
                    int count = (int) Math.rint(lot.count().solutionValue());
                    if (count > 0) {
                        sets.addAll(List.of(step.year(), lot.band(), lot.product(), count));
                    }
                }
            }
        }
        return new Path(
                Arrays.copyOf(states, years),
                Arrays.copyOf(arcs, years),
                sets.stream().mapToInt(Integer::intValue).toArray());
    }
}
