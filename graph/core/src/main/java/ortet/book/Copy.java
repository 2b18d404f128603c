package ortet.book;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.value.Refused;

/**
 * Copies a book from one store into another, which must be empty or hold a beginning of the same book.
 *
 * <p>Every entry keeps its order, instant and digest, crossed-out ones and amendments too. An empty book is filled in at
 * one go, all or nothing. Into a beginning, the rest goes in steps that each end where entries recorded at one go end, so
 * that the copy is at every moment a book that once was; when it is broken off, it is simply done again. At the end the
 * copy is read through, and its chain of digests worked out anew.
 */
public final class Copy {
    private static final int STEP = 2_000;
    private static final int SHOWN_EVERY = 10_000;

    private final BookStore from;
    private final BookStore into;
    private final Judge judge;
    private final Progress progress;

    private Copy(BookStore from, BookStore into, Judge judge, Progress progress) {
        this.from = from;
        this.into = into;
        this.judge = judge;
        this.progress = progress;
    }

    /**
     * What came of it.
     *
     * @param head where both books stand
     * @param already how many entries were in the copy before
     * @param persons how many persons were added or had their particulars changed
     */
    public record Copied(Head head, long already, int persons) {}

    /**
     * Copy a book.
     *
     * @throws Refused when the other book is neither empty nor a beginning of this one, or what was copied is not the same
     */
    public static Copied of(BookStore from, BookStore into, Judge judge, Progress progress) {
        return new Copy(from, into, judge, progress).run();
    }

    private Copied run() {
        if (into.isHalfFilled()) {
            return fill();
        }
        Head theirs = into.read(BookView::head);
        if (theirs.order() == 0) {
            return fill();
        }
        Head ours = from.read(BookView::head);
        requireBeginning(ours, theirs);
        int persons = persons();
        follow(theirs);
        Head head = from.read(BookView::head);
        return verified(head, theirs.order(), persons);
    }

    private Copied fill() {
        Source source = new Source(from.read(BookView::head));
        Loaded loaded = into.load(source, judge, progress);
        return verified(loaded.head(), 0, loaded.persons());
    }

    private void requireBeginning(Head ours, Head theirs) {
        if (!ours.bookId().equals(theirs.bookId())) {
            throw Refused.because("another-book", "the other book is not empty, and it is another book than this one");
        }
        if (theirs.order() > ours.order()) {
            throw Refused.because(
                    "not-a-beginning",
                    "the other book has " + theirs.order() + " entries, this one only " + ours.order()
                            + "; copy the other way round");
        }
        Optional<Digest> same = from.read(view -> {
            try (Stream<Chained> entries = view.since(theirs.order() - 1)) {
                return entries.findFirst().map(Chained::digest);
            }
        });
        if (!same.equals(Optional.of(theirs.digest()))) {
            throw Refused.because(
                    "not-a-beginning",
                    "the other book went its own way: its entry " + theirs.order()
                            + " is not the one that this book has; neither was changed");
        }
    }

    /** Make the persons of the copy those of the book. */
    private int persons() {
        Map<PersonNumber, Person> known =
                into.read(BookView::persons).stream().collect(Collectors.toMap(Person::number, Function.identity()));
        List<Person> fresh = new ArrayList<>();
        List<Person> changed = new ArrayList<>();
        for (Person person : from.read(BookView::persons)) {
            Person there = known.get(person.number());
            if (there == null) {
                fresh.add(person);
            } else if (!there.equals(person)) {
                changed.add(person);
            }
        }
        // First whoever gives a name up, so that another may take it.
        changed.stream().filter(person -> person.name().isEmpty()).forEach(into::keep);
        changed.stream().filter(person -> person.name().isPresent()).forEach(into::keep);
        if (!fresh.isEmpty()) {
            into.append(new Proposal(List.of(), fresh), judge);
        }
        return fresh.size() + changed.size();
    }

    private void follow(Head theirs) {
        long total = from.read(BookView::head).order();
        long at = theirs.order();
        while (at < total) {
            long after = at;
            List<Recorded> step = from.read(view -> step(view, after));
            if (step.isEmpty()) {
                return;
            }
            into.follow(step, judge, Progress.NONE);
            at += step.size();
            progress.at("copying entries", at, total);
        }
    }

    /** Return the entries after one, up to a change of the instant at which they were recorded. */
    private static List<Recorded> step(BookView view, long after) {
        List<Recorded> step = new ArrayList<>();
        Instant last = Instant.MIN;
        try (Stream<Chained> entries = view.since(after)) {
            for (Chained chained : (Iterable<Chained>) entries::iterator) {
                Instant instant = chained.recorded().recordedAt();
                if (step.size() >= STEP && !instant.equals(last)) {
                    break;
                }
                step.add(chained.recorded());
                last = instant;
            }
        }
        return step;
    }

    /** Read the copy through, and compare where it ends. */
    private Copied verified(Head head, long already, int persons) {
        Head found = into.read(view -> {
            Chain chain = new Chain(Chain.START);
            long count = 0;
            Digest last = Chain.START;
            try (Stream<Chained> entries = view.since(0)) {
                for (Chained chained : (Iterable<Chained>) entries::iterator) {
                    Chained anew = chain.add(chained.recorded());
                    if (!anew.equals(chained) || chained.recorded().order() != ++count) {
                        throw Refused.because("not-the-same", "the copy is not the same: entry " + count + " differs");
                    }
                    last = anew.digest();
                    if (count % SHOWN_EVERY == 0) {
                        progress.at("reading it through", count, head.order());
                    }
                }
            }
            return new Head(
                    view.head().bookId(),
                    view.head().zone(),
                    count,
                    last,
                    view.head().lastUnit());
        });
        if (!found.equals(head)) {
            throw Refused.because(
                    "not-the-same",
                    "the copy is not the same: it has " + found.order() + " entries and ends on "
                            + found.digest().brief() + ", the book has " + head.order() + " and ends on "
                            + head.digest().brief());
        }
        return new Copied(head, already, persons);
    }

    /** Hands over every entry of the book. */
    private final class Source implements EntrySource {
        private final Head head;

        Source(Head head) {
            this.head = head;
        }

        @Override
        public void read(Intake intake, Progress shown) {
            from.read(view -> {
                try (Stream<Chained> entries = view.since(0)) {
                    for (Chained chained : (Iterable<Chained>) entries::iterator) {
                        if (chained.recorded().order() > head.order()) {
                            break;
                        }
                        intake.take(chained.recorded(), Optional.empty());
                        if (!intake.digest().equals(chained.digest())) {
                            throw Refused.because(
                                    "broken-chain",
                                    "entry " + chained.recorded().order()
                                            + " of the book is not as it was written; nothing was copied");
                        }
                        if (intake.size() % SHOWN_EVERY == 0) {
                            shown.at("copying entries", intake.size(), head.order());
                        }
                    }
                }
                return intake.size();
            });
        }

        @Override
        public List<Person> persons() {
            Collection<Person> persons = from.read(BookView::persons);
            return List.copyOf(persons);
        }

        @Override
        public Optional<Identity> identity() {
            return Optional.of(new Identity(head.bookId(), head.zone()));
        }
    }
}
