package ortet.figures;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import ortet.figures.Likelihood.Point;

/** One fit of a {@link MixedModel}, from data to result. */
final class Fitting {
    /** The standard deviation of the weak prior of a separated fixed effect, on the scale of log odds. */
    static final double WEAK_PRIOR_SD = 2.5;
    /** A standard deviation this small is as good as none. */
    private static final double NEXT_TO_NOTHING = 1e-3;

    private final ModelData data;
    private final int quadrature;
    private final List<String> remarks = new ArrayList<>();
    private boolean isReduced;
    private boolean isPenalized;

    Fitting(ModelData data, int quadrature) {
        this.data = data;
        this.quadrature = quadrature;
    }

    MixedFit fit() {
        double trials = Arrays.stream(data.trials).sum();
        double successes = Arrays.stream(data.successes).sum();
        if (trials == 0) {
            remarks.add("no trials: nothing can be estimated");
            return MixedFit.without(data, Convergence.NO_DATA, remarks);
        }
        boolean isOneSided = successes == 0 || successes == trials;
        if (isOneSided) {
            remarks.add((successes == 0 ? "nothing succeeded" : "everything succeeded")
                    + ": how much groups differ cannot be told, and the rate is held off "
                    + (successes == 0 ? "0" : "1") + " by a weak penalty");
        }
        List<ModelData.Groups> kept = keptGroupings(isOneSided);
        List<ModelData.Column> columns = keptColumns();
        Start start = new Start(columns, trials);
        ModelRows rows = rows(kept, start.columns, start.penalties);
        Laplace likelihood = quadrature > 1 && kept.size() == 1 ? new Quadrature(rows, quadrature) : new Laplace(rows);
        Optional<Climbed> climbed = climb(likelihood, start);
        if (climbed.isEmpty()) {
            remarks.add("the fit has not converged: no estimates are given");
            return MixedFit.without(data, Convergence.FAILED, remarks);
        }
        Climbed top = climbed.get();
        Convergence convergence = Convergence.CONVERGED;
        if (isReduced) {
            convergence = Convergence.REDUCED;
        }
        for (int k = 0; k < kept.size(); k++) {
            if (top.frozen[rows.fixed() + k]) {
                convergence = Convergence.BOUNDARY;
                remarks.add(
                        kept.get(k).name() + ": groups differ no more than chance would have it; the estimate of their"
                                + " standard deviation is 0, and has no standard error");
            } else if (kept.get(k).labels().size() < 5) {
                remarks.add(kept.get(k).name() + ": only "
                        + kept.get(k).labels().size() + " groups, so that how much they differ is known poorly");
            }
        }
        if (isPenalized) {
            convergence = Convergence.PENALIZED;
        }
        Posterior posterior = Posterior.of(likelihood, top.point, top.covariance, top.frozen);
        double logLikelihood = top.point.value()
                + rows.penalty(top.point.theta())
                + ModelRows.coefficients(data.successes, data.trials);
        return new MixedFit(
                data,
                convergence,
                remarks,
                columns,
                start.back,
                start.penalties,
                kept,
                top.point,
                top.covariance,
                top.frozen,
                rows,
                logLikelihood,
                posterior);
    }

    // ---------------------------------------------------------------- what the data can tell

    private List<ModelData.Groups> keptGroupings(boolean isOneSided) {
        List<ModelData.Groups> kept = new ArrayList<>();
        for (ModelData.Groups groups : data.groupings) {
            Optional<String> reason = isOneSided ? Optional.of("") : reasonAgainst(groups, kept);
            if (reason.isEmpty()) {
                kept.add(groups);
            } else if (!isOneSided) {
                remarks.add(groups.name() + ": " + reason.get());
            }
            isReduced |= reason.isPresent();
        }
        return kept;
    }

