package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.Person;
import ortet.plant.Person.Role;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

/** What every store promises. A store is tested by implementing this interface. */
public interface BookStoreContract {

    /**
     * Return a new, empty book; whoever implements this closes it after the test. The one returned before may be gone then:
     * a server can have room for one.
     */
    BookStore emptyStore();

    /** Return a second way into the same book, as another program would have it. */
    BookStore again(BookStore store);

    /** Return a copy of the book that was made by {@link BookStore#backup}; empty when the store has no file to copy. */
    Optional<BookStore> backup(BookStore store);

    /** Tell whether somebody can write while a question is being answered. */
    boolean writesWhileReading();

    /** Lines with every kind of entry, which can all be true. */
    static List<String> everyKind() {
        return List.of(
                "2015-01-02 cultivar-listed; cultivar=Acer palmatum 'Deshojo'; make_up=clonal; synonyms=Chishio",
                "2015-01-02 place-listed; place=House 1; premises=Home",
                "2015-01-02 cost-listed; task=layer-set; hours=0.2; amount=0.125 EUR",
                "2015 price-listed; size=M; cultivar=Acer palmatum; price=45.00 EUR",
                "2015-03 acquired K-1 K-2; cultivar=Acer palmatum 'Deshojo'; supplier=#3; by=#1; place=House 1",
                "2015-03-05 acquired R-1; count=40; cultivar=Acer palmatum",
                "2016 acquired K-3",
                "2016-02-01 kept-as-stock K-1",
                "2016-03-01 left-long K-1",
                "2018-05-01 layer-set J-1..J-4; mother=K-1; stem_mm=12.5; ring_mm=13; wound=full-ring; hormone=IBA;"
                        + " strength=3000ppm; carrier=powder; hedged=no; by=#1; note=quoted \"x\" and \\ and a\ttab",
                "2018-06-20 checked J-1 J-2; findings=callus:1",
                "2018-06-21 reworked J-2; rework=re-wrapped",
                "2018-08-30 severed J-1 J-2; roots=full; container=2 L; place=House 1",
                "2018-08-31 failed J-3; cause=dried",
                "2018-06-01 cuttings-struck T-1; mothers=K-1:30 K-2; count=60; wood=semi-ripe; heat_c=21.5",
                "2018-09-01 taken T-1; count=10",
                "2018-09-10 drawn C-1 C-2; source=T-1; container=9 cm",
                "2018-09-11 split T-2; source=T-1; count=12",
                "2018-06-01 cuttings-struck T-3; mothers=K-2; count=20",
                "2018-09-12 merged T-4; sources=T-2 T-3",
                "2018-10-01 counted T-4; count=30; reason=told wrong",
                "2018-11-01 closed T-4; rest=failed; cause=damped-off",
                "2019-02-01 graft-worked G-1 G-2; scion=K-2; stock=R-1; graft=side-veneer",
                "2019-05-01 failed G-2; cause=union-failed",
                "2019-03-01 seed-sown S-1; count=100; seed_parent=K-1; pollen_parent=K-3",
                "2019-03-02 divided D-1; mother=K-3; remainder=kept",
                "2019-04-01 sport-found X-1; mother=K-2; branch=north",
                "2019-04-02 retagged C-1; new_tag=C-100",
                "2019-04-03 redetermined K-3; cultivar=Acer palmatum 'Katsura'",
                "2019-05-01 potted J-1; container=5 L; purpose=pot-on",
                "2019-06-01 planted-out J-2; place=Field 3",
                "2020-03-01 lifted J-2; container=10 L",
                "2020-03-02 moved J-1 C-2; place=House 2",
                "2020-03-03 measured J-1; stem_mm=22; height_mm=410; positions=8-12:5 12-20:3",
                "2020-03-04 seen J-4",
                "2020-03-05 cut-back K-2",
                "2020-03-06 held K-3; sign=spots",
                "2020-03-20 cleared K-3",
                "2020-03-21 graded J-1 J-2; size=M; grade=A",
                "2020-03-22 reserved J-1; customer=#2; price=120.00 EUR",
                "2020-03-23 released J-1; from=reservation",
                "2020-03-24 noted K-1; note=bark split, see photograph",
                "2020-04-01 sold J-1; customer=#2; price=125.50 EUR; passport=IE-1234",
                "2020-04-09 returned J-1; customer=#2; reason=too small",
                "2020-05-01 culled J-2; cull=quality",
                "2020-05-02 lost C-2; cause=frost",
                "2020-05-03 found-untagged F-1; candidates=C-100 D-1",
                "oops: 2020-06-01 seen K-1",
                "wrong: 2020-06-02 moved K-2; place=House 9",
                "2020-06-03 crossed-out; target=oops; reason=written on the wrong line",
                "2020-06-03 corrected; target=wrong; field=place; value=House 3; reason=misread");
    }

