package ortet.figures;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;

/**
 * When something happens, out of times of which only the looks before and after are known: the nonparametric
 * maximum-likelihood estimate for interval-censored times.
 *
 * <p>The estimate puts its mass on the <em>maximal intersections</em> of what was seen: stretches from a left end to the
 * next end when that is a right one. Where within a stretch its mass lies cannot be known, so a share at a time and a time
 * for a share are told as ranges. The masses s maximise Σ log zᵢ, zᵢ the mass within what was seen of i.
 *
 * <p>The maximum is found by some steps of self-consistency (Turnbull's), then by Newton's method on the masses above 0,
 * dropping those that fall to 0 and taking back those whose gradient asks for it. It is the maximum when the conditions of
 * Kuhn and Tucker hold: Σ 1/zᵢ over those who may have had it there is n where there is mass, and at most n elsewhere. How
 * far they are from holding is told. The masses are unique: each stretch begins where something seen begins, so that the
 * table of who covers which stretch holds a triangle and has full rank.
 *
 * @see "Peto 1973, Applied Statistics 22:86"
 * @see "Turnbull 1976, Journal of the Royal Statistical Society B 38:290"
 * @see "Gentleman & Geyer 1994, Biometrika 81:618"
 */
public final class Turnbull {
    /** How often a sample is drawn anew unless asked otherwise. */
    public static final int REPEATS = 999;

    private static final double NO_MASS = 1e-10;
    private static final int EXACT_LEFT = 0;
    private static final int RIGHT = 1;
    private static final int OPEN_LEFT = 2;

    /**
     * Mass on one stretch.
     *
     * @param left not included, unless it is the right: then the time is exact
     * @param right included; {@code Infinity} where it may be at any time after
     * @param mass above 0, at most 1
     */
    public record Mass(double left, double right, double mass) {}

    private final List<Within> seen;
    private final List<Mass> masses;
    private final MassFit fit;

    private Turnbull(List<Within> seen, List<Mass> masses, MassFit fit) {
        this.seen = seen;
        this.masses = masses;
        this.fit = fit;
    }

    /**
     * Estimate the distribution.
     *
     * @param seen in any order
     * @return the estimate; absent when nobody was looked at
     */
    public static Optional<Turnbull> of(Collection<Within> seen) {
        if (seen.isEmpty()) {
            return Optional.empty();
        }
        TreeMap<Within, Integer> times = new TreeMap<>((one, other) -> one.left() != other.left()
                ? Double.compare(one.left(), other.left())
                : Double.compare(one.right(), other.right()));
        seen.forEach(one -> times.merge(one, 1, Integer::sum));
        List<Within> stretches = stretches(times.keySet());
        int count = times.size();
        int[] first = new int[count];
        int[] last = new int[count];
        double[] weight = new double[count];
        int i = 0;
        for (Map.Entry<Within, Integer> entry : times.entrySet()) {
            first[i] = Integer.MAX_VALUE;
            for (int j = 0; j < stretches.size(); j++) {
                if (holds(entry.getKey(), stretches.get(j))) {
                    first[i] = Math.min(first[i], j);
                    last[i] = j;
                }
            }
            weight[i] = entry.getValue();
            i++;
        }
        MassFit fit = MassFit.of(first, last, weight, stretches.size());
        List<Mass> masses = new ArrayList<>();
        for (int j = 0; j < stretches.size(); j++) {
            double mass = fit.masses()[j];
            if (mass > NO_MASS) {
                masses.add(new Mass(stretches.get(j).left(), stretches.get(j).right(), mass));
            }
        }
        return Optional.of(new Turnbull(List.copyOf(seen), List.copyOf(masses), fit));
    }

    private record End(double time, int kind) implements Comparable<End> {
        @Override
        public int compareTo(End other) {
            return time != other.time ? Double.compare(time, other.time) : Integer.compare(kind, other.kind);
        }
    }

    /** Return the maximal intersections, the earliest first. An open left end is just after its time, a right end on it. */
    private static List<Within> stretches(Collection<Within> seen) {
        List<End> ends = new ArrayList<>();
        for (Within one : seen) {
            ends.add(new End(one.left(), one.isExact() ? EXACT_LEFT : OPEN_LEFT));
            ends.add(new End(one.right(), RIGHT));
        }
        ends.sort(null);
        List<Within> stretches = new ArrayList<>();
        for (int i = 0; i + 1 < ends.size(); i++) {
            if (ends.get(i).kind() != RIGHT && ends.get(i + 1).kind() == RIGHT) {
                stretches.add(new Within(ends.get(i).time(), ends.get(i + 1).time()));
            }
        }
        return stretches;
    }

