package ortet.choice.inputs;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * How wood comes back after cropping, as a share of what a mother carries when she has had years enough.
 *
 * <p>Of every counting of positions, its total by the mean total of all countings on the same mother; the mean of that over
 * the countings made so many years after the last cropping, by the same for those made {@value #FULL} years after or later.
 * Where fewer than {@value #ENOUGH} countings stand behind a year, half after one year and all after two, which is common
 * practice, not a published figure. A later year never counts for less than an earlier one.
 */
final class Regrowth {
    static final int FULL = 4;
    private static final int ENOUGH = 5;
    private static final double[] PRACTICE = {0, 0.5, 1, 1, 1};

    private final double[] shares = PRACTICE.clone();
    private final int[] behind = new int[FULL + 1];

    private Regrowth() {}

    static Regrowth of(Collection<MotherDiary> diaries) {
        double[] sums = new double[FULL + 1];
        Regrowth found = new Regrowth();
        for (MotherDiary diary : diaries) {
            double mean = diary.countings.stream()
                    .mapToInt(MotherDiary.Counting::total)
                    .average()
                    .orElse(0);
            if (diary.countings.size() < 2 || mean == 0) {
                continue;
            }
            for (MotherDiary.Counting one : diary.countings) {
                int years = years(diary, one.season());
                sums[years] += one.total() / mean;
                found.behind[years]++;
            }
        }
        if (found.behind[FULL] >= ENOUGH) {
            double full = sums[FULL] / found.behind[FULL];
            double least = 0;
            for (int years = 1; years <= FULL; years++) {
                if (found.behind[years] >= ENOUGH) {
                    found.shares[years] = Math.min(1, sums[years] / found.behind[years] / full);
                }
                found.shares[years] = Math.max(least, found.shares[years]);
                least = found.shares[years];
            }
        }
        return found;
    }

    /** Return how many years before a season she was cropped last, at most {@value #FULL}. */
    static int years(MotherDiary diary, int season) {
        return diary.croppedBefore(season)
                .map(last -> Math.min(FULL, season - last))
                .orElse(FULL);
    }

    /** Return the share after so many years. */
    double share(int years) {
        return shares[Math.max(0, Math.min(FULL, years))];
    }

    int behind(int years) {
        return behind[years];
    }

    /** Return in words what stands behind it. */
    String told() {
        StringBuilder told = new StringBuilder();
        for (int years = 1; years <= FULL; years++) {
            told.append(years == 1 ? "" : ", ")
                    .append(Math.round(100 * shares[years]))
                    .append(" % after ")
                    .append(years)
                    .append(years == 1 ? " year (" : " years (")
                    .append(
                            behind[years] >= ENOUGH && behind[FULL] >= ENOUGH
                                    ? behind[years] + " countings"
                                    : "common practice")
                    .append(')');
        }
        return told.toString();
    }

    /** Years between two layerings of one mother, and how many such intervals stand behind it. */
    record Rest(int years, int intervals, String of) {}

    private static final int ENOUGH_INTERVALS = 5;
    private static final int USUAL_REST = 2;

    /** Return the median interval of the first of some circles of mothers with enough of them; else common practice. */
    static Rest rest(List<Circle> circles) {
        for (Circle circle : circles) {
            List<Integer> intervals = new ArrayList<>();
            circle.diaries().forEach(diary -> {
                TreeSet<Integer> seasons = diary.layered();
                Optional<Integer> before = Optional.empty();
                for (int season : seasons) {
                    before.ifPresent(last -> intervals.add(season - last));
                    before = Optional.of(season);
                }
            });
            if (intervals.size() >= ENOUGH_INTERVALS) {
                intervals.sort(null);
                return new Rest(
                        Math.max(1, intervals.get((intervals.size() - 1) / 2)), intervals.size(), circle.name());
            }
        }
        return new Rest(USUAL_REST, 0, "common practice");
    }

    /** Mothers who may be told by each other: of one cultivar, of one species, and so on. */
    record Circle(String name, List<MotherDiary> diaries) {}
}
