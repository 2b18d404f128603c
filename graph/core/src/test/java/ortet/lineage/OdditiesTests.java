package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.book.Diary;
import ortet.lineage.Oddity.Kind;
import ortet.nursery.Snapshot;
import ortet.plant.Tag;

class OdditiesTests {
    private final Diary diary = new Diary();

    private List<Oddity> oddities(Kind kind, String day, int months) {
        return diary.store().read(view -> {
            Snapshot snapshot = Snapshot.of(view, LocalDate.parse(day), Oddities.parts());
            return Oddities.of(view, snapshot, months).all().stream()
                    .filter(one -> one.kind() == kind)
                    .toList();
        });
    }

    private static List<String> told(List<Oddity> oddities) {
        return oddities.stream()
                .map(one -> one.text()
                        + String.join(
                                "",
                                one.remedies().stream()
                                        .map(remedy -> " | " + remedy.condition() + ": " + remedy.line())
                                        .toList()))
                .toList();
    }

    @Test
    void tellsOfCultivarsThatDifferOverAVegetativeLink() {
        diary.write(
                "2015-03-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
                "2015-03-01 acquired K-2; cultivar=Acer palmatum",
                "2018-05-01 layer-set J-1 J-2 J-3; mother=K-1",
                "2018-05-01 layer-set J-4; mother=K-2",
                "2018-06-01 cuttings-struck T-1; mothers=K-1; count=9; cultivar=Acer palmatum 'Seiryu'",
                "2018-06-01 cuttings-struck T-2; mothers=K-1; count=9; cultivar=Acer palmatum",
                "2018-06-01 seed-sown S-1; count=9; seed_parent=K-1; cultivar=Acer palmatum 'Katsura'",
                "2019-05-01 redetermined J-2; cultivar=Acer palmatum 'Katsura'",
                "2019-05-01 redetermined J-3; cultivar=Acer palmatum 'Deshojo'",
                "2019-05-01 redetermined J-4; cultivar=Acer palmatum 'Katsura'");
        assertEquals(
                List.of(
                        "J-2 was determined to be Acer palmatum 'Katsura', but its mother K-1 is Acer palmatum 'Deshojo'"
                                + " (2018-05-01) | if it is from another: ortet correct 3 --field mother --value TAG --tags J-2",
                        "T-1 is said to be Acer palmatum 'Seiryu', but its mother K-1 is Acer palmatum 'Deshojo' (2018-06-01)"
                                + " | if K-1 is its mother: ortet enter redetermined T-1 \"cultivar=Acer palmatum 'Deshojo'\""
                                + " | if it is from another: ortet correct 5 --field mothers --value TAG --tags T-1"),
                told(oddities(Kind.CULTIVAR_DIFFERS, "2020-01-01", 24)));
        assertEquals(1, oddities(Kind.CULTIVAR_DIFFERS, "2019-04-30", 24).size());
    }

    @Test
    void tellsOfMothersThatMayBeYoungerThanTheirLayers() {
        diary.write(
                "2020-06-01 acquired K-1", "2020 layer-set J-1; mother=K-1", "2020-06-02 layer-set J-2; mother=K-1");
        assertEquals(
                List.of("K-1 began on 2020-06-01, so that it may be younger than J-1, which came from it (2020)"
                        + " | if J-1 came later: ortet correct 2 --field day --value 2020-06-01 --tags J-1"
                        + " | if K-1 is older: ortet correct 1 --field day --value 2020 --tags K-1"),
                told(oddities(Kind.MOTHER_YOUNGER, "2021-01-01", 24)));
    }

    @Test
    void itsLinesPutRightWhatTheyAreProposedFor() {
        diary.write("k: 2020-06-01 acquired K-1", "j: 2020 layer-set J-1; mother=K-1");
        diary.write("2021-01-01 corrected J-1; target=j; field=day; value=2020-06-01");
        assertEquals(List.of(), oddities(Kind.MOTHER_YOUNGER, "2021-01-01", 24));
    }

    @Test
    void tellsOfTagsThatLookAlike() {
        diary.write(
                "2020-01-01 acquired J-0114 J-114 J-O114 J-115",
                "2020-01-02 acquired J115",
                "2020-01-03 acquired X-1",
                "2020-01-03 acquired X-01",
                "2020-02-01 lost X-1 X-01");
        assertEquals(
                List.of(
                        "J-114 (2020-01-01) looks like J-0114 (2020-01-01) | if they are two plants: ortet retag J-114 --to TAG"
                                + " | if they are one: ortet correct 1 --field tags --tags J-114",
                        "J-O114 (2020-01-01) looks like J-0114 (2020-01-01) | if they are two plants: ortet retag J-O114"
                                + " --to TAG | if they are one: ortet correct 1 --field tags --tags J-O114",
                        "J115 (2020-01-02) looks like J-115 (2020-01-01) | if they are two plants: ortet retag J115 --to TAG"
                                + " | if they are one: ortet cross-out 2 --reason \"the same plant as J-115\""),
                told(oddities(Kind.TAGS_ALIKE, "2021-01-01", 24)).stream()
                        .sorted()
                        .toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"J-0114", "J-O114", "J114", "J-114", "J_00114", "J-l14", "J-I14", "J-1l4"})
    void looksLikeJ114(String tag) {
        assertEquals("J114", TagSkeleton.of(new Tag(tag)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"J-1140", "J-1-14", "J-11-4", "K-114", "J-104", "j-114", "J-14"})
    void looksOtherwise(String tag) {
        assertNotEquals("J114", TagSkeleton.of(new Tag(tag)));
    }

    @Test
    void tellsOfWhatShouldGrowAndWasNotSeenForLong() {
        diary.write(
                "2015-03-01 acquired K-1 K-2 K-3 K-4; place=Yard",
                "2015-03-01 acquired K-5",
                "2015-03-01 acquired R-1; count=4; place=Yard",
                "2019-05-01 layer-set J-1; mother=K-3",
                "x: 2019-06-01 seen K-4",
                "2016-01-01 sold K-2",
                "2019-07-01 moved K-5; place=House 1");
        assertEquals(
                List.of(
                        "K-1 R-1 (2): last sign of life 2015-03-01, at Yard | if they are there: ortet enter seen K-1 R-1"
                                + " | if not: ortet lose K-1 R-1 --cause mislaid"),
                told(oddities(Kind.NOT_SEEN, "2020-01-01", 12)));
        diary.write("2020-01-01 crossed-out; target=x; reason=another plant");
        assertEquals(
                List.of("K-1 K-4 R-1 (3): last sign of life 2015-03-01, at Yard"),
                told(oddities(Kind.NOT_SEEN, "2020-01-01", 12)).stream()
                        .map(line -> line.replaceAll(" \\|.*", ""))
                        .toList());
        assertEquals(3, oddities(Kind.NOT_SEEN, "2026-01-01", 12).size());
        assertEquals(List.of(), oddities(Kind.NOT_SEEN, "2015-12-31", 12));
    }

    /** The entry says 2015, a correction says 2019: what counts is the correction. */
    @Test
    void countsWhatWasPutRight() {
        diary.write("2014-03-01 acquired K-1; place=Yard", "s: 2015-03-01 seen K-1");
        diary.write("2019-01-01 corrected; target=s; field=day; value=2019-01-01");
        assertEquals(List.of(), oddities(Kind.NOT_SEEN, "2020-01-01", 24));
    }
}
