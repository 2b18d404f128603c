package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import ortet.plant.Person.Role;

/** Every rule of {@code docs/rules.md}: what is refused, what is remarked on, and the words used. */
class RulesTests {
    private final Diary diary = new Diary();

    @BeforeEach
    void growMothers() {
        diary.write(
                "2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
                "2015-03-01 acquired K-2; cultivar=Juniperus chinensis 'Itoigawa'");
    }

    private void refused(String fault, String... lines) {
        assertEquals(List.of(fault), diary.refusal(lines));
    }

    private void remarked(String remark, String... lines) {
        assertEquals(List.of(remark), diary.remarks(lines));
    }

    @Nested
    class Tags {
        @Test
        void unknownTagIsRefusedWithTheNearest() {
            refused("unknown-tag: no plant or batch K-3; nearest: K-1, K-2", "2020-05-01 seen K-3");
        }

        @Test
        void unknownMotherIsRefusedWithTheNearestAlsoFromTheSameProposal() {
            refused(
                    "unknown-tag: no plant or batch KJ-12; nearest: KJ-1, K-1, K-2",
                    "2016-05-01 acquired KJ-1",
                    "2020-05-01 layer-set J-100; mother=KJ-12");
        }

        @Test
        void tagInUseIsRefused() {
            refused(
                    "tag-in-use: K-1 is in use: plant, begun on 2015-03-01; a tag is never given twice",
                    "2020-05-01 layer-set K-1; mother=K-2");
        }

        @Test
        void tagInUseWithinOneProposalIsRefused() {
            refused(
                    "tag-in-use: K-9 is in use: acquired on 2016-01-01; a tag is never given twice",
                    "2016-01-01 acquired K-9",
                    "2017-01-01 acquired K-9");
        }

        @Test
        void tagThatDiffersInCaseAloneIsRefused() {
            refused(
                    "tag-in-use: k-1 differs from K-1 in upper and lower case alone; choose another",
                    "2020-05-01 acquired k-1");
        }

        @Test
        void retaggedUnitIsFoundUnderBothTags() {
            diary.write("2020-05-01 retagged K-1; new_tag=M-1", "2020-06-01 seen K-1", "2020-07-01 seen M-1");
            assertEquals(diary.unit("K-1"), diary.unit("M-1"));
            assertEquals("M-1", diary.facts("K-1").tag().text());
            refused(
                    "tag-in-use: K-1 is in use: plant, begun on 2015-03-01; a tag is never given twice",
                    "2021-05-01 acquired K-1");
        }
    }

    @Nested
    class Days {
        @Test
        void futureDayIsRefused() {
            refused("future-day: 2026-06-16 is after today, 2026-06-15", "2026-06-16 seen K-1");
        }

        @Test
        void monthThatHasBegunIsNoFuture() {
            diary.write("2026-06 seen K-1");
        }

        @Test
        void entryBeforeTheUnitBeganIsRefused() {
            refused(
                    "before-it-began: K-1 began on 2015-03-01 (acquired), after seen on 2014-03-01",
                    "2014-03-01 seen K-1");
        }

        @Test
        void yearIsReadWhereItContradictsLeast() {
            diary.write("2015 potted K-1; container=2 L");
            diary.write("2016-08-01 sold K-1", "2016 moved K-1; place=Yard");
        }

        @Test
        void backdatedEntryIsJudgedInItsPlace() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1", "2021-08-01 severed J-1");
            refused(
                    "still-on-mother: J-1 is still on its mother: it cannot be potted before it is severed",
                    "2021-07-01 potted J-1; container=1 L");
            diary.write("2021-08-02 potted J-1; container=1 L");
        }

