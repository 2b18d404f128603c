package ortet.book.daybook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import ortet.book.BookView;
import ortet.book.Books;
import ortet.book.Chain;
import ortet.book.Chained;
import ortet.book.Diary;
import ortet.book.Digest;
import ortet.book.ForwardingView;
import ortet.book.Head;
import ortet.book.Histories;
import ortet.book.MemoryBookStore;
import ortet.book.Progress;
import ortet.book.Receipt;
import ortet.book.Restoration;
import ortet.entry.EntryKind;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.value.Refused;

class RoundTripTests {
    private static final ZoneId ZONE = ZoneId.of("Europe/Dublin");

    /** A book that holds any entries, true or not. */
    private static final class AnyBook extends ForwardingView {
        private final List<Chained> entries;
        private final List<Person> persons;
        private final Head head;

        AnyBook(BookView empty, List<Proposed> proposed, List<Person> persons) {
            super(empty);
            Chain chain = new Chain(Chain.START);
            List<Chained> chained = new ArrayList<>();
            for (Proposed each : proposed) {
                int order = chained.size() + 1;
                Instant instant = Instant.parse("2026-06-15T12:00:00.007Z").plusMillis(order / 3 * 977);
                chained.add(chain.add(new Recorded(order, instant, each)));
            }
            Digest last = chained.isEmpty()
                    ? Chain.START
                    : chained.get(chained.size() - 1).digest();
            this.entries = chained;
            this.persons = persons;
            this.head = new Head(UUID.randomUUID(), ZONE, chained.size(), last, 0);
        }

        @Override
        public Head head() {
            return head;
        }

        @Override
        public Collection<Person> persons() {
            return persons;
        }

        @Override
        public Stream<Chained> since(long order) {
            return entries.stream().filter(entry -> entry.recorded().order() > order);
        }
    }

    private static Person person(int number, String name, String particulars) {
        return new Person(
                new PersonNumber(number),
                Optional.of(name).filter(text -> !text.isBlank()),
                Role.values()[number % Role.values().length],
                Optional.of(particulars).filter(text -> !text.isBlank()));
    }

    @Property(tries = 150, edgeCases = EdgeCasesMode.NONE)
    void readsEveryEntryAsItWasWritten(@ForAll("entries") List<Proposed> proposed, @ForAll("particulars") String odd) {
        List<Person> persons = List.of(person(1, "=Una", odd), person(2, "", ""), person(3, "'Bertil'", odd));
        try (MemoryBookStore empty = new MemoryBookStore(ZoneOffset.UTC)) {
            empty.read(view -> {
                AnyBook book = new AnyBook(view, proposed, persons);
                Exports.inFolder(folder -> {
                    Path export = folder.resolve("out");
                    assertEquals(new Exported(export, book.head(), 3), DayBook.export(book, export, Progress.NONE));
                    Restoration whole = ((Reading.WholeBook) Exports.read(export, empty)).restoration();
                    assertEquals(book.entries.stream().map(Chained::recorded).toList(), whole.entries());
                    assertEquals(persons, whole.persons());
                    assertEquals(book.head().bookId(), whole.bookId());
                    assertEquals(ZONE, whole.zone());
                    assertEquals(book.head().digest(), whole.digest());
                    Reading.Rows rows = (Reading.Rows) DayBook.read(
                            List.of(export.resolve("day-book.csv")), Optional.empty(), view, Progress.NONE);
                    assertEquals(proposed, Desk.proposed(rows));
                });
                return true;
            });
        }
    }

    @Provide
    Arbitrary<List<Proposed>> entries() {
        return Entries.any().list().ofMaxSize(12);
    }

    @Provide
    Arbitrary<String> particulars() {
        return Arbitraries.of("", "+353 1 555 0100", "1, Quay Street\nSallowfield", "\"quoted\"", "-", "'tis", "楓 😀");
    }

    @Test
    void meetsEveryKind() {
        Set<EntryKind> kinds = Entries.any()
                .sampleStream()
                .limit(3000)
                .map(proposed -> proposed.entry().kind())
                .collect(Collectors.toSet());
        assertEquals(Set.of(EntryKind.values()), kinds);
    }

