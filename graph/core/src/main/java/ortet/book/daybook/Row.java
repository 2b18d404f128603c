package ortet.book.daybook;

import java.util.Arrays;
import java.util.Optional;

/**
 * One row of a file, its cells known by the place of their column in {@link Columns}.
 *
 * <p>The same object is filled anew for each row. A blank cell is empty.
 */
final class Row {
    private final String[] cells;
    private final int[] filled;
    private int count;
    private long line;
    private int stray = -1;

    Row(int columns) {
        cells = new String[columns];
        Arrays.fill(cells, "");
        filled = new int[columns];
    }

    void begin(long newLine) {
        for (int at = 0; at < count; at++) {
            cells[filled[at]] = "";
        }
        count = 0;
        stray = -1;
        line = newLine;
    }

    void fill(int column, String text) {
        cells[column] = text;
        filled[count++] = column;
    }

    /** Put another text into a cell that has one. */
    void replace(int column, String text) {
        cells[column] = text;
    }

    void stray(int position) {
        if (stray < 0) {
            stray = position;
        }
    }

    /** Return the line on which the row begins, from 1. */
    long line() {
        return line;
    }

    /** Return the text of a cell without blanks at its ends, "" where there is none. */
    String cell(int column) {
        return cells[column];
    }

    /** Return the text of a cell, where there is any. */
    Optional<String> text(int column) {
        return cells[column].isEmpty() ? Optional.empty() : Optional.of(cells[column]);
    }

    /** Return how many cells have a text under a column with a name. */
    int filled() {
        return count;
    }

    /** Return the column of the n-th of those cells. */
    int filled(int n) {
        return filled[n];
    }

    /** Return the position, from 0, of the first text that stands under no column's name; -1 where there is none. */
    int stray() {
        return stray;
    }

    /** Tell whether nothing is written in the row. */
    boolean isBlank() {
        return count == 0 && stray < 0;
    }
}