    /** Write every kind of entry, one proposal for each line, and return the diary. */
    default Diary storyWithEveryKind() {
        Diary diary = new Diary(emptyStore());
        diary.person(1, "Máire", Role.STAFF);
        diary.person(2, "Trees of the West", Role.CUSTOMER);
        diary.person(3, "Lough Nursery", Role.SUPPLIER);
        everyKind().forEach(diary::write);
        return diary;
    }

    private static Diary withMothers(BookStore store) {
        Diary diary = new Diary(store);
        diary.write("2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'", "2015-03-01 acquired K-2");
        return diary;
    }

    private static Head head(BookStore store) {
        return store.read(BookView::head);
    }

    @Test
    default void emptyBookHoldsNothing() {
        BookStore store = emptyStore();
        store.read(view -> {
            assertEquals(0, view.head().order());
            assertEquals(Chain.START, view.head().digest());
            assertEquals(0, view.head().lastUnit());
            assertEquals(Optional.empty(), view.unit(new Tag("K-1")));
            assertEquals(Optional.empty(), view.alikeButForCase(new Tag("K-1")));
            assertEquals(List.of(), view.nearest(new Tag("K-1")));
            assertEquals(List.of(), view.tags(new UnitNumber(1)));
            assertEquals(Optional.empty(), view.entry(EntryId.random()));
            assertEquals(Optional.empty(), view.entry(1));
            assertEquals(List.of(), view.amendments(1));
            assertEquals(List.of(), view.entries(new UnitNumber(1)));
            assertEquals(Optional.empty(), view.facts(new UnitNumber(1)));
            assertEquals(List.of(), view.offspring(new UnitNumber(1), EnumSet.allOf(Act.class)));
            assertEquals(List.of(), view.listings());
            assertEquals(List.of(), view.tariff());
            assertTrue(view.persons().isEmpty());
            assertEquals(Optional.empty(), view.person("Máire"));
            assertEquals(0, view.since(0).count());
            return null;
        });
    }

    @Test
    default void givesEntriesTheirOrderWithoutGaps() {
        Diary diary = withMothers(emptyStore());
        Receipt receipt = diary.write("2020-05-01 seen K-1", "2020-05-02 seen K-2", "2019-05-01 seen K-2");
        assertEquals(
                List.of(3L, 4L, 5L),
                receipt.written().stream().map(Recorded::order).toList());
        assertEquals(5, receipt.head().order());
        assertEquals(receipt.head(), head(diary.store()));
        List<Long> orders = diary.store().read(view -> {
            try (Stream<Chained> entries = view.since(2)) {
                return entries.map(entry -> entry.recorded().order()).toList();
            }
        });
        assertEquals(List.of(3L, 4L, 5L), orders);
    }

    @Test
    default void readsBackEveryKindAsItWasWritten() {
        Diary diary = new Diary(emptyStore());
        diary.person(1, "Máire", Role.STAFF);
        diary.person(2, "Trees of the West", Role.CUSTOMER);
        diary.person(3, "Lough Nursery", Role.SUPPLIER);
        Set<EntryKind> kinds = EnumSet.noneOf(EntryKind.class);
        for (String line : everyKind()) {
            Proposal proposal = diary.proposal(line);
            diary.store().append(proposal, diary.judge());
            Proposed proposed = proposal.items().get(0).proposed();
            kinds.add(proposed.entry().kind());
            Recorded recorded =
                    diary.store().read(view -> view.entry(proposed.id()).orElseThrow());
            assertEquals(proposed, recorded.proposed());
            assertEquals(Optional.of(recorded), diary.store().read(view -> view.entry(recorded.order())));
        }
        assertEquals(EnumSet.allOf(EntryKind.class), kinds);
        Books.assertChained(diary.store());
    }

