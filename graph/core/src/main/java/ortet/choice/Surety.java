package ortet.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.stream.IntStream;
import ortet.book.Progress;

/** Finds how sure a plan is: draw by draw, made anew or priced. */
final class Surety {
    /** Branchings times variables in the search for the next best deed. */
    private static final int WORK = 10_000;

    private static final double ROUNDING = 1e-9;
    /** What the solver itself may be off by, as a share. */
    private static final double CLOSE = 2e-6;
    /** What share of a mother's worth on the mean two deeds may lie apart and still be as good. */
    private static final double NEAR = 0.01;

    /** How many of the paths found for the plan a draw begins with. */
    private static final int KNOWN = 8;
    /** With how many mothers at most the prices of a draw are found, and in how many steps; see docs/methods/choice.md. */
    private static final int SAMPLE = 1500;

    private static final int STEPS = 25;
    private static final double BEGIN = 0.1;

    private final Paths paths;
    private final Planner.Plan plan;
    private final List<Parts.Part> parts;
    private final List<Planner.Plan> plans;
    /** By mother: the number of her part, and hers in it. */
    private final int[] partOf;

    private final int[] numberIn;
    private final boolean whole;
    private final Deadline late;
    private final int[] same;
    private final List<Double> margins = new ArrayList<>();
    private final List<Double> met = new ArrayList<>();
    private int drawn;

    Surety(
            Paths paths,
            Planner.Plan plan,
            List<Parts.Part> parts,
            List<Planner.Plan> plans,
            boolean whole,
            Deadline late,
            Progress progress) {
        this.parts = parts;
        this.plans = plans;
        this.partOf = new int[paths.stocks.length];
        this.numberIn = new int[paths.stocks.length];
        for (int part = 0; part < parts.size(); part++) {
            int[] members = parts.get(part).members();
            for (int i = 0; i < members.length; i++) {
                partOf[members[i]] = part;
                numberIn[members[i]] = i;
            }
        }
        this.paths = paths;
        this.plan = plan;
        this.whole = whole;
        this.late = late;
        int draws = paths.layout.question.settings().draws();
        AtomicIntegerArray counts = new AtomicIntegerArray(paths.stocks.length);
        Layout single = new Layout(paths.layout.question, 1);
        Products products = new Products(single);
        AtomicInteger done = new AtomicInteger();
        Account[] accounts = new Account[draws];
        double[] prices = merged(single);
        Layout sample = sample();
        Products sampled = new Products(sample);
        IntStream.range(0, draws).parallel().forEach(draw -> {
            if (late.isOver()) {
                return;
            }
            Paths now = drawn(single, products, draw);
            if (whole) {
                double[] own = prices.clone();
                for (Parts.Part part : parts) {
                    anew(part, now.of(part.members(), part.paths().rows), prices, own);
                }
                price(now, new Priced(single, products, own), counts);
            } else {
                price(now, new Priced(single, products, moved(sample, sampled, prices, draw)), counts);
            }
            accounts[draw] = carriedOut(now);
            progress.at("draws", done.incrementAndGet(), draws);
        });
        this.same = new int[paths.stocks.length];
        for (int at = 0; at < same.length; at++) {
            same[at] = counts.get(at);
        }
        for (Account account : accounts) {
            if (account != null) {
                drawn++;
                margins.add(account.margin());
                if (!Double.isNaN(account.met())) {
                    met.add(account.met());
                }
            }
        }
    }

    /** Return the prices of a plan on several draws as those of one: what a tree is worth in all of them together. */
    private double[] merged(Layout single) {
        Layout layout = paths.layout;
        double[] prices = Arrays.copyOf(plan.prices(), single.rows);
        for (int outlet = 0; outlet < layout.question.outlets().size(); outlet++) {
            for (int year = 0; year < layout.allYears; year++) {
                double sum = 0;
                for (int scenario = 0; scenario < layout.scenarios; scenario++) {
                    sum += plan.prices()[layout.sales(outlet, year, scenario)];
                }
                prices[single.sales(outlet, year, 0)] = sum;
            }
        }
        return prices;
    }

    /** Return the rows as a sample of the mothers would share them; the rows themselves when there are few mothers. */
    private Layout sample() {
        int size = paths.stocks.length;
        return new Layout(paths.layout.question, 1, (double) sampled(size) / Math.max(1, size));
    }

    private static int sampled(int size) {
        int every = (size + SAMPLE - 1) / SAMPLE;
        return every <= 1 ? size : (size + every - 1) / every;
    }

    /** Return the prices as they would move in a draw, found with every so many-th mother. */
    private double[] moved(Layout sample, Products sampled, double[] prices, int draw) {
        int size = paths.stocks.length;
        int every = Math.max(1, (size + SAMPLE - 1) / SAMPLE);
        Stock[] stocks = new Stock[sampled(size)];
        Taking[] takings = new Taking[stocks.length];
        double[] factors = new double[stocks.length];
        for (int i = 0; i < stocks.length; i++) {
            stocks[i] = paths.stocks[i * every];
            takings[i] = Taking.drawn(sample, stocks[i].mother, draw);
            factors[i] = stocks[i].mother.rates().wood().at(draw);
        }
        return new Descent(new Paths(sample, sampled, stocks, takings, factors), prices).prices(STEPS, BEGIN, late);
    }

    private Paths drawn(Layout single, Products products, int draw) {
        Taking[] takings = new Taking[paths.stocks.length];
        double[] factors = new double[takings.length];
        for (int at = 0; at < takings.length; at++) {
            Mother mother = paths.stocks[at].mother;
            takings[at] = Taking.drawn(single, mother, draw);
            factors[at] = mother.rates().wood().at(draw);
        }
        return new Paths(single, products, paths.stocks, takings, factors);
    }

