package ortet.choice;

import java.util.Objects;

/**
 * So many layers or cuttings to set on, or from, one mother in one year.
 *
 * @param method layers or cuttings
 * @param band the diameter band of the stem, counted from 0; 0 for cuttings
 * @param raising the key of the way to raise them
 * @param count how many, at least 1
 */
public record ToSet(Method method, int band, String raising, int count) {
    public ToSet {
        Objects.requireNonNull(method);
        Objects.requireNonNull(raising);
    }
}
