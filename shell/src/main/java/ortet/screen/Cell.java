package ortet.screen;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** One value of a sheet, with its type. */
public sealed interface Cell {
    /** Text. */
    record Words(String text) implements Cell {}

    /** A whole number. */
    record Whole(long value) implements Cell {}

    /** A number, unrounded; one that is not finite counts as unknown. */
    record Number(double value) implements Cell {}

    /** A number with the decimals it was given with, money say. */
    record Exact(BigDecimal value) implements Cell {}

    /** A day. */
    record Day(LocalDate day) implements Cell {}

    /** Yes or no. */
    record Truth(boolean value) implements Cell {}

    /** Nothing known. */
    record Nothing() implements Cell {}

    /**
     * Return a plain value as a cell: text, a number, a day, a boolean, an enum constant in its typed form, or an optional
     * of one of them.
     *
     * @throws IllegalArgumentException for anything else
     */
    static Cell of(Object value) {
        if (value instanceof Cell cell) {
            return cell;
        }
        if (value instanceof CharSequence text) {
            return new Words(text.toString());
        }
        if (value instanceof Long || value instanceof Integer || value instanceof Short || value instanceof Byte) {
            return new Whole(((java.lang.Number) value).longValue());
        }
        if (value instanceof Double || value instanceof Float) {
            double number = ((java.lang.Number) value).doubleValue();
            return Double.isFinite(number) ? new Number(number) : new Nothing();
        }
        if (value instanceof BigDecimal exact) {
            return new Exact(exact);
        }
        if (value instanceof LocalDate day) {
            return new Day(day);
        }
        if (value instanceof Boolean truth) {
            return new Truth(truth);
        }
        if (value instanceof Enum<?> constant) {
            return new Words(constant.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
        if (value instanceof Optional<?> optional) {
            return optional.<Cell>map(Cell::of).orElseGet(Nothing::new);
        }
        if (value instanceof OptionalInt optional) {
            return optional.isPresent() ? new Whole(optional.getAsInt()) : new Nothing();
        }
        if (value instanceof OptionalLong optional) {
            return optional.isPresent() ? new Whole(optional.getAsLong()) : new Nothing();
        }
        if (value instanceof OptionalDouble optional) {
            return optional.isPresent() ? of(optional.getAsDouble()) : new Nothing();
        }
        throw new IllegalArgumentException("no cell for " + value);
    }
}
