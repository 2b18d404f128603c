package ortet.choice;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Draws what may become of every unit that is pending or growing, many times (docs/methods/forecast.md).
 *
 * <p>Units of one kind, age and cluster are counted together and drawn at one go. Each simulation has a generator of its own,
 * so that the same seed gives the same answer however many processors share the work. O(simulations × (kinds × ages + units))
 * time at worst.
 */
final class ForecastRun {
    private static final double STEADY = 64;
    private static final double RANDOM_SIZE = 3;
    private static final double HALF = 0.5;
    private static final double SMALL = 1e-6;
    private static final double LEAST_OWN = 0.05;
    private static final double SURE = 1 - 1e-9;
    private static final int WEEK = 7;
    private static final int YEAR = 366;
    private static final double[] FRESH = {Double.NaN, Double.NaN, Double.NaN};

    private final ForecastPast past;
    private final ForecastModel[] models;
    private final int months;
    private final int simulations;
    private final ForecastSales sales;
    private final long seed;
    private final int[] monthEnds;
    private final int[] monthOfYear;
    private final int[] year;
    private final int firstYear;
    private final int sizes;
    private final int[] slots;
    private final List<Integer> cultivars = new ArrayList<>();
    private final List<Set<Integer>> kinds = new ArrayList<>();
    private final List<List<Batch>> batches = new ArrayList<>();
    private final Map<Integer, double[]> sizeWeights = new HashMap<>();
    private final double[] allSizes;
    private final double sizeCorrelation;
    private final Map<Long, Integer> places = new HashMap<>();
    private final List<ForecastLikely[]> draws = new ArrayList<>();
    private final List<Map<Integer, double[]>> standsOn = new ArrayList<>();
    private final ForecastTogether together;
    private final ForecastTogether soldTogether;
    private final List<int[]> rounds = new ArrayList<>();
    private final int[] roundOf;
    private final int lastRoundEnds;
    private final double[] habits;
    private final int[][] became;
    private final int[][] standing;

    /** Units of one kind that entered a stage in one week, with their age by the clock of every model. */
    private record Batch(int kind, double[] age, int[] counts, int[] seasons, int[][] places, int units) {}

