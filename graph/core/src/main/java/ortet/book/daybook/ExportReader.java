package ortet.book.daybook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import ortet.book.BookView;
import ortet.book.Chain;
import ortet.book.Digest;
import ortet.book.EntrySource;
import ortet.book.Intake;
import ortet.book.Progress;
import ortet.book.Restoration;
import ortet.entry.EntryId;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Unavailable;
import ortet.value.Where;

/**
 * Reads a folder that a book was exported to.
 *
 * <p>It is read as strictly as it was written: orders without gaps, instants, and a chain of digests that ends on the
 * one on the label; otherwise somebody has changed the files since.
 */
final class ExportReader {
    private static final Columns COLUMNS = Columns.OF_DAY_BOOK;
    private static final Columns LABEL = Columns.OF_LABEL;
    private static final int PROGRESS_EVERY = 4096;

    private record Label(UUID book, ZoneId zone, long entries, Digest digest) {}

    private final Path folder;
    private final Faults faults = new Faults();
    private final List<Recorded> entries = new ArrayList<>();
    private final List<Where> places = new ArrayList<>();
    private final Set<PersonNumber> numbers = new HashSet<>();
    private final Map<EntryId, Long> seen = new HashMap<>();
    private String lastInstant = "";
    private Instant lastRead = Instant.EPOCH;

    private ExportReader(Path folder) {
        this.folder = folder;
    }

    static Reading read(Path folder, BookView book, Progress progress) {
        ExportReader reader = new ExportReader(folder);
        Restoration whole = reader.whole(progress);
        boolean isEmpty = book.head().order() == 0 && book.persons().isEmpty();
        return isEmpty ? new Reading.WholeBook(whole) : Renumbering.rows(whole, reader.places, book);
    }

    private Restoration whole(Progress progress) {
        Source label = source(DayBook.LABEL_FILE);
        Source listed = source(DayBook.PERSONS_FILE);
        Source rows = source(DayBook.ENTRIES_FILE);
        Label read = label(label, progress);
        List<Person> persons = persons(listed, progress);
        faults.refuse();
        persons.forEach(person -> numbers.add(person.number()));
        Sheet sheet = new Sheet(rows, COLUMNS, faults);
        new RowReader(sheet, rows.name(), (cell, role, where) -> number(cell), faults, taker(sheet), 0)
                .readAll(progress);
        faults.refuse();
        checkDigest(read, progress);
        return new Restoration(read.book(), read.zone(), entries, persons, read.digest());
    }

    private RowReader.Taker taker(Sheet sheet) {
        return new RowReader.Taker() {
            @Override
            public int take(Proposed proposed, Row row) {
                long order = order(sheet, row, entries.size());
                require(sheet, row);
                Long before = seen.putIfAbsent(proposed.id(), row.line());
                if (before != null) {
                    repeated(sheet, row, before);
                }
                entries.add(new Recorded(order, instant(sheet, row), proposed));
                places.add(sheet.where(row.line()));
                return entries.size();
            }

            @Override
            public EntryId id(int number) {
                return entries.get(number - 1).proposed().id();
            }

            @Override
            public int number(EntryId id) {
                return 0;
            }
        };
    }

    /** Return what hands the rows on as they are read. */
    RowReader.Taker taker(Sheet sheet, Intake intake) {
        return new RowReader.Taker() {
            @Override
            public int take(Proposed proposed, Row row) {
                long order = order(sheet, row, intake.size());
                require(sheet, row);
                long before = intake.order(proposed.id());
                if (before != 0) {
                    repeated(sheet, row, intake.where(before).orElseThrow().line());
                }
                intake.take(new Recorded(order, instant(sheet, row), proposed), Optional.of(sheet.where(row.line())));
                return (int) order;
            }

            @Override
            public EntryId id(int number) {
                return intake.entry(number).proposed().id();
            }

            @Override
            public int number(EntryId id) {
                return 0;
            }
        };
    }