    @Test
    default void holdsWhatTheJudgeWorkedOut() {
        Diary diary = storyWithEveryKind();
        MemoryBookStore memory = new MemoryBookStore(head(diary.store()).zone());
        memory.restore(Books.whole(diary.store()), diary.judge(), Progress.NONE);
        Books.assertSame(memory, diary.store());
    }

    @Test
    default void appendsAllOrNothing() {
        Diary diary = withMothers(emptyStore());
        Map<String, Object> before = Books.everything(diary.store());
        Proposal good = diary.proposal("2020-05-01 layer-set J-1; mother=K-1", "2020-05-02 cut-back K-2");
        Proposal bad = diary.proposal("2020-05-01 seen NOBODY-9");
        List<Proposal.Item> items = new ArrayList<>(good.items());
        items.addAll(bad.items());
        Person person = new Person(new PersonNumber(7), Optional.of("Seán"), Role.STAFF, Optional.empty());
        assertThrows(Refused.class, () -> diary.store().append(new Proposal(items, List.of(person)), diary.judge()));
        Books.assertSame(before, Books.everything(diary.store()));
        Receipt receipt = diary.store().append(new Proposal(good.items(), List.of(person)), diary.judge());
        assertEquals(2, receipt.written().size());
        assertEquals(1, receipt.begun());
        assertEquals(List.of(person), List.copyOf(diary.store().read(BookView::persons)));
    }

    @Test
    default void writesAnEntryOnceHoweverOftenItIsProposed() {
        Diary diary = withMothers(emptyStore());
        Proposal proposal = diary.proposal("2020-05-01 layer-set J-1; mother=K-1", "2020-05-02 cut-back K-2");
        diary.store().append(proposal, diary.judge());
        Map<String, Object> before = Books.everything(diary.store());
        Receipt again = diary.store().append(proposal, diary.judge());
        assertEquals(2, again.alreadyThere());
        assertEquals(List.of(), again.written());
        Books.assertSame(before, Books.everything(diary.store()));
    }

    @Test
    default void refusesAnEntryThatIsThereWithOtherWords() {
        Diary diary = withMothers(emptyStore());
        Proposed first =
                diary.proposal("2020-05-02 cut-back K-2").items().get(0).proposed();
        diary.store().append(Proposal.of(first), diary.judge());
        Map<String, Object> before = Books.everything(diary.store());
        Proposed other = new Proposed(
                first.id(),
                first.day(),
                first.by(),
                diary.proposal("2020-05-02 cut-back K-1")
                        .items()
                        .get(0)
                        .proposed()
                        .entry());
        Refused refused = assertThrows(Refused.class, () -> diary.store().append(Proposal.of(other), diary.judge()));
        assertEquals("changed-row", refused.faults().get(0).rule());
        Books.assertSame(before, Books.everything(diary.store()));
    }

    @Test
    default void keepsACrossedOutEntryReadable() {
        Diary diary = withMothers(emptyStore());
        diary.write("a: 2020-05-01 layer-set J-1; mother=K-1; note=north side");
        diary.write("2020-05-02 crossed-out; target=a; reason=another tree");
        diary.store().read(view -> {
            Recorded old = view.entry(diary.id("a")).orElseThrow();
            assertEquals(
                    "north side",
                    view.entry(diary.id("a"))
                            .map(recorded -> ((ortet.entry.LayerSet) recorded.entry())
                                    .note()
                                    .orElseThrow())
                            .orElseThrow());
            List<Recorded> amendments = view.amendments(old.order());
            assertEquals(1, amendments.size());
            assertTrue(amendments.get(0).entry() instanceof CrossedOut);
            assertEquals(Optional.empty(), view.unit(new Tag("J-1")));
            assertTrue(view.entries(view.unit(new Tag("K-1")).orElseThrow()).contains(old));
            return null;
        });
        Books.assertChained(diary.store());
    }

