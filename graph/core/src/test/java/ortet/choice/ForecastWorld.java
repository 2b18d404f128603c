package ortet.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A nursery made up at random by known laws, of which the past can be had as of any day.
 *
 * <p>Eight cultivars of two taxa are layered (three mothers each, some layers a year) and struck (trays). A unit takes with the
 * chance of its cultivar and method, to whose log odds a season and a tray or mother's season add; rooting and growing take
 * lognormal times, of which a cluster shares a part.
 */
final class ForecastWorld {
    private static final int FIRST_YEAR = 2008;
    private static final int LAST_YEAR = 2020;
    private static final int YEARS_OF_GRADING = 60;
    private static final int CULTIVARS = 8;
    private static final int LAYER = 0;
    private static final int CUTTING = 1;
    private static final int NEVER = Integer.MAX_VALUE;

    /** By which laws. */
    enum Laws {
        /** Every unit by itself, the same in all seasons. */
        INDEPENDENT(0),
        /** Units of a season and of a cluster share their luck and their times. */
        SHARED(1),
        /** As shared, and trees are graded in September and October alone. */
        GRADED_IN_AUTUMN(2),
        /** As shared, and each autumn all trees of a cultivar that are ready are graded on one day of September or October. */
        GRADED_ON_ONE_DAY(7),
        /** As shared, and of each year's one tray nearly all take or nearly none, and all of it is judged on one day. */
        TRAYS_AS_ONE(8),
        /** As shared, and times have tails as long as those of Student's t with three degrees. */
        LONG_TAILS(3),
        /** As shared, and taking rises by a tenth of its log odds a year. */
        TAKING_BETTER(4),
        /** As shared, and what has taken since 2017 grows on in three quarters of the time. */
        GROWING_FASTER(5),
        /** As shared, and the last season takes half as well as any before. */
        BAD_LAST_SEASON(6);

        /** Tells apart the draws of worlds. */
        private final int number;

        Laws(int number) {
            this.number = number;
        }
    }

    /** One unit: days on which things happen to it. */
    private record Unit(int kind, int cluster, int since, int taken, int failed, int graded, int lost, int size) {}

    private final SplittableRandom random;
    private final Laws laws;
    private final List<ForecastKind> kinds = new ArrayList<>();
    private final List<Unit> units = new ArrayList<>();
    private final int[] gradingDays = new int[CULTIVARS * YEARS_OF_GRADING];

    ForecastWorld(Laws laws, long seed) {
        this.random = new SplittableRandom(seed * 7919 + laws.number);
        this.laws = laws;
        for (int at = 0; laws == Laws.GRADED_ON_ONE_DAY && at < CULTIVARS * YEARS_OF_GRADING; at++) {
            gradingDays[at] = day(FIRST_YEAR + at % YEARS_OF_GRADING, 9, 1) + random.nextInt(61);
        }
        double[] odds = new double[CULTIVARS * 2];
        double[] pace = new double[CULTIVARS * 2];
        for (int at = 0; at < odds.length; at++) {
            kinds.add(new ForecastKind(at / 2, at / 2 / (CULTIVARS / 2), at % 2));
            odds[at] = (at % 2 == LAYER ? 1.2 : -0.2) + 0.6 * random.nextGaussian();
            pace[at] = 0.15 * random.nextGaussian();
        }
        boolean shared = laws != Laws.INDEPENDENT;
        int cluster = 0;
        for (int year = FIRST_YEAR; year <= LAST_YEAR; year++) {
            double[] season = {shared ? 0.3 * random.nextGaussian() : 0, shared ? 0.3 * random.nextGaussian() : 0};
            for (int kind = 0; kind < odds.length; kind++) {
                boolean layers = kind % 2 == LAYER;
                for (int of = 0; of < (layers ? 3 : laws == Laws.TRAYS_AS_ONE ? 1 : 2); of++) {
                    cluster++;
                    double luck = odds[kind] + season[kind % 2] + (shared ? 0.6 * random.nextGaussian() : 0);
                    boolean asOne = laws == Laws.TRAYS_AS_ONE && !layers;
                    if (asOne) {
                        luck += 2.5 * random.nextGaussian();
                    }
                    if (laws == Laws.TAKING_BETTER) {
                        luck += 0.1 * (year - 2014);
                    }
                    double chance = 1 / (1 + Math.exp(-luck));
                    if (laws == Laws.BAD_LAST_SEASON && year == LAST_YEAR) {
                        chance /= 2;
                    }
                    int set = day(year, layers ? 5 : 6, 1) + random.nextInt(40);
                    double slow = shared ? (asOne ? 0.25 : 0.15) * random.nextGaussian() : 0;
                    double grows = pace[kind] + (shared ? 0.2 * random.nextGaussian() : 0);
                    int many = layers ? 3 + random.nextInt(6) : 25;
                    for (int one = 0; one < many; one++) {
                        units.add(unit(kind, cluster, set, chance, slow, asOne ? 0 : 0.2, grows));
                    }
                }
            }
        }
    }

