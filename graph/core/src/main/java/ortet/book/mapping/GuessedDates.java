package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Refused;

/**
 * Finds out in which ways days are written.
 *
 * @param formats the formats, in the order in which they are to be tried
 * @param doubt what is doubtful about them, in words
 */
record GuessedDates(List<DayFormat> formats, Optional<String> doubt) {
    private static final List<DayFormat> CANDIDATES = List.of(
                    "dd/MM/yyyy",
                    "dd/MM/yy",
                    "dd.MM.yyyy",
                    "dd.MM.yy",
                    "dd-MM-yyyy",
                    "dd-MM-yy",
                    "yyyy/MM/dd",
                    "yyyy.MM.dd",
                    "d MMM yyyy",
                    "d-MMM-yyyy",
                    "d-MMM-yy",
                    "d MMM yy",
                    "MMM d, yyyy",
                    "MMM yyyy",
                    "MMM yy",
                    "MMM-yy",
                    "MM/yyyy",
                    "MM.yyyy",
                    "MM.yy",
                    "MM/yy",
                    DayFormat.SERIAL)
            .stream()
            .map(DayFormat::of)
            .toList();
    private static final DayFormat MONTH_FIRST = DayFormat.of("MM/dd/yyyy");
    private static final DayFormat MONTH_FIRST_SHORT = DayFormat.of("MM/dd/yy");
    private static final Pattern SLASHED = Pattern.compile("(\\d{1,2})/(\\d{1,2})/(\\d{2}|\\d{4})");

    /** All ways that are known, day before month. */
    static final Dates ALL = all();

    private static Dates all() {
        List<DayFormat> all = new ArrayList<>(CANDIDATES);
        all.add(MONTH_FIRST);
        all.add(MONTH_FIRST_SHORT);
        return new Dates(all);
    }

    /** Find the formats of some days. */
    static GuessedDates of(Collection<String> values) {
        boolean dayFirst = false;
        boolean monthFirst = false;
        boolean slashed = false;
        for (String value : values) {
            Matcher matcher = SLASHED.matcher(value);
            if (matcher.lookingAt()) {
                slashed = true;
                dayFirst |= Integer.parseInt(matcher.group(1)) > 12;
                monthFirst |= Integer.parseInt(matcher.group(2)) > 12;
            }
        }
        List<DayFormat> tried = new ArrayList<>();
        if (monthFirst && !dayFirst) {
            tried.add(MONTH_FIRST);
            tried.add(MONTH_FIRST_SHORT);
        }
        tried.addAll(CANDIDATES);
        Dates iso = new Dates(List.of());
        Set<DayFormat> used = new LinkedHashSet<>();
        for (String value : values) {
            if (isReadBy(iso, value)) {
                continue;
            }
            tried.stream()
                    .filter(format -> isReadBy(new Dates(List.of(format)), value))
                    .findFirst()
                    .ifPresent(used::add);
        }
        List<DayFormat> formats = tried.stream().filter(used::contains).toList();
        Optional<String> doubt = !slashed || dayFirst != monthFirst
                ? Optional.empty()
                : Optional.of(
                        dayFirst
                                ? "some days seem to have the month first, some the day: look at them"
                                : "nothing tells whether the day or the month comes first: the day is a guess");
        return new GuessedDates(formats, doubt);
    }

    private static boolean isReadBy(Dates dates, String value) {
        try {
            dates.parse(value);
            return true;
        } catch (Refused none) {
            return false;
        }
    }
}