    /**
     * Run.
     *
     * @param months how many, the first what is left of its own
     * @param last the last day that counts, if it is before the last month ends
     * @param asked whether a cultivar is to be told of
     */
    ForecastRun(
            ForecastPast past,
            int months,
            int last,
            int simulations,
            long seed,
            ForecastSales sales,
            IntPredicate asked) {
        this.past = past;
        this.months = months;
        this.simulations = simulations;
        this.seed = seed;
        this.sales = sales;
        this.monthEnds = new int[months + 1];
        this.monthOfYear = new int[months];
        this.year = new int[months];
        monthEnds[0] = past.asOf();
        YearMonth month = firstMonth(past.asOf());
        for (int at = 0; at < months; at++) {
            monthEnds[at + 1] =
                    Math.toIntExact(Math.min(last, month.atEndOfMonth().toEpochDay()));
            monthOfYear[at] = month.getMonthValue() - 1;
            year[at] = month.getYear();
            month = month.plusMonths(1);
        }
        // clocks run to the end of the last round of grading
        int longest = monthEnds[months] + YEAR;
        this.models = Arrays.stream(ForecastStage.values())
                .map(stage -> new ForecastModel(past, stage, longest))
                .toArray(ForecastModel[]::new);
        this.firstYear = ForecastModel.firstYear(past);
        this.sizes = past.sizes().size() + 1;
        for (ForecastStage stage : ForecastStage.values()) {
            kinds.add(new TreeSet<>());
            batches.add(
                    stage.told() == stage
                            ? batches(stage, asked)
                            : batches.get(stage.told().ordinal()));
        }
        // what is to take is to grow on as well
        kinds.get(1).addAll(kinds.get(0));
        kinds.get(2).addAll(kinds.get(1));
        this.slots = new int[past.cultivars().size()];
        Arrays.fill(slots, -1);
        TreeSet<Integer> found = new TreeSet<>();
        kinds.get(1).forEach(kind -> found.add(past.kinds().get(kind).cultivar()));
        past.stock().stream()
                .filter(stock -> asked.test(stock.cultivar()))
                .forEach(stock -> found.add(stock.cultivar()));
        found.forEach(cultivar -> {
            slots[cultivar] = cultivars.size();
            cultivars.add(cultivar);
        });
        for (ForecastStage stage : ForecastStage.values()) {
            ForecastModel model = models[stage.ordinal()];
            ForecastLikely[] of = new ForecastLikely[places.size()];
            places.forEach((key, place) -> of[place] = model.likely(key));
            draws.add(of);
            Map<Integer, double[]> parts = new HashMap<>();
            kinds.get(stage.ordinal()).forEach(kind -> parts.put(kind, model.standsOn(kind)));
            standsOn.add(parts);
        }
        ForecastRounds years = models[ForecastStage.GRADING.ordinal()].clock(0).rounds();
        this.together = ForecastTogether.of(past, years, false);
        this.soldTogether = ForecastTogether.of(past, years, true);
        this.roundOf = new int[months + 1];
        for (int at = 0; at < months; at++) {
            if (at == 0 || round(at) != round(at - 1)) {
                rounds.add(new int[] {at, at});
            }
            rounds.get(rounds.size() - 1)[1] = at + 1;
            roundOf[at] = rounds.size() - 1;
        }
        roundOf[months] = rounds.size() - 1;
        this.habits = past.kinds().stream()
                .mapToDouble(kind -> together.habit(kind.cultivar()))
                .toArray();
        this.lastRoundEnds = together.rounds().begins(round(months - 1) + 1) - 1;
        this.allSizes = new double[sizes];
        this.sizeCorrelation = sizes();
        this.became = new int[simulations][];
        this.standing = new int[simulations][];
    }

    private int round(int month) {
        return together.rounds().round(year[month], monthOfYear[month]);
    }

    /** Return the month of the day after a day. */
    static YearMonth firstMonth(int asOf) {
        return YearMonth.from(LocalDate.ofEpochDay(asOf + 1L));
    }

    // ---- before ----

    private List<Batch> batches(ForecastStage stage, IntPredicate asked) {
        Map<List<Integer>, Map<Long, Integer>> byWeek = new LinkedHashMap<>();
        Map<List<Integer>, double[]> ages = new HashMap<>();
        past.episodes().stream()
                .filter(one -> one.stage() == stage
                        && one.how() == ForecastEnd.STILL
                        && asked.test(past.kinds().get(one.kind()).cultivar()))
                .sorted(Comparator.comparingInt(ForecastEpisode::kind).thenComparingInt(ForecastEpisode::start))
                .forEach(one -> {
                    List<Integer> key = List.of(one.kind(), Math.floorDiv(one.start(), WEEK));
                    double[] sums = ages.computeIfAbsent(key, any -> new double[models.length + 1]);
                    for (int at = 0; at < models.length; at++) {
                        sums[at] += one.count() * models[at].age(one.kind(), one.start(), past.asOf());
                    }
                    sums[models.length] += one.count();
                    long cluster = ForecastModel.key(one.cluster(), ForecastModel.season(stage, one) - firstYear);
                    byWeek.computeIfAbsent(key, any -> new TreeMap<>()).merge(cluster, one.count(), Integer::sum);
                });
        List<Batch> found = new ArrayList<>();
        byWeek.forEach((key, clusters) -> {
            int kind = key.get(0);
            kinds.get(stage.ordinal()).add(kind);
            int[] counts = clusters.values().stream().mapToInt(count -> count).toArray();
            int[] seasons = clusters.keySet().stream()
                    .mapToInt(cluster -> (int) (cluster & 0xffff))
                    .toArray();
            int[][] at = clusters.keySet().stream()
                    .map(cluster -> stage == ForecastStage.TAKING ? alongWith(cluster) : new int[] {place(cluster)})
                    .toArray(int[][]::new);
            double[] sums = ages.get(key);
            double[] age = new double[models.length];
            for (int of = 0; of < age.length; of++) {
                age[of] = sums[of] / sums[models.length];
            }
            found.add(new Batch(
                    kind, age, counts, seasons, at, Arrays.stream(counts).sum()));
        });
        return found;
    }

