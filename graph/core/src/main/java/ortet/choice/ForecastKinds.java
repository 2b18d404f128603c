package ortet.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import ortet.book.UnitFacts.Method;

/**
 * What has been seen in one stage of every kind, and curves that lean on those of wider kinds.
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
final class ForecastKinds {
    /** For how many units what is known of the next wider kind stands. */
    static final double LEAN = 6;

    private static final double OF_OTHER_METHODS = 1;
    private static final double NOBODY_KNOWS = 0.5;
    private static final int NONE = -1;
    private static final int GOOD = 0;
    private static final int BAD = 1;
    private static final int OUT = 2;
    private static final Weights AS_THEY_ARE = count -> count;

    private final ForecastPast past;
    private final ForecastStage stage;
    private final List<ForecastEpisode> episodes;
    private final Map<Integer, Integer> clusterSizes = new HashMap<>();
    private final int firstYear;
    private final int years;

    /** All nodes, each after its parent; the first is of all. */
    private final List<Node> nodes = new ArrayList<>();

    private final Map<List<Integer>, Integer> places = new HashMap<>();
    private final int[] nodeOf;
    private int steps;

    /** A kind, or a wider one: where it hangs, and what has been seen of it. */
    private static final class Node {
        private final int parent;
        private final double lean;

        /** Weights of what came to a good end, to a bad one, and was followed no longer, by step. */
        private final Map<Integer, double[]> cells = new TreeMap<>();

        /** Weights of what ended, by season. */
        private final double[] seasons;

        private final Set<Integer> clusters = new HashSet<>();
        private double weight;
        private double ended;
        private long good;
        private long bad;
        private long open;

        Node(int parent, double lean, int years) {
            this.parent = parent;
            this.lean = lean;
            this.seasons = new double[years];
        }

        void clear() {
            cells.clear();
            Arrays.fill(seasons, 0);
            clusters.clear();
            weight = 0;
            ended = 0;
            good = 0;
            bad = 0;
            open = 0;
        }
    }

    /** Turns counts into weights. */
    private interface Weights {
        double of(double count);
    }

    /**
     * Plant the tree; nothing has been seen yet.
     *
     * @param episodes of the stage, as it tells how they ended
     * @param firstYear the year of the first season
     * @param years how many seasons there are
     */
    ForecastKinds(ForecastPast past, ForecastStage stage, List<ForecastEpisode> episodes, int firstYear, int years) {
        this.past = past;
        this.stage = stage;
        this.episodes = episodes;
        this.firstYear = firstYear;
        this.years = years;
        this.nodeOf = new int[past.kinds().size()];
        episodes.forEach(episode -> clusterSizes.merge(episode.cluster(), episode.count(), Integer::sum));
        plant();
    }

    // ---- the tree ----

    private void plant() {
        int all = node(NONE, 0);
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
            int method = wider(List.of(kind.method()), all, OF_OTHER_METHODS);
            List<Integer> taxon = List.of(kind.method(), kind.taxon());
            Set<Integer> others = new HashSet<>(cultivars.getOrDefault(taxon, Set.of()));
            others.remove(kind.cultivar());
            nodeOf[at] = node(others.isEmpty() ? method : wider(taxon, method, LEAN), LEAN);
        }
    }

    private int wider(List<Integer> key, int parent, double lean) {
        return places.computeIfAbsent(key, any -> node(parent, lean));
    }

    private int node(int parent, double lean) {
        nodes.add(new Node(parent, lean, years));
        return nodes.size() - 1;
    }

    // ---- what has been seen ----

    /**
     * Count afresh what happened, units of clusters for as many as correlate so much.
     *
     * @param step the step of the age at which an episode ended
     */
    void fill(double correlation, ToIntFunction<ForecastEpisode> step) {
        nodes.forEach(Node::clear);
        steps = 1 + episodes.stream().mapToInt(step).max().orElse(0);
        for (ForecastEpisode episode : episodes) {
            double weight = episode.count() / (1 + (clusterSizes.get(episode.cluster()) - 1) * correlation);
            int ended = step.applyAsInt(episode);
            for (int at = nodeOf[episode.kind()]; at != NONE; at = nodes.get(at).parent) {
                add(nodes.get(at), episode, ended, weight);
            }
        }
    }

    private void add(Node node, ForecastEpisode episode, int step, double weight) {
        double[] cell = node.cells.computeIfAbsent(step, any -> new double[3]);
        switch (episode.how()) {
            case GOOD -> {
                cell[GOOD] += weight;
                node.good += episode.count();
            }
            case BAD -> {
                cell[BAD] += weight;
                node.bad += episode.count();
            }
            case OUT, STILL -> {
                cell[OUT] += weight;
                node.open += episode.count();
            }
        }
        node.weight += weight;
        if (isEnded(episode)) {
            node.seasons[episode.season() - firstYear] += weight;
            node.ended += weight;
        }
        node.clusters.add(episode.cluster());
    }

    /** Tell whether it is known to what end an episode came. */
    static boolean isEnded(ForecastEpisode episode) {
        return episode.how() == ForecastEnd.GOOD || episode.how() == ForecastEnd.BAD;
    }

    /** Tell whether anything ever came through. */
    boolean hasHappened() {
        return nodes.get(0).good > 0;
    }

    /** Return what part of the curve of a kind stands on each season. */
    double[] standsOn(int kind) {
        return standsOnOf(nodeOf[kind]);
    }

    private double[] standsOnOf(int at) {
        Node node = nodes.get(at);
        boolean isAll = node.parent == NONE;
        double all = node.ended + (isAll ? 2 * NOBODY_KNOWS : node.lean);
        double[] wider = isAll ? new double[years] : standsOnOf(node.parent);
        double[] parts = new double[years];
        for (int season = 0; season < years; season++) {
            parts[season] = (node.seasons[season] + node.lean * wider[season]) / all;
        }
        return parts;
    }

    // ---- curves ----

    /** Return the curves of all kinds as they are most plainly told, by kind. */
    ForecastCurve[] told() {
        boolean[] wanted = new boolean[nodes.size()];
        Arrays.fill(wanted, true);
        return byKind(curves(wanted, AS_THEY_ARE));
    }

    /** Return the curves of kinds as they are most plainly told, by kind; null for kinds that are not asked for. */
    ForecastCurve[] told(Set<Integer> kinds) {
        return byKind(curves(wanted(kinds), AS_THEY_ARE));
    }

    /** Return curves of kinds drawn from what they may be, by kind; null for kinds that are not asked for. */
    ForecastCurve[] drawn(Set<Integer> kinds, ForecastDice dice) {
        return byKind(curves(wanted(kinds), dice::gamma));
    }

    /** Return which nodes kinds need: their own and all wider ones. */
    private boolean[] wanted(Set<Integer> kinds) {
        boolean[] wanted = new boolean[nodes.size()];
        for (int kind : kinds) {
            for (int at = nodeOf[kind]; at != NONE && !wanted[at]; at = nodes.get(at).parent) {
                wanted[at] = true;
            }
        }
        return wanted;
    }

    private ForecastCurve[] byKind(ForecastCurve[] byNode) {
        ForecastCurve[] curves = new ForecastCurve[nodeOf.length];
        for (int kind = 0; kind < curves.length; kind++) {
            curves[kind] = byNode[nodeOf[kind]];
        }
        return curves;
    }

    private ForecastCurve[] curves(boolean[] wanted, Weights weights) {
        ForecastCurve[] curves = new ForecastCurve[nodes.size()];
        for (int at = 0; at < curves.length; at++) {
            if (wanted[at]) {
                Node node = nodes.get(at);
                double[] good = new double[steps];
                double[] bad = new double[steps];
                double[] out = new double[steps];
                node.cells.forEach((step, cell) -> {
                    good[step] += weights.of(cell[GOOD]);
                    bad[step] += weights.of(cell[BAD]);
                    out[step] += weights.of(cell[OUT]);
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
            all += cell[GOOD] + cell[BAD];
        }
        for (Map.Entry<Integer, double[]> cell : node.cells.entrySet()) {
            double share = all > 0 ? (cell.getValue()[GOOD] + cell.getValue()[BAD]) / all : 0;
            good[cell.getKey()] += more * share;
            bad[cell.getKey()] += less * share;
        }
    }

    /** Add units that fare as those of a wider kind do. */
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
        Node own = nodes.get(nodeOf[kind]);
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
