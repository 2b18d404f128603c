package ortet.commands;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.CommandOption;
import ortet.book.BookStore;
import ortet.sqlite.SqliteBookStore;
import ortet.value.Unavailable;

/**
 * Finds the book that a command is about, and keeps it open until another is asked for or the program ends.
 *
 * <p>It is the one named by {@code --book}, else the one remembered, else that of the environment variable
 * {@code ORTET_BOOK}, else {@value #USUAL} in the folder that ortet was started in.
 */
public final class Shelf implements AutoCloseable {
    /** The option that names the book, understood by every command. */
    public static final String OPTION = "book";

    /** The environment variable that names the book. */
    public static final String VARIABLE = "ORTET_BOOK";

    private static final String USUAL = "book.ortet";

    private final Map<String, String> environment;
    private final Sitting sitting;
    private Optional<Path> opened = Optional.empty();
    private Optional<BookStore> store = Optional.empty();

    /** Make a shelf with nothing open. */
    public Shelf(Map<String, String> environment, Sitting sitting) {
        this.environment = Map.copyOf(environment);
        this.sitting = sitting;
    }

    /** Return the file of the book that a line is about. */
    public Path path(CommandContext context) {
        return path(context.parsedInput().options().stream()
                .filter(option -> option.longName().equals(OPTION))
                .map(CommandOption::value)
                .findFirst());
    }

    /** Return the file of the book that is named, or else of the one that is meant without a name. */
    Path path(Optional<String> named) {
        return named.map(Path::of)
                .or(sitting::book)
                .or(() -> Optional.ofNullable(environment.get(VARIABLE))
                        .filter(name -> !name.isBlank())
                        .map(Path::of))
                .orElse(Path.of(USUAL));
    }

    /**
     * Return the book that a line is about, open.
     *
     * @throws Unavailable when there is none, with how to make one
     */
    public BookStore open(CommandContext context) {
        Path path = path(context);
        if (!Files.exists(path)) {
            throw new Unavailable("no book " + path + "; make one with \"ortet book new\", or name yours with --"
                    + OPTION + " FILE or in " + VARIABLE);
        }
        return open(path);
    }

    /** Return the book in a file, open. */
    BookStore open(Path path) {
        Path whole = path.toAbsolutePath().normalize();
        if (store.isPresent() && opened.equals(Optional.of(whole))) {
            return store.get();
        }
        close();
        BookStore fresh = SqliteBookStore.open(path);
        opened = Optional.of(whole);
        store = Optional.of(fresh);
        return fresh;
    }

    @Override
    public void close() {
        store.ifPresent(BookStore::close);
        store = Optional.empty();
        opened = Optional.empty();
    }
}
