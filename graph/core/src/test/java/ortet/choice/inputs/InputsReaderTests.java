package ortet.choice.inputs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.MemoryBookStore;
import ortet.book.Progress;
import ortet.choice.Advice;
import ortet.choice.Aim;
import ortet.choice.Choice;
import ortet.choice.ChoiceQuestion;
import ortet.choice.Chooser;
import ortet.choice.Deed;
import ortet.choice.Grade;
import ortet.choice.Growth;
import ortet.choice.Planned;
import ortet.choice.Sureness;
import ortet.figures.Leaning;
import ortet.nursery.Snapshot;

/** What is read out of small books, told by hand. */
class InputsReaderTests {
    private static final LocalDate DAY = LocalDate.of(2023, 2, 15);
    private static final double NEAR = 1e-9;

    private final MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
    private final Diary diary = new Diary(store);

    private ChoiceQuestion question() {
        return inputs().question().orElseThrow();
    }

    private ChoiceInputs inputs() {
        ChoiceRequest request = new ChoiceRequest(
                Optional.empty(), DAY, 3, Aim.MARGIN, Optional.empty(), List.of(), Duration.ofMinutes(1), 0, 1, 0);
        return store.read(
                view -> InputsReader.read(view, Snapshot.of(view, DAY, InputsReader.parts()), request, Progress.NONE));
    }

    /** Twelve layers a year, all of them taken: six are small a year after, and the others medium in their second autumn. */
    private void twoSeasons() {
        diary.write(
                "2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
                "2016-03-01 kept-as-stock K-1",
                "2016-03-01 price-listed; size=small; price=30 EUR",
                "2016-03-01 price-listed; size=medium; price=60 EUR");
        for (int year : new int[] {2020, 2021}) {
            String tag = "J-" + year + "-";
            diary.write(
                    year + "-05-10 layer-set " + tag + "1.." + tag + "12; mother=K-1; stem_mm=10",
                    year + "-09-20 severed " + tag + "1.." + tag + "12",
                    year + 1 + "-07-10 seen " + tag + "1.." + tag + "12",
                    year + 1 + "-10-01 graded " + tag + "1.." + tag + "6; size=small");
        }
        diary.write("2022-10-01 graded J-2020-7..J-2020-12; size=medium");
    }

    @Test
    void takesTreesThatAreReadySoonNotForAllWhileOthersGrowOn() {
        twoSeasons();
        diary.write("2022-02-10 measured K-1; positions=8-12:6 12-20:6");
        // of the ends known two thirds are small; but half of all were ready after one year, and the rest medium after
        // two
        List<Grade> grades = question().ways().get(0).layers().get(0).get(0).grades();
        assertEquals(
                List.of("medium", "small"),
                grades.stream().map(Grade::sizeClass).toList());
        assertEquals(0.5, grades.get(0).share(), NEAR);
        assertEquals(0.5, grades.get(1).share(), NEAR);
        assertEquals(2, grades.get(0).years());
        assertEquals(1, grades.get(1).years());
    }

    @Test
    void letsSharesOfACultivarLeanOnItsSpecies() {
        diary.write(
                "2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
                "2015-03-01 acquired K-2; cultivar=Acer palmatum 'Katsura'",
                "2016-03-01 kept-as-stock K-1 K-2",
                "2016-03-01 price-listed; size=small; price=30 EUR",
                "2016-03-01 price-listed; size=medium; price=60 EUR",
                "2020-05-10 layer-set J-1..J-12; mother=K-1; stem_mm=10",
                "2020-05-10 layer-set L-1..L-2; mother=K-2; stem_mm=10",
                "2020-09-20 severed J-1..J-12 L-1..L-2",
                "2021-07-10 seen J-1..J-12 L-1..L-2",
                "2021-10-01 graded J-1..J-9; size=small",
                "2021-10-01 graded J-10..J-12 L-1..L-2; size=medium",
                "2022-02-10 measured K-1; positions=8-12:6 12-20:6",
                "2022-02-10 measured K-2; positions=8-12:6 12-20:6");
        // of 14 of the species nine are small, which counts as a more: of two and of twelve
        double a = Leaning.strength(List.of(List.of(new int[] {9, 3}, new int[] {0, 2})));
        assertEquals(12.3203325607276, a, 1e-9, "R 4.2.2, written out with lgamma");
        assertEquals((9 + a * 9 / 14) / (12 + a), share("Acer palmatum 'Deshojo'", "small"), NEAR);
        assertEquals(a * 9 / 14 / (2 + a), share("Acer palmatum 'Katsura'", "small"), NEAR);
        assertEquals((2 + a * 5 / 14) / (2 + a), share("Acer palmatum 'Katsura'", "medium"), NEAR);
    }