    @Test
    default void keepsTheOldWordsOfWhatIsCorrected() {
        Diary diary = withMothers(emptyStore());
        diary.write("a: 2020-05-01 layer-set J-1 J-2; mother=K-1");
        diary.write("2020-05-03 corrected J-2; target=a; field=mother; value=K-2");
        diary.write("2020-05-04 corrected J-2; target=a; field=tags; value=J-9");
        diary.store().read(view -> {
            Recorded old = view.entry(diary.id("a")).orElseThrow();
            assertEquals(List.of(new Tag("J-1"), new Tag("J-2")), old.entry().tags());
            assertEquals(
                    List.of("mother", "tags"),
                    view.amendments(old.order()).stream()
                            .map(amendment -> ((Corrected) amendment.entry()).field())
                            .toList());
            assertEquals(Optional.empty(), view.unit(new Tag("J-2")));
            return null;
        });
        assertEquals(diary.unit("K-2"), diary.facts("J-9").links().get(0).mother());
    }

    @Test
    default void findsAUnitUnderEveryTagThatItBore() {
        Diary diary = withMothers(emptyStore());
        diary.write("2020-05-01 retagged K-1; new_tag=M-1", "2021-05-01 retagged M-1; new_tag=K-1");
        diary.store().read(view -> {
            UnitNumber unit = view.unit(new Tag("K-1")).orElseThrow();
            assertEquals(Optional.of(unit), view.unit(new Tag("M-1")));
            assertEquals(Optional.empty(), view.unit(new Tag("m-1")));
            assertEquals(List.of(new Tag("K-1"), new Tag("M-1"), new Tag("K-1")), view.tags(unit));
            return null;
        });
    }

    @Test
    default void findsTagsThatMayHaveBeenMeant() {
        Diary diary = withMothers(emptyStore());
        diary.write("2016-05-01 acquired Éa-12", "2016-05-01 acquired J-0140 J-0104 J-0114 X-9");
        diary.store().read(view -> {
            assertEquals(Optional.of(new Tag("Éa-12")), view.alikeButForCase(new Tag("éA-12")));
            assertEquals(Optional.empty(), view.alikeButForCase(new Tag("Éa-12")));
            // J-0114 by a swap and J-0140 by a letter are 1 apart, J-0104 is 2
            assertEquals(List.of("J-0114", "J-0140", "J-0104"), view.nearest(new Tag("J-0141")));
            assertEquals(List.of("J-0104", "J-0114", "J-0140"), view.nearest(new Tag("j-01")));
            assertEquals(List.of(), view.nearest(new Tag("WHOLLY-OTHER")));
            return null;
        });
    }

    @Test
    default void givesTagsFromATextOnInTheOrderOfTheirLetters() {
        try (BookStore store = emptyStore()) {
            Diary diary = new Diary(store);
            diary.write("2015-03-01 acquired j-2 J-10 K-1 É-1 𝒳-1 豆-1", "2016-01-01 retagged K-1; new_tag=J-3");
            diary.write("2017-01-01 retagged J-3; new_tag=K-1");
            store.read(view -> {
                assertEquals(tags("J-10", "j-2", "J-3", "K-1", "É-1", "豆-1", "𝒳-1"), view.tagsFrom(" ", 20));
                assertEquals(tags("j-2", "J-3"), view.tagsFrom("J-2", 2));
                assertEquals(tags("J-3"), view.tagsFrom("j-20", 1));
                assertEquals(List.of(), view.tagsFrom("𝒵", 5));
                return 0;
            });
        }
    }

    private static List<Tag> tags(String... texts) {
        return Arrays.stream(texts).map(Tag::new).toList();
    }

