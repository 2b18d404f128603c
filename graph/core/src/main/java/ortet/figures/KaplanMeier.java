package ortet.figures;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The share to which something has not happened yet, over time, when not everybody could be followed to the end.
 *
 * <p>At each time t at which it happened to d of the n still followed, the share S is multiplied by 1 − d/n. The
 * standard error is Greenwood's, S √(Σ d / n(n − d)); the limits are symmetric on the scale log(−log S). Where S is 0 or 1
 * there are no limits, and where it is 0 no standard error. Who was censored at the time of an event counts as followed up
 * to it. Whatever happened counts, whatever its cause; where one event keeps another from ever happening take
 * {@link Incidence}.
 *
 * <p>The <b>median</b> is the first time at which S is at most one half; where S touches it exactly, the middle of the flat
 * stretch up to the next event. It is absent when S stays above. Its interval (Brookmeyer and Crowley) runs from the first
 * time at which the lower limit is at most one half to the first at which the upper one is, {@code Infinity} when the data
 * end before.
 *
 * @see "Kaplan & Meier 1958, Journal of the American Statistical Association 53:457"
 * @see "Brookmeyer & Crowley 1982, Biometrics 38:29"
 */
public final class KaplanMeier {
    /** S that touches a quantile but for rounding touches it. */
    private static final double TOUCHES = 1e-12;

    /**
     * The curve from one time on.
     *
     * @param time at which it happened, or 0 for the beginning
     * @param atRisk followed up to this time or longer
     * @param events at this time
     * @param survival share to which it has not happened by this time, this time included
     * @param error standard error of that share; absent where the share is 0
     * @param interval absent where the share is 0 or 1
     */
    public record Step(
            double time,
            long atRisk,
            long events,
            double survival,
            Optional<Double> error,
            Optional<Interval> interval) {
        public Step {
            Objects.requireNonNull(error);
            Objects.requireNonNull(interval);
        }
    }

    private final List<AtRisk.Moment> moments;
    private final List<Step> steps;
    private final double confidence;
    private final long followed;

    private KaplanMeier(Collection<Followed> followed, double confidence) {
        Wilson.checkConfidence(confidence);
        this.confidence = confidence;
        this.followed = followed.size();
        this.moments = AtRisk.moments(followed);
        List<Step> all = new ArrayList<>();
        double survival = 1;
        double greenwood = 0;
        for (AtRisk.Moment moment : moments) {
            long events = moment.events();
            if (events > 0) {
                double n = moment.atRisk();
                survival *= 1 - events / n;
                greenwood += events / (n * (n - events));
                Optional<Double> error = survival > 0 ? Optional.of(survival * Math.sqrt(greenwood)) : Optional.empty();
                all.add(new Step(
                        moment.time(),
                        moment.atRisk(),
                        events,
                        survival,
                        error,
                        LogLog.limits(survival, error, confidence)));
            }
        }
        this.steps = List.copyOf(all);
    }

    /**
     * Estimate the curve.
     *
     * @param followed in any order; may be nobody
     * @param confidence of the intervals, above 0 and below 1, such as 0.95
     * @throws ortet.value.Refused when the confidence is out of its range
     */
    public static KaplanMeier of(Collection<Followed> followed, double confidence) {
        return new KaplanMeier(followed, confidence);
    }

    /** Return how many were followed. */
    public long followed() {
        return followed;
    }

    /** Return to how many it happened. */
    public long events() {
        return steps.stream().mapToLong(Step::events).sum();
    }

    /** Return the curve: a step for each time at which it happened. */
    public List<Step> steps() {
        return steps;
    }

    /** Return the time of the last event or censoring; absent when nobody was followed. */
    public Optional<Double> end() {
        return moments.isEmpty()
                ? Optional.empty()
                : Optional.of(moments.get(moments.size() - 1).time());
    }

    /**
     * Return the curve at any time, with how many were followed up to then or longer. Absent when nobody was followed, and
     * past the last time when it had not happened to all by then: nobody knows how the curve goes on.
     */
    public Optional<Step> at(double time) {
        if (moments.isEmpty()) {
            return Optional.empty();
        }
        long atRisk = 0;
        long events = 0;
        for (AtRisk.Moment moment : moments) {
            if (moment.time() >= time) {
                atRisk = moment.atRisk();
                events = moment.time() == time ? moment.events() : 0;
                break;
            }
        }
        double survival = 1;
        Optional<Double> error = Optional.of(0.0);
        Optional<Interval> interval = Optional.empty();
        for (Step step : steps) {
            if (step.time() <= time) {
                survival = step.survival();
                error = step.error();
                interval = step.interval();
            }
        }
        if (atRisk == 0 && survival > 0) {
            return Optional.empty();
        }
        return Optional.of(new Step(time, atRisk, events, survival, error, interval));
    }

    /** Return the median; absent when the curve stays above one half. */
    public Optional<Double> median() {
        return quantile(0.5);
    }

    /**
     * Return the time by which it has happened to the given share.
     *
     * @param share above 0 and below 1
     * @return the time; absent when the curve does not come down so far
     */
    public Optional<Double> quantile(double share) {
        Wilson.checkConfidence(share);
        double level = 1 - share;
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            if (step.survival() <= level + TOUCHES) {
                boolean flat = Math.abs(step.survival() - level) <= TOUCHES && i + 1 < steps.size();
                return Optional.of(flat ? (step.time() + steps.get(i + 1).time()) / 2 : step.time());
            }
        }
        return Optional.empty();
    }

    /**
     * Return the interval of the median; its upper limit is {@code Infinity} where the data end before. Absent when the
     * lower limit of the curve never comes down to one half before the curve ends.
     */
    public Optional<Interval> medianInterval() {
        double lower = Double.POSITIVE_INFINITY;
        double upper = Double.POSITIVE_INFINITY;
        for (Step step : steps) {
            if (step.interval().filter(limits -> limits.lower() <= 0.5).isPresent()) {
                lower = Math.min(lower, step.time());
            }
            if (step.interval().filter(limits -> limits.upper() <= 0.5).isPresent()) {
                upper = Math.min(upper, step.time());
            }
        }
        return lower == Double.POSITIVE_INFINITY
                ? Optional.empty()
                : Optional.of(new Interval(lower, upper, confidence, Interval.Method.BROOKMEYER_CROWLEY));
    }
}
