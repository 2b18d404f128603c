package ortet.figures;

import java.util.SplittableRandom;
import ortet.figures.Posterior.Part;

/**
 * Draws all intercepts and parameters of a model together: the parameters from their normal distribution, the intercepts
 * from theirs by solving with the sparse factor of H. Has memory of its own, so that no two threads may share one.
 */
final class JointDraw {
    private final Posterior posterior;
    private final double[] intercepts;
    private double[] theta = new double[0];
    private int fixed;

    JointDraw(Posterior posterior) {
        this.posterior = posterior;
        this.intercepts = new double[posterior.about().modes.length];
    }

    /** Draw anew. */
    void next(SplittableRandom random) {
        Part part = pick(random.nextDouble());
        double[] normal = new double[part.free.length];
        for (int i = 0; i < normal.length; i++) {
            normal[i] = random.nextGaussian();
        }
        for (int node = 0; node < intercepts.length; node++) {
            intercepts[node] = random.nextGaussian();
        }
        part.likelihood.factor.colour(intercepts);
        ModelRows rows = part.likelihood.rows;
        for (int k = 0; k < rows.groupings(); k++) {
            double sigma = part.likelihood.sigma[k];
            for (int node = rows.firsts()[k]; node < rows.firsts()[k + 1]; node++) {
                intercepts[node] = part.modes[node] + sigma * intercepts[node];
            }
        }
        theta = part.theta.clone();
        fixed = rows.fixed();
        for (int i = 0; i < normal.length; i++) {
            double change = 0;
            for (int j = 0; j <= i; j++) {
                change += part.root[i][j] * normal[j];
            }
            theta[part.free[i]] += change;
            double[] moves = part.moves[i];
            for (int node = 0; node < intercepts.length; node++) {
                intercepts[node] += change * moves[node];
            }
        }
    }

    /** Return an intercept, on the scale of log odds. */
    double intercept(int node) {
        return intercepts[node];
    }

    /** Return the fixed effects at some values of the columns. */
    double fixed(double[] columns) {
        double sum = 0;
        for (int j = 0; j < columns.length; j++) {
            sum += columns[j] * theta[j];
        }
        return sum;
    }

    /** Return the standard deviation of a grouping, at least 0. */
    double deviation(int grouping) {
        return Math.max(0, theta[fixed + grouping]);
    }

    private Part pick(double uniform) {
        double below = 0;
        for (Part part : posterior.parts()) {
            below += part.weight;
            if (uniform < below) {
                return part;
            }
        }
        return posterior.parts().get(posterior.parts().size() - 1);
    }
}
