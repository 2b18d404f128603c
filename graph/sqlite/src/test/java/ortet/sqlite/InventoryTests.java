package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.Judge;
import ortet.entry.EntryKind;
import ortet.inventory.DayRecord;
import ortet.inventory.Findings;
import ortet.inventory.FreeTag;
import ortet.inventory.InUse;
import ortet.inventory.Places;
import ortet.plant.Person.Role;
import ortet.plant.Tag;
import ortet.value.Refused;

/** Where words occur, what was recorded on a day, and what is in use. */
class InventoryTests {
    private static final LocalDate TODAY = Diary.TODAY;

    private final Shelf shelf = new Shelf();
    private final SqliteBookStore store = shelf.create();
    private final Diary diary = new Diary(store);

    @AfterEach
    void clear() {
        shelf.close();
    }

    private Findings find(String... words) {
        return store.read(view -> Findings.of(view, List.of(words), TODAY, 20));
    }

    private static List<String> labels(Findings findings) {
        return findings.tags().list().stream()
                .map(label -> label.tag() + " is " + label.unit().tag() + ", "
                        + label.unit().state())
                .toList();
    }

    private static List<Long> entries(Findings findings) {
        return findings.remarks().list().stream()
                .map(line -> line.deed().order())
                .toList();
    }

    private void nursery() {
        diary.person(1, "Máire", Role.STAFF);
        diary.person(2, "An Example", Role.CUSTOMER);
        diary.write(
                "a: 2015-03-01 acquired K-1 K-11; cultivar=Acer palmatum 'Ōsakazuki'; consignment=D-77",
                "2015-03-01 cultivar-listed; cultivar=Ulmus parvifolia 'Catlin'; synonyms=Dwarf Elm; trade_designation=Catty",
                "2015-03-01 place-listed; place=House 1; premises=Sallowfield",
                "2016-05-01 layer-set J-1; mother=K-1; branch=north 50%",
                "2016-06-01 moved K-1; place=House 2",
                "2017-01-01 retagged J-1; new_tag=J-901",
                "b: 2018-01-01 noted K-1; note=Bleeds late, LAYER in June: \"cut\" ÄRGER",
                "2018-02-01 noted K-11; note=layer in May");
    }

    // ---- find ----

    @Test
    void findsLabelsOldAndNewTheWholeOnesFirst() {
        nursery();
        assertEquals(List.of("K-1 is K-1, growing", "K-11 is K-11, growing"), labels(find("k-1")));
        assertEquals(List.of("J-1 is J-901, on its mother", "J-901 is J-901, on its mother"), labels(find("j-")));
        assertEquals(List.of("J-901 is J-901, on its mother"), labels(find("901")));
    }

    @Test
    void findsLabelsOfTheDayAskedAbout() {
        nursery();
        Findings then = store.read(view -> Findings.of(view, List.of("J-"), LocalDate.parse("2016-12-31"), 20));
        assertEquals(List.of("J-1 is J-1, on its mother"), labels(then));
    }

    @Test
    void findsNamesWhateverTheirAccents() {
        nursery();
        assertEquals(
                "Acer palmatum 'Ōsakazuki'",
                find("osaka").cultivars().list().get(0).name().toString());
        assertEquals(
                "Dwarf Elm",
                "" + find("dwarf", "ELM").cultivars().list().get(0).otherwise().split("; ")[1]);
        assertEquals("Máire", find("maire").persons().list().get(0).shown());
        assertEquals(
                List.of("House 1", "House 2"),
                find("house").places().list().stream()
                        .map(known -> known.name().name())
                        .toList());
        assertEquals("at Sallowfield", find("sallow").places().list().get(0).otherwise());
    }

    @Test
    void findsWhatWasWrittenFreelyTheLatestFirst() {
        nursery();
        assertEquals(List.of(8L, 7L), entries(find("layer", "in")));
        assertEquals(List.of(7L), entries(find("in", "layer", "bleeds")));
        assertEquals(List.of(7L), entries(find("ärger")));
        assertEquals(List.of(7L), entries(find("\"CUT\"")));
        assertEquals(List.of(1L), entries(find("d-77")));
        assertEquals(List.of(4L), entries(find("50%")));
        assertEquals(List.of(), entries(find("House")));
    }

    @Test
    void findsWordsThatWereCrossedOutAndSaysSo() {
        nursery();
        diary.write("2018-03-01 crossed-out; target=b; reason=another tree");
        assertEquals(
                DayRecord.Mark.CROSSED_OUT,
                find("bleeds").remarks().list().get(0).mark());
        assertEquals(Optional.of(7L), find("another").remarks().list().get(0).target());
    }

    @Test
    void findsNoEntryOfALaterDay() {
        nursery();
        Findings then = store.read(view -> Findings.of(view, List.of("layer"), LocalDate.parse("2018-01-31"), 20));
        assertEquals(List.of(7L), entries(then));
    }

    @Test
    void tellsTheFirstOfManyAndThatThereAreMore() {
        diary.write("2020 acquired A-1..A-30");
        Findings few = store.read(view -> Findings.of(view, List.of("A-"), TODAY, 5));
        assertEquals(5, few.tags().list().size());
        assertFalse(few.tags().isAll());
        assertTrue(few.remarks().isAll());
        assertTrue(find("nowhere").isNothing());
    }

    // ---- today ----

