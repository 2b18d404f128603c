package ortet.book.mapping;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Refused;
import ortet.value.When;
import ortet.value.When.Precision;

/**
 * One way to write a day, month or year, as a pattern: {@code d} or {@code dd} day, {@code M} or {@code MM} month,
 * {@code MMM} month in English words, {@code yy} or {@code yyyy} year, {@code EEE} day of the week, anything else
 * itself; or {@code spreadsheet number}, the days since 30 December 1899.
 *
 * <p>{@code d} and {@code dd} read alike, so do {@code M} and {@code MM}, except where numbers stand side by side. Two
 * digits of a year mean 1960 to 2059.
 */
final class DayFormat {
    /** The pattern of spreadsheet numbers. */
    static final String SERIAL = "spreadsheet number";

    private static final LocalDate SERIAL_ZERO = LocalDate.of(1899, 12, 30);
    private static final int FIRST_SERIAL = 3_654; // 1910; smaller numbers are likelier years, counts and mistakes
    private static final int LAST_SERIAL = 73_050; // 2099
    private static final int FIRST_SHORT_YEAR = 1960;
    private static final List<String> MONTHS = List.of(
            "january",
            "february",
            "march",
            "april",
            "may",
            "june",
            "july",
            "august",
            "september",
            "october",
            "november",
            "december");
    private static final Pattern SERIAL_TEXT = Pattern.compile("(\\d{4,5})(?:[.,]\\d+)?");

    private final String pattern;
    private final Pattern shape;
    private final List<Character> parts;

    private DayFormat(String pattern, Pattern shape, List<Character> parts) {
        this.pattern = pattern;
        this.shape = shape;
        this.parts = List.copyOf(parts);
    }

    /**
     * Read a pattern.
     *
     * @throws Refused when it is none
     */
    static DayFormat of(String pattern) {
        String text = pattern.strip();
        if (text.equalsIgnoreCase(SERIAL)) {
            return new DayFormat(SERIAL, SERIAL_TEXT, List.of('n'));
        }
        StringBuilder shape = new StringBuilder();
        List<Character> parts = new ArrayList<>();
        int at = 0;
        while (at < text.length()) {
            char letter = text.charAt(at);
            int end = at;
            while (end < text.length() && text.charAt(end) == letter) {
                end++;
            }
            int length = end - at;
            if (Character.isLetter(letter)) {
                boolean touches = isNumeric(text, at - 1) || isNumeric(text, end);
                part(text, letter, length, touches, shape, parts);
            } else if (Character.isWhitespace(letter)) {
                shape.append("\\s+");
            } else {
                shape.append("\\s*")
                        .append(Pattern.quote(text.substring(at, end)))
                        .append("\\s*");
            }
            at = end;
        }
        if (!parts.contains('y')) {
            throw bad(text, "a year");
        }
        if (parts.contains('d') && !parts.contains('M') && !parts.contains('L')) {
            throw bad(text, "a month");
        }
        return new DayFormat(
                text, Pattern.compile(shape.toString(), Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE), parts);
    }

    private static boolean isNumeric(String text, int at) {
        return at >= 0 && at < text.length() && "dMy".indexOf(text.charAt(at)) >= 0;
    }

    private static void part(
            String text, char letter, int length, boolean touches, StringBuilder shape, List<Character> parts) {
        switch (letter) {
            case 'd' -> {
                shape.append(touches && length == 2 ? "(\\d{2})" : "(\\d{1,2})(?:st|nd|rd|th)?");
                parts.add('d');
            }
            case 'M' -> {
                boolean words = length > 2;
                shape.append(words ? "(\\p{L}{3,9})\\.?" : touches && length == 2 ? "(\\d{2})" : "(\\d{1,2})");
                parts.add(words ? 'L' : 'M');
            }
            case 'y' -> {
                if (length != 2 && length != 4) {
                    throw bad(text, "yy or yyyy for the year");
                }
                shape.append(length == 2 ? "['’]?(\\d{2})" : "(\\d{4})");
                parts.add(length == 2 ? 's' : 'y');
            }
            case 'E' -> shape.append("\\p{L}{2,9}\\.?");
            default -> throw bad(text, "only d, M, y and E as letters");
        }
        if (letter == 'y' && length == 2) {
            parts.add('y');
        }
        boolean isTwice = new HashSet<>(parts).size() < parts.size() || parts.contains('M') && parts.contains('L');
        if (isTwice) {
            throw bad(text, "each of day, month and year once");
        }
    }

