package ortet.commands;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.EntrySource;
import ortet.book.Judge;
import ortet.book.Loaded;
import ortet.book.Receipt;
import ortet.book.Ruling;
import ortet.book.daybook.DayBook;
import ortet.book.daybook.Reading;
import ortet.book.mapping.Guess;
import ortet.book.mapping.Imported;
import ortet.book.mapping.MappedReading;
import ortet.book.mapping.Mapping;
import ortet.book.mapping.Spreadsheets;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.screen.ProgressBar;
import ortet.screen.Screen;

/** Reading files into the book: day books, exports, and a nursery's own spreadsheets under a mapping. */
public final class ImportCommands {
    private final Shelf shelf;
    private final Judge judge;
    private final Recording recording;

    ImportCommands(Shelf shelf, Judge judge, Recording recording) {
        this.shelf = shelf;
        this.judge = judge;
        this.recording = recording;
    }

    /** What is typed after {@code book import}. */
    record Asked(
            @Arguments
            @Word(
                    value = "FILE",
                    optional = true,
                    description =
                            "day books, and persons.csv; or one folder of an export; or spreadsheets, in any order")
            List<Path> files,

            @Option(
                    longName = "mapping",
                    description =
                            "what the columns of your own spreadsheets mean; without FILE, those beside it are read")
            Optional<Path> mapping,

            @Option(
                    longName = "guess",
                    description =
                            "propose a mapping for spreadsheets: into the new file of --mapping, else on the screen")
            boolean guess,

            @Option(longName = "check", description = "only tell what would happen")
            boolean check,

            @Option(longName = "faults", description = "write every fault into this file, as CSV")
            Optional<Path> faults,

            @Option(
                    longName = "what-holds",
                    description = "with --mapping: take the rows that hold and leave the others")
            boolean whatHolds,

            @Option(
                    longName = "source",
                    description = "what to call the source of day books; the file's name unless given")
            Optional<String> source) {

        /** Refuse what does not go together. */
        void refuseWhatDoesNotGoTogether() {
            if (guess) {
                alone(check, "--check");
                alone(faults.isPresent(), "--faults");
                alone(whatHolds, "--what-holds");
                alone(source.isPresent(), "--source");
            }
            if ((guess || mapping.isEmpty()) && files.isEmpty()) {
                throw new UsageException(
                        "book import needs a FILE, or --mapping FILE; expected: book import FILE…, book import --mapping"
                                + " FILE [FILE…], or book import --guess FILE…");
            }
            if (mapping.isEmpty() && whatHolds) {
                throw new UsageException(
                        "--what-holds of book import: only with --mapping; a day book is all or nothing");
            }
            if (mapping.isPresent() && source.isPresent()) {
                throw new UsageException(
                        "--source of book import: not with --mapping, whose sheets have names of their own");
            }
        }

        private static void alone(boolean isGiven, String option) {
            if (isGiven) {
                throw new UsageException(
                        option + " of book import: not with --guess, which writes nothing into the book");
            }
        }
    }

    @Command(
            name = "book import",
            group = "The book",
            description = "read day books, an exported book, or your own spreadsheets into the book",
            help = """
            All or nothing: every fault is told by file, line and column, and then nothing is written. The same file twice
            adds nothing. Day books are as docs/day-book.md says. For spreadsheets of your own, a mapping says what their
            columns mean (docs/mapping.md): have one proposed, mend it, and try it with --check until it holds.
            ortet book import day-book.csv
            ortet book import spring.csv persons.csv --check
            ortet book import export-2026-03-01
            ortet book import --guess trees.csv pots.csv --mapping mapping.txt
            ortet book import --mapping mapping.txt --check --faults faults.csv
            ortet book import --mapping mapping.txt sales-2019.csv trees.csv
            ortet book import --mapping mapping.txt --what-holds
            """)
    void read(Asked asked, CommandContext context, Screen screen) {
        asked.refuseWhatDoesNotGoTogether();
        if (asked.guess()) {
            guess(asked, screen);
            return;
        }
        FaultList faults = new FaultList(asked.faults());
        BookStore store = shelf.open(context);
        if (asked.mapping().isPresent()) {
            Imported imported = spreadsheets(asked, asked.mapping().get(), store, faults, screen);
            if (!asked.check() && imported.loaded().isPresent()) {
                recording.wroteForGood("read in a file", context);
            }
            new ImportView(imported, asked.check(), faults, screen).show();
        } else {
            Loaded loaded = dayBooks(asked, store, faults, screen);
            if (!asked.check()) {
                recording.wroteForGood("read in a file", context);
            }
            faults.write(List.of());
            show(asked.check(), loaded, screen);
        }
    }

