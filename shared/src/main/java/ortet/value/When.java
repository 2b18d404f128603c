package ortet.value;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * When something was done, known to the day, the month or the year (ISO 8601: {@code 2021-05-03}, {@code 2021-05},
 * {@code 2021}).
 *
 * @param first the first day that it may have been
 * @param precision how well it is known
 */
public record When(LocalDate first, Precision precision) implements Comparable<When> {
    private static final Pattern TEXT = Pattern.compile("(\\d{4})(?:-(\\d{2})(?:-(\\d{2}))?)?");

    /** How well a day is known. */
    public enum Precision {
        /** To the day. */
        DAY,
        /** To the month. */
        MONTH,
        /** To the year. */
        YEAR
    }

    public When {
        Objects.requireNonNull(first);
        switch (precision) {
            case DAY -> {}
            case MONTH -> first = first.withDayOfMonth(1);
            case YEAR -> first = first.withDayOfYear(1);
            default -> throw new Defect("precision " + precision);
        }
        Require.that(first.getYear() >= 1000 && first.getYear() <= 9999, "day", "a year with four digits");
    }

    /** Return a day known to the day. */
    public static When on(LocalDate day) {
        return new When(day, Precision.DAY);
    }

    /**
     * Read a day, a month or a year.
     *
     * @throws Refused when the text is none of them or names a day that does not exist
     */
    public static When parse(String text) {
        Matcher matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            throw Refused.because(
                    "bad-day",
                    "expected a day such as 2021-05-03, a month 2021-05 or a year 2021, found \"" + text + "\"");
        }
        try {
            int year = Integer.parseInt(matcher.group(1));
            if (matcher.group(2) == null) {
                return new When(LocalDate.of(year, 1, 1), Precision.YEAR);
            }
            int month = Integer.parseInt(matcher.group(2));
            if (matcher.group(3) == null) {
                return new When(LocalDate.of(year, month, 1), Precision.MONTH);
            }
            return on(LocalDate.of(year, month, Integer.parseInt(matcher.group(3))));
        } catch (DateTimeException impossible) {
            throw Refused.because("bad-day", "there is no day " + text);
        }
    }

    /** Return the last day that it may have been. */
    public LocalDate last() {
        return switch (precision) {
            case DAY -> first;
            case MONTH -> YearMonth.from(first).atEndOfMonth();
            case YEAR -> LocalDate.of(first.getYear(), 12, 31);
        };
    }

    /** Tell whether it is known to the day. */
    public boolean isExact() {
        return precision == Precision.DAY;
    }

    /** Compare by first day, then the better known first. */
    @Override
    public int compareTo(When other) {
        int byDay = first.compareTo(other.first);
        return byDay != 0 ? byDay : precision.compareTo(other.precision);
    }

    @Override
    public String toString() {
        String day = first.toString();
        return switch (precision) {
            case DAY -> day;
            case MONTH -> day.substring(0, 7);
            case YEAR -> day.substring(0, 4);
        };
    }
}
