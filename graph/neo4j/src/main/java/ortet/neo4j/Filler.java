package ortet.neo4j;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.neo4j.driver.AccessMode;
import org.neo4j.driver.Session;
import org.neo4j.driver.Transaction;
import org.neo4j.driver.Values;
import org.neo4j.driver.exceptions.Neo4jException;
import ortet.book.Chain;
import ortet.book.Chained;
import ortet.book.Digest;
import ortet.book.EntrySource;
import ortet.book.Head;
import ortet.book.Judge;
import ortet.book.LoadSink;
import ortet.book.Loaded;
import ortet.book.Progress;
import ortet.book.UnitFacts;
import ortet.neo4j.Standing.Filling;
import ortet.plant.Person;
import ortet.value.Defect;
import ortet.value.OrtetException;
import ortet.value.Refused;
import ortet.value.Unavailable;

/**
 * Fills a whole book into an empty one, in many transactions of which nobody sees anything before the last.
 *
 * <p>The head of the book says who fills it in and when that was last heard of; as long as it does, nobody reads or
 * writes. What cannot be true is taken out again. Where the way to the server fails, what is there stays, and the same
 * book copied once more goes on from there.
 */
final class Filler {
    private static final Path SCRATCH = Path.of(System.getProperty("java.io.tmpdir"));
    private static final Duration BATCH = Duration.ofMinutes(10);
    private static final String KEPT = "n:Book OR n:Pen OR n:Schema OR n:Person";
    private static final int ENTRIES_AT_ONCE = 5000;
    private static final int UNITS_AT_ONCE = 1000;
    private static final int AHEAD = 4;
    private static final long LOOK_MILLIS = 200;
    private static final long SIGN_OF_LIFE_NANOS = TimeUnit.SECONDS.toNanos(10);

    private static final String TAKE =
            "MATCH (b:Book {one: 1})" + " SET b.filling = $me, b.filling_book = $book, b.filling_seen = datetime()";
    private static final String STILL =
            "MATCH (b:Book {one: 1}) WHERE b.filling = $me SET b.filling_seen = datetime() RETURN count(b)";
    private static final String LEAVE =
            "MATCH (b:Book {one: 1})" + " REMOVE b.filling, b.filling_book, b.filling_seen, b.filling_digest";
    private static final String STAGED = "MATCH (e:Entry) RETURN count(e)";
    private static final String STAGED_UNITS = "MATCH (u:Unit) WHERE u.nature IS NOT NULL RETURN max(u.unit)";
    private static final String STAGED_OF =
            "MATCH (b:Book {one: 1}) WHERE b.filling_digest IS NOT NULL RETURN b.filling_digest";

    private final Neo4jBookStore store;
    private final Server server;
    private final String me = UUID.randomUUID().toString();

    private final int entriesAtOnce;
    private final int unitsAtOnce;

    Filler(Neo4jBookStore store) {
        this(store, ENTRIES_AT_ONCE, UNITS_AT_ONCE);
    }

    /** Fill with so many entries, and then units, in one transaction. */
    Filler(Neo4jBookStore store, int entriesAtOnce, int unitsAtOnce) {
        this.store = store;
        this.server = store.server();
        this.entriesAtOnce = entriesAtOnce;
        this.unitsAtOnce = unitsAtOnce;
    }

    /** Return what to throw at whoever wants to look at a book that is being filled in. */
    static Unavailable underWay(Address address, Filling filling) {
        return new Unavailable(
                filling.isGivenUp()
                        ? "a whole book was being written into " + address + ", and that was broken off; do it again,"
                                + " or make an empty one with \"ortet book new\""
                        : "a whole book is being written into " + address + "; wait until that is done");
    }

    /** Empty a book of what was broken off before it was whole; tell whether that is how it was. */
    static boolean throwAwayWhatWasBrokenOff(Server server) {
        Optional<Filling> filling;
        try (Session session = server.session(AccessMode.READ);
                Transaction transaction = session.beginTransaction()) {
            filling = Standing.of(transaction).flatMap(Standing::filling);
        }
        if (filling.isEmpty()) {
            return false;
        }
        if (!filling.get().isGivenUp()) {
            throw underWay(server.address(), filling.get());
        }
        empty(server, "n:Book OR n:Pen OR n:Schema");
        return true;
    }

    /** Take out everything but some nodes. */
    private static void empty(Server server, String kept) {
        server.tell(session -> session.run(
                        "MATCH (n) WHERE NOT (" + kept + ") CALL (n) { DETACH DELETE n } IN TRANSACTIONS OF 5000 ROWS")
                .consume());
    }

    /**
     * What is there already of a book that was being filled in.
     *
     * @param entries how many entries
     * @param digest the digest of the last of them
     * @param unit the last unit whose facts are there
     * @param of the digest of the last entry of the book that those facts are of
     */
    private record Staged(long entries, Digest digest, int unit, Optional<Digest> of) {
        static final Staged NOTHING = new Staged(0, Chain.START, 0, Optional.empty());
    }

