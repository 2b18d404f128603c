package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.lifecycle.AfterProperty;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.Histories;
import ortet.book.UnitFacts.Nature;
import ortet.inventory.Holding;
import ortet.inventory.HoldingFilter;
import ortet.inventory.HoldingFilter.Standing;
import ortet.inventory.Holdings;
import ortet.lineage.Account;
import ortet.lineage.Lineage;
import ortet.plant.Person.Role;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

/** What there is: by one pass over the book as by one plant after another, and each filter. */
class HoldingsTests {
    private static final Set<Standing> ANY = EnumSet.allOf(Standing.class);

    private final Shelf shelf = new Shelf();

    @AfterEach
    @AfterProperty
    void clear() {
        shelf.close();
    }

    // ---- against the account of each unit, which is worked out from its own diary ----

    @Property(tries = 25)
    void agreesWithTheAccountOfEveryUnit(@ForAll int seed, @ForAll @IntRange(min = 20, max = 80) int lines) {
        Diary diary = new Diary(shelf.create());
        diary.person(1, "An Example", Role.CUSTOMER);
        Histories.write(seed, lines, line -> isTaken(diary, line));
        Random random = new Random(seed);
        for (int at = 0; at < lines / 2; at++) {
            isTaken(diary, mark(random));
        }
        for (String day : List.of("2016-06-15", "2018-01-01", "2019-06-30", "2026-06-15")) {
            assertAgrees(diary, LocalDate.parse(day));
        }
    }

    private static boolean isTaken(Diary diary, String line) {
        try {
            return !diary.write(line).written().isEmpty();
        } catch (Refused refused) {
            return false;
        }
    }

    private static String mark(Random random) {
        String tag = List.of("K-1", "K-2", "J-1", "J-2", "C-1", "R-1", "T-1").get(random.nextInt(7));
        String day = "20" + (16 + random.nextInt(4))
                + List.of("-03", "-03-07", "-11-20").get(random.nextInt(3));
        String what = List.of(
                        "kept-as-stock %s",
                        "released %s",
                        "released %s; from=stock",
                        "released %s; from=reservation",
                        "held %s; sign=spots",
                        "cleared %s",
                        "reserved %s; customer=#1",
                        "reserved %s; customer=#1; until=2018-12-31",
                        "moved %s; place=House 1",
                        "redetermined %s; cultivar=Acer palmatum 'Katsura'")
                .get(random.nextInt(10));
        return day + " " + String.format(what, tag);
    }

    private static void assertAgrees(Diary diary, LocalDate day) {
        List<Holding> holdings = all(diary, day);
        List<Account> accounts = new ArrayList<>();
        for (Holding one : holdings) {
            accounts.add(diary.store().read(view -> Lineage.plant(view, one.tag(), day)));
        }
        assertEquals(
                accounts.stream().map(HoldingsTests::told).toList(),
                holdings.stream().map(HoldingsTests::told).toList());
        int units = diary.store().read(view -> view.head().lastUnit());
        int begun = 0;
        for (int unit = 1; unit <= units; unit++) {
            int number = unit;
            begun += diary.store()
                            .read(view -> view.facts(new UnitNumber(number)))
                            .filter(facts -> !facts.begun().day().first().isAfter(day))
                            .isPresent()
                    ? 1
                    : 0;
        }
        assertEquals(begun, holdings.size());
    }

    private static List<Holding> all(Diary diary, LocalDate day) {
        HoldingFilter filter = new HoldingFilter(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                ANY,
                Set.of(),
                Optional.empty(),
                false,
                false,
                false);
        return diary.store().read(view -> Holdings.of(view, filter, day)).all();
    }

    private static String told(Account account) {
        return String.join(
                " | ",
                account.tag().text(),
                account.nature().toString(),
                account.named().cultivar() + " " + account.named().oneOf(),
                account.state().kind().toString(),
                account.state().pending() + " " + account.state().growing(),
                account.state().last().toString(),
                account.place().map(stay -> stay.place() + " " + stay.since()).orElse(""),
                account.container().flatMap(Account.Container::container).orElse(""),
                account.stockSince().toString(),
                account.held().isPresent() + " " + !account.reserved().isEmpty(),
                account.begun().day().toString());
    }

