package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import ortet.book.UnitFacts.Method;

/**
 * What the book says of one stage: how many come through it and how long that takes, by cultivar and method, and how sure
 * that is (docs/methods/forecast.md).
 *
 * <p>Kinds stand in a tree: cultivar by method, taxon by method, method, all. The curve of each is the cumulative incidence
 * over its own units and {@value #LEAN} more that fare as those of the next wider kind do, so that few units of its own lean on
 * others. A draw takes the weight of what was seen from gamma distributions of their counts, and so those of the others: the
 * curve is then a draw from its posterior (a Bayesian bootstrap of what units stand for, with a Dirichlet prior).
 *
 * <p>Units of a cluster count for fewer: n of them as n / (1 + (n − 1)ρ).
 *
 * @see "Rubin 1981, Annals of Statistics 9:130; Lo 1993, Annals of Statistics 21:100, for the censored bootstrap"
 */
final class ForecastModel {
    /** For how many units what is known of the next wider kind stands. */
    static final double LEAN = 6;

    private static final double OF_OTHER_METHODS = 1;
    private static final double NOBODY_KNOWS = 0.5;
    private static final int LONGEST = 240 * ForecastCurve.STEPS;
    private static final double FIRST_GUESS = 0.2;
    private static final double EDGE = 0.005;
    private static final double HALF = 0.5;
    private static final int ROUNDS = 3;
    private static final int FEW_SEASONS = 3;
    private static final int NONE = -1;
    private static final int MONTHS = 12;
    private static final int SEASON = 0xffff;

    private final ForecastPast past;
    private final ForecastStage stage;
    private final List<ForecastEpisode> episodes;
    private final ForecastClock[] clocks;
    private final Map<List<Integer>, Integer> places = new HashMap<>();
    private final List<Node> nodes = new ArrayList<>();
    private final int[] nodeOf;
    private int steps;
    private final int firstYear;
    private final int years;
    private final Map<Long, ForecastSeen> clusters = new TreeMap<>();
    private final Map<Long, ForecastLikely> likely = new HashMap<>();
    private final ForecastLikely nothingSeen;
    private ForecastShared fate = ForecastShared.GUESS;
    private ForecastShared timing = ForecastShared.GUESS;
    private ForecastSeasons seasons;
    private final ForecastRounds beginnings;
    private final double middle;
    private double ownAge = 1;
    private double own = 1;

    /** A kind, or a wider one. */
    private static final class Node {
        private final int parent;
        private final double lean;
        private final Map<Integer, double[]> cells = new TreeMap<>();
        private final Set<Integer> parts = new HashSet<>();
        private final Set<Integer> clusters = new HashSet<>();
        private final double[] seasons;
        private double ended;
        private long good;
        private long bad;
        private long open;
        private double weight;

        Node(int parent, double lean, int years) {
            this.parent = parent;
            this.lean = lean;
            this.seasons = new double[years];
        }

        void clear() {
            cells.clear();
            clusters.clear();
            java.util.Arrays.fill(seasons, 0);
            ended = 0;
            good = 0;
            bad = 0;
            open = 0;
            weight = 0;
        }
    }

    ForecastModel(ForecastPast past, ForecastStage stage, int last) {
        this.past = past;
        this.stage = stage;
        this.episodes = past.episodes().stream()
                .filter(episode -> episode.stage() == stage.told())
                .map(episode -> isGood(episode, past.ungraded()) ? episode : episode.ended(ForecastEnd.BAD))
                .toList();
        this.firstYear = firstYear(past);
        this.years = ForecastEpisode.year(last) - firstYear + 1;
        this.nodeOf = new int[past.kinds().size()];
        int methods = Method.values().length;
        this.clocks = new ForecastClock[stage == ForecastStage.TAKING ? methods : 1];
        for (int at = 0; at < clocks.length; at++) {
            int method = at;
            clocks[at] = ForecastClock.of(
                    clocks.length == 1
                            ? episodes
                            : episodes.stream()
                                    .filter(one -> past.kinds().get(one.kind()).method() == method)
                                    .toList(),
                    last);
        }
        double[] begun = new double[MONTHS];
        episodes.forEach(one -> begun[LocalDate.ofEpochDay(one.start()).getMonthValue() - 1] += one.count());
        this.beginnings = ForecastRounds.of(begun);
        this.middle = middle();
        plant();
        fill(FIRST_GUESS);
        if (hasHappened()) {
            share();
            if (own < 1) {
                // what is graded in rounds is as old as what began in the same year
                ownAge = own;
                fill(FIRST_GUESS);
                share();
            }
            fill(Math.max(fate.cluster(), timing.cluster()));
        } else {
            seasons = new ForecastSeasons(List.of(), years, fate.cluster(), timing.cluster());
        }
        nothingSeen = new ForecastSeen(0, 0, 0, 0).likely(fate, timing);
    }

