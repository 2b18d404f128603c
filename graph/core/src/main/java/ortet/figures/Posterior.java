package ortet.figures;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.ejml.data.DMatrixRMaj;
import ortet.figures.Likelihood.Point;

/**
 * What is known of all random intercepts and fixed effects together, given the data: a normal distribution, or a mixture of
 * normal ones over the standard deviations.
 *
 * <p>In each part the intercepts are normal about their modes with covariance Λ H⁻¹ Λ, and their modes move with the
 * parameters, which are normal about their estimates (Kass and Steffey's first-order approximation):
 *
 * <pre>Var(b) ≈ Λ H⁻¹ Λ + J C J′,   J = ∂b̂/∂(β, σ),   C = the inverse of the information</pre>
 *
 * <p>That takes the likelihood to be quadratic in σ, which with few groups it is not, least of all where σ is estimated as
 * 0. Where there are few enough intercepts, one such part is therefore made for every place of a grid over the σ, each with
 * the β that are best there, weighted by likelihood times the volume of β (which makes it the restricted likelihood) times
 * a prior of each σ, the gamma distribution of shape 2 and rate 1, which keeps groups from being taken for equal because
 * that happens to be likeliest; the grid ends where that weight has fallen by e⁵. With a flat prior and 50 groups of
 * standard deviation 0.3, intervals of 90 % held 86 % (56 % where σ was estimated as 0).
 *
 * @see "Kass & Steffey 1989, Journal of the American Statistical Association 84:717"
 * @see "Rue, Martino & Chopin 2009, Journal of the Royal Statistical Society B 71:319, section 3.1, for the grid"
 * @see "Chung, Rabe-Hesketh, Dorie, Gelman & Liu 2013, Psychometrika 78:685, for the prior"
 */
final class Posterior {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double DEEPEST = 5;
    private static final int MOST_ALONE = 3000;
    private static final int MOST_PAIRED = 400;
    private static final int MOST_ROWS = 20_000;

    /** About the estimates, the uncertainty of every parameter linearized. */
    private final Part about;
    /** What is averaged: the grid, or the part about the estimates alone. */
    private final List<Part> parts;

    private Posterior(Part about, List<Part> parts) {
        this.about = about;
        this.parts = parts;
    }

    Part about() {
        return about;
    }

    List<Part> parts() {
        return parts;
    }

    static Posterior of(Laplace likelihood, Point top, double[][] covariance, boolean[] frozen) {
        ModelRows rows = likelihood.rows;
        Laplace own = likelihood.fork();
        own.at(top.theta(), top.modes());
        int[] free = new Ascent(own, frozen).free();
        Part about = new Part(1, own, top.theta(), free, covariance);
        int groupings = rows.groupings();
        boolean isSmall = rows.size() <= MOST_ROWS
                && (groupings == 1 && rows.intercepts() <= MOST_ALONE
                        || groupings == 2 && rows.intercepts() <= MOST_PAIRED);
        if (!isSmall) {
            return new Posterior(about, List.of(about));
        }
        List<Part> parts = new Grid(likelihood, top, covariance, free).parts();
        return new Posterior(about, parts.isEmpty() ? List.of(about) : parts);
    }

    /** Some intercepts added up with fixed effects at given values, as normal distribution of one part. */
    record Normal(double mean, double sd) {}

    /** Return the distribution of a sum, in each part. */
    List<Normal> of(double[] fixed, int[] nodes) {
        return parts.stream().map(part -> part.of(fixed, nodes)).toList();
    }

