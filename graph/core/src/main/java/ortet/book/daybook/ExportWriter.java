package ortet.book.daybook;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import ortet.book.BookView;
import ortet.book.CanonicalText;
import ortet.book.Chain;
import ortet.book.Chained;
import ortet.book.Digest;
import ortet.book.Head;
import ortet.book.Progress;
import ortet.entry.Form;
import ortet.entry.Recorded;
import ortet.entry.Words;
import ortet.plant.Person;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** Writes a book into a folder of CSV files. */
final class ExportWriter {
    private static final char MARK = '\uFEFF';
    private static final int PROGRESS_EVERY = 1000;
    private static final Columns COLUMNS = Columns.OF_DAY_BOOK;
    private static final int TAGS = COLUMNS.at("tags");

    private ExportWriter() {}

    static Exported write(BookView book, Path folder, Progress progress) {
        Path target = folder.toAbsolutePath().normalize();
        Path parent = target.getParent();
        Path name = target.getFileName();
        if (parent == null || name == null) {
            throw Refused.because("bad-folder", "cannot export to " + folder + "; expected a new folder");
        }
        Path draft = parent.resolve("." + name + ".unfinished-" + UUID.randomUUID());
        try {
            checkFree(folder, target, parent);
            Files.createDirectory(draft);
            try {
                int persons = writeFiles(book, draft, progress);
                move(draft, target);
                return new Exported(folder, book.head(), persons);
            } finally {
                delete(draft);
            }
        } catch (UncheckedIOException broken) {
            throw unavailable(folder, broken.getCause());
        } catch (IOException broken) {
            throw unavailable(folder, broken);
        }
    }

    private static Unavailable unavailable(Path folder, IOException broken) {
        return new Unavailable("cannot export to " + folder + ": " + Sheet.reason(broken), broken);
    }

    private static void checkFree(Path folder, Path target, Path parent) throws IOException {
        if (!Files.isDirectory(parent)) {
            throw Refused.because("no-folder", "there is no folder " + parent + " to export into");
        }
        if (Files.isDirectory(target)) {
            try (Stream<Path> files = Files.list(target)) {
                if (files.findAny().isPresent()) {
                    throw Refused.because(
                            "folder-not-empty", folder + " is not empty; expected a new or an empty folder");
                }
            }
        } else if (Files.exists(target, java.nio.file.LinkOption.NOFOLLOW_LINKS)) {
            throw Refused.because("not-a-folder", folder + " is a file; expected a new or an empty folder");
        }
    }

    private static void move(Path draft, Path target) throws IOException {
        try {
            Files.move(draft, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException | java.nio.file.FileAlreadyExistsException elsewhere) {
            Files.deleteIfExists(target);
            Files.move(draft, target);
        }
    }

    private static void delete(Path draft) throws IOException {
        if (!Files.exists(draft)) {
            return;
        }
        List<Path> all;
        try (Stream<Path> files = Files.walk(draft)) {
            all = files.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path file : all) {
            Files.delete(file);
        }
    }

    private static int writeFiles(BookView book, Path folder, Progress progress) throws IOException {
        Head head = book.head();
        try (Table table = new Table(folder.resolve(DayBook.ENTRIES_FILE), COLUMNS)) {
            writeEntries(book, head, table, progress);
        }
        Collection<Person> persons = book.persons();
        try (Table table = new Table(folder.resolve(DayBook.PERSONS_FILE), Columns.OF_PERSONS)) {
            for (Person person : persons) {
                table.write(
                        person.number().toString(),
                        person.name().orElse(""),
                        Words.of(person.role()),
                        person.particulars().orElse(""),
                        person.name().isPresent() ? "" : "yes");
            }
        }
        try (Table table = new Table(folder.resolve(DayBook.LABEL_FILE), Columns.OF_LABEL)) {
            table.write(
                    head.bookId().toString(),
                    head.zone().getId(),
                    Integer.toString(DayBook.FORMAT),
                    Long.toString(head.order()),
                    head.digest().hex());
        }
        return persons.size();
    }

    private static void writeEntries(BookView book, Head head, Table table, Progress progress) {
        Chain chain = new Chain(Chain.START);
        long order = 0;
        Digest last = Chain.START;
        try (Stream<Chained> entries = book.since(0)) {
            for (Chained entry : (Iterable<Chained>) entries::iterator) {
                order++;
                last = entry.digest();
                if (entry.recorded().order() != order
                        || !chain.add(entry.recorded()).digest().equals(last)) {
                    throw new Unavailable("the book is damaged: entry " + order + " is not as it was written");
                }
                table.write(cells(entry.recorded()));
                if (order % PROGRESS_EVERY == 0) {
                    progress.at("exporting", order, head.order());
                }
            }
        }
        if (order != head.order() || !last.equals(head.digest())) {
            throw new Unavailable("the book is damaged: it has " + order + " entries and should have " + head.order());
        }
        progress.at("exporting", order, head.order());
    }

    private static String[] cells(Recorded recorded) {
        String[] cells = new String[COLUMNS.names().size()];
        Arrays.fill(cells, "");
        cells[COLUMNS.at(Columns.ENTRY)] = recorded.proposed().id().toString();
        cells[COLUMNS.at(Columns.ORDER)] = Long.toString(recorded.order());
        cells[COLUMNS.at(Columns.RECORDED)] = CanonicalText.INSTANT.format(recorded.recordedAt());
        cells[COLUMNS.at(Columns.DAY)] = recorded.proposed().day().toString();
        recorded.proposed().by().ifPresent(by -> cells[COLUMNS.at(Columns.BY)] = by.toString());
        cells[COLUMNS.at(Columns.KIND)] = recorded.entry().kind().word();
        for (Map.Entry<String, String> field : Form.write(recorded.entry()).entrySet()) {
            cells[COLUMNS.at(field.getKey())] = field.getValue();
        }
        if (!cells[TAGS].isEmpty()) {
            cells[TAGS] = tags(recorded.entry().tags());
        }
        return cells;
    }

    /** Return tags as a cell holds them: briefly, but for those after which two dots would be read amiss. */
    static String tags(List<Tag> tags) {
        return tags.stream().noneMatch(tag -> tag.text().endsWith("."))
                ? Tags.brief(tags)
                : String.join(" ", tags.stream().map(Tag::text).toList());
    }

    /** A file being written: UTF-8 with a byte order mark, so that spreadsheets read it right, and lines ended by CRLF. */
    private static final class Table implements AutoCloseable {
        private final FileOutputStream file;
        private final CsvWriter csv;

        Table(Path path, Columns columns) throws IOException {
            file = new FileOutputStream(path.toFile());
            Writer text = new OutputStreamWriter(file, StandardCharsets.UTF_8);
            text.write(MARK);
            csv = CsvWriter.builder()
                    .lineDelimiter(LineDelimiter.CRLF)
                    .bufferSize(1 << 16)
                    .build(text);
            csv.writeRecord(columns.names());
        }

        void write(String... cells) {
            for (int at = 0; at < cells.length; at++) {
                cells[at] = Cell.guard(cells[at]);
            }
            csv.writeRecord(cells);
        }

        @Override
        public void close() throws IOException {
            try (csv) {
                csv.flush();
                file.getFD().sync();
            }
        }
    }
}
