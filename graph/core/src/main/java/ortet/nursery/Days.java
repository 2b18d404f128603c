package ortet.nursery;

import java.time.LocalDate;
import ortet.value.When;

/** A day and how well it is known, in one number: days since 1970 times four, and 0 day, 1 month, 2 year. */
final class Days {
    private static final When.Precision[] PRECISIONS = When.Precision.values();

    private Days() {}

    static int packed(long day, long precision) {
        return Math.toIntExact(day << 2 | precision);
    }

    static int packed(When day) {
        return packed(day.first().toEpochDay(), day.precision().ordinal());
    }

    static int first(int packed) {
        return packed >> 2;
    }

    static When when(int packed) {
        return new When(LocalDate.ofEpochDay(first(packed)), PRECISIONS[packed & 3]);
    }
}
