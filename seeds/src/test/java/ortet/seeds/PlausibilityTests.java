package ortet.seeds;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.seeds.Replay.Stand;
import ortet.seeds.Rows.Row;

/** Sallowfield as a reader of its file finds it. */
class PlausibilityTests {
    private static final List<Row> ROWS = Rows.read(Sallowfield.dayBook());
    private static final Replay REPLAY = new Replay(ROWS);

    private static void assertBetween(long low, long high, long found, String what) {
        assertTrue(low <= found && found <= high, () -> what + ": " + found);
    }

    @Test
    void addsUp() {
        assertEquals(List.of(), REPLAY.faults());
    }

    @Test
    void hasTheSizeThatWasAskedFor() {
        assertBetween(12_000, 20_000, ROWS.size(), "rows");
        long batches =
                REPLAY.stands().values().stream().filter(stand -> stand.batch).count();
        assertBetween(270, 330, batches, "batches");
        long plants = REPLAY.stands().values().stream()
                .filter(stand -> !stand.batch
                        && (stand.begunBy != EntryKind.LAYER_SET || stand.growing > 0 || wasSevered(stand)))
                .count();
        assertBetween(3_700, 4_300, plants, "plants");
        long growing = REPLAY.stands().values().stream()
                .filter(stand -> !stand.batch && stand.growing == 1)
                .count();
        assertBetween(800, 2_000, growing, "plants that are there on the last day");
    }

    private static boolean wasSevered(Stand stand) {
        return stand.pottings + stand.moves > 0;
    }

    @Test
    void hasTwentyFiveCultivarsOfTenTaxa() {
        Set<CultivarName> cultivars = new TreeSet<>();
        Set<String> taxa = new TreeSet<>();
        for (Row row : ROWS) {
            if (row.kind() == EntryKind.CULTIVAR_LISTED) {
                CultivarName name = CultivarName.parse(row.text("cultivar"));
                taxa.add(name.taxon());
                if (name.epithet().isPresent()) {
                    cultivars.add(name);
                }
            }
        }
        assertEquals(25, cultivars.size());
        assertEquals(10, taxa.size());
    }

    @Test
    void usesEveryColumnAndEveryWordOfEveryKind() {
        Map<EntryKind, Map<String, Set<String>>> used = new TreeMap<>();
        for (Row row : ROWS) {
            row.texts()
                    .forEach((column, text) -> used.computeIfAbsent(row.kind(), kind -> new TreeMap<>())
                            .computeIfAbsent(column, name -> new HashSet<>())
                            .add(text));
        }
        List<String> unused = new ArrayList<>();
        for (EntryKind kind : EntryKind.values()) {
            for (Form.Field field : Form.of(kind).fields()) {
                Set<String> texts = used.getOrDefault(kind, Map.of()).getOrDefault(field.name(), Set.of());
                if (texts.isEmpty()) {
                    unused.add(kind.word() + " " + field.name());
                }
            }
        }
        for (Map.Entry<String, Form.Field> column : Form.columns().entrySet()) {
            for (String choice : column.getValue().choices()) {
                boolean found = used.values().stream()
                        .anyMatch(columns ->
                                columns.getOrDefault(column.getKey(), Set.of()).contains(choice));
                if (!found) {
                    unused.add(column.getKey() + "=" + choice);
                }
            }
        }
        assertEquals(List.of(), unused);
    }

    @Test
    void standsInTheOrderOfItsDaysAndEndsWithItsLast() {
        LocalDate before = LocalDate.MIN;
        boolean registersAreOver = false;
        for (Row row : ROWS) {
            LocalDate day = switch (row.kind().phase()) {
                case REGISTER, ORIGIN -> row.day().first();
                default -> row.day().last();
            };
            assertFalse(day.isBefore(before), () -> "line " + row.line());
            assertFalse(row.day().last().isAfter(Sallowfield.LAST_DAY), () -> "line " + row.line());
            before = day;
            if (!registersAreOver && row.kind().phase() != EntryKind.Phase.REGISTER) {
                registersAreOver = true;
                assertBetween(50, 100, row.line(), "registers come first");
            }
        }
        assertTrue(before.isAfter(Sallowfield.LAST_DAY.minusDays(8)), "the last week is written up");
    }

    @Test
    void namesEachEventOnce() {
        Map<String, Integer> seen = new HashMap<>();
        for (Row row : ROWS) {
            if (row.kind().phase() == EntryKind.Phase.REGISTER || row.kind().phase() == EntryKind.Phase.AMENDMENT) {
                continue;
            }
            Integer other = seen.put(row.kind() + " " + row.day() + " " + row.text("tags"), row.line());
            assertEquals(null, other, () -> "line " + row.line() + " and line " + other);
        }
    }

    @Test
    void keepsTheRanksOfADay() {
        // what happens to one unit on one day stands in the order in which the book reads it
        Map<String, Row> last = new HashMap<>();
        for (Row row : ROWS) {
            if (row.kind().phase() == EntryKind.Phase.AMENDMENT || !row.day().isExact()) {
                continue;
            }
            for (Tag tag : row.entry().tags()) {
                Row before = last.put(tag.text(), row);
                if (before != null && before.day().equals(row.day())) {
                    assertTrue(
                            before.kind().rank() <= row.kind().rank(),
                            () -> tag + ", lines " + before.line() + " and " + row.line());
                }
            }
        }
    }

