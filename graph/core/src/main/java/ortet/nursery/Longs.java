package ortet.nursery;

import java.util.Arrays;

/** A column of long whole numbers being filled. */
final class Longs {
    private static final int FIRST = 1024;

    private long[] values = new long[FIRST];
    private int size;

    void add(long value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, size + (size >> 1));
        }
        values[size++] = value;
    }

    /** Return the column, no longer than it need be. */
    long[] done() {
        long[] column = size == values.length ? values : Arrays.copyOf(values, size);
        values = new long[0];
        return column;
    }
}
