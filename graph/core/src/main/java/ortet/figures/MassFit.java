package ortet.figures;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;

/**
 * Masses on stretches in a row that make what was seen most likely. Each one seen covers some stretches one after the other;
 * maximises Σ w log z − n Σ s over masses s of at least 0, whose maximum adds up to 1 by itself. The function is concave,
 * so what satisfies the conditions of Kuhn and Tucker is the maximum.
 *
 * @param masses one for each stretch
 * @param logLikelihood Σ w log z
 * @param kuhnTucker the largest breach of the conditions, in parts of n
 * @param converged whether that is below the tolerance
 */
record MassFit(double[] masses, double logLikelihood, double kuhnTucker, boolean converged) {
    private static final double TOLERANCE = 1e-9;
    private static final double SINGULAR = 1e-11;
    private static final int SELF_CONSISTENT = 30;
    private static final int ROUNDS = 500;

    /**
     * Find the masses.
     *
     * @param first stretch that each one seen covers
     * @param last stretch that each one seen covers
     * @param weight of each one seen
     * @param stretches how many
     */
    static MassFit of(int[] first, int[] last, double[] weight, int stretches) {
        return new Search(first, last, weight, stretches).run();
    }

    private static final class Search {
        private final int[] first;
        private final int[] last;
        private final double[] weight;
        private final double n;
        private final double[] s;

        Search(int[] first, int[] last, double[] weight, int stretches) {
            this.first = first;
            this.last = last;
            this.weight = weight;
            this.s = new double[stretches];
            Arrays.fill(s, 1.0 / stretches);
            double sum = 0;
            for (double w : weight) {
                sum += w;
            }
            this.n = sum;
        }

        MassFit run() {
            for (int step = 0; step < SELF_CONSISTENT; step++) {
                double[] gradient = gradient(s);
                for (int j = 0; j < s.length; j++) {
                    s[j] *= (gradient[j] + n) / n;
                }
            }
            dropMany();
            double breach = Double.POSITIVE_INFINITY;
            for (int round = 0; round < ROUNDS; round++) {
                climb();
                double[] gradient = gradient(s);
                int best = 0;
                breach = 0;
                for (int j = 0; j < s.length; j++) {
                    breach = Math.max(breach, (s[j] > 0 ? Math.abs(gradient[j]) : gradient[j]) / n);
                    best = gradient[j] > gradient[best] ? j : best;
                }
                if (breach < TOLERANCE) {
                    break;
                }
                if (s[best] == 0 && gradient[best] > 0) {
                    admit(best);
                }
            }
            double sum = 0;
            for (double mass : s) {
                sum += mass;
            }
            for (int j = 0; j < s.length; j++) {
                s[j] /= sum;
            }
            return new MassFit(s, likelihood(s) + n, breach, breach < TOLERANCE);
        }

        /** Drop at once what is nearly 0 and falling; what should have stayed is taken back later. */
        private void dropMany() {
            double[] gradient = gradient(s);
            double[] kept = s.clone();
            for (int j = 0; j < kept.length; j++) {
                if (kept[j] < 0.1 / kept.length && gradient[j] < 0) {
                    kept[j] = 0;
                }
            }
            if (likelihood(kept) > Double.NEGATIVE_INFINITY) {
                System.arraycopy(kept, 0, s, 0, s.length);
            }
        }

        private double[] covered(double[] masses) {
            double[] prefix = new double[masses.length + 1];
            for (int j = 0; j < masses.length; j++) {
                prefix[j + 1] = prefix[j] + masses[j];
            }
            double[] z = new double[first.length];
            for (int i = 0; i < z.length; i++) {
                z[i] = prefix[last[i] + 1] - prefix[first[i]];
            }
            return z;
        }

        private double likelihood(double[] masses) {
            double[] z = covered(masses);
            double sum = 0;
            for (int i = 0; i < z.length; i++) {
                sum += weight[i] * Math.log(Math.max(z[i], 0));
            }
            for (double mass : masses) {
                sum -= n * mass;
            }
            return sum;
        }

        private double[] gradient(double[] masses) {
            double[] z = covered(masses);
            double[] gradient = new double[masses.length];
            double[] change = new double[masses.length + 1];
            for (int i = 0; i < z.length; i++) {
                change[first[i]] += weight[i] / z[i];
                change[last[i] + 1] -= weight[i] / z[i];
            }
            double sum = 0;
            for (int j = 0; j < gradient.length; j++) {
                sum += change[j];
                gradient[j] = sum - n;
            }
            return gradient;
        }

