package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.lineage.Kin.SameClone;
import ortet.plant.Tag;
import ortet.value.Refused;

/** How two plants of a book are related. */
class KinTests {
    private final Diary diary = new Diary();

    private Kin kin(String one, String other) {
        Kin there = diary.store().read(view -> Kin.of(view, new Tag(one), new Tag(other), Diary.TODAY));
        Kin back = diary.store().read(view -> Kin.of(view, new Tag(other), new Tag(one), Diary.TODAY));
        assertEquals(there.least(), back.least());
        assertEquals(there.most(), back.most());
        assertEquals(there.sameClone(), back.sameClone());
        assertEquals(there.unknown(), back.unknown());
        assertEquals(
                there.nearest().stream().map(Kin.Ancestor::tag).toList(),
                back.nearest().stream().map(Kin.Ancestor::tag).toList());
        return there;
    }

    private static String coefficient(Kin kin) {
        String least = kin.least().orElseThrow().toString().replace(" ", "");
        return kin.isOneOfSeveral()
                ? least + " to " + kin.most().orElseThrow().toString().replace(" ", "")
                : least;
    }

    private void isKin(String expected, SameClone clone, String one, String other) {
        Kin kin = kin(one, other);
        assertEquals(expected, coefficient(kin), () -> one + " and " + other);
        assertEquals(clone, kin.sameClone(), () -> one + " and " + other);
    }

    private static List<String> ancestors(Kin kin) {
        return kin.nearest().stream()
                .map(one -> one.tag() + " " + one.firstGenerations() + "(" + one.firstBySeed() + ") "
                        + one.secondGenerations() + "(" + one.secondBySeed() + ")")
                .toList();
    }

    /** Two mothers and a father, seed of both, layers, cuttings and grafts. */
    private void family() {
        diary.write(
                "2000-01-01 acquired K-1 K-2 K-3",
                "2001-01-01 seed-sown S-1; count=9; seed_parent=K-1; pollen_parent=K-2",
                "2001-01-01 seed-sown S-2; count=9; seed_parent=K-1; pollen_parent=K-3",
                "2002-01-01 drawn P-1 P-2; source=S-1",
                "2002-01-01 drawn Q-1; source=S-2",
                "2003-01-01 layer-set J-1 J-2; mother=P-1",
                "2004-01-01 severed J-1 J-2",
                "2004-02-01 cuttings-struck T-1; mothers=J-1; count=10",
                "2005-01-01 drawn C-1 C-2; source=T-1",
                "2005-01-01 acquired R-1; count=20",
                "2006-01-01 graft-worked G-1; scion=P-2; stock=R-1");
    }

    /** Parent and offspring 1/4, full sibs 1/4, half sibs 1/8, itself 1/2 (Falconer and Mackay 1996, chapter 5). */
    @Test
    void isThatOfTheTextbookForCloseKin() {
        family();
        isKin("1/2", SameClone.YES, "K-1", "K-1");
        isKin("1/4", SameClone.NO, "K-1", "P-1");
        isKin("1/4", SameClone.NO, "P-1", "P-2");
        isKin("1/8", SameClone.NO, "P-1", "Q-1");
    }

    @Test
    void takesTheRametsOfACloneForOneGenotype() {
        family();
        isKin("1/2", SameClone.YES, "P-1", "J-1");
        isKin("1/2", SameClone.YES, "J-1", "J-2");
        isKin("1/2", SameClone.YES, "C-1", "J-2");
        isKin("1/2", SameClone.YES, "T-1", "J-2");
        isKin("1/4", SameClone.NO, "C-1", "G-1");
        isKin("1/4", SameClone.NO, "C-1", "K-2");
        isKin("1/2", SameClone.YES, "G-1", "P-2");
    }

    @Test
    void doesNotCallPlantsOfUnknownOriginUnrelated() {
        family();
        Kin kin = kin("K-1", "K-2");
        assertEquals("0", coefficient(kin));
        assertEquals(SameClone.NOT_KNOWN, kin.sameClone());
        assertEquals(List.of(new Tag("K-1"), new Tag("K-2")), kin.unknown());
        assertEquals(List.of(), kin.nearest());
        assertEquals(
                List.of(new Tag("K-1"), new Tag("K-2"), new Tag("K-3")),
                kin("P-1", "Q-1").unknown());
    }

    @Test
    void saysThatSeedOfAnUnknownFatherIsOfUnknownOrigin() {
        diary.write(
                "2000-01-01 acquired K-1",
                "2001-01-01 seed-sown S-1; count=9; seed_parent=K-1",
                "2002-01-01 drawn P-1 P-2; source=S-1");
        Kin kin = kin("P-1", "P-2");
        assertEquals("1/8", coefficient(kin));
        assertEquals(List.of(new Tag("K-1"), new Tag("P-1"), new Tag("P-2")), kin.unknown());
    }

    @Test
    void namesEveryNearestCommonAncestor() {
        family();
        assertEquals(List.of("K-1 1(1) 1(1)", "K-2 1(1) 1(1)"), ancestors(kin("P-1", "P-2")));
        assertEquals(List.of("K-1 1(1) 1(1)"), ancestors(kin("P-1", "Q-1")));
        assertEquals(List.of("P-1 1(0) 1(0)"), ancestors(kin("J-1", "J-2")));
        assertEquals(List.of("J-1 1(0) 1(0)"), ancestors(kin("C-1", "C-2")));
        assertEquals(List.of("P-1 2(0) 1(0)"), ancestors(kin("C-1", "J-2")));
        assertEquals(List.of("K-1 3(1) 2(1)", "K-2 3(1) 2(1)"), ancestors(kin("C-1", "G-1")));
        assertEquals(List.of("P-1 0(0) 1(0)"), ancestors(kin("P-1", "J-1")));
        assertEquals(List.of("P-1 0(0) 0(0)"), ancestors(kin("P-1", "P-1")));
    }