    private Optional<String> reasonAgainst(ModelData.Groups groups, List<ModelData.Groups> kept) {
        double[] trials = new double[groups.labels().size()];
        for (int row = 0; row < data.rows(); row++) {
            trials[groups.of()[row]] += data.trials[row];
        }
        long known = Arrays.stream(trials).filter(n -> n > 0).count();
        if (known < 2) {
            return Optional.of("one group only, so that how much groups differ cannot be told; left out");
        }
        if (Arrays.stream(trials).allMatch(n -> n <= 1)) {
            return Optional.of("one trial in each group, so that how much groups differ cannot be told; left out");
        }
        for (ModelData.Groups other : kept) {
            if (isSamePartition(groups, other)) {
                return Optional.of("the same groups as " + other.name() + "; left out");
            }
        }
        return Optional.empty();
    }

    private boolean isSamePartition(ModelData.Groups a, ModelData.Groups b) {
        int[] toB = new int[a.labels().size()];
        int[] toA = new int[b.labels().size()];
        Arrays.fill(toB, -1);
        Arrays.fill(toA, -1);
        for (int row = 0; row < data.rows(); row++) {
            if (data.trials[row] == 0) {
                continue;
            }
            int one = a.of()[row];
            int two = b.of()[row];
            if (toB[one] >= 0 && toB[one] != two || toA[two] >= 0 && toA[two] != one) {
                return false;
            }
            toB[one] = two;
            toA[two] = one;
        }
        return true;
    }

    /** Leave out what other columns make up, the later one of each such set. */
    private List<ModelData.Column> keptColumns() {
        List<ModelData.Column> kept = new ArrayList<>();
        List<double[]> directions = new ArrayList<>();
        for (ModelData.Column column : data.columns) {
            double[] rest = column.values().clone();
            for (int row = 0; row < rest.length; row++) {
                rest[row] = data.trials[row] > 0 ? rest[row] : 0;
            }
            double before = Math.sqrt(dot(rest, rest));
            for (int again = 0; again < 2; again++) {
                for (double[] direction : directions) {
                    double along = dot(rest, direction);
                    for (int row = 0; row < rest.length; row++) {
                        rest[row] -= along * direction[row];
                    }
                }
            }
            double after = Math.sqrt(dot(rest, rest));
            if (!(after > 1e-9 * before)) {
                remarks.add(column.name() + ": made up of other columns, or without trials; left out");
                isReduced = true;
                continue;
            }
            for (int row = 0; row < rest.length; row++) {
                rest[row] /= after;
            }
            directions.add(rest);
            kept.add(column);
        }
        return kept;
    }

    private ModelRows rows(List<ModelData.Groups> kept, double[][] columns, double[] penalties) {
        int[][] groups = kept.stream().map(ModelData.Groups::of).toArray(int[][]::new);
        int[] sizes =
                kept.stream().mapToInt(grouping -> grouping.labels().size()).toArray();
        ModelRows rows = ModelRows.of(data.successes, data.trials, columns, groups, sizes);
        return rows.with(rows.columns(), penalties);
    }

    // ---------------------------------------------------------------- where to begin

    /** The fixed effects alone: how they are scaled, whether they are separated, and where to begin. */
    private final class Start {
        /** What is fitted: the columns, centred and scaled where that can be undone. */
        final double[][] columns;
        /** From what is fitted to the fixed effects of the given columns. */
        final double[][] back;

        final double[] penalties;
        final double[] beta;