        /** Return minus the second derivatives in the given masses, divided by n. */
        private DMatrixRMaj curvature(int[] free) {
            double[] z = covered(s);
            int[] place = new int[s.length + 1];
            for (int k = 0, j = 0; j <= s.length; j++) {
                place[j] = k;
                k += k < free.length && free[k] == j ? 1 : 0;
            }
            // what one seen adds is a square block; its corners are marked, and summed up over rows and columns
            int size = free.length;
            double[][] sum = new double[size + 1][size + 1];
            for (int i = 0; i < z.length; i++) {
                double part = weight[i] / (z[i] * z[i]) / n;
                int from = place[first[i]];
                int to = place[last[i] + 1];
                sum[from][from] += part;
                sum[from][to] -= part;
                sum[to][from] -= part;
                sum[to][to] += part;
            }
            DMatrixRMaj curvature = new DMatrixRMaj(size, size);
            for (int a = 0; a < size; a++) {
                double row = 0;
                for (int b = 0; b < size; b++) {
                    sum[a][b] += a > 0 ? sum[a - 1][b] : 0;
                    row += sum[a][b];
                    curvature.set(a, b, row);
                }
            }
            return curvature;
        }

        private int[] free() {
            return IntStream.range(0, s.length).filter(j -> s[j] > 0).toArray();
        }

        /** Climb by Newton's method on the masses above 0; those that come to 0 are dropped. */
        private void climb() {
            double here = likelihood(s);
            for (int step = 0; step < 100; step++) {
                int[] free = free();
                double[] gradient = gradient(s);
                double steepest = 0;
                for (int j : free) {
                    steepest = Math.max(steepest, Math.abs(gradient[j]) / n);
                }
                if (steepest < 1e-13) {
                    return;
                }
                double[] way = way(free, gradient);
                double slope = 0;
                double farthest = Double.POSITIVE_INFINITY;
                int drop = -1;
                for (int k = 0; k < free.length; k++) {
                    slope += gradient[free[k]] * way[k];
                    if (way[k] < 0 && -s[free[k]] / way[k] < farthest) {
                        farthest = -s[free[k]] / way[k];
                        drop = free[k];
                    }
                }
                boolean toTheWall = farthest <= 1;
                double reach = Math.min(1, farthest);
                double[] next = s.clone();
                double there = Double.NEGATIVE_INFINITY;
                for (int halving = 0; halving < 60; halving++) {
                    for (int k = 0; k < free.length; k++) {
                        next[free[k]] = Math.max(0, s[free[k]] + reach * way[k]);
                    }
                    if (toTheWall) {
                        next[drop] = 0;
                    }
                    there = likelihood(next);
                    if (there >= here + 1e-4 * reach * slope - 1e-14 * Math.abs(here)) {
                        break;
                    }
                    toTheWall = false;
                    reach /= 2;
                    there = Double.NEGATIVE_INFINITY;
                }
                if (!(there > Double.NEGATIVE_INFINITY)) {
                    return;
                }
                System.arraycopy(next, 0, s, 0, s.length);
                here = there;
            }
        }

        /** Return the step of Newton's method; where it is not determined, a small one is. */
        private double[] way(int[] free, double[] gradient) {
            double[] right = new double[free.length];
            for (int k = 0; k < free.length; k++) {
                right[k] = gradient[free[k]] / n;
            }
            DMatrixRMaj curvature = curvature(free);
            Optional<Positive> solver = Positive.of(curvature, SINGULAR);
            for (double ridge = SINGULAR; solver.isEmpty(); ridge *= 10) {
                DMatrixRMaj ridged = curvature.copy();
                for (int k = 0; k < free.length; k++) {
                    ridged.set(k, k, curvature.get(k, k) * (1 + ridge));
                }
                solver = Positive.of(ridged, SINGULAR / 2);
            }
            return solver.get().solve(right);
        }

        /** Give some mass to a stretch that has none: as much as is likelier than none. */
        private void admit(int stretch) {
            double here = likelihood(s);
            for (double part = 0.25; part > 1e-18; part /= 2) {
                double[] next = s.clone();
                for (int j = 0; j < next.length; j++) {
                    next[j] *= 1 - part;
                }
                next[stretch] += part;
                if (likelihood(next) > here) {
                    System.arraycopy(next, 0, s, 0, s.length);
                    return;
                }
            }
        }
    }
}
