package ortet.choice;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import ortet.book.Progress;

/** Finds the best plan for mothers as they are made ready: relaxed first, then whole. */
final class Planner {
    /** What the solver itself may be off by, as a share. */
    private static final double ROUNDING = 2e-6;

    /** Up to how many mothers simplex is quick; beyond, prices go by steps. */
    private static final int MANY = 600;
    /** Up to how many mothers the solver is asked for the best plan that the paths found make. */
    private static final int SOME = 100;
    /** Up to how many mothers branch and bound betters plan or bound in a second or two. */
    static final int EXACT = 9;

    /** How often a plan is gone through when it is polished; the later rounds mend little. */
    private static final int ROUNDS = 6;
    /** The same, for the best plan among the paths found. */
    private static final int LITTLE = 10_000;

    /** Branchings times variables: some tenths of a second to a second on one core. */
    private static final int WORK = 20_000;

    /** Steps from prices that are not known at all; half as many from good ones. At 100 the gap lessens by a third. */
    private static final int STEPS = 60;

    private static final double LARGE = 0.5;
    private static final double SMALL = 0.05;

    /** Shakes times mothers, so that small plans are shaken more. */
    private static final int SHAKES = 4000;

    private static final int MOST_SHAKES = 300;
    /** Before the first try of branch and bound. */
    private static final int FEW_SHAKES = 20;

    private static final long SEED = 1;
    /** By how much prices are shaken, on the scale of logarithms. */
    private static final double WIDTH = 0.25;
    /** What share of the mothers is moved in a shake. */
    private static final double MOVED = 0.2;

    /** After how many parts of a plan that breaks a right it is looked at again. */
    private static final int PARTS = 50;

    /** A plan, the prices in it, a bound of all plans, and the bound at these prices, which may be farther off. */
    record Plan(Path[] paths, double[] prices, double bound, double pricedBound, Account account, boolean isBest) {
        /** Return this with a bound that holds too, and may be lesser. */
        Plan within(double other, double gap) {
            double least = Math.max(Math.min(bound, other), account.worth());
            return new Plan(paths, prices, least, pricedBound, account, isClose(account.worth(), least, gap));
        }
    }

    private final double gap;
    private final Deadline late;
    private final Progress progress;

    Planner(double gap, Deadline late, Progress progress) {
        this.gap = gap;
        this.late = late;
        this.progress = progress;
    }

    Plan plan(Paths paths, double[] first, boolean good) {
        Relaxation.Answer relaxed = relax(paths, first, good, isExact(paths) ? 0 : gap / 4);
        Found found = new Found(chosen(paths, relaxed), relaxed.bound());
        if (isExact(paths)) {
            // the easy ones end here; shakes and a longer search are for the others
            found = branched(paths, shaken(paths, found, relaxed, FEW_SHAKES), relaxed, LITTLE);
            found = branched(paths, shaken(paths, found, relaxed, MOST_SHAKES), relaxed, WORK);
        } else if (paths.stocks.length <= MANY) {
            found = shaken(paths, found, relaxed, Math.min(MOST_SHAKES, SHAKES / paths.stocks.length));
        }
        Path[] plan = lawful(paths, found.plan());
        Account account = Account.of(paths, plan);
        double bound = Math.max(found.bound(), account.worth());
        return new Plan(plan, relaxed.prices(), bound, relaxed.bound(), account, isClose(account.worth(), bound));
    }

    /** The best plan yet, and a bound of all plans. */
    private record Found(Path[] plan, double bound) {}

    /** Better a plan and its bound by branch and bound, as far as so much work goes. */
    private Found branched(Paths paths, Found known, Relaxation.Answer relaxed, int work) {
        Account account = Account.of(paths, known.plan());
        if (isClose(account.worth(), known.bound())) {
            return known;
        }
        Optional<Whole.Answer> answer = new Whole(paths)
                .solve(
                        new Whole.Ask(
                                relaxed.prices(),
                                relaxed.bound(),
                                account.worth(),
                                Optional.empty(),
                                paths.layout.isOverrun(account.use()),
                                new Path[known.plan().length]),
                        late.seconds(),
                        gap,
                        work);
        if (answer.isEmpty()) {
            return known;
        }
        Account other = Account.of(paths, answer.get().paths());
        double best = Math.max(account.worth(), other.worth());
        return new Found(
                other.worth() > account.worth() ? answer.get().paths() : known.plan(),
                Math.min(known.bound(), Math.max(best, answer.get().bound())));
    }

    /** Tell whether there are so few mothers, and so many allowed, that all goes to branch and bound. */
    static boolean isExact(Paths paths) {
        return paths.stocks.length
                <= Math.min(EXACT, paths.layout.question.settings().anewUpTo());
    }