        Start(List<ModelData.Column> given, double trials) {
            int count = given.size();
            double[][] scaled = new double[count][];
            double[] scales = new double[count];
            for (int j = 0; j < count; j++) {
                double[] values = given.get(j).values();
                for (int row = 0; row < values.length; row++) {
                    scales[j] = Math.max(scales[j], data.trials[row] > 0 ? Math.abs(values[row]) : 0);
                }
                double scale = scales[j];
                scaled[j] = Arrays.stream(values).map(value -> value / scale).toArray();
            }
            ModelRows plain = ModelRows.of(data.successes, data.trials, scaled, new int[0][], new int[0]);
            Separation separation = Separation.of(plain);
            penalties = new double[count];
            List<String> held = new ArrayList<>();
            for (int j = 0; j < count; j++) {
                if (separation.isSeparated()[j]) {
                    penalties[j] = 1 / (WEAK_PRIOR_SD * WEAK_PRIOR_SD);
                    held.add(given.get(j).name());
                }
            }
            isPenalized = !held.isEmpty();
            if (isPenalized) {
                boolean isInterceptAlone = held.equals(List.of(ModelData.INTERCEPT));
                if (!isInterceptAlone) {
                    remarks.add(String.join(", ", held)
                            + ": success and failure are told apart without exception, so that no finite estimate exists;"
                            + " held by a weak penalty (normal, standard deviation 2.5)");
                }
            }
            int intercept = IntStream.range(0, count)
                    .filter(j -> given.get(j).name().equals(ModelData.INTERCEPT))
                    .findFirst()
                    .orElse(-1);
            double[] means = new double[count];
            double[] widths = new double[count];
            Arrays.fill(widths, 1);
            if (!isPenalized) {
                for (int j = 0; j < count; j++) {
                    double[] values = given.get(j).values();
                    double mean = 0;
                    for (int row = 0; row < values.length; row++) {
                        mean += data.trials[row] * values[row] / trials;
                    }
                    means[j] = intercept >= 0 && j != intercept ? mean : 0;
                    double square = 0;
                    for (int row = 0; row < values.length; row++) {
                        square += data.trials[row] * (values[row] - means[j]) * (values[row] - means[j]) / trials;
                    }
                    widths[j] = j == intercept ? 1 : Math.sqrt(square);
                }
            }
            columns = new double[count][];
            back = new double[count][count];
            for (int j = 0; j < count; j++) {
                double mean = means[j];
                double width = widths[j];
                columns[j] = Arrays.stream(given.get(j).values())
                        .map(value -> (value - mean) / width)
                        .toArray();
                back[j][j] = 1 / width;
                if (j != intercept && intercept >= 0) {
                    back[intercept][j] = -mean / width;
                }
            }
            beta = new double[count];
            for (int j = 0; j < count; j++) {
                // given effect = separation's / scale; fitted effect = given effect · width, intercept moved by the
                // means
                double effect = separation.beta()[j] / scales[j];
                beta[j] += effect * widths[j];
                if (intercept >= 0 && j != intercept) {
                    beta[intercept] += effect * means[j];
                }
            }
            if (isPenalized) {
                for (int j = 0; j < count; j++) {
                    beta[j] = Math.max(-3, Math.min(3, beta[j]));
                }
            }
        }
    }

    // ---------------------------------------------------------------- the climb

    private record Climbed(Point point, double[][] covariance, boolean[] frozen) {}

    private Optional<Climbed> climb(Laplace likelihood, Start start) {
        ModelRows rows = likelihood.rows;
        double[] sigma = Moments.deviations(rows, start.beta);
        Optional<Climbed> first = climbFrom(likelihood, start, sigma);
        boolean isBoundary = first.isPresent() && anyFrozen(first.get(), rows);
        if (first.isPresent() && !isBoundary) {
            return first;
        }
        // A second way up: the likelihood may have a top inside besides the one on the boundary.
        double[] other = sigma.clone();
        for (int k = 0; k < other.length; k++) {
            boolean wasFrozen = first.isEmpty() || first.get().frozen[rows.fixed() + k];
            other[k] = wasFrozen ? 0.7 : first.get().point.theta()[rows.fixed() + k];
        }
        Optional<Climbed> second = climbFrom(likelihood, start, other);
        if (first.isEmpty()
                || second.isPresent()
                        && second.get().point.value() > first.get().point.value() + 1e-9) {
            return second;
        }
        return first;
    }

    private static boolean anyFrozen(Climbed climbed, ModelRows rows) {
        for (int k = 0; k < rows.groupings(); k++) {
            if (climbed.frozen[rows.fixed() + k]) {
                return true;
            }
        }
        return false;
    }

