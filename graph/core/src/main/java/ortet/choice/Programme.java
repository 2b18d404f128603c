package ortet.choice;

import com.google.ortools.Loader;
import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.value.Defect;
import ortet.value.Unavailable;

/** A linear or integer programme with the shared rows in it, held by the solver; to be closed. */
final class Programme implements AutoCloseable {
    /** Which algorithm solves it. */
    enum Kind {
        /** Simplex. */
        SIMPLEX("GLOP"),
        /** Branch and bound. */
        INTEGER("SCIP");

        private final String solver;

        Kind(String solver) {
            this.solver = solver;
        }
    }

    /**
     * Few cuts at the root, none below it, and no large neighbourhoods: on programmes of this shape a branching then takes a
     * fiftieth of the time, and the search ends sooner.
     */
    private static final String CUTS =
            "separating/maxroundsroot = 5\nseparating/maxrounds = 0\nheuristics/alns/freq = -1\n";

    /**
     * Simplex now and then goes in circles. Programmes here take less than half a step for each row and variable; one that
     * takes ten times as many is begun anew, and then given up.
     */
    private static final int STEPS_EACH = 5;

    private static final int MOST_STEPS = 1000;
    private static final double INFINITY = Double.POSITIVE_INFINITY;

    private final Layout layout;
    private final Kind kind;
    private final MPSolver solver;
    private final MPObjective objective;
    /** By row; empty for those that have no say. */
    private final List<Optional<MPConstraint>> rows = new ArrayList<>();

    private final MPConstraint[] totals;
    private final List<MPVariable> variables = new ArrayList<>();

    Programme(Paths paths, Kind kind, boolean mayOverrun) {
        this.layout = paths.layout;
        this.kind = kind;
        this.solver = solver(kind);
        this.objective = solver.objective();
        objective.setMaximization();
        this.totals = new MPConstraint[layout.concentrations() * layout.years];
        for (int row = 0; row < layout.rows; row++) {
            rows.add(paths.rows[row] ? Optional.of(row(row, mayOverrun)) : Optional.empty());
        }
        for (int at = 0; at < layout.concentrations(); at++) {
            int concentration = at;
            for (int year = 0; year < layout.years; year++) {
                MPConstraint total = solver.makeConstraint(0, 0);
                MPVariable all = variable(0, INFINITY, 0, false);
                total.setCoefficient(all, -1);
                totals[at * layout.years + year] = total;
                for (int row : layout.shares(at, year)) {
                    rows.get(row).ifPresent(share -> share.setCoefficient(all, -layout.share(concentration)));
                }
            }
        }
    }

    private MPConstraint row(int row, boolean mayOverrun) {
        if (layout.isSales(row)) {
            MPConstraint sales = atMost(0);
            sales.setCoefficient(variable(0, layout.available[row], layout.most[row], false), 1);
            if (layout.least[row] > 0) {
                sales.setCoefficient(variable(0, INFINITY, layout.least[row], false), 1);
            }
            return sales;
        }
        MPConstraint limit = atMost(layout.available[row]);
        if (mayOverrun && Double.isFinite(layout.most[row])) {
            limit.setCoefficient(variable(0, INFINITY, -layout.most[row], false), -1);
        }
        return limit;
    }

    private static MPSolver solver(Kind kind) {
        try {
            synchronized (Programme.class) {
                Loader.loadNativeLibraries();
            }
        } catch (RuntimeException | UnsatisfiedLinkError e) {
            throw new Unavailable(
                    "the solver does not run on this kind of computer (" + System.getProperty("os.name") + ", "
                            + System.getProperty("os.arch") + ")",
                    e);
        }
        MPSolver solver = MPSolver.createSolver(kind.solver);
        if (solver == null) {
            throw new Defect("no solver " + kind.solver);
        }
        return solver;
    }

    /** Add a variable that is at least 0. */
    MPVariable variable(double least, double most, double money, boolean whole) {
        MPVariable variable = solver.makeVar(least, most, whole && kind == Kind.INTEGER, "");
        if (money != 0) {
            objective.setCoefficient(variable, money);
        }
        return variable;
    }

    MPConstraint atMost(double most) {
        return solver.makeConstraint(-INFINITY, most);
    }

    MPConstraint atLeast(double least) {
        return solver.makeConstraint(least, INFINITY);
    }

    MPConstraint exactly(double figure) {
        return solver.makeConstraint(figure, figure);
    }

    /** Add a variable with what it brings and uses. */
    MPVariable variable(double most, Column column, boolean whole) {
        MPVariable variable = variable(0, most, column.money, whole);
        for (int i = 0; i < column.size; i++) {
            int row = column.rows[i];
            double amount = column.amounts[i];
            Optional<MPConstraint> shared = row < layout.rows ? rows.get(row) : Optional.of(totals[row - layout.rows]);
            shared.ifPresent(
                    constraint -> constraint.setCoefficient(variable, constraint.getCoefficient(variable) + amount));
        }
        return variable;
    }

    /** Add what stays as it is. */
    void fixed(Column column) {
        variable(1, column, false).setLb(1);
    }

    /**
     * Solve it.
     *
     * @param seconds after how long to stop
     * @param gap by what share the best found may fall short of the best
     * @param nodes after how many branchings to stop; unlike the time, this stops at the same place on every computer
     * @return whether there is an answer
     */
    boolean solve(double seconds, double gap, int nodes) {
        if (kind == Kind.INTEGER) {
            solver.setSolverSpecificParametersAsString("limits/nodes = " + nodes + "\n" + CUTS);
        }
        if (kind == Kind.SIMPLEX) {
            solver.setSolverSpecificParametersAsString("max_number_of_iterations: "
                    + (MOST_STEPS + STEPS_EACH * (solver.numConstraints() + solver.numVariables())));
        }
        solver.setTimeLimit(Math.max(1, (long) (seconds * 1000)));
        // what was added since may have spoilt the basis from which simplex goes on; then it begins anew
        return solve(gap, true) || kind == Kind.SIMPLEX && solve(gap, false);
    }

    private boolean solve(double gap, boolean goesOn) {
        MPSolverParameters parameters = new MPSolverParameters();
        parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, gap);
        parameters.setIntegerParam(
                MPSolverParameters.IntegerParam.INCREMENTALITY,
                (goesOn
                                ? MPSolverParameters.IncrementalityValues.INCREMENTALITY_ON
                                : MPSolverParameters.IncrementalityValues.INCREMENTALITY_OFF)
                        .swigValue());
        MPSolver.ResultStatus found = solver.solve(parameters);
        parameters.delete();
        return found == MPSolver.ResultStatus.OPTIMAL
                || found == MPSolver.ResultStatus.FEASIBLE && (kind == Kind.INTEGER || !goesOn);
    }

    /** Return after how many branchings a search may stop, so that it takes about as long as others do. */
    int nodes(int work) {
        return Math.max(1, work / Math.max(1, solver.numVariables()));
    }

    double value() {
        return objective.value();
    }

    double bound() {
        return objective.bestBound();
    }

    /** Return the dual prices of the shared rows, and what a row that has no say is worth, put within what they can be. */
    double[] prices() {
        double[] prices = new double[layout.rows];
        for (int row = 0; row < prices.length; row++) {
            double without = layout.isSales(row) ? layout.most[row] : 0;
            prices[row] = rows.get(row).map(MPConstraint::dualValue).orElse(without);
        }
        Priced.clip(layout, prices);
        return prices;
    }

    @Override
    public void close() {
        solver.delete();
    }
}
