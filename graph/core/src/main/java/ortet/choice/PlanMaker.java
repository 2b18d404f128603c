package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.BetaDistribution;
import ortet.book.BookView;
import ortet.book.UnitFacts.Method;
import ortet.choice.Plan.Answer;
import ortet.choice.Plan.Ready;
import ortet.choice.Plan.Shortfall;
import ortet.choice.Plan.Why;
import ortet.choice.PlanStage.Lean;
import ortet.choice.PlanWeeks.Window;
import ortet.choice.PlanWood.Found;
import ortet.figures.BetaBinomial.Shapes;
import ortet.figures.Planning;
import ortet.figures.Stages;
import ortet.money.Charge;
import ortet.money.Tariff;
import ortet.nursery.Snapshot;
import ortet.plant.CultivarName;
import ortet.timing.Timing;
import ortet.timing.TimingQuestion;
import ortet.timing.TimingRow;
import ortet.timing.Waiting;
import ortet.value.Decimal;
import ortet.value.OrtetException;
import ortet.yield.Establishment;
import ortet.yield.Outcomes;
import ortet.yield.Outcomes.Cohort;
import ortet.yield.Periods;

/** Makes plans out of one snapshot, one after another; each may use wood, which the next does not have then. */
final class PlanMaker {
    private static final double[] LEVELS = {0.05, 0.1, 0.25, 0.5};
    private static final double AS_LIKELY_AS_NOT = 0.5;
    private static final int YEARS_AHEAD = 3;
    /** So many of what has no positions are thought of when another day is looked for. */
    private static final int MANY = 2_000;

    private final BookView view;
    private final Snapshot snapshot;
    private final LocalDate asOf;
    private final Map<Optional<String>, Outcomes> bySize = new HashMap<>();
    private final Outcomes outcomes;
    private final PlanWood wood;
    private final Tariff tariff;
    private final PlanPots pots;
    private final Optional<PlanMeans> means;
    private final Map<Plan, Runnable> uses = new IdentityHashMap<>();

    PlanMaker(BookView view, Snapshot snapshot, Optional<PlanMeans> means) {
        this.means = means;
        this.view = view;
        this.snapshot = snapshot;
        this.asOf = snapshot.asOf();
        this.outcomes = outcomes(Optional.empty());
        this.wood = new PlanWood(view, snapshot, outcomes);
        this.tariff = Tariff.of(view, asOf);
        this.pots = new PlanPots(view, snapshot);
    }

    private Outcomes outcomes(Optional<String> size) {
        return bySize.computeIfAbsent(
                size, one -> Outcomes.of(snapshot, Periods.DEFAULTS, Establishment.DEFAULTS, one));
    }

    /** Take out the positions, hours and room that a plan uses, so that the next one does not have them. */
    void use(Plan plan) {
        wood.use(plan.mothers());
        uses.getOrDefault(plan, () -> {}).run();
    }

    /** Return a plan for each method asked for. */
    List<Plan> plans(PlanQuestion question) {
        Set<CultivarName> names = Plans.names(view, snapshot, question.cultivar());
        Outcomes sized = outcomes(question.size());
        List<Plan> plans = new ArrayList<>();
        for (Method method : question.method().map(List::of).orElse(Plans.METHODS)) {
            PlanHistory history = new PlanHistory(sized, snapshot.cultivars(), names, method, asOf, cohort -> true);
            if (question.method().isPresent() || !history.own().isEmpty()) {
                plans.add(new Making(question, names, method, history).plan());
            }
        }
        if (plans.isEmpty()) {
            PlanHistory none = new PlanHistory(sized, snapshot.cultivars(), names, Method.LAYER, asOf, cohort -> true);
            plans.add(new Making(question, names, Method.LAYER, none).plan());
        }
        return plans;
    }

    /** A window of setting, with how likely what is set in it passes each stage. */
    private record Way(Window window, int days, Stages stages, List<PlanStage> told) {
        LocalDate fitBy() {
            return window.to().plusDays(days);
        }
    }