    private void at(String instant, String... lines) {
        store.append(diary.proposal(lines), new Judge(Clock.fixed(Instant.parse(instant), ZoneOffset.UTC)));
    }

    @Test
    void tellsWhatWasRecordedOnADayOfTheBooksZone() {
        diary.person(1, "Aoife", Role.STAFF);
        at("2026-06-14T22:59:59.999Z", "2020 acquired K-1");
        at("2026-06-14T23:00:00Z", "2020 acquired K-2; by=#1");
        at("2026-06-15T22:59:59.999Z", "a: 2026-06-01 moved K-1; place=House 1", "2026-06-02 noted K-2; note=x; by=#1");
        at("2026-06-15T23:00:00Z", "2026-06-15 corrected; target=a; field=place; value=House 2");
        DayRecord day = store.read(view -> DayRecord.of(view, TODAY, Optional.empty(), 100));
        assertEquals(
                List.of(
                        "#2 00:00 acquired 2020 Aoife AS_WRITTEN",
                        "#3 23:59:59.999 moved 2026-06-01 - CORRECTED",
                        "#4 23:59:59.999 noted 2026-06-02 Aoife AS_WRITTEN"),
                day.lines().stream().map(InventoryTests::told).toList());
        DayRecord next = store.read(view -> DayRecord.of(view, TODAY.plusDays(1), Optional.empty(), 100));
        assertEquals(Optional.of(3L), next.lines().get(0).target());
        DayRecord hers = store.read(view -> DayRecord.of(view, TODAY, Optional.of("aoife"), 100));
        assertEquals(2, hers.lines().size());
        assertEquals(Map.of(Optional.of("Aoife"), 2, Optional.empty(), 1), day.byWhom());
        DayRecord last = store.read(view -> DayRecord.of(view, TODAY, Optional.empty(), 1));
        assertEquals(3, last.count());
        assertEquals(
                List.of(4L),
                last.lines().stream().map(line -> line.deed().order()).toList());
        Refused refused = assertThrows(
                Refused.class, () -> store.read(view -> DayRecord.of(view, TODAY, Optional.of("Aoifa"), 100)));
        assertEquals(List.of("no person Aoifa; nearest: Aoife"), refused.lines());
    }

    private static String told(DayRecord.Line line) {
        return "#" + line.deed().order() + " " + line.at() + " "
                + line.deed().kind().word() + " " + line.deed().day() + " "
                + line.deed().by().orElse("-") + " " + line.mark();
    }

    // ---- in use ----

    private Optional<String> free(String beginning) {
        return store.read(view -> FreeTag.after(view, beginning)).map(Tag::text);
    }

    private Optional<String> free(EntryKind kind) {
        return store.read(view -> FreeTag.of(view, kind)).map(Tag::text);
    }

    @Test
    void knowsTheTagAfterTheHighestNumber() {
        diary.write("2020 acquired J-9 J-10 J-10a J-8-2 X-0099 X-007 P K-1 k2");
        assertEquals(Optional.of("J-11"), free("J-"));
        assertEquals(Optional.of("J-11"), free("j-"));
        assertEquals(Optional.of("X-0100"), free("X-"));
        assertEquals(Optional.of("k3"), free("K"));
        assertEquals(Optional.of("J-8-3"), free("J-8-"));
        assertEquals(Optional.empty(), free("P"));
        assertEquals(Optional.empty(), free("Z"));
    }

    @Test
    void knowsTheTagAfterThoseOfTheLastEntryOfAKind() {
        diary.write(
                "2020 acquired K-1..K-5", "2020 acquired B-7", "2021 layer-set J-1; mother=K-1", "2022 acquired K-3a");
        assertEquals(Optional.of("J-2"), free(EntryKind.LAYER_SET));
        assertEquals(Optional.empty(), free(EntryKind.ACQUIRED));
        diary.write("2023 acquired K-6");
        assertEquals(Optional.of("K-7"), free(EntryKind.ACQUIRED));
        assertEquals(Optional.empty(), free(EntryKind.SEED_SOWN));
    }

    @Test
    void knowsCultivarsPlacesContainersAndTextsInUse() {
        nursery();
        diary.write(
                "2019-01-01 potted K-1; container=2 L; medium=bark",
                "2019-01-02 potted K-11; container=15 L; medium=pumice",
                "2019-01-03 potted K-1; container=2 L; medium=bark");
        assertEquals(
                List.of("Acer palmatum 'Ōsakazuki'", "Ulmus parvifolia 'Catlin'"),
                store.read(InUse::cultivars).stream().map(Object::toString).toList());
        assertEquals(
                List.of("House 1", "House 2"),
                store.read(Places::of).all().stream().map(Object::toString).toList());
        assertEquals(Set.of("15 L", "2 L"), store.read(InUse::containers));
        assertEquals(List.of("bark", "pumice"), List.copyOf(store.read(view -> InUse.texts(view, "medium"))));
    }

    @Test
    void knowsNothingOfAnEmptyBook() {
        assertEquals(Set.of(), store.read(InUse::cultivars));
        assertEquals(Set.of(), Set.copyOf(store.read(Places::of).all()));
        assertEquals(Set.of(), store.read(InUse::containers));
        assertEquals(Set.of(), store.read(view -> InUse.texts(view, "medium")));
        assertTrue(find("anything").isNothing());
    }
}
