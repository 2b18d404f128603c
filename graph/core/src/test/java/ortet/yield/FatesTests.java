package ortet.yield;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.nursery.Snapshot;

/** What became of units, in small nurseries counted by hand. */
class FatesTests {
    private static final String END = "2025-12-31";

    private final Diary diary = new Diary();

    @BeforeEach
    void aMother() {
        diary.write("2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'");
    }

    /** Return what became of the account of a tag: as to establishing, as to sale, and in size classes. */
    private String fate(String tag, String asOf) {
        return diary.store().read(view -> {
            Snapshot snapshot = Snapshot.of(view, LocalDate.parse(asOf), Fates.PARTS);
            Samples samples = Samples.of(snapshot, Periods.DEFAULTS);
            Fates fates = Fates.of(samples, Establishment.DEFAULTS);
            int account = fates.account(samples.cohorts().row(diary.unit(tag).value()));
            if (fates.isBlurred(account)) {
                return "blurred";
            }
            return Arrays.stream(Fates.Established.values())
                            .filter(how -> fates.count(account, how) != 0)
                            .map(how -> how + " " + fates.count(account, how))
                            .collect(Collectors.joining(", "))
                    + " / "
                    + Arrays.stream(Fates.Saleable.values())
                            .filter(how -> fates.count(account, how) != 0)
                            .map(how -> how + " " + fates.count(account, how))
                            .collect(Collectors.joining(", "));
        });
    }

    @Test
    void callsALayerEstablishedThatWasSeenAliveWhenItWasDue() {
        diary.write(
                "2024-05-01 layer-set J-1..J-6; mother=K-1",
                "2024-09-30 severed J-1..J-5; roots=full",
                "2025-05-28 moved J-1; place=Yard",
                "2025-05-29 moved J-2; place=Yard",
                "2025-04-20 lost J-3",
                "2025-06-10 lost J-4",
                "2025-07-01 sold J-5");
        // severed on 30 September 2024, due on 29 May 2025
        assertEquals("UNSEEN 1 / GROWING_ON 1", fate("J-1", END));
        assertEquals("TOO_YOUNG 1 / GROWING_ON 1", fate("J-1", "2025-05-28"));
        assertEquals("YES 1 / GROWING_ON 1", fate("J-2", END));
        assertEquals("NO 1 / NO 1", fate("J-3", END));
        assertEquals("NO 1 / NO 1", fate("J-4", END));
        assertEquals("YES 1 / YES 1", fate("J-5", END));
        assertEquals(" / ", fate("J-6", END));
    }

    @Test
    void countsWhatLeavesEarlyForNeither() {
        diary.write(
                "2024-05-01 layer-set J-1..J-4; mother=K-1",
                "2024-09-30 severed J-1..J-4; roots=full",
                "2024-10-05 sold J-1",
                "2024-10-05 culled J-2; cull=surplus",
                "2024-10-05 culled J-3; cull=quality",
                "2025-08-01 culled J-4; cull=quality");
        assertEquals("CENSORED 1 / YES 1", fate("J-1", END));
        assertEquals("CENSORED 1 / CENSORED 1", fate("J-2", END));
        assertEquals("NO 1 / NO 1", fate("J-3", END));
        assertEquals("YES 1 / NO 1", fate("J-4", END));
    }

    @Test
    void callsSaleableWhatWasGradedUnlessItWasCulledForQualitySince() {
        diary.write(
                "2024-05-01 layer-set J-1..J-4; mother=K-1",
                "2024-09-30 severed J-1..J-4; roots=full",
                "2025-09-01 graded J-1..J-4; size=medium",
                "2025-09-10 lost J-2",
                "2025-09-10 culled J-3; cull=quality",
                "2025-09-10 culled J-4; cull=surplus");
        assertEquals("YES 1 / YES 1", fate("J-1", END));
        assertEquals("UNSEEN 1 / GROWING_ON 1", fate("J-1", "2025-08-31"));
        assertEquals("YES 1 / YES 1", fate("J-2", END));
        assertEquals("YES 1 / NO 1", fate("J-3", END));
        assertEquals("YES 1 / YES 1", fate("J-4", END));
    }

    @Test
    void followsCuttingsFromTheTrayIntoTheirPots() {
        diary.write(
                "2024-06-01 cuttings-struck T-1; mothers=K-1; count=60",
                "2024-08-01 failed T-1; count=20",
                "2024-09-01 drawn P-1..P-10; source=T-1; container=9 cm",
                "2024-09-05 drawn B-1; source=T-1; count=20; container=9 cm",
                "2025-07-01 seen P-1 P-2 P-3",
                "2025-06-01 lost P-4",
                "2025-05-04 sold B-1; count=4",
                "2025-08-01 potted B-1; container=1 L",
                "2025-09-01 graded B-1; size=small",
                "2025-09-10 lost B-1; count=2");
        // P-1 to P-3 seen when due; of B-1 4 sold on the day it was due or later, and 16 potted on
        // P-4 lost unseen; P-5 to P-10 never seen; 10 still in the tray, of which nobody knows
        assertEquals("YES 23, NO 1, UNSEEN 6 / YES 20, NO 1, GROWING_ON 9", fate("T-1", END));
        // due on 30 April and on 4 May 2025
        assertEquals("TOO_YOUNG 30 / GROWING_ON 30", fate("T-1", "2025-04-29"));
        assertEquals("TOO_YOUNG 20, UNSEEN 10 / GROWING_ON 30", fate("T-1", "2025-04-30"));
        assertEquals("YES 4, UNSEEN 26 / YES 4, GROWING_ON 26", fate("T-1", "2025-05-04"));
    }

