package ortet.choice;

import java.time.LocalDate;
import java.util.List;
import org.apache.commons.numbers.gamma.LogGamma;

/**
 * A clock that runs fast in the months of the year in which things happen, and slowly in the others; a year of it is twelve
 * months. Layers are severed in late summer and trees are graded when somebody walks the benches: told by this clock, waiting
 * times need not know the season.
 *
 * <p>A month runs as fast as (k + K) / (k₀ + K), where k counts what happened in it and k₀ what would have if all months were
 * alike, given how much was waiting in each. That is the mean of a speed with a gamma distribution of shape and rate K beforehand,
 * of which k is a Poisson count; K is the one of a few between {@value #UNEVEN} and {@value #EVEN} by which what happened is likeliest. So where months
 * differ by chance alone the clock is nearly even, and where trees are graded in autumn it all but stands in spring. Units of one
 * cluster that ended on one day count little more than one of them.
 *
 * @see "Robbins 1956, 3rd Berkeley Symposium 1:157, for what is beforehand told by all months together"
 */
final class ForecastClock {
    private static final double EVEN = 512;
    private static final double UNEVEN = 0.25;
    private static final double SHARED = 0.5;
    private static final int MONTHS = 12;
    private static final double DAYS = 365.25 / MONTHS;

    private final int first;
    private final double[] sums;
    private final double[] speeds;
    private final double ahead;
    private final ForecastRounds rounds;

    private ForecastClock(int first, double[] sums, double[] speeds) {
        this.first = first;
        this.sums = sums;
        this.speeds = speeds;
        // by how much it is ahead of the calendar, in the mean of a year
        double sum = 0;
        int year = Math.min(sums.length, 365);
        for (int day = 0; day < year; day++) {
            sum += sums[day] - day / DAYS;
        }
        this.ahead = sum / year;
        this.rounds = ForecastRounds.of(speeds);
    }

    /** Make a clock from episodes, good for the days from the first of them to some last day. */
    static ForecastClock of(List<ForecastEpisode> episodes, int last) {
        int first = episodes.stream().mapToInt(ForecastEpisode::start).min().orElse(last);
        int days = last - first + 2;
        double[] waiting = new double[days + 1];
        double[] happened = new double[MONTHS];
        int[] months = months(first, days);
        for (ForecastEpisode episode : episodes) {
            double weight = episode.count() / (1 + (episode.count() - 1) * SHARED);
            waiting[episode.start() - first] += weight;
            waiting[episode.end() - first] -= weight;
            if (episode.how() == ForecastEnd.GOOD) {
                happened[months[Math.max(0, episode.end() - first)]] += weight;
            }
        }
        double[] exposed = new double[MONTHS];
        double now = 0;
        double all = 0;
        for (int day = 0; day < days; day++) {
            now += waiting[day];
            exposed[months[day]] += now;
            all += now;
        }
        double rate = all > 0 ? sum(happened) / all : 0;
        double lean = lean(happened, exposed, rate);
        double[] speeds = new double[MONTHS];
        for (int month = 0; month < MONTHS; month++) {
            speeds[month] = (happened[month] + lean) / (exposed[month] * rate + lean);
        }
        double mean = sum(speeds) / MONTHS;
        double[] sums = new double[days + 1];
        for (int day = 0; day < days; day++) {
            sums[day + 1] = sums[day] + speeds[months[day]] / mean / DAYS;
        }
        for (int month = 0; month < MONTHS; month++) {
            speeds[month] /= mean;
        }
        return new ForecastClock(first, sums, speeds);
    }

    /** Return by how many events each month leans on an even one. */
    private static double lean(double[] happened, double[] exposed, double rate) {
        double best = EVEN;
        double most = Double.NEGATIVE_INFINITY;
        for (double lean = EVEN; rate > 0 && lean >= UNEVEN; lean /= 2) {
            double sum = 0;
            for (int month = 0; month < MONTHS; month++) {
                double even = exposed[month] * rate;
                double k = even > 0 ? happened[month] : 0;
                sum += LogGamma.value(lean + k)
                        - LogGamma.value(lean)
                        + lean * Math.log(lean / (lean + even))
                        + (k > 0 ? k * Math.log(even / (lean + even)) : 0);
            }
            if (sum > most) {
                most = sum;
                best = lean;
            }
        }
        return best;
    }

    private static int[] months(int first, int days) {
        int[] months = new int[days];
        LocalDate day = LocalDate.ofEpochDay(first);
        for (int at = 0; at < days; at++) {
            months[at] = day.getMonthValue() - 1;
            day = day.plusDays(1);
        }
        return months;
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }

    /** Return how fast it runs in a month of the year, from 0; 1 on average. */
    double speed(int month) {
        return speeds[month];
    }

    /** Return the years that begin where it runs most slowly. */
    ForecastRounds rounds() {
        return rounds;
    }

    /** Return what the clock shows at the end of a day, in months of its own. */
    double at(int day) {
        return sums[Math.max(0, Math.min(sums.length - 1, day - first + 1))];
    }

    /**
     * Return how old something is at the end of a day by what this clock shows then, its own beginning told by the calendar: who
     * begins in the middle of a busy season is not months older than who begins at its end. Below 0 where the clock is behind.
     */
    double age(double start, int day) {
        return at(day) - (start - first + 1) / DAYS - ahead;
    }

    /** Return how long it was from the end of one day to the end of another, at least 0. */
    double between(int from, int to) {
        return Math.max(0, at(to) - at(from));
    }
}
