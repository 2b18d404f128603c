package ortet.choice;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.apache.commons.statistics.distribution.BetaDistribution;
import ortet.book.UnitFacts.Method;
import ortet.choice.PlanStage.Kind;
import ortet.choice.PlanStage.Lean;
import ortet.choice.PlanStage.Spread;
import ortet.figures.BetaBinomial;
import ortet.figures.BetaBinomial.Shapes;
import ortet.figures.Count;
import ortet.figures.Interval;
import ortet.figures.NextGroup;
import ortet.plant.CultivarName;
import ortet.yield.Outcomes;
import ortet.yield.Outcomes.Cohort;
import ortet.yield.Outcomes.Plants;
import ortet.yield.Outcomes.Standing;

/**
 * What the book tells of a cultivar by one method: of each stage the rate of a season to come, and the usual weeks of setting
 * (docs/methods/plan.md). Where too little is known of the cultivar itself it leans on those of the same botanical name,
 * else on all.
 */
final class PlanHistory {
    /** Trees are taken to be fit for sale by steps of so many days after setting. */
    static final int STEP = 28;

    /** So many units each by itself must be known of a cultivar, or its rate leans on others. */
    static final int ENOUGH = 10;

    /** So many other cultivars must be known to be leaned on. */
    static final int FEWEST_OTHERS = 3;

    /** By so many seasons more than cultivars it must be told how much seasons differ, or more cultivars are asked. */
    static final int FEWEST_DEGREES = 8;

    /** On so many days something must have been set for its weeks to be told. */
    static final int FEWEST_DAYS = 3;

    /** The confidence of intervals. */
    static final double CONFIDENCE = 0.9;

    private final LocalDate asOf;
    private final List<CultivarName> names;
    private final Set<CultivarName> own;
    private final Set<String> taxa = new HashSet<>();
    private final List<Cohort> cohorts;
    private final List<Plants> plants;
    private final Map<Integer, Optional<PlanStage>> fits = new TreeMap<>();

    /**
     * Gather what is known.
     *
     * @param names the names of the snapshot
     * @param own those asked about
     * @param counted which cohorts count
     */
    PlanHistory(
            Outcomes outcomes,
            List<CultivarName> names,
            Set<CultivarName> own,
            Method method,
            LocalDate asOf,
            Predicate<Cohort> counted) {
        this.asOf = asOf;
        this.names = names;
        this.own = Set.copyOf(own);
        own.forEach(name -> taxa.add(name.taxon()));
        Predicate<Cohort> mine = cohort -> cohort.method() == method && counted.test(cohort);
        this.cohorts = outcomes.cohorts().stream().filter(mine).toList();
        this.plants = outcomes.plants().stream()
                .filter(one -> mine.test(one.cohort()))
                .toList();
    }

    /** Return the cohorts of the cultivar. */
    List<Cohort> own() {
        return cohorts.stream().filter(cohort -> isOwn(cohort.cultivar())).toList();
    }

    /** Return every cohort of the method. */
    List<Cohort> all() {
        return cohorts;
    }

    /** Tell whether a name, by its place among the names, is one asked about. */
    boolean isOwn(int name) {
        return name >= 0 && own.contains(names.get(name));
    }

    /** Tell whether a name stands under the same botanical name. */
    boolean isOfTaxon(int name) {
        return name >= 0 && taxa.contains(names.get(name).taxon());
    }

    // ---- the stages ----

    /** Sums by cultivar and season. */
    private static final class Table {
        private final Map<Integer, Map<Integer, long[]>> sums = new TreeMap<>();

        void add(Cohort cohort, long successes, long trials) {
            long[] sum = sums.computeIfAbsent(cohort.cultivar(), name -> new TreeMap<>())
                    .computeIfAbsent(cohort.season(), season -> new long[2]);
            sum[0] += successes;
            sum[1] += trials;
        }

