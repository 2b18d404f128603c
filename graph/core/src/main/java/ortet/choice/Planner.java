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
    private static final int MANY = 600;
    private static final int STEPS = 100;
    private static final double LARGE = 0.5;
    private static final double SMALL = 0.05;

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

    Plan plan(Paths paths, double[] first, boolean good, double seconds) {
        Relaxation.Answer relaxed = relax(paths, first, good, whole ? 0 : gap / 4);
        Path[] plan = chosen(paths, relaxed, seconds);
        Account account = Account.of(paths, plan);
        double bound = relaxed.bound();
        if (whole && !isClose(account.worth(), bound)) {
            boolean overruns = paths.layout.isOverrun(account.use());
            // first among what is all but best, which mends most; then among all that the bound leaves
            double[] shares = {0.25, 1};
            double before = account.worth();
            for (double share : shares) {
                double known = share < 1 ? bound - share * (bound - before) : account.worth();
                if (isClose(account.worth(), bound) || account.worth() > known) {
                    continue;
                }
                Optional<Whole.Answer> answer = new Whole(paths)
                        .solve(
                                relaxed.prices(),
                                relaxed.bound(),
                                known,
                                Optional.empty(),
                                overruns,
                                seconds * share,
                                gap);
                if (answer.isPresent()) {
                    Account other = Account.of(paths, answer.get().paths());
                    if (other.worth() >= account.worth()) {
                        plan = answer.get().paths();
                        account = other;
                    }
                    if (share == 1) {
                        bound = Math.min(
                                bound, Math.max(account.worth(), answer.get().bound()));
                    }
                }
            }
        }
        bound = Math.max(bound, account.worth());
        return new Plan(plan, relaxed.prices(), bound, account, isClose(account.worth(), bound));
    }

    /** Relax the plan: exactly up to some size, else step by step. */
    Relaxation.Answer relax(Paths paths, double[] first, boolean good, double within) {
        if (paths.stocks.length > MANY) {
            return new Descent(paths, first).solve(good ? STEPS / 2 : STEPS, good ? SMALL : LARGE, isLate, progress);
        }
        try (Relaxation relaxation = new Relaxation(paths, first)) {
            return relaxation.solve(within, isLate, progress);
        }
    }

    private boolean isClose(double worth, double bound) {
        return bound - worth <= gap * Math.max(1, Math.abs(bound)) + 1e-7 * Math.max(1, Math.abs(bound));
    }

    /** Choose one path for each mother among those found: by weight at first, and then the better plan of two. */
    private Path[] chosen(Paths paths, Relaxation.Answer relaxed, double seconds) {
        int[] weightiest = new int[paths.stocks.length];
        for (int at = 0; at < weightiest.length; at++) {
            double[] weights = relaxed.weights()[at];
            for (int i = 1; i < weights.length; i++) {
                if (weights[i] > weights[weightiest[at]]) {
                    weightiest[at] = i;
                }
            }
        }
        Path[] plan = paths(paths, new Polish(paths, weightiest).run());
        if (plan.length > MANY) {
            return plan;
        }
        return among(paths, seconds)
                .map(numbers -> paths(paths, new Polish(paths, numbers).run()))
                .filter(other -> Account.of(paths, other).worth()
                        > Account.of(paths, plan).worth())
                .orElse(plan);
    }

    private static Path[] paths(Paths paths, int[] numbers) {
        Path[] plan = new Path[numbers.length];
        for (int at = 0; at < plan.length; at++) {
            plan[at] = paths.found.get(at).get(numbers[at]);
        }
        return plan;
    }

    /** Choose the best plan that can be made of the paths found. */
    private Optional<int[]> among(Paths paths, double seconds) {
        try (Programme programme = new Programme(paths.layout, Programme.Kind.INTEGER, true)) {
            List<List<MPVariable>> variables = new ArrayList<>();
            for (int at = 0; at < paths.stocks.length; at++) {
                List<MPVariable> mine = new ArrayList<>();
                MPConstraint one = programme.exactly(1);
                for (Path path : paths.found.get(at)) {
                    MPVariable variable = programme.variable(1, paths.column(at, path), true);
                    one.setCoefficient(variable, 1);
                    mine.add(variable);
                }
                variables.add(mine);
            }
            if (!programme.solve(seconds, gap / 2)) {
                return Optional.empty();
            }
            int[] numbers = new int[variables.size()];
            for (int at = 0; at < numbers.length; at++) {
                for (int i = 0; i < variables.get(at).size(); i++) {
                    if (variables.get(at).get(i).solutionValue() > 0.5) {
                        numbers[at] = i;
                    }
                }
            }
            return Optional.of(numbers);
        }
    }
}
