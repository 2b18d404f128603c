package ortet.choice;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import ortet.book.Progress;

/** Finds the best plan for mothers as they are made ready: relaxed first, then whole. */
final class Planner {
    private static final int MANY = 600;
    private static final int TOGETHER = 3;
    private static final int ROUNDS = 6;
    private static final int FEW_ROUNDS = 6;
    private static final int VAIN = 1;
    private static final int FEW_NODES = 1;
    private static final int LEAST_NODES = 1;
    private static final int MOST_NODES = 40_000;
    private static final int STEPS = 100;
    private static final double LARGE = 0.5;
    private static final double SMALL = 0.05;

    /** A plan, the prices in it, and a bound of all plans. */
    record Plan(Path[] paths, double[] prices, double bound, Account account, boolean isBest) {}

    private final double gap;
    private final boolean whole;
    private final Deadline late;
    private final Progress progress;

    Planner(double gap, boolean whole, Deadline late, Progress progress) {
        this.gap = gap;
        this.whole = whole;
        this.late = late;
        this.progress = progress;
    }

    Plan plan(Paths paths, double[] first, boolean good) {
        Relaxation.Answer relaxed = relax(paths, first, good, whole ? 0 : gap / 4);
        Path[] plan = chosen(paths, relaxed);
        Account account = Account.of(paths, plan);
        double bound = relaxed.bound();
        if (whole && !isClose(account.worth(), bound)) {
            Whole solver = new Whole(paths);
            boolean overruns = paths.layout.isOverrun(account.use());
            plan = bettered(paths, plan, relaxed, overruns);
            account = Account.of(paths, plan);
            Optional<Whole.Answer> answer = solver.solve(
                    new Whole.Ask(
                            relaxed.prices(),
                            bound,
                            account.worth(),
                            Optional.empty(),
                            overruns,
                            new Path[plan.length]),
                    late.seconds(),
                    gap,
                    Math.max(LEAST_NODES, MOST_NODES / (plan.length * plan.length)));
            if (answer.isPresent()) {
                Account other = Account.of(paths, answer.get().paths());
                if (other.worth() > account.worth()) {
                    plan = answer.get().paths();
                    account = other;
                }
                bound = Math.min(bound, Math.max(account.worth(), answer.get().bound()));
            }
        }
        bound = Math.max(bound, account.worth());
        return new Plan(plan, relaxed.prices(), bound, account, isClose(account.worth(), bound));
    }

    /** Relax the plan: exactly up to some size, else step by step. */
    Relaxation.Answer relax(Paths paths, double[] first, boolean good, double within) {
        if (paths.stocks.length > MANY) {
            return new Descent(paths, first).solve(good ? STEPS / 2 : STEPS, good ? SMALL : LARGE, late, progress);
        }
        try (Relaxation relaxation = new Relaxation(paths, first)) {
            return relaxation.solve(within, late, progress);
        }
    }

    private boolean isClose(double worth, double bound) {
        return bound - worth <= gap * Math.max(1, Math.abs(bound)) + 1e-7 * Math.max(1, Math.abs(bound));
    }

    /** Better a plan some mothers at a time: the others stay, and those are planned anew together, in ever other company. */
    private Path[] bettered(Paths paths, Path[] begin, Relaxation.Answer relaxed, boolean overruns) {
        Path[] plan = begin;
        if (plan.length <= TOGETHER) {
            return plan;
        }
        Whole solver = new Whole(paths);
        List<Integer> order = new ArrayList<>();
        for (int at = 0; at < plan.length; at++) {
            order.add(at);
        }
        Random random = new Random(plan.length);
        double worth = Account.of(paths, plan).worth();
        int vain = 0;
        for (int round = 0; vain < VAIN && round < ROUNDS; round++) {
            Collections.shuffle(order, random);
            double before = worth;
            for (int from = 0; from < order.size() && !late.isOver(); from += TOGETHER) {
                if (isClose(worth, relaxed.bound())) {
                    return plan;
                }
                Path[] fixed = plan.clone();
                for (int i = from; i < Math.min(order.size(), from + TOGETHER); i++) {
                    fixed[order.get(i)] = null;
                }
                Optional<Whole.Answer> answer = solver.solve(
                        new Whole.Ask(relaxed.prices(), relaxed.bound(), worth, Optional.empty(), overruns, fixed),
                        late.seconds(),
                        gap / 2,
                        FEW_NODES);
                if (answer.isPresent()) {
                    double other = Account.of(paths, answer.get().paths()).worth();
                    if (other > worth) {
                        worth = other;
                        plan = answer.get().paths();
                    }
                }
            }
            vain = worth > before + gap * Math.abs(before) ? 0 : vain + 1;
            progress.at("planning", round + 1, ROUNDS);
        }
        return plan;
    }

    /** Choose one path for each mother among those found: by weight at first, and then the better plan of two. */
    private Path[] chosen(Paths paths, Relaxation.Answer relaxed) {
        int[] weightiest = new int[paths.stocks.length];
        for (int at = 0; at < weightiest.length; at++) {
            double[] weights = relaxed.weights()[at];
            for (int i = 1; i < weights.length; i++) {
                if (weights[i] > weights[weightiest[at]]) {
                    weightiest[at] = i;
                }
            }
        }
        if (weightiest.length > MANY) {
            return new Polish(paths, paths(paths, weightiest)).run(FEW_ROUNDS);
        }
        Path[] first = new Polish(paths, paths(paths, weightiest)).run(ROUNDS);
        for (int at = 0; at < first.length; at++) {
            if (paths.number(at, first[at]) < 0) {
                paths.found.get(at).add(first[at]);
            }
        }
        return among(paths)
                .map(numbers -> new Polish(paths, paths(paths, numbers)).run(ROUNDS))
                .filter(other -> Account.of(paths, other).worth()
                        > Account.of(paths, first).worth())
                .orElse(first);
    }

    private static Path[] paths(Paths paths, int[] numbers) {
        Path[] plan = new Path[numbers.length];
        for (int at = 0; at < plan.length; at++) {
            plan[at] = paths.found.get(at).get(numbers[at]);
        }
        return plan;
    }

    /** Choose the best plan that can be made of the paths found. */
    private Optional<int[]> among(Paths paths) {
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
            if (!programme.solve(late.seconds(), gap / 2, FEW_NODES)) {
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
