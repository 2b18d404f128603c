package ortet.choice;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import ortet.book.Progress;

/** Finds the best plan for mothers as they are made ready: relaxed first, then whole. */
final class Planner {
    private static final double CERTAIN = 0.999;

    /** A plan, the prices in it, and a bound of all plans. */
    record Plan(Path[] paths, double[] prices, double bound, Account account, boolean isBest) {}

    private final double gap;
    private final boolean whole;
    private final BooleanSupplier isLate;
    private final Progress progress;

    Planner(double gap, boolean whole, BooleanSupplier isLate, Progress progress) {
        this.gap = gap;
        this.whole = whole;
        this.isLate = isLate;
        this.progress = progress;
    }

    Plan plan(Paths paths, double[] first, double seconds) {
        Relaxation.Answer relaxed;
        try (Relaxation relaxation = new Relaxation(paths, first)) {
            relaxed = relaxation.solve(whole ? 0 : gap / 4, isLate, progress);
        }
        Path[] plan = chosen(paths, relaxed, seconds);
        Account account = Account.of(paths, plan);
        double bound = relaxed.bound();
        if (whole && !isClose(account.worth(), bound)) {
            Optional<Whole.Answer> answer =
                    new Whole(paths).solve(relaxed.prices(), bound, account.worth(), Optional.empty(), seconds, gap);
            if (answer.isPresent()) {
                Account better = Account.of(paths, answer.get().paths());
                if (better.worth() >= account.worth()) {
                    plan = answer.get().paths();
                    account = better;
                }
                bound = Math.min(bound, Math.max(account.worth(), answer.get().bound()));
            }
        }
        bound = Math.max(bound, account.worth());
        return new Plan(plan, relaxed.prices(), bound, account, isClose(account.worth(), bound));
    }

    private boolean isClose(double worth, double bound) {
        return bound - worth <= gap * Math.max(1, Math.abs(bound)) + 1e-7 * Math.max(1, Math.abs(bound));
    }

    /** Choose one path for each mother among those found: those that the relaxation is certain of stay. */
    private Path[] chosen(Paths paths, Relaxation.Answer relaxed, double seconds) {
        Path[] plan = new Path[paths.stocks.length];
        try (Programme programme = new Programme(paths.layout, Programme.Kind.INTEGER)) {
            List<List<MPVariable>> variables = new ArrayList<>();
            boolean fix = plan.length > Relaxation.MANY;
            for (int at = 0; at < plan.length; at++) {
                List<MPVariable> mine = new ArrayList<>();
                MPConstraint one = programme.exactly(1);
                int sure = fix ? sure(relaxed.weights()[at]) : -1;
                for (int i = 0; i < paths.found.get(at).size(); i++) {
                    if (sure < 0 || sure == i) {
                        MPVariable variable = programme.variable(
                                1, paths.column(at, paths.found.get(at).get(i)), true);
                        one.setCoefficient(variable, 1);
                        mine.add(variable);
                    } else {
                        mine.add(null);
                    }
                }
                variables.add(mine);
            }
            boolean solved = programme.solve(seconds, gap / 2);
            for (int at = 0; at < plan.length; at++) {
                int which = 0;
                if (solved) {
                    for (int i = 0; i < variables.get(at).size(); i++) {
                        MPVariable variable = variables.get(at).get(i);
                        if (variable != null && variable.solutionValue() > 0.5) {
                            which = i;
                        }
                    }
                }
                plan[at] = paths.found.get(at).get(which);
            }
        }
        return plan;
    }

    private static int sure(double[] weights) {
        for (int i = 0; i < weights.length; i++) {
            if (weights[i] > CERTAIN) {
                return i;
            }
        }
        return -1;
    }
}
