package ortet.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ortet.value.Refused;

class FormTests {

    /** A text that each column accepts. */
    private static String sample(Form.Field field) {
        return switch (field.nature()) {
            case NUMBER -> "12";
            case CHOICE -> field.choices().get(field.choices().size() - 1);
            case YES_NO -> "yes";
            case DAY -> "2021-05";
            case TAG -> "K-1" + field.name().length() + field.name().charAt(0);
            case TAGS -> field.name().equals("tags") ? "J-1" : "J-8 J-9";
            case PERSON -> "#3";
            case TEXT -> "some words";
            case OTHER ->
                Map.of(
                                "cultivar", "Acer palmatum 'Deshojo'",
                                "stock_cultivar", "Acer palmatum",
                                "place", "House 1",
                                "within", "House",
                                "strength", "0.3%",
                                "price", "12.50 EUR",
                                "amount", "0.004 EUR",
                                "mothers", "K-1:5 K-2",
                                "findings", "callus:3 dead",
                                "positions", "8-12:5")
                        .getOrDefault(field.name(), "00000000-0000-4000-8000-000000000001");
        };
    }

    @ParameterizedTest
    @EnumSource
    void readsBackWhatItWritesForEveryColumnOfEveryKind(EntryKind kind) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (Form.Field field : Form.of(kind).fields()) {
            texts.put(field.name(), sample(field));
        }
        texts.computeIfPresent("wound", (column, text) -> "full-ring");
        if (kind == EntryKind.SEED_SOWN) {
            texts.remove("grams");
        }
        if (kind == EntryKind.GRAFT_WORKED) {
            texts.remove("stock_cultivar");
        }
        if (kind == EntryKind.COST_LISTED) {
            texts.keySet().removeAll(List.of("material", "place", "size", "units_per_m2"));
            texts.put("per", "tag");
        }
        Entry entry = Form.of(kind).read(texts);
        assertEquals(kind, entry.kind());
        assertEquals(texts, Form.write(entry));
        assertEquals(entry, Form.of(kind).read(Form.write(entry)));
    }

    @ParameterizedTest
    @EnumSource
    void namesEveryRequiredColumnThatIsMissing(EntryKind kind) {
        Refused refused = assertThrows(Refused.class, () -> Form.of(kind).read(Map.of()));
        List<String> required = Form.of(kind).fields().stream()
                .filter(Form.Field::required)
                .map(Form.Field::name)
                .toList();
        for (String column : required) {
            assertTrue(
                    refused.lines().contains(column + ": must not be empty"),
                    () -> column + " is not named in " + refused.lines());
        }
    }

    @Test
    void givesEachColumnTheSameNatureInEveryKind() {
        Map<String, Form.Nature> natures = new HashMap<>();
        for (EntryKind kind : EntryKind.values()) {
            for (Form.Field field : Form.of(kind).fields()) {
                Form.Nature known = natures.putIfAbsent(field.name(), field.nature());
                assertTrue(known == null || known == field.nature(), () -> field.name() + " in " + kind.word());
            }
        }
        assertEquals(Form.columns().keySet(), natures.keySet());
    }

    @Test
    void refusesAColumnThatTheKindHasNot() {
        Refused refused =
                assertThrows(Refused.class, () -> Form.of(EntryKind.SEEN).read(Map.of("tags", "J-1", "stem_mm", "12")));
        assertEquals(List.of("stem_mm: seen has no such column; it has tags, place, note"), refused.lines());
    }

    @Test
    void tellsTheAllowedWordsAndTheNearest() {
        Refused refused = assertThrows(
                Refused.class,
                () -> Form.of(EntryKind.LAYER_SET).read(Map.of("tags", "J-1", "mother", "K-1", "wound", "fullring")));
        assertEquals(
                List.of("wound: no \"fullring\"; expected one of full-ring, ring-with-bridge, tongue, tourniquet;"
                        + " nearest: full-ring"),
                refused.lines());
    }
}
