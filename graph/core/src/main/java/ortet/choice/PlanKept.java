package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.statistics.distribution.BetaDistribution;
import ortet.book.BookView;
import ortet.book.Listed;
import ortet.book.UnitFacts.Method;
import ortet.entry.Planned;
import ortet.figures.BetaBinomial.Shapes;
import ortet.figures.Count;
import ortet.figures.Interval;
import ortet.figures.Stages;
import ortet.nursery.Snapshot;
import ortet.plant.CultivarName;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.yield.Establishment;
import ortet.yield.Outcomes;
import ortet.yield.Outcomes.Cohort;
import ortet.yield.Outcomes.Plants;
import ortet.yield.Outcomes.Standing;
import ortet.yield.Periods;

/**
 * A plan that is kept, and how it stands: of all units of its cultivar and method that were set on its days, each for one plan
 * alone, the plan kept first before later ones that are alike in these.
 *
 * @param order the recorded order of the entry that keeps it
 * @param plan what was planned
 * @param asOf the cut-off day
 * @param set how many were set so far
 * @param taken how many of these have taken
 * @param failed how many have failed
 * @param pending how many are not known yet
 * @param fit how many are or were fit for sale by the cut-off day, and by the day of the plan
 * @param growing how many more grow on
 * @param toCome how many are still to be set, while that can be done
 * @param outlook what is expected in the end; absent once the day of the plan is over, or where the book does not tell it
 * @param state how it stands
 */