    @Test
    void listsItsPlacesAndCultivarsBeforeItUsesThem() {
        Set<String> places = new HashSet<>();
        Set<String> cultivars = new HashSet<>();
        List<String> unlisted = new ArrayList<>();
        for (Row row : ROWS) {
            if (row.kind() == EntryKind.PLACE_LISTED) {
                places.add(row.text("place"));
            } else if (row.kind() == EntryKind.CULTIVAR_LISTED) {
                cultivars.add(row.text("cultivar"));
            }
            unlisted(row, "place", places, unlisted);
            unlisted(row, "within", places, unlisted);
            unlisted(row, "cultivar", cultivars, unlisted);
            unlisted(row, "stock_cultivar", cultivars, unlisted);
        }
        assertEquals(List.of("Acer palmatum 'Deshojyo'", "House 1 bnech 2", "Standing gruond 3"), unlisted);
    }

    private static void unlisted(Row row, String column, Set<String> listed, List<String> unlisted) {
        String text = row.text(column);
        if (!text.isEmpty() && !listed.contains(text)) {
            unlisted.add(text);
        }
    }

    @Test
    void leavesWorkPendingAndSomeUnaccountedFor() {
        long pendingLayers = REPLAY.stands().values().stream()
                .filter(stand -> stand.begunBy == EntryKind.LAYER_SET && stand.pending == 1)
                .count();
        long silent = REPLAY.stands().values().stream()
                .filter(stand -> stand.begunBy == EntryKind.LAYER_SET
                        && stand.pending == 1
                        && stand.begun.isBefore(Sallowfield.LAST_DAY.minusYears(2)))
                .count();
        assertBetween(40, 200, pendingLayers, "layers still on");
        assertBetween(12, 30, silent, "layers of which nobody has said anything for years");
    }

    @Test
    void tracesOverThreeToFiveGenerations() {
        Map<Integer, Integer> deep = new TreeMap<>();
        REPLAY.stands().forEach((tag, stand) -> deep.merge(generations(tag), 1, Integer::sum));
        assertTrue(deep.getOrDefault(3, 0) > 100, () -> "third generation in " + deep);
        assertTrue(deep.getOrDefault(4, 0) > 20, () -> "fourth generation in " + deep);
        assertTrue(deep.keySet().stream().anyMatch(generations -> generations >= 5), () -> "fifth in " + deep);
    }

    /** Count layers, cuttings, grafts, sowings and divisions on the longest way up. */
    private static int generations(String tag) {
        Stand stand = REPLAY.stand(tag);
        int most = stand.from.stream()
                .mapToInt(PlausibilityTests::generations)
                .max()
                .orElse(0);
        boolean act = switch (stand.begunBy) {
            case LAYER_SET, CUTTINGS_STRUCK, GRAFT_WORKED, SEED_SOWN, DIVIDED -> true;
            default -> false;
        };
        return most + (act ? 1 : 0);
    }

    @Test
    void setsFiveLayersMostOftenAndTakesJunipersMoreReadilyThanMaples() {
        // both are common practice
        Map<String, String> cultivars = new HashMap<>();
        Map<String, Integer> set = new HashMap<>();
        Map<String, Integer> severed = new HashMap<>();
        Map<String, Integer> sessions = new HashMap<>();
        Map<String, String> mothers = new HashMap<>();
        for (Row row : ROWS) {
            if (row.kind() == EntryKind.ACQUIRED) {
                Tags.parse(row.text("tags")).forEach(tag -> cultivars.put(tag.text(), row.text("cultivar")));
            }
            if (row.kind() == EntryKind.LAYER_SET) {
                List<Tag> tags = Tags.parse(row.text("tags"));
                sessions.merge(row.day() + " " + row.text("mother"), tags.size(), Integer::sum);
                tags.forEach(tag -> mothers.put(tag.text(), row.text("mother")));
                set.merge(genus(cultivars, row.text("mother")), tags.size(), Integer::sum);
            }
            if (row.kind() == EntryKind.SEVERED && !row.text("roots").equals("none")) {
                Tags.parse(row.text("tags"))
                        .forEach(tag -> severed.merge(genus(cultivars, mothers.get(tag.text())), 1, Integer::sum));
            }
        }
        Map<Integer, Integer> sizes = new TreeMap<>();
        sessions.values().forEach(size -> sizes.merge(size, 1, Integer::sum));
        int usual = sizes.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey();
        assertEquals(5, usual, sizes::toString);
        double junipers = severed.get("Juniperus") / (double) set.get("Juniperus");
        double maples = severed.get("Acer") / (double) set.get("Acer");
        assertTrue(junipers > maples + 0.05, () -> junipers + " and " + maples);
    }

    private static String genus(Map<String, String> cultivars, String tag) {
        return cultivars.getOrDefault(tag, "raised here").split(" ")[0];
    }
}
