package ortet.yield;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import ortet.value.Require;

/**
 * When a young plant has established: seen alive so many growing-season days after it was severed or first potted.
 *
 * <p>The defaults, 90 days and a season from 1 April to 31 October, are common practice in a mild northern climate, not
 * published figures.
 *
 * @param days growing-season days that it must have lived through, at least 1
 * @param from the first day of the growing season
 * @param to its last day; before the first in the calendar where the season goes on over the turn of the year
 */
public record Establishment(int days, MonthDay from, MonthDay to) {
    /** Common practice: 90 days between 1 April and 31 October. */
    public static final Establishment DEFAULTS = new Establishment(90, MonthDay.of(4, 1), MonthDay.of(10, 31));

    public Establishment {
        Require.atLeast(1, days, "growing-season days");
        Objects.requireNonNull(from);
        Objects.requireNonNull(to);
    }

    /**
     * Return the first day on which so many growing-season days have passed.
     *
     * @param start the day of severing or potting, in days since 1970; it does not count itself
     * @return days since 1970
     */
    int due(int start) {
        LocalDate day = LocalDate.ofEpochDay(start).plusDays(1);
        long left = days;
        for (int year = day.getYear(); ; year++) {
            for (LocalDate[] stretch : stretches(year)) {
                LocalDate first = day.isBefore(stretch[0]) ? stretch[0] : day;
                long here = stretch[1].toEpochDay() - first.toEpochDay() + 1;
                if (here >= left) {
                    return Math.toIntExact(first.toEpochDay() + left - 1);
                }
                left -= Math.max(0, here);
            }
        }
    }

    /** Return the stretches of the season in a calendar year, the earlier first; it may go on over the turn of the year. */
    private List<LocalDate[]> stretches(int year) {
        LocalDate first = from.atYear(year);
        LocalDate last = to.atYear(year);
        return from.isAfter(to)
                ? List.of(
                        new LocalDate[] {LocalDate.of(year, 1, 1), last},
                        new LocalDate[] {first, LocalDate.of(year, 12, 31)})
                : List.<LocalDate[]>of(new LocalDate[] {first, last});
    }

    /** Return this in words: {@code 90 growing-season days (1 April to 31 October)}. */
    @Override
    public String toString() {
        return days + " growing-season days (" + words(from) + " to " + words(to) + ")";
    }

    private static String words(MonthDay day) {
        String month = day.getMonth().toString();
        return day.getDayOfMonth() + " " + month.charAt(0) + month.substring(1).toLowerCase(Locale.ROOT);
    }
}