    private static String told(Holding holding) {
        return String.join(
                " | ",
                holding.tag().text(),
                holding.nature().toString(),
                holding.cultivar() + " " + holding.oneOf(),
                holding.kind().toString(),
                holding.pending() + " " + holding.growing(),
                holding.last().toString(),
                holding.place()
                        .map(place -> place + " " + holding.since().orElseThrow())
                        .orElse(""),
                holding.container().orElse(""),
                holding.stockSince().toString(),
                holding.held() + " " + holding.reserved(),
                holding.begun().toString());
    }

    @Test
    void plantOfACoarseDayIsFromAMotherOfALaterOne() {
        Diary diary = new Diary(shelf.create());
        diary.write(
                "2015-01-01 acquired K-1; cultivar=Acer palmatum 'Katsura'",
                "2018-05-01 divided D-1; mother=K-1",
                "2018 layer-set J-1; mother=D-1");
        assertAgrees(diary, LocalDate.parse("2018-01-01"));
        Holding layer = all(diary, LocalDate.parse("2018-01-01")).get(0);
        assertEquals(
                "J-1 Acer palmatum 'Katsura' [D-1]",
                layer.tag() + " " + layer.cultivar().orElseThrow() + " " + layer.from());
    }

    // ---- filters ----

    private Diary nursery() {
        Diary diary = new Diary(shelf.create());
        diary.person(1, "An Example", Role.CUSTOMER);
        diary.write(
                "2015-03-01 place-listed; place=Bench 2; within=House 1",
                "2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'; place=House 1",
                "2015-03-01 acquired K-2; cultivar=Ulmus parvifolia; place=House 2",
                "2016-05-01 layer-set J-1..J-3; mother=K-1",
                "2016-09-01 severed J-1; place=Bench 2; container=2 L",
                "2016-09-01 failed J-2",
                "2016-06-01 cuttings-struck T-1; mothers=K-1 K-2; count=10; place=House 2",
                "2017-06-01 drawn C-1; source=T-1; place=House 1",
                "2017-01-01 kept-as-stock K-1",
                "2018-01-01 held K-2; sign=spots",
                "2018-01-01 reserved J-1; customer=#1; until=2018-03-31");
        return diary;
    }

    private static HoldingFilter filter(
            String beginning,
            String cultivar,
            String place,
            Set<Standing> standings,
            Set<Nature> natures,
            String mother) {
        return new HoldingFilter(
                Optional.ofNullable(beginning),
                Optional.ofNullable(cultivar),
                Optional.ofNullable(place).map(Place::new),
                standings,
                natures,
                Optional.ofNullable(mother).map(Tag::new),
                false,
                false,
                false);
    }

    private static String tags(Diary diary, HoldingFilter filter, String day) {
        return String.join(
                " ",
                diary.store().read(view -> Holdings.of(view, filter, LocalDate.parse(day))).all().stream()
                        .map(one -> one.tag().text())
                        .toList());
    }

    private static String tags(Diary diary, HoldingFilter filter) {
        return tags(diary, filter, "2018-03-01");
    }

    @Test
    void listsWhatIsThereUnlessOtherwiseAsked() {
        Diary diary = nursery();
        assertEquals("C-1 J-1 J-3 K-1 K-2 T-1", tags(diary, HoldingFilter.THERE));
        assertEquals("J-2", tags(diary, filter(null, null, null, Set.of(Standing.GONE), Set.of(), null)));
        assertEquals("J-3 T-1", tags(diary, filter(null, null, null, Set.of(Standing.PENDING), Set.of(), null)));
        assertEquals("K-1 K-2", tags(diary, HoldingFilter.THERE, "2016-04-30"));
    }