    @Test
    default void followsFamiliesBothWaysAndStopsWhereTold() {
        Diary diary = withMothers(emptyStore());
        diary.write(
                "2016-05-01 layer-set J-1 J-2; mother=K-1",
                "2016-09-01 severed J-1 J-2",
                "2018-05-01 layer-set J-3; mother=J-1",
                "2018-05-02 cuttings-struck T-1; mothers=J-1 J-2 K-2; count=20",
                "2018-09-02 drawn C-1 C-2; source=T-1");
        UnitNumber mother = diary.unit("K-1");
        List<UnitNumber> below = Stream.of("J-1", "J-2", "J-3", "T-1", "C-1", "C-2")
                .map(diary::unit)
                .sorted()
                .toList();
        diary.store().read(view -> {
            Family down = view.family(mother, Direction.DOWN, 100);
            assertTrue(down.whole());
            assertEquals(mother, down.units().get(0));
            assertEquals(below, down.units().subList(1, down.units().size()));
            assertEquals(7, down.links().size());
            Family up = view.family(diary.unit("C-1"), Direction.UP, 100);
            assertEquals(
                    Stream.of("C-1", "K-1", "K-2", "J-1", "J-2", "T-1")
                            .map(diary::unit)
                            .collect(Collectors.toSet()),
                    Set.copyOf(up.units()));
            assertEquals(diary.unit("C-1"), up.units().get(0));
            assertTrue(up.whole());
            assertTrue(view.family(mother, Direction.DOWN, 7).whole());
            for (int most = 1; most < 7; most++) {
                Family part = view.family(mother, Direction.DOWN, most);
                assertFalse(part.whole());
                assertEquals(most, part.units().size());
                assertTrue(part.links().stream()
                        .allMatch(link -> part.units().contains(link.child())
                                && part.units().contains(link.mother())));
            }
            assertEquals(
                    new Family(List.of(diary.unit("C-2")), List.of(), true),
                    view.family(diary.unit("C-2"), Direction.DOWN, 1));
            return null;
        });
    }

    @Test
    default void givesTheOffspringOfTheActsAskedFor() {
        Diary diary = withMothers(emptyStore());
        diary.write(
                "2016-05-02 cuttings-struck T-1; mothers=K-1; count=20",
                "2016-05-01 layer-set J-1; mother=K-1",
                "2016-05-03 seed-sown S-1; count=9; seed_parent=K-1; pollen_parent=K-1");
        diary.store().read(view -> {
            UnitNumber mother = diary.unit("K-1");
            assertEquals(
                    List.of(Act.STRUCK_FROM, Act.LAYERED_FROM, Act.SEED_OF, Act.POLLEN_OF),
                    view.offspring(mother, EnumSet.allOf(Act.class)).stream()
                            .map(Link::act)
                            .toList());
            assertEquals(
                    List.of(diary.unit("J-1")),
                    view.offspring(mother, Set.of(Act.LAYERED_FROM)).stream()
                            .map(Link::child)
                            .toList());
            assertEquals(List.of(), view.offspring(mother, Set.of()));
            return null;
        });
    }

    @Test
    default void rebuildsWhatItHeld() {
        Diary diary = storyWithEveryKind();
        Map<String, Object> before = Books.everything(diary.store());
        diary.store().rebuild(diary.judge(), Progress.NONE);
        Books.assertSame(before, Books.everything(diary.store()));
        diary.write("2021-01-01 seen K-1");
        Books.assertChained(diary.store());
    }

    @Test
    default void restoresAWholeBook() {
        Diary diary = storyWithEveryKind();
        Head head = head(diary.store());
        Restoration whole = Books.whole(diary.store());
        Map<String, Object> everything = Books.everything(diary.store());
        BookStore copy = emptyStore();
        Receipt receipt = copy.restore(whole, diary.judge(), Progress.NONE);
        assertEquals(head, receipt.head());
        assertEquals(head, head(copy));
        Books.assertSame(everything, Books.everything(copy));
        Books.assertChained(copy);
        Diary more = new Diary(copy);
        more.write("2021-01-01 seen K-1");
        assertEquals(head.order() + 1, head(copy).order());
    }

    @Test
    default void restoresIntoAnEmptyBookAlone() {
        Diary diary = storyWithEveryKind();
        Restoration whole = Books.whole(diary.store());
        BookStore other = withMothers(emptyStore()).store();
        Map<String, Object> before = Books.everything(other);
        Refused refused = assertThrows(Refused.class, () -> other.restore(whole, diary.judge(), Progress.NONE));
        assertEquals("not-empty", refused.faults().get(0).rule());
        Books.assertSame(before, Books.everything(other));
    }

