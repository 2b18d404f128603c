package ortet.neo4j;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Stream;
import org.neo4j.driver.AccessMode;
import org.neo4j.driver.Session;
import org.neo4j.driver.Transaction;
import org.neo4j.driver.Values;
import org.neo4j.driver.exceptions.ClientException;
import org.neo4j.driver.exceptions.Neo4jException;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.CanonicalText;
import ortet.book.Chained;
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
import ortet.book.UnitFacts;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.value.Defect;
import ortet.value.Refused;
import ortet.value.Unavailable;

/**
 * Keeps a book in a database of its own on a Neo4j server.
 *
 * <p>Safe for use by several threads, and by any number of programs at once. Whoever writes locks the book's head node, so
 * that one after another judges and writes; whoever waits longer than the server lets a transaction last is told that the
 * book is busy. Whoever reads waits for nobody: where somebody wrote meanwhile, the question is put again, and after
 * several times under the writer's lock. One transaction covers one question, one proposal with the judge's ruling on it,
 * one restoration, or one person; a whole book is filled in by many, and nobody sees any of it before the last. Rebuilding
 * takes many as well, each of which leaves a whole book.
 *
 * <p>A proposal whose answer was lost on the way is put again, and found written where it was: by its entries'
 * identities it is there once.
 */
public final class Neo4jBookStore implements BookStore {
    private static final Duration QUESTION = Duration.ofMinutes(30);
    private static final Duration PROPOSAL = Duration.ofSeconds(60);
    private static final Duration WHOLE_BOOK = Duration.ofHours(6);
    private static final int MANY = 1000;
    private static final int ASKED_AGAIN = 4;
    private static final long PATIENCE_MILLIS = 10_000;
    private static final long PAUSE_MILLIS = 20;
    private static final long LONGEST_PAUSE_MILLIS = 500;

    private static final String LOCK = "MATCH (b:Book {one: 1}) SET b.turn = coalesce(b.turn, 0) + 1";
    private static final String ANNOUNCE = "MATCH (p:Pen {one: 1}) SET p.announced = $number";
    private static final String WRITTEN = "MATCH (p:Pen {one: 1}) WHERE p.written < $number SET p.written = $number";
    private static final String BEGIN = "CREATE (b:Book {one: 1, id: $id, zone: $zone, created: $created,"
            + " recorded_order: 0, last_unit: 0}) CREATE (p:Pen {one: 1, announced: 0, written: 0})";

    private final Server server;
    private final ThreadLocal<Boolean> writing = ThreadLocal.withInitial(() -> false);

    private Neo4jBookStore(Server server) {
        this.server = server;
    }

    /**
     * Open a book.
     *
     * @throws Unavailable when the server is away, does not take the credentials, is too old, or has no book there, or one
     *     of a newer program
     */
    public static Neo4jBookStore open(Address address, Credentials credentials) {
        return ready(Server.reach(address, credentials), server -> {
            int version = Schema.version(server);
            Schema.requireKnown(address, version);
            if (version == 0) {
                throw new Unavailable("there is no book in " + address + "; make one with \"ortet book new\"");
            }
            if (version < Schema.CURRENT) {
                Schema.bringUp(server);
            }
        });
    }

    /** Open a book, or make a new one where there is none yet. */
    public static Neo4jBookStore openOrCreate(
            Address address, Credentials credentials, UUID bookId, ZoneId zone, Clock clock) {
        boolean isThere;
        try (Server server = Server.reach(address, credentials)) {
            isThere = server.number("MATCH (b:Book) RETURN count(b)").orElse(0L) > 0;
        }
        return isThere ? open(address, credentials) : create(address, credentials, bookId, zone, clock);
    }

