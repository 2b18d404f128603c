package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import ortet.book.Act;
import ortet.book.Diary;
import ortet.book.UnitFacts.TagUse;
import ortet.entry.Mention.Role;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.value.Refused;
import ortet.value.When;

class AccountTests {
    private final Diary diary = new Diary();

    @BeforeEach
    void growTheMotherOfTheHouse() {
        diary.person(1, "Nuala", Person.Role.STAFF);
        diary.person(2, "Harte and Daughter", Person.Role.CUSTOMER);
        diary.write("2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'; container=10 L; place=House 1");
    }

    private Account plant(String tag) {
        return plant(tag, Diary.TODAY);
    }

    private Account plant(String tag, LocalDate asOf) {
        return diary.store().read(view -> Lineage.plant(view, new Tag(tag), asOf));
    }

    private static List<String> lines(Account account) {
        return account.diary().stream()
                .map(line -> line.deed().day() + " " + line.deed().kind().word() + " " + line.mark())
                .toList();
    }

    @Test
    void tellsWhatItIsAndWhereItStands() {
        diary.write(
                "2016-03-01 potted K-1; container=20 L",
                "2017-04-01 kept-as-stock K-1",
                "2018-04-01 moved K-1; place=House 2",
                "2018-05-01 measured K-1; stem_mm=30; height_mm=900",
                "2019-05-01 measured K-1; stem_mm=34; positions=8-12:5",
                "2020-01-01 retagged K-1; new_tag=K-1A");
        Account account = plant("K-1");
        assertEquals(new Tag("K-1A"), account.tag());
        assertEquals(
                List.of(new Tag("K-1"), new Tag("K-1A")),
                account.tags().stream().map(TagUse::tag).toList());
        assertEquals("Acer palmatum 'Deshojo'", account.named().toString());
        assertEquals(Named.How.SAID, account.named().how());
        assertEquals("growing", account.state().toString());
        assertEquals(Optional.of(When.parse("2017-04-01")), account.stockSince());
        assertEquals(
                Optional.of(new Account.Standing(new Place("House 2"), When.parse("2018-04-01"))), account.place());
        assertEquals(
                Optional.of(new Account.Container(Optional.of("20 L"), When.parse("2016-03-01"))), account.container());
        assertEquals(
                List.of("30", "34"),
                account.measured().stream()
                        .map(deed -> deed.detail("stem_mm").orElseThrow())
                        .toList());
        assertEquals(Optional.of("8-12:5"), account.measured().get(1).detail("positions"));
        assertEquals(
                "earliest known K-1A, acquired (2015-03-01), origin unknown",
                account.origin().toString());
        assertEquals(List.of(), account.parents());
        assertEquals(List.of(), account.offspring());
        Account before = plant("K-1", LocalDate.of(2016, 2, 29));
        assertEquals(new Tag("K-1"), before.tag());
        assertEquals(Optional.empty(), before.stockSince());
        assertEquals(
                Optional.of(new Account.Container(Optional.of("10 L"), When.parse("2015-03-01"))), before.container());
    }

    @Test
    void standsInNoContainerInOpenGround() {
        diary.write("2016-03-01 planted-out K-1; place=Field 1");
        Account.Container container = plant("K-1").container().orElseThrow();
        assertEquals(Optional.empty(), container.container());
        assertEquals(When.parse("2016-03-01"), container.since());
    }

