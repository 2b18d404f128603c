package ortet.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.CanonicalText;
import ortet.book.EntrySource;
import ortet.book.Head;
import ortet.book.Judge;
import ortet.book.Limits;
import ortet.book.Loaded;
import ortet.book.Lookup;
import ortet.book.Parameters;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.book.QueryText;
import ortet.book.QueryText.Language;
import ortet.book.Receipt;
import ortet.book.Restoration;
import ortet.book.Rows;
import ortet.book.Ruling;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.sqlite.Session.Way;
import ortet.value.Defect;
import ortet.value.Refused;
import ortet.value.Unavailable;

/**
 * Keeps a book in one SQLite file.
 *
 * <p>Safe for use by several threads, and by several programs on one machine: each question is put on a connection of its
 * own and sees the book as it stood when it was put, while one writer at a time writes; whoever else wants to write
 * waits up to five seconds and is then told that the book is busy. A view is for the thread and the call that it was
 * handed to. One transaction covers one question, one proposal with the judge's ruling on it, one restoration, one
 * rebuilding, or one person. A proposal that was accepted is on the disk when {@code append} returns
 * ({@code synchronous=FULL}).
 *
 * <p>A thread that is interrupted stops at a question or a proposal that takes long; what it was about to write is not
 * written.
 *
 * <p>Whoever may read the file or its folder only, can read the book all the same, without leaving anything beside it. The
 * file must not lie on a network drive, whose locks SQLite cannot trust.
 */
public final class SqliteBookStore implements BookStore {
    private static final int BUSY_MILLIS = 5000;
    private static final int KEPT_OPEN = 4;

    private final BookFile file;
    private final int busyMillis;
    private final boolean writable;
    private final ReentrantLock writing = new ReentrantLock(true);
    private final Deque<Session> idle = new ArrayDeque<>();
    private boolean closed;

    private SqliteBookStore(BookFile file, int busyMillis) {
        this.file = file;
        this.busyMillis = busyMillis;
        file.check();
        this.writable = file.isWritable();
        giveBack(file.open());
    }

    /**
     * Open a book.
     *
     * @throws Refused when there is no such file
     * @throws Unavailable when it is no book, damaged, or of a newer program
     */
    public static SqliteBookStore open(Path path) {
        return open(path, Schema.CURRENT, BUSY_MILLIS);
    }

    /** Open a book with a schema, and with patience, of the test's own. */
    static SqliteBookStore open(Path path, Schema schema, int busyMillis) {
        return new SqliteBookStore(new BookFile(path, schema, busyMillis), busyMillis);
    }

    /**
     * Make a new book and open it.
     *
     * @param path the file, which must not be there yet
     * @param bookId the identity of the book
     * @param zone the time zone in which its days are days
     * @param clock tells when it was made
     * @throws Refused when there is something of that name, or no folder for it
     */
    public static SqliteBookStore create(Path path, UUID bookId, ZoneId zone, Clock clock) {
        new BookFile(path, Schema.CURRENT, BUSY_MILLIS)
                .create(bookId, zone.getId(), CanonicalText.INSTANT.format(clock.instant()));
        return open(path);
    }

    /** Return the file. */
    Path path() {
        return file.path();
    }

    @Override
    public <T> T read(Function<BookView, T> question) {
        Optional<BookFile.Stamp> before = writable ? Optional.empty() : Optional.of(file.stamp());
        Session session = borrow();
        try {
            T answer = read(session, question);
            if (session.way() == Way.IMMUTABLE && !before.equals(Optional.of(file.stamp()))) {
                throw new Unavailable("the book " + file.path() + " was written while it was read, try again");
            }
            return answer;
        } catch (SQLException trouble) {
            throw Trouble.with(file.path(), trouble);
        } finally {
            giveBack(session);
        }
    }

    private static <T> T read(Session session, Function<? super SqliteBookView, T> question) throws SQLException {
        session.run("BEGIN");
        try (SqliteBookView view = new SqliteBookView(session)) {
            return question.apply(view);
        } finally {
            session.abandon();
        }
    }

    @Override
    public Receipt append(Proposal proposal, Judge judge, Progress progress) {
        return append(view -> judge.rule(proposal, view, progress), progress);
    }

    /** Write what a judge rules who is shown the book under the writer's lock. */
    Receipt append(Function<BookView, Ruling> judge, Progress progress) {
        return write((session, view) -> {
            Head before = view.head();
            Ruling ruling = judge.apply(view);
            require(
                    ruling.head().order() == before.order() + ruling.entries().size()
                            && ruling.head().bookId().equals(before.bookId()),
                    "the ruling does not follow the book");
            new Scribe(session).write(ruling, before, progress);
            return ruling.receipt();
        });
    }

