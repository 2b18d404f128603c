package ortet.value;

import java.util.Objects;
import java.util.Optional;

/**
 * A place in a file.
 *
 * @param file the file's name as the user gave it
 * @param line the line, from 1
 * @param column the name or number of the column, where the fault lies in one
 */
public record Where(String file, long line, Optional<String> column) implements Comparable<Where> {
    public Where {
        Objects.requireNonNull(file);
        Objects.requireNonNull(column);
    }

    @Override
    public int compareTo(Where other) {
        int byFile = file.compareTo(other.file);
        return byFile != 0 ? byFile : Long.compare(line, other.line);
    }

    /** Return {@code file:line} or {@code file:line:column}. */
    @Override
    public String toString() {
        return file + ":" + line + column.map(name -> ":" + name).orElse("");
    }
}