    /** A number to set in a way. */
    private record Number(Way way, Planning.Plan plan) {}

    /** One plan being made. */
    private final class Making {
        private final PlanQuestion question;
        private final Set<CultivarName> names;
        private final Method method;
        private final PlanHistory history;
        private final Optional<PlanStage> take;
        private final Optional<PlanStage> establish;
        private final Optional<PlanWeeks> weeks;
        private final Found found;
        private final Map<Integer, Stages> stages = new TreeMap<>();
        private final Map<Integer, Planning.Outlook> outlooks = new TreeMap<>();
        private final List<Integer> steps = new ArrayList<>();

        Making(PlanQuestion question, Set<CultivarName> names, Method method, PlanHistory history) {
            this.question = question;
            this.names = names;
            this.method = method;
            this.history = history;
            this.take = history.take();
            this.establish = history.establish();
            this.weeks = history.weeks();
            this.found = wood.found(names, method);
        }

        Plan plan() {
            if (take.isEmpty() || establish.isEmpty() || weeks.isEmpty()) {
                return lacking(Why.NOT_KNOWN);
            }
            for (int days = PlanHistory.STEP; days <= history.longest(); days += PlanHistory.STEP) {
                if (history.fit(days).isPresent()) {
                    steps.add(days);
                }
            }
            if (steps.isEmpty()) {
                return lacking(Why.NOT_KNOWN);
            }
            List<Window> windows = weeks.get().between(asOf, question.by());
            Optional<Number> best = Optional.empty();
            Optional<Number> fitting = Optional.empty();
            for (Window window : windows) {
                Optional<Number> number = smallest(window);
                // as few, and set later: the bench is free for longer
                if (number.isPresent()
                        && (best.isEmpty()
                                || number.get().plan().trials()
                                        <= best.get().plan().trials())) {
                    best = number;
                }
                boolean isFew = number.isPresent()
                        && number.get().plan().trials() <= limit(number.get().way());
                if (isFew
                        && (fitting.isEmpty()
                                || number.get().plan().trials()
                                        <= fitting.get().plan().trials())) {
                    fitting = number;
                }
            }
            return fitting.isPresent() ? enough(fitting.get()) : shortOf(windows, best);
        }

