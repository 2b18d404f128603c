package ortet.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.lineage.Finding;
import ortet.lineage.Recall;
import ortet.lineage.RecallQuestion;
import ortet.lineage.Route;
import ortet.plant.Person.Role;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Refused;

/** What a recall names, case by case, and how it explains it. */
class RecallTests {
    private final Shelf shelf = new Shelf();
    private final SqliteBookStore store = shelf.create();
    private final Diary diary = new Diary(store);

    @AfterEach
    void clear() {
        shelf.close();
    }

    /** A question put together piece by piece. */
    private final class Asking {
        private List<Tag> tags = List.of();
        private Optional<String> consignment = Optional.empty();
        private Optional<String> supplier = Optional.empty();
        private Optional<Place> place = Optional.empty();
        private Optional<LocalDate> from = Optional.empty();
        private Optional<LocalDate> to = Optional.empty();
        private Optional<LocalDate> since = Optional.empty();
        private Set<Route> routes = Route.ALL;
        private LocalDate asOf = Diary.TODAY;
        private int rounds;
        private boolean tools;
        private boolean clonal;
        private boolean sources = true;
        private boolean everywhere;

        Recall ask() {
            RecallQuestion question = new RecallQuestion(
                    tags,
                    consignment,
                    supplier,
                    place,
                    from,
                    to,
                    rounds,
                    tools,
                    since,
                    routes,
                    clonal,
                    sources,
                    everywhere,
                    asOf);
            return store.read(view -> Recall.of(view, question));
        }

        /** Return both lists: those that are implicated, then, after a stroke, those that cannot be ruled out. */
        String lists() {
            Recall recall = ask();
            return Tags.brief(recall.implicated().stream().map(Finding::tag).toList()) + " | "
                    + Tags.brief(recall.notRuledOut().stream().map(Finding::tag).toList());
        }

        String why(String tag) {
            return ask().all()
                    .filter(one -> one.tag().text().equals(tag))
                    .map(one -> one.tag() + " " + one.because() + doubts(one))
                    .findFirst()
                    .orElse("not found");
        }

        private static String doubts(Finding one) {
            return one.doubts().isEmpty() ? "" : " " + one.doubts();
        }
    }

    private Asking of(String tags) {
        Asking asking = new Asking();
        asking.tags = Tags.parse(tags);
        return asking;
    }

    // ---- up and down ----

    @Test
    void goesUpToEverySourceAndDownToAllRaisedFromThese() {
        diary.person(1, "A Supplier", Role.SUPPLIER);
        diary.write(
                "2024-02-01 acquired K-3 K-4; consignment=2024-17; supplier=#1",
                "2024-02-02 acquired K-5; consignment=2024-18; supplier=#1",
                "2024-05-03 layer-set J-12 J-13; mother=K-3",
                "2024-06-01 cuttings-struck T-1; mothers=K-4; count=10",
                "2024-09-01 severed J-12 J-13",
                "2025-05-03 layer-set J-20; mother=J-12");
        assertEquals("J-12 J-13 J-20 K-3 K-4 T-1 | ", of("J-12").lists());
        assertEquals("J-12 was asked about", of("J-12").why("J-12"));
        assertEquals(
                "K-3 gave on 2024-05-03 the layer J-12, which was asked about",
                of("J-12").why("K-3"));
        assertEquals(
                "T-1 was struck on 2024-06-01 from K-4, which came on 2024-02-01 with consignment 2024-17, as did K-3,"
                        + " which gave on 2024-05-03 the layer J-12, which was asked about",
                of("J-12").why("T-1"));
        Asking down = of("J-12");
        down.sources = false;
        // until it is severed a layer is a part of its mother
        assertEquals("J-12 J-13 J-20 K-3 | ", down.lists());
        down.since = Optional.of(LocalDate.parse("2024-10-01"));
        assertEquals("J-12 J-20 | ", down.lists());
    }

    @Test
    void explainsWhatCameWithAConsignment() {
        diary.write("2024-02-01 acquired K-3; consignment=2024-17", "2024-05-03 layer-set J-12; mother=K-3");
        Asking asking = new Asking();
        asking.consignment = Optional.of(" 2024-17 ");
        assertEquals("J-12 K-3 | ", asking.lists());
        assertEquals(
                "J-12 was layered on 2024-05-03 from K-3, which came with consignment 2024-17 on 2024-02-01",
                asking.why("J-12"));
        asking.consignment = Optional.of("2024-71");
        assertEquals(
                List.of("nothing in the book came with consignment 2024-71; nearest: 2024-17"),
                assertThrows(Refused.class, asking::ask).lines());
    }