    @Property(tries = 40)
    void givesAnEqualBook(@ForAll int seed, @ForAll @IntRange(min = 1, max = 80) int lines) {
        Diary diary = new Diary();
        diary.person(1, "Una Thornfield", Role.STAFF);
        diary.person(2, "Bertil", Role.CUSTOMER);
        diary.store().keep(new Person(new PersonNumber(2), Optional.empty(), Role.CUSTOMER, Optional.empty()));
        Histories.write(seed, lines, line -> isTaken(diary, line + "; by=#1"));
        try (MemoryBookStore copy = new MemoryBookStore(ZoneOffset.UTC)) {
            Exports.inFolder(folder -> {
                Exports.write(diary.store(), folder.resolve("out"));
                Reading reading = Exports.read(folder.resolve("out"), copy);
                Receipt receipt = reading.writeInto(copy, diary.judge(), Progress.NONE);
                assertEquals(reading.entries(), receipt.written().size());
                Books.assertSame(diary.store(), copy);
                assertEquals(
                        diary.store().<UUID>read(view -> view.head().bookId()),
                        copy.<UUID>read(view -> view.head().bookId()));
                Exports.write(copy, folder.resolve("again"));
                for (String name : Exports.names(folder.resolve("out"))) {
                    assertEquals(content(folder.resolve("out"), name), content(folder.resolve("again"), name));
                }
            });
        }
    }

    @Property(tries = 20)
    void addsNothingToTheBookThatItCameFrom(@ForAll int seed, @ForAll @IntRange(min = 1, max = 60) int lines) {
        Diary diary = new Diary();
        diary.person(1, "Una Thornfield", Role.STAFF);
        Histories.write(seed, lines, line -> isTaken(diary, line + "; by=#1"));
        Exports.inFolder(folder -> {
            Exports.write(diary.store(), folder.resolve("out"));
            Head before = diary.store().read(BookView::head);
            Reading reading = Exports.read(folder.resolve("out"), diary.store());
            Receipt receipt = reading.writeInto(diary.store(), diary.judge(), Progress.NONE);
            assertEquals(before, diary.store().read(BookView::head));
            assertEquals(before.order(), receipt.alreadyThere());
            assertEquals(List.of(), receipt.warnings());
        });
    }

    @Property(tries = 20)
    void givesTheSameEntriesReadAsRowsIntoAnotherBook(
            @ForAll int seed, @ForAll @IntRange(min = 1, max = 60) int lines) {
        Diary diary = new Diary();
        diary.person(1, "Una Thornfield", Role.STAFF);
        Histories.write(seed, lines, line -> isTaken(diary, line + "; by=#1"));
        Diary other = new Diary();
        other.person(1, "Orla Dew", Role.STAFF);
        other.write("2014-01-01 acquired Z-1");
        Exports.inFolder(folder -> {
            Exports.write(diary.store(), folder.resolve("out"));
            Reading reading = Exports.read(folder.resolve("out"), other.store());
            reading.writeInto(other.store(), other.judge(), Progress.NONE);
            List<Proposed> theirs = Books.whole(other.store()).entries().stream()
                    .skip(1)
                    .map(Recorded::proposed)
                    .toList();
            List<Proposed> expected = Books.whole(diary.store()).entries().stream()
                    .map(recorded -> new Proposed(
                            recorded.proposed().id(),
                            recorded.proposed().day(),
                            recorded.proposed().by().map(by -> new PersonNumber(2)),
                            recorded.entry()))
                    .toList();
            assertEquals(expected, theirs);
            Head before = other.store().read(BookView::head);
            Exports.read(folder.resolve("out"), other.store()).writeInto(other.store(), other.judge(), Progress.NONE);
            assertEquals(before, other.store().read(BookView::head));
        });
    }

    private static boolean isTaken(Diary diary, String line) {
        try {
            diary.write(line);
            return true;
        } catch (Refused refused) {
            return false;
        }
    }

    private static String content(Path folder, String name) {
        try {
            return Files.readString(folder.resolve(name));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