    private int place(long key) {
        return places.computeIfAbsent(key, any -> places.size());
    }

    /** Return the place of a cluster that is pending, and those that it will have in every year in which it may take. */
    private int[] alongWith(long key) {
        int[] found = new int[year[months - 1] - year[0] + 2];
        found[0] = place(key);
        for (int at = 1; at < found.length; at++) {
            found[at] = place(ForecastModel.key((int) (key >> Short.SIZE), year[0] + at - 1 - firstYear));
        }
        return found;
    }

    /** Count in which size classes trees became saleable; return how alike those of one cluster are in that. */
    private double sizes() {
        Map<Integer, double[]> clusters = new TreeMap<>();
        for (ForecastEpisode one : past.episodes()) {
            if (isGraded(one)) {
                clusters.computeIfAbsent(one.cluster(), any -> new double[sizes])[one.size()] += one.count();
                allSizes[one.size()] += one.count();
            }
        }
        double all = Arrays.stream(allSizes).sum();
        double alike = Arrays.stream(allSizes).map(n -> n * n).sum() / Math.max(1, all * all);
        double pairs = 0;
        double same = 0;
        for (double[] cluster : clusters.values()) {
            double n = Arrays.stream(cluster).sum();
            if (n > 1) {
                pairs += n;
                same += Arrays.stream(cluster).map(k -> k * (k - 1)).sum() / (n - 1);
            }
        }
        double correlation =
                pairs > 0 && alike < 1 ? Math.max(0, Math.min(0.95, (same / pairs - alike) / (1 - alike))) : 0;
        Map<Integer, Double> ofCluster = new HashMap<>();
        clusters.forEach((cluster, counts) ->
                ofCluster.put(cluster, 1 / (1 + (Arrays.stream(counts).sum() - 1) * correlation)));
        Arrays.fill(allSizes, 0);
        for (ForecastEpisode one : past.episodes()) {
            if (isGraded(one)) {
                double weight = ofCluster.get(one.cluster()) * one.count();
                allSizes[one.size()] += weight;
                sizeWeights.computeIfAbsent(one.kind(), any -> new double[sizes])[one.size()] += weight;
            }
        }
        return correlation;
    }

    private boolean isGraded(ForecastEpisode one) {
        return one.stage() == ForecastStage.GRADING && one.how() == ForecastEnd.GOOD && one.size() != past.ungraded();
    }

    // ---- answers ----

    List<Integer> cultivars() {
        return cultivars;
    }

    ForecastModel model(ForecastStage stage) {
        return models[stage.ordinal()];
    }

    /** Return what share of pairs of one cluster that come through in one round do so in one month, beyond what all do. */
    double inOneGo(ForecastStage stage) {
        return switch (stage) {
            case TAKING -> 0;
            case GRADING -> together.cluster();
            case SELLING -> soldTogether.cluster();
        };
    }

    Set<Integer> kinds(ForecastStage stage) {
        return kinds.get(stage.ordinal());
    }

    int waiting(ForecastStage stage, int kind) {
        return batches.get(stage.ordinal()).stream()
                .filter(batch -> batch.kind() == kind)
                .mapToInt(Batch::units)
                .sum();
    }

    /** Return how many units are older than any of their like that came through one of the stages: nothing comes of them here. */
    int tooOld(ForecastStage... stages) {
        Map<ForecastStage, ForecastCurve[]> told = new EnumMap<>(ForecastStage.class);
        for (ForecastStage stage : stages) {
            told.put(stage, models[stage.ordinal()].told(kinds.get(stage.ordinal())));
        }
        return batches.get(stages[0].ordinal()).stream()
                .filter(batch -> told.entrySet().stream()
                        .allMatch(one -> one.getValue()[batch.kind()].chance(
                                        batch.age()[one.getKey().ordinal()])
                                < SMALL))
                .mapToInt(Batch::units)
                .sum();
    }