    @Test
    void tellsHoldsReservationsAndGradesWhileTheyHold() {
        diary.write(
                "2020-01-01 kept-as-stock K-1",
                "2020-02-01 graded K-1; size=L; grade=A",
                "2020-03-01 reserved K-1; customer=#2; until=2020-06-30",
                "2020-04-01 held K-1; sign=leaf blotch");
        Account account = plant("K-1", LocalDate.of(2020, 6, 30));
        assertEquals(Optional.of("leaf blotch"), account.held().orElseThrow().detail("sign"));
        assertEquals(
                Optional.of("Harte and Daughter"), account.reserved().get(0).detail("customer"));
        assertEquals(Optional.of("L"), account.graded().orElseThrow().detail("size"));
        assertEquals(List.of(), plant("K-1", LocalDate.of(2020, 7, 1)).reserved());
        diary.write("2020-05-01 released K-1; from=stock", "2020-05-02 cleared K-1");
        Account after = plant("K-1", LocalDate.of(2020, 6, 30));
        assertEquals(Optional.empty(), after.held());
        assertEquals(Optional.empty(), after.stockSince());
        assertEquals(1, after.reserved().size());
        diary.write("2020-06-01 released K-1");
        assertEquals(List.of(), plant("K-1", LocalDate.of(2020, 6, 30)).reserved());
        diary.write("2020-07-01 kept-as-stock K-1", "2020-07-02 sold K-1; customer=#2");
        assertEquals(Optional.empty(), plant("K-1").stockSince());
        assertEquals(Optional.of("Harte and Daughter"), plant("K-1").state().customer());
    }

    @Test
    void namesItsMothersWithTheirCultivarAndState() {
        diary.write(
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2019-06-01 cuttings-struck T-1; mothers=K-1:30 K-2; count=60",
                "2021-01-01 lost K-2; cause=frost");
        List<Parent> parents = plant("T-1").parents();
        assertEquals(
                List.of(new Tag("K-1"), new Tag("K-2")),
                parents.stream().map(Parent::tag).toList());
        assertEquals(Act.STRUCK_FROM, parents.get(0).act());
        assertEquals(Optional.of(30), parents.get(0).count());
        assertTrue(parents.get(0).isOneOfSeveral());
        assertEquals("Acer palmatum 'Katsura'", parents.get(1).named().toString());
        assertEquals("lost on 2021-01-01", parents.get(1).state().toString());
        diary.write("2022-05-01 layer-set J-1; mother=K-1");
        assertFalse(plant("J-1").parents().get(0).isOneOfSeveral());
    }

    @Test
    void addsUpItsOffspringByAct() {
        diary.write(
                "2018-05-01 layer-set J-1..J-5; mother=K-1",
                "2018-09-01 severed J-1 J-2",
                "2018-09-01 failed J-3; cause=no-roots",
                "2018-09-02 failed J-4; cause=withdrawn",
                "2019-06-01 cuttings-struck T-1; mothers=K-1; count=60",
                "2019-09-01 failed T-1; count=10",
                "2019-09-02 taken T-1; count=20",
                "2019-10-01 drawn P-1..P-5; source=T-1",
                "2020-03-01 divided D-1; mother=K-1",
                "2021-01-01 lost P-1",
                "2021-01-02 sold J-1");
        assertEquals(
                List.of(
                        new OffspringTally(Act.LAYERED_FROM, 5, 5, 2, 1, 1, 1, 0, 0, 0, 0, 1),
                        new OffspringTally(Act.STRUCK_FROM, 1, 60, 20, 10, 0, 30, 0, 0, 0, 0, 19),
                        new OffspringTally(Act.DIVIDED_FROM, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 1)),
                plant("K-1").offspring());
        assertEquals(
                List.of(new OffspringTally(Act.LAYERED_FROM, 5, 5, 0, 0, 0, 5, 0, 0, 0, 0, 0)),
                plant("K-1", LocalDate.of(2018, 8, 31)).offspring());
        assertEquals(
                List.of(new OffspringTally(Act.DRAWN_FROM, 5, 5, 0, 0, 0, 0, 0, 0, 0, 0, 4)),
                plant("T-1").offspring());
    }

    @Test
    void countsSplitTraysWithTheirPartsAndSaysWhatWentIntoMergedOnes() {
        diary.write(
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2019-06-01 cuttings-struck T-1; mothers=K-1; count=60",
                "2019-06-01 cuttings-struck T-2; mothers=K-2; count=20",
                "2019-07-01 split T-3; source=T-1; count=25",
                "2019-08-01 taken T-3; count=15",
                "2019-08-02 failed T-1; count=5",
                "2019-09-01 merged T-4; sources=T-2 T-3",
                "2019-10-01 taken T-4; count=12");
        // of 60: 15 taken in the part, 5 failed in the rest, 10 of the part merged with K-2's, 30 still to come
        assertEquals(
                List.of(new OffspringTally(Act.STRUCK_FROM, 1, 60, 15, 5, 0, 30, 10, 0, 0, 0, 0)),
                plant("K-1").offspring());
        assertEquals(
                List.of(new OffspringTally(Act.STRUCK_FROM, 1, 20, 0, 0, 0, 0, 20, 0, 0, 0, 0)),
                plant("K-2").offspring());
    }

