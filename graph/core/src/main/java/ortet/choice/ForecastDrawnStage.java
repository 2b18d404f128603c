package ortet.choice;

import java.util.Arrays;
import java.util.List;

/**
 * One stage in one simulation: the curves and the luck drawn for it, and draws of what becomes of units by them.
 *
 * <p>Units are drawn in steps: {@link #stand} or {@link #standFresh} for those of one kind and age, {@link #expect} for their
 * chances, {@link #luck} for those of one cluster among them, and then {@link #through} and {@link #spread}.
 */
final class ForecastDrawnStage {
    /** So many units are spread over months each by itself. */
    private static final int FEW = 64;

    private static final double LEAST_OWN = 0.05;
    private static final double SURE = 1 - 1e-9;
    private static final double LEAST_LEFT = 1e-9;
    private static final double HARDLY_ANY = 1e-12;
    private static final int NONE = -1;

    // of the whole simulation
    private final ForecastHorizon horizon;
    private final int months;
    private final ForecastTogether together;
    private final List<ForecastKind> kinds;
    private final ForecastDice dice;
    private final ForecastModel model;
    private final boolean isTold;
    private final ForecastCurve[] curves;
    private final double fateOwn;
    private final double timeOwn;
    private final double[][] fateOf;
    private final double[][] timeOf;
    private final double[] shown;
    private final double joins;

    // of clusters, as far as it has been drawn
    private final ForecastLikely[] clusters;
    private final double[] lucks;
    private final int[] joined;

    // of units of one kind and age
    private final double[] by;
    private double good;
    private double chance;
    private double begun;
    private double habit;
    private double gone;
    private double reached;
    private double badGone;
    private double badReached;

    // of their chances
    private double nowOdds;
    private double nowScore;
    private double firstOdds;
    private double firstScore;

    // of those of one cluster
    private int place;
    private double fateLuck;
    private double timeLuck;

    ForecastDrawnStage(ForecastGround ground, ForecastStage stage, ForecastDice dice) {
        ForecastGiven given = ground.of(stage);
        this.horizon = ground.horizon();
        this.months = horizon.months();
        this.together = ground.together();
        this.kinds = ground.past().kinds();
        this.dice = dice;
        this.model = given.model();
        this.isTold = stage == ForecastStage.TAKING;
        this.curves = model.kinds().drawn(given.kinds(), dice);
        ForecastSeasons.Drawn drawn = model.luck(dice);
        this.fateOwn = Math.sqrt(
                Math.max(LEAST_OWN, 1 - drawn.fateVariance() - model.fate().cluster()));
        this.timeOwn = Math.sqrt(
                Math.max(LEAST_OWN, 1 - drawn.timingVariance() - model.timing().cluster()));
        this.fateOf = new double[curves.length][];
        this.timeOf = new double[curves.length][];
        given.standsOn().forEach((kind, parts) -> {
            int method = kinds.get(kind).method();
            fateOf[kind] = apart(drawn.fate()[method], parts);
            timeOf[kind] = apart(drawn.timing()[method], parts);
        });
        this.shown = stage == ForecastStage.GRADING ? shown() : new double[0];
        this.joins = Math.sqrt(given.inOneGo());
        this.clusters = given.clusters();
        this.lucks = new double[2 * clusters.length];
        Arrays.fill(lucks, Double.NaN);
        this.joined = new int[joins > 0 ? clusters.length * horizon.rounds().size() : 0];
        Arrays.fill(joined, NONE);
        this.by = new double[months + 1];
    }

