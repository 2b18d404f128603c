package ortet.choice;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;

/**
 * The months for which a forecast is made, and the rounds of grading in which they lie.
 *
 * <p>Months count from 0, the first being what is left of its own. After them all comes whatever is later in the last round. Days are
 * in days since 1970.
 */
final class ForecastHorizon {
    private final int months;
    private final int[] monthOfYear;
    private final int[] year;
    private final int[] lastDays;
    private final Round[] roundOf;
    private final List<Round> rounds;

    /**
     * Months of one round of grading.
     *
     * @param number counted from 0
     * @param from the first of them
     * @param to the one after the last
     */
    record Round(int number, int from, int to) {}

    /**
     * Make it.
     *
     * @param asOf the day after which the first month begins
     * @param months how many, at least 1
     * @param last the last day that counts, if it is before the last month ends
     */
    ForecastHorizon(int asOf, int months, int last, ForecastRounds grading) {
        this.months = months;
        this.monthOfYear = new int[months];
        this.year = new int[months];
        this.lastDays = new int[months + 2];
        this.roundOf = new Round[months + 1];
        YearMonth first = firstMonth(asOf);
        lastDays[0] = asOf;
        for (int month = 0; month < months; month++) {
            YearMonth here = first.plusMonths(month);
            monthOfYear[month] = here.getMonthValue() - 1;
            year[month] = here.getYear();
            lastDays[month + 1] = lastDay(here, last);
        }
        List<Round> found = new ArrayList<>();
        int from = 0;
        for (int to = 1; to <= months; to++) {
            if (to == months || round(grading, to) != round(grading, from)) {
                Round round = new Round(found.size(), from, to);
                found.add(round);
                for (int month = from; month < to; month++) {
                    roundOf[month] = round;
                }
                from = to;
            }
        }
        this.rounds = List.copyOf(found);
        roundOf[months] = roundOf[months - 1];
        lastDays[months + 1] = Math.max(lastDays[months], grading.begins(round(grading, months - 1) + 1) - 1);
    }

    /** Return the month of the day after a day. */
    static YearMonth firstMonth(int asOf) {
        return YearMonth.from(LocalDate.ofEpochDay(asOf + 1L));
    }

    /** Return the last day of so many months, or the last that counts, if that is before. */
    static int lastDay(int asOf, int months, int last) {
        return lastDay(firstMonth(asOf).plusMonths(months - 1L), last);
    }

    private static int lastDay(YearMonth month, int last) {
        return Math.toIntExact(Math.min(last, month.atEndOfMonth().toEpochDay()));
    }

    private int round(ForecastRounds grading, int month) {
        return grading.round(year[month], monthOfYear[month]);
    }

    /** Return how many months there are. */
    int months() {
        return months;
    }

    /** Return which month of the year a month is, from 0. */
    int monthOfYear(int month) {
        return monthOfYear[month];
    }

    /** Return in which calendar year a month lies. */
    int year(int month) {
        return year[month];
    }

    /** Return how many calendar years the months touch. */
    int years() {
        return year[months - 1] - year[0] + 1;
    }

    /** Return the day before a month begins; of that after them all, the last of them all. */
    int before(int month) {
        return lastDays[month];
    }

    /** Return the last day of a month; of that after them all, the last of the last round. */
    int end(int month) {
        return lastDays[month + 1];
    }

    /** Return the day in the middle of a month. */
    int middle(int month) {
        return (lastDays[month] + lastDays[month + 1]) / 2;
    }

    /** Return all rounds, in order. */
    List<Round> rounds() {
        return rounds;
    }

    /** Return the round in which a month lies; the last, for what comes after all months. */
    Round round(int month) {
        return roundOf[month];
    }
}