    @Test
    void countsATrayPottedAsAWholeFromThatDay() {
        diary.write(
                "2024-04-01 cuttings-struck T-1; mothers=K-1; count=10",
                "2024-05-01 potted T-1; container=9 cm",
                "2024-07-29 drawn P-1; source=T-1",
                "2024-07-30 drawn P-2; source=T-1",
                "2024-07-31 seen P-1 P-2");
        // potted on 1 May, due on 30 July; a plant drawn later began with its tray
        assertEquals("YES 2, UNSEEN 8 / GROWING_ON 10", fate("T-1", END));
    }

    @Test
    void keepsTraysThatWereSplitInOneAccount() {
        diary.write(
                "2024-04-01 cuttings-struck T-1; mothers=K-1; count=10",
                "2024-05-01 taken T-1; count=6",
                "2024-05-02 split T-2; source=T-1; count=7",
                "2024-05-03 potted T-2; container=9 cm",
                "2024-05-03 potted T-1; container=9 cm",
                "2024-09-01 seen T-2",
                "2024-09-02 lost T-1; count=1");
        // 4 pending and 3 growing went into T-2; 3 growing stayed
        assertEquals("YES 7, NO 1, UNSEEN 2 / NO 1, GROWING_ON 9", fate("T-1", END));
        assertEquals(fate("T-1", END), fate("T-2", END));
    }

    @Test
    void countsBatchesTogetherThatWereMergedWhileTheyGrew() {
        diary.write(
                "2024-04-01 cuttings-struck T-1 T-2; mothers=K-1; count=10",
                "2024-05-01 taken T-1; count=6",
                "2024-05-01 failed T-1; count=4",
                "2024-05-01 taken T-2; count=5",
                "2024-05-02 merged M-1; sources=T-1 T-2",
                "2024-05-03 potted M-1; container=9 cm",
                "2024-10-01 seen M-1");
        assertEquals("YES 16 / GROWING_ON 16", fate("T-1", END));
        assertEquals(fate("T-1", END), fate("T-2", END));
        assertEquals(fate("T-1", END), fate("M-1", END));
    }

    @Test
    void keepsApartWhatWasMergedBeforeAnythingGrew() {
        diary.write(
                "2024-04-01 cuttings-struck T-1 T-2; mothers=K-1; count=10",
                "2024-05-01 drawn P-1; source=T-1; container=9 cm",
                "2024-05-02 merged M-1; sources=T-1 T-2",
                "2024-05-03 potted M-1; container=9 cm",
                "2024-10-01 seen M-1 P-1");
        assertEquals("YES 1 / GROWING_ON 1", fate("T-1", END));
        assertEquals(" / ", fate("T-2", END));
        assertEquals("YES 19 / GROWING_ON 19", fate("M-1", END));
    }

    @Test
    void countsNowhereWhatWasMergedWithPlantsThatCountForNothing() {
        diary.write(
                "2024-04-01 cuttings-struck T-1; mothers=K-1; count=10",
                "2024-04-01 acquired R-1; count=30",
                "2024-05-01 taken T-1",
                "2024-05-02 merged M-1; sources=T-1 R-1",
                "2024-05-03 drawn P-1; source=M-1");
        assertEquals("blurred", fate("T-1", END));
    }

    @Test
    void countsNowhereWhereMoreWereFoundThanHadTaken() {
        diary.write(
                "2024-04-01 cuttings-struck T-1; mothers=K-1; count=10",
                "2024-05-01 taken T-1",
                "2024-05-02 counted T-1; count=12");
        assertEquals("blurred", fate("T-1", END));
    }

    @Test
    void beginsAGraftWhenItsUnionHeldAndGivesBackAStock() {
        diary.write(
                "2024-02-01 acquired R-1; count=5",
                "2024-03-01 graft-worked G-1; scion=K-1; stock=R-1",
                "2024-04-30 taken G-1",
                "2024-07-29 checked G-1; findings=callus");
        assertEquals("YES 1 / GROWING_ON 1", fate("G-1", END));
    }

    @Test
    void takesBackASaleThatCameBack() {
        diary.write(
                "2024-05-01 layer-set J-1; mother=K-1",
                "2024-09-30 severed J-1; roots=full",
                "2025-04-02 sold J-1",
                "2025-04-20 returned J-1");
        assertEquals("UNSEEN 1 / GROWING_ON 1", fate("J-1", END));
    }

    @Test
    void readsEntriesAsTheyWereCorrectedAndNotThoseCrossedOut() {
        diary.write(
                "2024-05-01 layer-set J-1 J-2 J-3; mother=K-1",
                "2024-09-30 severed J-1 J-2 J-3; roots=full",
                "a: 2025-07-01 seen J-1 J-2",
                "b: 2025-07-01 seen J-3",
                "c: 2025-07-01 graded J-1; size=medium");
        assertEquals("YES 1 / YES 1", fate("J-1", END));
        diary.write(
                "2025-12-01 corrected; target=a; field=day; value=2025-04-20",
                "2025-12-01 crossed-out; target=b; reason=wrong",
                "2025-12-01 crossed-out; target=c; reason=wrong");
        assertEquals("UNSEEN 1 / GROWING_ON 1", fate("J-1", END));
        assertEquals("UNSEEN 1 / GROWING_ON 1", fate("J-3", END));
    }

    @Test
    void startsADayKnownToTheMonthAtItsEnd() {
        diary.write(
                "2024-05-01 layer-set J-1 J-2; mother=K-1",
                "2024-06 severed J-1; roots=full",
                "2024-09-27 seen J-1",
                "2024-06-30 severed J-2; roots=full",
                "2024-09-28 seen J-2");
        // as if severed on 30 June: due on 28 September
        assertEquals("UNSEEN 1 / GROWING_ON 1", fate("J-1", END));
        assertEquals("YES 1 / GROWING_ON 1", fate("J-2", END));
    }
}
