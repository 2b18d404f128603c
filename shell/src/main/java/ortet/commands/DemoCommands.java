package ortet.commands;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Head;
import ortet.book.Judge;
import ortet.book.Loaded;
import ortet.book.daybook.DayBook;
import ortet.line.Word;
import ortet.lineage.Lineage;
import ortet.screen.OutputFormat;
import ortet.screen.ProgressBar;
import ortet.screen.Screen;
import ortet.screen.Style;
import ortet.seeds.Sallowfield;
import ortet.sqlite.SqliteBookStore;
import ortet.value.Refused;
import ortet.value.Unavailable;
import ortet.yield.Take;
import ortet.yield.TakeBy;
import ortet.yield.TakeQuestion;

/** The demo: an invented nursery's book, entered like anybody's, and the main job run on it. */
public final class DemoCommands {
    /** The identity of every demo book, by which it is told from a real one. */
    static final UUID BOOK_ID = UUID.fromString("5a110f1e-1d00-8000-8000-0de300000001");

    private static final String SOURCE = "sallowfield";

    @Command(
            name = "demo",
            group = "Ortet itself",
            description = "make the demo book of Sallowfield, an invented nursery, and run the main job on it",
            help = """
            The book is made from day books in CSV, by the same import and rules as anybody's. No other book is touched.
            ortet demo
            ortet demo --to try.ortet
            """)
    void demo(
            @Option(
                            longName = "to",
                            defaultValue = "sallowfield.ortet",
                            description = "the file of the demo book; made anew when it is there")
                    @Word("FILE")
                    Path to,
            Screen screen) {
        Clock clock = Clock.fixed(
                Sallowfield.LAST_DAY.atTime(20, 0).atZone(Sallowfield.ZONE).toInstant(), Sallowfield.ZONE);
        Judge judge = new Judge(clock);
        Loaded loaded = make(to, clock, judge, screen);
        screen.prose("Sallowfield, an invented nursery in the west of Ireland: "
                + Counts.of((int) loaded.entries(), "entry", "entries") + " about "
                + Counts.of(loaded.begun(), "plant, layer or batch", "plants, layers and batches") + " up to "
                + Sallowfield.LAST_DAY + ", now in " + to + ".");
        try (BookStore store = SqliteBookStore.open(to)) {
            LocalDate day = Sallowfield.LAST_DAY;
            heading(
                    "Where does this tree come from?",
                    "trace " + Sallowfield.SHOWPIECE + " --as-of " + day,
                    to,
                    screen);
            TraceView.show(
                    store.read(view -> Lineage.trace(view, Sallowfield.SHOWPIECE, day)), OutputFormat.TABLE, screen);
            heading("What takes, by cultivar and method?", "take --by cultivar,method --as-of " + day, to, screen);
            TakeQuestion question = TakeQuestion.asOf(day).by(TakeBy.CULTIVAR, TakeBy.METHOD);
            TakeView.show(store.read(view -> Take.ask(view, question)), OutputFormat.TABLE, screen);
        }
        next(to, screen);
    }

    private static void heading(String question, String line, Path book, Screen screen) {
        screen.println();
        screen.println(screen.styled(Style.STRONG, question));
        screen.println(screen.styled(Style.FAINT, "$ ortet " + line + " --book " + book));
        screen.println();
    }

    private static void next(Path book, Screen screen) {
        String day = " --as-of " + Sallowfield.LAST_DAY;
        screen.println();
        screen.println(screen.styled(Style.STRONG, "What to type next"));
        screen.println();
        screen.println("  export ORTET_BOOK=" + book);
        screen.println("  ./ortet plant " + Sallowfield.SHOWPIECE + day);
        screen.println("  ./ortet take --by mother --method layer" + day);
        screen.println("  ./ortet take --by operator,season" + day + " --format csv");
        screen.println("  ./ortet compare layering cuttings --by cultivar" + day);
        screen.println("  ./ortet choose" + day);
        screen.println("  ./ortet plan --cultivar Deshojo --count 5 --by 2031-10-01" + day);
        screen.println("  ./ortet forecast" + day);
        screen.println("  ./ortet recall --consignment MV-0219" + day);
        screen.println("  ./ortet book export sallowfield-csv");
        screen.println("  ./ortet help");
        screen.println();
        screen.prose("Your own book: ./ortet book new --book mine.ortet");
    }

    /** Make the book beside its place, and put it there when it is whole. */
    private static Loaded make(Path to, Clock clock, Judge judge, Screen screen) {
        keepOthers(to);
        Path folder = Optional.ofNullable(to.toAbsolutePath().getParent()).orElse(Path.of("."));
        try {
            Path work = Files.createTempDirectory(folder, ".sallowfield");
            try {
                Path fresh = work.resolve("demo.ortet");
                Loaded loaded;
                try (BookStore store = SqliteBookStore.create(fresh, BOOK_ID, Sallowfield.ZONE, clock);
                        ProgressBar bar = screen.progress()) {
                    List<Path> files = copyTo(work);
                    loaded = store.load(DayBook.source(files, Optional.of(SOURCE), List.of()), judge, bar::at);
                }
                Files.move(fresh, to, StandardCopyOption.REPLACE_EXISTING);
                return loaded;
            } finally {
                clear(work);
            }
        } catch (IOException broken) {
            throw new Unavailable(
                    "cannot write " + to + ": " + broken.getMessage() + "; name another file with --to", broken);
        }
    }

    private static List<Path> copyTo(Path folder) throws IOException {
        Path dayBook = folder.resolve(DayBook.ENTRIES_FILE);
        Path persons = folder.resolve(DayBook.PERSONS_FILE);
        try (InputStream entries = Sallowfield.dayBook();
                InputStream names = Sallowfield.persons()) {
            Files.copy(entries, dayBook);
            Files.copy(names, persons);
        }
        return List.of(dayBook, persons);
    }

    /** Refuse to touch a file that is no demo book, or one in which somebody has written. */
    private static void keepOthers(Path to) {
        if (!Files.exists(to)) {
            return;
        }
        Head head;
        long demo;
        try (BookStore store = SqliteBookStore.open(to)) {
            head = store.read(view -> view.head());
            demo = store.read(view -> {
                try (Stream<ortet.book.Chained> entries = view.since(0)) {
                    return entries.filter(entry -> entry.recorded()
                                    .recordedAt()
                                    .atZone(Sallowfield.ZONE)
                                    .toLocalDate()
                                    .equals(Sallowfield.LAST_DAY))
                            .count();
                }
            });
        }
        if (!head.bookId().equals(BOOK_ID)) {
            throw Refused.because(
                    "not-the-demo", to + " is there and is not the demo book; name another file with --to");
        }
        if (demo != head.order()) {
            throw Refused.because(
                    "written-in",
                    to + " is a demo book in which you have written "
                            + Counts.of(head.order() - demo, "entry", "entries")
                            + "; name another file with --to, or remove it");
        }
    }

    private static void clear(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            all.forEach(file -> {
                try {
                    Files.deleteIfExists(file);
                } catch (IOException stays) {
                    throw new UncheckedIOException(stays);
                }
            });
        }
        Files.deleteIfExists(folder);
    }
}
