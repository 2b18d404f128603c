package ortet.book.mapping;

import java.util.List;
import java.util.function.Function;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.Judge;
import ortet.book.Progress;
import ortet.book.daybook.Persons;
import ortet.value.Warning;

/** What was read from spreadsheets, ready to be checked or written. */
public final class MappedReading {
    private final List<FileRows> files;
    private final List<Warning> remarks;
    private final Nursery nursery;
    private final Persons persons;

    MappedReading(List<FileRows> files, BookView book, List<Warning> remarks, Progress progress) {
        this.files = List.copyOf(files);
        this.remarks = List.copyOf(remarks);
        this.persons = new Persons(book.persons());
        this.nursery =
                new Nursery(files.stream().flatMap(file -> file.rows().stream()).toList(), book, progress);
    }

    List<FileRows> files() {
        return files;
    }

    /** Return what was remarked while reading. */
    List<Warning> remarks() {
        return remarks;
    }

    Nursery nursery() {
        return nursery;
    }

    Persons persons() {
        return persons;
    }

    /**
     * Have it judged without writing anything.
     *
     * @param takesWhatHolds whether the rows that hold would be written where others do not
     */
    public Imported check(BookView book, Judge judge, boolean takesWhatHolds, Progress progress) {
        return new Settlement(this, new OneView(book), judge, takesWhatHolds, progress)
                .settle(proposal -> judge.rule(proposal, book, progress).receipt());
    }

    private record OneView(BookView book) implements Settlement.Views {
        @Override
        public <T> T read(Function<BookView, T> question) {
            return question.apply(book);
        }
    }

    /**
     * Write it into the book: all of it or nothing, or the rows that hold.
     *
     * <p>A row is taken whole or not at all, and with a row that does not hold goes every row that rests on it.
     *
     * @param takesWhatHolds whether the rows that hold are written where others do not
     */
    public Imported writeInto(BookStore store, Judge judge, boolean takesWhatHolds, Progress progress) {
        return new Settlement(this, store::read, judge, takesWhatHolds, progress)
                .settle(proposal -> store.append(proposal, judge, progress));
    }
}
