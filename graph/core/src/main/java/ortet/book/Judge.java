package ortet.book;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.value.Refused;

/**
 * Rules on proposals: whether they can be true beside all that the book holds, and what follows from them.
 *
 * <p>Pure but for the clock: the same proposal on the same book gives the same ruling, so a store may ask again after a
 * transaction failed. Every store uses it, and none works facts out by itself. Safe for use by several threads.
 */
public final class Judge {
    private static final int WORTH_ANOTHER_THREAD = 5_000;

    private final Clock clock;

    /** Make a judge who reads the time from the clock. */
    public Judge(Clock clock) {
        this.clock = clock;
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

    private static Ruling anew(
            BookView empty, List<ortet.plant.Person> persons, List<Chained> chained, Progress progress) {
        Docket docket = new Docket(empty, Optional.empty());
        persons.forEach(docket::add);
        chained.forEach(entry -> docket.add(entry.recorded(), Optional.empty()));
        docket.judge(progress);
        return docket.ruling(chained, persons, 0);
    }

    /**
     * Tell what follows from the entries up to one, as if the book ended there: for each unit, by number, its facts and the
     * entry that began it, as amended by then.
     *
     * @param order the recorded order of the last entry that counts; what was recorded at one go with it counts too, since
     *     entries proposed together lean on each other in any order
     * @throws Refused when an entry cannot be true, which means that the book is damaged
     */
    public void retell(BookView view, long order, BiConsumer<UnitFacts, Entry> sink) {
        Head head = view.head();
        List<Recorded> known = new ArrayList<>();
        try (Stream<Chained> entries = view.since(0)) {
            Iterator<Chained> all = entries.iterator();
            boolean more = true;
            while (more && all.hasNext()) {
                Recorded next = all.next().recorded();
                more = next.order() <= order
                        || !known.isEmpty()
                                && next.recordedAt()
                                        .equals(known.get(known.size() - 1).recordedAt());
                if (more) {
                    known.add(next);
                }
            }
        }
        Docket docket =
                new Docket(new EmptyView(new Head(head.bookId(), head.zone(), 0, Chain.START, 0)), Optional.empty());
        view.persons().forEach(docket::add);
        known.forEach(entry -> docket.add(entry, Optional.empty()));
        docket.judge(Progress.NONE);
        docket.ruling(List.of(), List.of(), 0)
                .facts()
                .forEach(facts -> sink.accept(facts, docket.beginning(facts.unit())));
    }
}