    /** Return the figure below which the mixture lies with the given probability. */
    double quantile(List<Normal> normals, double probability) {
        double z = NORMAL.inverseCumulativeProbability(probability);
        if (normals.size() == 1) {
            return normals.get(0).mean() + z * normals.get(0).sd();
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Normal normal : normals) {
            low = Math.min(low, normal.mean() + z * normal.sd());
            high = Math.max(high, normal.mean() + z * normal.sd());
        }
        for (int halving = 0; halving < 60 && high - low > 1e-9; halving++) {
            double middle = (low + high) / 2;
            double below = 0;
            for (int part = 0; part < normals.size(); part++) {
                Normal normal = normals.get(part);
                below += parts.get(part).weight
                        * NORMAL.cumulativeProbability((middle - normal.mean()) / Math.max(normal.sd(), 1e-300));
            }
            if (below < probability) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** A normal distribution of all intercepts and free parameters. */
    static final class Part {
        final double weight;
        final Laplace likelihood;
        final double[] theta;
        /** The modes on the scale of log odds. */
        final double[] modes;
        /** How the modes move with each free parameter. */
        final double[][] moves;

        final int[] free;
        final double[][] covariance;
        /** The lower triangle whose square is the covariance. */
        final double[][] root;

        /** The likelihood was asked about this place last. */
        Part(double weight, Laplace likelihood, double[] theta, int[] free, double[][] covariance) {
            this.weight = weight;
            this.likelihood = likelihood;
            this.theta = theta;
            this.free = free;
            this.covariance = covariance;
            likelihood.factor.invert();
            double[][] standardized = likelihood.sensitivities();
            modes = likelihood.u.clone();
            moves = new double[free.length][];
            for (int i = 0; i < free.length; i++) {
                moves[i] = standardized[free[i]];
            }
            ModelRows rows = likelihood.rows;
            for (int k = 0; k < rows.groupings(); k++) {
                double sigma = likelihood.sigma[k];
                for (int node = rows.firsts()[k]; node < rows.firsts()[k + 1]; node++) {
                    for (int i = 0; i < free.length; i++) {
                        moves[i][node] *= sigma;
                        if (free[i] == rows.fixed() + k) {
                            moves[i][node] += modes[node];
                        }
                    }
                    modes[node] *= sigma;
                }
            }
            root = root(covariance);
        }

        private Part(double weight, Part other) {
            this.weight = weight;
            likelihood = other.likelihood;
            theta = other.theta;
            free = other.free;
            covariance = other.covariance;
            modes = other.modes;
            moves = other.moves;
            root = other.root;
        }

        Part weighing(double other) {
            return new Part(other, this);
        }

        double sigma(int node) {
            ModelRows rows = likelihood.rows;
            int k = 0;
            while (node >= rows.firsts()[k + 1]) {
                k++;
            }
            return likelihood.sigma[k];
        }

        /** Return the variance of a sum of intercepts if all parameters were known. */
        double conditionalVariance(int[] nodes) {
            SparseFactor factor = likelihood.factor;
            double variance = 0;
            for (int a = 0; a < nodes.length; a++) {
                double sigma = sigma(nodes[a]);
                variance += sigma * sigma * factor.inverseDiagonal[nodes[a]];
                for (int b = 0; b < a; b++) {
                    variance += 2 * sigma * sigma(nodes[b]) * factor.inversePairs[factor.place(nodes[a], nodes[b])];
                }
            }
            return variance;
        }

        Normal of(double[] fixed, int[] nodes) {
            double mean = 0;
            for (int j = 0; j < fixed.length; j++) {
                mean += fixed[j] * theta[j];
            }
            for (int node : nodes) {
                mean += modes[node];
            }
            double[] slope = new double[free.length];
            for (int i = 0; i < free.length; i++) {
                slope[i] = free[i] < fixed.length ? fixed[free[i]] : 0;
                for (int node : nodes) {
                    slope[i] += moves[i][node];
                }
            }
            double variance = conditionalVariance(nodes);
            for (int i = 0; i < free.length; i++) {
                for (int j = 0; j < free.length; j++) {
                    variance += slope[i] * covariance[i][j] * slope[j];
                }
            }
            return new Normal(mean, Math.sqrt(Math.max(0, variance)));
        }

        private static double[][] root(double[][] covariance) {
            int size = covariance.length;
            double[][] root = new double[size][size];
            for (int i = 0; i < size; i++) {
                for (int j = 0; j <= i; j++) {
                    double sum = covariance[i][j];
                    for (int m = 0; m < j; m++) {
                        sum -= root[i][m] * root[j][m];
                    }
                    root[i][j] = i == j ? Math.sqrt(Math.max(0, sum)) : root[j][j] > 0 ? sum / root[j][j] : 0;
                }
            }
            return root;
        }
    }

    /** The places of the grid. */
    private static final class Grid {
        private final Laplace likelihood;
        private final ModelRows rows;
        private final Point top;
        private final double[] strides;

        Grid(Laplace likelihood, Point top, double[][] covariance, int[] free) {
            this.likelihood = likelihood;
            this.top = top;
            rows = likelihood.rows;
            int fixed = rows.fixed();
            strides = new double[rows.groupings()];
            for (int k = 0; k < strides.length; k++) {
                int at = Arrays.binarySearch(free, fixed + k);
                double sd = at >= 0 ? Math.sqrt(covariance[at][at]) : reach(k);
                strides[k] = Math.min(sd, 1) * (rows.groupings() == 1 ? 0.6 : 0.9);
            }
        }

        /** Return how far a deviation must be from 0 for the likelihood to have fallen by about one half. */
        private double reach(int k) {
            double reach = 1;
            for (int halving = 0; halving < 10; halving++) {
                double[] theta = top.theta().clone();
                theta[rows.fixed() + k] = reach;
                double there = likelihood.fork().at(theta, top.modes()).value();
                if (there > top.value() - 1) {
                    break;
                }
                reach /= 1.5;
            }
            return reach;
        }

        private record Place(double logWeight, Part part) {}

        List<Part> parts() {
            List<Place> places = new ArrayList<>();
            double[] center = Arrays.copyOfRange(top.theta(), rows.fixed(), top.theta().length);
            if (center.length == 1) {
                line(center, 0, places);
            } else {
                // Along the first deviation, and from every place of it along the second.
                for (double value : values(center, 0)) {
                    double[] from = center.clone();
                    from[0] = value;
                    line(from, 1, places);
                }
            }
            double highest = places.stream().mapToDouble(Place::logWeight).max().orElse(0);
            List<Part> parts = new ArrayList<>();
            double sum = 0;
            for (Place place : places) {
                if (place.logWeight > highest - DEEPEST) {
                    sum += Math.exp(place.logWeight - highest);
                }
            }
            for (Place place : places) {
                if (place.logWeight > highest - DEEPEST) {
                    parts.add(place.part.weighing(Math.exp(place.logWeight - highest) / sum));
                }
            }
            return parts;
        }

        private List<Double> values(double[] center, int k) {
            List<Place> found = new ArrayList<>();
            line(center, k, found);
            return found.stream().map(place -> place.part.likelihood.sigma[k]).toList();
        }

        /** Go along one deviation both ways until the weight has fallen, or it is 0. */
        private void line(double[] center, int k, List<Place> places) {
            double highest = Double.NEGATIVE_INFINITY;
            double[] beta = Arrays.copyOf(top.theta(), rows.fixed());
            double[] modes = top.modes();
            int falling = 0;
            for (int step = 0; step < 60 && falling < 2; step++) {
                double[] sigma = center.clone();
                sigma[k] += step * strides[k];
                Optional<Place> place = place(sigma, beta, modes);
                if (place.isEmpty()) {
                    break;
                }
                places.add(place.get());
                highest = Math.max(highest, place.get().logWeight);
                falling = place.get().logWeight < highest - DEEPEST ? falling + 1 : 0;
                beta = place.get().part.theta;
                modes = place.get().part.likelihood.u;
            }
            beta = Arrays.copyOf(top.theta(), rows.fixed());
            modes = top.modes();
            falling = 0;
            for (int step = 1; step < 60 && falling < 2; step++) {
                double[] sigma = center.clone();
                sigma[k] -= step * strides[k];
                if (sigma[k] < 0) {
                    break;
                }
                Optional<Place> place = place(sigma, beta, modes);
                if (place.isEmpty()) {
                    break;
                }
                places.add(place.get());
                highest = Math.max(highest, place.get().logWeight);
                falling = place.get().logWeight < highest - DEEPEST ? falling + 1 : 0;
                beta = place.get().part.theta;
                modes = place.get().part.likelihood.u;
            }
        }

        private Optional<Place> place(double[] sigma, double[] beta, double[] modes) {
            int fixed = rows.fixed();
            double[] theta = Arrays.copyOf(beta, fixed + sigma.length);
            System.arraycopy(sigma, 0, theta, fixed, sigma.length);
            Laplace own = likelihood.fork();
            Point here = own.at(theta, modes);
            double[][] covariance = new double[0][0];
            for (int round = 0; round < 50; round++) {
                if (Double.isNaN(here.value())) {
                    return Optional.empty();
                }
                if (fixed == 0) {
                    break;
                }
                Optional<double[][]> inverse =
                        Ascent.invert(new DMatrixRMaj(own.fixedInformation(own.sensitivities())));
                if (inverse.isEmpty()) {
                    return Optional.empty();
                }
                covariance = inverse.get();
                double gain = 0;
                double[] next = here.theta().clone();
                for (int i = 0; i < fixed; i++) {
                    double step = 0;
                    for (int j = 0; j < fixed; j++) {
                        step += covariance[i][j] * here.gradient()[j];
                    }
                    gain += step * here.gradient()[i];
                    next[i] += step;
                }
                if (gain < 1e-5) {
                    break;
                }
                here = own.at(next, here.modes());
            }
            int[] free = new int[fixed];
            Arrays.setAll(free, i -> i);
            double logWeight = here.value() + logDeterminant(covariance) / 2;
            for (double each : sigma) {
                logWeight += Math.log(each) - each;
            }
            return Optional.of(new Place(logWeight, new Part(1, own, here.theta(), free, covariance)));
        }

        private static double logDeterminant(double[][] covariance) {
            double sum = 0;
            double[][] root = Part.root(covariance);
            for (int i = 0; i < root.length; i++) {
                sum += 2 * Math.log(root[i][i]);
            }
            return sum;
        }
    }
}