    @Test
    void findsDeliveriesOfASupplierByTheirDays() {
        diary.person(1, "A Supplier", Role.SUPPLIER);
        diary.write(
                "2024-02-01 acquired K-1; supplier=#1; consignment=a",
                "2024-03 acquired K-2; supplier=#1; consignment=b",
                "2024-05-01 acquired K-3; supplier=#1; consignment=c");
        Asking asking = new Asking();
        asking.supplier = Optional.of("a supplier");
        assertEquals("K-1..K-3 | ", asking.lists());
        asking.from = Optional.of(LocalDate.parse("2024-03-01"));
        assertEquals("K-2 K-3 | ", asking.lists());
        asking.from = Optional.of(LocalDate.parse("2024-03-15"));
        assertEquals("K-3 | K-2", asking.lists());
        asking.to = Optional.of(LocalDate.parse("2024-04-01"));
        assertEquals(" | K-2", asking.lists());
    }

    @Test
    void cannotRuleOutADeliveryWhoseConsignmentNobodyWroteDown() {
        diary.person(1, "A Supplier", Role.SUPPLIER);
        diary.write(
                "2024-02-01 acquired K-1; supplier=#1; consignment=a",
                "2024-02-01 acquired K-2; supplier=#1",
                "2024-02-02 acquired K-3; supplier=#1",
                "2024-02 acquired K-4; supplier=#1",
                "2024-02-01 acquired K-5");
        assertEquals("K-1 | K-2 K-4", of("K-1").lists());
        assertEquals(
                "K-2 came on 2024-02-01 from the same supplier as K-1, which was asked about [SAME_DELIVERY]",
                of("K-1").why("K-2"));
    }

    @Test
    void goesByRootstocksSeedAndPollenUnlessToldOtherwise() {
        diary.write(
                "2015-01-01 acquired K-1 K-2 K-3",
                "2015-01-01 acquired R-1; count=9",
                "2016-01-01 graft-worked G-1; scion=K-1; stock=R-1",
                "2016-01-01 graft-worked G-2; scion=K-2; stock=R-1",
                "2016-01-01 seed-sown S-1; count=9; seed_parent=K-1; pollen_parent=K-3",
                "2016-01-01 divided D-1; mother=K-1");
        assertEquals("G-1 G-2 K-2 R-1 | ", of("G-2").lists());
        assertEquals("D-1 G-1 K-1 S-1 | ", of("K-1").lists());
        assertEquals("G-1 G-2 R-1 | ", of("R-1").lists());
        assertEquals("K-3 S-1 | ", of("K-3").lists());
        Asking clonal = of("K-1");
        clonal.clonal = true;
        assertEquals("D-1 G-1 K-1 | ", clonal.lists());
        Asking seed = of("K-1");
        seed.routes = Set.of(Route.SEED);
        assertEquals("K-1 S-1 | ", seed.lists());
    }

    @Test
    void goesBackToARootstockThatOutlivedItsGraft() {
        diary.write(
                "2015-01-01 acquired K-1",
                "2015-01-01 acquired R-1; count=9",
                "2016-03-01 graft-worked G-1; scion=K-1; stock=R-1",
                "2016-03-01 graft-worked GB-1; scion=K-1; stock=R-1; count=4",
                "2016-05-01 failed G-1",
                "2016-04-01 graft-worked G-2; stock=R-1",
                "2016-06-01 graft-worked G-3; stock=R-1");
        assertEquals("G-1 G-3 GB-1 K-1 R-1 | ", of("K-1").lists());
        assertEquals(
                "R-1 came back on 2016-05-01 as the rootstock of a graft that failed, G-1, which was grafted on"
                        + " 2016-03-01 with a scion of K-1, which was asked about",
                of("K-1").why("R-1"));
        diary.write(
                "2016-07-01 split GB-2; source=GB-1; count=2",
                "2016-08-01 failed GB-2; count=1",
                "2016-09-01 graft-worked G-4; stock=R-1");
        Asking late = of("GB-2");
        late.sources = false;
        assertEquals("G-4 GB-2 R-1 | ", late.lists());
    }

    // ---- what nobody knows ----