    /**
     * Make a new book and open it.
     *
     * @param bookId the identity of the book
     * @param zone the time zone in which its days are days
     * @param clock tells when it was made
     * @throws Refused when there is one already, or something else is in the database
     */
    public static Neo4jBookStore create(
            Address address, Credentials credentials, UUID bookId, ZoneId zone, Clock clock) {
        return ready(Server.reach(address, credentials), server -> {
            int version = Schema.version(server);
            Schema.requireKnown(address, version);
            boolean isThere = server.number("MATCH (b:Book) RETURN count(b)").orElse(0L) > 0;
            if (isThere && !Filler.throwAwayWhatWasBrokenOff(server)) {
                throw Refused.because("book-there", "there is a book in " + address + " already");
            }
            if (!isThere
                    && server.number("MATCH (n) WHERE NOT n:Schema RETURN count(n)")
                                    .orElse(0L)
                            > 0) {
                throw Refused.because(
                        "not-empty", "something else is in " + address + "; a book needs a database of its own");
            }
            Schema.bringUp(server);
            if (isThere) {
                server.tell(session ->
                        session.run("MATCH (n) WHERE n:Book OR n:Pen DELETE n").consume());
            }
            server.tell(session -> session.run(
                            BEGIN,
                            Values.parameters(
                                    "id",
                                    bookId.toString(),
                                    "zone",
                                    zone.getId(),
                                    "created",
                                    CanonicalText.INSTANT.format(clock.instant())))
                    .consume());
        });
    }

    /** Something to do before a server is used. */
    @FunctionalInterface
    private interface Preparation {
        void with(Server server);
    }

    private static Neo4jBookStore ready(Server server, Preparation preparation) {
        boolean isReady = false;
        try {
            preparation.with(server);
            isReady = true;
            return new Neo4jBookStore(server);
        } finally {
            if (!isReady) {
                server.close();
            }
        }
    }

    /** Return where the book is. */
    public Address address() {
        return server.address();
    }

    /** Return the way to the server. */
    Server server() {
        return server;
    }

    /** Waits between tries, a little longer each time, and knows when to stop. */
    private static final class Patience {
        private final long until = System.nanoTime() + PATIENCE_MILLIS * 1_000_000;
        private long pause = PAUSE_MILLIS;

        boolean isLeft() {
            return System.nanoTime() < until;
        }

        void pause() {
            try {
                Thread.sleep(pause / 2 + (long) (Math.random() * pause));
                pause = Math.min(2 * pause, LONGEST_PAUSE_MILLIS);
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                throw new Unavailable("the work was stopped", stopped);
            }
        }
    }

    @Override
    public <T> T read(Function<BookView, T> question) {
        return ask(QUESTION, question::apply);
    }

    /** Something to ask a view of this store. */
    @FunctionalInterface
    interface Inquiry<T> {
        T of(Neo4jBookView view);
    }

    /** Put a question that may take some time, again where somebody wrote meanwhile. */
    private <T> T ask(Duration within, Inquiry<T> question) {
        if (writing.get()) {
            throw new Defect("a question was put to the store while a proposal is judged; put it to the view");
        }
        Patience patience = new Patience();
        int asked = 0;
        while (patience.isLeft() && asked < ASKED_AGAIN) {
            try (Session session = server.session(AccessMode.READ);
                    Transaction transaction = session.beginTransaction(Server.within(within))) {
                Standing before = standing(transaction);
                requireWhole(before);
                if (before.isQuiet()) {
                    asked++;
                    Optional<Answer<T>> answer = answer(question, transaction, before);
                    if (answer.isPresent()) {
                        return answer.get().value();
                    }
                    continue;
                }
            } catch (Neo4jException trouble) {
                if (!Trouble.isPassing(trouble) || Trouble.isSilence(trouble) || !patience.isLeft()) {
                    throw server.trouble(trouble);
                }
            }
            patience.pause();
        }
        return askAlone(question);
    }

    /** An answer, which may be null. */
    private record Answer<T>(T value) {}

