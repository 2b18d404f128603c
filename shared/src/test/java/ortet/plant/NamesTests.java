package ortet.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.value.Refused;

class NamesTests {
    @Test
    void tagsAreSortedAsPeopleDo() {
        List<String> sorted = List.of("J-", "J-02", "J-2", "J-10", "J-10-1", "J-10a", "J-100", "K1-2", "K1-10", "K2");
        for (int one = 0; one < sorted.size(); one++) {
            for (int other = 0; other < sorted.size(); other++) {
                int order = new Tag(sorted.get(one)).compareTo(new Tag(sorted.get(other)));
                assertEquals(
                        Integer.signum(one - other), Integer.signum(order), sorted.get(one) + " " + sorted.get(other));
            }
        }
    }

    private static String refusal(Runnable act) {
        return assertThrows(Refused.class, act::run).getMessage();
    }

    private static List<String> texts(List<Tag> tags) {
        return tags.stream().map(Tag::text).toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"J-0140", "7", "Ácer/3", "楓-12", "B.2", "T#4", "a_b"})
    void tagTakesLettersDigitsAndAFewMarks(String text) {
        assertEquals(text, new Tag(text).text());
    }

    @Test
    void tagIsInNormalFormC() {
        assertEquals(new Tag("\u00c1-1"), new Tag("A\u0301-1"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "J 1", "=1+1", "+1", "-1", "@x", "J..1", "a:b", "a,b", "a;b", "'x"})
    void tagRefusesBlanksAndWhatASpreadsheetOrARangeWouldMisread(String text) {
        assertTrue(refusal(() -> new Tag(text)).contains("is no tag; expected letters, digits and - _ . / # without"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"except", "Except", " EXCEPT"})
    void tagIsNotTheWordThatLeavesTagsOut(String text) {
        assertTrue(refusal(() -> new Tag(text)).contains("is no tag: the word stands before tags to leave out"));
    }

    @Test
    void tagsSortAsPeopleCount() {
        List<Tag> tags = new ArrayList<>(List.of(new Tag("J-10"), new Tag("J-2"), new Tag("A-3"), new Tag("J-1b")));
        Collections.sort(tags);
        assertEquals(List.of("A-3", "J-1b", "J-2", "J-10"), texts(tags));
    }

    @Test
    void rangeCountsAndKeepsZeros() {
        assertEquals(List.of("J-008", "J-009", "J-010", "J-011"), texts(Tags.parse("J-008..J-011")));
        assertEquals(List.of("J-8", "J-9", "J-10"), texts(Tags.parse("J-8..10")));
        assertEquals(List.of("T3b", "T4b"), texts(Tags.parse("T3b..T4b")));
    }

    @Test
    void exceptLeavesOut() {
        assertEquals(38, Tags.parse("J-201..J-240 except J-217 J-220").size());
        assertEquals(List.of("J-1", "K-9"), texts(Tags.parse("J-1..J-3, K-9 except J-2..J-3")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "J-3..J-1|\"J-3..J-1\" runs backwards",
                "J-1..K-3|\"J-1..K-3\" is no range: the ends differ in more than the last number",
                "J..K|\"J..K\" is no range: J has no number to count on",
                "J-1 J-1|J-1 is named twice",
                "J-1..J-3 J-2|J-2 is named twice",
                "J-1 except J-2|J-2 is left out but was not named",
                "J-1 except J-1|no tag is left",
                "except J-1|expected tags, then \"except\" once and the tags to leave out",
                "J-1..J-99999|\"J-1..J-99999\" names more than 10000 tags"
            })
    void badRangesAreRefused(String text, String message) {
        assertEquals(message, refusal(() -> Tags.parse(text)));
    }

    @Test
    void briefWritesRangesOfThreeAndMore() {
        assertEquals("J-1 J-2", Tags.brief(Tags.parse("J-1 J-2")));
        assertEquals("J-1..J-3 J-5", Tags.brief(Tags.parse("J-1 J-2 J-3 J-5")));
        assertEquals("J-098..J-101", Tags.brief(Tags.parse("J-098..J-101")));
    }

    @Property
    void briefTagsReadBackTheSame(@ForAll Random random) {
        Set<Tag> tags = new LinkedHashSet<>();
        for (int at = 0; at < 40; at++) {
            tags.add(new Tag("J-" + "0".repeat(random.nextInt(2)) + random.nextInt(60)));
        }
        List<Tag> list = new ArrayList<>(tags);
        if (random.nextBoolean()) {
            Collections.sort(list);
        }
        assertEquals(list, Tags.parse(Tags.brief(list)));
    }

    /** Forms of the hybrid sign: ICN, recommendation H.3A; quotes of the epithet: ICNCP. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "Acer palmatum 'Deshojo'|Acer palmatum 'Deshojo'",
                "Acer palmatum \u2018Deshojo\u2019|Acer palmatum 'Deshojo'",
                "Juniperus x pfitzeriana|Juniperus × pfitzeriana",
                "Juniperus ×pfitzeriana 'Old Gold'|Juniperus × pfitzeriana 'Old Gold'",
                "x Cuprocyparis leylandii|× Cuprocyparis leylandii",
                "Acer palmatum var. dissectum 'Seiryu'|Acer palmatum var. dissectum 'Seiryu'",
                "Malus 'Evereste'|Malus 'Evereste'",
                "Ulmus  parvifolia|Ulmus parvifolia",
                "Camellia japonica 'Bob's Tinsie'|Camellia japonica 'Bob's Tinsie'"
            })
    void cultivarNameIsReadInItsUsualForms(String written, String text) {
        assertEquals(text, CultivarName.parse(written).toString());
    }

    @Test
    void cultivarNameKnowsTaxonAndEpithet() {
        CultivarName name = CultivarName.parse("Juniperus x pfitzeriana 'Old Gold'");
        assertEquals("Juniperus × pfitzeriana", name.taxon());
        assertEquals(Optional.of("Old Gold"), name.epithet());
    }

    @ParameterizedTest
    @ValueSource(strings = {"deshojo", "acer palmatum", "Acer palmatum Deshojo", "Acer 'x", "12"})
    void cultivarNameRefusesOtherForms(String text) {
        assertEquals(
                "expected a botanical name such as Acer palmatum 'Deshojo', found \"" + text + "\"",
                refusal(() -> CultivarName.parse(text)));
    }

    @Test
    void erasedPersonIsShownByNumber() {
        Person person = new Person(
                new PersonNumber(7), Optional.of("Nuala Example"), Person.Role.CUSTOMER, Optional.of("somewhere"));
        assertEquals("Nuala Example", person.shown());
        assertEquals("#7", person.erased().shown());
        assertEquals(Optional.empty(), person.erased().particulars());
    }
}