    @Test
    default void restoresNothingOfABookWhoseChainIsBroken() {
        Diary diary = storyWithEveryKind();
        Restoration whole = Books.whole(diary.store());
        List<Recorded> entries = new ArrayList<>(whole.entries());
        Recorded last = entries.remove(entries.size() - 1);
        entries.add(new Recorded(last.order(), last.recordedAt().plusSeconds(1), last.proposed()));
        BookStore store = emptyStore();
        Head before = head(store);
        Restoration broken = new Restoration(whole.bookId(), whole.zone(), entries, whole.persons(), whole.digest());
        Refused refused = assertThrows(Refused.class, () -> store.restore(broken, diary.judge(), Progress.NONE));
        assertEquals("broken-chain", refused.faults().get(0).rule());
        assertEquals(before, head(store));
        assertTrue(store.read(BookView::persons).isEmpty());
    }

    @Test
    default void erasesAPersonAndLeavesEntriesAndDigests() {
        Diary diary = storyWithEveryKind();
        Head before = head(diary.store());
        Restoration whole = Books.whole(diary.store());
        Person known =
                diary.store().read(view -> view.person("TREES OF THE WEST").orElseThrow());
        diary.store().keep(known.erased());
        assertEquals(before, head(diary.store()));
        assertEquals(whole.entries(), Books.whole(diary.store()).entries());
        Books.assertChained(diary.store());
        assertEquals(Optional.empty(), diary.store().read(view -> view.person("Trees of the West")));
        Person erased = diary.store()
                .read(view -> view.persons().stream()
                        .filter(person -> person.number().equals(known.number()))
                        .findFirst()
                        .orElseThrow());
        assertEquals("#2", erased.shown());
        diary.person(4, "Trees of the West", Role.CUSTOMER);
    }

    @Test
    default void keepsNewParticularsOfAPerson() {
        Diary diary = new Diary(emptyStore());
        Person person = diary.person(1, "Máire", Role.STAFF);
        diary.person(2, "Seán", Role.STAFF);
        Person moved = new Person(person.number(), Optional.of("MÁIRE"), Role.CUSTOMER, Optional.of("1 Quay Street"));
        diary.store().keep(moved);
        assertEquals(Optional.of(moved), diary.store().read(view -> view.person("máire")));
        Refused taken = assertThrows(
                Refused.class,
                () -> diary.store()
                        .keep(new Person(person.number(), Optional.of("seán"), Role.STAFF, Optional.empty())));
        assertEquals(List.of("there is a Seán already, #2"), taken.lines());
        assertEquals("person-in-use", taken.faults().get(0).rule());
        Refused unknown = assertThrows(
                Refused.class,
                () -> diary.store()
                        .keep(new Person(new PersonNumber(3), Optional.of("Una"), Role.STAFF, Optional.empty())));
        assertEquals(List.of("no person #3 in the book; nearest: #1, #2"), unknown.lines());
        assertEquals(Optional.of(moved), diary.store().read(view -> view.person("Máire")));
    }

    @Test
    default void twoWritersNeitherLoseNorSeeHalf() throws Exception {
        BookStore store = emptyStore();
        withMothers(store);
        BookStore other = again(store);
        int each = 25;
        ExecutorService threads = Executors.newFixedThreadPool(3);
        try {
            Future<?> first = threads.submit(() -> writePairs(store, "A", each));
            Future<?> second = threads.submit(() -> writePairs(other, "B", each));
            Future<Integer> reader = threads.submit(() -> {
                int looked = 0;
                while (!first.isDone() || !second.isDone() || looked == 0) {
                    assertWholePairs(other);
                    looked++;
                }
                return looked;
            });
            first.get(2, TimeUnit.MINUTES);
            second.get(2, TimeUnit.MINUTES);
            assertTrue(reader.get(2, TimeUnit.MINUTES) > 0);
        } finally {
            threads.shutdownNow();
        }
        assertEquals(2 + 4 * each, head(store).order());
        assertEquals(head(store), head(other));
        assertWholePairs(store);
        Books.assertChained(store);
        Books.assertSame(store, other);
    }

