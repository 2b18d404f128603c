package ortet.line;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The file that keeps the lines typed at the prompt, for its user alone. */
final class HistoryFile {
    private static final Set<PosixFilePermission> OWN_FILE =
            EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);
    private static final Set<PosixFilePermission> OWN_FOLDER = EnumSet.of(
            PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE, PosixFilePermission.OWNER_EXECUTE);

    private HistoryFile() {}

    /** Return where the file is: under {@code XDG_STATE_HOME}, else under {@code .local/state} at home. */
    static Optional<Path> in(Map<String, String> environment) {
        return folder(environment, "XDG_STATE_HOME")
                .or(() -> folder(environment, "HOME").map(home -> home.resolve(".local/state")))
                .map(folder -> folder.resolve("ortet").resolve("history"));
    }

    private static Optional<Path> folder(Map<String, String> environment, String variable) {
        return Optional.ofNullable(environment.get(variable))
                .filter(name -> name.startsWith("/"))
                .map(Path::of);
    }

    /** Return the file, made where it was not there, readable for its user alone; nothing where that cannot be. */
    static Optional<Path> kept(Path file) {
        try {
            Path folder = file.toAbsolutePath().getParent();
            if (!Files.isDirectory(folder)) {
                Files.createDirectories(folder.getParent());
                Files.createDirectory(folder, PosixFilePermissions.asFileAttribute(OWN_FOLDER));
            }
            if (!Files.exists(file)) {
                Files.createFile(file, PosixFilePermissions.asFileAttribute(OWN_FILE));
            }
            Files.setPosixFilePermissions(file, OWN_FILE);
            return Optional.of(file);
        } catch (IOException | UnsupportedOperationException unable) {
            return Optional.empty();
        }
    }
}
