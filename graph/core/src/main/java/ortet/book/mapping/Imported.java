package ortet.book.mapping;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.Loaded;
import ortet.value.Fault;
import ortet.value.Warning;

/**
 * What came of reading spreadsheets into a book, or of trying to.
 *
 * @param files what became of the rows of each file
 * @param withoutRow how many plants had no row of their own and are acquired
 * @param faults everything that is wrong, by file and line; rows with a fault are not taken
 * @param remarks what is odd but possible
 * @param loaded what was written, or would be; absent where nothing was
 */
public record Imported(
        List<FileAccount> files, int withoutRow, List<Fault> faults, List<Warning> remarks, Optional<Loaded> loaded) {
    public Imported {
        Objects.requireNonNull(loaded);
        files = List.copyOf(files);
        faults = List.copyOf(faults);
        remarks = List.copyOf(remarks);
    }

    /** Return how many rows hold. */
    public int taken() {
        return files.stream().mapToInt(FileAccount::taken).sum();
    }

    /** Return how many rows have a fault. */
    public int wrong() {
        return files.stream().mapToInt(FileAccount::wrong).sum();
    }

    /** Return how many other rows rest on one with a fault. */
    public int resting() {
        return files.stream().mapToInt(FileAccount::resting).sum();
    }
}