    private static void guess(Asked asked, Screen screen) {
        String mapping = Guess.of(asked.files());
        if (asked.mapping().isEmpty()) {
            screen.print(mapping);
            return;
        }
        Path file = asked.mapping().get();
        try {
            Files.writeString(file, mapping, StandardOpenOption.CREATE_NEW);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        screen.prose("Proposed a mapping: " + file + ". It is a beginning: look at every line, above all at the remarks"
                + " (#), then try it: ortet book import --mapping " + file + " --check");
    }

    private Loaded dayBooks(Asked asked, BookStore store, FaultList faults, Screen screen) {
        return faults.during(() -> {
            boolean isFolder = Files.isDirectory(asked.files().get(0));
            boolean isFresh = store.read(
                    view -> view.head().order() == 0 && (view.persons().isEmpty() || !isFolder));
            return isFresh ? fresh(asked, store, screen) : more(asked, store, screen);
        });
    }

    /** Read files into a book that has no entries, however large they are. */
    private Loaded fresh(Asked asked, BookStore store, Screen screen) {
        EntrySource entries = store.read(view -> DayBook.source(asked.files(), asked.source(), view.persons()));
        try (ProgressBar bar = screen.progress()) {
            return asked.check()
                    ? store.read(view -> judge.check(entries, view, bar::at))
                    : store.load(entries, judge, bar::at);
        }
    }

    /** Read files into a book beside what it has. */
    private Loaded more(Asked asked, BookStore store, Screen screen) {
        int before = store.read(view -> view.persons().size());
        try (ProgressBar bar = screen.progress()) {
            Reading reading = store.read(view -> DayBook.read(asked.files(), asked.source(), view, bar::at));
            if (asked.check()) {
                Ruling ruling = store.read(view -> reading.check(view, judge, bar::at));
                return ruling.receipt().loaded(ruling.persons().size());
            }
            Receipt receipt = reading.writeInto(store, judge, bar::at);
            return receipt.loaded(store.read(view -> view.persons().size()) - before);
        }
    }

    private static void show(boolean check, Loaded loaded, Screen screen) {
        Remarks.show(loaded.warnings(), screen);
        screen.prose(told(check, loaded));
        if (!loaded.warnings().isEmpty()) {
            screen.prose(Counts.of(loaded.warnings().size(), "remark", "remarks") + " above: odd, but possible");
        }
    }

    private Imported spreadsheets(Asked asked, Path file, BookStore store, FaultList faults, Screen screen) {
        return faults.during(() -> {
            Mapping mapping = Mapping.read(file);
            List<Path> files = asked.files().isEmpty() ? Spreadsheets.beside(file, mapping) : asked.files();
            try (ProgressBar bar = screen.progress()) {
                MappedReading reading = store.read(view -> Spreadsheets.read(files, mapping, view, bar::at));
                return asked.check()
                        ? store.read(view -> reading.check(view, judge, asked.whatHolds(), bar::at))
                        : reading.writeInto(store, judge, asked.whatHolds(), bar::at);
            }
        });
    }

    /** Return what was written, or would be, in a sentence. */
    static String told(boolean check, Loaded loaded) {
        return Counts.of(loaded.entries(), "entry", "entries")
                + (check ? " would be written, " : " written, ")
                + Counts.of(loaded.begun(), "plant, layer or batch begun", "plants, layers and batches begun")
                + (loaded.persons() > 0 ? ", " + Counts.of(loaded.persons(), "new person", "new persons") : "")
                + (loaded.repeated() > 0
                        ? "; " + Counts.of(loaded.repeated(), "entry was", "entries were") + " there already"
                        : "");
    }
}
