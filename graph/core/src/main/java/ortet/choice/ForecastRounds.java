package ortet.choice;

import java.time.LocalDate;

/**
 * Years that begin where least happens, each of which holds one busy season whole: in autumn, or at the turn of the year.
 *
 * @param firstMonth the month in which such a year begins, from 0
 */
record ForecastRounds(int firstMonth) {
    private static final int MONTHS = 12;

    /** Make them begin in the month in and about which least happens; the first of several alike. */
    static ForecastRounds of(double[] happens) {
        int first = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int month = 0; month < MONTHS; month++) {
            double about = happens[(month + MONTHS - 1) % MONTHS] + happens[(month + 1) % MONTHS];
            double here = happens[month] + about / 2;
            if (here < least) {
                least = here;
                first = month;
            }
        }
        return new ForecastRounds(first);
    }

    /** Return the calendar year in which the one begins that holds a month, from 0, of a calendar year. */
    int round(int year, int month) {
        return month >= firstMonth ? year : year - 1;
    }

    /** Return the calendar year in which the one begins that holds a day. */
    int round(int day) {
        LocalDate date = LocalDate.ofEpochDay(day);
        return round(date.getYear(), date.getMonthValue() - 1);
    }

    /** Return the first day of one, in days since 1970. */
    int begins(int round) {
        return Math.toIntExact(LocalDate.of(round, firstMonth + 1, 1).toEpochDay());
    }
}
