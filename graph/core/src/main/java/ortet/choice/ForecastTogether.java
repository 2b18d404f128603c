package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * How much the trees of a cultivar are graded in one month of a year's grading, because somebody grades them in one go; and how
 * much more those of one lot are, which took by the same method in the same year.
 *
 * <p>Beyond what the season makes all trees do: pairs of one lot, but not one cluster, and pairs of one cultivar, but not one lot,
 * are held against pairs of different cultivars. A year of grading begins where the clock of grading runs most slowly.
 *
 * @param cultivar the share of pairs of a cultivar that go together, 0 to 1
 * @param lot the share of pairs of a lot that do, of those that do not go with the whole cultivar
 * @param firstMonth the month of the year in which a year of grading begins, from 0
 */
record ForecastTogether(double cultivar, double lot, int firstMonth) {
    private static final int MONTHS = 12;
    private static final double FEW = 2;

    /** Trees graded in one month, by what they belong to. */
    private static final class Counts {
        private final Map<List<Integer>, int[]> counts = new TreeMap<>(ForecastTogether::compare);

        void add(List<Integer> of, int month, int count) {
            counts.computeIfAbsent(of, any -> new int[MONTHS])[month] += count;
        }

        /** Add up pairs within groups that begin alike, pairs within longer beginnings left out; weighed by the group's size. */
        double together(int same, int apart, double[] groups) {
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
                    groups[0]++;
                }
            }
            return pairs > 0 ? alike / pairs : 0;
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

    static ForecastTogether of(ForecastPast past, ForecastModel grading) {
        int first = 0;
        double slowest = Double.POSITIVE_INFINITY;
        for (int month = 0; month < MONTHS && !past.kinds().isEmpty(); month++) {
            ForecastClock clock = grading.clock(0);
            double speed = clock.speed(month)
                    + (clock.speed((month + MONTHS - 1) % MONTHS) + clock.speed((month + 1) % MONTHS)) / 2;
            if (speed < slowest) {
                slowest = speed;
                first = month;
            }
        }
        Counts counts = new Counts();
        for (ForecastEpisode one : past.episodes()) {
            if (one.stage() == ForecastStage.GRADING
                    && one.how() == ForecastEnd.GOOD
                    && one.size() != past.ungraded()) {
                LocalDate day = LocalDate.ofEpochDay(one.end());
                int month = day.getMonthValue() - 1;
                counts.add(
                        List.of(
                                yearOfGrading(day.getYear(), month, first),
                                past.kinds().get(one.kind()).cultivar(),
                                one.kind() << Short.SIZE | ForecastModel.year(one.start()),
                                one.cluster()),
                        month,
                        one.count());
            }
        }
        double[] groups = new double[3];
        double[] found = new double[3];
        for (int level = 0; level < found.length; level++) {
            double[] here = new double[1];
            found[level] = counts.together(level + 1, level + 2, here);
            groups[level] = here[0];
        }
        double apart = 1 - (groups[0] > 0 ? found[0] : 0);
        double cultivar = groups[1] > FEW && apart > 0 ? Math.max(0, 1 - (1 - found[1]) / apart) : 0;
        double lot = groups[2] > FEW && apart > 0 && cultivar < 1
                ? Math.max(0, 1 - (1 - found[2]) / apart / (1 - cultivar))
                : 0;
        return new ForecastTogether(cultivar, lot, first);
    }

    /** Return in which year of grading a month lies. */
    int year(int year, int month) {
        return yearOfGrading(year, month, firstMonth);
    }

    private static int yearOfGrading(int year, int month, int first) {
        return month >= first ? year : year - 1;
    }
}