    /** Return the first year of which anything is known. */
    private static int firstYear(ForecastPast past) {
        return past.episodes().stream()
                .mapToInt(one -> ForecastEpisode.year(Math.min(one.since(), one.start())))
                .min()
                .orElse(ForecastEpisode.year(past.asOf()));
    }

    /** Tell whether an episode did not come to a good end of another stage. */
    private boolean isGood(ForecastEpisode episode, int ungraded) {
        return episode.how() != ForecastEnd.GOOD
                || stage == ForecastStage.TAKING
                || episode.size() == ungraded == (stage == ForecastStage.SELLING);
    }

    // ---- the tree of kinds ----

    private void plant() {
        nodes.add(new Node(NONE, 0, years));
        // what a wider kind adds: nothing, if it is of one narrower kind alone
        Map<List<Integer>, Set<Integer>> cultivars = new HashMap<>();
        for (ForecastEpisode episode : episodes) {
            ForecastKind kind = past.kinds().get(episode.kind());
            cultivars
                    .computeIfAbsent(List.of(kind.method(), kind.taxon()), key -> new HashSet<>())
                    .add(kind.cultivar());
        }
        for (int at = 0; at < nodeOf.length; at++) {
            ForecastKind kind = past.kinds().get(at);
            int method = place(List.of(kind.method()), 0, OF_OTHER_METHODS);
            List<Integer> taxon = List.of(kind.method(), kind.taxon());
            Set<Integer> others = new HashSet<>(cultivars.getOrDefault(taxon, Set.of()));
            others.remove(kind.cultivar());
            int parent = others.isEmpty() ? method : place(taxon, method, LEAN);
            nodes.add(new Node(parent, LEAN, years));
            nodeOf[at] = nodes.size() - 1;
        }
    }

    private int place(List<Integer> key, int parent, double lean) {
        return places.computeIfAbsent(key, one -> {
            nodes.add(new Node(parent, lean, years));
            return nodes.size() - 1;
        });
    }

    private int node(int kind) {
        return nodeOf[kind];
    }

    private Map<Integer, Integer> clusterSizes() {
        Map<Integer, Integer> sizes = new HashMap<>();
        episodes.forEach(episode -> sizes.merge(episode.cluster(), episode.count(), Integer::sum));
        return sizes;
    }

    /** Count what happened, units of clusters for as many as correlate so much. */
    private void fill(double correlation) {
        nodes.forEach(Node::clear);
        steps = 1 + episodes.stream().mapToInt(this::step).max().orElse(0);
        Map<Integer, Integer> sizes = clusterSizes();
        for (ForecastEpisode episode : episodes) {
            double weight = episode.count() / (1 + (sizes.get(episode.cluster()) - 1) * correlation);
            int step = step(episode);
            int how = switch (episode.how()) {
                case GOOD -> 0;
                case BAD -> 1;
                case OUT, STILL -> 2;
            };
            for (int at = node(episode.kind()); at != NONE; at = nodes.get(at).parent) {
                Node node = nodes.get(at);
                node.cells.computeIfAbsent(step, one -> new double[3])[how] += weight;
                node.weight += weight;
                if (how < 2) {
                    node.seasons[season(episode.season())] += weight;
                    node.ended += weight;
                }
                if (how == 0) {
                    node.good += episode.count();
                } else if (how == 1) {
                    node.bad += episode.count();
                } else {
                    node.open += episode.count();
                }
                node.clusters.add(episode.cluster());
            }
        }
    }

    // ---- times ----

    ForecastClock clock(int kind) {
        return clocks.length == 1 ? clocks[0] : clocks[past.kinds().get(kind).method()];
    }

