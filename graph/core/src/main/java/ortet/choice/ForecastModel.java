package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import ortet.book.UnitFacts.Method;

/**
 * What the book says of one stage: how many come through it and how long that takes, by cultivar and method, how much luck units
 * share, and what has been seen of it (docs/methods/forecast.md).
 */
final class ForecastModel {
    private static final int LONGEST = 240 * ForecastCurve.STEPS;
    private static final double FIRST_GUESS = 0.2;
    private static final double EDGE = 0.005;
    private static final double RARE = 0.05;
    private static final double HALF = 0.5;
    private static final double ALIKE = 1e-6;
    private static final int ROUNDS = 3;
    private static final int MONTHS = 12;
    private static final int SEASON = 0xffff;

    private final ForecastPast past;
    private final ForecastStage stage;
    private final List<ForecastEpisode> episodes;
    private final int firstYear;
    private final int years;

    // times
    private final ForecastClock[] clocks;
    private final ForecastRounds beginnings;
    private final double middle;
    private double ownAge = 1;
    private double own = 1;

    // curves
    private final ForecastKinds kinds;

    // luck
    private ForecastShared fate = ForecastShared.GUESS;
    private ForecastShared timing = ForecastShared.GUESS;
    private ForecastSeasons seasons;
    private final Map<Long, ForecastSeen> seen = new TreeMap<>();
    private final Map<Long, ForecastLikely> likely = new HashMap<>();
    private final ForecastLikely nothingSeen;

