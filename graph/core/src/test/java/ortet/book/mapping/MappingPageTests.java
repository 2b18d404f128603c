package ortet.book.mapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import ortet.book.daybook.Source;
import ortet.book.mapping.Numbers.Measure;
import ortet.entry.EntryKind;

/** Holds docs/mapping.md to what is read. */
class MappingPageTests {
    private final String page = page();

    private static String page() {
        try {
            return Files.readString(Path.of("../../docs/mapping.md"));
        } catch (IOException broken) {
            throw new AssertionError("the page is not where it should be", broken);
        }
    }

    private List<String> blocks(String language) {
        List<String> found = new ArrayList<>();
        Matcher matcher =
                Pattern.compile("```" + language + "\n(.*?)```", Pattern.DOTALL).matcher(page);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    /** Return the rows of the table whose first column has this head, cell by cell. */
    private List<List<String>> table(String head) {
        List<List<String>> rows = new ArrayList<>();
        boolean isIn = false;
        for (String line : page.split("\n")) {
            if (line.startsWith("| " + head + " |")) {
                isIn = true;
            } else if (!line.startsWith("|")) {
                isIn = false;
            } else if (isIn && !line.startsWith("|---")) {
                rows.add(Arrays.stream(line.substring(1).split("\\|"))
                        .map(String::strip)
                        .toList());
            }
        }
        assertFalse(rows.isEmpty(), "no table " + head);
        return rows;
    }

    private static List<String> marked(String cell) {
        List<String> words = new ArrayList<>();
        Matcher matcher = Pattern.compile("`([^`]+)`").matcher(cell);
        while (matcher.find()) {
            words.add(matcher.group(1));
        }
        return words;
    }

    private static List<String> firstMarked(List<List<String>> rows) {
        return rows.stream().map(row -> marked(row.get(0)).get(0)).toList();
    }

    @Test
    void namesEveryLine() {
        Set<String> lines = new LinkedHashSet<>();
        for (String line : firstMarked(table("line"))) {
            lines.add(line.replaceAll(" [A-Z]+(, …)?(?= =|$)", "").replaceAll(" =.*", ""));
        }
        assertEquals(new TreeSet<>(MappingReader.KNOWN_LINES), new TreeSet<>(lines));
    }

    @Test
    void namesEveryFieldOfAPlant() {
        Set<String> named = new TreeSet<>();
        table("field").forEach(row -> named.addAll(marked(row.get(0))));
        named.addAll(List.of("taxon", "epithet", "outcome by", "outcome count", "outcome cause", "outcome note"));
        Vocabulary vocabulary = Vocabulary.of(Shape.of("plant"));
        Set<String> known = new TreeSet<>();
        for (String name : vocabulary.names()) {
            Meaning meaning = vocabulary.meaning(name);
            if (meaning.isOwn() || meaning.act().equals(Meaning.OUTCOME)) {
                known.add(name);
            }
        }
        assertEquals(known, named);
        for (String name : List.of("second parent", "day", "begun", "set day", "struck day")) {
            assertTrue(page.contains("`" + name + "`"), name);
            vocabulary.meaning(name);
        }
    }

    @Test
    void namesEveryAct() {
        for (EntryKind kind : Vocabulary.ACTS) {
            String word = kind.word().replace('-', ' ');
            assertTrue(page.contains("`" + word + "`"), word);
        }
        Vocabulary vocabulary = Vocabulary.of(Shape.of("plant"));
        for (String name : List.of(
                "severed day",
                "potted day",
                "potted container",
                "sold customer",
                "measured stem",
                "potted 2 day",
                "potted 19 day")) {
            assertFalse(vocabulary.meaning(name).isOwn(), name);
        }
    }

    @Test
    void namesEveryMethodAndOutcome() {
        assertEquals(Arrays.stream(Method.values()).map(Method::word).toList(), firstMarked(table("method")));
        for (List<String> row : table("method")) {
            Method method = Method.parse(marked(row.get(0)).get(0));
            marked(row.get(1)).forEach(word -> assertEquals(method, Method.parse(word), word));
        }
        assertEquals(
                Arrays.stream(Verdict.Word.values())
                        .map(word -> word.name().toLowerCase(Locale.ROOT))
                        .toList(),
                firstMarked(table("outcome")));
        for (String words : List.of("failed rotted", "culled quality", "culled surplus")) {
            assertEquals(words, Verdict.parse(words).toString());
        }
    }

    @Test
    void namesEveryUnit() {
        List<List<String>> rows = table("what");
        List<Measure> measures = List.of(Measure.LENGTH, Measure.WEIGHT, Measure.HEAT, Measure.AREA, Measure.AGE);
        for (int at = 0; at < measures.size(); at++) {
            assertEquals(
                    new TreeSet<>(measures.get(at).units()),
                    new TreeSet<>(marked(rows.get(at).get(1))),
                    rows.get(at).get(0));
        }
        assertEquals(measures.size() + 2, rows.size());
    }

    @Test
    void namesEveryStepForTags() {
        List<String> steps = firstMarked(table("step"));
        Set<String> known = new TreeSet<>(Tidy.KNOWN);
        known.remove("lower case");
        assertEquals(known, new TreeSet<>(steps));
        steps.forEach(Tidy::of);
    }

    @Test
    void namesEveryTextThatStandsForNothing() {
        String row = table("line").stream()
                .filter(cells -> cells.get(0).startsWith("`blank"))
                .findFirst()
                .orElseThrow()
                .get(1);
        assertEquals(new TreeSet<>(Settings.NOTHING), new TreeSet<>(marked(row)));
    }

    @Test
    void givesMappingsThatCanBeRead() {
        assertEquals(2, blocks("mapping").size());
        blocks("mapping").forEach(text -> Mapping.of(text, "mapping.md"));
    }

    @Test
    void saysWhatComesOfItsExample() {
        Sheets sheets = new Sheets(Mapping.of(blocks("mapping").get(0), "mapping.txt"));
        List<Source> files = List.of(
                Sheets.file("pots.csv", blocks("csv pots.csv").get(0)),
                Sheets.file("trees.csv", blocks("csv trees.csv").get(0)));
        Imported imported = sheets.write(files);
        assertEquals(List.of(), Sheets.lines(imported));
        assertEquals("""
                2011-03-12 acquired tags=K-1 cultivar=Acer palmatum 'Deshojo'
                2012 acquired tags=K-2 cultivar=Acer palmatum 'Kiyohime'
                2017 layer-set tags=J-104 mother=K-2 set_unrecorded=yes
                2017-10-01 severed tags=J-104
                2018 acquired tags=K-9 cultivar=Acer palmatum 'Seiryu' note=earliest known, origin unknown: had no row of its own
                2018 cuttings-struck tags=C-20 mothers=K-9 count=1 cultivar=Acer palmatum 'Seiryu'
                2019 taken tags=C-20
                2019-05-03 layer-set tags=J-101 mother=K-1 stem_mm=14 hormone=IBA strength=0.3% carrier=powder by=Una
                2019-05-03 layer-set tags=J-102 mother=K-1 stem_mm=12 by=Una
                2019-09-12 severed tags=J-101
                2019-09-12 severed tags=J-102 roots=none
                2019-09-14 potted tags=J-101 J-104 container=2 L
                2020-05 layer-set tags=J-103 mother=K-1 stem_mm=12 by=Una
                2021-04-01 potted tags=J-101 container=5 L
                """, String.join("\n", sheets.entries()) + "\n");
    }
}