    private double share(String cultivar, String size) {
        return question().ways().stream()
                .filter(one -> one.cultivar().equals(cultivar))
                .flatMap(one -> one.layers().get(0).get(0).grades().stream())
                .filter(one -> one.sizeClass().equals(size))
                .mapToDouble(Grade::share)
                .sum();
    }

    @Test
    void knowsHowMuchOfAMotherIsJudged() {
        twoSeasons();
        diary.write(
                "2022-05-10 layer-set J-31..J-33; mother=K-1; stem_mm=10",
                "2022-02-10 measured K-1; positions=8-12:6 12-20:6");
        // two seasons of twelve; of the three of the third nothing is known yet
        ChoiceInputs inputs = inputs();
        assertEquals(new Evidence(24, 0, 2, 2), inputs.candidates().get(0).evidence());
        Choice choice = Chooser.choose(inputs.question().orElseThrow(), Progress.NONE);
        Advice advice = choice.advice().get(0);
        assertEquals(
                Set.of(),
                Thin.of(advice, new Evidence(0, 0, 0, 0)),
                advice.now().deed() + " is not for good");
        assertEquals(Set.of(Thin.YOUNG_BOOK), Thin.of(sold(advice, 80), new Evidence(24, 0, 2, 2)));
        assertEquals(Set.of(Thin.SELDOM_BEST), Thin.of(sold(advice, 79), new Evidence(6, 4, 2, 5)));
        assertEquals(Set.of(Thin.FEW_JUDGED), Thin.of(sold(advice, 100), new Evidence(9, 0, 2, 5)));
    }

    private static Advice sold(Advice advice, int same) {
        return new Advice(
                advice.mother(),
                List.of(new Planned(0, Deed.SELL, List.of())),
                advice.worth(),
                new Sureness(same, 100, Sureness.Way.ANEW),
                advice.next(),
                advice.reasons());
    }

    @Test
    void waitsNotForLayersOfWhichSomebodyShouldHaveWrittenLongAgo() {
        twoSeasons();
        diary.write("2022-11-01 sold J-2020-1..J-2020-6", "2022-02-10 measured K-1; positions=8-12:6 12-20:6");
        List<Double> before = small(question());
        // set with those that took, and nobody ever wrote what became of them
        diary.write("2020-05-10 layer-set J-lost-1..J-lost-20; mother=K-1; stem_mm=10");
        assertEquals(before, small(question()));
        // while layers of last year are waited for
        diary.write("2022-05-10 layer-set J-new-1..J-new-20; mother=K-1; stem_mm=10");
        assertTrue(small(question()).stream().mapToDouble(one -> one).sum()
                < before.stream().mapToDouble(one -> one).sum());
    }

    private static List<Double> small(ChoiceQuestion question) {
        return question.outlets().stream()
                .filter(outlet -> outlet.sizeClass().equals("small"))
                .findFirst()
                .orElseThrow()
                .demand();
    }

    @Test
    void letsWoodComeBackAlikeOnMothersLeftLongAndCropped() {
        twoSeasons();
        diary.write(
                "2022-05-10 layer-set J-2022-1; mother=K-1; stem_mm=10",
                "2022-09-20 severed J-2022-1",
                "2023-02-10 measured K-1; positions=8-12:4 12-20:3");
        // a half comes back in one year and all in two: common practice
        Growth growth = question().mothers().get(0).growth();
        assertEquals(List.of(4, 3), growth.leftLong().get(0).positions());
        assertEquals(List.of(8, 6), growth.leftLong().get(1).positions());
        assertEquals(List.of(4, 3), growth.afterLayering().get(0).positions());
        assertEquals(List.of(8, 6), growth.afterCuttingBack().get(1).positions());
    }
}
