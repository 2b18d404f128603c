package ortet.book;

import java.util.Arrays;

/** Whole numbers one after another, as many as come. */
final class Ints {
    private int[] values = new int[256];
    private int size;

    int size() {
        return size;
    }

    int get(int at) {
        return values[at];
    }

    void add(int value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, size + (size >> 1));
        }
        values[size++] = value;
    }

    /** Return the place of the last number that is not greater; the numbers must ascend. */
    int floor(int value) {
        int found = Arrays.binarySearch(values, 0, size, value);
        return found >= 0 ? found : -found - 2;
    }
}