    private Source source(String name) {
        Path file = folder.resolve(name);
        if (!Files.isRegularFile(file)) {
            throw Refused.because(
                    "not-an-export",
                    folder + " is not an export: there is no " + name + " in it; expected " + DayBook.ENTRIES_FILE
                            + ", " + DayBook.PERSONS_FILE + " and " + DayBook.LABEL_FILE);
        }
        try {
            return Source.of(file);
        } catch (IOException broken) {
            throw new Unavailable("cannot read " + file + ": " + Sheet.reason(broken), broken);
        }
    }

    private Label label(Source source, Progress progress) {
        List<Label> labels = new ArrayList<>();
        Sheet sheet = new Sheet(source, LABEL, faults);
        List<Long> lines = new ArrayList<>();
        sheet.read(
                row -> {
                    lines.add(row.line());
                    readLabel(sheet, row).ifPresent(labels::add);
                },
                progress);
        if (faults.isEmpty() && lines.size() != 1) {
            faults.add(
                    "bad-label",
                    sheet.where(lines.isEmpty() ? 1 : lines.get(1)),
                    -1,
                    "expected one row, found " + (lines.isEmpty() ? "none" : lines.size()));
        }
        faults.refuse();
        return labels.get(0);
    }

    private Optional<Label> readLabel(Sheet sheet, Row row) {
        int before = faults.size();
        Optional<Integer> format = cell(sheet, row, LABEL, Columns.FORMAT, Integer::valueOf, "the number of a format");
        if (format.isPresent() && format.get() != DayBook.FORMAT) {
            throw new Refused(Fault.of(
                            "newer-format",
                            "the export is in format " + format.get() + "; this program reads format " + DayBook.FORMAT)
                    .at(sheet.where(row.line(), Columns.FORMAT)));
        }
        Optional<UUID> book = cell(
                sheet, row, LABEL, Columns.BOOK, text -> EntryId.parse(text).value(), "the identity of a book");
        Optional<ZoneId> zone = cell(sheet, row, LABEL, Columns.ZONE, ZoneId::of, "a time zone such as Europe/Dublin");
        Optional<Long> count = cell(sheet, row, LABEL, Columns.ENTRIES, Long::valueOf, "how many entries there are");
        Optional<Digest> digest = cell(sheet, row, LABEL, Columns.DIGEST, Digest::new, "64 hexadecimal digits");
        return faults.size() > before
                ? Optional.empty()
                : Optional.of(new Label(book.get(), zone.get(), count.get(), digest.get()));
    }

    private <T> Optional<T> cell(
            Sheet sheet,
            Row row,
            Columns columns,
            String column,
            java.util.function.Function<String, T> parse,
            String expected) {
        String text = row.cell(columns.at(column));
        try {
            return Optional.of(parse.apply(text));
        } catch (IllegalArgumentException | DateTimeException | Refused wrong) {
            faults.add(
                    "bad-value",
                    sheet.where(row.line(), column),
                    sheet.position(columns.at(column)),
                    "expected " + expected + ", found \"" + text + "\"");
            return Optional.empty();
        }
    }

    private List<Person> persons(Source source, Progress progress) {
        List<Person> persons = new ArrayList<>();
        for (PersonRow row : PersonRow.read(source, faults, progress)) {
            if (row.number().isEmpty()) {
                faults.add("bad-person", row.at(Columns.NUMBER), 0, "must not be empty in an export");
            } else {
                persons.add(row.person(row.number().get()));
            }
        }
        return persons;
    }

    private PersonNumber number(String cell) {
        PersonNumber number = PersonNumber.parse(cell);
        if (!numbers.contains(number)) {
            throw Refused.because("unknown-person", "there is no " + number + " in " + DayBook.PERSONS_FILE);
        }
        return number;
    }

