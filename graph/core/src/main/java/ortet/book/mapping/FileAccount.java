package ortet.book.mapping;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
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
 * @param wrong how many have a fault
 * @param resting how many others rest on one with a fault
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
        int wrong,
        int resting,
        Map<EntryKind, Integer> entries) {
    public FileAccount {
        Objects.requireNonNull(file);
        Objects.requireNonNull(sheet);
        Map<EntryKind, Integer> sorted = new EnumMap<>(EntryKind.class);
        sorted.putAll(entries);
        entries = Collections.unmodifiableMap(sorted);
    }
}