        private Plan lacking(Why why) {
            return plan(
                    List.of(),
                    Optional.empty(),
                    Optional.of(new Shortfall(
                            why,
                            positions(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty())),
                    found.mothers());
        }

        private Plan plan(
                List<PlanStage> told,
                Optional<Answer> answer,
                Optional<Shortfall> shortfall,
                List<PlanMother> mothers) {
            return new Plan(
                    question,
                    names.stream().map(CultivarName::toString).toList(),
                    method,
                    told,
                    weeks,
                    answer,
                    shortfall,
                    mothers,
                    found.leftOut(),
                    history.own().stream()
                            .mapToInt(cohort -> cohort.tally().pending())
                            .sum(),
                    history.own().stream()
                            .mapToInt(cohort -> cohort.tally().set())
                            .sum());
        }

        private Optional<Integer> positions() {
            return method == Method.LAYER ? Optional.of(found.free()) : Optional.empty();
        }

        // ---- how much there is ----

        /** Return how many can be set in a way, at most: by positions, hours and room. */
        private int limit(Way way) {
            int positions = method == Method.LAYER ? Math.min(found.free(), PlanQuestion.MOST) : PlanQuestion.MOST;
            return needs(way).map(needs -> needs.enoughFor(positions)).orElse(positions);
        }

        /** Return what one unit set in a way needs of hours and room; empty where these have no limits. */
        private Optional<PlanMeans.Needs> needs(Way way) {
            return means.map(limited -> {
                PlanMeans.Needs needs = limited.new Needs();
                List<Cohort> cohorts = history.own().isEmpty() ? history.all() : history.own();
                PlanPots.Pot pot = pots.of(cohorts);
                double taking = take.orElseThrow().rate();
                LocalDate setting = middle(way.window());
                LocalDate potting = ready(way.window())
                        .map(ready -> setting.plusDays(Math.round(ready.days())))
                        .filter(day -> day.isBefore(way.fitBy()))
                        .orElse(setting);
                for (Charge charge : tariff.raising(
                                method, question.size().orElse("any"), pot.container(), pot.place(), Decimal.of(0))
                        .charges()) {
                    if (charge.hours().signum() > 0) {
                        boolean first = PlanCost.isOfSetting(charge, method);
                        needs.hours(first ? setting : potting, charge.hours().doubleValue() * (first ? 1 : taking));
                    }
                }
                double m2 = tariff.unitsPerM2(pot.container(), question.size(), pot.place())
                        .map(units -> taking / units.value().doubleValue())
                        .orElse(0.0);
                needs.room(pot.place(), potting, way.fitBy(), m2);
                return needs;
            });
        }

        private static LocalDate middle(Window window) {
            return window.from()
                    .plusDays((window.to().toEpochDay() - window.from().toEpochDay()) / 2);
        }

        // ---- how many ----

        private Stages stages(int days) {
            return stages.computeIfAbsent(
                    days,
                    one -> Stages.of(told(one).stream().map(PlanStage::shapes).toList()));
        }

        private List<PlanStage> told(int days) {
            return List.of(
                    take.orElseThrow(),
                    establish.orElseThrow(),
                    history.fit(days).orElseThrow());
        }

        /** Return how likely enough come through in so many days; one for each, for it keeps what it has worked out. */
        private Planning.Outlook outlook(int days) {
            return outlooks.computeIfAbsent(days, one -> stages(one).outlook());
        }

        /**
         * Return the steps up to so many days that are worth a thought: what is fit for sale after fewer days is so after more,
         * so each is left out whose share is no larger, wherever one looks, than that of another.
         */
        private List<Integer> worthwhile(long most) {
            Map<Integer, double[]> shares = new TreeMap<>();
            for (int days : steps) {
                if (days <= most) {
                    Shapes shapes = history.fit(days).orElseThrow().shapes();
                    BetaDistribution beta = BetaDistribution.of(shapes.alpha(), shapes.beta());
                    double[] quantiles = new double[LEVELS.length];
                    for (int at = 0; at < LEVELS.length; at++) {
                        quantiles[at] = beta.inverseCumulativeProbability(LEVELS[at]);
                    }
                    shares.put(days, quantiles);
                }
            }
            return shares.keySet().stream()
                    .filter(days -> shares.entrySet().stream()
                            .noneMatch(other -> other.getKey() != days.intValue()
                                    && isBelow(shares.get(days), other.getValue(), other.getKey() < days.intValue())))
                    .toList();
        }

        /** Tell whether one is nowhere above another; where they are equal, whether the other comes first. */
        private boolean isBelow(double[] one, double[] other, boolean otherIsFirst) {
            boolean isLess = false;
            for (int at = 0; at < one.length; at++) {
                if (one[at] > other[at]) {
                    return false;
                }
                isLess |= one[at] < other[at];
            }
            return isLess || otherIsFirst;
        }

        private long horizon(Window window, LocalDate by) {
            return by.toEpochDay() - window.to().toEpochDay();
        }

        private Optional<Number> smallest(Window window) {
            Optional<Number> best = Optional.empty();
            for (int days : worthwhile(horizon(window, question.by()))) {
                Planning.Outlook outlook = outlook(days);
                if (best.isPresent()) {
                    long fewer = best.get().plan().trials() - 1;
                    if (outlook.atLeast(question.wanted(), fewer) < question.sure()) {
                        continue;
                    }
                }
                Optional<Number> number =
                        smallest(days).map(plan -> new Number(new Way(window, days, stages(days), told(days)), plan));
                if (number.isPresent()
                        && (best.isEmpty()
                                || number.get().plan().trials()
                                        < best.get().plan().trials())) {
                    best = number;
                }
            }
            return best;
        }

        private Optional<Planning.Plan> smallest(int days) {
            // where not even the mean is enough of all that are thought of, it is not worth the search
            if (stages(days).mean() * PlanQuestion.MOST < question.wanted()) {
                return Optional.empty();
            }
            // an upper limit of the chance: every stage but one certain
            for (PlanStage stage : told(days)) {
                double alone = Planning.betaBinomial(stage.shapes()).atLeast(question.wanted(), PlanQuestion.MOST);
                if (alone < question.sure()) {
                    return Optional.empty();
                }
            }
            return Planning.smallest(question.wanted(), question.sure(), outlook(days), PlanQuestion.MOST);
        }

        // ---- what is said of it ----

        private Plan enough(Number number) {
            Way way = number.way();
            int toSet = Math.toIntExact(number.plan().trials());
            double[] distribution = way.stages().distribution(new long[] {toSet, 0, 0}, 0);
            double taken = toSet * take.orElseThrow().rate();
            Optional<Ready> ready = ready(way.window());
            long onBench = way.days() - ready.map(one -> Math.round(one.days())).orElse(0L);
            List<Cohort> cohorts = history.own().isEmpty() ? history.all() : history.own();
            Answer answer = new Answer(
                    toSet,
                    number.plan().probability(),
                    number.plan().probabilityOfOneLess().orElse(0.0),
                    toSet * way.stages().mean(),
                    PlanRange.of(distribution),
                    way.window().from(),
                    way.window().to(),
                    way.fitBy(),
                    ready,
                    PlanCost.of(
                            tariff,
                            method,
                            question.size(),
                            toSet,
                            taken,
                            method == Method.LAYER ? onBench : way.days(),
                            cohorts,
                            snapshot.lives().treatments(),
                            pots.of(cohorts),
                            goings(toSet)));
            Plan made = plan(
                    way.told(), Optional.of(answer), Optional.empty(), PlanWood.shared(found.mothers(), toSet, method));
            needs(way).ifPresent(needs -> uses.put(made, () -> needs.use(toSet)));
            return made;
        }

        /** Return to how many mothers somebody goes to set so many; one at least. */
        private int goings(int toSet) {
            return (int) Math.max(
                    1,
                    PlanWood.shared(found.mothers(), toSet, method).stream()
                            .filter(mother -> mother.use() > 0)
                            .count());
        }

        /** Return when those set in a window are ready, from the cultivar's own times or, where they are few, from others'. */
        private Optional<Ready> ready(Window window) {
            Set<String> taxa = new HashSet<>();
            names.forEach(name -> taxa.add(name.taxon()));
            for (Lean lean : Lean.values()) {
                Optional<Waiting> waiting = switch (lean) {
                    case OWN ->
                        names.size() == 1 ? waiting(names.iterator().next().toString()) : Optional.empty();
                    case TAXON -> taxa.size() == 1 ? waiting(taxa.iterator().next()) : Optional.empty();
                    case ALL ->
                        Optional.of(Timing.ask(view, snapshot, TimingQuestion.of(method, asOf))
                                .all()
                                .ready());
                };
                Optional<Ready> ready = waiting.filter(one ->
                                one.happened() >= Waiting.FEW && one.half().isPresent())
                        .map(one -> new Ready(
                                window.from()
                                        .plusDays(Math.round(
                                                one.tenth().orElseThrow().lower())),
                                one.ninetieth()
                                        .filter(range -> Double.isFinite(range.upper()))
                                        .map(range -> window.to().plusDays(Math.round(range.upper()))),
                                one.half().orElseThrow().lower(),
                                one.happened(),
                                lean));
                if (ready.isPresent()) {
                    return ready;
                }
            }
            return Optional.empty();
        }

        private Optional<Waiting> waiting(String name) {
            if (history.all().stream()
                    .noneMatch(cohort -> history.isOwn(cohort.cultivar()) || history.isOfTaxon(cohort.cultivar()))) {
                return Optional.empty();
            }
            try {
                TimingRow all = Timing.ask(
                                view, snapshot, TimingQuestion.of(method, asOf).cultivar(name))
                        .all();
                return Optional.of(all.ready());
            } catch (OrtetException unknown) {
                return Optional.empty();
            }
        }

        // ---- what can be had instead ----

        private Plan shortOf(List<Window> windows, Optional<Number> needed) {
            boolean isLimited = method == Method.LAYER || means.isPresent();
            Optional<Way> best = Optional.empty();
            int most = 0;
            double chance = 0;
            for (Window window : windows) {
                for (int days : worthwhile(horizon(window, question.by()))) {
                    Way way = new Way(window, days, stages(days), told(days));
                    int limit = limit(way);
                    double here = outlook(days).atLeast(question.wanted(), limit);
                    int count = isLimited
                            ? (int) Planning.largest(
                                    limit, question.sure(), stages(days).outlook())
                            : 0;
                    if (best.isEmpty() || count > most || count == most && here > chance) {
                        best = Optional.of(way);
                        most = count;
                        chance = here;
                    }
                }
            }
            boolean lacksPositions = needed.filter(
                            number -> method == Method.LAYER && number.plan().trials() > found.free())
                    .isPresent();
            Why why = best.isEmpty()
                    ? Why.TOO_LATE
                    : lacksPositions ? Why.POSITIONS : needed.isPresent() ? Why.MEANS : Why.NOT_SO_SURE;
            // too late for any: nothing is said of how many would be fit for sale in time
            List<PlanStage> told =
                    best.map(Way::told).orElseGet(() -> List.of(take.orElseThrow(), establish.orElseThrow()));
            int limit = best.map(this::limit).orElse(0);
            int use = isLimited && most > 0 ? limit : 0;
            Optional<PlanMeans.Needs> needs = best.flatMap(this::needs);
            Plan made = plan(
                    told,
                    Optional.empty(),
                    Optional.of(new Shortfall(
                            why,
                            positions(),
                            needed.map(number -> Math.toIntExact(number.plan().trials())),
                            best.isEmpty() ? Optional.of(0) : isLimited ? Optional.of(most) : Optional.empty(),
                            best.filter(way -> isLimited).map(way -> (int) Planning.largest(
                                    limit, AS_LIKELY_AS_NOT, way.stages().outlook())),
                            Optional.of(chance),
                            why == Why.MEANS ? needs.flatMap(PlanMeans.Needs::scarcest) : Optional.empty(),
                            soonest(),
                            best.map(way -> way.window().from()),
                            best.map(way -> way.window().to()))),
                    PlanWood.shared(found.mothers(), use, method));
            needs.ifPresent(some -> uses.put(made, () -> some.use(use)));
            return made;
        }

        /** Return the first day by which as many as asked can be had, set in one of the next windows, with what there is. */
        private Optional<LocalDate> soonest() {
            List<Window> next = weeks.orElseThrow().between(asOf, asOf.plusYears(YEARS_AHEAD));
            int ever = method == Method.LAYER ? Math.min(found.free(), PlanQuestion.MOST) : MANY;
            for (int days : steps) {
                if (outlook(days).atLeast(question.wanted(), ever) < question.sure()) {
                    continue;
                }
                for (Window window : next) {
                    Way way = new Way(window, days, stages(days), told(days));
                    int here = Math.min(ever, limit(way));
                    boolean isEnough =
                            here == ever || outlook(days).atLeast(question.wanted(), here) >= question.sure();
                    if (way.fitBy().isAfter(question.by()) && isEnough) {
                        return Optional.of(way.fitBy());
                    }
                }
            }
            return Optional.empty();
        }
    }
}