    /** Return the answer to a question; empty when somebody wrote meanwhile. */
    private <T> Optional<Answer<T>> answer(Inquiry<T> question, Transaction transaction, Standing before) {
        Neo4jBookView view = new Neo4jBookView(transaction, before.head());
        try {
            T answer = question.of(view);
            return !view.leansOnFacts() || standing(transaction).isSameAs(before)
                    ? Optional.of(new Answer<>(answer))
                    : Optional.empty();
        } catch (Neo4jException trouble) {
            throw trouble;
        } catch (RuntimeException failed) {
            if (view.leansOnFacts() && isTorn(transaction, before)) {
                return Optional.empty();
            }
            throw plain(failed);
        } finally {
            view.close();
        }
    }

    /** Tell whether somebody wrote meanwhile, where the transaction can still tell. */
    private boolean isTorn(Transaction transaction, Standing before) {
        try {
            return !standing(transaction).isSameAs(before);
        } catch (Neo4jException over) {
            // The server ended the transaction: what failed was no torn view.
            return false;
        }
    }

    private RuntimeException plain(RuntimeException failed) {
        return failed instanceof Neo4jBookView.Nonsense ? Trouble.damaged(server.address(), failed) : failed;
    }

    /** Put a question under the writer's lock. */
    private <T> T askAlone(Inquiry<T> question) {
        return locked(PROPOSAL, (transaction, view, standing) -> {
            if (!standing.isQuiet()) {
                mark(WRITTEN, standing.announced());
            }
            return new Written<>(question.of(view), false);
        });
    }

    private Standing standing(Transaction transaction) {
        return Standing.of(transaction)
                .orElseThrow(() -> new Unavailable(
                        "there is no book in " + server.address() + "; make one with \"ortet book new\""));
    }

    private void requireWhole(Standing standing) {
        standing.filling().ifPresent(filling -> {
            throw Filler.underWay(server.address(), filling);
        });
    }

    /** Something to do under the writer's lock. */
    @FunctionalInterface
    private interface Work<T> {
        Written<T> with(Transaction transaction, Neo4jBookView view, Standing standing);
    }

    /**
     * What came of a work.
     *
     * @param value what to hand out
     * @param isAny whether anything was written
     */
    private record Written<T>(T value, boolean isAny) {}

    /** Do something under the writer's lock, again where the way to the server failed. */
    private <T> T locked(Duration within, Work<T> work) {
        if (writing.get()) {
            throw new Defect("a question put while a proposal is judged wants to write");
        }
        Patience patience = new Patience();
        writing.set(true);
        try {
            while (true) {
                try {
                    return once(within, work, true);
                } catch (Neo4jException trouble) {
                    if (!Trouble.isPassing(trouble) || !patience.isLeft()) {
                        throw server.trouble(trouble);
                    }
                }
                patience.pause();
            }
        } finally {
            writing.set(false);
        }
    }

    private <T> T once(Duration within, Work<T> work, boolean isWhole) {
        try (Session session = server.session(AccessMode.WRITE);
                Transaction transaction = session.beginTransaction(Server.within(within))) {
            transaction.run(LOCK).consume();
            Standing standing = standing(transaction);
            if (isWhole) {
                requireWhole(standing);
            }
            Neo4jBookView view = new Neo4jBookView(transaction, standing.head());
            Written<T> done;
            try {
                done = work.with(transaction, view, standing);
            } catch (Neo4jBookView.Nonsense nonsense) {
                throw plain(nonsense);
            } finally {
                view.close();
            }
            if (done.isAny()) {
                long number = Math.max(standing.announced(), standing.written()) + 1;
                mark(ANNOUNCE, number);
                transaction.commit();
                mark(WRITTEN, number);
            }
            return done.value();
        }
    }

    /** Write a number into the pen, in a transaction of its own. */
    private void mark(String how, long number) {
        try (Session session = server.session(AccessMode.WRITE)) {
            session.run(how, Values.parameters("number", number)).consume();
        }
    }