        List<List<Count>> sets(Predicate<Integer> wanted) {
            List<List<Count>> sets = new ArrayList<>();
            sums.forEach((name, seasons) -> {
                if (wanted.test(name)) {
                    sets.add(seasons.values().stream()
                            .filter(sum -> sum[1] > 0)
                            .map(sum -> new Count(sum[0], sum[1]))
                            .toList());
                }
            });
            return sets;
        }

        List<Count> seasons(Predicate<Integer> wanted) {
            Map<Integer, long[]> all = new TreeMap<>();
            sums.forEach((name, seasons) -> {
                if (wanted.test(name)) {
                    seasons.forEach((season, sum) -> {
                        long[] both = all.computeIfAbsent(season, one -> new long[2]);
                        both[0] += sum[0];
                        both[1] += sum[1];
                    });
                }
            });
            return all.values().stream()
                    .filter(sum -> sum[1] > 0)
                    .map(sum -> new Count(sum[0], sum[1]))
                    .toList();
        }
    }

    /** Return the rate of taking. */
    Optional<PlanStage> take() {
        Table table = new Table();
        cohorts.forEach(cohort ->
                table.add(cohort, cohort.tally().taken(), cohort.tally().known().trials()));
        return stage(Kind.TAKE, table);
    }

    /** Return the rate of establishing, of those taken. */
    Optional<PlanStage> establish() {
        Table table = new Table();
        plants.stream()
                .filter(one -> one.standing() != Standing.NOT_KNOWN)
                .forEach(one ->
                        table.add(one.cohort(), one.standing() == Standing.ESTABLISHED ? one.count() : 0, one.count()));
        return stage(Kind.ESTABLISH, table);
    }

    /**
     * Return the share that is fit for sale so many days after setting, of those not known to have died before they
     * established; told from plants set so long ago or longer.
     *
     * @param days a multiple of {@link #STEP}
     */
    Optional<PlanStage> fit(int days) {
        return fits.computeIfAbsent(days, this::readFit);
    }

    private Optional<PlanStage> readFit(int days) {
        Table table = new Table();
        for (Plants one : plants) {
            boolean isFollowed = ChronoUnit.DAYS.between(one.cohort().set(), asOf) >= days;
            if (isFollowed && one.standing() != Standing.NOT_ESTABLISHED && !one.isLeft()) {
                boolean isFit = one.daysToFit().filter(after -> after <= days).isPresent();
                table.add(one.cohort(), isFit ? one.count() : 0, one.count());
            }
        }
        return stage(Kind.FIT, table)
                .filter(stage -> stage.own().successes() + stage.helped().successes() > 0);
    }

    /** Return for how long, in days, any plant was followed: a multiple of {@link #STEP}. */
    int longest() {
        return plants.stream()
                .mapToInt(one ->
                        Math.toIntExact(ChronoUnit.DAYS.between(one.cohort().set(), asOf)) / STEP * STEP)
                .max()
                .orElse(0);
    }