    /** Return how many simulations there are of a cell. */
    int simulations() {
        return simulations;
    }

    /** Return how many became saleable in a month in each simulation, over the cells that are wanted. */
    int[] became(IntPredicate cultivar, IntPredicate size, int from, int to) {
        return summed(became, cultivar, size, from, to);
    }

    /** Return how many stood saleable at the end of a month in each simulation, over the cells that are wanted. */
    int[] standing(IntPredicate cultivar, IntPredicate size, int month) {
        return summed(standing, cultivar, size, month, month + 1);
    }

    private int[] summed(int[][] cells, IntPredicate cultivar, IntPredicate size, int from, int to) {
        int[] sums = new int[simulations];
        for (int slot = 0; slot < cultivars.size(); slot++) {
            for (int of = 0; cultivar.test(cultivars.get(slot)) && of < sizes; of++) {
                if (size.test(of)) {
                    for (int simulation = 0; simulation < simulations; simulation++) {
                        for (int month = from; month < to; month++) {
                            sums[simulation] += cells[simulation][cell(slot, of) + month];
                        }
                    }
                }
            }
        }
        return sums;
    }

    private int cell(int slot, int size) {
        return (slot * sizes + size) * months;
    }

    // ---- drawing ----

    /** Draw all simulations. */
    ForecastRun run() {
        IntStream.range(0, simulations).parallel().forEach(simulation -> {
            Drawing drawing = new Drawing(new ForecastDice(seed, simulation));
            drawing.draw();
            became[simulation] = drawing.came;
            standing[simulation] = drawing.stand;
        });
        return this;
    }

    /** One simulation. */
    private final class Drawing {
        private final ForecastDice dice;
        private final int[] came = new int[cultivars.size() * sizes * months];
        private final int[] stand = new int[cultivars.size() * sizes * months];
        private final int[] perMonth = new int[months];
        private final int[] graded = new int[months];
        private final int[] sold = new int[months];
        private final Map<Integer, double[]> sizeShares = new HashMap<>();
        private final int years = year[months - 1] - firstYear + 1;
        private final int[][] lots = new int[past.kinds().size() * years][];
        private Stage taking;
        private Stage grading;
        private Stage selling;
        private boolean anyGraded;
        private boolean anySold;

        Drawing(ForecastDice dice) {
            this.dice = dice;
        }

        void draw() {
            taking = new Stage(ForecastStage.TAKING);
            grading = new Stage(ForecastStage.GRADING);
            selling = new Stage(ForecastStage.SELLING);
            for (Batch batch : batches.get(0)) {
                taking.stand(batch.kind(), batch.age()[0], 0);
                taking.expect(taking.chance, taking.good);
                for (int at = 0; at < batch.counts().length; at++) {
                    Arrays.fill(perMonth, 0);
                    taking.luck(batch.kind(), batch.seasons()[at], batch.places()[at][0]);
                    int through = taking.through(batch.counts()[at]);
                    if (through > 0) {
                        taking.spread(through, perMonth);
                        growOn(batch.kind(), batch.places()[at]);
                    }
                }
            }
            for (Batch batch : batches.get(1)) {
                stand(batch.kind(), batch.age(), 0);
                for (int at = 0; at < batch.counts().length; at++) {
                    grow(batch.kind(), batch.seasons()[at], batch.places()[at][0], batch.counts()[at]);
                    count(batch.kind(), batch.seasons()[at]);
                }
            }
            gradeTogether();
            standing();
        }

        /** Let what has taken in some month grow on from the middle of it. */
        private void growOn(int kind, int[] at) {
            for (int month = 0; month < months; month++) {
                if (perMonth[month] > 0) {
                    stand(kind, FRESH, month);
                    grow(kind, year[month] - firstYear, at[year[month] - year[0] + 1], perMonth[month]);
                }
                if (month == months - 1 || year[month + 1] != year[month]) {
                    count(kind, year[month] - firstYear);
                }
            }
        }

