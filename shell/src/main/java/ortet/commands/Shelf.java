package ortet.commands;

import java.nio.file.Files;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
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
    private Optional<Whereabouts> opened = Optional.empty();
    private Optional<BookStore> store = Optional.empty();

    /** Make a shelf with nothing open. */
    public Shelf(Map<String, String> environment, Sitting sitting) {
        this.environment = Map.copyOf(environment);
        this.sitting = sitting;
    }

    /** Return where the book is that a line is about. */
    public Whereabouts path(CommandContext context) {
        return path(context.parsedInput().options().stream()
                .filter(option -> option.longName().equals(OPTION))
                .map(CommandOption::value)
                .findFirst());
    }

    /** Return where the book is that is named, or else the one that is meant without a name. */
    Whereabouts path(Optional<String> named) {
        return named.map(Whereabouts::new)
                .or(sitting::book)
                .or(() -> Optional.ofNullable(environment.get(VARIABLE))
                        .filter(name -> !name.isBlank())
                        .map(Whereabouts::new))
                .orElse(new Whereabouts(USUAL));
    }

    /**
     * Return the book that a line is about, open.
     *
     * @throws Unavailable when there is none, with how to make one
     */
    public BookStore open(CommandContext context) {
        return open(path(context));
    }

    /** Return the book at a place, open. */
    BookStore open(Whereabouts place) {
        Whereabouts whole = place.whole();
        if (store.isPresent() && opened.equals(Optional.of(whole))) {
            return store.get();
        }
        close();
        BookStore fresh = fresh(place);
        opened = Optional.of(whole);
        store = Optional.of(fresh);
        return fresh;
    }

    /**
     * Open a book beside the one that is kept open; whoever asks closes it.
     *
     * @throws Unavailable when there is none, with how to make one
     */
    BookStore fresh(Whereabouts place) {
        if (place.isOnServer()) {
            return new ServerBooks(environment).open(place);
        }
        if (!Files.exists(place.file())) {
            throw new Unavailable("no book " + place + "; make one with \"ortet book new\", or name yours with --"
                    + OPTION + " FILE or in " + VARIABLE);
        }
        return SqliteBookStore.open(place.file());
    }

    /** Make a new, empty book; whoever asks closes it. */
    BookStore create(Whereabouts place, ZoneId zone, Clock clock) {
        return place.isOnServer()
                ? new ServerBooks(environment).create(place, zone, clock)
                : SqliteBookStore.create(place.file(), UUID.randomUUID(), zone, clock);
    }

    /** Open a book, or make a new one where there is none; whoever asks closes it. */
    BookStore openOrCreate(Whereabouts place, ZoneId zone, Clock clock) {
        if (place.isOnServer()) {
            return new ServerBooks(environment).openOrCreate(place, zone, clock);
        }
        return Files.exists(place.file()) ? fresh(place) : create(place, zone, clock);
    }

    @Override
    public void close() {
        store.ifPresent(BookStore::close);
        store = Optional.empty();
        opened = Optional.empty();
    }
}