    @Test
    void cannotRuleOutTraysOfSeveralMothersAndMergedTrays() {
        diary.write(
                "2015-01-01 acquired K-1 K-2",
                "2016-01-01 cuttings-struck T-1; mothers=K-1 K-2; count=10",
                "2016-01-01 cuttings-struck T-2; mothers=K-1; count=10",
                "2016-01-01 cuttings-struck T-3; mothers=K-2; count=10",
                "2016-02-01 merged T-4; sources=T-2 T-3",
                "2017-01-01 drawn C-1; source=T-1",
                "2017-01-01 drawn C-2; source=T-4");
        assertEquals("K-1 T-2 | C-1 C-2 T-1 T-4", of("K-1").lists());
        assertEquals(
                "C-2 was drawn on 2017-01-01 from T-4, which was merged on 2016-02-01 from several, one of them T-2, which was"
                        + " struck on 2016-01-01 from K-1, which was asked about [MERGED]",
                of("K-1").why("C-2"));
        assertEquals("C-2 T-4 | C-1 K-1 K-2 T-1..T-3", of("C-2").lists());
    }

    @Test
    void cannotRuleOutWhatAPlantWithoutALabelMayBe() {
        diary.write(
                "2015-01-01 acquired K-1 K-2",
                "2016-01-01 found-untagged F-1; candidates=K-1 K-2",
                "2017-01-01 layer-set J-1; mother=F-1",
                "2017-01-01 layer-set J-2; mother=K-2");
        assertEquals("K-1 | F-1 J-1", of("K-1").lists());
        assertEquals("F-1 J-1 | J-2 K-1 K-2", of("F-1").lists());
    }

    @Test
    void takesADayKnownToTheMonthForAnyOfIt() {
        diary.write(
                "2015-01-01 acquired K-1; place=House 1",
                "2016-03-10 acquired K-2; place=House 1",
                "2016-03 moved K-1; place=Yard",
                "2016-03-20 acquired K-3; place=Yard",
                "2016-04-02 acquired K-4; place=House 1",
                "2016-04-02 acquired K-5; place=Yard",
                "2016-03-25 lost K-3");
        Asking asking = of("K-1");
        asking.rounds = 1;
        assertEquals("K-1 K-5 | K-2 K-3", asking.lists());
        assertEquals(
                "K-2 stood in House 1 from 2016-03-10 to 2016-03-31 with K-1, which was asked about [COARSE_DAY]",
                asking.why("K-2"));
    }

    // ---- contacts ----

    @Test
    void goesToWhatStoodInTheSameNestedPlaceAtTheSameTime() {
        diary.write(
                "2015-01-01 place-listed; place=House 1; premises=Sallowfield",
                "2015-01-01 place-listed; place=Bench 1; within=House 1",
                "2015-01-01 place-listed; place=Bench 2; within=House 1",
                "2015-01-01 acquired K-1; place=Bench 1",
                "2015-02-01 acquired K-2; place=House 1",
                "2015-02-01 acquired K-3; place=Bench 2",
                "2015-02-01 acquired K-4; place=Bench 1",
                "2015-03-01 moved K-1; place=Yard",
                "2015-03-01 acquired K-5; place=Bench 1",
                "2015-03-02 acquired K-6; place=Bench 1");
        Asking asking = of("K-1");
        assertEquals("K-1 | ", asking.lists());
        asking.rounds = 1;
        assertEquals("K-1 K-2 K-4 K-5 | ", asking.lists());
        assertEquals(
                "K-2 stood in House 1 / Bench 1 from 2015-02-01 to 2015-03-01 with K-1, which was asked about",
                asking.why("K-2"));
        assertEquals("K-5 stood in Bench 1 on 2015-03-01 with K-1, which was asked about", asking.why("K-5"));
        asking.rounds = 2;
        assertEquals("K-1..K-6 | ", asking.lists());
        assertEquals(
                "K-3 stood in Bench 2 / House 1 from 2015-02-01 on with K-2, which stood in House 1 / Bench 1 from 2015-02-01"
                        + " to 2015-03-01 with K-1, which was asked about",
                asking.why("K-3"));
    }

    @Test
    void neverGoesBackInTime() {
        diary.write(
                "2015-01-01 acquired K-1; place=House 1",
                "2015-01-01 acquired K-2; place=Yard",
                "2015-01-01 acquired K-3; place=Yard",
                "2015-01-01 layer-set J-1; mother=K-2",
                "2015-06-01 severed J-1; place=House 2",
                "2015-07-01 moved K-3; place=House 2",
                "2015-08-01 moved K-2; place=House 1",
                "2015-09-01 layer-set J-2; mother=K-2");
        Asking asking = of("K-1");
        asking.rounds = 3;
        assertEquals("J-2 K-1 K-2 | ", asking.lists());
        Finding mother = asking.ask()
                .all()
                .filter(one -> one.tag().text().equals("K-2"))
                .findFirst()
                .orElseThrow();
        assertEquals(Optional.of(LocalDate.parse("2015-08-01")), mother.since());
        assertEquals(1, mother.round());
        asking.since = Optional.of(LocalDate.parse("2015-10-01"));
        assertEquals("J-2 K-1 K-2 | ", asking.lists());
    }

