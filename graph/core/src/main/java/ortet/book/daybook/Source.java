package ortet.book.daybook;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import ortet.value.Nearest;
import ortet.value.Unavailable;

/**
 * A file to read.
 *
 * @param shown its name as the user gave it
 * @param name its name without folders
 * @param size its size in bytes, 0 when not known
 * @param opener opens it, once
 */
public record Source(String shown, String name, long size, Opener opener) {
    /** Opens a file. */
    @FunctionalInterface
    public interface Opener {
        InputStream open() throws IOException;
    }

    /** Return that this file cannot be read, and why. */
    public Unavailable unavailable(IOException broken) {
        return new Unavailable("cannot read " + shown + ": " + Sheet.reason(broken), broken);
    }

    /** Return the file at a path. */
    public static Source of(Path path) throws IOException {
        Path name = path.getFileName();
        return new Source(
                path.toString(),
                name == null ? path.toString() : name.toString(),
                Files.isRegularFile(path) ? Files.size(path) : 0,
                () -> Files.newInputStream(path));
    }

    /** Return the names of files beside a missing one that may have been meant. */
    public static Optional<String> near(Path path) {
        Path folder = path.toAbsolutePath().getParent();
        Path name = path.getFileName();
        if (folder == null || name == null) {
            return Optional.empty();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return Nearest.of(
                    name.toString(),
                    files.map(file -> file.getFileName().toString()).toList());
        } catch (IOException unknown) {
            return Optional.empty();
        }
    }
}