    /** Return how old something of a kind that began one day is on another, in months; below 0 where it counts for nothing yet. */
    double age(int kind, int start, int day) {
        return stage == ForecastStage.TAKING
                ? clock(kind).between(start, day)
                : clock(kind).age(ownAge * start + (1 - ownAge) * middle(start), day);
    }

    /** Return the mean day on which what begins in one year does, in days after that year has begun. */
    private double middle() {
        double all = 0;
        double sum = 0;
        for (ForecastEpisode one : episodes) {
            all += one.count();
            sum += (double) one.count() * (one.start() - beginnings.begins(beginnings.round(one.start())));
        }
        return all > 0 ? sum / all : 0;
    }

    /** Return that day for the year in which something began. */
    private double middle(int start) {
        return beginnings.begins(beginnings.round(start)) + middle;
    }

    private int step(ForecastEpisode episode) {
        double age = age(episode.kind(), episode.start(), episode.end());
        return Math.min(LONGEST, (int) (Math.max(0, age) * ForecastCurve.STEPS));
    }

    // ---- what is shared ----

    /** Tell whether anything ever came through. */
    boolean hasHappened() {
        return nodes.get(0).good > 0;
    }

    private void share() {
        ForecastCurve[] curves = curves(new ForecastCurve[nodes.size()], node -> true, Weights.AS_THEY_ARE);
        Products fates = new Products();
        Products times = new Products();
        ForecastPace pace = new ForecastPace();
        double sum = 0;
        double squares = 0;
        long happened = 0;
        double chance = 0;
        long known = 0;
        for (ForecastEpisode episode : episodes) {
            if (episode.how() == ForecastEnd.OUT || episode.how() == ForecastEnd.STILL) {
                continue;
            }
            ForecastCurve curve = curves[node(episode.kind())];
            boolean good = episode.how() == ForecastEnd.GOOD;
            double p = Math.min(1 - EDGE, Math.max(EDGE, curve.good() / (curve.good() + curve.bad())));
            chance += p * episode.count();
            known += episode.count();
            fates.add(episode, past, stage, ((good ? 1 : 0) - p) / Math.sqrt(p * (1 - p)));
            if (good) {
                double age = (step(episode) + 0.5) / ForecastCurve.STEPS;
                double share = Math.min(1 - EDGE, Math.max(EDGE, curve.goodBy(age) / curve.good()));
                double score = ForecastDice.quantile(share);
                sum += score * episode.count();
                squares += score * score * episode.count();
                happened += episode.count();
                times.add(episode, past, stage, score);
                if (stage == ForecastStage.GRADING) {
                    double round = scoreOfRound(curve, episode);
                    pace.add(episode.cluster(), round, score - round, episode.count());
                }
            }
        }
        fate = fates.shared(1, 0, Math.min(0.95, Math.max(0.05, chance / known)));
        double mean = sum / happened;
        double variance = squares / happened - mean * mean;
        timing = variance > 1e-6 ? times.shared(variance, mean, NONE) : ForecastShared.GUESS;
        if (stage == ForecastStage.GRADING && variance > 1e-6) {
            own = pace.own();
            timing = timing.within(pace.correlation());
        }
        clusters.clear();
        likely.clear();
        see(curves);
        double[][] thought = new double[Method.values().length][2 * years];
        for (int round = 0; round < ROUNDS; round++) {
            seasons = new ForecastSeasons(told(thought), years, fate.cluster(), timing.cluster());
            thought = seasons.likeliest();
        }
        fate = new ForecastShared(seasons.fateVariance(), fate.cluster(), fate.seasons());
        timing = new ForecastShared(seasons.timingVariance(), timing.cluster(), timing.seasons());
    }

    /** Return the score to be expected of something of which it is known only in which round it was graded. */
    private double scoreOfRound(ForecastCurve curve, ForecastEpisode episode) {
        ForecastRounds rounds = clock(episode.kind()).rounds();
        int round = rounds.round(episode.end());
        double before = shareBy(curve, episode, rounds.begins(round) - 1);
        double after = shareBy(curve, episode, rounds.begins(round + 1) - 1);
        return ForecastPace.expected(before, after);
    }

    private double shareBy(ForecastCurve curve, ForecastEpisode episode, int day) {
        return curve.goodBy(age(episode.kind(), episode.start(), day)) / curve.good();
    }

