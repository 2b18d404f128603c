package ortet.book;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.stream.Stream;
import ortet.entry.EntryId;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.value.Refused;
import ortet.value.Warning;

/**
 * Rules on proposals: whether they can be true beside all that the book holds, and what follows from them.
 *
 * <p>Pure but for the clock: the same proposal on the same book gives the same ruling, so a store may ask again after a
 * transaction failed. Every store uses it, and none works facts out by itself. Safe for use by several threads.
 */
public final class Judge {
    private static final int WORTH_ANOTHER_THREAD = 5_000;
    private static final int SHOWN_EVERY = 10_000;
    private static final Path SCRATCH = Path.of(System.getProperty("java.io.tmpdir"));

    private final Clock clock;
    private final Pile.Room room;

    /** Make a judge who reads the time from the clock. */
    public Judge(Clock clock) {
        this(clock, Pile.Room.USUAL);
    }

    Judge(Clock clock, Pile.Room room) {
        this.clock = clock;
        this.room = room;
    }

    /** Return today in a book's time zone. */
    public LocalDate today(Head head) {
        return LocalDate.ofInstant(clock.instant(), head.zone());
    }

    /**
     * Rule on a proposal.
     *
     * <p>An entry whose identity is in the book with the same words adds nothing, so that a proposal can be repeated
     * without harm.
     *
     * @throws Refused with everything that cannot be true
     */
    public Ruling rule(Proposal proposal, BookView view, Progress progress) {
        Head head = view.head();
        Docket docket = new Docket(view, Optional.of(today(head)));
        proposal.persons().forEach(docket::add);
        Instant instant = clock.instant();
        Map<EntryId, Recorded> seen = new HashMap<>();
        List<Recorded> recorded = new ArrayList<>(proposal.items().size());
        long order = head.order();
        int alreadyThere = 0;
        int done = 0;
        for (Proposal.Item item : proposal.items()) {
            Proposed proposed = item.proposed();
            Optional<Recorded> before =
                    Optional.ofNullable(seen.get(proposed.id())).or(() -> view.entry(proposed.id()));
            if (before.isPresent()) {
                if (before.get().proposed().equals(proposed)) {
                    alreadyThere++;
                } else {
                    docket.conflict(proposed, before.get(), item.where());
                }
                continue;
            }
            Recorded fresh = new Recorded(++order, instant, proposed);
            seen.put(proposed.id(), fresh);
            recorded.add(fresh);
            docket.add(fresh, item.where());
            if (++done % 10_000 == 0) {
                progress.at("taking in", done, proposal.items().size());
            }
        }
        CompletableFuture<List<Chained>> chained = chaining(head.digest(), recorded);
        docket.judge(progress);
        return docket.ruling(chained.join(), proposal.persons(), alreadyThere);
    }

    /** Chain the entries: beside the judging where there are many, since neither needs the other. */
    private static CompletableFuture<List<Chained>> chaining(Digest last, List<Recorded> recorded) {
        return recorded.size() < WORTH_ANOTHER_THREAD
                ? CompletableFuture.completedFuture(chain(last, recorded))
                : CompletableFuture.supplyAsync(() -> chain(last, recorded));
    }

    private static List<Chained> chain(Digest last, List<Recorded> recorded) {
        Chain chain = new Chain(last);
        return recorded.stream().map(chain::add).toList();
    }

    /**
     * Take in a whole book, rule on it, and hand it to a store on the way.
     *
     * <p>Needs little memory beside the store's, however large the book is. What the store was handed counts only when this
     * returns.
     *
     * @param empty where the book stands: an identity and a zone, without entries
     * @param known persons whom the book has already
     * @throws Refused with everything that cannot be read or cannot be true
     */
    public Loaded load(EntrySource source, Head empty, Collection<Person> known, LoadSink sink, Progress progress) {
        boolean isNew = source.identity().isEmpty();
        try (Ledger ledger = new Ledger(
                sink.scratch(),
                room,
                clock.instant(),
                isNew ? Optional.of(today(empty)) : Optional.empty(),
                sink::entry)) {
            source.read(ledger, progress);
            List<Person> fresh = source.persons();
            sink.persons(fresh);
            List<Person> persons = new ArrayList<>(known);
            persons.addAll(fresh);
            ledger.persons(persons);
            ledger.judge(sink::facts, progress);
            ledger.refuse();
            EntrySource.Identity identity =
                    source.identity().orElse(new EntrySource.Identity(empty.bookId(), empty.zone()));
            Head head = new Head(identity.book(), identity.zone(), ledger.size(), ledger.digest(), ledger.lastUnit());
            List<Warning> warnings = new ArrayList<>(source.remarks());
            warnings.addAll(ledger.warnings());
            return new Loaded(head, ledger.size(), fresh.size(), source.repeated(), ledger.lastUnit(), warnings);
        }
    }

