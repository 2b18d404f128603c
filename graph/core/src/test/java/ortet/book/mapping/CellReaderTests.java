package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ortet.value.Refused;

/** How single cells are read: tags, mothers, words, names, hormones, findings. */
class CellReaderTests {
    /** Return the reader of the only column of a mapping with these lines. */
    private static CellReader reader(String shape, String... lines) {
        String text = "sheet a\nfiles = a.csv\nrow = " + shape + "\notherwise tag = X-1\notherwise day = 2020\n"
                + String.join("\n", lines);
        return Mapping.of(text, "m").sheets().get(0).columns().get(0).reader();
    }

    private static CellReader plant(String... lines) {
        boolean hasTag = String.join("\n", lines).contains("= tag\n") || lines[0].endsWith("= tag");
        String text = "sheet a\nfiles = a.csv\nrow = plant\notherwise method = layer\n"
                + (hasTag ? "" : "otherwise tag = X-1\n") + String.join("\n", lines);
        return Mapping.of(text, "m").sheets().get(0).columns().get(0).reader();
    }

    private static String fault(CellReader reader, String cell) {
        return assertThrows(Refused.class, () -> reader.read(cell)).getMessage();
    }

    @ParameterizedTest(name = "{1} by {0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "upper case | j-101 | J-101",
                "lower case | J-101 | j-101",
                "no blanks, upper case | j 101 | J101",
                "blanks to - | J 101 | J-101",
                "drop ./ | J.1/01 | J101",
                "pad 4 | J-7 | J-0007",
                "pad 4 | J-00007b | J-0007b",
                "prefix J- | 101 | J-101",
                "prefix J- | j-101 | j-101",
                "'prefix J-, pad 4' | 7 | J-0007",
                "replace \"^No\\.? ?\" by \"\" | No. 17 | 17",
                "replace \"(\\d+)/(\\d+)\" by \"$2-$1\" | 17/2019 | 2019-17",
            })
    void tidiesTagsByRule(String rule, String cell, String tag) {
        assertEquals(tag, plant("column T = tag", "tidy = " + rule).read(cell));
    }

    @Test
    void refusesATidyingThatIsNone() {
        Refused refused = assertThrows(Refused.class, () -> Tidy.of("uper case"));
        assertEquals(
                "no \"uper case\" for tags; expected steps such as upper case, lower case, no blanks, blanks to -, drop ./,"
                        + " pad 4, prefix J-, replace \"a\" by \"b\"; nearest: upper case, lower case",
                refused.getMessage());
        assertEquals(
                "the pattern \"(\" cannot be read: unclosed group",
                assertThrows(Refused.class, () -> Tidy.of("replace \"(\" by \"\""))
                        .getMessage());
        assertEquals(
                "expected pad and a width of 1 to 12, found \"pad 99\"",
                assertThrows(Refused.class, () -> Tidy.of("pad 99")).getMessage());
    }

    @Test
    void refusesATagWithBlanksAndSaysHowToTakeThemOut() {
        assertEquals(
                "\"J 101\" is no tag; expected letters, digits and - _ . / # without blanks, such as J-0140; a line tags = no"
                        + " blanks in the mapping takes blanks out",
                fault(plant("column T = tag"), "J 101"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "L1 L2 | L1 L2",
                "L1, L2 & L3 | L1 L2 L3",
                "L1 and L2 | L1 L2",
                "L1 to L4 | L1 L2 L3 L4",
                "L1-L3 | L1 L2 L3",
                "L1 - L3 | L1 L2 L3",
                "L1..L4 except L3 | L1 L2 L4",
                "J-1..J-3 | J-1 J-2 J-3",
                "J-9…J-11 | J-9 J-10 J-11"
            })
    void readsTagsAsTheyAreListed(String cell, String tags) {
        assertEquals(tags, reader("seen", "column T = tags").read(cell));
    }

    @Test
    void readsTagsWithBlanksInThemWhereTheyAreTakenOut() {
        CellReader reader = reader("seen", "tags = no blanks", "column T = tags");
        assertEquals("A8 A9", reader.read("A 8, A 9"));
        assertEquals("A8 A9 A10", reader.read("A 8 to A 10"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "B-1 | B-1",
                "B-1 (40), B-2 (20) | B-1:40 B-2:20",
                "B-1 x 40 + B-2 x 20 | B-1:40 B-2:20",
                "B-1: 40; B-2: 20 | B-1:40 B-2:20",
                "U-1 & U-2 | U-1 U-2",
                "U-1, U-1 | U-1"
            })
    void readsMothersWithOrWithoutCounts(String cell, String mothers) {
        assertEquals(mothers, plant("column M = mothers").read(cell));
    }

    @Test
    void translatesWordsWhateverTheirCase() {
        CellReader method = plant("column How = method", "word A/L, air layer = layer", "word \"a, b\" = graft");
        assertEquals("layer", method.read("a/l "));
        assertEquals("layer", method.read("AIR  LAYER"));
        assertEquals("graft", method.read("A, B"));
        assertEquals("cuttings", method.read("Cutting"));
        assertEquals("", method.read("n/a"));
        assertEquals(
                "no method \"stek\"; expected one of layer, cuttings, graft, seed, division, sport, drawn, acquired, or a line"
                        + " of words in the mapping: word stek = layer; nearest: seed",
                fault(method, "stek"));
    }

    @Test
    void takesAnythingElseForOneWordWhereTheMappingSaysSo() {
        CellReader method = plant("column How = method", "word al = layer", "word * = acquired");
        assertEquals("layer", method.read("al"));
        assertEquals("graft", method.read("graft"));
        assertEquals("acquired", method.read("whatever"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "taken | taken",
                "Failed rotted | failed rotted",
                "failed damped off | failed damped-off",
                "lost stolen | lost stolen",
                "culled surplus | culled surplus",
                "Growing | growing"
            })
    void readsOutcomes(String cell, String outcome) {
        assertEquals(outcome, plant("column Now = outcome").read(cell));
    }

    @Test
    void refusesAnOutcomeThatIsNone() {
        CellReader outcome = plant("column Now = outcome");
        assertEquals("expected culled quality or culled surplus, found \"culled\" alone", fault(outcome, "culled"));
        assertEquals(
                "no outcome \"takn\"; expected one of taken, growing, pending, failed, withdrawn, dead, lost, sold, culled, or"
                        + " a line of words in the mapping: word takn = taken; nearest: taken",
                fault(outcome, "takn"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Acer palmatum 'Deshojo' | Acer palmatum 'Deshojo'",
                "ACER PALMATUM 'DESHOJO' | Acer palmatum 'Deshojo'",
                "acer palmatum deshojo | Acer palmatum 'Deshojo'",
                "Acer palmatum Deshojo | Acer palmatum 'Deshojo'",
                "Acer  palmatum  “Deshojo” | Acer palmatum 'Deshojo'",
                "Acer palmatum cv. Deshojo | Acer palmatum 'Deshojo'",
                "Acer palmatum var dissectum | Acer palmatum var. dissectum",
                "Juniperus x media Mint Julep | Juniperus × media 'Mint Julep'",
                "Malus 'Red Sentinel' | Malus 'Red Sentinel'",
                "Acer palmatum | Acer palmatum"
            })
    void bringsNamesIntoTheFormOfTheCode(String cell, String name) {
        assertEquals(name, plant("column V = cultivar").read(cell));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "IBA 3000 ppm talc | IBA 0.3% powder",
                "IBA 0.8% | IBA 0.8%",
                "0.3 % IBA gel | IBA 0.3% gel",
                "NAA | NAA",
                "none | ''",
                "untreated | ''"
            })
    void partsAHormoneFromItsStrengthAndCarrier(String cell, String hormone) {
        assertEquals(hormone, plant("column H = hormone").read(cell));
    }

    @Test
    void readsAStrengthInTheUnitThatTheMappingSays() {
        assertEquals("0.3%", plant("column S = strength in ppm").read("3000"));
        assertEquals("0.8%", plant("column S = strength in %").read("0.8"));
        assertEquals("", plant("column S = strength in ppm").read("0"));
        assertEquals(
                "expected a strength with % or ppm, found \"3000\"; the mapping can say which: = strength in ppm",
                fault(plant("column S = strength"), "3000"));
    }

    @Test
    void readsFindingsInWordsAndInColumnsOfTheirOwn() {
        assertEquals(
                "callus roots-showing", reader("checked", "column F = findings").read("callus, roots showing"));
        assertEquals("callus:3 dead:1", reader("checked", "column F = findings").read("callus:3; dead:1"));
        CellReader callus = reader("checked", "column C = findings callus", "otherwise findings = nothing");
        assertEquals("callus:12", callus.read("12"));
        assertEquals("callus", callus.read("x"));
        assertEquals("", callus.read("0"));
        assertEquals("", callus.read("no"));
    }

    @Test
    void readsPositionsByTheirDiameter() {
        CellReader band = reader("measured", "column P = positions 8-12");
        assertEquals("8-12:5", band.read("5"));
        assertEquals("", band.read("0"));
    }

    @Test
    void takesWhatStandsForNothingForNothing() {
        CellReader place = plant("blank = nil, not known", "column P = place");
        for (String blank : List.of("", " ", "-", "–", "?", "N/A", "nil", "Not  Known", "\u00A0")) {
            assertEquals("", place.read(blank), "\"" + blank + "\"");
        }
        assertEquals("House 1", place.read(" House 1 "));
    }
}