    /** What grows below a union is no kin of what grows above it. */
    @Test
    void doesNotCountTheRootstock() {
        family();
        Kin kin = kin("G-1", "R-1");
        assertEquals("0", coefficient(kin));
        assertEquals(List.of(), kin.nearest());
    }

    @Test
    void takesASportForItsPlantAndForACloneOfItsOwn() {
        diary.write(
                "2000-01-01 acquired K-1",
                "2001-01-01 sport-found B-1; mother=K-1",
                "2002-01-01 layer-set J-1; mother=B-1",
                "2002-01-01 layer-set J-2; mother=K-1");
        isKin("1/2", SameClone.NO, "J-1", "J-2");
        isKin("1/2", SameClone.NO, "J-1", "K-1");
        isKin("1/2", SameClone.YES, "J-1", "B-1");
        assertEquals(List.of("K-1 2(0) 1(0)"), ancestors(kin("J-1", "J-2")));
    }

    @Test
    void tellsTheLeastAndTheMostWhereOneIsOneOfSeveral() {
        diary.write(
                "2000-01-01 acquired K-1 K-2",
                "2001-01-01 cuttings-struck T-1; mothers=K-1 K-2; count=10",
                "2002-01-01 drawn C-1 C-2; source=T-1");
        isKin("0 to 1/2", SameClone.NOT_KNOWN, "C-1", "K-1");
        isKin("0 to 1/2", SameClone.NOT_KNOWN, "C-1", "C-2");
        assertEquals(List.of("K-1 1(0) 1(0)", "K-2 1(0) 1(0)"), ancestors(kin("C-1", "C-2")));
    }

    @Test
    void takesTwoSeedlingsOfABatchForSibs() {
        family();
        isKin("1/4", SameClone.NO, "S-1", "S-1");
        isKin("1/4", SameClone.NO, "S-1", "P-1");
        isKin("1/8", SameClone.NO, "S-1", "S-2");
        isKin("1/2", SameClone.YES, "P-1", "P-1");
    }

    @Test
    void doesNotKnowWhetherABoughtBatchIsOneClone() {
        diary.write(
                "2000-01-01 acquired R-1; count=9",
                "2000-01-01 acquired R-2; count=9; raised=seed",
                "2001-01-01 drawn P-1 P-2; source=R-1",
                "2001-01-01 drawn Q-1 Q-2; source=R-2",
                "2001-01-01 layer-set J-1 J-2; mother=P-1");
        isKin("0", SameClone.NOT_KNOWN, "P-1", "P-2");
        isKin("0", SameClone.NO, "Q-1", "Q-2");
        isKin("1/2", SameClone.YES, "J-1", "J-2");
        assertEquals(List.of("R-1 0(0) 0(0)"), ancestors(kin("P-1", "P-2")));
    }

    @Test
    void knowsThatASeedlingRaisedHereIsNotWhatWasThereBefore() {
        family();
        isKin("0", SameClone.NO, "K-3", "P-1");
        diary.write("2010-01-01 acquired K-9");
        isKin("0", SameClone.NOT_KNOWN, "K-9", "P-1");
    }

    @Test
    void worksOutSelfingAndBackcrossing() {
        diary.write(
                "2000-01-01 acquired K-1 K-2",
                "2001-01-01 seed-sown S-1; count=9; seed_parent=K-1; pollen_parent=K-1",
                "2002-01-01 drawn P-1; source=S-1",
                "2003-01-01 seed-sown S-2; count=9; seed_parent=P-1; pollen_parent=K-1",
                "2004-01-01 drawn Q-1; source=S-2");
        isKin("3/4", SameClone.YES, "P-1", "P-1");
        isKin("1/2", SameClone.NO, "P-1", "K-1");
        // f(Q,Q) = (1 + f(P,K)) / 2 = 3/4; f(Q,P) = (f(P,P) + f(K,P)) / 2 = 5/8
        isKin("3/4", SameClone.YES, "Q-1", "Q-1");
        isKin("5/8", SameClone.NO, "Q-1", "P-1");
        assertEquals(List.of("P-1 1(1) 0(0)"), ancestors(kin("Q-1", "P-1")));
    }

    @Test
    void refusesWhatIsNotThere() {
        family();
        Refused refused = assertThrows(
                Refused.class,
                () -> diary.store().read(view -> Kin.of(view, new Tag("K-1"), new Tag("K-7"), Diary.TODAY)));
        assertTrue(refused.lines().get(0).startsWith("no plant or batch K-7; nearest: "), refused::getMessage);
        assertThrows(
                Refused.class,
                () -> diary.store()
                        .read(view -> Kin.of(view, new Tag("K-1"), new Tag("P-1"), LocalDate.of(2000, 6, 1))));
    }

    @Test
    void neverSaysLessThanNothing() {
        family();
        assertEquals(Optional.of(BigFraction.ZERO), kin("K-2", "Q-1").least());
    }
}
