package ortet.commands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Checkup;
import ortet.book.Head;
import ortet.book.Judge;
import ortet.book.daybook.DayBook;
import ortet.book.daybook.Exported;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.ProgressBar;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.sqlite.SqliteBookStore;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** The book as a whole: made, written out, kept safe. */
public final class BookCommands {
    private static final String GROUP = "The book";

    private final Shelf shelf;
    private final Judge judge;
    private final Clock clock;

    BookCommands(Shelf shelf, Judge judge, Clock clock) {
        this.shelf = shelf;
        this.judge = judge;
        this.clock = clock;
    }

    @Command(name = "book new", group = GROUP, description = "make a new, empty book", help = """
            Its days are days in its time zone, that of this computer unless told otherwise.
            ortet book new
            ortet book new --book nursery.ortet --zone Europe/Dublin
            """)
    void make(
            @Option(longName = "zone", description = "the time zone of the nursery") Optional<String> zone,
            CommandContext context,
            Screen screen) {
        Whereabouts path = shelf.path(context);
        ZoneId where = zone.map(BookCommands::zone).orElse(clock.getZone());
        try (BookStore store = shelf.create(path, where, clock)) {
            Head head = store.read(view -> view.head());
            screen.prose("made the book " + path + ", time zone " + head.zone().getId());
        }
    }

    private static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException unknown) {
            throw new UsageException("--zone of book new: no time zone \"" + name + "\""
                    + Nearest.of(name, ZoneId.getAvailableZoneIds())
                            .map(near -> "; nearest: " + near)
                            .orElse("; expected a name such as Europe/Dublin"));
        }
    }

    @Command(name = "book export", group = GROUP, description = "write the whole book out as CSV", help = """
            The folder must be new or empty. Reading it into an empty book gives an equal book.
            ortet book export export-2026-03-01
            """)
    void write(
            @Argument(index = 0, description = "a new folder") @Word("FOLDER") Path folder,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        Exported exported;
        try (ProgressBar bar = screen.progress()) {
            exported = store.read(view -> DayBook.export(view, folder, bar::at));
        }
        screen.prose(Counts.of(exported.head().order(), "entry", "entries") + " and "
                + Counts.of(exported.persons(), "person", "persons") + " written to " + exported.folder()
                + "; the chain ends on " + exported.head().digest().brief());
    }

    @Command(name = "book info", group = GROUP, description = "say which book this is and where it stands", help = """
            ortet book info
            """)
    void info(
            @Option(longName = "format", defaultValue = "table", description = "how to answer") OutputFormat format,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        Sheet sheet = store.read(view -> {
            Head head = view.head();
            return Sheet.titled(
                            "book " + shelf.path(context), Column.text("what", "what"), Column.text("value", "value"))
                    .row("identity", head.bookId().toString())
                    .row("time zone", head.zone().getId())
                    .row("entries", Long.toString(head.order()))
                    .row("plants, layers and batches ever begun", Integer.toString(head.lastUnit()))
                    .row("persons", Integer.toString(view.persons().size()))
                    .row("end of the chain", head.digest().hex())
                    .build();
        });
        screen.show(sheet, format);
    }

    @Command(
            name = "book rebuild",
            group = GROUP,
            description = "work out everything anew from the entries",
            help = """
            ortet book rebuild
            """)
    void rebuild(CommandContext context, Screen screen) {
        BookStore store = shelf.open(context);
        try (ProgressBar bar = screen.progress()) {
            store.rebuild(judge, bar::at);
        }
        screen.prose("worked out anew from "
                + Counts.of(store.read(view -> view.head().order()), "entry", "entries"));
    }

    @Command(
            name = "book backup",
            group = GROUP,
            description = "copy the book to a new file, also while in use",
            help = """
            ortet book backup backup-2026-03-01.ortet
            """)
    void backup(
            @Argument(index = 0, description = "a new file") @Word("FILE") Path file,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        store.backup(file);
        try (BookStore copy = SqliteBookStore.open(file)) {
            Head head = copy.read(view -> view.head());
            screen.prose("copied to " + file + ": " + Counts.of(head.order(), "entry", "entries")
                    + ", the chain ends on " + head.digest().brief());
        }
    }

    @Command(
            name = "book check",
            group = GROUP,
            description = "check the book from end to end, and name what is wrong",
            help = """
            Whether the file is whole, every entry is as it was written, every entry can be true, and what is kept follows
            from the entries. Compare the end of the chain with the one that a backup or export printed.
            ortet book check
            """)
    void check(CommandContext context, Screen screen) {
        BookStore store = shelf.open(context);
        List<String> wrong = new ArrayList<>(store.damage());
        Checkup checkup;
        try (ProgressBar bar = screen.progress()) {
            checkup = store.read(view -> Checkup.of(view, judge, bar::at));
        }
        wrong.addAll(checkup.wrong());
        if (!wrong.isEmpty()) {
            throw new Refused(
                    wrong.stream().map(line -> Fault.of("not-well", line)).toList());
        }
        screen.prose("all is well: " + Counts.of(checkup.entries(), "entry", "entries") + ", "
                + Counts.of(checkup.units(), "plant, layer or batch", "plants, layers and batches")
                + "; the chain ends on " + checkup.head().digest().brief());
    }

    @Command(name = "book restore", group = GROUP, description = "put a backup in the place of the book", help = """
            The backup is checked first. A book that is there is kept beside it under a new name.
            ortet book restore backup-2026.ortet --book restored.ortet
            """)
    void restore(
            @Argument(index = 0, description = "the backup") @Word("FILE") Path backup,
            CommandContext context,
            Screen screen)
            throws IOException {
        Path place = shelf.path(context).file();
        shelf.close();
        Head head;
        Optional<Path> kept = Optional.empty();
        try (BookStore copy = SqliteBookStore.open(backup)) {
            Checkup checkup;
            try (ProgressBar bar = screen.progress()) {
                checkup = copy.read(view -> Checkup.of(view, judge, bar::at));
            }
            if (!checkup.isWell()) {
                throw new Refused(checkup.wrong().stream()
                        .map(line -> Fault.of("not-well", backup + ": " + line))
                        .toList());
            }
            head = checkup.head();
            if (Files.exists(place)) {
                if (Files.isSameFile(place, backup)) {
                    throw Refused.because("same-file", backup + " is the book itself");
                }
                kept = Optional.of(putAside(place));
            }
            copy.backup(place);
        }
        screen.prose("restored " + place + " from " + backup + ": " + Counts.of(head.order(), "entry", "entries")
                + ", the chain ends on " + head.digest().brief()
                + kept.map(file -> "; the book that was there is now " + file).orElse(""));
    }

    /** Give the book that is there another name, whole: what is not yet in its file is written into it first. */
    private Path putAside(Path place) throws IOException {
        String stamp = DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss").format(LocalDateTime.now(clock));
        Path aside = place.resolveSibling(place.getFileName() + ".before-" + stamp);
        try (BookStore present = SqliteBookStore.open(place)) {
            present.backup(aside);
        }
        Files.delete(place);
        Files.deleteIfExists(place.resolveSibling(place.getFileName() + "-wal"));
        Files.deleteIfExists(place.resolveSibling(place.getFileName() + "-shm"));
        return aside;
    }
}
