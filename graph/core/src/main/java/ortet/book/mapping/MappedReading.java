package ortet.book.mapping;

import java.util.List;
import java.util.function.Function;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.Judge;
import ortet.book.Loaded;
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
        return new Settlement(this, new Checking(book, judge, progress), takesWhatHolds, progress).settle();
    }

    /**
     * Write it into the book: all of it or nothing, or the rows that hold.
     *
     * <p>A row is taken whole or not at all, and with a row that does not hold goes every row that rests on it.
     *
     * @param takesWhatHolds whether the rows that hold are written where others do not
     */
    public Imported writeInto(BookStore store, Judge judge, boolean takesWhatHolds, Progress progress) {
        return new Settlement(this, new Writing(store, judge, progress), takesWhatHolds, progress).settle();
    }

    /** Has entries judged beside a view of a book. */
    private record Checking(BookView book, Judge judge, Progress progress) implements Settlement.Desk {
        @Override
        public <T> T read(Function<BookView, T> question) {
            return question.apply(book);
        }

        @Override
        public Loaded check(ToldEntries entries) {
            if (book.head().order() == 0) {
                return judge.check(entries, book, progress);
            }
            return judge.rule(entries.proposal(), book, progress)
                    .receipt()
                    .loaded(entries.persons().size());
        }

        @Override
        public Loaded write(ToldEntries entries) {
            return check(entries);
        }
    }

    /** Writes entries into a book; those of a book that has none go in without being kept in memory. */
    private record Writing(BookStore store, Judge judge, Progress progress) implements Settlement.Desk {
        @Override
        public <T> T read(Function<BookView, T> question) {
            return store.read(question);
        }

        @Override
        public Loaded check(ToldEntries entries) {
            return store.read(view -> new Checking(view, judge, progress).check(entries));
        }

        @Override
        public Loaded write(ToldEntries entries) {
            boolean isFresh = store.read(view -> view.head().order() == 0);
            return isFresh
                    ? store.load(entries, judge, progress)
                    : store.append(entries.proposal(), judge, progress)
                            .loaded(entries.persons().size());
        }
    }
}