    /** Fill the book in. */
    Loaded fill(EntrySource source, Judge judge, Progress progress) {
        try {
            Optional<String> book =
                    source.identity().map(identity -> identity.book().toString());
            List<Person> known = new ArrayList<>();
            waitForWhoeverFillsIn(book, progress);
            Start start = store.underLock(BATCH, (transaction, view, standing) -> {
                known.clear();
                return start(transaction, view, standing, book, known);
            });
            return filled(source, judge, progress, start, known);
        } catch (Neo4jException trouble) {
            throw server.trouble(trouble);
        }
    }

    /** Wait until a copy of the same book is done, or nothing was heard of it for so long that it was broken off. */
    private void waitForWhoeverFillsIn(Optional<String> book, Progress progress) {
        long waited = 0;
        while (true) {
            Optional<Filling> other;
            try (Session session = server.session(AccessMode.READ);
                    Transaction transaction = session.beginTransaction()) {
                other = Standing.of(transaction).flatMap(Standing::filling);
            }
            boolean isWaitedFor = other.filter(
                            filling -> !filling.isGivenUp() && book.equals(Optional.of(filling.of())))
                    .isPresent();
            if (!isWaitedFor) {
                return;
            }
            progress.at("waiting for another copy", waited++, Filling.GIVEN_UP_SECONDS);
            try {
                TimeUnit.SECONDS.sleep(1);
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                throw new Unavailable("the work was stopped", stopped);
            }
        }
    }

    /**
     * How the book was found.
     *
     * @param head where it stood
     * @param brokenOff the book that somebody began to fill in, where that was broken off
     */
    private record Start(Head head, Optional<String> brokenOff) {}

    private Start start(
            Transaction transaction, Neo4jBookView view, Standing standing, Optional<String> book, List<Person> known) {
        Optional<Filling> other = standing.filling();
        if (other.filter(filling -> !filling.isGivenUp()).isPresent()) {
            throw underWay(server.address(), other.get());
        }
        known.addAll(view.persons());
        if (view.head().order() != 0 || book.isPresent() && !known.isEmpty()) {
            throw Neo4jBookStore.notEmpty(server.address());
        }
        transaction
                .run(TAKE, Values.parameters("me", me, "book", book.orElse("")))
                .consume();
        return new Start(view.head(), other.map(Filling::of));
    }

    private Loaded filled(EntrySource source, Judge judge, Progress progress, Start start, List<Person> known) {
        boolean isOver = false;
        try (Writer writer = new Writer(staged(start, source))) {
            Loaded loaded = judge.load(source, start.head(), known, writer, progress);
            writer.finish();
            end(loaded, writer.persons);
            isOver = true;
            return loaded;
        } catch (Neo4jException trouble) {
            isOver = Trouble.isSilence(trouble);
            throw trouble;
        } finally {
            if (!isOver) {
                giveUp();
            }
        }
    }

    /** Look what is there of the same book; throw away what is there of another. */
    private Staged staged(Start start, EntrySource source) {
        boolean isSame =
                source.identity().map(identity -> identity.book().toString()).equals(start.brokenOff());
        if (start.brokenOff().isEmpty() || !isSame) {
            if (start.brokenOff().isPresent()) {
                empty(server, KEPT);
            }
            return Staged.NOTHING;
        }
        long entries = server.number(STAGED).orElse(0L);
        Optional<String> digest =
                server.texts("MATCH (e:Entry {recorded_order: " + entries + "}) RETURN e.digest").stream()
                        .findFirst();
        return new Staged(
                entries,
                digest.map(Digest::new).orElse(Chain.START),
                server.number(STAGED_UNITS).orElse(0L).intValue(),
                server.texts(STAGED_OF).stream().findFirst().map(Digest::new));
    }

    /** Make all of it visible at once. */
    private void end(Loaded loaded, List<Person> persons) {
        store.underLock(BATCH, (transaction, view, standing) -> {
            requireMine(transaction);
            long written = transaction.run(STAGED).single().get(0).asLong();
            if (written != loaded.head().order()) {
                throw new Defect("the book is not as it was judged: " + written + " entries of "
                        + loaded.head().order());
            }
            Scribe scribe = new Scribe(transaction);
            scribe.persons(persons);
            scribe.head(loaded.head());
            transaction.run(LEAVE).consume();
            return written;
        });
    }

    private void requireMine(Transaction transaction) {
        long mine = transaction
                .run(STILL, Values.parameters("me", me))
                .single()
                .get(0)
                .asLong();
        if (mine == 0) {
            throw new Unavailable("somebody else took over writing a whole book into " + server.address()
                    + ", since nothing was heard of this one for too long");
        }
    }

