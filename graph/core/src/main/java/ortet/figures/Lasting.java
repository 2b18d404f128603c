package ortet.figures;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import ortet.value.Refused;

/**
 * How long something takes, by a law with a few figures and what speeds it up or slows it down: the accelerated failure
 * time model with times known exactly, within an interval, or not yet.
 *
 * <p>log T = x′β + σW. With W least extreme value, T has a Weibull distribution of shape 1/σ; with W logistic, a
 * log-logistic one. A covariate that is greater by 1 makes all times exp(β) times as long. One seen within (l, r] adds
 * log P(l &lt; T ≤ r) to the log-likelihood, one seen exactly the logarithm of the density of T.
 *
 * <p>The likelihood is maximised in β/σ and 1/σ, in which it is concave for both laws, by Newton's method with a shrinking
 * step; so there is one maximum, or none. Standard errors are from the inverse of the observed information. Limits of a
 * quantile are symmetric on the logarithmic scale, by the delta method. Whether a maximum was found is part of the result:
 * there is none when nothing has happened yet, when one and the same time would fit all, or when a covariate tells apart those
 * to whom it happened from the others altogether.
 *
 * @see "Kalbfleisch & Prentice 2002, The Statistical Analysis of Failure Time Data, chapter 3"
 * @see "Burridge 1981, Journal of the Royal Statistical Society B 43:41, for concavity"
 */
public final class Lasting {
    private static final int STEPS = 200;

    /** The law of the times. */
    public enum Law {
        /** Weibull: the chance of happening next rises or falls with time as a power of it. */
        WEIBULL("Weibull") {
            @Override
            Term exact(double z) {
                double e = Math.exp(z);
                return new Term(z - e, 1 - e, 0, -e, 0, 0);
            }

            @Override
            Term between(double low, double high) {
                double u = Math.exp(low);
                double v = Math.exp(high);
                double apart = low == Double.NEGATIVE_INFINITY ? v : u * Math.expm1(high - low);
                if (!(apart < FAR)) {
                    return new Term(-u, -u, 0, -u, 0, 0);
                }
                double h = 1 / Math.expm1(apart);
                double bend = -h * (1 + h);
                double first = low == Double.NEGATIVE_INFINITY ? 0 : u * (-1 - h);
                return new Term(
                        -u + logOneMinusExp(apart),
                        first,
                        v * h,
                        low == Double.NEGATIVE_INFINITY ? 0 : first + u * u * bend,
                        v * h + v * v * bend,
                        low == Double.NEGATIVE_INFINITY ? 0 : -u * v * bend);
            }

            @Override
            double quantile(double share) {
                return Math.log(-Math.log1p(-share));
            }
        },

        /** Log-logistic: the chance of happening next may rise at first and fall later; long times are more common. */
        LOG_LOGISTIC("log-logistic") {
            @Override
            Term exact(double z) {
                double p = logistic(z);
                return new Term(z - 2 * logOnePlusExp(z), 1 - 2 * p, 0, -2 * p * (1 - p), 0, 0);
            }

            @Override
            Term between(double low, double high) {
                double p = logistic(low);
                double q = logistic(high);
                if (high == Double.POSITIVE_INFINITY) {
                    return new Term(-logOnePlusExp(low), -p, 0, -p * (1 - p), 0, 0);
                }
                if (low == Double.NEGATIVE_INFINITY) {
                    return new Term(high - logOnePlusExp(high), 0, 1 - q, 0, -q * (1 - q), 0);
                }
                double h = 1 / Math.expm1(high - low);
                double bend = -h * (1 + h);
                return new Term(
                        high + logOneMinusExp(high - low) - logOnePlusExp(low) - logOnePlusExp(high),
                        -h - p,
                        1 + h - q,
                        bend - p * (1 - p),
                        bend - q * (1 - q),
                        -bend);
            }

            @Override
            double quantile(double share) {
                return Math.log(share) - Math.log1p(-share);
            }
        };

        /** exp(−700) is nothing beside 1. */
        private static final double FAR = 700;

        private final String title;

        Law(String title) {
            this.title = title;
        }

        /** Return what the law is called. */
        public String title() {
            return title;
        }

        /** Return the logarithm of the density of W at z. */
        abstract Term exact(double z);

        /** Return the logarithm of P(low &lt; W ≤ high). */
        abstract Term between(double low, double high);

        /** Return the quantile of W. */
        abstract double quantile(double share);

        private static double logistic(double z) {
            return 1 / (1 + Math.exp(-z));
        }

        private static double logOnePlusExp(double z) {
            return Math.max(z, 0) + Math.log1p(Math.exp(-Math.abs(z)));
        }