    /**
     * Learn from the past.
     *
     * @param last the day to which clocks run
     */
    ForecastModel(ForecastPast past, ForecastStage stage, int last) {
        this.past = past;
        this.stage = stage;
        this.episodes = past.episodes().stream()
                .filter(episode -> episode.stage() == stage.told())
                .map(episode -> isGood(episode) ? episode : episode.ended(ForecastEnd.BAD))
                .toList();
        this.firstYear = firstYear(past);
        this.years = ForecastEpisode.year(last) - firstYear + 1;
        this.clocks = clocks(last);
        double[] begun = new double[MONTHS];
        episodes.forEach(one -> begun[LocalDate.ofEpochDay(one.start()).getMonthValue() - 1] += one.count());
        this.beginnings = ForecastRounds.of(begun);
        this.middle = middle();
        this.kinds = new ForecastKinds(past, stage, episodes, firstYear, years);
        kinds.fill(FIRST_GUESS, this::step);
        if (kinds.hasHappened()) {
            learn();
            if (own < 1) {
                // what is graded in rounds is as old as what began in the same year
                ownAge = own;
                kinds.fill(FIRST_GUESS, this::step);
                learn();
            }
            kinds.fill(Math.max(fate.cluster(), timing.cluster()), this::step);
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
    private boolean isGood(ForecastEpisode episode) {
        return episode.how() != ForecastEnd.GOOD
                || stage == ForecastStage.TAKING
                || episode.size() == past.ungraded() == (stage == ForecastStage.SELLING);
    }

    private int method(ForecastEpisode episode) {
        return past.kinds().get(episode.kind()).method();
    }

    // ---- times ----

    /** Return one clock for taking by each method, or one for all. */
    private ForecastClock[] clocks(int last) {
        if (stage != ForecastStage.TAKING) {
            return new ForecastClock[] {ForecastClock.of(episodes, last)};
        }
        ForecastClock[] found = new ForecastClock[Method.values().length];
        for (int at = 0; at < found.length; at++) {
            int method = at;
            found[at] = ForecastClock.of(
                    episodes.stream().filter(one -> method(one) == method).toList(), last);
        }
        return found;
    }

    ForecastClock clock(int kind) {
        return clocks.length == 1 ? clocks[0] : clocks[past.kinds().get(kind).method()];
    }

    /** Return how old something of a kind that began one day is on another, in months; below 0 where it counts for nothing yet. */
    double age(int kind, int start, int day) {
        return stage == ForecastStage.TAKING
                ? clock(kind).between(start, day)
                : clock(kind).age(ownAge * start + (1 - ownAge) * middle(start), day);
    }

    /** Return how much what is graded goes at times of its own, not in rounds: 1 wholly, 0 not at all. */
    double own() {
        return own;
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

    /** Return how old something was when its episode ended. */
    private double age(ForecastEpisode episode) {
        return age(episode.kind(), episode.start(), episode.end());
    }

    /** Return the step of the curve in which that lies. */
    private int step(ForecastEpisode episode) {
        return Math.min(LONGEST, (int) (Math.max(0, age(episode)) * ForecastCurve.STEPS));
    }

    /** Return the age in the middle of that step. */
    private double ageOfStep(ForecastEpisode episode) {
        return (step(episode) + HALF) / ForecastCurve.STEPS;
    }

    // ---- curves ----

    /** Return the curves of all kinds. */
    ForecastKinds kinds() {
        return kinds;
    }

    // ---- luck ----

    /** Return how much units share of whether they come through. */
    ForecastShared fate() {
        return fate;
    }

    /** Return how much they share of when they do. */
    ForecastShared timing() {
        return timing;
    }

    /** Learn how much luck is shared, and what clusters and seasons have shown of theirs. */
    private void learn() {
        ForecastCurve[] curves = kinds.told();
        share(curves);
        see(curves);
        double[][] thought = new double[Method.values().length][2 * years];
        for (int round = 0; round < ROUNDS; round++) {
            seasons = new ForecastSeasons(told(thought), years, fate.cluster(), timing.cluster());
            thought = seasons.likeliest();
        }
        fate = new ForecastShared(seasons.fateVariance(), fate.cluster(), fate.seasons());
        timing = new ForecastShared(seasons.timingVariance(), timing.cluster(), timing.seasons());
    }

    /** Tell from pairs how much luck is shared. */
    private void share(ForecastCurve[] curves) {
        ForecastPairs fates = new ForecastPairs();
        ForecastPairs times = new ForecastPairs();
        ForecastPace pace = new ForecastPace();
        long known = 0;
        double chances = 0;
        long happened = 0;
        double sum = 0;
        double squares = 0;
        for (ForecastEpisode episode : episodes) {
            if (!ForecastKinds.isEnded(episode)) {
                continue;
            }
            ForecastCurve curve = curves[episode.kind()];
            boolean good = episode.how() == ForecastEnd.GOOD;
            double p = inside(curve.good() / (curve.good() + curve.bad()));
            known += episode.count();
            chances += p * episode.count();
            fates.add(episode, method(episode), ((good ? 1 : 0) - p) / Math.sqrt(p * (1 - p)));
            if (good) {
                double score = score(curve, ageOfStep(episode));
                happened += episode.count();
                sum += score * episode.count();
                squares += score * score * episode.count();
                times.add(episode, method(episode), score);
                if (stage == ForecastStage.GRADING) {
                    double round = scoreOfRound(curve, episode);
                    pace.add(episode.cluster(), round, score - round, episode.count());
                }
            }
        }
        fate = fates.ofFates(Math.min(1 - RARE, Math.max(RARE, chances / known)));
        double mean = sum / happened;
        double variance = squares / happened - mean * mean;
        timing = variance > ALIKE ? times.ofScores(mean, variance) : ForecastShared.GUESS;
        if (stage == ForecastStage.GRADING && variance > ALIKE) {
            own = pace.own();
            timing = timing.within(pace.correlation());
        }
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

    /** Look at what every cluster has shown of its luck. */
    private void see(ForecastCurve[] curves) {
        seen.clear();
        likely.clear();
        boolean badShared = stage == ForecastStage.TAKING;
        for (ForecastEpisode episode : episodes) {
            ForecastCurve curve = curves[episode.kind()];
            double both = curve.good() + curve.bad();
            ForecastSeen cluster = seen.computeIfAbsent(key(episode), any -> {
                double chance = both > 0 ? inside(curve.good() / both) : HALF;
                return new ForecastSeen(
                        episode.kind(), method(episode), season(episode.season()), ForecastDice.quantile(chance));
            });
            switch (episode.how()) {
                case GOOD -> cluster.good(score(curve, ageOfStep(episode)), episode.count());
                case BAD -> {
                    if (badShared) {
                        cluster.bad(badScore(curve, ageOfStep(episode)), episode.count());
                    } else {
                        cluster.bad(episode.count());
                    }
                }
                case OUT, STILL -> {
                    double age = age(episode);
                    cluster.waiting(
                            step(episode),
                            score(curve, age),
                            badScore(curve, age),
                            badShared,
                            both > 0 ? curve.rest() / both : 1,
                            episode.count());
                }
            }
        }
        seen.forEach((key, cluster) -> likely.put(key, cluster.likely(fate, timing)));
    }

    /** Return the score of the share of those coming through that have by an age. */
    private static double score(ForecastCurve curve, double age) {
        return ForecastDice.quantile(inside(curve.good() > 0 ? curve.goodBy(age) / curve.good() : 0));
    }

    /** Return the score of the share of those failing that have by an age. */
    private static double badScore(ForecastCurve curve, double age) {
        return ForecastDice.quantile(inside(curve.bad() > 0 ? curve.badBy(age) / curve.bad() : 0));
    }

    /** Return a share kept off 0 and 1. */
    private static double inside(double share) {
        return Math.min(1 - EDGE, Math.max(EDGE, share));
    }

    /** Return what clusters tell of seasons near where these are thought to be. */
    private List<ForecastSeasons.Told> told(double[][] thought) {
        Map<Integer, double[]> parts = new HashMap<>();
        List<ForecastSeasons.Told> told = new ArrayList<>();
        seen.forEach((key, cluster) -> {
            double[] stands = parts.computeIfAbsent(cluster.kind(), kinds::standsOn);
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

    /** Draw the luck of seasons. */
    ForecastSeasons.Drawn luck(ForecastDice dice) {
        return seasons.draw(dice);
    }

    /**
     * Return how likely every luck of a cluster in a season is. What trees that grow on have shown tells of their season alone:
     * of a few trees of one mother, that none is graded yet says more of the day of grading than of them.
     */
    ForecastLikely likely(long key) {
        return stage == ForecastStage.TAKING ? likely.getOrDefault(key, nothingSeen) : nothingSeen;
    }

    // ---- clusters and seasons ----

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
}