    @Test
    void keepsSharedTraysAndSowingsByWeightApart() {
        diary.write(
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2019-06-01 cuttings-struck T-1; mothers=K-1 K-2; count=60",
                "2019-09-01 taken T-1; count=20",
                "2019-10-01 seed-sown S-1; grams=20; seed_parent=K-1",
                "2019-10-01 seed-sown S-2; count=100; pollen_parent=K-1",
                "2020-05-01 counted S-1; count=80",
                "2020-06-01 sport-found V-1; mother=K-1",
                "2020-06-01 found-untagged F-1; candidates=K-1 K-2");
        assertEquals(
                List.of(
                        new OffspringTally(Act.STRUCK_FROM, 1, 0, 0, 0, 0, 0, 0, 60, 0, 0, 0),
                        new OffspringTally(Act.SEED_OF, 1, 0, 0, 0, 0, 0, 0, 0, 0, 1, 80),
                        new OffspringTally(Act.POLLEN_OF, 1, 100, 0, 0, 0, 100, 0, 0, 0, 0, 0),
                        new OffspringTally(Act.SPORT_OF, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0),
                        new OffspringTally(Act.ONE_OF, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 1)),
                plant("K-1").offspring());
    }

    @Test
    void keepsTheWholeDiaryWithWhatWasPutRight() {
        diary.write(
                "2018-05-01 layer-set J-1 J-2; mother=K-1; stem_mm=12; by=#1",
                "2018-09-01 severed J-1 J-2",
                "a: 2019-03-01 potted J-1 J-2; container=2 L",
                "b: 2019-04-01 moved J-1; place=Yard",
                "2019-05-01 seen J-1");
        diary.write(
                "2019-06-01 corrected J-1; target=a; field=container; value=3 L; reason=misread; by=#1",
                "2019-06-02 crossed-out; target=b; reason=it was another tree");
        Account account = plant("J-1");
        assertEquals(
                List.of(
                        "2018-05-01 layer-set AS_WRITTEN",
                        "2018-09-01 severed AS_WRITTEN",
                        "2019-03-01 potted CORRECTED",
                        "2019-04-01 moved CROSSED_OUT",
                        "2019-05-01 seen AS_WRITTEN"),
                lines(account));
        DiaryLine potted = account.diary().get(2);
        assertEquals(Optional.of("3 L"), potted.deed().container());
        assertEquals(List.of(new Tag("J-1")), potted.tags());
        Amendment correction = potted.amendments().get(0);
        assertEquals(Optional.of("container"), correction.field());
        assertEquals(Optional.of("2 L"), correction.was());
        assertEquals(Optional.of("3 L"), correction.value());
        assertEquals(Optional.of("misread"), correction.reason());
        assertEquals(Optional.of("Nuala"), correction.by());
        assertFalse(correction.isCrossingOut());
        DiaryLine crossedOut = account.diary().get(3);
        assertEquals(Optional.of(new Place("Yard")), crossedOut.deed().place());
        assertFalse(crossedOut.counts());
        assertTrue(crossedOut.amendments().get(0).isCrossingOut());
        assertEquals(
                Optional.of("it was another tree"),
                crossedOut.amendments().get(0).reason());
        // the other tree of the same entry is as it was written
        assertEquals(
                List.of(
                        "2018-05-01 layer-set AS_WRITTEN",
                        "2018-09-01 severed AS_WRITTEN",
                        "2019-03-01 potted AS_WRITTEN"),
                lines(plant("J-2")));
        DiaryLine set = account.diary().get(0);
        assertEquals(List.of(new Tag("J-1"), new Tag("J-2")), set.tags());
        assertEquals(Set.of(Role.BEGUN), set.roles());
        assertEquals(Optional.of("K-1"), set.deed().detail("mother"));
        DiaryLine onHer = plant("K-1").diary().get(1);
        assertEquals(Set.of(Role.MOTHER), onHer.roles());
        assertEquals(List.of(new Tag("J-1"), new Tag("J-2")), onHer.tags());
    }