        private static double logOneMinusExp(double apart) {
            return apart < 0.6931 ? Math.log(-Math.expm1(-apart)) : Math.log1p(-Math.exp(-apart));
        }
    }

    /** A term of the log-likelihood with its first and second derivatives in the one or two figures it depends on. */
    record Term(double value, double low, double high, double lowLow, double highHigh, double lowHigh) {}

    /**
     * One that was looked at.
     *
     * @param seen when it happened
     * @param covariates in the order of their names
     */
    public record Subject(Within seen, List<Double> covariates) {
        public Subject {
            Objects.requireNonNull(seen);
            covariates = List.copyOf(covariates);
        }
    }

    /** What came of the fit. */
    public sealed interface Fit {
        /** Hand the result to the method for its kind. */
        <R> R accept(Visitor<R> visitor);

        /** Does something with a result, kind by kind. */
        interface Visitor<R> {
            /** Visit a fit that reached the maximum. */
            R fitted(Fitted fit);

            /** Visit one that did not. */
            R failed(Failed fit);
        }

        /** Return the fit, where the maximum was reached. */
        default Optional<Fitted> fitted() {
            return accept(new Visitor<Optional<Fitted>>() {
                @Override
                public Optional<Fitted> fitted(Fitted fit) {
                    return Optional.of(fit);
                }

                @Override
                public Optional<Fitted> failed(Failed fit) {
                    return Optional.empty();
                }
            });
        }
    }

    /**
     * A fit that did not reach a maximum. There are no estimates.
     *
     * @param reason in words
     */
    public record Failed(String reason) implements Fit {
        public Failed {
            Objects.requireNonNull(reason);
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.failed(this);
        }
    }

    /**
     * An estimate with its standard error.
     *
     * @param name of the covariate, {@code (Intercept)} or {@code log(scale)}
     */
    public record Estimate(String name, double value, double error) {}

    /**
     * A time by which it has happened to some share.
     *
     * @param share of those with the given covariates
     * @param time in the unit of what was seen
     * @param interval above 0
     */
    public record Quantile(double share, double time, Interval interval) {}

    /** A fit that reached the maximum. */
    public static final class Fitted implements Fit {
        private final Law law;
        private final List<Estimate> estimates;
        private final double[][] covariance;
        private final double logLikelihood;
        private final int steps;

        private Fitted(Law law, List<Estimate> estimates, double[][] covariance, double logLikelihood, int steps) {
            this.law = law;
            this.estimates = List.copyOf(estimates);
            this.covariance = covariance;
            this.logLikelihood = logLikelihood;
            this.steps = steps;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.fitted(this);
        }

        /** Return the law that was fitted. */
        public Law law() {
            return law;
        }

        /** Return the intercept, the covariates in their order, and the logarithm of the scale σ, last. */
        public List<Estimate> estimates() {
            return estimates;
        }

        /** Return the scale σ, above 0; the shape of a Weibull law is 1/σ. */
        public double scale() {
            return Math.exp(estimates.get(estimates.size() - 1).value());
        }

        /** Return the log-likelihood at the maximum, of the density of T and not of its logarithm. */
        public double logLikelihood() {
            return logLikelihood;
        }

        /** Return in how many steps the maximum was reached. */
        public int steps() {
            return steps;
        }

        /**
         * Return the time by which it has happened to a share of those with the given covariates.
         *
         * @param share above 0 and below 1, such as 0.5 for the median
         * @param covariates in the order of their names
         * @param confidence above 0 and below 1, such as 0.95
         * @throws Refused when one of them is out of its range
         */
        public Quantile quantile(double share, List<Double> covariates, double confidence) {
            Wilson.checkConfidence(share);
            int scale = estimates.size() - 1;
            if (covariates.size() != scale - 1) {
                throw Refused.because(
                        "bad-covariates", "expected " + (scale - 1) + " covariates, found " + covariates.size());
            }
            double[] slope = new double[scale + 1];
            slope[0] = 1;
            double log = estimates.get(0).value();
            for (int j = 1; j < scale; j++) {
                slope[j] = covariates.get(j - 1);
                log += slope[j] * estimates.get(j).value();
            }
            slope[scale] = scale() * law.quantile(share);
            log += slope[scale];
            double variance = 0;
            for (int j = 0; j <= scale; j++) {
                for (int k = 0; k <= scale; k++) {
                    variance += slope[j] * covariance[j][k] * slope[k];
                }
            }
            double reach = Wilson.quantile(confidence) * Math.sqrt(Math.max(0, variance));
            return new Quantile(
                    share,
                    Math.exp(log),
                    new Interval(Math.exp(log - reach), Math.exp(log + reach), confidence, Interval.Method.DELTA));
        }
    }

