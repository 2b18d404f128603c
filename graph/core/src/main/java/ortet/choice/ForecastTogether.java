package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * How much the trees of a cultivar are graded in one month of a year's grading, because somebody grades them in one go; and how
 * much more those of one lot are, which took by the same method in the same year, and those of one cluster.
 *
 * <p>Beyond what the season makes all trees do: pairs of one cluster, pairs of one lot, but not one cluster, and pairs of one
 * cultivar, but not one lot, are held against pairs of different cultivars. A round of grading is a year that begins where the clock
 * of grading runs most slowly.
 *
 * @param cultivar the share of pairs of a cultivar that go together, 0 to 1
 * @param lot the share of pairs of a lot that do, of those that do not go with the whole cultivar
 * @param cluster the share of pairs of a cluster that do, of those that do not go with the whole lot
 * @param rounds of grading
 * @param roundsOf in how many of them each cultivar was graded
 */
record ForecastTogether(
        double cultivar, double lot, double cluster, ForecastRounds rounds, Map<Integer, Integer> roundsOf) {
    private static final int MONTHS = 12;
    private static final int FEW = 2;
    private static final double LEAN = 6;

    /** How often two trees were graded in one month, and in how many groups that was looked at. */
    private record Alike(double share, int groups) {}

    /** Trees graded in one month, by what they belong to. */
    private static final class Counts {
        private final Map<List<Integer>, int[]> counts = new TreeMap<>(ForecastTogether::compare);

        void add(List<Integer> of, int month, int count) {
            counts.computeIfAbsent(of, any -> new int[MONTHS])[month] += count;
        }

        /** Look at pairs within groups that begin alike, pairs within longer beginnings left out; weighed by the group's size. */
        Alike pairs(int same, int apart) {
            Map<List<Integer>, List<int[]>> byGroup = new TreeMap<>(ForecastTogether::compare);
            Map<List<Integer>, int[]> parts = new TreeMap<>(ForecastTogether::compare);
            counts.forEach((of, months) -> {
                int[] sums = parts.computeIfAbsent(of.subList(0, apart), any -> new int[MONTHS]);
                for (int month = 0; month < MONTHS; month++) {
                    sums[month] += months[month];
                }
            });
            parts.forEach((of, months) -> byGroup.computeIfAbsent(of.subList(0, same), any -> new ArrayList<>())
                    .add(months));
            double alike = 0;
            double pairs = 0;
            int groups = 0;
            for (List<int[]> group : byGroup.values()) {
                int[] all = new int[MONTHS];
                double n = 0;
                double own = 0;
                double ownAlike = 0;
                for (int[] part : group) {
                    double of = 0;
                    for (int month = 0; month < MONTHS; month++) {
                        all[month] += part[month];
                        of += part[month];
                        ownAlike += (double) part[month] * part[month];
                    }
                    n += of;
                    own += of * of;
                }
                double found = -ownAlike;
                for (int month = 0; month < MONTHS; month++) {
                    found += (double) all[month] * all[month];
                }
                if (n * n > own) {
                    alike += found / n;
                    pairs += (n * n - own) / n;
                    groups++;
                }
            }
            return new Alike(pairs > 0 ? alike / pairs : 0, groups);
        }

        /** Look at pairs within one cluster and round. */
        Alike pairsOfClusters() {
            double alike = 0;
            double pairs = 0;
            int groups = 0;
            for (int[] months : counts.values()) {
                double n = 0;
                double same = 0;
                for (int of : months) {
                    n += of;
                    same += (double) of * (of - 1);
                }
                if (n > 1) {
                    alike += same / n;
                    pairs += n - 1;
                    groups++;
                }
            }
            return new Alike(pairs > 0 ? alike / pairs : 0, groups);
        }

        /** Return in how many rounds each cultivar was graded. */
        Map<Integer, Integer> roundsOfCultivars() {
            Map<Integer, Set<Integer>> rounds = new TreeMap<>();
            counts.keySet()
                    .forEach(of -> rounds.computeIfAbsent(of.get(1), any -> new TreeSet<>())
                            .add(of.get(0)));
            Map<Integer, Integer> many = new TreeMap<>();
            rounds.forEach((cultivar, of) -> many.put(cultivar, of.size()));
            return many;
        }
    }

    private static int compare(List<Integer> one, List<Integer> other) {
        for (int at = 0; at < Math.min(one.size(), other.size()); at++) {
            int first = Integer.compare(one.get(at), other.get(at));
            if (first != 0) {
                return first;
            }
        }
        return Integer.compare(one.size(), other.size());
    }

    static ForecastTogether of(ForecastPast past, ForecastRounds rounds, boolean isSold) {
        Counts counts = new Counts();
        for (ForecastEpisode one : past.episodes()) {
            if (one.stage() == ForecastStage.GRADING
                    && one.how() == ForecastEnd.GOOD
                    && one.size() == past.ungraded() == isSold) {
                LocalDate day = LocalDate.ofEpochDay(one.end());
                int month = day.getMonthValue() - 1;
                counts.add(
                        List.of(
                                rounds.round(day.getYear(), month),
                                past.kinds().get(one.kind()).cultivar(),
                                one.kind() << Short.SIZE | one.season(),
                                one.cluster()),
                        month,
                        one.count());
            }
        }
        double apart = 1 - counts.pairs(1, 2).share();
        double cultivar = beyond(counts.pairs(2, 3), apart);
        double lot = beyond(counts.pairs(3, 4), apart * (1 - cultivar));
        double cluster = beyond(counts.pairsOfClusters(), apart * (1 - cultivar) * (1 - lot));
        return new ForecastTogether(cultivar, lot, cluster, rounds, counts.roundsOfCultivars());
    }

    /** Return what share of pairs that would be graded in different months otherwise is graded in one. */
    private static double beyond(Alike pairs, double apart) {
        return pairs.groups() > FEW && apart > 0 ? Math.min(1, Math.max(0, 1 - (1 - pairs.share()) / apart)) : 0;
    }

    /**
     * Return how much the month in which a cultivar goes in one go is told by its own trees, rather than by those of all cultivars:
     * n rounds in which it was graded lean on {@value #LEAN} of all.
     */
    double habit(int ofCultivar) {
        double n = roundsOf.getOrDefault(ofCultivar, 0);
        return n / (n + LEAN);
    }
}
