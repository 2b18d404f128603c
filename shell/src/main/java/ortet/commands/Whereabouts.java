package ortet.commands;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.regex.Pattern;
import ortet.value.Refused;

/**
 * Where a book is: in a file, or on a server.
 *
 * @param name the name of the file, or the address {@code neo4j://host:7687/database}
 */
public record Whereabouts(String name) {
    private static final Pattern ADDRESS = Pattern.compile("[A-Za-z][A-Za-z0-9+.-]+://.*");

    public Whereabouts {
        Objects.requireNonNull(name);
        if (!ADDRESS.matcher(name).matches()) {
            try {
                name = Path.of(name).toString();
            } catch (InvalidPathException wrong) {
                throw Refused.because("bad-name", "\"" + name + "\" cannot be a file's name");
            }
        }
    }

    /** Return where the book in a file is. */
    public static Whereabouts of(Path file) {
        return new Whereabouts(file.toString());
    }

    /** Tell whether the book is on a server. */
    public boolean isOnServer() {
        return ADDRESS.matcher(name).matches();
    }

    /** Return the file. */
    public Path file() {
        if (isOnServer()) {
            throw Refused.because("not-a-file", "the book " + name + " is on a server; a file was expected");
        }
        return Path.of(name);
    }

    /** Tell whether there may be a book: a file that is there, or an address. */
    boolean mayBeThere() {
        return isOnServer() || Files.exists(file());
    }

    /** Return the book as one thing that can be compared: two names of one file are alike. */
    Whereabouts whole() {
        return isOnServer() ? this : of(file().toAbsolutePath().normalize());
    }

    /** Return a name short enough for the prompt. */
    String brief() {
        return isOnServer()
                ? name.replaceFirst("^[^:]+://", "")
                : file().getFileName().toString();
    }

    @Override
    public String toString() {
        return name;
    }
}