    /**
     * {@inheritDoc}
     *
     * <p>Where nobody else has the book open, it is written with a rollback journal, which notes only the few pages that
     * were there before: each page is then written once. Where somebody has, it goes through the write-ahead log as always.
     */
    @Override
    public Loaded load(EntrySource source, Judge judge, Progress progress) {
        requireWritable();
        lock();
        try {
            closeIdle();
            Session session = borrow();
            try {
                session.alone();
                session.run("BEGIN IMMEDIATE");
                return finish(session, (alone, view) -> load(alone, view, source, judge, progress));
            } catch (SQLException trouble) {
                throw Trouble.with(file.path(), trouble);
            } finally {
                close(session);
            }
        } finally {
            writing.unlock();
        }
    }

    private Loaded load(Session session, SqliteBookView view, EntrySource source, Judge judge, Progress progress)
            throws SQLException {
        Head before = view.head();
        if (before.order() != 0
                || source.identity().isPresent() && !view.persons().isEmpty()) {
            throw notEmpty();
        }
        Scribe scribe = new Scribe(session);
        scribe.beginLoad();
        Loaded loaded;
        List<Person> persons;
        List<Person> known = List.copyOf(view.persons());
        try (Loader loader = new Loader(file.path(), scribe)) {
            loaded = judge.load(source, before, known, loader, progress);
            loader.finish();
            persons = loader.persons();
        }
        if (source.identity().isPresent()) {
            scribe.become(loaded.head());
        }
        scribe.endLoad(persons, loaded.head(), progress);
        require(
                session.number("SELECT count(*) FROM entry") == loaded.head().order()
                        && session.number("SELECT max(recorded_order) FROM entry")
                                == loaded.head().order(),
                "the book is not as it was judged");
        return loaded;
    }

    private Refused notEmpty() {
        return Refused.because(
                "not-empty",
                "the book " + file.path() + " has entries already; another can be put into an empty one alone");
    }

    private void closeIdle() {
        Deque<Session> open;
        synchronized (idle) {
            open = new ArrayDeque<>(idle);
            idle.clear();
        }
        open.forEach(this::close);
    }

    @Override
    public Receipt restore(Restoration from, Judge judge, Progress progress) {
        return restore(view -> judge.restore(from, progress), progress);
    }

    /** Write what a judge rules into an empty book, which takes on the identity in the ruling. */
    Receipt restore(Function<BookView, Ruling> judge, Progress progress) {
        return write((session, view) -> {
            if (view.head().order() != 0 || !view.persons().isEmpty()) {
                throw notEmpty();
            }
            Ruling ruling = judge.apply(view);
            require(ruling.head().order() == ruling.entries().size(), "the ruling does not begin the book");
            Scribe scribe = new Scribe(session);
            scribe.become(ruling.head());
            scribe.write(ruling, view.head(), progress);
            return ruling.receipt();
        });
    }

    @Override
    public Receipt follow(List<Recorded> entries, Judge judge, Progress progress) {
        return append(view -> judge.follow(entries, view, progress), progress);
    }

    @Override
    public Language language() {
        return Language.SQL;
    }

    @Override
    public Rows ask(QueryText text, Parameters parameters, Limits limits) {
        Question question = Question.of(text);
        question.check(parameters.values().keySet());
        Session session = borrow();
        try (TimeLimit limit = new TimeLimit(limits.time())) {
            session.run("PRAGMA query_only = ON");
            try {
                return read(session, view -> view.ask(question, parameters, limits.rows()));
            } catch (Unavailable stopped) {
                throw limit.isOver()
                        ? new Unavailable(
                                text.file() + " took longer than "
                                        + limits.time().toSeconds() + " s and was stopped",
                                stopped)
                        : stopped;
            } finally {
                limit.lift();
                session.run("PRAGMA query_only = OFF");
            }
        } catch (SQLException trouble) {
            throw Trouble.with(file.path(), trouble);
        } finally {
            giveBack(session);
        }
    }