        private void grow(int kind, int season, int at, int count) {
            selling.luck(kind, season, at);
            int sells = selling.through(count);
            if (sells > 0) {
                selling.spread(sells, sold);
                anySold = true;
            }
            grading.luck(kind, season, at);
            int grades = grading.through(count - sells);
            if (grades > 0) {
                grading.spread(grades, graded);
                anyGraded = true;
            }
        }

        /** Work out what may come of trees that have taken. */
        private void stand(int kind, double[] age, int from) {
            grading.stand(kind, age[1], from);
            selling.stand(kind, age[2], from);
            selling.expect(selling.chance, selling.good);
            double others = 1 - selling.chance;
            double everOthers = 1 - selling.good;
            grading.expect(ofOthers(grading.chance, others), ofOthers(grading.good, everOthers));
        }

        /** Return the share of those not sold that is graded; both curves are drawn, and may together be more than all. */
        private static double ofOthers(double share, double others) {
            return others > 0 ? Math.min(SURE, share / others) : 0;
        }

        private void count(int kind, int season) {
            if (anyGraded) {
                grade(kind, season, graded);
                Arrays.fill(graded, 0);
                anyGraded = false;
            }
            if (anySold) {
                int slot = slots[past.kinds().get(kind).cultivar()];
                for (int month = 0; month < months; month++) {
                    came[cell(slot, sizes - 1) + month] += sold[month];
                }
                Arrays.fill(sold, 0);
                anySold = false;
            }
        }

        private void grade(int kind, int season, int[] counts) {
            int place = kind * years + season;
            if (lots[place] == null) {
                lots[place] = new int[sizes * months];
            }
            int[] lot = lots[place];
            double[] shares = sizeShares.computeIfAbsent(kind, this::shares);
            int alike = -1;
            for (int month = 0; month < months; month++) {
                for (int one = 0; one < counts[month]; one++) {
                    int size;
                    if (sizeCorrelation > 0 && dice.uniform() < Math.sqrt(sizeCorrelation)) {
                        alike = alike < 0 ? pick(shares) : alike;
                        size = alike;
                    } else {
                        size = pick(shares);
                    }
                    lot[size * months + month]++;
                }
            }
        }

        /** Let trees of a lot, and of a cultivar, that are graded in one year be so in one month, as far as they ever were. */
        private void gradeTogether() {
            for (int place = 0; place < lots.length; place++) {
                if (lots[place] != null) {
                    int slot = slots[past.kinds().get(place / years).cultivar()];
                    together(lots[place], 0, together.lot(), 1, new int[0]);
                    for (int at = 0; at < lots[place].length; at++) {
                        came[cell(slot, 0) + at] += lots[place][at];
                    }
                }
            }
            int[] all = together.cultivar() > 0 ? allGraded() : new int[0];
            for (int slot = 0; slot < cultivars.size(); slot++) {
                together(came, cell(slot, 0), together.cultivar(), together.habit(cultivars.get(slot)), all);
            }
        }

        /** Return how many of all cultivars are graded in each month. */
        private int[] allGraded() {
            int[] all = new int[months];
            for (int slot = 0; slot < cultivars.size(); slot++) {
                for (int size = 0; size < sizes - 1; size++) {
                    for (int month = 0; month < months; month++) {
                        all[month] += came[cell(slot, size) + month];
                    }
                }
            }
            return all;
        }