        @Test
        void backdatedEndIsRefusedForWhatRestsOnIt() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1");
            refused(
                    "rests-on-it: then this could not be true any more: layer-set J-1 on 2020-05-01: K-1 was lost on"
                            + " 2019-01-01, so nothing can come from it by layer-set on 2020-05-01",
                    "2019-01-01 lost K-1");
        }
    }

    @Nested
    class Ends {
        @Test
        void nothingCanBeDoneToWhatIsSold() {
            diary.write("2020-05-01 sold K-1");
            refused(
                    "nothing-left: K-1 was sold on 2020-05-01, so it cannot be potted on 2021-01-01",
                    "2021-01-01 potted K-1; container=2 L");
            refused(
                    "nothing-left: K-1 was sold on 2020-05-01, so it cannot be sold on 2021-01-01",
                    "2021-01-01 sold K-1");
        }

        @Test
        void layerOnADeadMotherIsRefused() {
            diary.write("2020-05-01 lost K-1");
            refused(
                    "mother-not-growing: K-1 was lost on 2020-05-01, so nothing can come from it by layer-set on"
                            + " 2020-06-01",
                    "2020-06-01 layer-set J-1; mother=K-1");
        }

        @Test
        void soldTreeMayComeBack() {
            diary.write("2020-05-01 sold K-1", "2020-06-01 returned K-1", "2020-07-01 potted K-1; container=3 L");
            assertEquals("0+1", diary.standing("K-1"));
            refused("too-many: K-2 was not sold, so it cannot come back", "2020-06-01 returned K-2");
        }

        @Test
        void motherCannotGoWithLayersOn() {
            diary.write("2020-05-01 layer-set J-1..J-3 J-7; mother=K-1");
            refused(
                    "layers-on: K-1 was gone on 2020-09-01 with 4 layers on her (J-1..J-3 J-7): say first what became"
                            + " of them (severed, failed or withdrawn)",
                    "2020-09-01 sold K-1");
            diary.write("2020-09-01 failed J-1..J-3 J-7; cause=withdrawn", "2020-09-01 sold K-1");
        }

        @Test
        void layerCannotBecomePendingAgainAfterItsMotherWent() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1", "f: 2020-09-01 failed J-1", "2020-09-01 lost K-1");
            refused(
                    "layers-on: K-1 was gone on 2020-09-01 with a layer on her (J-1): say first what became of them"
                            + " (severed, failed or withdrawn)",
                    "2020-10-01 crossed-out; target=f; reason=wrong tag");
        }
    }

    @Nested
    class Layers {
        @Test
        void severingWhatHasFailedIsRefused() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1", "2020-09-01 failed J-1; cause=dried");
            refused("has-failed: J-1 failed on 2020-09-01: it cannot be severed", "2020-10-01 severed J-1");
        }

        @Test
        void severingTwiceIsRefused() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1", "2020-09-01 severed J-1; roots=fair");
            refused("has-taken: J-1 has nothing pending: it cannot be severed", "2020-10-01 severed J-1");
        }

        @Test
        void severingWithoutRootsIsAFailure() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1", "2020-09-01 severed J-1; roots=none");
            assertEquals("FAILED 1", diary.outcomes("J-1"));
        }

        @Test
        void layerTakesWhenSevered() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1");
            refused(
                    "layer-takes-when-severed: J-1 is a layer: it has taken when it is severed with roots",
                    "2020-09-01 taken J-1");
            diary.write("2020-09-01 severed J-1");
            assertEquals("TAKEN 1", diary.outcomes("J-1"));
            assertEquals("0+1", diary.standing("J-1"));
        }

        @Test
        void settingThatNobodyRecordedIsKeptInTheLineageAndOutOfEveryRate() {
            diary.write("2020 layer-set J-1; mother=K-1; set_unrecorded=yes", "2020-09-01 severed J-1; roots=full");
            assertEquals("", diary.outcomes("J-1"));
            assertEquals(java.util.Optional.empty(), diary.facts("J-1").cohort());
            assertEquals(diary.unit("K-1"), diary.facts("J-1").links().get(0).mother());
            assertEquals("0+1", diary.standing("J-1"));
        }

        @Test
        void nothingComesFromItself() {
            refused("same-unit: J-1 cannot come from itself", "2020-05-01 layer-set J-1; mother=J-1");
        }

        @Test
        void nothingComesFromItselfByWayOfOthers() {
            refused(
                    "comes-from-itself: J-1 would come from itself by way of J-2",
                    "2020-05-01 layer-set J-1; mother=J-2",
                    "2020-05-01 layer-set J-2; mother=J-1");
        }

        @Test
        void onlyALayerCanBeSeveredOrReworked() {
            refused("not-a-layer: K-1 is no layer: it cannot be severed", "2020-09-01 severed K-1");
            refused(
                    "not-a-layer: K-1 is no layer: it cannot be re-worked",
                    "2020-09-01 reworked K-1; rework=re-wrapped");
        }

        @Test
        void layerStillOnItsMotherCannotBeSoldOrLayered() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1");
            refused(
                    "still-on-mother: J-1 is still on its mother: it cannot be sold before it is severed",
                    "2020-09-01 sold J-1");
            refused(
                    "still-on-mother: J-1 is still on its mother; sever it before anything is taken from it",
                    "2020-09-01 cuttings-struck T-1; mothers=J-1; count=5");
        }

        @Test
        void checkedDeadIsAFailureAndCheckedAliveIsNot() {
            diary.write(
                    "2020-05-01 layer-set J-1 J-2; mother=K-1",
                    "2020-07-01 checked J-1; findings=dead",
                    "2020-07-01 checked J-2; findings=callus");
            assertEquals("FAILED 1", diary.outcomes("J-1"));
            assertEquals("STILL_ON 1", diary.outcomes("J-2"));
            assertEquals("1+0", diary.standing("J-2"));
        }

        @Test
        void ringFarFromUsualIsRemarkedOn() {
            remarked(
                    "ring-width: J-1: a ring of 5 mm on a stem of 12 mm; about one stem diameter is usual, twice is the"
                            + " widest advised",
                    "2020-05-01 layer-set J-1; mother=K-1; stem_mm=12; ring_mm=5; wound=full-ring");
            assertEquals(
                    List.of(),
                    diary.remarks(
                            "2020-05-01 layer-set J-2; mother=K-1; stem_mm=10; ring_mm=8",
                            "2020-05-01 layer-set J-3; mother=K-1; stem_mm=10; ring_mm=25",
                            "2020-05-01 layer-set J-4; mother=K-1; stem_mm=10; ring_mm=0; wound=tourniquet"));
            remarked(
                    "ring-width: J-5: a ring of 25.1 mm on a stem of 10 mm; about one stem diameter is usual, twice is"
                            + " the widest advised",
                    "2020-05-01 layer-set J-5; mother=K-1; stem_mm=10; ring_mm=25.1");
        }

        @Test
        void woundBelowAnotherIsRemarkedOn() {
            diary.write("2020-05-01 layer-set J-1; mother=K-1; branch=east 1; height_mm=600");
            remarked(
                    "wound-below: J-2: a wound below J-1, which is still on the same branch",
                    "2020-05-02 layer-set J-2; mother=K-1; branch=east 1; height_mm=300");
            remarked(
                    "wound-below: J-3: a wound below J-1, which is still on the same branch",
                    "2020-05-02 layer-set J-3; mother=K-1; below=J-1");
            assertEquals(
                    List.of(),
                    diary.remarks(
                            "2020-05-02 layer-set J-4; mother=K-1; branch=east 1; height_mm=900",
                            "2020-05-02 layer-set J-5; mother=K-1; branch=west 1; height_mm=300"));
        }
    }

    @Nested
    class Batches {
        @BeforeEach
        void strike() {
            diary.write("2020-06-01 cuttings-struck T-1; mothers=K-1:40 K-2:20; count=60");
        }

        @Test
        void moreThanThereIsCannotBeTaken() {
            refused(
                    "too-many: T-1 has 60 pending, so 70 cannot be taken on 2020-09-01",
                    "2020-09-01 taken T-1; count=70");
            diary.write("2020-08-01 failed T-1; count=10", "2020-09-01 drawn C-1..C-45; source=T-1");
            refused(
                    "too-many: T-1 has 5 pending, so 6 cannot be failed on 2020-10-01",
                    "2020-10-01 failed T-1; count=6");
            refused(
                    "too-many: T-1 has 5 left, so 6 cannot be drawn on 2020-10-01",
                    "2020-10-01 drawn D-1..D-6; source=T-1");
            diary.write("2020-10-01 drawn D-1..D-5; source=T-1");
            assertEquals("0+0", diary.standing("T-1"));
            assertEquals("FAILED 10, TAKEN 45, TAKEN 5", diary.outcomes("T-1"));
        }

        @Test
        void drawingTakesTheGrowingFirst() {
            diary.write("2020-09-01 taken T-1; count=20", "2020-09-02 drawn C-1..C-30; source=T-1");
            assertEquals("TAKEN 20, TAKEN 10", diary.outcomes("T-1"));
            assertEquals("30+0", diary.standing("T-1"));
        }

        @Test
        void backdatedLossIsJudgedAgainstWhatWasDrawnLater() {
            diary.write("2020-09-01 drawn C-1..C-60; source=T-1");
            refused(
                    "rests-on-it: then this could not be true any more: drawn C-1..C-60 on 2020-09-01: T-1 has 59 left,"
                            + " so 60 cannot be drawn on 2020-09-01",
                    "2020-08-01 failed T-1; count=1");
        }

        @Test
        void pendingCannotBeLostCulledOrSold() {
            refused("not-taken: T-1 has not taken yet: say that it failed", "2020-08-01 lost T-1; count=3");
            refused(
                    "not-taken: T-1 has not taken yet: say that it failed, or cull it as surplus",
                    "2020-08-01 culled T-1; count=3; cull=quality");
            refused("not-taken: T-1 has not taken yet: it cannot be sold", "2020-08-01 sold T-1; count=3");
            diary.write("2020-08-01 culled T-1; count=3; cull=surplus");
            assertEquals("WITHDRAWN 3", diary.outcomes("T-1"));
        }

        @Test
        void soldWithoutACountIsRefusedWhileSomeArePending() {
            diary.write("2020-09-01 taken T-1; count=20");
            refused(
                    "not-taken: T-1 has 40 units that have not taken; say how many of the others are sold",
                    "2020-10-01 sold T-1");
            diary.write("2020-10-01 sold T-1; count=20");
            assertEquals("40+0", diary.standing("T-1"));
        }

        @Test
        void onlyABatchCanBeDrawnFromSplitMergedOrCounted() {
            refused(
                    "not-a-batch: K-1 is one plant, not a batch: it cannot be drawn from",
                    "2020-10-01 drawn C-1; source=K-1");
            refused(
                    "not-a-batch: K-1 is one plant, not a batch: it cannot be counted",
                    "2020-10-01 counted K-1; count=4");
            refused(
                    "not-a-batch: K-1 is one plant, not a batch: it cannot be split",
                    "2020-10-01 split T-2; source=K-1; count=1");
            refused(
                    "not-a-batch: K-1 is one plant, not a batch: it cannot be merged",
                    "2020-10-01 merged T-2; sources=K-1 T-1");
        }

        @Test
        void countOfSeveralForOnePlantIsRefused() {
            refused(
                    "single-plant: K-1 is one plant: expected a count of 1 or none, found 3",
                    "2020-10-01 sold K-1; count=3");
        }

        @Test
        void trayPottedAsAWholeHasTaken() {
            remarked(
                    "potted-pending: T-1: potted as a whole, so all 60 pending count as taken",
                    "2020-10-01 potted T-1; container=9 cm");
            assertEquals("0+60", diary.standing("T-1"));
        }

        @Test
        void closingSettlesTheRest() {
            diary.write("2020-09-01 drawn C-1..C-45; source=T-1", "2020-10-01 closed T-1; rest=failed");
            assertEquals("TAKEN 45, FAILED 15", diary.outcomes("T-1"));
            refused(
                    "has-failed: T-1 failed on 2020-10-01: there is nothing to close",
                    "2020-11-01 closed T-1; rest=failed");
        }

        @Test
        void closingAsStillOnOrNotSeen() {
            diary.write("2020-09-01 closed T-1; rest=still-on", "2020-10-01 closed T-1; rest=not-seen");
            assertEquals("STILL_ON 60, NOT_SEEN 60", diary.outcomes("T-1"));
            assertEquals("0+0", diary.standing("T-1"));
        }

        @Test
        void splittingTakesThePendingFirstAndConservesTheCohort() {
            diary.write("2020-09-01 taken T-1; count=20", "2020-09-02 split T-2 T-3; source=T-1; count=25");
            assertEquals("0+10", diary.standing("T-1"));
            assertEquals("25+0", diary.standing("T-2"));
            assertEquals("15+10", diary.standing("T-3"));
            assertEquals("TAKEN 20, MOVED_ON 25, MOVED_ON 15", diary.outcomes("T-1"));
            assertEquals(
                    Integer.valueOf(15),
                    diary.facts("T-3").cohort().orElseThrow().count().orElseThrow());
            assertEquals(
                    diary.unit("T-1"), diary.facts("T-3").cohort().orElseThrow().root());
        }

        @Test
        void whatWasSplitOffIsToldAnewWhenItsSourceChanges() {
            diary.write("2020-09-02 split T-2; source=T-1; count=25");
            assertEquals("25+0", diary.standing("T-2"));
            diary.write("2020-09-01 taken T-1; count=50");
            assertEquals("10+15", diary.standing("T-2"));
            assertEquals("0+35", diary.standing("T-1"));
        }

        @Test
        void mergingPutsAllUnderANewTag() {
            diary.write(
                    "2020-06-02 cuttings-struck T-4; mothers=K-1; count=30",
                    "2020-09-01 failed T-4; count=5",
                    "2020-09-02 merged T-5; sources=T-1 T-4");
            assertEquals("85+0", diary.standing("T-5"));
            assertEquals("0+0", diary.standing("T-1"));
            assertEquals(2, diary.facts("T-5").links().size());
            assertEquals(
                    Integer.valueOf(85),
                    diary.facts("T-5").cohort().orElseThrow().count().orElseThrow());
            refused(
                    "nothing-left: T-1 went on under other tags on 2020-09-02, so it cannot be moved on 2020-10-01",
                    "2020-10-01 moved T-1; place=Yard");
        }

        @Test
        void pendingUnitsOfDifferentMethodsCannotBeMerged() {
            diary.write("2020-06-02 seed-sown S-1; count=30; supplier=");
            refused(
                    "not-alike: S-1 is raised another way than the rest: while units are pending, only like can be"
                            + " merged with like",
                    "2020-09-02 merged T-5; sources=T-1 S-1");
        }

        @Test
        void recountsAdjustTheCohort() {
            diary.write("2020-09-01 counted T-1; count=58; reason=two missing");
            assertEquals("NOT_SEEN 2", diary.outcomes("T-1"));
            diary.write("2020-09-02 counted T-1; count=61");
            assertEquals("NOT_SEEN 2, FOUND_MORE 3", diary.outcomes("T-1"));
            assertEquals("61+0", diary.standing("T-1"));
        }

        @Test
        void moreFindingsThanUnitsAreRefused() {
            refused(
                    "too-many: T-1 has 60 there, so 61 cannot be checked on 2020-09-01",
                    "2020-09-01 checked T-1; findings=callus:31 roots-showing:30");
        }

        @Test
        void mixedMothersWithTooManyCuttingsAreRefusedByTheEntryItself() {
            diary.write("2020-06-03 cuttings-struck T-9; mothers=K-1:3; count=3");
        }
    }

    @Nested
    class Seed {
        @Test
        void sowingByWeightHasNoCountUntilCounted() {
            diary.write("2020-03-01 seed-sown S-1; grams=12; seed_parent=K-1");
            assertEquals("?+0", diary.standing("S-1"));
            diary.write("2020-06-01 counted S-1; count=85");
            assertEquals("0+85", diary.standing("S-1"));
            assertEquals("TAKEN 85", diary.outcomes("S-1"));
        }

        @Test
        void splittingAnUncountedSowingIsRefused() {
            diary.write("2020-03-01 seed-sown S-1; grams=12; seed_parent=K-1");
            refused(
                    "not-counted: nobody has counted S-1 yet; count it before it is split",
                    "2020-06-01 split S-2; source=S-1; count=4");
        }

        @Test
        void seedlingUnderTheNameOfACloneIsRemarkedOn() {
            remarked(
                    "seedling-clonal-name: S-1: seedlings do not keep the name of a clone, Acer palmatum 'Deshojo'",
                    "2020-03-01 seed-sown S-1; count=20; seed_parent=K-1; cultivar=Acer palmatum 'Deshojo'");
            assertEquals(
                    List.of(),
                    diary.remarks("2020-03-01 seed-sown S-2; count=20; seed_parent=K-1; cultivar=Acer palmatum"));
        }

        @Test
        void seedWithoutParentOrSupplierIsRemarkedOn() {
            remarked(
                    "mother-unrecorded: S-1: neither the plant that bore the seed nor a supplier is named",
                    "2020-03-01 seed-sown S-1; count=20");
        }
    }

    @Nested
    class Grafts {
        @BeforeEach
        void growStocks() {
            diary.write("2019-03-01 acquired R-1; count=50; cultivar=Acer palmatum", "2019-03-01 acquired R-2");
        }

        @Test
        void failedGraftGivesItsStockBack() {
            diary.write("2020-02-01 graft-worked G-1..G-10; scion=K-1; stock=R-1");
            assertEquals("0+40", diary.standing("R-1"));
            diary.write("2020-05-01 failed G-1..G-3; cause=union-failed", "2020-05-02 taken G-4..G-10");
            assertEquals("0+43", diary.standing("R-1"));
            assertEquals("0+1", diary.standing("G-4"));
            diary.write("2020-06-01 graft-worked G-20; scion=K-1; stock=R-2");
            refused(
                    "nothing-left: R-2 was worked as a rootstock on 2020-06-01, so it cannot be potted on 2020-07-01",
                    "2020-07-01 potted R-2; container=1 L");
            diary.write("2020-07-01 failed G-20", "2020-07-02 potted R-2; container=1 L");
        }

        @Test
        void stockComesBackAlsoAfterTheTrayOfGraftsWasSplit() {
            diary.write(
                    "2020-02-01 graft-worked GB-1; scion=K-1; stock=R-1; count=30",
                    "2020-03-01 split GB-2; source=GB-1; count=10",
                    "2020-05-01 failed GB-2; count=4");
            assertEquals("0+24", diary.standing("R-1"));
        }

        @Test
        void moreGraftsThanStocksAreRefused() {
            refused(
                    "too-many: R-1 has 50 growing, so 60 cannot be graft worked on 2020-02-01",
                    "2020-02-01 graft-worked GB-1; scion=K-1; stock=R-1; count=60");
        }

        @Test
        void graftOnItselfIsRefused() {
            assertEquals(
                    "same-unit: K-1 cannot be worked on itself",
                    diary.refusal("2020-02-01 graft-worked G-1; scion=K-1; stock=K-1")
                            .get(0));
        }

        @Test
        void graftOfAnotherCultivarIsRemarkedOn() {
            remarked(
                    "cultivar-differs: G-1: said to be Acer palmatum 'Katsura', but K-1 is Acer palmatum 'Deshojo'",
                    "2020-02-01 graft-worked G-1; scion=K-1; stock=R-1; cultivar=Acer palmatum 'Katsura'");
            remarked(
                    "mother-unrecorded: G-2: no scion plant is named",
                    "2020-02-01 graft-worked G-2; stock=R-1; cultivar=Acer palmatum 'Katsura'");
        }
    }

    @Nested
    class Health {
        @Test
        void whatIsHeldIsNeitherPottedNorPropagatedNorSold() {
            diary.write("2020-05-01 held K-1; sign=leaf spots");
            refused(
                    "held: K-1 is held for plant health; clear it before it is potted",
                    "2020-06-01 potted K-1; container=2 L");
            refused("held: K-1 is held for plant health; clear it before it is sold", "2020-06-01 sold K-1");
            refused(
                    "held: K-1 is held for plant health; clear it before anything is taken from it",
                    "2020-06-01 layer-set J-1; mother=K-1");
            diary.write("2020-06-02 moved K-1; place=Quarantine", "2020-07-01 cleared K-1", "2020-07-02 sold K-1");
        }

        @Test
        void clearingWhatWasNotHeldIsRemarkedOn() {
            remarked("not-held: K-1: cleared, but it was not held", "2020-06-01 cleared K-1");
        }
    }

    @Nested
    class Persons {
        @Test
        void unknownPersonIsRefused() {
            refused("unknown-person: by: no person #4 in the book", "2020-05-01 seen K-1; by=#4");
            refused("unknown-person: person: no person #4 in the book", "2020-05-01 sold K-1; customer=#4");
        }

        @Test
        void saleToAnotherThanThePlantIsReservedForIsRemarkedOn() {
            diary.person(1, "Nuala Example", Role.CUSTOMER);
            diary.person(2, "Fintan Sample", Role.CUSTOMER);
            diary.write("2020-05-01 reserved K-1; customer=#1");
            remarked(
                    "reserved-for-another: K-1: sold to Fintan Sample, but reserved for Nuala Example",
                    "2020-06-01 sold K-1; customer=#2");
        }
    }

    @Nested
    class Reservations {
        @Test
        void saleOfAllThatWasPromisedEndsTheReservation() {
            diary.person(1, "Nuala Example", Role.CUSTOMER);
            diary.person(2, "Fintan Sample", Role.CUSTOMER);
            diary.write("2020-01-01 acquired R-1; count=50", "2020-05-01 reserved R-1; count=15; customer=#1");
            diary.write("2020-06-01 sold R-1; count=10; customer=#1");
            remarked(
                    "reserved-for-another: R-1: sold to Fintan Sample, but reserved for Nuala Example",
                    "2020-06-02 sold R-1; count=1; customer=#2");
            diary.write("2020-06-03 sold R-1; count=5; customer=#1");
            assertEquals(List.of(), diary.remarks("2020-06-04 sold R-1; count=1; customer=#2"));
        }
    }

    @Nested
    class Listed {
        @Test
        void unlistedNamesAreRemarkedOnWithTheNearest() {
            diary.write(
                    "2015-01-01 cultivar-listed; cultivar=Acer palmatum 'Deshojo'",
                    "2015-01-01 place-listed; place=House 1");
            remarked(
                    "cultivar-unlisted: K-8: Acer palmatum 'Deshoju' is not listed; nearest: Acer palmatum 'Deshojo'",
                    "2020-05-01 acquired K-8; cultivar=Acer palmatum 'Deshoju'");
            remarked(
                    "place-unlisted: K-8: Hause 1 is not listed; nearest: House 1",
                    "2020-05-02 moved K-8; place=Hause 1");
        }

        @Test
        void rootCuttingsOfAChimeraAreRemarkedOn() {
            diary.write("2015-01-01 cultivar-listed; cultivar=Acer palmatum 'Deshojo'; chimera=yes");
            remarked(
                    "chimera-root-cuttings: T-1: Acer palmatum 'Deshojo' is a chimera; root cuttings do not keep it",
                    "2020-05-01 cuttings-struck T-1; mothers=K-1; count=10; wood=root");
        }

        @Test
        void protectedCultivarWithoutALicenceIsRemarkedOn() {
            diary.write(
                    "2015-01-01 cultivar-listed; cultivar=Acer palmatum 'Deshojo'; right=protected; protected_until=2030");
            remarked(
                    "protected: J-1: Acer palmatum 'Deshojo' is listed as protected and no licence is named; propagating"
                            + " it without the right holder's licence can be unlawful",
                    "2020-05-01 layer-set J-1; mother=K-1");
            diary.write(
                    "2021-01-01 cultivar-listed; cultivar=Acer palmatum 'Deshojo'; right=protected; licence=L 17/2021");
            assertEquals(List.of(), diary.remarks("2021-05-01 layer-set J-2; mother=K-1"));
        }
    }

    @Nested
    class Sports {
        @Test
        void sportGivesLayersButIsNotPotted() {
            diary.write("2020-05-01 sport-found SP-1; mother=K-1; branch=west 2");
            refused(
                    "still-on-mother: SP-1 is a branch of its plant: it cannot be potted",
                    "2020-06-01 potted SP-1; container=1 L");
            refused(
                    "still-on-mother: SP-1 is a branch of its plant: layer it, strike it or graft it",
                    "2020-06-01 divided D-1; mother=SP-1");
            diary.write("2020-06-01 layer-set J-1; mother=SP-1", "2020-09-01 severed J-1");
        }
    }

    @Nested
    class Divisions {
        @Test
        void dividedPlantMayBeUsedUp() {
            diary.write("2020-05-01 divided D-1..D-3; mother=K-2; remainder=used-up");
            assertEquals("0+0", diary.standing("K-2"));
            assertEquals("0+1", diary.standing("D-2"));
            refused(
                    "nothing-left: K-2 was used up on 2020-05-01, so it cannot be seen on 2020-06-01",
                    "2020-06-01 seen K-2");
        }
    }

    @Nested
    class Amendments {
        @BeforeEach
        void setLayers() {
            diary.write("s: 2020-05-01 layer-set J-1..J-4; mother=K-1; stem_mm=12");
        }

        @Test
        void correctionChangesWhatTheEntrySays() {
            diary.write("2020-05-02 corrected; target=s; field=mother; value=K-2");
            assertEquals(diary.unit("K-2"), diary.facts("J-1").links().get(0).mother());
            assertEquals(diary.unit("K-2"), diary.facts("J-4").links().get(0).mother());
        }

        @Test
        void correctionForOneTagOfManyLeavesTheOthers() {
            diary.write("2020-05-02 corrected J-2; target=s; field=mother; value=K-2");
            assertEquals(diary.unit("K-2"), diary.facts("J-2").links().get(0).mother());
            assertEquals(diary.unit("K-1"), diary.facts("J-1").links().get(0).mother());
        }

        @Test
        void misreadTagIsCorrectedAndTheUnitStaysTheSame() {
            var unit = diary.unit("J-2");
            diary.write("2020-05-02 corrected J-2; target=s; field=tags; value=J-20");
            assertEquals(unit, diary.unit("J-20"));
            refused("unknown-tag: no plant or batch J-2; nearest: J-1, J-20, J-3", "2020-06-01 seen J-2");
            diary.write("2020-06-01 acquired J-2");
        }

        @Test
        void tagCannotBeCorrectedWhileAnotherEntryNamesIt() {
            diary.write("2020-06-01 checked J-2; findings=callus");
            refused(
                    "rests-on-it: then this could not be true any more: checked J-2 on 2020-06-01, and names J-2",
                    "2020-06-02 corrected J-2; target=s; field=tags; value=J-20");
        }

        @Test
        void oneTagCanBeTakenOut() {
            diary.write("2020-05-02 corrected J-2; target=s; field=tags");
            refused("unknown-tag: no plant or batch J-2; nearest: J-1, J-3, J-4", "2020-06-01 seen J-2");
            diary.write("2020-06-01 seen J-3");
        }

        @Test
        void crossingOutIsRefusedForWhatRestsOnIt() {
            diary.write("2020-09-01 severed J-1", "2020-09-02 potted J-1; container=1 L");
            assertEquals(
                    List.of(
                            "rests-on-it: then this could not be true any more: severed J-1 on 2020-09-01, and names J-1",
                            "rests-on-it: then this could not be true any more: potted J-1 on 2020-09-02, and names J-1"),
                    diary.refusal("2020-10-01 crossed-out; target=s; reason=wrong mother").stream()
                            .filter(line -> line.contains("names"))
                            .toList());
        }

        @Test
        void crossedOutEntryStaysReadableAndCountsForNothing() {
            diary.write("x: 2020-06-01 failed J-1", "2020-06-02 crossed-out; target=x; reason=misread");
            assertEquals("1+0", diary.standing("J-1"));
            assertEquals(2, diary.facts("J-1").entries().size());
        }

        @Test
        void amendmentsCannotBeAmended() {
            diary.write("c: 2020-05-02 corrected; target=s; field=stem_mm; value=14");
            refused(
                    "no-amending-amendments: a corrected entry cannot itself be amended; amend the entry that it is"
                            + " about",
                    "2020-05-03 crossed-out; target=c; reason=no");
        }

        @Test
        void crossedOutEntryCannotBeAmended() {
            diary.write("x: 2020-06-01 seen J-1", "2020-06-02 crossed-out; target=x; reason=misread");
            refused(
                    "already-crossed-out: entry " + diary.id("x") + " is crossed out already",
                    "2020-06-03 corrected; target=x; field=day; value=2020-06-02");
        }

        @Test
        void unknownEntryAndBadFieldsAreRefused() {
            refused(
                    "unknown-entry: no entry 00000000-0000-4000-8000-000000000009 in the book",
                    "2020-06-03 crossed-out; target=00000000-0000-4000-8000-000000000009; reason=no");
            refused(
                    "bad-correction: layer-set has no field \"stem\"; it has day, by, tags, mother, branch, height_mm,"
                            + " branch_order, above, below, below_union, stem_mm, ring_mm, wound, hormone, strength, carrier, medium,"
                            + " wrap, place, stock_age_years, hedged, set_unrecorded, note; nearest: stem_mm",
                    "2020-06-03 corrected; target=s; field=stem; value=14");
            refused(
                    "bad-correction: the entry does not name J-9; nearest: J-1, J-2, J-3",
                    "2020-06-03 corrected J-9; target=s; field=stem_mm; value=14");
            refused(
                    "bad-correction: stem_mm: expected a number such as 12 or 12.5, found \"thick\"",
                    "2020-06-03 corrected; target=s; field=stem_mm; value=thick");
            refused(
                    "future-day: 2027-01-01 is after today, 2026-06-15",
                    "2020-06-03 corrected; target=s; field=day; value=2027-01-01");
        }

        @Test
        void correctedDayMovesTheEntryAndIsJudged() {
            diary.write("v: 2020-09-01 severed J-1");
            refused(
                    "rests-on-it: then this could not be true any more: severed J-1 on 2020-04-01: J-1 began on"
                            + " 2020-05-01 (layer-set), after severed on 2020-04-01",
                    "2020-10-01 corrected; target=v; field=day; value=2020-04-01");
            diary.write("2020-10-01 corrected; target=v; field=day; value=2020-08-15");
            assertEquals(
                    "2020-08-15", diary.facts("J-1").outcomes().get(0).day().toString());
        }

        @Test
        void sameEntryTwiceAddsNothingAndAChangedOneIsReported() {
            Proposal proposal = diary.proposal("e: 2020-06-01 seen K-1");
            diary.store().append(proposal, diary.judge());
            Receipt again = diary.store().append(proposal, diary.judge());
            assertEquals(1, again.alreadyThere());
            assertEquals(0, again.written().size());
        }
    }

    @Nested
    class Uncertain {
        @Test
        void plantFoundWithoutALabelIsOneOfItsCandidates() {
            diary.write(
                    "2020-05-01 layer-set J-1 J-2; mother=K-1",
                    "2020-09-01 severed J-1 J-2",
                    "2021-03-01 found-untagged F-1; candidates=J-1 J-2",
                    "2021-04-01 potted F-1; container=2 L");
            assertEquals(2, diary.facts("F-1").links().size());
            assertEquals(Act.ONE_OF, diary.facts("F-1").links().get(0).act());
        }
    }
}