    /** Write pairs of entries, two in each proposal. */
    private static void writePairs(BookStore store, String letter, int pairs) {
        Diary diary = new Diary(store);
        for (int pair = 0; pair < pairs; pair++) {
            diary.write(
                    "2020-05-01 layer-set " + letter + "-" + pair + "; mother=K-1",
                    "2020-05-02 checked " + letter + "-" + pair + "; findings=callus");
        }
    }

    private static void assertWholePairs(BookStore store) {
        store.read(view -> {
            try (Stream<Chained> entries = view.since(2)) {
                List<Recorded> all = entries.map(Chained::recorded).toList();
                assertEquals(view.head().order() - 2, all.size());
                for (int at = 0; at < all.size(); at += 2) {
                    assertEquals(
                            all.get(at).entry().tags(), all.get(at + 1).entry().tags());
                    assertTrue(view.unit(all.get(at).entry().tags().get(0)).isPresent());
                }
            }
            return null;
        });
    }

    @Test
    default void readerSeesOneBookWhileSomebodyWrites() throws Exception {
        assumeTrue(writesWhileReading(), "this store lets nobody write while a question is being answered");
        BookStore store = emptyStore();
        withMothers(store);
        BookStore other = again(store);
        ExecutorService threads = Executors.newSingleThreadExecutor();
        try {
            store.read(view -> {
                Head before = view.head();
                Future<?> writer = threads.submit(() -> writePairs(other, "A", 3));
                try {
                    writer.get(2, TimeUnit.MINUTES);
                } catch (Exception failed) {
                    throw new AssertionError(failed);
                }
                assertEquals(before, view.head());
                assertEquals(Optional.empty(), view.unit(new Tag("A-0")));
                assertEquals(Optional.empty(), view.entry(3));
                assertEquals(
                        List.of(), view.offspring(view.unit(new Tag("K-1")).orElseThrow(), Set.of(Act.LAYERED_FROM)));
                return null;
            });
        } finally {
            threads.shutdownNow();
        }
        assertEquals(8, head(store).order());
        assertNotEquals(Optional.empty(), store.read(view -> view.unit(new Tag("A-2"))));
    }

    @Test
    default void backupHoldsTheSame() {
        Diary diary = storyWithEveryKind();
        Optional<BookStore> copy = backup(diary.store());
        assumeTrue(copy.isPresent(), "this store has no file to copy");
        assertEquals(head(diary.store()), head(copy.get()));
        Books.assertSame(diary.store(), copy.get());
        new Diary(copy.get()).write("2021-01-01 seen K-1");
        assertNotEquals(head(diary.store()), head(copy.get()));
    }

    @Test
    default void leavesTheBookAloneWhenTheQuestionFails() {
        Diary diary = withMothers(emptyStore());
        IllegalStateException thrown = assertThrows(
                IllegalStateException.class,
                () -> diary.store().read(view -> {
                    throw new IllegalStateException("on purpose");
                }));
        assertEquals("on purpose", thrown.getMessage());
        diary.write("2020-05-01 seen K-1");
        assertEquals(3, head(diary.store()).order());
    }

    @Test
    default void givesListingsInOrderWithoutOtherEntries() {
        Diary diary = storyWithEveryKind();
        List<EntryKind> kinds = diary.store()
                .read(view -> view.listings().stream()
                        .map(recorded -> recorded.entry().kind())
                        .toList());
        assertEquals(List.of(EntryKind.CULTIVAR_LISTED, EntryKind.PLACE_LISTED), kinds);
        List<EntryKind> tariff = diary.store()
                .read(view -> view.tariff().stream()
                        .map(recorded -> recorded.entry().kind())
                        .toList());
        assertEquals(List.of(EntryKind.COST_LISTED, EntryKind.PRICE_LISTED), tariff);
        Predicate<String> known =
                name -> diary.store().read(view -> view.person(name)).isPresent();
        assertEquals(
                List.of(true, true, false),
                Arrays.asList("máire", " Lough nursery ", "nobody").stream()
                        .map(known::test)
                        .toList());
    }
}