    @Test
    void doesNotGoFromALayersNewPlaceBackToItsMother() {
        diary.write(
                "2015-01-01 acquired K-1; place=House 1",
                "2015-01-01 acquired K-2; place=Yard",
                "2015-02-01 layer-set J-1 J-2; mother=K-2",
                "2015-06-01 severed J-1; place=House 1");
        Asking asking = of("K-1");
        asking.rounds = 1;
        assertEquals("J-1 K-1 | ", asking.lists());
    }

    @Test
    void cannotRuleOutWhatStoodNobodyKnowsWhere() {
        diary.write(
                "2015-01-01 acquired K-1; place=House 1",
                "2015-01-01 acquired K-2",
                "2015-01-01 acquired K-3; place=Yard",
                "2015-02-01 layer-set J-1; mother=K-2",
                "2015-03-01 moved K-2; place=Yard");
        Asking asking = of("K-1");
        asking.rounds = 2;
        assertEquals("K-1 | J-1 K-2", asking.lists());
        assertEquals(
                "K-2 may have stood in House 1 from 2015-01-01 to 2015-02-28 with K-1, which was asked about [PLACE_UNKNOWN]",
                asking.why("K-2"));
        assertEquals(List.of(), asking.ask().unplaced());
        Asking unknown = of("K-2");
        unknown.rounds = 1;
        assertEquals("J-1 K-2 K-3 | ", unknown.lists());
        assertEquals(
                List.of(new Recall.Unplaced(
                        new Tag("K-2"),
                        Optional.of(LocalDate.parse("2015-01-01")),
                        Optional.of(LocalDate.parse("2015-02-28")))),
                unknown.ask().unplaced());
        unknown.everywhere = true;
        assertEquals("J-1 K-2 K-3 | K-1", unknown.lists());
    }

    @Test
    void goesToWhatTheSameHandsWorkedOnOnTheSameDay() {
        diary.person(1, "Aoife", Role.STAFF);
        diary.person(2, "Oksana", Role.STAFF);
        diary.write(
                "2015-01-01 acquired K-1 K-2 K-3 K-4 K-5 K-6",
                "2015-05-01 cut-back K-1; by=#1",
                "2015-05-01 potted K-2; container=2 L; by=#1",
                "2015-05-01 potted K-3; container=2 L; by=#2",
                "2015-05-02 potted K-4; container=2 L; by=#1",
                "2015-05 cut-back K-5; by=#1",
                "2015-05-01 noted K-6; note=x; by=#1",
                "2015-05-03 measured K-1; stem_mm=12");
        Asking asking = of("K-1");
        asking.tools = true;
        assertEquals("K-1 K-2 | K-5", asking.lists());
        assertEquals("K-2 was worked on by Aoife on 2015-05-01, as was K-1, which was asked about", asking.why("K-2"));
        assertEquals(1, asking.ask().nobodys());
        diary.write("a: 2015-05-04 cut-back K-1 K-6; by=#2", "2015-05-04 cut-back K-3; by=#2");
        assertEquals("K-1..K-3 K-6 | K-5", asking.lists());
        diary.write("2015-05-05 corrected K-1; target=a; field=day; value=2015-05-05");
        assertEquals("K-1 K-2 | K-5", asking.lists());
    }

    @Test
    void beginsWithWhatStoodInAPlace() {
        diary.write(
                "2015-01-01 acquired K-1; place=House 1",
                "2015-01-01 layer-set J-1; mother=K-1",
                "2015-06-01 acquired K-2; place=House 1",
                "2015-07-01 moved K-1; place=Yard",
                "2015-08-01 severed J-1; place=Yard",
                "2016-01-01 layer-set J-2; mother=K-1",
                "2016-01-01 acquired K-3; place=House 1");
        Asking asking = new Asking();
        asking.place = Optional.of(new Place("House 1"));
        assertEquals("J-1 J-2 K-1..K-3 | ", asking.lists());
        asking.from = Optional.of(LocalDate.parse("2015-06-15"));
        asking.to = Optional.of(LocalDate.parse("2015-12-31"));
        assertEquals("J-1 J-2 K-1 K-2 | ", asking.lists());
        assertEquals("K-1 stood in House 1 from 2015-06-15 to 2015-07-01", asking.why("K-1"));
        asking.place = Optional.of(new Place("House1"));
        assertEquals(
                List.of("nothing ever stood in House1; nearest: House 1"),
                assertThrows(Refused.class, asking::ask).lines());
    }

