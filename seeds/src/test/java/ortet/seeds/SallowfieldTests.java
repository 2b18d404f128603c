package ortet.seeds;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.entry.EntryKind;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.seeds.Rows.Row;

class SallowfieldTests {
    private static final Path README = Path.of("README.md");

    @TempDir
    Path folder;

    @Test
    void isMadeAgainByteForByte() throws IOException {
        Sallowfield.write(folder);
        try (InputStream dayBook = Sallowfield.dayBook();
                InputStream persons = Sallowfield.persons()) {
            assertArrayEquals(dayBook.readAllBytes(), Files.readAllBytes(folder.resolve("day-book.csv")));
            assertArrayEquals(persons.readAllBytes(), Files.readAllBytes(folder.resolve("persons.csv")));
        }
    }

    @Test
    void hasLinesThatEndWithLineFeedAlone() throws IOException {
        try (InputStream dayBook = Sallowfield.dayBook()) {
            byte[] bytes = dayBook.readAllBytes();
            assertEquals('\n', bytes[bytes.length - 1]);
            for (byte each : bytes) {
                assertTrue(each != '\r', "a carriage return");
            }
        }
    }

    @Test
    void namesNobodyWhoIsNotListed() throws IOException {
        Set<String> names = new HashSet<>();
        Map<String, Integer> roles = new HashMap<>();
        try (CsvReader<NamedCsvRecord> csv = CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(Sallowfield.persons(), StandardCharsets.UTF_8))) {
            for (NamedCsvRecord person : csv) {
                boolean erased = person.getField("erased").equals("yes");
                names.add(erased ? person.getField("number") : person.getField("name"));
                roles.merge(person.getField("role"), 1, Integer::sum);
            }
        }
        assertEquals(Map.of("staff", 8, "supplier", 6, "customer", 60), roles);
        for (Row row : Rows.read(Sallowfield.dayBook())) {
            for (String name : List.of(row.by(), row.text("supplier"), row.text("customer"))) {
                assertTrue(name.isEmpty() || names.contains(name), () -> name + " in line " + row.line());
            }
        }
    }

    @Test
    void tellsTheStoryOfItsShowpiece() {
        assertEquals(Sallowfield.make().showpiece().tag, Sallowfield.SHOWPIECE);
        Map<EntryKind, Integer> life = new HashMap<>();
        Map<String, Row> begun = new HashMap<>();
        for (Row row : Rows.read(Sallowfield.dayBook())) {
            if (row.kind().phase() == EntryKind.Phase.AMENDMENT) {
                continue;
            }
            for (Tag tag : row.entry().tags()) {
                if (row.kind().phase() == EntryKind.Phase.ORIGIN || row.kind() == EntryKind.DRAWN) {
                    begun.put(tag.text(), row);
                }
                if (tag.equals(Sallowfield.SHOWPIECE)) {
                    life.merge(row.kind(), 1, Integer::sum);
                }
            }
        }
        assertTrue(life.get(EntryKind.POTTED) >= 3, life::toString);
        assertTrue(life.get(EntryKind.MOVED) >= 3, life::toString);
        assertEquals(1, life.get(EntryKind.SOLD), life::toString);
        Row layer = begun.get(Sallowfield.SHOWPIECE.text());
        assertEquals(EntryKind.LAYER_SET, layer.kind());
        Row graft = begun.get(layer.text("mother"));
        assertEquals(EntryKind.GRAFT_WORKED, graft.kind());
        Row seedling = begun.get(graft.text("scion"));
        assertEquals(EntryKind.DRAWN, seedling.kind());
        assertEquals(EntryKind.SEED_SOWN, begun.get(seedling.text("source")).kind());
    }

    @Test
    void listsItsTroublesInTheReadme() throws IOException {
        String readme = Files.readString(README);
        List<String> missing = new ArrayList<>();
        List<Troubles.Story> stories = Sallowfield.make().stories();
        for (Troubles.Story story : stories) {
            if (!readme.contains(Sallowfield.line(story))) {
                missing.add(Sallowfield.line(story));
            }
        }
        assertEquals(List.of(), missing);
        assertTrue(stories.size() >= 40, () -> stories.size() + " stories");
        assertTrue(readme.contains(Sallowfield.SHOWPIECE.text()));
        Set<String> tags = new HashSet<>();
        Rows.read(Sallowfield.dayBook()).forEach(row -> {
            if (!row.text("tags").isEmpty()) {
                Tags.parse(row.text("tags")).forEach(tag -> tags.add(tag.text()));
            }
            tags.add(row.text("new_tag"));
        });
        stories.forEach(story -> story.tags().forEach(tag -> assertTrue(tags.contains(tag.text()), tag::text)));
    }
}