    private final Law law;
    private final List<String> names;
    private final List<Within> seen = new ArrayList<>();
    /** The intercept first; the covariates centred and in parts of their spread. */
    private final double[][] x;

    private final double[] mean;
    private final double[] spread;
    /** β/σ for the intercept and each covariate, then 1/σ. */
    private double[] theta;

    private Lasting(Law law, List<String> names, List<Subject> subjects) {
        this.law = law;
        this.names = List.copyOf(names);
        int covariates = names.size();
        this.x = new double[subjects.size()][covariates + 1];
        this.mean = new double[covariates];
        this.spread = new double[covariates];
        for (Subject subject : subjects) {
            if (subject.covariates().size() != covariates
                    || subject.covariates().stream().anyMatch(value -> !Double.isFinite(value))) {
                throw Refused.because(
                        "bad-covariates",
                        "expected " + covariates + " covariates for each, found " + subject.covariates());
            }
            seen.add(subject.seen());
        }
        for (int j = 0; j < covariates; j++) {
            for (Subject subject : subjects) {
                mean[j] += subject.covariates().get(j) / subjects.size();
            }
            for (Subject subject : subjects) {
                double away = subject.covariates().get(j) - mean[j];
                spread[j] += away * away / subjects.size();
            }
            spread[j] = Math.sqrt(spread[j]);
        }
        for (int i = 0; i < x.length; i++) {
            x[i][0] = 1;
            for (int j = 0; j < covariates; j++) {
                x[i][j + 1] = spread[j] > 0 ? (subjects.get(i).covariates().get(j) - mean[j]) / spread[j] : 0;
            }
        }
    }

    /**
     * Fit a law.
     *
     * @param names of the covariates; none for a law that is the same for all
     * @param subjects in any order
     * @throws Refused when the covariates of a subject do not match the names
     */
    public static Fit fit(Law law, List<String> names, List<Subject> subjects) {
        return new Lasting(law, names, subjects).run();
    }

    private Fit run() {
        if (seen.isEmpty()) {
            return new Failed("nobody was looked at");
        }
        if (seen.stream().noneMatch(Within::hasHappened)) {
            return new Failed("it has not happened to anybody yet");
        }
        if (oneTimeFitsAll()) {
            return new Failed("the times do not spread");
        }
        for (int j = 0; j < names.size(); j++) {
            if (!(spread[j] > 1e-12 * Math.abs(mean[j]))) {
                return new Failed(names.get(j) + " is the same for all");
            }
        }
        if (Positive.of(gram(), 1e-10).isEmpty()) {
            return new Failed("the covariates cannot be told apart");
        }
        start();
        Slope here = slope(theta);
        for (int step = 1; step <= STEPS; step++) {
            Optional<Positive> solver = Positive.of(here.curvature(), 1e-13);
            if (solver.isEmpty()) {
                return new Failed("the likelihood has no single maximum");
            }
            double[] way = solver.get().solve(here.gradient());
            double longest = 0;
            double gain = 0;
            for (int j = 0; j < way.length; j++) {
                longest = Math.max(longest, Math.abs(way[j]) / (1 + Math.abs(theta[j])));
                gain += way[j] * here.gradient()[j];
            }
            if (longest < 1e-9) {
                return result(here, solver.get(), step);
            }
            double reach = 1;
            double[] next = theta.clone();
            Slope there = here;
            boolean climbed = false;
            for (int halving = 0; halving < 60 && !climbed; halving++, reach /= 2) {
                for (int j = 0; j < next.length; j++) {
                    next[j] = theta[j] + reach * way[j];
                }
                if (next[next.length - 1] > 0.1 * theta[next.length - 1]) {
                    there = slope(next);
                    climbed = there.value() >= here.value() + 1e-4 * reach * gain - 1e-13 * Math.abs(here.value());
                }
            }
            if (!climbed) {
                return new Failed("no step led further up");
            }
            theta = next.clone();
            here = there;
            if (theta[theta.length - 1] > 1e7) {
                return new Failed("the times do not spread");
            }
        }
        return new Failed("no maximum within " + STEPS + " steps");
    }

    /** Tell whether everybody may have had it at the same time, so that no spread at all is the likeliest. */
    private boolean oneTimeFitsAll() {
        double left = seen.stream().mapToDouble(Within::left).max().orElseThrow();
        double right = seen.stream().mapToDouble(Within::right).min().orElseThrow();
        return left < right
                || left == right
                        && seen.stream().filter(one -> one.left() == left).allMatch(Within::isExact);
    }

    private DMatrixRMaj gram() {
        DMatrixRMaj gram = new DMatrixRMaj(names.size() + 1, names.size() + 1);
        for (double[] row : x) {
            for (int j = 0; j < row.length; j++) {
                for (int k = 0; k < row.length; k++) {
                    gram.add(j, k, row[j] * row[k]);
                }
            }
        }
        return gram;
    }