    // ---- who bought it ----

    @Test
    void tellsWhoBoughtWhatSinceItMayHaveBeenInfected() {
        diary.person(1, "A Customer", Role.CUSTOMER);
        diary.write(
                "2015-01-01 acquired B-1; count=20; place=Yard",
                "2015-01-01 acquired K-1; place=House 1",
                "2015-02-01 sold B-1; count=3; customer=#1",
                "2015-03-01 moved B-1; place=House 1",
                "2015-04-01 sold B-1; count=5; customer=#1",
                "2015-05-01 sold B-1; count=2",
                "2015-06-01 returned B-1; count=1; customer=#1");
        Asking asking = of("K-1");
        asking.rounds = 1;
        Finding batch = asking.ask().implicated().get(0);
        assertEquals("B-1", batch.tag().text());
        assertEquals(11, batch.growing());
        assertEquals(
                List.of("A Customer 2015-04-01 5 1", "nobody 2015-05-01 2 0"),
                batch.sales().stream()
                        .map(sale -> sale.shown().orElse("nobody") + " " + sale.day() + " " + sale.count() + " "
                                + sale.back())
                        .toList());
    }

    @Test
    void tellsWhatIsHereWhereAndWhetherItIsHeld() {
        diary.write(
                "2015-01-01 acquired K-1; place=House 1",
                "2015-02-01 layer-set J-1 J-2; mother=K-1",
                "2015-03-01 sport-found B-1; mother=K-1",
                "2015-04-01 held K-1; sign=spots",
                "2015-05-01 failed J-2");
        Recall recall = of("K-1").ask();
        assertEquals(
                List.of(
                        "B-1 true Optional[House 1] false Optional.empty",
                        "J-1 true Optional[House 1] false Optional.empty",
                        "J-2 false Optional.empty false Optional[failed on 2015-05-01]",
                        "K-1 true Optional[House 1] true Optional.empty"),
                recall.implicated().stream()
                        .map(one -> one.tag() + " " + one.isHere() + " " + one.place() + " " + one.held() + " "
                                + one.gone())
                        .toList());
        assertTrue(recall.implicated().get(0).onMother());
    }

    @Test
    void answersAsOfADay() {
        diary.write(
                "2015-01-01 acquired K-1; place=House 1",
                "2016-02-01 layer-set J-1; mother=K-1",
                "2017-02-01 layer-set J-2; mother=K-1");
        Asking asking = of("K-1");
        asking.asOf = LocalDate.parse("2016-12-31");
        assertEquals("J-1 K-1 | ", asking.lists());
        asking.tags = List.of(new Tag("J-2"));
        assertEquals(
                List.of("J-2 began on 2017-02-01, after 2016-12-31"),
                assertThrows(Refused.class, asking::ask).lines());
    }

    @Test
    void refusesWhatCannotBeAsked() {
        assertEquals(
                List.of("say what to recall: tags, --consignment, --supplier, or --place with --from, --to"),
                assertThrows(Refused.class, new Asking()::ask).lines());
        Asking asking = of("K-1");
        asking.from = Optional.of(LocalDate.parse("2015-01-01"));
        assertEquals(
                List.of("--from and --to go with --place, --consignment or --supplier; for tags there is --since"),
                assertThrows(Refused.class, asking::ask).lines());
        asking.place = Optional.of(new Place("House 1"));
        asking.to = Optional.of(LocalDate.parse("2014-01-01"));
        assertEquals(
                List.of("--to 2014-01-01 is before --from 2015-01-01"),
                assertThrows(Refused.class, asking::ask).lines());
        Asking late = of("K-1");
        late.since = Optional.of(LocalDate.parse("2030-01-01"));
        assertEquals(
                List.of("--since 2030-01-01 is after 2026-06-15"),
                assertThrows(Refused.class, late::ask).lines());
        assertEquals(
                List.of("no plant or batch K-1"),
                assertThrows(Refused.class, of("K-1")::ask).lines());
    }
}
