package ortet.book.daybook;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import ortet.book.Diary;
import ortet.book.Progress;
import ortet.book.Receipt;
import ortet.entry.Entry;
import ortet.entry.Proposed;
import ortet.value.Refused;
import ortet.value.Warning;

/** Reads day books for tests, beside a book that is empty at first. */
final class Desk {
    private final Diary diary = new Diary();

    /** Return the diary of the book. */
    Diary diary() {
        return diary;
    }

    /** Return a file with the given bytes. */
    static Source file(String name, byte[] bytes) {
        return new Source(name, name, bytes.length, () -> new ByteArrayInputStream(bytes));
    }

    /** Return a file in UTF-8 with the given text. */
    static Source file(String name, String text) {
        return file(name, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Read files. */
    Reading.Rows read(Source... files) {
        return diary.store().read(view -> DayBook.readRows(List.of(files), Optional.empty(), view, Progress.NONE));
    }

    /** Read files as of a named source. */
    Reading.Rows readAs(String source, Source... files) {
        return diary.store().read(view -> DayBook.readRows(List.of(files), Optional.of(source), view, Progress.NONE));
    }

    /** Read one file, called {@code a.csv}, of the given lines. */
    Reading.Rows read(String... lines) {
        return read(file("a.csv", String.join("\n", lines) + "\n"));
    }

    /** Return what one file is refused for, a line for each fault. */
    List<String> faults(String... lines) {
        return faults(file("a.csv", String.join("\n", lines) + "\n"));
    }

    /** Return what files are refused for. */
    List<String> faults(Source... files) {
        try {
            read(files);
        } catch (Refused refused) {
            return refused.lines();
        }
        throw new AssertionError("not refused");
    }

    /** Read one file and write it into the book. */
    Receipt write(String... lines) {
        return read(lines).writeInto(diary.store(), diary.judge(), Progress.NONE);
    }

    /** Return what was proposed. */
    static List<Proposed> proposed(Reading.Rows rows) {
        return rows.proposal().items().stream().map(item -> item.proposed()).toList();
    }

    /** Return the entries that were proposed. */
    static List<Entry> entries(Reading.Rows rows) {
        return proposed(rows).stream().map(Proposed::entry).toList();
    }

    /** Return the texts of remarks. */
    static List<String> texts(List<Warning> warnings) {
        return warnings.stream().map(Warning::text).toList();
    }
}
