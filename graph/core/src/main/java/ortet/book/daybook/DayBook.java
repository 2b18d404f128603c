package ortet.book.daybook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ortet.book.BookView;
import ortet.book.EntrySource;
import ortet.book.Progress;
import ortet.plant.Person;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Require;
import ortet.value.Unavailable;

/**
 * Reads day books in CSV, and writes a book as one; the format is described in {@code docs/day-book.md}.
 *
 * <p>Nothing here changes a book: reading gives a {@link Reading}, which is then judged and written as any proposal is.
 */
public final class DayBook {
    /** The file of an export that holds the entries. */
    public static final String ENTRIES_FILE = "day-book.csv";

    /** The file that lists persons, in an export or beside a day book. */
    public static final String PERSONS_FILE = "persons.csv";

    /** The file of an export that tells which book it is. */
    public static final String LABEL_FILE = "book.csv";

    /** The version of the format that this program writes. */
    public static final int FORMAT = 1;

    private DayBook() {}

    /**
     * Read files, or one folder that a book was exported to.
     *
     * <p>A row without an identity gets one from its source, its kind, day and tags, and which of several alike in its
     * file it is, so that reading the same file again gives the same entries. A folder read beside an empty book gives
     * the whole of the exported book, otherwise its rows.
     *
     * @param paths files with rows, among them at most one list of persons; or one folder
     * @param source the name of the source that derived identities hold to; each file's name when absent
     * @param book the book that they are for
     * @throws Refused with every fault found, by file, line and column
     * @throws Unavailable when a file cannot be read
     */
    public static Reading read(List<Path> paths, Optional<String> source, BookView book, Progress progress) {
        Require.size(1, paths, "file");
        if (paths.size() == 1 && Files.isDirectory(paths.get(0))) {
            if (source.isPresent()) {
                throw Refused.because(
                        "source-of-export", "an export has no source to name: its entries have identities");
            }
            return ExportReader.read(paths.get(0), book, progress);
        }
        Faults faults = new Faults();
        List<Source> sources = sources(paths, faults);
        faults.refuse();
        return readRows(sources, source, book, progress);
    }

    /**
     * Return files, or one folder that a book was exported to, as a source for a book that has no entries: they are read
     * when they are asked for, however large, and not kept.
     *
     * @param paths files with rows, among them at most one list of persons; or one folder
     * @param source the name of the source that derived identities hold to; each file's name when absent
     * @param known the persons whom the book has already
     * @throws Refused when there are no such files
     */
    public static EntrySource source(List<Path> paths, Optional<String> source, Collection<Person> known) {
        Require.size(1, paths, "file");
        if (paths.size() == 1 && Files.isDirectory(paths.get(0))) {
            if (source.isPresent()) {
                throw Refused.because(
                        "source-of-export", "an export has no source to name: its entries have identities");
            }
            return ExportReader.source(paths.get(0));
        }
        Faults faults = new Faults();
        List<Source> sources = sources(paths, faults);
        faults.refuse();
        return new DayBookSource(sources, Require.text(source, "source"), new Persons(known));
    }

    /**
     * Write the whole book into a folder that is new or empty: the entries, the persons and a label.
     *
     * <p>The folder appears when all is written, or not at all.
     *
     * @throws Refused when the folder cannot be used
     * @throws Unavailable when it cannot be written, or the book is damaged
     */
    public static Exported export(BookView book, Path folder, Progress progress) {
        return ExportWriter.write(book, folder, progress);
    }

    static Reading.Rows readRows(List<Source> sources, Optional<String> named, BookView book, Progress progress) {
        Faults faults = new Faults();
        Persons persons = new Persons(book.persons());
        for (Source source : sources) {
            if (isPersons(source)) {
                persons.list(source, faults, progress);
            }
        }
        Gathered gathered = new Gathered(faults);
        for (Source source : sources) {
            if (!isPersons(source)) {
                Sheet sheet = new Sheet(source, Columns.OF_DAY_BOOK, faults);
                String name = Require.text(named, "source").orElse(source.name());
                new RowReader(sheet, name, persons::number, faults, gathered.taker(sheet), gathered.size())
                        .readAll(progress);
            }
        }
        faults.refuse();
        return gathered.rows(persons);
    }

    static boolean isPersons(Source source) {
        return source.name().equalsIgnoreCase(PERSONS_FILE);
    }

    private static List<Source> sources(List<Path> paths, Faults faults) {
        List<Source> sources = new ArrayList<>();
        Set<Path> seen = new HashSet<>();
        boolean hasPersons = false;
        for (Path path : paths) {
            try {
                if (Files.isDirectory(path)) {
                    faults.add(Fault.of("folder", path + " is a folder; expected files, or one folder alone"));
                    continue;
                }
                Source source = Source.of(path);
                if (!seen.add(path.toRealPath())) {
                    faults.add(Fault.of("file-twice", path + " is named twice; expected each file once"));
                }
                if (hasPersons && isPersons(source)) {
                    faults.add(Fault.of("file-twice", path + " is a second list of persons; expected one at most"));
                }
                hasPersons |= isPersons(source);
                sources.add(source);
            } catch (java.nio.file.NoSuchFileException missing) {
                faults.add(Fault.of("no-file", "there is no file " + path).nearest(Source.near(path)));
            } catch (IOException broken) {
                throw new Unavailable("cannot read " + path + ": " + Sheet.reason(broken), broken);
            }
        }
        return sources;
    }
}