    @Test
    void listsByTheBeginningOfTheTagAndByNature() {
        Diary diary = nursery();
        assertEquals("J-1 J-3", tags(diary, filter("j-", null, null, Set.of(), Set.of(), null)));
        assertEquals("J-1 J-3", tags(diary, filter(null, null, null, Set.of(), Set.of(Nature.LAYER), null)));
        assertEquals("T-1", tags(diary, filter(null, null, null, Set.of(), Set.of(Nature.BATCH), null)));
    }

    @Test
    void listsAPlaceWithThePlacesWithinIt() {
        Diary diary = nursery();
        assertEquals("C-1 J-1 K-1", tags(diary, filter(null, null, "House 1", Set.of(), Set.of(), null)));
        assertEquals("J-1", tags(diary, filter(null, null, "Bench 2", Set.of(), Set.of(), null)));
        Refused refused =
                assertThrows(Refused.class, () -> tags(diary, filter(null, null, "Hause 1", Set.of(), Set.of(), null)));
        assertEquals(List.of("no place Hause 1; nearest: House 1, House 2"), refused.lines());
    }

    @Test
    void listsACultivarWithAllThatKeepItsClone() {
        Diary diary = nursery();
        assertEquals("J-1 J-3 K-1", tags(diary, filter(null, "deshojo", null, Set.of(), Set.of(), null)));
        assertEquals("J-1 J-3 K-1", tags(diary, filter(null, "Acer palmatum", null, Set.of(), Set.of(), null)));
        Refused refused =
                assertThrows(Refused.class, () -> tags(diary, filter(null, "Deshoyo", null, Set.of(), Set.of(), null)));
        assertEquals(List.of("no cultivar Deshoyo; nearest: Acer palmatum 'Deshojo'"), refused.lines());
    }

    @Test
    void listsWhatWasRaisedFromAMotherThroughItsTraysToo() {
        Diary diary = nursery();
        assertEquals("C-1 J-1 J-3 T-1", tags(diary, filter(null, null, null, Set.of(), Set.of(), "K-1")));
        assertEquals("C-1 T-1", tags(diary, filter(null, null, null, Set.of(), Set.of(), "K-2")));
        Refused refused =
                assertThrows(Refused.class, () -> tags(diary, filter(null, null, null, Set.of(), Set.of(), "K-11")));
        assertEquals(List.of("no plant or batch K-11; nearest: K-1, C-1, J-1"), refused.lines());
    }

    @Test
    void listsStockHeldAndReservedOnTheirDays() {
        Diary diary = nursery();
        assertEquals("K-1", tags(diary, marked(true, false, false)));
        assertEquals("", tags(diary, marked(true, false, false), "2016-12-31"));
        assertEquals("K-2", tags(diary, marked(false, true, false)));
        assertEquals("J-1", tags(diary, marked(false, false, true)));
        assertEquals("", tags(diary, marked(false, false, true), "2018-04-01"));
    }

    private static HoldingFilter marked(boolean stock, boolean held, boolean reserved) {
        return new HoldingFilter(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Set.of(),
                Set.of(),
                Optional.empty(),
                stock,
                held,
                reserved);
    }

    @Test
    void countsTagsPlantsAndWhatIsPending() {
        Holdings there =
                nursery().store().read(view -> Holdings.of(view, HoldingFilter.THERE, LocalDate.parse("2018-03-01")));
        assertEquals(new Holdings.Count(6, 4, 10), there.count());
    }

    @Test
    void saysWhatItWasRaisedFromAndWhyItIsGone() {
        Diary diary = nursery();
        List<Holding> all = all(diary, LocalDate.parse("2018-03-01"));
        assertEquals(
                List.of("C-1 from K-1 K-2, growing", "J-2 from K-1, failed", "T-1 from K-1 K-2, 9 pending"),
                all.stream()
                        .filter(one ->
                                List.of("C-1", "J-2", "T-1").contains(one.tag().text()))
                        .map(one -> one.tag() + " from "
                                + String.join(
                                        " ", one.from().stream().map(Tag::text).toList()) + ", " + one.state())
                        .toList());
    }
}
