package ortet.choice;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The usual time of setting in a year: between the days by which one in ten and nine in ten units had been set.
 *
 * @param from the first day
 * @param to the last day; in the next year where it is before the first
 * @param lean on whose settings it leans
 * @param days on how many days something was set
 */
public record PlanWeeks(MonthDay from, MonthDay to, PlanStage.Lean lean, int days) {
    private static final int YEAR = 366;
    private static final int LEAP = 2024;
    private static final double TENTH = 0.1;

    public PlanWeeks {
        Objects.requireNonNull(from);
        Objects.requireNonNull(to);
        Objects.requireNonNull(lean);
    }

    /** How many units were set on a day. */
    record Setting(LocalDate day, int count) {}

    /**
     * Return the usual time of some settings. The year is cut open where the longest stretch of it had none, so that a
     * winter's work is one stretch.
     */
    static Optional<PlanWeeks> of(List<Setting> settings, PlanStage.Lean lean) {
        long[] units = new long[YEAR];
        for (Setting setting : settings) {
            units[MonthDay.from(setting.day()).atYear(LEAP).getDayOfYear() - 1] += setting.count();
        }
        long all = Arrays.stream(units).sum();
        if (all == 0) {
            return Optional.empty();
        }
        int begin = afterLongestGap(units);
        int from = -1;
        int to = -1;
        long sum = 0;
        for (int at = 0; at < YEAR; at++) {
            sum += units[(begin + at) % YEAR];
            if (from < 0 && sum >= TENTH * all) {
                from = at;
            }
            if (to < 0 && sum >= (1 - TENTH) * all) {
                to = at;
            }
        }
        int days = (int) settings.stream().map(Setting::day).distinct().count();
        return Optional.of(new PlanWeeks(day(begin + from), day(begin + to), lean, days));
    }

    private static MonthDay day(int at) {
        return MonthDay.from(LocalDate.ofYearDay(LEAP, at % YEAR + 1));
    }

    private static int afterLongestGap(long[] units) {
        int best = 0;
        int longest = -1;
        int last = -1;
        int first = -1;
        for (int at = 0; at < YEAR; at++) {
            if (units[at] > 0) {
                first = first < 0 ? at : first;
                if (last >= 0 && at - last > longest) {
                    longest = at - last;
                    best = at;
                }
                last = at;
            }
        }
        return first + YEAR - last > longest ? first : best;
    }

    /**
     * A time of setting in one year.
     *
     * @param from the first day
     * @param to the last day, not before the first
     */
    public record Window(LocalDate from, LocalDate to) {}

    /** Return the times of setting that end on or after a day and begin on or before another, cut to them, in order. */
    List<Window> between(LocalDate first, LocalDate last) {
        List<Window> windows = new ArrayList<>();
        for (int year = first.getYear() - 1; year <= last.getYear(); year++) {
            LocalDate begin = from.atYear(year);
            LocalDate end = to.atYear(to.isBefore(from) ? year + 1 : year);
            if (!end.isBefore(first) && !begin.isAfter(last)) {
                windows.add(new Window(begin.isBefore(first) ? first : begin, end.isAfter(last) ? last : end));
            }
        }
        return windows;
    }
}