        /**
         * Move trees to the month of one of them; each in each month is as likely as before.
         *
         * @param share of pairs that go together
         * @param habit how likely it is one of them, and not one of all
         * @param all how many trees of all are graded in each month
         */
        private void together(int[] counts, int from, double share, double habit, int[] all) {
            double goes = Math.sqrt(share);
            for (int[] round : rounds) {
                int trees = 0;
                for (int size = 0; goes > 0 && size < sizes - 1; size++) {
                    for (int month = round[0]; month < round[1]; month++) {
                        trees += counts[from + size * months + month];
                    }
                }
                if (trees > 1) {
                    int month = habit >= 1 || dice.uniform() < habit
                            ? monthOf(counts, from, sizes - 1, round, dice.below(trees))
                            : monthOf(all, 0, 1, round, dice.below(sum(all, round)));
                    for (int size = 0; size < sizes - 1; size++) {
                        int here = from + size * months;
                        for (int other = round[0]; other < round[1]; other++) {
                            int goesAlong = other == month ? 0 : dice.binomial(counts[here + other], goes);
                            counts[here + other] -= goesAlong;
                            counts[here + month] += goesAlong;
                        }
                    }
                }
            }
        }

        private int sum(int[] counts, int[] round) {
            int sum = 0;
            for (int month = round[0]; month < round[1]; month++) {
                sum += counts[month];
            }
            return sum;
        }

        private int monthOf(int[] counts, int from, int classes, int[] round, int tree) {
            int left = tree;
            for (int month = round[0]; month < round[1]; month++) {
                for (int size = 0; size < classes; size++) {
                    left -= counts[from + size * months + month];
                }
                if (left < 0) {
                    return month;
                }
            }
            return round[1] - 1;
        }

        private int pick(double[] shares) {
            double u = dice.uniform();
            int size = 0;
            while (size < shares.length - 1 && u >= shares[size]) {
                u -= shares[size];
                size++;
            }
            return size;
        }

        private double[] shares(int kind) {
            double[] own = sizeWeights.getOrDefault(kind, new double[sizes]);
            double all = Arrays.stream(allSizes).sum();
            double[] shares = new double[sizes];
            double sum = 0;
            for (int size = 0; size < sizes; size++) {
                double wider = all > 0 ? RANDOM_SIZE * allSizes[size] / all : 0;
                shares[size] = dice.gamma(own[size] + wider);
                sum += shares[size];
            }
            for (int size = 0; size < sizes; size++) {
                shares[size] = sum > 0 ? shares[size] / sum : size == sizes - 1 ? 1 : 0;
            }
            return shares;
        }

        private void standing() {
            ForecastLeaving leaving = past.leaving();
            double lost = leaving.lostMonths() > 0 ? dice.gamma(leaving.lost() + HALF) / leaving.lostMonths() : 0;
            double[] sold = new double[ForecastLeaving.MONTHS];
            for (int month = 0; sales == ForecastSales.AS_BEFORE && month < sold.length; month++) {
                sold[month] = leaving.soldMonths()[month] > 0
                        ? dice.gamma(leaving.sold()[month] + HALF) / leaving.soldMonths()[month]
                        : 0;
            }
            int[] now = new int[cultivars.size() * sizes];
            for (ForecastStock stock : past.stock()) {
                if (slots[stock.cultivar()] >= 0) {
                    now[slots[stock.cultivar()] * sizes + stock.size()] += stock.count();
                }
            }
            for (int month = 0; month < months; month++) {
                double days = monthEnds[month + 1] - monthEnds[month];
                double share = 1 - Math.exp(-(lost + sold[monthOfYear[month]]) * days / (365.25 / 12));
                for (int at = 0; at < now.length; at++) {
                    int fresh = came[at * months + month];
                    boolean soldAtOnce = sales == ForecastSales.AS_BEFORE && at % sizes == sizes - 1;
                    now[at] = now[at] - dice.binomial(now[at], share) + (soldAtOnce ? 0 : fresh);
                    stand[at * months + month] = now[at];
                }
            }
        }

        /** What is drawn of a stage once for the whole simulation. */
        private final class Stage {
            private final ForecastModel model;
            private final ForecastCurve[] curves;
            private final double[][] fateOf;
            private final double[][] timeOf;
            private final double fateOwn;
            private final double timeOwn;
            private final ForecastLikely[] clusters;
            private final double[] lucks;
            private final double joins;
            private final double[] shown = new double[months + 2];
            private final int[] joined;
            private final double[] by = new double[months + 1];
            private double chance;
            private double good;
            private double score;
            private double odds;
            private double reached;
            private double gone;
            private double fateLuck;
            private double timeLuck;
            private int place;
            private double begun;
            private double habit;