    /**
     * Rule on a whole book without writing it.
     *
     * @param empty the book that it would be taken into
     * @throws Refused with everything that cannot be read or cannot be true
     */
    public Loaded check(EntrySource source, BookView empty, Progress progress) {
        return load(source, empty.head(), empty.persons(), new Unwritten(), progress);
    }

    /** Writes nothing. */
    private static final class Unwritten implements LoadSink {
        @Override
        public Path scratch() {
            return SCRATCH;
        }

        @Override
        public void entry(Chained chained, String fields) {}

        @Override
        public void persons(List<Person> persons) {}

        @Override
        public void facts(UnitFacts facts) {}
    }

    /**
     * Work out the facts of every unit anew from all entries of a book, and hand them over by unit number.
     *
     * @return where the book stands by its entries
     * @throws Refused when an entry cannot be true, which means that the book is damaged
     */
    public Head retell(BookView view, Consumer<UnitFacts> taker, Progress progress) {
        try (Stream<Chained> entries = view.since(0)) {
            return retell(entries.map(Chained::recorded), view.head(), view.persons(), taker, progress);
        }
    }

    /**
     * Work out the facts of every unit anew from entries that were judged before, and hand them over by unit number, when
     * all entries are read.
     *
     * @param entries in recorded order, from 1; all of a book's, or those up to some moment
     * @param of the book that they are from
     * @param persons every person of the book
     * @return where a book of these entries stands
     * @throws Refused when an entry cannot be true, which means that the book is damaged
     */
    public Head retell(
            Stream<Recorded> entries,
            Head of,
            Collection<Person> persons,
            Consumer<UnitFacts> taker,
            Progress progress) {
        try (Ledger ledger = new Ledger(SCRATCH, room, Instant.EPOCH, Optional.empty(), (chained, fields) -> {})) {
            long[] done = {0};
            entries.forEach(recorded -> {
                ledger.take(recorded, Optional.empty());
                if (++done[0] % SHOWN_EVERY == 0) {
                    progress.at("reading entries", done[0], of.order());
                }
            });
            ledger.persons(List.copyOf(persons));
            ledger.judge(taker::accept, progress);
            ledger.refuse();
            return new Head(of.bookId(), of.zone(), ledger.size(), ledger.digest(), ledger.lastUnit());
        }
    }

    /**
     * Rule on a whole book taken out of another store, which keeps its orders, instants and digests.
     *
     * @throws Refused when the chain does not end on the digest given, or an entry cannot be true
     */
    public Ruling restore(Restoration restoration, Progress progress) {
        Head empty = new Head(restoration.bookId(), restoration.zone(), 0, Chain.START, 0);
        List<Chained> chained = chain(Chain.START, restoration.entries());
        long expected = 0;
        for (Chained entry : chained) {
            if (entry.recorded().order() != ++expected) {
                throw Refused.because(
                        "broken-chain",
                        "expected recorded order " + expected + ", found "
                                + entry.recorded().order());
            }
        }
        Digest last = chained.isEmpty()
                ? Chain.START
                : chained.get(chained.size() - 1).digest();
        if (!last.equals(restoration.digest())) {
            throw Refused.because(
                    "broken-chain",
                    "the entries are not as they were written: their chain of digests ends on " + last.brief()
                            + ", expected " + restoration.digest().brief());
        }
        return anew(new EmptyView(empty), restoration.persons(), chained, progress);
    }

    /**
     * Rule on entries that follow those of a book in another copy of it, and keep their orders, instants and digests.
     *
     * @throws Refused when they do not follow, or cannot be true
     */
    public Ruling follow(List<Recorded> entries, BookView view, Progress progress) {
        Head head = view.head();
        long expected = head.order();
        for (Recorded entry : entries) {
            if (entry.order() != ++expected) {
                throw Refused.because(
                        "broken-chain", "expected recorded order " + expected + ", found " + entry.order());
            }
        }
        Docket docket = new Docket(view, Optional.empty());
        entries.forEach(entry -> docket.add(entry, Optional.empty()));
        docket.judge(progress);
        return docket.ruling(chain(head.digest(), entries), List.of(), 0);
    }

    /**
     * Work out the facts of every unit anew from all entries of a book.
     *
     * @throws Refused when an entry cannot be true, which means that the book is damaged
     */
    public Ruling rebuild(BookView view, Progress progress) {
        Head head = view.head();
        Head empty = new Head(head.bookId(), head.zone(), 0, Chain.START, 0);
        List<Chained> chained;
        try (Stream<Chained> entries = view.since(0)) {
            chained = entries.toList();
        }
        return anew(new EmptyView(empty), List.copyOf(view.persons()), chained, progress);
    }

    private static Ruling anew(BookView empty, List<Person> persons, List<Chained> chained, Progress progress) {
        Docket docket = new Docket(empty, Optional.empty());
        persons.forEach(docket::add);
        chained.forEach(entry -> docket.add(entry.recorded(), Optional.empty()));
        docket.judge(progress);
        return docket.ruling(chained, persons, 0);
    }
}