    private static Refused bad(String text, String expected) {
        return Refused.because(
                "bad-date-format",
                "expected a way to write days such as dd/MM/yyyy, MMM yyyy or yyyy, with " + expected + "; found \""
                        + text + "\"");
    }

    /** Tell whether a text looks like this format, though there may be no such day. */
    boolean isShapeOf(String text) {
        return shape.matcher(text).matches();
    }

    /** Read a day, month or year, where the text is one in this format. */
    Optional<When> read(String text) {
        Matcher matcher = shape.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        int year = 0;
        int month = 0;
        int day = 0;
        int group = 0;
        for (char part : parts) {
            if (part == 'y' && year != 0) {
                continue; // two digits have been read
            }
            String found = matcher.group(++group);
            switch (part) {
                case 'n' -> {
                    int days = Integer.parseInt(found);
                    return days < FIRST_SERIAL || days > LAST_SERIAL
                            ? Optional.empty()
                            : Optional.of(When.on(SERIAL_ZERO.plusDays(days)));
                }
                case 'd' -> day = Integer.parseInt(found);
                case 'M' -> month = Integer.parseInt(found);
                case 'L' -> month = month(found);
                case 's' -> year = FIRST_SHORT_YEAR + Math.floorMod(Integer.parseInt(found) - FIRST_SHORT_YEAR, 100);
                default -> year = Integer.parseInt(found);
            }
        }
        boolean hasMonth = parts.contains('M') || parts.contains('L');
        Optional<When> exact = Dates.day(year, hasMonth ? month : 1, parts.contains('d') ? day : 1);
        Precision precision = parts.contains('d') ? Precision.DAY : hasMonth ? Precision.MONTH : Precision.YEAR;
        return exact.map(when -> new When(when.first(), precision));
    }

    private static int month(String word) {
        String wanted = word.toLowerCase(Locale.ROOT);
        for (int at = 0; at < MONTHS.size(); at++) {
            if (MONTHS.get(at).startsWith(wanted)) {
                return at + 1;
            }
        }
        return wanted.equals("sept") ? 9 : 0;
    }

    /** Write a day in this format, as somebody would. */
    String write(When when) {
        LocalDate day = when.first();
        StringBuilder text = new StringBuilder();
        if (pattern.equals(SERIAL)) {
            return Long.toString(day.toEpochDay() - SERIAL_ZERO.toEpochDay());
        }
        int at = 0;
        while (at < pattern.length()) {
            char letter = pattern.charAt(at);
            int end = at;
            while (end < pattern.length() && pattern.charAt(end) == letter) {
                end++;
            }
            int length = end - at;
            text.append(
                    switch (letter) {
                        case 'd' -> padded(day.getDayOfMonth(), length);
                        case 'M' ->
                            length > 2 ? monthName(day.getMonthValue(), length) : padded(day.getMonthValue(), length);
                        case 'y' -> length == 2 ? padded(day.getYear() % 100, 2) : padded(day.getYear(), 4);
                        case 'E' ->
                            day.getDayOfWeek().name().substring(0, 1)
                                    + day.getDayOfWeek().name().substring(1, 3).toLowerCase(Locale.ROOT);
                        default -> pattern.substring(at, end);
                    });
            at = end;
        }
        return text.toString();
    }

    private static String monthName(int month, int length) {
        String name = MONTHS.get(month - 1);
        String word = Character.toUpperCase(name.charAt(0)) + name.substring(1);
        return length == 3 ? word.substring(0, 3) : word;
    }

    private static String padded(int number, int width) {
        String digits = Integer.toString(number);
        return "0".repeat(Math.max(0, width - digits.length())) + digits;
    }

    /** Return an example of a day in this format. */
    String example() {
        return write(When.on(LocalDate.of(2021, 5, 13)));
    }

    /** Return how well a day in this format is known. */
    boolean isExact() {
        return parts.contains('d') || parts.contains('n');
    }

    /** Return the pattern. */
    @Override
    public String toString() {
        return pattern;
    }
}
