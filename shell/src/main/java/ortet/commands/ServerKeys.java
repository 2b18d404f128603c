package ortet.commands;

import java.io.Console;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.value.Unavailable;

/**
 * Finds the user and the password for a server: in the environment, in a file that its owner alone can read, or by asking.
 * Never in an argument, which others on this computer can see.
 */
final class ServerKeys {
    /** The environment variable with the user. */
    static final String USER = "ORTET_NEO4J_USER";

    /** The environment variable with the password. */
    static final String PASSWORD = "ORTET_NEO4J_PASSWORD";

    /** The environment variable with the name of a file of two lines: the user and the password. */
    static final String FILE = "ORTET_NEO4J_FILE";

    private static final String USUAL_USER = "neo4j";
    private static final Set<PosixFilePermission> OTHERS = EnumSet.of(
            PosixFilePermission.GROUP_READ, PosixFilePermission.OTHERS_READ, PosixFilePermission.OTHERS_WRITE);

    private final Map<String, String> environment;
    private final Optional<Console> console;

    ServerKeys(Map<String, String> environment) {
        this.environment = environment;
        this.console = Optional.ofNullable(System.console());
    }

    /**
     * A user and a password.
     *
     * @param user the user
     * @param password the password
     */
    record Key(String user, String password) {
        /** Return the user alone. */
        @Override
        public String toString() {
            return user;
        }
    }

    /** Return the user and the password for a server. */
    Key of(String server) {
        Optional<String> password = Optional.ofNullable(environment.get(PASSWORD));
        if (password.isPresent()) {
            return new Key(user(), password.get());
        }
        Optional<String> file = Optional.ofNullable(environment.get(FILE)).filter(name -> !name.isBlank());
        if (file.isPresent()) {
            return read(Path.of(file.get()));
        }
        return console.map(asked -> ask(asked, server))
                .orElseThrow(() -> new Unavailable("no user and password for " + server + "; set " + USER + " and "
                        + PASSWORD + ", or name a file of two lines, user and password, in " + FILE));
    }

    private String user() {
        return Optional.ofNullable(environment.get(USER))
                .filter(name -> !name.isBlank())
                .orElse(USUAL_USER);
    }

    private Key read(Path file) {
        try {
            if (Files.getFileStore(file).supportsFileAttributeView("posix")) {
                Set<PosixFilePermission> found = Files.getPosixFilePermissions(file);
                if (found.stream().anyMatch(OTHERS::contains)) {
                    throw new Unavailable("others can read the password in " + file + " ("
                            + PosixFilePermissions.toString(found) + "); say chmod 600 " + file);
                }
            }
            List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
            if (lines.size() < 2) {
                throw new Unavailable(file + " named in " + FILE + ": expected two lines, the user and the password");
            }
            return new Key(lines.get(0).strip(), lines.get(1));
        } catch (IOException unreadable) {
            throw new Unavailable("cannot read " + file + " named in " + FILE, unreadable);
        }
    }

    private Key ask(Console asked, String server) {
        String user = user();
        String typed = asked.readLine("user of %s [%s]: ", server, user);
        char[] password = asked.readPassword("password: ");
        if (typed == null || password == null) {
            throw new Unavailable("no user and password for " + server);
        }
        return new Key(typed.isBlank() ? user : typed.strip(), new String(password));
    }
}