            Stage(ForecastStage stage) {
                isTold = stage == ForecastStage.TAKING;
                model = models[stage.ordinal()];
                curves = model.drawn(kinds.get(stage.ordinal()), dice);
                ForecastSeasons.Drawn drawn = model.luck(dice);
                fateOwn = Math.sqrt(Math.max(
                        LEAST_OWN, 1 - drawn.fateVariance() - model.fate().cluster()));
                timeOwn = Math.sqrt(Math.max(
                        LEAST_OWN, 1 - drawn.timingVariance() - model.timing().cluster()));
                clusters = draws.get(stage.ordinal());
                joins = Math.sqrt(inOneGo(stage));
                joined = new int[joins > 0 ? clusters.length * rounds.size() : 0];
                Arrays.fill(joined, -1);
                for (int month = 0; stage == ForecastStage.GRADING && month < shown.length; month++) {
                    shown[month] = model.clock(0)
                            .at(month <= months ? monthEnds[month] : Math.max(monthEnds[months], lastRoundEnds));
                }
                lucks = new double[2 * clusters.length];
                Arrays.fill(lucks, Double.NaN);
                fateOf = new double[curves.length][];
                timeOf = new double[curves.length][];
                standsOn.get(stage.ordinal()).forEach((kind, parts) -> {
                    int method = past.kinds().get(kind).method();
                    fateOf[kind] = apart(drawn.fate()[method], parts);
                    timeOf[kind] = apart(drawn.timing()[method], parts);
                });
            }

            /** Return the luck of seasons beside that of those on which a curve stands. */
            private double[] apart(double[] luck, double[] parts) {
                double stands = 0;
                for (int season = 0; season < luck.length; season++) {
                    stands += luck[season] * parts[season];
                }
                double[] apart = new double[luck.length];
                for (int season = 0; season < luck.length; season++) {
                    apart[season] = luck[season] - stands;
                }
                return apart;
            }

            /** Work out what may come of units of an age at the middle of a month, or at the beginning of all. */
            void stand(int kind, double old, int from) {
                ForecastCurve curve = curves[kind];
                ForecastClock clock = model.clock(kind);
                boolean fresh = Double.isNaN(old);
                int start = fresh ? (monthEnds[from] + monthEnds[from + 1]) / 2 : past.asOf();
                double age = fresh ? model.age(kind, start, start) : old;
                good = curve.good();
                chance = curve.chance(age);
                gone = good > 0 ? curve.goodBy(age) / good : 1;
                begun = clock.at(start);
                habit = habits[kind];
                reached = gone > 0 ? ForecastDice.score(gone) : Double.NEGATIVE_INFINITY;
                badGone = curve.bad() > 0 ? curve.badBy(age) / curve.bad() : 0;
                badReached = ForecastDice.score(badGone);
                for (int month = 0; month <= months; month++) {
                    int end = month < months ? monthEnds[month + 1] : Math.max(monthEnds[months], lastRoundEnds);
                    by[month] = month < from || good <= 0 ? 0 : curve.goodBy(age + clock.between(start, end)) / good;
                }
            }

            /** Take it that units come through by a chance as old as they are, and by another when they begin. */
            void expect(double now, double begun) {
                for (int month = 0; !isTold && gone > 0 && month <= months; month++) {
                    by[month] = gone < 1 ? Math.max(0, (by[month] - gone) / (1 - gone)) : 0;
                }
                gone = isTold ? gone : 0;
                odds = odds(now);
                nowScore = ForecastDice.score(now);
                score = ForecastDice.score(begun);
                begunOdds = odds(begun);
            }

            private static double odds(double chance) {
                return chance / Math.max(1 - SURE, 1 - chance);
            }

            private double begunOdds;
            private double nowScore;
            private boolean isTold;
            private double badGone;
            private double badReached;

