package ortet.book.daybook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import ortet.book.BookStore;
import ortet.book.Progress;

/** Exports books into folders of their own, and reads them again. */
final class Exports {
    private Exports() {}

    /** Make a folder for the length of a test. */
    static void inFolder(Consumer<Path> test) {
        try {
            Path folder = Files.createTempDirectory("exports");
            try {
                test.accept(folder);
            } finally {
                try (Stream<Path> files = Files.walk(folder)) {
                    for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                        Files.delete(file);
                    }
                }
            }
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** Export a book. */
    static Exported write(BookStore book, Path folder) {
        return book.read(view -> DayBook.export(view, folder, Progress.NONE));
    }

    /** Read an export beside a book. */
    static Reading read(Path folder, BookStore book) {
        return book.read(view -> DayBook.read(List.of(folder), Optional.empty(), view, Progress.NONE));
    }

    /** Return the names of the files in a folder, sorted. */
    static List<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
