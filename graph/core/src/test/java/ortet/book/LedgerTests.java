package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Warning;
import ortet.value.Where;

/** A whole book judged at one go, in little memory, is judged as a proposal is. */
class LedgerTests {
    /** So little room that every page, entry and story is put away and fetched again. */
    private static final Pile.Room NARROW = new Pile.Room(300, 1, 2, 2);

    private static Path scratch;

    @BeforeContainer
    static void make() throws IOException {
        scratch = Files.createTempDirectory("ledger");
    }

    @AfterContainer
    static void remove() throws IOException {
        try (Stream<Path> left = Files.list(scratch)) {
            assertEquals(List.of(), left.toList());
        }
        Files.delete(scratch);
    }

    private static Judge judge() {
        return new Judge(Clock.fixed(Instant.parse("2026-06-15T12:00:00Z"), ZoneOffset.UTC), NARROW);
    }

    /** Keeps what it is handed. */
    private static final class Kept implements LoadSink {
        private final List<Chained> entries = new ArrayList<>();
        private final Map<Integer, UnitFacts> facts = new TreeMap<>();

        @Override
        public Path scratch() {
            return scratch;
        }

        @Override
        public void entry(Chained chained, String fields) {
            assertEquals(CanonicalText.fields(chained.recorded().entry()), fields);
            entries.add(chained);
        }

        @Override
        public void persons(List<Person> persons) {
            assertTrue(persons.isEmpty());
        }

        @Override
        public void facts(UnitFacts unit) {
            facts.put(unit.unit().value(), unit);
        }
    }

    private static EntrySource source(Proposal proposal) {
        return new EntrySource() {
            @Override
            public void read(Intake intake, Progress progress) {
                proposal.items()
                        .forEach(item ->
                                intake.take(item.proposed(), item.where().orElseThrow()));
            }

            @Override
            public List<Person> persons() {
                return List.of();
            }
        };
    }

    @Property(tries = 200)
    void factsToldAnewEqualThoseWorkedOutEntryByEntry(
            @ForAll int seed, @ForAll @IntRange(min = 5, max = 120) int lines) {
        MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
        RebuildTests.writeRandomHistory(new Diary(store), seed, lines);
        Map<Integer, UnitFacts> told = new TreeMap<>();
        List<Recorded> entries =
                store.read(view -> view.since(0).map(Chained::recorded).toList());
        Head head = store.read(BookView::head);
        Head again = judge().retell(
                        entries.stream(),
                        head,
                        List.of(),
                        facts -> assertEquals(null, told.put(facts.unit().value(), facts)),
                        Progress.NONE);
        assertEquals(new TreeMap<>(store.factsByUnit()), told);
        assertEquals(head, again);
    }

    @Property(tries = 300)
    void wholeBookIsJudgedAsAProposalIs(@ForAll int seed, @ForAll @IntRange(min = 1, max = 60) int lines) {
        Diary diary = new Diary(new MemoryBookStore(ZoneId.of("Europe/Dublin")));
        List<String> taken = new ArrayList<>();
        int[] stray = {0};
        Histories.write(seed, lines, line -> {
            boolean good;
            try {
                diary.write(line);
                good = true;
            } catch (Refused refused) {
                good = false;
            }
            if (good || ++stray[0] % 12 == 0) {
                taken.add(line);
            }
            return good;
        });
        Diary reader = new Diary();
        List<Proposal.Item> items = new ArrayList<>();
        for (String line : taken) {
            Where where = new Where(items.size() % 2 == 0 ? "a.csv" : "b.csv", items.size() + 2, Optional.empty());
            Optional<Proposal> read = read(reader, line);
            read.ifPresent(some ->
                    some.items().forEach(item -> items.add(new Proposal.Item(item.proposed(), Optional.of(where)))));
        }
        Proposal proposal = new Proposal(items, List.of());
        Head empty = new Head(new java.util.UUID(1, 2), ZoneId.of("Europe/Dublin"), 0, Chain.START, 0);
        Kept kept = new Kept();
        Ruling ruling;
        try {
            ruling = judge().rule(proposal, new EmptyView(empty), Progress.NONE);
        } catch (Refused refused) {
            Refused again = org.junit.jupiter.api.Assertions.assertThrows(
                    Refused.class, () -> judge().load(source(proposal), empty, List.of(), kept, Progress.NONE));
            assertEquals(told(refused), told(again));
            return;
        }
        Loaded loaded = judge().load(source(proposal), empty, List.of(), kept, Progress.NONE);
        assertEquals(ruling.head(), loaded.head());
        assertEquals(ruling.entries(), kept.entries);
        assertEquals(ruling.facts(), List.copyOf(kept.facts.values()));
        assertEquals(ruling.begun(), loaded.begun());
        assertEquals(new TreeSet<>(texts(ruling.warnings())), new TreeSet<>(texts(loaded.warnings())));
        assertFalse(kept.facts.isEmpty() && loaded.begun() > 0);
    }

    /** Return a line as an entry; some that no history takes are none. */
    private static Optional<Proposal> read(Diary reader, String line) {
        try {
            return Optional.of(reader.proposal(line));
        } catch (Refused none) {
            return Optional.empty();
        }
    }

    /** Return the faults; where a tag is given twice, it is no fault of either whose layer is then on whom. */
    private static List<String> told(Refused refused) {
        boolean isGivenTwice =
                refused.faults().stream().anyMatch(fault -> fault.rule().equals("tag-in-use"));
        return refused.faults().stream()
                .filter(fault -> !isGivenTwice || !fault.rule().equals("layers-on"))
                .map(Fault::line)
                .sorted()
                .toList();
    }

    private static List<String> texts(List<Warning> warnings) {
        return warnings.stream().map(Warning::toString).toList();
    }
}