    @Override
    public Receipt append(Proposal proposal, Judge judge, Progress progress) {
        AtomicReference<Ruling> last = new AtomicReference<>();
        return locked(proposal.items().size() > MANY ? WHOLE_BOOK : PROPOSAL, (transaction, view, standing) -> {
            Ruling before = last.get();
            if (before != null && isThere(before, view)) {
                return new Written<>(before.receipt(), false);
            }
            Ruling ruling = judge.rule(proposal, view, progress);
            require(
                    ruling.head().order()
                                    == view.head().order() + ruling.entries().size()
                            && ruling.head().bookId().equals(view.head().bookId()),
                    "the ruling does not follow the book");
            boolean isAny = !ruling.entries().isEmpty() || !ruling.persons().isEmpty();
            if (isAny) {
                new Scribe(transaction).write(ruling, view, progress);
            }
            last.set(ruling);
            return new Written<>(ruling.receipt(), isAny);
        });
    }

    /** Tell whether a ruling was written although nobody said so. */
    private static boolean isThere(Ruling ruling, Neo4jBookView view) {
        if (ruling.entries().isEmpty()) {
            return false;
        }
        Chained first = ruling.entries().get(0);
        return view.entry(first.recorded().order())
                .filter(first.recorded()::equals)
                .isPresent();
    }

    @Override
    public Receipt restore(Restoration from, Judge judge, Progress progress) {
        return locked(WHOLE_BOOK, (transaction, view, standing) -> {
            if (view.head().order() != 0 || !view.persons().isEmpty()) {
                throw notEmpty(server.address());
            }
            Ruling ruling = judge.restore(from, progress);
            require(ruling.head().order() == ruling.entries().size(), "the ruling does not begin the book");
            new Scribe(transaction).write(ruling, view, progress);
            return new Written<>(ruling.receipt(), true);
        });
    }

    static Refused notEmpty(Address address) {
        return Refused.because(
                "not-empty",
                "the book " + address + " has entries already; another can be put into an empty one alone");
    }

    @Override
    public Receipt follow(List<Recorded> entries, Judge judge, Progress progress) {
        return locked(WHOLE_BOOK, (transaction, view, standing) -> {
            Recorded last = entries.get(entries.size() - 1);
            if (view.entry(last.order()).equals(Optional.of(last))) {
                // The answer to the try before was lost on the way.
                return new Written<>(new Receipt(view.head(), entries, 0, 0, List.of()), false);
            }
            Ruling ruling = judge.follow(entries, view, progress);
            new Scribe(transaction).write(ruling, view, progress);
            return new Written<>(ruling.receipt(), true);
        });
    }

    @Override
    public boolean isHalfFilled() {
        try (Session session = server.session(AccessMode.READ);
                Transaction transaction = session.beginTransaction()) {
            return standing(transaction).filling().isPresent();
        } catch (Neo4jException trouble) {
            throw server.trouble(trouble);
        }
    }

    @Override
    public Language language() {
        return Language.CYPHER;
    }

    @Override
    public Rows ask(QueryText text, Parameters parameters, Limits limits) {
        Question question = new Question(text);
        return ask(limits.time(), view -> {
            try {
                return view.ask(question, parameters, limits.rows());
            } catch (ClientException wrong) {
                if (wrong.code().contains("TransactionTimedOut")) {
                    throw new Unavailable(
                            text.file() + " took longer than " + limits.time().toSeconds() + " s and was stopped",
                            wrong);
                }
                throw text.isOurs() ? wrong : text.wrong("cannot be put: " + Trouble.first(wrong));
            }
        });
    }

    @Override
    public Loaded load(EntrySource source, Judge judge, Progress progress) {
        return new Filler(this).fill(source, judge, progress);
    }

    @Override
    public void keep(Person person) {
        locked(PROPOSAL, (transaction, view, standing) -> {
            Person known = view.person(person.number()).orElseThrow(() -> Lookup.noSuchPerson(view, person.number()));
            Optional<Person> other =
                    person.name().flatMap(view::person).filter(p -> !p.number().equals(known.number()));
            if (other.isPresent()) {
                throw Refused.because(
                        "person-in-use",
                        "there is a " + other.get().shown() + " already, "
                                + other.get().number());
            }
            new Scribe(transaction).keep(person);
            return new Written<>(known, true);
        });
    }

