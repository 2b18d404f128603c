package ortet.commands;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.function.Consumer;
import ortet.value.Unavailable;

/** Writes a file that is not there yet: all of it, or nothing. */
final class NewFile {
    private NewFile() {}

    /**
     * Write a file in UTF-8.
     *
     * @throws Unavailable when it is there already, or cannot be written
     */
    static void write(Path file, Consumer<Writer> text) {
        try {
            try (BufferedWriter writer =
                    Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
                text.accept(writer);
            } catch (FileAlreadyExistsException | NoSuchFileException notOurs) {
                throw notOurs;
            } catch (IOException | RuntimeException broken) {
                Files.deleteIfExists(file);
                throw broken;
            }
        } catch (FileAlreadyExistsException there) {
            throw new Unavailable(file + " is there already; choose another file");
        } catch (NoSuchFileException nowhere) {
            throw new Unavailable("no folder " + file.toAbsolutePath().getParent());
        } catch (IOException trouble) {
            throw new Unavailable("cannot write " + file + ": " + trouble.getMessage());
        }
    }
}
