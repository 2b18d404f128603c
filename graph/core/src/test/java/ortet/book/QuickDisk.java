package ortet.book;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * Where tests put what is written often and need not outlive the machine: in memory where the system has a folder for that,
 * since a server waits for the disk at every commit. What is killed there is still found there.
 */
public final class QuickDisk implements TempDirFactory {
    private static final Path MEMORY = Path.of("/dev/shm");
    private static final long ROOM = 2L << 30;

    /** Return the folder in which to make others. */
    public static Path folder() {
        try {
            boolean hasRoom =
                    Files.isWritable(MEMORY) && Files.getFileStore(MEMORY).getUsableSpace() >= ROOM;
            return hasRoom ? MEMORY : Path.of(System.getProperty("java.io.tmpdir"));
        } catch (IOException noSuchFolder) {
            return Path.of(System.getProperty("java.io.tmpdir"));
        }
    }

    /** Delete a folder and all that is in it. */
    public static void delete(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        } catch (IOException trouble) {
            throw new UncheckedIOException(trouble);
        }
    }

    @Override
    public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext test) throws IOException {
        return Files.createTempDirectory(folder(), "ortet");
    }
}