    /** Return how much what is graded goes at times of its own, not in rounds: 1 wholly, 0 not at all. */
    double own() {
        return own;
    }

    /** Look at what every cluster has shown of its luck. */
    private void see(ForecastCurve[] curves) {
        Map<Long, ForecastSeen> seen = new TreeMap<>();
        for (ForecastEpisode episode : episodes) {
            ForecastCurve curve = curves[node(episode.kind())];
            int season = season(episode.season());
            ForecastKind kind = past.kinds().get(episode.kind());
            double both = curve.good() + curve.bad();
            double p = both > 0 ? Math.min(1 - EDGE, Math.max(EDGE, curve.good() / both)) : HALF;
            ForecastSeen cluster = seen.computeIfAbsent(
                    key(episode.cluster(), season),
                    any -> new ForecastSeen(episode.kind(), kind.method(), season, ForecastDice.quantile(p)));
            switch (episode.how()) {
                case GOOD -> cluster.good(score(curve, (step(episode) + HALF) / ForecastCurve.STEPS), episode.count());
                case BAD -> {
                    if (stage == ForecastStage.TAKING) {
                        cluster.bad(badScore(curve, (step(episode) + HALF) / ForecastCurve.STEPS), episode.count());
                    } else {
                        cluster.bad(episode.count());
                    }
                }
                case OUT, STILL -> {
                    double age = age(episode.kind(), episode.start(), episode.end());
                    cluster.waiting(
                            step(episode),
                            score(curve, age),
                            badScore(curve, age),
                            stage == ForecastStage.TAKING,
                            both > 0 ? curve.rest() / both : 1,
                            episode.count());
                }
            }
        }
        seen.forEach((key, cluster) -> {
            likely.put(key, cluster.likely(fate, timing));
            clusters.put(key, cluster);
        });
    }

    private static double score(ForecastCurve curve, double age) {
        double share = curve.good() > 0 ? curve.goodBy(age) / curve.good() : 0;
        return ForecastDice.quantile(Math.min(1 - EDGE, Math.max(EDGE, share)));
    }

    private static double badScore(ForecastCurve curve, double age) {
        double share = curve.bad() > 0 ? curve.badBy(age) / curve.bad() : 0;
        return ForecastDice.quantile(Math.min(1 - EDGE, Math.max(EDGE, share)));
    }

    /** Return what clusters tell of seasons near where these are thought to be. */
    private List<ForecastSeasons.Told> told(double[][] thought) {
        Map<Integer, double[]> parts = new HashMap<>();
        List<ForecastSeasons.Told> told = new ArrayList<>();
        clusters.forEach((key, cluster) -> {
            double[] stands = parts.computeIfAbsent(cluster.kind(), this::standsOn);
            double[] luck = thought[cluster.method()];
            double ofFate = luck[cluster.season()];
            double ofTiming = luck[years + cluster.season()];
            for (int season = 0; season < years; season++) {
                ofFate -= stands[season] * luck[season];
                ofTiming -= stands[season] * luck[years + season];
            }
            told.add(new ForecastSeasons.Told(
                    cluster.kind(),
                    cluster.method(),
                    cluster.season(),
                    likely.get(key).ofSeason(ofFate, ofTiming)));
        });
        return told;
    }

    /** Return the place of a year among the seasons. */
    int season(int year) {
        return year - firstYear;
    }

    /** Return what tells the cluster of an episode, in its season, from others. */
    long key(ForecastEpisode episode) {
        return key(episode.cluster(), season(episode.season()));
    }

    /** Return what tells a cluster in a season from others. */
    static long key(int cluster, int season) {
        return (long) cluster << Short.SIZE | season;
    }

    /** Return the cluster of such a key. */
    static int clusterOf(long key) {
        return (int) (key >> Short.SIZE);
    }

    /** Return the season of such a key. */
    static int seasonOf(long key) {
        return (int) (key & SEASON);
    }

    /**
     * Return how likely every luck of a cluster in a season is. What trees that grow on have shown tells of their season alone:
     * of a few trees of one mother, that none is graded yet says more of the day of grading than of them.
     */
    ForecastLikely likely(long key) {
        return stage == ForecastStage.TAKING ? likely.getOrDefault(key, nothingSeen) : nothingSeen;
    }

