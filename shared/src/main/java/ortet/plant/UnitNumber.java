package ortet.plant;

import ortet.value.Require;

/**
 * The identity of a plant, layer or batch in one book; it never changes, while the tag may.
 *
 * @param value at least 1
 */
public record UnitNumber(int value) implements Comparable<UnitNumber> {
    public UnitNumber {
        Require.atLeast(1, value, "unit");
    }

    @Override
    public int compareTo(UnitNumber other) {
        return Integer.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Integer.toString(value);
    }
}
