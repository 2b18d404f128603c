package ortet.figures;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.stream.IntStream;
import ortet.figures.Posterior.Part;

/**
 * How likely each group of a grouping is among the best, by drawing all groups together, many times, from what is known of
 * them, and counting.
 *
 * <p>A draw takes the parameters from their normal distribution, and the intercepts from theirs by solving with the sparse
 * factor of H: no matrix of groups by groups is ever made. Each draw has a generator of its own, seeded by the seed and the
 * number of the draw, so that the same seed gives the same answer on any machine.
 *
 * @param grouping its name
 * @param best how many are the best
 * @param draws how many draws there were
 * @param seed of the draws
 * @param standings of all groups, the likeliest first
 */
public record Ranking(String grouping, int best, int draws, long seed, List<Standing> standings) {
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    /**
     * How likely a group is among the best.
     *
     * @param label of the group
     * @param count all its successes and trials
     * @param probability the share of draws in which it was among the best
     * @param standardError of that share, for the number of draws alone (with half a draw added to either side, so that it
     *     is never 0)
     */
    public record Standing(String label, Count count, double probability, double standardError) {}

    public Ranking {
        standings = List.copyOf(standings);
    }

    static Ranking of(
            String grouping,
            List<String> labels,
            Count[] counts,
            Posterior posterior,
            int[][] paths,
            int best,
            int draws,
            long seed) {
        int groups = labels.size();
        AtomicIntegerArray hits = new AtomicIntegerArray(groups);
        if (best >= groups) {
            for (int group = 0; group < groups; group++) {
                hits.set(group, draws);
            }
        } else {
            int chunks = groups > 200 ? Math.min(draws, 16) : 1;
            IntStream tasks = IntStream.range(0, chunks);
            (chunks > 1 ? tasks.parallel() : tasks).forEach(chunk -> {
                int[] own = new int[groups];
                Drawing drawing = new Drawing(posterior, paths, best);
                for (int draw = chunk; draw < draws; draw += chunks) {
                    drawing.draw(new SplittableRandom(mixed(seed, draw)), own);
                }
                for (int group = 0; group < groups; group++) {
                    hits.addAndGet(group, own[group]);
                }
            });
        }
        List<Standing> standings = new ArrayList<>();
        for (int group = 0; group < groups; group++) {
            double smoothed = (hits.get(group) + 0.5) / (draws + 1);
            standings.add(new Standing(
                    labels.get(group),
                    counts[group],
                    (double) hits.get(group) / draws,
                    Math.sqrt(smoothed * (1 - smoothed) / draws)));
        }
        // A stable sort: groups that are equally likely stay in their order.
        standings.sort(Comparator.comparingDouble(Standing::probability).reversed());
        return new Ranking(grouping, best, draws, seed, standings);
    }

    /** Return a seed for one draw. Seeds that differ by a multiple of the generator's stride would share their figures. */
    private static long mixed(long seed, int draw) {
        long mixed = seed + GOLDEN * (draw + 1);
        mixed = (mixed ^ mixed >>> 32) * 0xD6E8FEB86659FD93L;
        mixed = (mixed ^ mixed >>> 32) * 0xD6E8FEB86659FD93L;
        return mixed ^ mixed >>> 32;
    }

    /** Draws all groups, with memory of its own. */
    private static final class Drawing {
        private final Posterior posterior;
        private final int[][] paths;
        private final int best;
        private final double[] noise;
        private final double[] scores;
        private final double[] sorted;

        Drawing(Posterior posterior, int[][] paths, int best) {
            this.posterior = posterior;
            this.paths = paths;
            this.best = best;
            noise = new double[posterior.about().modes.length];
            scores = new double[paths.length];
            sorted = new double[paths.length];
        }

        void draw(SplittableRandom random, int[] hits) {
            Part part = pick(random.nextDouble());
            double[] normal = new double[part.free.length];
            for (int i = 0; i < normal.length; i++) {
                normal[i] = random.nextGaussian();
            }
            for (int node = 0; node < noise.length; node++) {
                noise[node] = random.nextGaussian();
            }
            part.likelihood.factor.colour(noise);
            ModelRows rows = part.likelihood.rows;
            for (int k = 0; k < rows.groupings(); k++) {
                double sigma = part.likelihood.sigma[k];
                for (int node = rows.firsts()[k]; node < rows.firsts()[k + 1]; node++) {
                    noise[node] = part.modes[node] + sigma * noise[node];
                }
            }
            for (int i = 0; i < normal.length; i++) {
                double change = 0;
                for (int j = 0; j <= i; j++) {
                    change += part.root[i][j] * normal[j];
                }
                double[] moves = part.moves[i];
                for (int node = 0; node < noise.length; node++) {
                    noise[node] += change * moves[node];
                }
            }
            for (int group = 0; group < scores.length; group++) {
                double score = 0;
                for (int node : paths[group]) {
                    score += noise[node];
                }
                scores[group] = score;
            }
            count(random, hits);
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

        /** Count the best; of those that tie for the last places, pick at random. */
        private void count(SplittableRandom random, int[] hits) {
            System.arraycopy(scores, 0, sorted, 0, scores.length);
            double least = Selection.largest(sorted, best, random);
            int above = 0;
            int equal = 0;
            for (double score : scores) {
                above += score > least ? 1 : 0;
                equal += score == least ? 1 : 0;
            }
            int places = best - above;
            for (int group = 0; group < scores.length; group++) {
                if (scores[group] > least) {
                    hits[group]++;
                } else if (scores[group] == least) {
                    if (random.nextInt(equal) < places) {
                        hits[group]++;
                        places--;
                    }
                    equal--;
                }
            }
        }
    }
}