    /** Put the plans of all parts together. */
    Plan together(Paths paths, List<Parts.Part> parts, List<Plan> plans) {
        Path[] all = new Path[paths.stocks.length];
        double[] prices = paths.first();
        double bound = 0;
        double pricedBound = 0;
        for (int at = 0; at < plans.size(); at++) {
            Parts.Part part = parts.get(at);
            Plan plan = plans.get(at);
            for (int i = 0; i < part.members().length; i++) {
                all[part.members()[i]] = plan.paths()[i];
            }
            for (int row = 0; row < prices.length; row++) {
                if (part.paths().rows[row]) {
                    prices[row] = plan.prices()[row];
                }
            }
            bound += plan.bound();
            pricedBound += plan.pricedBound();
        }
        Account account = Account.of(paths, all);
        return new Plan(
                all, prices, Math.max(bound, account.worth()), pricedBound, account, isClose(account.worth(), bound));
    }

    /** Return a plan that breaks no right and no share: mothers who set something are left alone until none is broken. */
    private static Path[] lawful(Paths paths, Path[] begin) {
        Path[] plan = begin.clone();
        int part = (plan.length + PARTS - 1) / PARTS;
        for (int from = 0; from < plan.length && Account.of(paths, plan).broken() > 0; from += part) {
            for (int at = from; at < Math.min(plan.length, from + part); at++) {
                if (plan[at].sets().length > 0) {
                    plan[at] = paths.idle(at);
                }
            }
        }
        return plan;
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
        return isClose(worth, bound, gap);
    }

    private static boolean isClose(double worth, double bound, double gap) {
        return bound - worth <= gap * Math.max(1, Math.abs(bound)) + ROUNDING * Math.max(1, Math.abs(bound));
    }

    /**
     * Better a plan by shaking it: some mothers change to what would be best for them at other prices, and the plan is
     * polished again; the better plan stays. The shakes are the same every time.
     */
    private Found shaken(Paths paths, Found known, Relaxation.Answer relaxed, int shakes) {
        Random random = new Random(SEED);
        double[] prices = relaxed.prices();
        Path[] plan = known.plan();
        double worth = Account.of(paths, plan).worth();
        for (int shake = 0; shake < shakes && !late.isOver() && !isClose(worth, known.bound()); shake++) {
            double[] others = prices.clone();
            for (int row = 0; row < others.length; row++) {
                if (paths.rows[row]) { // so that a part is shaken alike whatever stands beside it
                    others[row] *= Math.exp(WIDTH * random.nextGaussian());
                }
            }
            Priced.clip(paths.layout, others);
            Paths.Answer answer = paths.best(others);
            Path[] next = plan.clone();
            for (int at = 0; at < next.length; at++) {
                if (paths.number(at, answer.paths()[at]) < 0) {
                    paths.found.get(at).add(answer.paths()[at]);
                }
                if (random.nextDouble() < MOVED) {
                    next[at] = answer.paths()[at];
                }
            }
            next = new Polish(paths, next).run(ROUNDS);
            double other = Account.of(paths, next).worth();
            if (other > worth) {
                worth = other;
                plan = next;
            }
            progress.at("planning", shake + 1, shakes);
        }
        return new Found(plan, known.bound());
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
            return new Polish(paths, paths(paths, weightiest)).run(ROUNDS);
        }
        Path[] first = new Polish(paths, paths(paths, weightiest)).run(ROUNDS);
        keep(paths, first);
        return recombined(paths, first);
    }

    private static void keep(Paths paths, Path[] plan) {
        for (int at = 0; at < plan.length; at++) {
            if (paths.number(at, plan[at]) < 0) {
                paths.found.get(at).add(plan[at]);
            }
        }
    }

    /** Return the best plan of the paths found so far, polished, or the plan known when that is better. */
    private Path[] recombined(Paths paths, Path[] known) {
        if (known.length > SOME || isExact(paths)) {
            return known;
        }
        return among(paths, paths.layout.isOverrun(Account.of(paths, known).use()))
                .map(numbers -> new Polish(paths, paths(paths, numbers)).run(ROUNDS))
                .filter(other -> Account.of(paths, other).worth()
                        > Account.of(paths, known).worth())
                .orElse(known);
    }

    private static Path[] paths(Paths paths, int[] numbers) {
        Path[] plan = new Path[numbers.length];
        for (int at = 0; at < plan.length; at++) {
            plan[at] = paths.found.get(at).get(numbers[at]);
        }
        return plan;
    }

    /** Choose the best plan that can be made of the paths found. */
    private Optional<int[]> among(Paths paths, boolean mayOverrun) {
        try (Programme programme = new Programme(paths, Programme.Kind.INTEGER, mayOverrun)) {
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
            if (!programme.solve(late.seconds(), gap / 2, programme.nodes(LITTLE))) {
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
