package ortet.choice.inputs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import ortet.book.Diary;
import ortet.book.MemoryBookStore;
import ortet.book.Progress;
import ortet.choice.Aim;
import ortet.choice.ChoiceQuestion;
import ortet.choice.Grade;
import ortet.choice.Growth;
import ortet.nursery.Snapshot;

/** What is read out of small books, told by hand. */
class InputsReaderTests {
    private static final LocalDate DAY = LocalDate.of(2023, 2, 15);
    private static final double NEAR = 1e-9;

    private final MemoryBookStore store = new MemoryBookStore(ZoneId.of("Europe/Dublin"));
    private final Diary diary = new Diary(store);

    private ChoiceQuestion question() {
        ChoiceRequest request = new ChoiceRequest(
                Optional.empty(), DAY, 3, Aim.MARGIN, Optional.empty(), List.of(), Duration.ofMinutes(1), 0, 1, 0);
        return store.read(view ->
                        InputsReader.read(view, Snapshot.of(view, DAY, InputsReader.parts()), request, Progress.NONE))
                .question()
                .orElseThrow();
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