            /** Draw, or recall, the luck of a cluster and its season. */
            void luck(int kind, int season, int at) {
                if (Double.isNaN(lucks[2 * at])) {
                    clusters[at].draw(fateOf[kind][season], timeOf[kind][season], dice, lucks, 2 * at);
                }
                fateLuck = lucks[2 * at];
                timeLuck = lucks[2 * at + 1];
                place = at;
            }

            /** Draw how many come through. */
            int through(int count) {
                if (count == 0 || by[months] <= gone || odds <= 0) {
                    return 0;
                }
                if (!isTold) {
                    // luck that was not told by what was seen leaves units of that age their chance
                    return dice.binomial(count, ForecastDice.phi((nowScore + fateLuck) / fateOwn));
                }
                double share = ForecastDice.phi((score + fateLuck) / fateOwn);
                double shifted = odds * (share / (1 - share)) / begunOdds;
                if (gone > 0) {
                    shifted *= (1 - ForecastDice.phi((reached - timeLuck) / timeOwn)) / (1 - gone);
                    if (isTold && badGone > 0 && badGone < 1) {
                        shifted /=
                                Math.max(1e-9, 1 - ForecastDice.phi((badReached - timeLuck) / timeOwn)) / (1 - badGone);
                    }
                }
                double p = shifted / (1 + shifted);
                return dice.binomial(count, p >= 0 ? p : 1);
            }

            /** Return the month by whose end a share has come through; that after all, if it is later. */
            private int monthOf(double share) {
                int found = Arrays.binarySearch(by, share);
                return Math.min(months, found < 0 ? -1 - found : found + 1);
            }

            /** Return in which month the clock shows so much. */
            private int monthShown(double now) {
                int found = Arrays.binarySearch(shown, now);
                return Math.max(0, Math.min(months, (found < 0 ? -1 - found : found) - 1));
            }

            /** Return another month of the round, where rounds tell and not a tree's own time; that of its cluster, where that goes together. */
            private int inRound(int ofItself) {
                int month = ofItself;
                int[] round = rounds.get(roundOf[month]);
                if (model.own() < 1 && dice.uniform() >= model.own()) {
                    boolean isLast = round[1] == months;
                    if (dice.uniform() < habit) {
                        double begins = round[0] > 0 ? by[round[0] - 1] : 0;
                        double ends = by[isLast ? months : round[1] - 1];
                        month = monthOf(begins + (ends - begins) * dice.uniform());
                    } else {
                        double begins = Math.max(begun, shown[round[0]]);
                        double ends = shown[isLast ? months + 1 : round[1]];
                        month = monthShown(begins + (ends - begins) * dice.uniform());
                    }
                }
                if (joins > 0 && dice.uniform() < joins) {
                    int of = place * rounds.size() + roundOf[month];
                    joined[of] = joined[of] < 0 ? month : joined[of];
                    month = joined[of];
                }
                return month;
            }

            /** Draw in which months those that come through do. */
            void spread(int through, int[] into) {
                double before = gone > 0 && isTold ? ForecastDice.phi((reached - timeLuck) / timeOwn) : 0;
                if (through <= STEADY || model.own() < 1 || joins > 0) {
                    for (int unit = 0; unit < through; unit++) {
                        double u = ForecastDice.phi(
                                timeLuck + timeOwn * ForecastDice.score(before + (1 - before) * dice.uniform()));
                        int month = u < by[months] ? inRound(monthOf(u)) : months;
                        if (month < months) {
                            into[month]++;
                        }
                    }
                    return;
                }
                int rest = through;
                for (int month = 0; month < months && rest > 0; month++) {
                    if (by[month] > gone) {
                        double until = ForecastDice.phi((ForecastDice.score(by[month]) - timeLuck) / timeOwn);
                        int here = dice.binomial(
                                rest, Math.max(0, Math.min(1, (until - before) / Math.max(1e-12, 1 - before))));
                        into[month] += here;
                        rest -= here;
                        before = Math.max(before, until);
                    }
                }
            }
        }
    }
}