    private Optional<PlanStage> stage(Kind kind, Table table) {
        List<Count> mine = table.seasons(this::isOwn);
        Predicate<Integer> siblings = name -> isOfTaxon(name) && !isOwn(name);
        Predicate<Integer> strangers = name -> !isOwn(name);
        Spread source = Spread.UNTOLD;
        double correlation = 0;
        int degrees = 0;
        for (Spread from : List.of(Spread.OWN, Spread.TAXON, Spread.ALL)) {
            Predicate<Integer> whose = switch (from) {
                case OWN -> this::isOwn;
                case TAXON -> this::isOfTaxon;
                case ALL, UNTOLD -> name -> true;
            };
            List<List<Count>> sets = table.sets(whose);
            int here = NextGroup.degrees(sets);
            // where every unit had the same outcome in so many seasons, they differ in nothing that could be told
            Optional<Double> told =
                    NextGroup.correlation(sets).or(() -> here >= FEWEST_DEGREES ? Optional.of(0.0) : Optional.empty());
            if (told.isPresent() && here >= (from == Spread.ALL ? 1 : FEWEST_DEGREES)) {
                source = from;
                correlation = told.get();
                degrees = here;
                break;
            }
        }
        Count known = sum(mine);
        Lean lean = Lean.OWN;
        List<Count> help = List.of();
        if (NextGroup.effective(mine, correlation) < ENOUGH) {
            List<Count> bySiblings = cultivars(table.sets(siblings), correlation);
            List<Count> byStrangers = cultivars(table.sets(strangers), correlation);
            if (bySiblings.size() >= FEWEST_OTHERS) {
                lean = Lean.TAXON;
                help = bySiblings;
            } else if (byStrangers.size() >= FEWEST_OTHERS) {
                lean = Lean.ALL;
                help = byStrangers;
            }
        }
        if (known.trials() <= 0 && lean == Lean.OWN) {
            return Optional.empty();
        }
        Shapes before = lean == Lean.OWN ? NextGroup.NOTHING_KNOWN : prior(help);
        Shapes shapes = NextGroup.shapes(mine, correlation, before);
        BetaDistribution beta = BetaDistribution.of(shapes.alpha(), shapes.beta());
        Count helped =
                lean == Lean.OWN ? new Count(0, 0) : sum(table.seasons(lean == Lean.TAXON ? siblings : strangers));
        return Optional.of(new PlanStage(
                kind,
                known,
                mine.size(),
                lean,
                help.size(),
                helped,
                correlation,
                source,
                degrees,
                shapes,
                new Interval(
                        beta.inverseCumulativeProbability((1 - CONFIDENCE) / 2),
                        beta.inverseSurvivalProbability((1 - CONFIDENCE) / 2),
                        CONFIDENCE,
                        Interval.Method.BETA_BINOMIAL)));
    }

    private static Count sum(List<Count> counts) {
        return counts.stream().reduce(new Count(0, 0), Count::plus);
    }

    /** Return what each cultivar weighs as much as in units each by itself, in whole ones. */
    private static List<Count> cultivars(List<List<Count>> sets, double correlation) {
        List<Count> cultivars = new ArrayList<>();
        for (List<Count> seasons : sets) {
            long weight = Math.round(NextGroup.effective(seasons, correlation));
            if (weight >= 1) {
                double share = NextGroup.shapes(seasons, correlation, new Shapes(1e-9, 1e-9))
                        .mean();
                cultivars.add(new Count(Math.round(share * weight), weight));
            }
        }
        return cultivars;
    }

    /** Return how the rates of cultivars are spread, as far as the fit can tell; else each counts as one unit or all as one. */
    private static Shapes prior(List<Count> cultivars) {
        BetaBinomial fit = BetaBinomial.of(cultivars);
        if (fit.shapes().isPresent()) {
            return fit.shapes().get();
        }
        Count all = sum(cultivars);
        boolean isAlike = fit.rho().filter(rho -> rho.value() == 0).isPresent();
        double weight = isAlike ? all.trials() : cultivars.size();
        double share = all.share().orElseThrow();
        return new Shapes(0.5 + share * weight, 0.5 + (1 - share) * weight);
    }

    // ---- the weeks ----

    /** Return the usual weeks of setting; absent where nothing was ever set by the method on a day that is known. */
    Optional<PlanWeeks> weeks() {
        return weeks(this::isOwn, Lean.OWN, FEWEST_DAYS)
                .or(() -> weeks(this::isOfTaxon, Lean.TAXON, FEWEST_DAYS))
                .or(() -> weeks(name -> true, Lean.ALL, 1));
    }

    private Optional<PlanWeeks> weeks(Predicate<Integer> whose, Lean lean, int fewest) {
        List<PlanWeeks.Setting> settings = cohorts.stream()
                .filter(cohort -> cohort.isExact() && whose.test(cohort.cultivar()))
                .map(cohort ->
                        new PlanWeeks.Setting(cohort.set(), cohort.tally().set()))
                .toList();
        return PlanWeeks.of(settings, lean).filter(weeks -> weeks.days() >= fewest);
    }
}