    /** Take out what was written, as far as the server can be spoken with. */
    private void giveUp() {
        boolean interrupted = Thread.interrupted();
        try {
            store.underLock(BATCH, (transaction, view, standing) -> {
                requireMine(transaction);
                return 0;
            });
            empty(server, KEPT);
            store.underLock(BATCH, (transaction, view, standing) -> {
                requireMine(transaction);
                return transaction.run(LEAVE).consume();
            });
        } catch (OrtetException | Neo4jException | IllegalStateException away) {
            // What went wrong first is on its way to the user. What is left here is taken out by whoever comes next.
            return;
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }

    /** Writes on a thread of its own while the book is judged on another. */
    private final class Writer implements LoadSink, AutoCloseable {
        private final Staged staged;
        private final BlockingQueue<Consumer<Scribe>> queue = new ArrayBlockingQueue<>(AHEAD);
        private final Thread thread = new Thread(this::write, "writing");
        private List<Chained> entries = new ArrayList<>();
        private List<List<Object>> rows = new ArrayList<>();
        private List<UnitFacts> units = new ArrayList<>();
        private List<Person> persons = List.of();
        private Digest last = Chain.START;
        private int skipped;
        private boolean isTelling;
        private volatile boolean isOver;
        private volatile RuntimeException trouble;

        Writer(Staged staged) {
            this.staged = staged;
            thread.setDaemon(true);
            thread.start();
        }

        @Override
        public Path scratch() {
            return SCRATCH;
        }

        @Override
        public void entry(Chained chained, String fields) {
            long order = chained.recorded().order();
            last = chained.digest();
            if (order <= staged.entries()) {
                if (order == staged.entries() && !last.equals(staged.digest())) {
                    throw Refused.because(
                            "not-the-same",
                            "what was written into " + server.address() + " before it was broken off is of another"
                                    + " book; make an empty one with \"ortet book new\"");
                }
                return;
            }
            rows.add(Scribe.row(chained, fields));
            if (Scribe.target(chained.recorded().entry()).isPresent()) {
                entries.add(chained);
            }
            if (rows.size() == entriesAtOnce) {
                handEntries();
            }
        }

        private void handEntries() {
            List<List<Object>> some = rows;
            List<Chained> amending = entries;
            rows = new ArrayList<>();
            entries = new ArrayList<>();
            hand(scribe -> {
                scribe.entryRows(some);
                scribe.amendments(amending);
            });
        }

        @Override
        public void persons(List<Person> all) {
            persons = List.copyOf(all);
            handEntries();
        }

        @Override
        public void facts(UnitFacts facts) {
            if (!isTelling) {
                isTelling = true;
                beginFacts();
            }
            if (facts.unit().value() <= skipped) {
                return;
            }
            units.add(facts);
            if (units.size() == unitsAtOnce) {
                handUnits();
            }
        }

        /** Go on after the facts that are there, if they are of the same entries. */
        private void beginFacts() {
            Digest of = last;
            if (staged.of().equals(Optional.of(of))) {
                skipped = staged.unit();
                return;
            }
            if (staged.unit() > 0) {
                hand(scribe -> empty(server, KEPT + " OR n:Entry"));
            }
            hand(scribe -> scribe.fillingWith(of));
        }

        private void handUnits() {
            List<UnitFacts> some = units;
            units = new ArrayList<>();
            hand(scribe -> scribe.fresh(some));
        }

        private void hand(Consumer<Scribe> work) {
            try {
                while (!queue.offer(work, LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
                    check();
                }
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                throw new Unavailable(
                        "nothing was written into " + server.address() + ": the work was stopped", stopped);
            }
            check();
        }

        private void check() {
            if (trouble != null) {
                throw trouble;
            }
        }

        private void write() {
            try {
                long heard = System.nanoTime();
                while (true) {
                    Consumer<Scribe> work = queue.poll(LOOK_MILLIS, TimeUnit.MILLISECONDS);
                    if (work == null && isOver) {
                        return;
                    }
                    if (work != null || System.nanoTime() - heard > SIGN_OF_LIFE_NANOS) {
                        write(work == null ? scribe -> {} : work);
                        heard = System.nanoTime();
                    }
                }
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            } catch (RuntimeException found) {
                trouble = found;
            }
        }

        private void write(Consumer<Scribe> work) {
            try (Session session = server.session(AccessMode.WRITE);
                    Transaction transaction = session.beginTransaction(Server.within(BATCH))) {
                requireMine(transaction);
                work.accept(new Scribe(transaction));
                transaction.commit();
            }
        }

        /** Wait until all that was handed over is written. */
        void finish() {
            handUnits();
            close();
            check();
        }

        @Override
        public void close() {
            isOver = true;
            boolean interrupted = false;
            while (thread.isAlive()) {
                try {
                    thread.join();
                } catch (InterruptedException stopped) {
                    interrupted = true;
                }
            }
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
