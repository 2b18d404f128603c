package ortet.book.mapping;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ortet.value.Refused;
import ortet.value.When;
import ortet.value.When.Precision;

/**
 * Reads days as a nursery writes them: formats are tried in order, then ISO 8601.
 *
 * <p>A time of day behind a day is left out. A mark of doubt ({@code c.}, {@code ca.}, {@code about}, {@code ~} before
 * it, {@code ?} after it) makes a day a month and a month a year.
 */
final class Dates {
    private static final Pattern TIME = Pattern.compile("[ T]\\d{1,2}:\\d{2}(:\\d{2}([.,]\\d+)?)?( ?[AaPp][Mm])?Z?$");
    private static final Pattern DOUBT = Pattern.compile(
            "^(?:(?:circa|about|approx\\.?|ca\\.?|c\\.?)\\s*(?=\\p{Alnum})|~\\s*)", Pattern.CASE_INSENSITIVE);
    private static final List<DayFormat> ISO =
            List.of(DayFormat.of("yyyy-MM-dd"), DayFormat.of("yyyy-MM"), DayFormat.of("yyyy"));

    private final List<DayFormat> formats;

    Dates(List<DayFormat> formats) {
        this.formats = List.copyOf(formats);
    }

    /** Return the formats. */
    List<DayFormat> formats() {
        return formats;
    }

    /**
     * Read a day, a month or a year.
     *
     * @throws Refused when no format reads it
     */
    When parse(String text) {
        String bare = text.strip();
        boolean doubtful = bare.endsWith("?");
        String sure = doubtful ? bare.substring(0, bare.length() - 1).strip() : bare;
        String cleared = DOUBT.matcher(sure).replaceFirst("");
        // "c" alone may also begin a word of a format; a day that reads as it stands has no doubt about it.
        Optional<When> found = read(sure);
        if (found.isEmpty() && !cleared.equals(sure)) {
            doubtful = true;
            found = read(cleared);
        }
        if (found.isEmpty()) {
            throw Refused.because("bad-day", complaint(text, cleared));
        }
        return doubtful ? coarser(found.get()) : found.get();
    }

    private Optional<When> read(String text) {
        Optional<When> found = tried(text);
        if (found.isEmpty()) {
            String day = TIME.matcher(text).replaceFirst("");
            found = day.equals(text) ? found : tried(day);
        }
        return found;
    }

    private Optional<When> tried(String text) {
        for (DayFormat format : formats) {
            Optional<When> found = format.read(text);
            if (found.isPresent()) {
                return found;
            }
        }
        for (DayFormat format : ISO) {
            Optional<When> found = format.read(text);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private String complaint(String text, String cleared) {
        List<DayFormat> all = new ArrayList<>(formats);
        all.addAll(ISO);
        if (all.stream().anyMatch(format -> format.isShapeOf(cleared))) {
            return "there is no day " + text.strip();
        }
        List<DayFormat> shown = formats.isEmpty() ? ISO : formats;
        return "expected a day as "
                + shown.stream().map(DayFormat::example).collect(Collectors.joining(" or ")) + ", found \""
                + text.strip() + "\"";
    }

    private static When coarser(When when) {
        return new When(when.first(), when.precision() == Precision.DAY ? Precision.MONTH : Precision.YEAR);
    }

    /** Return the day that numbers stand for, where there is one. */
    static Optional<When> day(int year, int month, int day) {
        try {
            return Optional.of(When.on(LocalDate.of(year, month, day)));
        } catch (DateTimeException | Refused none) {
            return Optional.empty();
        }
    }
}