    /**
     * {@inheritDoc}
     *
     * <p>Nobody else writes meanwhile. It is written in many transactions, each of which leaves a whole book: what is
     * derived does not change by being worked out anew, unless it was damaged.
     */
    @Override
    public void rebuild(Judge judge, Progress progress) {
        locked(WHOLE_BOOK, (transaction, view, standing) -> {
            BitSet told = new BitSet();
            List<UnitFacts> some = new ArrayList<>();
            long[] pen = {Math.max(standing.announced(), standing.written())};
            Head anew = judge.retell(
                    view,
                    facts -> {
                        told.set(facts.unit().value());
                        some.add(facts);
                        if (some.size() == Scribe.AT_ONCE) {
                            rewrite(some, List.of(), ++pen[0]);
                        }
                    },
                    progress);
            require(anew.order() == view.head().order(), "the entries are not those of the book");
            List<Integer> gone =
                    transaction
                            .run("MATCH (u:Unit) RETURN u.unit")
                            .list(row -> row.get(0).asInt())
                            .stream()
                            .filter(unit -> !told.get(unit))
                            .toList();
            rewrite(some, gone, ++pen[0]);
            reamend(view, ++pen[0]);
            transaction
                    .run("MATCH (b:Book {one: 1}) SET b.last_unit = $last", Values.parameters("last", anew.lastUnit()))
                    .consume();
            mark(ANNOUNCE, ++pen[0]);
            transaction.commit();
            mark(WRITTEN, pen[0]);
            return new Written<>(anew, false);
        });
    }

    private void rewrite(List<UnitFacts> some, List<Integer> gone, long pen) {
        apart(pen, scribe -> {
            scribe.vanish(gone);
            if (!some.isEmpty()) {
                scribe.anew(some);
            }
        });
        some.clear();
    }

    private void reamend(Neo4jBookView view, long pen) {
        apart(pen, scribe -> {
            scribe.forgetAmendments();
            try (Stream<Chained> entries = view.since(0)) {
                scribe.amendments(entries.filter(
                                entry -> Scribe.target(entry.recorded().entry()).isPresent())
                        .toList());
            }
        });
    }

    /** Write in a transaction of its own while another holds the writer's lock. */
    private void apart(long pen, Consumer<Scribe> work) {
        try (Session session = server.session(AccessMode.WRITE);
                Transaction transaction = session.beginTransaction(Server.within(WHOLE_BOOK))) {
            work.accept(new Scribe(transaction));
            mark(ANNOUNCE, pen);
            transaction.commit();
            mark(WRITTEN, pen);
        }
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new Defect(what);
        }
    }

    /** Return which constraints and indexes are missing. */
    @Override
    public List<String> damage() {
        return Schema.missing(server).stream()
                .map(name -> "the constraint or index " + name + " is missing")
                .toList();
    }

    /** Refuse: a server has its own tools for that, and a copy in a file is made by copying the book. */
    @Override
    public void backup(Path to) {
        throw Refused.because(
                "no-file",
                "a book on a server has no file to copy; use the server's own tools, or \"ortet book copy "
                        + server.address() + " " + to + "\"");
    }

    /** Fill in a part of what nobody sees yet, or end it. */
    <T> T underLock(Duration within, Stage<T> stage) {
        return once(
                within,
                (transaction, view, standing) -> new Written<>(stage.with(transaction, view, standing), true),
                false);
    }

    /** Something to do under the writer's lock where the book may be half filled in. */
    @FunctionalInterface
    interface Stage<T> {
        T with(Transaction transaction, Neo4jBookView view, Standing standing);
    }

    @Override
    public void close() {
        server.close();
    }
}
