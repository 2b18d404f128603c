package ortet.value;

import java.text.Normalizer;
import java.util.Collection;
import java.util.HashSet;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** Checks what a value must be to make sense; a breach is {@link Refused} and names the column. */
public final class Require {
    private Require() {}

    /** Refuse unless {@code holds}. */
    public static void that(boolean holds, String column, String expected) {
        if (!holds) {
            throw new Refused(
                    new Fault("bad-value", Optional.empty(), column + ": expected " + expected, Optional.empty()));
        }
    }

    /** Return the text in Unicode form NFC without blanks at its ends; refuse it when nothing is left. */
    public static String text(String text, String column) {
        String clean = clean(Objects.requireNonNull(text, column));
        that(!clean.isEmpty(), column, "some text");
        return clean;
    }

    /** Return the text, where there is one, in Unicode form NFC without blanks at its ends; a blank text is none. */
    public static Optional<String> text(Optional<String> text, String column) {
        return Objects.requireNonNull(text, column).map(Require::clean).filter(clean -> !clean.isEmpty());
    }

    private static String clean(String text) {
        String clean = text.strip();
        if (!Normalizer.isNormalized(clean, Normalizer.Form.NFC)) {
            clean = Normalizer.normalize(clean, Normalizer.Form.NFC);
        }
        return clean.indexOf('\r') < 0 ? clean : clean.replace("\r\n", "\n").replace('\r', '\n');
    }

    /** Fail when a value that must be there is null. */
    public static void present(Object value, String column) {
        Objects.requireNonNull(value, column);
    }

    /** Refuse a value that is not above the bound. */
    public static void above(int bound, Optional<Decimal> value, String column) {
        value.ifPresent(v -> {
            if (v.compareTo(Decimal.of(bound)) <= 0) {
                throw bad(column, "above " + bound, v);
            }
        });
    }

    /** Refuse a value below the bound. */
    public static void atLeast(int bound, Optional<? extends Number> value, String column) {
        value.ifPresent(v -> {
            if (v.doubleValue() < bound) {
                throw bad(column, "at least " + bound, v);
            }
        });
    }

    /** Refuse a value below the bound. */
    public static void atLeast(int bound, int value, String column) {
        if (value < bound) {
            throw bad(column, "at least " + bound, value);
        }
    }

    /** Refuse a value outside the bounds. */
    public static void between(int low, int high, Optional<Decimal> value, String column) {
        value.ifPresent(v -> {
            if (v.compareTo(Decimal.of(low)) < 0 || v.compareTo(Decimal.of(high)) > 0) {
                throw bad(column, low + " to " + high, v);
            }
        });
    }

    /** Refuse a collection with fewer members. */
    public static void size(int atLeast, Collection<?> values, String column) {
        if (values.size() < atLeast) {
            throw bad(column, atLeast == 1 ? "at least one" : "at least " + atLeast, values.size());
        }
    }

    /** Refuse a collection that has not exactly one member. */
    public static void exactlyOne(Collection<?> values, String column) {
        if (values.size() != 1) {
            throw bad(column, "exactly one", values.size());
        }
    }

    /** Refuse a collection that names something twice. */
    public static void noRepeats(Collection<?> values, String column) {
        if (values.size() < 2) {
            return;
        }
        Set<Object> seen = new HashSet<>(values.size() * 2);
        for (Object value : values) {
            if (!seen.add(value)) {
                throw bad(column, "each but once", value + " twice");
            }
        }
    }

    private static Refused bad(String column, String expected, Object found) {
        return new Refused(Fault.of("bad-value", column + ": expected " + expected + ", found " + found));
    }
}