    /** Begin with the mean and the spread of the logarithms of about when it happened, the same for all. */
    private void start() {
        double sum = 0;
        double squares = 0;
        for (Within one : seen) {
            double about = one.hasHappened() ? (one.left() + one.right()) / 2 : Math.max(one.left(), 1e-300);
            sum += Math.log(about);
            squares += Math.log(about) * Math.log(about);
        }
        double middle = sum / seen.size();
        double deviation = Math.sqrt(Math.max(0.01, squares / seen.size() - middle * middle));
        theta = new double[names.size() + 2];
        theta[0] = middle / deviation;
        theta[theta.length - 1] = 1 / deviation;
    }

    /** The log-likelihood at a point, its gradient, and minus its second derivatives. */
    private record Slope(double value, double[] gradient, DMatrixRMaj curvature) {}

    private Slope slope(double[] at) {
        int size = at.length;
        double tau = at[size - 1];
        double value = 0;
        double[] gradient = new double[size];
        DMatrixRMaj curvature = new DMatrixRMaj(size, size);
        double[] low = new double[size];
        double[] high = new double[size];
        for (int i = 0; i < x.length; i++) {
            Within one = seen.get(i);
            double line = 0;
            for (int j = 0; j < size - 1; j++) {
                line += at[j] * x[i][j];
                low[j] = -x[i][j];
                high[j] = -x[i][j];
            }
            double logLeft = Math.log(one.left());
            double logRight = Math.log(one.right());
            low[size - 1] = one.left() > 0 ? logLeft : 0;
            high[size - 1] = one.hasHappened() ? logRight : 0;
            double left = one.left() > 0 ? tau * logLeft - line : Double.NEGATIVE_INFINITY;
            double right = one.hasHappened() ? tau * logRight - line : Double.POSITIVE_INFINITY;
            if (left == Double.NEGATIVE_INFINITY && right == Double.POSITIVE_INFINITY) {
                continue; // looked at once, at the start: says nothing
            }
            Term term = one.isExact() ? law.exact(left) : law.between(left, right);
            value += term.value();
            if (one.isExact()) {
                value += Math.log(tau) - logLeft;
                gradient[size - 1] += 1 / tau;
                curvature.add(size - 1, size - 1, 1 / (tau * tau));
            }
            for (int j = 0; j < size; j++) {
                gradient[j] += term.low() * low[j] + term.high() * high[j];
                for (int k = 0; k < size; k++) {
                    curvature.add(
                            j,
                            k,
                            -(term.lowLow() * low[j] * low[k]
                                    + term.highHigh() * high[j] * high[k]
                                    + term.lowHigh() * (low[j] * high[k] + high[j] * low[k])));
                }
            }
        }
        return new Slope(Double.isNaN(value) ? Double.NEGATIVE_INFINITY : value, gradient, curvature);
    }

    /** Turn β/σ and 1/σ of the scaled covariates into β of those given and log σ. */
    private Fit result(Slope top, Positive information, int steps) {
        int size = theta.length;
        double tau = theta[size - 1];
        // β'_j = θ_j / τ and log σ = −log τ; then β_j = β'_j / spread, and the intercept gives back the means
        double[][] turn = new double[size][size];
        double[] value = new double[size];
        for (int j = 0; j < size - 1; j++) {
            double scale = j == 0 ? 1 : spread[j - 1];
            value[j] = theta[j] / tau / scale;
            turn[j][j] = 1 / tau / scale;
            turn[j][size - 1] = -theta[j] / (tau * tau) / scale;
        }
        value[size - 1] = -Math.log(tau);
        turn[size - 1][size - 1] = -1 / tau;
        for (int j = 1; j < size - 1; j++) {
            value[0] -= value[j] * mean[j - 1];
            for (int k = 0; k < size; k++) {
                turn[0][k] -= turn[j][k] * mean[j - 1];
            }
        }
        double[][] covariance = new double[size][size];
        double[][] inverse = information.inverse();
        for (int a = 0; a < size; a++) {
            for (int b = 0; b < size; b++) {
                for (int j = 0; j < size; j++) {
                    for (int k = 0; k < size; k++) {
                        covariance[a][b] += turn[a][j] * inverse[j][k] * turn[b][k];
                    }
                }
            }
        }
        List<Estimate> estimates = new ArrayList<>();
        for (int j = 0; j < size; j++) {
            String name = j == 0 ? "(Intercept)" : j < size - 1 ? names.get(j - 1) : "log(scale)";
            estimates.add(new Estimate(name, value[j], Math.sqrt(covariance[j][j])));
        }
        return new Fitted(law, estimates, covariance, top.value(), steps);
    }
}
