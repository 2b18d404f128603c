package ortet.commands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Optional;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.Copy;
import ortet.book.Judge;
import ortet.line.Word;
import ortet.screen.ProgressBar;
import ortet.screen.Screen;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** Moving a book between a file and a server. */
public final class CopyCommands {
    private final Shelf shelf;
    private final Judge judge;
    private final Clock clock;

    CopyCommands(Shelf shelf, Judge judge, Clock clock) {
        this.shelf = shelf;
        this.judge = judge;
        this.clock = clock;
    }

    @Command(
            name = "book copy",
            group = "The book",
            description = "copy a book from a file to a server or back, and compare",
            help = """
            Both are named in full, as --book names them. The other book must not be there, or be empty, or be a beginning of
            the same book, which then gets the rest. When it was broken off, say it again: it goes on. Afterwards the copy is
            read through, and its chain of digests worked out anew and compared.
            ortet book copy nursery.ortet neo4j+s://books.example:7687/nursery
            ortet book copy neo4j://localhost nursery-2026-06-15.ortet
            """)
    void copy(
            @Argument(index = 0, description = "the book to copy") @Word("FROM") String from,
            @Argument(index = 1, description = "the other book") @Word("TO") String to,
            Screen screen) {
        Whereabouts source = new Whereabouts(from);
        Whereabouts target = new Whereabouts(to);
        if (source.whole().equals(target.whole())) {
            throw Refused.because("same-book", "FROM and TO are the same book");
        }
        try (BookStore book = shelf.fresh(source)) {
            Optional<Path> made =
                    target.isOnServer() || Files.exists(target.file()) ? Optional.empty() : Optional.of(target.file());
            ZoneId zone = book.read(BookView::head).zone();
            boolean isDone = false;
            try (BookStore other = shelf.openOrCreate(target, zone, clock);
                    ProgressBar bar = screen.progress()) {
                tell(Copy.of(book, other, judge, bar::at), source, target, screen);
                isDone = true;
            } finally {
                if (!isDone) {
                    made.ifPresent(CopyCommands::remove);
                }
            }
        }
    }

    private static void tell(Copy.Copied copied, Whereabouts source, Whereabouts target, Screen screen) {
        long fresh = copied.head().order() - copied.already();
        screen.prose("copied " + source + " to " + target + ": " + Counts.of(fresh, "entry", "entries")
                + (copied.already() > 0 ? " more, " + copied.head().order() + " in all" : "")
                + (copied.persons() > 0 ? " and " + Counts.of(copied.persons(), "person", "persons") : "")
                + "; both end on " + copied.head().digest().brief());
    }

    /** Remove the file that was made for a copy that came to nothing. */
    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
            Files.deleteIfExists(file.resolveSibling(file.getFileName() + "-wal"));
            Files.deleteIfExists(file.resolveSibling(file.getFileName() + "-shm"));
        } catch (IOException stays) {
            throw new Unavailable("an empty book is left in " + file, stays);
        }
    }
}