    /** Draw the luck of seasons. */
    ForecastSeasons.Drawn luck(ForecastDice dice) {
        return seasons.draw(dice);
    }

    /** Return what part of the curve of a kind stands on each season. */
    double[] standsOn(int kind) {
        return standsOnOf(node(kind));
    }

    private double[] standsOnOf(int at) {
        Node node = nodes.get(at);
        double all = node.ended + (node.parent == NONE ? 2 * NOBODY_KNOWS : node.lean);
        double[] wider = node.parent == NONE ? new double[years] : standsOnOf(node.parent);
        double[] parts = new double[years];
        for (int season = 0; season < years; season++) {
            parts[season] = (node.seasons[season] + node.lean * wider[season]) / all;
        }
        return parts;
    }

    /** Sums of products of scores of two units, within clusters and between clusters of one season. */
    private static final class Products {
        private final Map<Integer, double[]> clusters = new HashMap<>();
        private final Map<Integer, Integer> seasonOf = new HashMap<>();

        void add(ForecastEpisode episode, ForecastPast past, ForecastStage stage, double score) {
            double[] sums = clusters.computeIfAbsent(episode.cluster(), one -> new double[3]);
            sums[0] += episode.count();
            sums[1] += score * episode.count();
            sums[2] += score * score * episode.count();
            int method = past.kinds().get(episode.kind()).method();
            seasonOf.put(episode.cluster(), episode.season() * 8 + method);
        }

        /** Return the correlations; of fates, where a chance is given, those of the scores behind them. */
        ForecastShared shared(double variance, double mean, double chance) {
            double pairs = 0;
            double within = 0;
            Map<Integer, double[]> seasons = new TreeMap<>();
            for (Map.Entry<Integer, double[]> one : clusters.entrySet()) {
                double n = one.getValue()[0];
                double total = one.getValue()[1] - n * mean;
                double own = one.getValue()[2] - 2 * mean * one.getValue()[1] + n * mean * mean;
                if (n > 1) {
                    within += (total * total - own) / (n - 1);
                    pairs += n;
                }
                double[] season = seasons.computeIfAbsent(seasonOf.get(one.getKey()), key -> new double[4]);
                // a cluster of many says little more than one of them
                double weight = 1 / Math.sqrt(n);
                season[0] += n * weight;
                season[1] += total * weight;
                season[2] += n * n * weight * weight;
                season[3] += total * total * weight * weight;
            }
            double crosses = 0;
            double between = 0;
            int counted = 0;
            for (double[] season : seasons.values()) {
                double others = season[0] * season[0] - season[2];
                if (others > 1e-9) {
                    between += (season[1] * season[1] - season[3]) / season[0];
                    crosses += others / season[0];
                    counted++;
                }
            }
            double rhoWithin = pairs > 0 ? Math.max(0, within / pairs / variance) : ForecastShared.GUESS.cluster();
            double rhoSeason =
                    counted >= FEW_SEASONS ? Math.max(0, between / crosses / variance) : ForecastShared.GUESS.season();
            if (chance >= 0) {
                rhoWithin = scores(Math.min(0.95, rhoWithin), chance);
                rhoSeason = scores(Math.min(0.9, rhoSeason), chance);
            }
            rhoSeason = Math.min(0.6, rhoSeason);
            double rhoCluster = Math.min(0.9 - rhoSeason, Math.max(0.0, rhoWithin - rhoSeason));
            return new ForecastShared(rhoSeason, rhoCluster, Math.max(2, counted));
        }

        /** Return the correlation of normal scores that gives fates of chance p this correlation. */
        private static double scores(double correlation, double p) {
            double low = 0;
            double high = 0.99;
            for (int step = 0; step < 40; step++) {
                double middle = (low + high) / 2;
                if (both(p, middle) < correlation) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return (low + high) / 2;
        }

        private static double both(double p, double rho) {
            double z = ForecastDice.quantile(p);
            double sum = 0;
            double mass = 0;
            for (int at = -60; at <= 60; at++) {
                double shared = at / 10.0;
                double weight = Math.exp(-shared * shared / 2);
                double one = ForecastDice.phi((z - Math.sqrt(rho) * shared) / Math.sqrt(1 - rho));
                sum += weight * one * one;
                mass += weight;
            }
            return (sum / mass - p * p) / (p * (1 - p));
        }
    }

