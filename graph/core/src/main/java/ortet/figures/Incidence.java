package ortet.figures;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The share to which something has happened, over time, when something else may happen first and keep it from happening
 * ever: the cumulative incidence of Aalen and Johansen.
 *
 * <p>At each time t at which n are still followed and dₖ leave by cause k, Fₖ grows by S dₖ/n, where S is the share to which
 * nothing had happened before t. The incidences of all causes and S add up to 1.
 *
 * <p>Two standard errors are told. That of the <em>infinitesimal jackknife</em> is the root of the summed squares of what
 * each of those followed adds to Fₖ, (∂Fₖ/∂wᵢ) for its weight wᵢ; it is the one that R's {@code survfit} gives, and the one
 * in the limits. That of the <em>delta method</em> is
 *
 * <pre>
 * Σ (F(t) − F(u))² d / n(n − d) + Σ S(u−)² (n − dₖ) dₖ / n³ − 2 Σ (F(t) − F(u)) S(u−) dₖ / n²
 * </pre>
 *
 * <p>summed over the times u up to t. Without weights they agree but for rounding. Limits are symmetric on the scale
 * log(−log F); there are none where F is 0 or 1.
 *
 * @see "Aalen & Johansen 1978, Scandinavian Journal of Statistics 5:141"
 * @see "Marubini & Valsecchi 1995, Analysing Survival Data from Clinical Trials and Observational Studies, section 10.3"
 */
public final class Incidence {
    /**
     * The incidence from one time on.
     *
     * @param time in the unit of what was followed
     * @param atRisk followed up to this time or longer
     * @param events of this cause at this time
     * @param share to which it has happened by this time, this time included
     * @param error standard error by the infinitesimal jackknife
     * @param deltaError standard error by the delta method
     * @param interval absent where the share is 0 or 1
     */
    public record Step(
            double time,
            long atRisk,
            long events,
            double share,
            double error,
            double deltaError,
            Optional<Interval> interval) {
        public Step {
            Objects.requireNonNull(interval);
        }
    }

    private final List<AtRisk.Moment> moments;
    private final int cause;
    private final double confidence;
    private final long followed;
    /** S just before each moment. */
    private final double[] before;
    /** F at each moment. */
    private final double[] share;

    private Incidence(Collection<Followed> followed, int cause, double confidence) {
        Wilson.checkConfidence(confidence);
        this.cause = cause;
        this.confidence = confidence;
        this.followed = followed.size();
        this.moments = AtRisk.moments(followed);
        this.before = new double[moments.size()];
        this.share = new double[moments.size()];
        double survival = 1;
        double sum = 0;
        for (int i = 0; i < before.length; i++) {
            AtRisk.Moment moment = moments.get(i);
            before[i] = survival;
            sum += survival * of(moment) / moment.atRisk();
            share[i] = sum;
            survival *= 1 - (double) moment.events() / moment.atRisk();
        }
    }

    /**
     * Estimate the incidence of one cause.
     *
     * @param followed in any order; may be nobody
     * @param cause from 1
     * @param confidence of the intervals, above 0 and below 1, such as 0.95
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static Incidence of(Collection<Followed> followed, int cause, double confidence) {
        return new Incidence(followed, cause, confidence);
    }

    private long of(AtRisk.Moment moment) {
        return cause > 0 && cause < moment.byCause().length ? moment.of(cause) : 0;
    }

    /** Return how many were followed. */
    public long followed() {
        return followed;
    }

    /** Return to how many it happened. */
    public long events() {
        return moments.stream().mapToLong(this::of).sum();
    }

    /** Return the curve: a step for each time at which it happened. */
    public List<Step> steps() {
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < moments.size(); i++) {
            if (of(moments.get(i)) > 0) {
                steps.add(step(moments.get(i).time(), i));
            }
        }
        return List.copyOf(steps);
    }

    /**
     * Return the incidence at any time. Absent when nobody was followed, and past the last time unless something had
     * happened to all by then.
     */
    public Optional<Step> at(double time) {
        if (moments.isEmpty()) {
            return Optional.empty();
        }
        int last = -1;
        while (last + 1 < moments.size() && moments.get(last + 1).time() <= time) {
            last++;
        }
        AtRisk.Moment end = moments.get(moments.size() - 1);
        if (time > end.time() && end.events() < end.atRisk()) {
            return Optional.empty();
        }
        return Optional.of(step(time, last));
    }

    /** Return the time by which it has happened to the given share of all; absent when it has not to so many. */
    public Optional<Double> quantile(double wanted) {
        Wilson.checkConfidence(wanted);
        for (int i = 0; i < share.length; i++) {
            if (share[i] >= wanted - 1e-12) {
                return Optional.of(moments.get(i).time());
            }
        }
        return Optional.empty();
    }

    private Step step(double time, int last) {
        double now = last < 0 ? 0 : share[last];
        boolean onTheDot = last >= 0 && moments.get(last).time() == time;
        long atRisk = onTheDot
                ? moments.get(last).atRisk()
                : last + 1 < moments.size() ? moments.get(last + 1).atRisk() : 0;
        double error = Math.sqrt(jackknife(last));
        return new Step(
                time,
                atRisk,
                onTheDot ? of(moments.get(last)) : 0,
                now,
                error,
                Math.sqrt(delta(last)),
                LogLog.limits(now, Optional.of(error), confidence));
    }

    /**
     * Return the summed squares of ∂F/∂wᵢ at the given moment. Raising the weight of one that is followed beyond u changes
     * n(u), for all of them alike; what it leaves by adds to d(u) at its own time, and from then on F(t) − F(u) is changed
     * as S after its time is.
     */
    private double jackknife(int last) {
        double now = last < 0 ? 0 : share[last];
        double common = 0; // Σ S (A − 1/n) dₖ/n over the moments so far, A as below
        double hazard = 0; // A = Σ d / n(n − d): how log S grows with the weight of one followed beyond
        double sum = 0;
        for (int i = 0; i <= last; i++) {
            AtRisk.Moment moment = moments.get(i);
            double n = moment.atRisk();
            double d = moment.events();
            double k = of(moment);
            common += before[i] * (k / n) * (hazard - 1 / n);
            double rest = now - share[i];
            // when all that were left have gone, nothing comes after
            hazard += d < n ? d / (n * (n - d)) : 0;
            double censored = common + hazard * rest;
            double other = common + (hazard - (d < n ? 1 / (n - d) : 0)) * rest;
            double own = other + before[i] / n;
            sum += moment.censored() * censored * censored + (d - k) * other * other + k * own * own;
        }
        long beyond = last < 0
                ? 0
                : moments.get(last).atRisk()
                        - moments.get(last).events()
                        - moments.get(last).censored();
        return sum + beyond * common * common;
    }

    private double delta(int last) {
        double sum = 0;
        for (int i = 0; i <= last; i++) {
            AtRisk.Moment moment = moments.get(i);
            double n = moment.atRisk();
            double d = moment.events();
            double k = of(moment);
            double rest = share[last] - share[i];
            sum += (d < n ? rest * rest * d / (n * (n - d)) : 0)
                    + before[i] * before[i] * (n - k) * k / (n * n * n)
                    - 2 * rest * before[i] * k / (n * n);
        }
        return Math.max(0, sum);
    }
}