    @Override
    public void keep(Person person) {
        write((session, view) -> {
            Person known = view.person(person.number()).orElseThrow(() -> Lookup.noSuchPerson(view, person.number()));
            Optional<Person> other =
                    person.name().flatMap(view::person).filter(p -> !p.number().equals(known.number()));
            if (other.isPresent()) {
                throw Refused.because(
                        "person-in-use",
                        "there is a " + other.get().shown() + " already, "
                                + other.get().number());
            }
            session.run("PRAGMA secure_delete = ON");
            new Scribe(session).keep(person);
            session.run("PRAGMA secure_delete = OFF");
            return known;
        });
        // What was erased must not linger in the log beside the file.
        checkpoint("TRUNCATE");
    }

    @Override
    public void rebuild(Judge judge, Progress progress) {
        write((session, view) -> {
            Scribe scribe = new Scribe(session);
            Head kept = view.head();
            boolean[] begun = {false};
            Head anew = judge.retell(
                    view,
                    facts -> {
                        try {
                            if (!begun[0]) {
                                scribe.beginRewrite();
                                begun[0] = true;
                            }
                            scribe.load(facts);
                        } catch (SQLException trouble) {
                            throw Trouble.with(file.path(), trouble);
                        }
                    },
                    progress);
            if (!begun[0]) {
                scribe.beginRewrite();
            }
            require(anew.order() == kept.order(), "the entries are not those of the book");
            scribe.endRewrite(anew, progress);
            return anew;
        });
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new Defect(what);
        }
    }

    /** Return what SQLite finds wrong with the file, and which of its tables, indexes and triggers are not as made. */
    @Override
    public List<String> damage() {
        Session session = borrow();
        try {
            return file.damage(session);
        } finally {
            giveBack(session);
        }
    }

    @Override
    public void backup(Path to) {
        BookFile.publish(to, aside -> {
            Session session = borrow();
            try {
                session.copyInto(aside);
            } catch (SQLException trouble) {
                if (Trouble.isDamage(trouble)) {
                    throw Trouble.damaged(file.path(), trouble);
                }
                throw trouble;
            } finally {
                giveBack(session);
            }
        });
    }

    /** Something to do under the writer's lock. */
    @FunctionalInterface
    private interface Work<T> {
        T with(Session session, SqliteBookView view) throws SQLException;
    }

    private <T> T write(Work<T> work) {
        requireWritable();
        lock();
        try {
            Session session = borrow();
            try {
                session.run("BEGIN IMMEDIATE");
                return finish(session, work);
            } catch (SQLException trouble) {
                throw Trouble.with(file.path(), trouble);
            } finally {
                giveBack(session);
            }
        } finally {
            writing.unlock();
        }
    }

    private static <T> T finish(Session session, Work<T> work) throws SQLException {
        boolean done = false;
        try {
            T result;
            try (SqliteBookView view = new SqliteBookView(session)) {
                result = work.with(session, view);
            }
            session.run("COMMIT");
            done = true;
            return result;
        } finally {
            if (!done) {
                session.abandon();
            }
        }
    }

    private void requireWritable() {
        if (!writable) {
            throw Trouble.readOnly(file.path(), null);
        }
        if (writing.isHeldByCurrentThread()) {
            throw new Defect("a question put while a proposal is judged wants to write");
        }
    }

    private void lock() {
        try {
            if (!writing.tryLock(busyMillis, TimeUnit.MILLISECONDS)) {
                throw Trouble.busy(file.path(), null);
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new Unavailable("nothing was written into " + file.path() + ": the work was stopped", interrupted);
        }
    }

    private Session borrow() {
        synchronized (idle) {
            if (closed) {
                throw new Defect("the book " + file.path() + " was used after it was closed");
            }
            if (!idle.isEmpty()) {
                return idle.pop();
            }
        }
        return file.open();
    }

    private void giveBack(Session session) {
        synchronized (idle) {
            if (!closed && session.way() == Way.READ_WRITE && idle.size() < KEPT_OPEN) {
                idle.push(session);
                return;
            }
        }
        close(session);
    }

    /** Bring what is in the log into the file, as far as others let it. */
    private void checkpoint(String mode) {
        Session session = borrow();
        try {
            session.run("PRAGMA wal_checkpoint(" + mode + ")");
        } catch (SQLException trouble) {
            throw Trouble.with(file.path(), trouble);
        } finally {
            giveBack(session);
        }
    }

    private void close(Session session) {
        try {
            session.close();
        } catch (SQLException trouble) {
            throw Trouble.with(file.path(), trouble);
        }
    }

    /** Close the book; the last to close it brings the log into the file and removes it. */
    @Override
    public void close() {
        Deque<Session> open;
        synchronized (idle) {
            closed = true;
            open = new ArrayDeque<>(idle);
            idle.clear();
        }
        open.forEach(this::close);
    }
}