    /** Return the luck of seasons beside that of those on which a curve stands. */
    private static double[] apart(double[] luck, double[] parts) {
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

    /** Return what the clock shows before the first month, at the end of each, and at the end of the last round. */
    private double[] shown() {
        ForecastClock clock = model.clock(0);
        double[] found = new double[months + 2];
        found[0] = clock.at(horizon.before(0));
        for (int month = 0; month <= months; month++) {
            found[month + 1] = clock.at(horizon.end(month));
        }
        return found;
    }

    /** Work out what may come of units that are of an age now. */
    void stand(int kind, double age) {
        stand(kind, age, horizon.before(0), 0);
    }

    /** Work out what may come of units that begin in the middle of a month. */
    void standFresh(int kind, int month) {
        int start = horizon.middle(month);
        stand(kind, model.age(kind, start, start), start, month);
    }

    private void stand(int kind, double age, int start, int from) {
        ForecastCurve curve = curves[kind];
        ForecastClock clock = model.clock(kind);
        good = curve.good();
        chance = curve.chance(age);
        begun = clock.at(start);
        habit = together.habit(kinds.get(kind).cultivar());
        gone = good > 0 ? curve.goodBy(age) / good : 1;
        reached = gone > 0 ? ForecastDice.score(gone) : Double.NEGATIVE_INFINITY;
        badGone = curve.bad() > 0 ? curve.badBy(age) / curve.bad() : 0;
        badReached = ForecastDice.score(badGone);
        for (int month = 0; month <= months; month++) {
            by[month] =
                    month < from || good <= 0 ? 0 : curve.goodBy(age + clock.between(start, horizon.end(month))) / good;
        }
    }

    /** Return the share that comes through from the beginning on, as the curve tells it. */
    double good() {
        return good;
    }

    /** Return the share that comes through of those that are so old, as the curve tells it. */
    double chance() {
        return chance;
    }

    /** Take it that units come through by a chance as old as they are, and by another when they begin. */
    void expect(double now, double first) {
        if (!isTold) {
            for (int month = 0; gone > 0 && month <= months; month++) {
                by[month] = gone < 1 ? Math.max(0, (by[month] - gone) / (1 - gone)) : 0;
            }
            gone = 0;
        }
        nowOdds = odds(now);
        nowScore = ForecastDice.score(now);
        firstOdds = odds(first);
        firstScore = ForecastDice.score(first);
    }

    private static double odds(double chance) {
        return chance / Math.max(1 - SURE, 1 - chance);
    }

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
        if (count == 0 || by[months] <= gone || nowOdds <= 0) {
            return 0;
        }
        if (!isTold) {
            // luck that was not told by what was seen leaves units of that age their chance
            return dice.binomial(count, ForecastDice.phi((nowScore + fateLuck) / fateOwn));
        }
        double share = ForecastDice.phi((firstScore + fateLuck) / fateOwn);
        double shifted = nowOdds * (share / (1 - share)) / firstOdds;
        if (gone > 0) {
            shifted *= (1 - ForecastDice.phi((reached - timeLuck) / timeOwn)) / (1 - gone);
            if (badGone > 0 && badGone < 1) {
                shifted /=
                        Math.max(LEAST_LEFT, 1 - ForecastDice.phi((badReached - timeLuck) / timeOwn)) / (1 - badGone);
            }
        }
        double p = shifted / (1 + shifted);
        return dice.binomial(count, p >= 0 ? p : 1);
    }

    /** Draw in which months those that come through do. */
    void spread(int through, int[] into) {
        double before = gone > 0 ? ForecastDice.phi((reached - timeLuck) / timeOwn) : 0;
        if (through <= FEW || model.own() < 1 || joins > 0) {
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
                        rest, Math.max(0, Math.min(1, (until - before) / Math.max(HARDLY_ANY, 1 - before))));
                into[month] += here;
                rest -= here;
                before = Math.max(before, until);
            }
        }
    }

    /** Return another month of the round, where rounds tell and not a tree's own time; that of its cluster, where that goes together. */
    private int inRound(int ofItself) {
        int month = ofItself;
        if (model.own() < 1 && dice.uniform() >= model.own()) {
            ForecastHorizon.Round round = horizon.round(month);
            // what the last round holds after the last month comes after all months
            int last = round.to() == months ? months : round.to() - 1;
            if (dice.uniform() < habit) {
                double begins = round.from() > 0 ? by[round.from() - 1] : 0;
                month = monthOf(begins + (by[last] - begins) * dice.uniform());
            } else {
                double begins = Math.max(begun, shown[round.from()]);
                month = monthShown(begins + (shown[last + 1] - begins) * dice.uniform());
            }
        }
        if (joins > 0 && dice.uniform() < joins) {
            int of = place * horizon.rounds().size() + horizon.round(month).number();
            joined[of] = joined[of] < 0 ? month : joined[of];
            month = joined[of];
        }
        return month;
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
}