public record PlanKept(
        long order,
        Planned plan,
        LocalDate asOf,
        int set,
        int taken,
        int failed,
        int pending,
        int fit,
        int growing,
        int toCome,
        Optional<Outlook> outlook,
        State state) {
    private static final double PERCENT = 100;
    private static final double LEVEL = 0.1;

    /**
     * What is expected in the end.
     *
     * @param expected how many trees
     * @param range where their number lies with a probability of 90 %
     * @param chance how likely they are enough
     * @param more how many more would have to be set for it to be as sure as planned, 0 where it is; absent where setting is
     *     over, or no number is enough
     */
    public record Outlook(double expected, Interval range, double chance, Optional<Integer> more) {}

    /** How a plan stands. */
    public enum State {
        /** As sure as planned, or surer. */
        ON_COURSE,
        /** Less sure than planned. */
        BEHIND,
        /** Enough trees are fit for sale. */
        MET,
        /** The day is over, and there were not enough. */
        MISSED,
        /** The book does not tell. */
        NOT_KNOWN
    }

    public PlanKept {
        Objects.requireNonNull(plan);
        Objects.requireNonNull(asOf);
        Objects.requireNonNull(outlook);
        Objects.requireNonNull(state);
    }

    /** Tell whether the day of the plan is over. */
    public boolean isOver() {
        return asOf.isAfter(plan.wantedBy().last());
    }

    /** Return every plan that is kept, the latest of each name, by the day for which it is. */
    public static List<PlanKept> all(BookView view, Snapshot snapshot) {
        Reader reader = new Reader(view, snapshot);
        return latest(view, snapshot.asOf()).values().stream()
                .map(reader::read)
                .sorted(Comparator.comparing(
                                (PlanKept one) -> one.plan().wantedBy().last())
                        .thenComparing(one -> one.plan().name()))
                .toList();
    }

    /**
     * Return the plan of a name, upper and lower case alike.
     *
     * @throws Refused when there is none; the nearest are named
     */
    public static PlanKept named(BookView view, Snapshot snapshot, String name) {
        Map<String, Listed> plans = latest(view, snapshot.asOf());
        Listed listed = plans.get(name.strip().toLowerCase(Locale.ROOT));
        if (listed == null) {
            List<String> names = plans.values().stream()
                    .map(one -> ((Planned) one.entry()).name())
                    .toList();
            throw new Refused(Fault.of(
                            "unknown-plan",
                            names.isEmpty()
                                    ? "no plan is kept in this book"
                                    : "no plan \"" + name + "\"; there are " + String.join(", ", names))
                    .nearest(Nearest.of(name, names)));
        }
        return new Reader(view, snapshot).read(listed);
    }

    private static Map<String, Listed> latest(BookView view, LocalDate asOf) {
        Map<String, Listed> latest = new LinkedHashMap<>();
        for (Listed listed : Listed.plans(view, asOf)) {
            latest.put(((Planned) listed.entry()).name().toLowerCase(Locale.ROOT), listed);
        }
        return latest;
    }

    /** Reads how plans stand off one snapshot. */
    private static final class Reader {
        private final BookView view;
        private final Snapshot snapshot;
        private final Map<Optional<String>, Outcomes> bySize = new HashMap<>();
        private final List<Listed> plans;
        /** By unit the plan that it counts for, where several could claim it. */
        private final Map<Integer, Listed> claimed = new HashMap<>();

        Reader(BookView view, Snapshot snapshot) {
            this.view = view;
            this.snapshot = snapshot;
            this.plans = List.copyOf(latest(view, snapshot.asOf()).values());
            claim();
        }

        /**
         * Let each unit count for one plan: the plan kept first takes whole tags in the order of their setting until it has as
         * many as it wants to be set, then the next; what is beyond all of them counts for the last.
         */
        private void claim() {
            Map<Listed, List<Cohort>> could = new LinkedHashMap<>();
            for (Listed listed : plans) {
                Planned plan = (Planned) listed.entry();
                Set<CultivarName> names = names(plan);
                could.put(
                        listed,
                        outcomes(Optional.empty()).cohorts().stream()
                                .filter(cohort -> isFor(plan, names, cohort))
                                .sorted(Comparator.comparing(Cohort::set).thenComparingInt(Cohort::unit))
                                .toList());
            }
            could.forEach((listed, cohorts) -> {
                int set = 0;
                for (Cohort cohort : cohorts) {
                    boolean isOwn = listed.equals(claimed.get(cohort.unit()));
                    if (isOwn || set < ((Planned) listed.entry()).toSet() && !claimed.containsKey(cohort.unit())) {
                        claimed.put(cohort.unit(), listed);
                        set += cohort.tally().set();
                    }
                }
            });
            List<Listed> backward = new ArrayList<>(plans);
            Collections.reverse(backward);
            backward.forEach(listed -> could.get(listed).forEach(cohort -> claimed.putIfAbsent(cohort.unit(), listed)));
        }

        private boolean isFor(Planned plan, Set<CultivarName> names, Cohort cohort) {
            return cohort.method() == Method.valueOf(plan.method().name()) && isOf(plan, names, cohort);
        }

        private Outcomes outcomes(Optional<String> size) {
            Set<String> graded = new HashSet<>();
            snapshot.lives().sizes().forEach(one -> graded.add(one.toLowerCase(Locale.ROOT)));
            Optional<String> known = size.filter(one -> graded.contains(one.toLowerCase(Locale.ROOT)));
            return bySize.computeIfAbsent(
                    known, one -> Outcomes.of(snapshot, Periods.DEFAULTS, Establishment.DEFAULTS, one));
        }

        PlanKept read(Listed listed) {
            Planned plan = (Planned) listed.entry();
            LocalDate asOf = snapshot.asOf();
            Method method = Method.valueOf(plan.method().name());
            Outcomes outcomes = outcomes(plan.size());
            Set<CultivarName> names = names(plan);
            PlanHistory history = new PlanHistory(
                    outcomes, snapshot.cultivars(), names, method, asOf, cohort -> !isOf(plan, names, cohort));
            Tally tally = new Tally();
            for (Cohort cohort : outcomes.cohorts()) {
                if (isFor(plan, names, cohort) && listed.equals(claimed.get(cohort.unit()))) {
                    tally.add(cohort);
                }
            }
            boolean isSized = plan.size().isEmpty()
                    || snapshot.lives().sizes().stream().anyMatch(plan.size().get()::equalsIgnoreCase);
            for (Plants plants : outcomes.plants()) {
                if (isFor(plan, names, plants.cohort())
                        && listed.equals(claimed.get(plants.cohort().unit()))) {
                    tally.add(plants, plan.wantedBy().last(), isSized);
                }
            }
            int toCome = asOf.isAfter(plan.setTo().last()) ? 0 : Math.max(0, plan.toSet() - tally.set);
            boolean isOver = asOf.isAfter(plan.wantedBy().last());
            Optional<Outlook> outlook = isOver ? Optional.empty() : outlook(plan, history, tally, toCome);
            State state = tally.fit >= plan.wanted()
                    ? State.MET
                    : isOver
                            ? State.MISSED
                            : outlook.map(one -> one.chance() * PERCENT
                                                    >= plan.surePercent()
                                                                    .value()
                                                                    .doubleValue()
                                                            - 1e-9
                                            ? State.ON_COURSE
                                            : State.BEHIND)
                                    .orElse(State.NOT_KNOWN);
            return new PlanKept(
                    listed.order(),
                    plan,
                    asOf,
                    tally.set,
                    tally.taken,
                    tally.failed,
                    tally.pending,
                    tally.fit,
                    tally.established + tally.young,
                    toCome,
                    outlook,
                    state);
        }

        private Set<CultivarName> names(Planned plan) {
            Set<CultivarName> names = new TreeSet<>();
            for (CultivarName name : snapshot.cultivars()) {
                boolean isIt = name.equals(plan.cultivar());
                boolean isUnder = plan.cultivar().epithet().isEmpty()
                        && (name.taxon().equals(plan.cultivar().taxon())
                                || name.taxon().startsWith(plan.cultivar().taxon() + " "));
                if (isIt || isUnder) {
                    names.add(name);
                }
            }
            names.add(plan.cultivar());
            return names;
        }

        private boolean isOf(Planned plan, Set<CultivarName> names, Cohort cohort) {
            return cohort.cultivar() >= 0
                    && names.contains(snapshot.cultivars().get(cohort.cultivar()))
                    && !cohort.set().isBefore(plan.setFrom().first())
                    && !cohort.set().isAfter(plan.setTo().last());
        }

        private Optional<Outlook> outlook(Planned plan, PlanHistory history, Tally tally, int toCome) {
            Optional<PlanStage> take = history.take();
            Optional<PlanStage> establish = history.establish();
            long horizon =
                    plan.wantedBy().last().toEpochDay() - plan.setTo().last().toEpochDay();
            Optional<PlanStage> fit = best(history, horizon);
            if (take.isEmpty() || establish.isEmpty() || fit.isEmpty()) {
                return Optional.empty();
            }
            Stages stages = Stages.of(List.of(
                    take.get().shapes().given(new Count(tally.taken, (long) tally.taken + tally.failed)),
                    establish.get().shapes().given(new Count(tally.proven, (long) tally.proven + tally.dead)),
                    fit.get().shapes()));
            double sure = plan.surePercent().value().doubleValue() / PERCENT;
            double[] now = tally.distribution(stages, toCome);
            Optional<Integer> more = Optional.empty();
            if (PlanRange.atLeast(now, plan.wanted()) >= sure - 1e-12) {
                more = Optional.of(0);
            } else if (!snapshot.asOf().isAfter(plan.setTo().last())) {
                more = more(stages, tally, toCome, plan.wanted(), sure);
            }
            return Optional.of(
                    new Outlook(PlanRange.mean(now), PlanRange.of(now), PlanRange.atLeast(now, plan.wanted()), more));
        }

        private static Optional<Integer> more(Stages stages, Tally tally, int toCome, int wanted, double sure) {
            int low = 0;
            int high = 1;
            while (PlanRange.atLeast(tally.distribution(stages, toCome + high), wanted) < sure) {
                low = high;
                high *= 2;
                if (high > PlanQuestion.MOST / 2) {
                    return Optional.empty();
                }
            }
            while (high - low > 1) {
                int middle = (low + high) / 2;
                if (PlanRange.atLeast(tally.distribution(stages, toCome + middle), wanted) >= sure) {
                    high = middle;
                } else {
                    low = middle;
                }
            }
            return Optional.of(high);
        }

        /** Return the share that is fit for sale in so many days: of those for fewer days too the one that is surest. */
        private static Optional<PlanStage> best(PlanHistory history, long horizon) {
            Optional<PlanStage> best = Optional.empty();
            double largest = -1;
            for (int days = PlanHistory.STEP; days <= Math.min(horizon, history.longest()); days += PlanHistory.STEP) {
                Optional<PlanStage> stage = history.fit(days);
                if (stage.isPresent()) {
                    Shapes shapes = stage.get().shapes();
                    double low =
                            BetaDistribution.of(shapes.alpha(), shapes.beta()).inverseCumulativeProbability(LEVEL);
                    if (low > largest) {
                        largest = low;
                        best = stage;
                    }
                }
            }
            return best;
        }
    }

    /** Counts what became of what was set for a plan. */
    private static final class Tally {
        private int set;
        private int taken;
        private int failed;
        private int pending;
        private int fit;
        private int established;
        private int young;
        private int proven;
        private int dead;

        void add(Cohort cohort) {
            set += cohort.tally().set();
            taken += cohort.tally().taken();
            failed += cohort.tally().failed();
            pending += cohort.tally().pending();
        }

        void add(Plants plants, LocalDate by, boolean isSized) {
            boolean isFit = isSized
                    && plants.daysToFit()
                            .map(days -> plants.cohort().set().plusDays(days))
                            .filter(day -> !day.isAfter(by))
                            .isPresent();
            if (plants.standing() == Standing.ESTABLISHED) {
                proven += plants.count();
            } else if (plants.standing() == Standing.NOT_ESTABLISHED) {
                dead += plants.count();
            }
            if (isFit) {
                fit += plants.count();
            } else if (plants.isThere() && plants.standing() == Standing.ESTABLISHED) {
                established += plants.count();
            } else if (plants.isThere()) {
                young += plants.count();
            }
        }

        double[] distribution(Stages stages, int toCome) {
            return stages.distribution(new long[] {(long) pending + toCome, young, established}, fit);
        }
    }
}