    ForecastShared fate() {
        return fate;
    }

    ForecastShared timing() {
        return timing;
    }

    // ---- curves ----

    /** Turns counts into weights. */
    private interface Weights {
        Weights AS_THEY_ARE = count -> count;

        double of(double count);
    }

    private interface Wanted {
        boolean is(int node);
    }

    /** Return the curves of kinds as they are most plainly told, by kind. */
    ForecastCurve[] told(Set<Integer> kinds) {
        return byKind(kinds, Weights.AS_THEY_ARE);
    }

    /** Return curves of kinds drawn from what they may be, by kind; null for kinds that are not asked for. */
    ForecastCurve[] drawn(Set<Integer> kinds, ForecastDice dice) {
        return byKind(kinds, dice::gamma);
    }

    private ForecastCurve[] byKind(Set<Integer> kinds, Weights weights) {
        boolean[] wanted = new boolean[nodes.size()];
        for (int kind : kinds) {
            for (int at = node(kind); at != NONE && !wanted[at]; at = nodes.get(at).parent) {
                wanted[at] = true;
            }
        }
        ForecastCurve[] all = curves(new ForecastCurve[nodes.size()], node -> wanted[node], weights);
        ForecastCurve[] curves = new ForecastCurve[past.kinds().size()];
        for (int kind : kinds) {
            curves[kind] = all[node(kind)];
        }
        return curves;
    }

    private ForecastCurve[] curves(ForecastCurve[] curves, Wanted wanted, Weights weights) {
        // a node comes after its parent
        for (int at = 0; at < nodes.size(); at++) {
            if (wanted.is(at)) {
                Node node = nodes.get(at);
                double[] good = new double[steps];
                double[] bad = new double[steps];
                double[] out = new double[steps];
                node.cells.forEach((step, cell) -> {
                    good[step] += weights.of(cell[0]);
                    bad[step] += weights.of(cell[1]);
                    out[step] += weights.of(cell[2]);
                });
                if (node.parent == NONE) {
                    unknown(node, good, bad, weights);
                } else {
                    lean(curves[node.parent], node.lean, good, bad, out, weights);
                }
                curves[at] = ForecastCurve.of(good, bad, out);
            }
        }
        return curves;
    }

    /** Add half a unit of either end, at the times at which units ended: nobody knows that the rarer never comes. */
    private static void unknown(Node node, double[] good, double[] bad, Weights weights) {
        double more = weights.of(NOBODY_KNOWS);
        double less = weights.of(NOBODY_KNOWS);
        double all = 0;
        for (double[] cell : node.cells.values()) {
            all += cell[0] + cell[1];
        }
        for (Map.Entry<Integer, double[]> cell : node.cells.entrySet()) {
            double share = all > 0 ? (cell.getValue()[0] + cell.getValue()[1]) / all : 0;
            good[cell.getKey()] += more * share;
            bad[cell.getKey()] += less * share;
        }
    }

    private static void lean(
            ForecastCurve wider, double lean, double[] good, double[] bad, double[] out, Weights weights) {
        double more = wider.good() > 0 ? weights.of(lean * wider.good()) / wider.good() : 0;
        double less = wider.bad() > 0 ? weights.of(lean * wider.bad()) / wider.bad() : 0;
        for (int step = 0; step < good.length; step++) {
            good[step] += more * wider.goodIn(step);
            bad[step] += less * wider.badIn(step);
        }
        out[out.length - 1] += weights.of(lean * wider.rest());
    }

    // ---- what stands behind ----

    /** Return what stands behind what is said of a kind. */
    ForecastBehind behind(int kind, ForecastCurve curve, int waiting) {
        Node own = nodes.get(node(kind));
        Node wider = nodes.get(own.parent);
        return new ForecastBehind(
                past.cultivars().get(past.kinds().get(kind).cultivar()),
                Method.values()[past.kinds().get(kind).method()],
                stage,
                waiting,
                own.good,
                own.bad,
                own.open,
                own.clusters.size(),
                own.lean / (own.lean + own.weight),
                own.parent == 0
                        ? ForecastBehind.Wider.ALL
                        : wider.parent == 0 ? ForecastBehind.Wider.METHOD : ForecastBehind.Wider.TAXON,
                wider.good + wider.bad,
                curve.good(),
                curve.median());
    }
}