    @Test
    void tellsSuccessiveCorrectionsInOrder() {
        diary.write("a: 2016-03-01 potted K-1; container=2 L; by=#1");
        diary.person(4, "Aoife", Person.Role.STAFF);
        diary.write("2016-04-01 corrected; target=a; field=container; value=3 L");
        diary.write("2016-05-01 corrected; target=a; field=container; value=5 L");
        diary.write("2016-06-01 corrected; target=a; field=day; value=2016-03-02");
        diary.write("2016-06-01 corrected; target=a; field=by; value=#4");
        DiaryLine line = plant("K-1").diary().get(1);
        assertEquals("2016-03-02", line.deed().day().toString());
        assertEquals(
                List.of(
                        "container: 2 L -> 3 L",
                        "container: 3 L -> 5 L",
                        "day: 2016-03-01 -> 2016-03-02",
                        "by: Nuala -> Aoife"),
                line.amendments().stream()
                        .map(amendment -> amendment.field().orElseThrow() + ": "
                                + amendment.was().orElse("") + " -> "
                                + amendment.value().orElse(""))
                        .toList());
    }

    @Test
    void marksWhatWasPutRightToNameAnother() {
        diary.write(
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Deshojo'", "a: 2018-05-01 layer-set J-1; mother=K-1");
        diary.write("2018-06-01 corrected; target=a; field=mother; value=K-2");
        assertEquals(
                List.of("2015-03-01 acquired AS_WRITTEN", "2018-05-01 layer-set NO_LONGER_ABOUT_IT"),
                lines(plant("K-1")));
        assertEquals(List.of("2015-03-01 acquired AS_WRITTEN", "2018-05-01 layer-set CORRECTED"), lines(plant("K-2")));
        assertEquals(List.of(), plant("K-1").offspring());
        assertEquals(1, plant("K-2").offspring().get(0).tags());
    }

    @Test
    void leavesOutWhatIsStillToCome() {
        diary.write("a: 2016-03-01 potted K-1; container=2 L", "b: 2017-03-01 potted K-1; container=3 L");
        diary.write("2018-01-01 crossed-out; target=b; reason=no");
        assertEquals(List.of("2015-03-01 acquired AS_WRITTEN"), lines(plant("K-1", LocalDate.of(2016, 2, 1))));
        assertEquals(
                List.of("2015-03-01 acquired AS_WRITTEN", "2016-03-01 potted AS_WRITTEN"),
                lines(plant("K-1", LocalDate.of(2017, 2, 1))));
        diary.write("2018-01-01 corrected; target=a; field=day; value=2017-06-01");
        assertEquals(List.of("2015-03-01 acquired AS_WRITTEN"), lines(plant("K-1", LocalDate.of(2017, 2, 1))));
    }

    @Test
    void tellsEveryNameThatItBore() {
        diary.write("2019-05-01 redetermined K-1; cultivar=Acer palmatum 'Seigen'; note=spring colour");
        Account account = plant("K-1");
        assertEquals("Acer palmatum 'Seigen'", account.named().toString());
        assertEquals(Named.How.DETERMINED, account.named().how());
        assertEquals(
                List.of("Acer palmatum 'Deshojo'", "Acer palmatum 'Seigen'"),
                account.namings().stream()
                        .map(deed -> deed.detail("cultivar").orElseThrow())
                        .toList());
    }

    @Test
    void refusesAnUnknownTagAndADayBeforeItBegan() {
        assertEquals(
                List.of("no plant or batch K-2; nearest: K-1"),
                assertThrows(Refused.class, () -> plant("K-2")).lines());
        assertEquals(
                List.of("K-1 began on 2015-03-01, after 2014-12-31"),
                assertThrows(Refused.class, () -> plant("K-1", LocalDate.of(2014, 12, 31)))
                        .lines());
    }
}