    private Unit unit(int kind, int cluster, int set, double chance, double slow, double apart, double grows) {
        int rooted = set + (int) Math.round((kind % 2 == CUTTING ? 70 : 120) * Math.exp(slow + apart * tail()));
        if (random.nextDouble() >= chance) {
            return new Unit(kind, cluster, set, NEVER, rooted, NEVER, NEVER, 0);
        }
        double months = 26 * Math.exp(grows + 0.25 * tail());
        if (laws == Laws.GROWING_FASTER && rooted >= day(2017, 1, 1)) {
            months *= 0.75;
        }
        int ready = rooted + (int) Math.round(months * 30.4);
        if (laws == Laws.GRADED_IN_AUTUMN) {
            LocalDate date = LocalDate.ofEpochDay(ready);
            LocalDate autumn = LocalDate.of(date.getYear() + (date.getMonthValue() > 8 ? 1 : 0), 9, 1);
            ready = Math.toIntExact(autumn.toEpochDay()) + random.nextInt(61);
        }
        if (laws == Laws.GRADED_ON_ONE_DAY) {
            ready = gradingDay(kind / 2, ready);
        }
        boolean lost = random.nextDouble() < 0.15;
        int gone = rooted + (int) (random.nextDouble() * 600);
        return lost && gone < ready
                ? new Unit(kind, cluster, set, rooted, NEVER, NEVER, gone, 0)
                : new Unit(kind, cluster, set, rooted, NEVER, ready, NEVER, random.nextInt(3));
    }

    private int gradingDay(int cultivar, int ready) {
        for (int at = cultivar * YEARS_OF_GRADING; at < (cultivar + 1) * YEARS_OF_GRADING; at++) {
            if (gradingDays[at] >= ready) {
                return gradingDays[at];
            }
        }
        return NEVER;
    }

    private double tail() {
        double normal = random.nextGaussian();
        if (laws != Laws.LONG_TAILS) {
            return normal;
        }
        double squares = 0;
        for (int of = 0; of < 3; of++) {
            double one = random.nextGaussian();
            squares += one * one;
        }
        return Math.max(-3, Math.min(6, normal / Math.sqrt(squares / 3)));
    }

    private static int day(int year, int month, int day) {
        return Math.toIntExact(LocalDate.of(year, month, day).toEpochDay());
    }

    /** Return the past of all that was set by a day. */
    ForecastPast at(LocalDate date) {
        int asOf = Math.toIntExact(date.toEpochDay());
        List<ForecastEpisode> episodes = new ArrayList<>();
        for (Unit unit : units) {
            if (unit.since() > asOf) {
                continue;
            }
            if (unit.failed() <= asOf) {
                add(episodes, unit, ForecastStage.TAKING, unit.since(), unit.failed(), ForecastEnd.BAD);
            } else if (unit.taken() > asOf) {
                add(episodes, unit, ForecastStage.TAKING, unit.since(), asOf, ForecastEnd.STILL);
            } else {
                add(episodes, unit, ForecastStage.TAKING, unit.since(), unit.taken(), ForecastEnd.GOOD);
                int end = Math.min(unit.graded(), unit.lost());
                add(
                        episodes,
                        unit,
                        ForecastStage.GRADING,
                        unit.taken(),
                        Math.min(end, asOf),
                        end > asOf
                                ? ForecastEnd.STILL
                                : unit.graded() < unit.lost() ? ForecastEnd.GOOD : ForecastEnd.BAD);
            }
        }
        return new ForecastPast(
                asOf,
                List.of("A", "B", "C", "D", "E", "F", "G", "H", ""),
                kinds,
                List.of("small", "medium", "large"),
                episodes,
                List.of(),
                ForecastLeaving.NONE,
                0);
    }

    private static void add(
            List<ForecastEpisode> episodes, Unit unit, ForecastStage stage, int from, int to, ForecastEnd how) {
        episodes.add(
                new ForecastEpisode(stage, unit.kind(), unit.cluster(), unit.since(), from, to, how, unit.size(), 1));
    }
}