    private long order(Sheet sheet, Row row, long before) {
        long expected = before + 1;
        String text = row.cell(COLUMNS.at(Columns.ORDER));
        if (faults.isEmpty() && !text.equals(Long.toString(expected))) {
            faults.add(
                    "bad-order",
                    sheet.where(row.line(), Columns.ORDER),
                    sheet.position(COLUMNS.at(Columns.ORDER)),
                    "the rows are not as they were exported: expected " + expected + ", found \"" + text + "\"");
        }
        return expected;
    }

    private Instant instant(Sheet sheet, Row row) {
        String text = row.cell(COLUMNS.at(Columns.RECORDED));
        if (!text.equals(lastInstant)) {
            cell(sheet, row, COLUMNS, Columns.RECORDED, Instant::parse, "an instant such as 2021-05-03T14:05:00.000Z")
                    .ifPresent(instant -> {
                        lastInstant = text;
                        lastRead = instant;
                    });
        }
        return lastRead;
    }

    private void require(Sheet sheet, Row row) {
        if (row.cell(COLUMNS.at(Columns.ENTRY)).isEmpty()) {
            faults.add(
                    "missing-value",
                    sheet.where(row.line(), Columns.ENTRY),
                    sheet.position(COLUMNS.at(Columns.ENTRY)),
                    "must not be empty in an export");
        }
    }

    private void repeated(Sheet sheet, Row row, long before) {
        faults.add(
                "repeated-entry",
                sheet.where(row.line(), Columns.ENTRY),
                sheet.position(COLUMNS.at(Columns.ENTRY)),
                "stands in line " + before + " too; expected each identity once");
    }

    private void checkDigest(Label label, Progress progress) {
        requireCount(label, entries.size());
        Chain chain = new Chain(Chain.START);
        Digest last = Chain.START;
        int done = 0;
        for (Recorded entry : entries) {
            last = chain.add(entry).digest();
            if (++done % PROGRESS_EVERY == 0) {
                progress.at("checking digests", done, entries.size());
            }
        }
        requireDigest(label, last);
    }

    private void requireCount(Label label, long count) {
        if (count != label.entries()) {
            throw Refused.because(
                    "changed-after-export",
                    folder + " was changed after the export: " + DayBook.ENTRIES_FILE + " has " + count + " entries, "
                            + DayBook.LABEL_FILE + " says " + label.entries());
        }
    }

    private void requireDigest(Label label, Digest last) {
        if (!last.equals(label.digest())) {
            throw Refused.because(
                    "changed-after-export",
                    folder + " was changed after the export: the digest of its entries is " + last.brief() + "…, "
                            + DayBook.LABEL_FILE + " says "
                            + label.digest().brief() + "…");
        }
    }

    /** Return the folder as a source for an empty book. */
    static EntrySource source(Path folder) {
        ExportReader reader = new ExportReader(folder);
        Label label = reader.label(reader.source(DayBook.LABEL_FILE), Progress.NONE);
        List<Person> persons = reader.persons(reader.source(DayBook.PERSONS_FILE), Progress.NONE);
        Source rows = reader.source(DayBook.ENTRIES_FILE);
        reader.faults.refuse();
        persons.forEach(person -> reader.numbers.add(person.number()));
        return new EntrySource() {
            @Override
            public void read(Intake intake, Progress progress) {
                reader.hand(rows, label, intake, progress);
            }

            @Override
            public List<Person> persons() {
                return persons;
            }

            @Override
            public Optional<Identity> identity() {
                return Optional.of(new Identity(label.book(), label.zone()));
            }
        };
    }

    private void hand(Source rows, Label label, Intake intake, Progress progress) {
        Sheet sheet = new Sheet(rows, COLUMNS, faults);
        new RowReader(sheet, rows.name(), (cell, role, where) -> number(cell), faults, taker(sheet, intake), 0)
                .readAll(progress);
        faults.refuse();
        requireCount(label, intake.size());
        requireDigest(label, intake.digest());
    }
}
