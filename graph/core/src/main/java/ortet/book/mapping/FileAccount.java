package ortet.book.mapping;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import ortet.entry.EntryKind;

/**
 * What became of the rows of one file.
 *
 * @param file the file, as the user gave it
 * @param sheet the sheet of the mapping that it was read as
 * @param rows how many rows it has below its header, blank ones not counted
 * @param taken how many hold
 * @param silent how many of these tell nothing for the book, such as an outcome that nobody knows yet
 * @param repeated how many say the same as one before, and are left out
 * @param leftOut how many the mapping leaves out
 * @param notTaken how many do not hold
 * @param entries how many entries come of those that hold, by kind
 */
public record FileAccount(
        String file,
        String sheet,
        int rows,
        int taken,
        int silent,
        int repeated,
        int leftOut,
        int notTaken,
        Map<EntryKind, Integer> entries) {
    public FileAccount {
        Objects.requireNonNull(file);
        Objects.requireNonNull(sheet);
        entries = Collections.unmodifiableMap(
                entries.isEmpty() ? new EnumMap<>(EntryKind.class) : new EnumMap<>(entries));
    }

    /** Return the account in one or two lines. */
    String line() {
        StringBuilder line = new StringBuilder(file)
                .append(": ")
                .append(Account.counted(rows, "row"))
                .append(": ")
                .append(Account.number(taken))
                .append(rows == 0 ? "" : " taken");
        append(line, repeated, "repeated and taken once");
        append(line, leftOut, "left out as the mapping says");
        append(line, silent, "with nothing for the book");
        append(line, notTaken, "not taken");
        if (!entries.isEmpty()) {
            line.append("; they become ").append(Account.byKind(entries));
        }
        return line.toString();
    }

    private static void append(StringBuilder line, int count, String what) {
        if (count > 0) {
            line.append(", ").append(Account.number(count)).append(' ').append(what);
        }
    }

    /** Return how many entries come of the file in all. */
    public int allEntries() {
        return entries.values().stream().collect(Collectors.summingInt(Integer::intValue));
    }
}
