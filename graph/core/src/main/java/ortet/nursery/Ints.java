package ortet.nursery;

import java.util.Arrays;

/** A column of whole numbers being filled. */
final class Ints {
    private static final int FIRST = 1024;

    private int[] values = new int[FIRST];
    private int size;

    void add(int value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, size + (size >> 1));
        }
        values[size++] = value;
    }

    /** Add to the last number. */
    void increase(int by) {
        values[size - 1] += by;
    }

    /** Put the last number in place of a smaller one. */
    void atLeast(int value) {
        values[size - 1] = Math.max(values[size - 1], value);
    }

    int get(int at) {
        return values[at];
    }

    void set(int at, int value) {
        values[at] = value;
    }

    int size() {
        return size;
    }

    int last() {
        return values[size - 1];
    }

    /** Return the column, no longer than it need be. */
    int[] done() {
        int[] column = size == values.length ? values : Arrays.copyOf(values, size);
        values = new int[0];
        return column;
    }

    /** Return the column with a byte for each number. */
    byte[] bytes() {
        byte[] column = new byte[size];
        for (int at = 0; at < size; at++) {
            column[at] = (byte) values[at];
        }
        values = new int[0];
        return column;
    }
}