    private static Optional<Climbed> climbFrom(Laplace likelihood, Start start, double[] sigma) {
        ModelRows rows = likelihood.rows;
        int fixed = rows.fixed();
        double[] theta = Arrays.copyOf(start.beta, fixed + sigma.length);
        System.arraycopy(sigma, 0, theta, fixed, sigma.length);
        boolean[] frozen = new boolean[theta.length];
        Point begin = likelihood.at(theta, new double[rows.intercepts()]);
        while (true) {
            if (Double.isNaN(begin.value())) {
                return Optional.empty();
            }
            Ascent ascent = new Ascent(likelihood, frozen);
            double[][] guess = guess(likelihood, ascent.free());
            Ascent.Summit summit = ascent.climb(begin, guess);
            Point top = summit.point();
            int least = -1;
            for (int k = 0; k < sigma.length; k++) {
                boolean isSmall = !frozen[fixed + k] && Math.abs(top.theta()[fixed + k]) < NEXT_TO_NOTHING;
                if (isSmall && (least < 0 || Math.abs(top.theta()[fixed + k]) < Math.abs(top.theta()[fixed + least]))) {
                    least = k;
                }
            }
            if (least >= 0) {
                frozen[fixed + least] = true;
                double[] flat = top.theta().clone();
                flat[fixed + least] = 0;
                double[] modes = top.modes().clone();
                Arrays.fill(modes, rows.firsts()[least], rows.firsts()[least + 1], 0);
                begin = likelihood.at(flat, modes);
                continue;
            }
            if (!summit.isTop() || summit.covariance().isEmpty()) {
                return Optional.empty();
            }
            double[] upright = top.theta().clone();
            double[] modes = top.modes().clone();
            double[] gradient = top.gradient().clone();
            for (int k = 0; k < sigma.length; k++) {
                if (upright[fixed + k] < 0) {
                    upright[fixed + k] = -upright[fixed + k];
                    gradient[fixed + k] = -gradient[fixed + k];
                    for (int node = rows.firsts()[k]; node < rows.firsts()[k + 1]; node++) {
                        modes[node] = -modes[node];
                    }
                }
            }
            double[][] covariance = summit.covariance().get();
            turn(covariance, ascent.free(), top.theta(), fixed);
            return Optional.of(new Climbed(new Point(upright, top.value(), gradient, modes), covariance, frozen));
        }
    }

    private static void turn(double[][] covariance, int[] free, double[] theta, int fixed) {
        for (int i = 0; i < free.length; i++) {
            for (int j = 0; j < free.length; j++) {
                boolean isTurned = free[i] >= fixed && theta[free[i]] < 0;
                boolean isOtherTurned = free[j] >= fixed && theta[free[j]] < 0;
                if (isTurned != isOtherTurned) {
                    covariance[i][j] = -covariance[i][j];
                }
            }
        }
    }

    /** Guess the covariance of the free parameters, at the place that the likelihood was asked about last. */
    private static double[][] guess(Laplace likelihood, int[] free) {
        ModelRows rows = likelihood.rows;
        int fixed = rows.fixed();
        double[][] guess = new double[free.length][free.length];
        double[][] information = likelihood.fixedInformation(likelihood.sensitivities());
        Optional<double[][]> covariance =
                fixed == 0 ? Optional.of(new double[0][0]) : Ascent.invert(new DMatrixRMaj(information));
        double[] sums = new double[rows.intercepts()];
        for (int row = 0; row < rows.size(); row++) {
            for (int node : rows.nodes()[row]) {
                sums[node] += likelihood.weights[row];
            }
        }
        for (int i = 0; i < free.length; i++) {
            if (free[i] < fixed) {
                for (int j = 0; j < free.length; j++) {
                    if (free[j] < fixed) {
                        int a = free[i];
                        int b = free[j];
                        guess[i][j] = covariance
                                .map(matrix -> matrix[a][b])
                                .orElse(a == b ? 1 / Math.max(1e-6, information[a][a]) : 0.0);
                    }
                }
            } else {
                int k = free[i] - fixed;
                double square = Math.pow(Math.max(0.1, likelihood.sigma[k]), 2);
                double known = 0;
                for (int node = rows.firsts()[k]; node < rows.firsts()[k + 1]; node++) {
                    double total = square + 1 / Math.max(1e-9, sums[node]);
                    known += 2 * square / (total * total);
                }
                guess[i][i] = 1 / Math.max(known, 0.5);
            }
        }
        return guess;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int row = 0; row < a.length; row++) {
            sum += a[row] * b[row];
        }
        return sum;
    }
}
