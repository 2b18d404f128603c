package ortet.figures;

import java.util.Arrays;
import java.util.List;
import ortet.figures.BetaBinomial.Shapes;
import ortet.value.Defect;

/**
 * Trials that must succeed in one stage after another, each stage with a rate that is drawn once for all of them from a beta
 * distribution of its own: the successes of a stage are the trials of the next.
 *
 * <p>The rates of the stages are independent of each other, and of the trials only through being the same for all. So,
 * given that x trials enter a stage, its successes are beta-binomial whatever went before, and the distribution after all
 * stages is a sum of products of beta-binomial probabilities: exact, no simulation. With one stage it is the beta-binomial
 * distribution itself.
 *
 * <p>O(S n²) time for S stages and n trials, once for every number of successes asked about; O(n) memory. Immutable; an
 * {@link #outlook} keeps what it has worked out and must not be shared between threads.
 *
 * @see "Skellam 1948, Journal of the Royal Statistical Society B 10:257"
 */
public final class Stages {
    private final List<Shapes> stages;

    private Stages(List<Shapes> stages) {
        this.stages = List.copyOf(stages);
    }

    /** Return trials that pass some stages, the first one first; with none everything succeeds. */
    public static Stages of(List<Shapes> stages) {
        return new Stages(stages);
    }

    /** Return the mean share that succeeds in all stages. */
    public double mean() {
        double mean = 1;
        for (Shapes stage : stages) {
            mean *= stage.mean();
        }
        return mean;
    }

    /** Return how likely at least so many succeed in all stages. */
    public Planning.Outlook outlook() {
        return new Backwards();
    }

    /**
     * Return the probabilities of 0, 1, 2, … successes in the end, when some are under way.
     *
     * @param entering how many trials begin with each stage besides the successes of the stage before it; one number for each
     *     stage
     * @param done how many have succeeded in all stages already
     */
    public double[] distribution(long[] entering, long done) {
        if (entering.length != stages.size()) {
            throw new Defect("expected trials for " + stages.size() + " stages, found " + entering.length);
        }
        double[] now = {1};
        for (int stage = 0; stage < entering.length; stage++) {
            int more = Math.toIntExact(entering[stage]);
            double[] next = new double[now.length + more];
            for (int before = 0; before < now.length; before++) {
                if (now[before] > 0) {
                    double[] row = row(before + more, stages.get(stage));
                    for (int successes = 0; successes < row.length; successes++) {
                        next[successes] += now[before] * row[successes];
                    }
                }
            }
            now = next;
        }
        double[] shifted = new double[now.length + Math.toIntExact(done)];
        System.arraycopy(now, 0, shifted, Math.toIntExact(done), now.length);
        return shifted;
    }

    /** Return the beta-binomial probabilities of 0 to n successes, from the likeliest outwards so that none underflows. */
    private static double[] row(int trials, Shapes shapes) {
        double alpha = shapes.alpha();
        double beta = shapes.beta();
        double[] row = new double[trials + 1];
        int top = (int) Math.max(0, Math.min(trials, Math.round(trials * shapes.mean())));
        row[top] = shapes.predict(trials).probability(top);
        for (int x = top; x < trials; x++) {
            row[x + 1] = row[x] * ((trials - x) * (alpha + x)) / ((x + 1.0) * (beta + trials - x - 1));
        }
        for (int x = top; x > 0; x--) {
            row[x - 1] = row[x] * (x * (beta + trials - x)) / ((trials - x + 1.0) * (alpha + x - 1));
        }
        return row;
    }

    /** Works out, stage by stage from the last, how likely enough come through when so many enter it. */
    private final class Backwards implements Planning.Outlook {
        private long wanted = -1;
        private double[][] enough = new double[0][];
        private int known;

        @Override
        public double atLeast(long successes, long trials) {
            if (successes <= 0) {
                return 1;
            }
            if (successes > trials) {
                return 0;
            }
            if (stages.isEmpty()) {
                return 1;
            }
            if (successes != wanted) {
                wanted = successes;
                enough = new double[stages.size() - 1][0];
                known = 0;
            }
            prepare(Math.toIntExact(trials));
            return after(0, Math.toIntExact(trials));
        }

        private void prepare(int trials) {
            if (trials < known) {
                return;
            }
            for (int stage = enough.length - 1; stage >= 0; stage--) {
                enough[stage] = Arrays.copyOf(enough[stage], trials + 1);
                for (int entering = known; entering <= trials; entering++) {
                    enough[stage][entering] = after(stage + 1, entering);
                }
            }
            known = trials + 1;
        }

        /** Return how likely enough come through when so many enter a stage; what follows it is prepared. */
        private double after(int stage, int entering) {
            if (entering < wanted) {
                return 0;
            }
            if (stage == stages.size() - 1) {
                return stages.get(stage).predict(entering).atLeast(wanted);
            }
            double[] row = row(entering, stages.get(stage));
            double sum = 0;
            for (int successes = entering; successes >= wanted; successes--) {
                sum += row[successes] * enough[stage][successes];
            }
            return Math.min(1, sum);
        }
    }
}