    private static boolean holds(Within seen, Within stretch) {
        boolean begins = stretch.isExact() && !seen.isExact()
                ? seen.left() < stretch.left()
                : seen.left() <= stretch.left() && (stretch.isExact() || !seen.isExact());
        return begins && seen.right() >= stretch.right();
    }

    /** Return how many were looked at. */
    public int followed() {
        return seen.size();
    }

    /** Return the mass on each stretch that has any, the earliest first; they add up to 1. */
    public List<Mass> masses() {
        return masses;
    }

    /** Return Σ log zᵢ at the estimate. */
    public double logLikelihood() {
        return fit.logLikelihood();
    }

    /** Tell whether the maximum was found; if not, the estimate is but the best seen and must not be trusted. */
    public boolean hasConverged() {
        return fit.converged();
    }

    /** Return how far the conditions of Kuhn and Tucker are from holding, in parts of n; below 1e-9 when converged. */
    public double kuhnTucker() {
        return fit.kuhnTucker();
    }

    /** Return the share to which it has not happened by the given time: a range, where mass may lie to either side. */
    public Range survival(double time) {
        double lower = 0;
        double upper = 0;
        for (Mass mass : masses) {
            boolean later = mass.left() >= time && mass.right() > time;
            boolean earlier = mass.right() <= time;
            lower += later ? mass.mass() : 0;
            upper += earlier ? 0 : mass.mass();
        }
        return new Range(Math.min(1, lower), Math.max(Math.min(1, lower), Math.min(1, upper)));
    }

    /**
     * Return the range in which the time lies by which it has happened to the given share; its upper end is
     * {@code Infinity} when that much mass comes only with those to whom it had not happened at the last look.
     *
     * @param share above 0 and below 1
     */
    public Range quantile(double share) {
        Wilson.checkConfidence(share);
        double sum = 0;
        for (Mass mass : masses) {
            sum += mass.mass();
            if (sum >= share - 1e-9) {
                return new Range(mass.left(), mass.right());
            }
        }
        Mass last = masses.get(masses.size() - 1);
        return new Range(last.left(), last.right());
    }

    /** Return the range in which the median lies. */
    public Range median() {
        return quantile(0.5);
    }

    /**
     * Return an interval for the median by the bootstrap: the sample is drawn anew from itself, its median's range worked
     * out, and the outer quantiles taken: of the lower ends below, of the upper ends above. The same seed gives the same
     * interval. It is a rough one: how well the bootstrap works for such data is not settled, and with fewer than some
     * twenty looked at it should be read as a hint. The upper limit is {@code Infinity} where too many medians have no
     * upper end.
     *
     * @param confidence above 0 and below 1, such as 0.95
     * @param repeats how often the sample is drawn anew, such as {@link #REPEATS}
     * @param seed of the draws
     * @see "Efron & Tibshirani 1993, An Introduction to the Bootstrap, section 13.3"
     */
    public Interval medianInterval(double confidence, int repeats, long seed) {
        Wilson.checkConfidence(confidence);
        SplittableRandom random = new SplittableRandom(seed);
        double[] lower = new double[repeats];
        double[] upper = new double[repeats];
        List<Within> drawn = new ArrayList<>(seen);
        for (int repeat = 0; repeat < repeats; repeat++) {
            for (int i = 0; i < drawn.size(); i++) {
                drawn.set(i, seen.get(random.nextInt(seen.size())));
            }
            Range median = Turnbull.of(drawn).orElseThrow().median();
            lower[repeat] = median.lower();
            upper[repeat] = median.upper();
        }
        Arrays.sort(lower);
        Arrays.sort(upper);
        int beyond = (int) Math.floor((1 - confidence) / 2 * (repeats + 1));
        int low = Math.max(0, beyond - 1);
        return new Interval(lower[low], upper[repeats - 1 - low], confidence, Interval.Method.BOOTSTRAP);
    }
}