    /** Find the prices of a part in a draw. */
    private void anew(Parts.Part part, Paths now, double[] prices, double[] into) {
        for (int at = 0; at < now.stocks.length; at++) {
            if (now.woodFactors[at] == 1) {
                List<Path> known = part.paths().found.get(at);
                now.found.get(at).addAll(known.subList(0, Math.min(KNOWN, known.size())));
            }
        }
        double[] begin = now.first();
        for (int row = 0; row < begin.length; row++) {
            begin[row] = now.rows[row] ? prices[row] : begin[row];
        }
        try (Relaxation relaxation = new Relaxation(now, begin)) {
            double[] own = relaxation.solve(ROUNDING, late, Progress.NONE).prices();
            for (int row = 0; row < own.length; row++) {
                if (now.rows[row]) {
                    into[row] = own[row];
                }
            }
        }
    }

    private void price(Paths now, Priced priced, AtomicIntegerArray counts) {
        Walk walk = new Walk(now.layout);
        for (int at = 0; at < paths.stocks.length; at++) {
            Stock stock = paths.stocks[at];
            double best = walk.of(stock, priced, now.takings[at], now.woodFactors[at], 1);
            Planner.Plan own = plans.get(partOf[at]);
            double near = NEAR * Math.abs(own.bound()) / own.paths().length;
            if (walk.with(Chooser.deed(stock, plan.paths()[at], 0)) >= best - near) {
                counts.incrementAndGet(at);
            }
        }
    }

    /** Return how the plan itself fares in a draw; it sets what it would, as far as the wood is there. */
    private Account carriedOut(Paths now) {
        Path[] carried = new Path[paths.stocks.length];
        for (int at = 0; at < carried.length; at++) {
            carried[at] = now.woodFactors[at] == 1 ? plan.paths()[at] : now.asFarAsWoodGoes(at, plan.paths()[at]);
        }
        return Account.of(now, carried);
    }

    int[] same() {
        return same.clone();
    }

    int draws() {
        return drawn;
    }

    Sureness.Way way() {
        return whole ? Sureness.Way.ANEW : Sureness.Way.PRICED;
    }

    Outlook outlook() {
        return new Outlook(margins, met);
    }

    /** Return the next best deed for a mother who has just been gone through. */
    Optional<Alternative> next(int at, Walk walk, Deed chosen) {
        Deed next = null;
        for (Deed deed : Deed.values()) {
            boolean isOther = deed != chosen
                    && deed != Deed.REST
                    && !(deed == Deed.LEAVE_LONG && chosen == Deed.REST)
                    && walk.with(deed) > Double.NEGATIVE_INFINITY;
            if (isOther && (next == null || walk.with(deed) > walk.with(next))) {
                next = deed;
            }
        }
        if (next == null) {
            return Optional.empty();
        }
        Stock stock = paths.stocks[at];
        Deed named = next == Deed.LEAVE_LONG ? stock.named(0, 0, stock.shape.arcs(0, 0)[0]) : next;
        double preferred = stock.reluctance(paths.layout, next, 0) - stock.reluctance(paths.layout, chosen, 0);
        double cost = Math.max(0, walk.with(chosen) - walk.with(next) - preferred);
        Planner.Plan own = plans.get(partOf[at]);
        if (!Planner.isExact(parts.get(partOf[at]).paths()) || !own.isBest() || late.isOver()) {
            return Optional.of(new Alternative(named, cost, Sureness.Way.PRICED));
        }
        return anewWithout(at, chosen, walk.with(chosen) - walk.with(next))
                .or(() -> Optional.of(new Alternative(named, cost, Sureness.Way.PRICED)));
    }

    /**
     * Make the plan anew without the deed. A plan found among arcs that can take part in plans worth at least some sum is the
     * best of all if it is worth that much; else the sum is lowered.
     */
    private Optional<Alternative> anewWithout(int who, Deed chosen, double apart) {
        Paths some = parts.get(partOf[who]).paths();
        Planner.Plan best = plans.get(partOf[who]);
        int at = numberIn[who];
        double cost = Math.max(0, apart);
        double worth = best.account().worth();
        double least = worth - 2 * cost - 0.01 * Math.max(1, Math.abs(worth));
        Whole.Barred barred = new Whole.Barred(at, chosen);
        for (int attempt = 0; attempt < 2; attempt++) {
            double asked = attempt == 1 ? Double.NEGATIVE_INFINITY : least;
            Optional<Whole.Answer> answer = new Whole(some)
                    .solve(
                            new Whole.Ask(
                                    best.prices(),
                                    best.pricedBound(),
                                    asked,
                                    Optional.of(barred),
                                    true,
                                    new Path[some.stocks.length]),
                            late.seconds(),
                            0,
                            WORK);
            if (answer.isPresent()) {
                Account account = Account.of(some, answer.get().paths());
                if (answer.get().bound() - account.worth() > CLOSE * Math.max(1, Math.abs(worth))) {
                    return Optional.empty(); // the search was stopped before its end
                }
                if (account.worth() >= asked) {
                    Deed deed = Chooser.deed(some.stocks[at], answer.get().paths()[at], 0);
                    return Optional.of(new Alternative(
                            deed,
                            Math.max(0, worth + best.account().reluctance() - account.worth() - account.reluctance()),
                            Sureness.Way.ANEW));
                }
            }
        }
        return Optional.empty();
    }
}
