package ortet.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.Desk;
import ortet.lineage.Finding;
import ortet.lineage.Recall;
import ortet.lineage.RecallQuestion;
import ortet.lineage.Route;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.seeds.Sallowfield;
import ortet.sqlite.SqliteBookStore;

/** The recall of the demo's diseased consignment, held to lists that are gathered by searching the text of its CSV. */
class SallowfieldRecallTests {
    private static final String CONSIGNMENT = "MV-0219";
    private static final String BENCH = "House 2 bench 2";
    private static final String PEN = "Quarantine pen";

    /** The day on which the disease was seen, and the trees were moved. */
    private static final String SEEN = "2019-06-18";

    @TempDir
    static Path folder;

    private static List<NamedCsvRecord> rows;
    private static Path book;

    @BeforeAll
    static void make() throws IOException {
        book = folder.resolve("demo.ortet");
        try (Desk desk = Desk.open()) {
            assertEquals(0, desk.type("demo", "--to", book.toString()).status());
        }
        try (Reader text = new InputStreamReader(Sallowfield.dayBook(), StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(text)) {
            rows = csv.stream().toList();
        }
    }

    private static List<Tag> tags(NamedCsvRecord row) {
        return row.getField("tags").isEmpty() ? List.of() : Tags.parse(row.getField("tags"));
    }

    private static Recall recall(int contacts, String asOf) {
        try (SqliteBookStore store = SqliteBookStore.open(book)) {
            return store.read(view -> Recall.of(
                    view,
                    new RecallQuestion(
                            List.of(),
                            Optional.of(CONSIGNMENT),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            contacts,
                            false,
                            Optional.empty(),
                            Route.ALL,
                            false,
                            true,
                            false,
                            LocalDate.parse(asOf))));
        }
    }

    private static Set<Tag> found(List<Finding> findings) {
        Set<Tag> tags = new TreeSet<>();
        findings.forEach(one -> tags.add(one.tag()));
        return tags;
    }

    private static Set<Tag> consignment() {
        Set<Tag> trees = new TreeSet<>();
        rows.stream()
                .filter(row -> row.getField("consignment").equals(CONSIGNMENT))
                .forEach(row -> trees.addAll(tags(row)));
        assertEquals(24, trees.size());
        return trees;
    }

    @Test
    void namesTheTreesOfTheConsignmentAndNothingElse() {
        Set<Tag> trees = consignment();
        for (NamedCsvRecord row : rows) {
            for (String column : List.of(
                    "mother",
                    "mothers",
                    "scion",
                    "stock",
                    "seed_parent",
                    "pollen_parent",
                    "source",
                    "sources",
                    "candidates")) {
                for (String word : row.getField(column).split("[ :]")) {
                    assertTrue(trees.stream().noneMatch(tree -> tree.text().equals(word)), row::toString);
                }
            }
        }
        Recall recall = recall(0, Sallowfield.LAST_DAY.toString());
        assertEquals(trees, found(recall.implicated()));
        assertEquals(List.of(), recall.notRuledOut());
        assertTrue(recall.implicated().stream().noneMatch(Finding::isHere));
    }

    @Test
    void namesWhoBoughtThemAndWhen() {
        Set<Tag> trees = consignment();
        Map<Tag, String> sold = new TreeMap<>();
        for (NamedCsvRecord row : rows) {
            if (row.getField("kind").equals("sold")) {
                tags(row).stream()
                        .filter(trees::contains)
                        .forEach(tree -> sold.put(tree, row.getField("customer") + " " + row.getField("day")));
            }
        }
        assertEquals(13, sold.size());
        Map<Tag, String> told = new TreeMap<>();
        recall(0, Sallowfield.LAST_DAY.toString())
                .implicated()
                .forEach(one -> one.sales()
                        .forEach(sale -> told.put(one.tag(), sale.shown().orElse("") + " " + sale.day())));
        assertEquals(sold, told);
    }

    /** What the text tells of one tag, row by row. */
    private static final class Track {
        private final List<String[]> stays = new ArrayList<>();
        private String begun = "";
        private String mother = "";
        private String severed = "";
        private String gone = "9999";
        private int count;
        private boolean layer;
        private boolean sport;

        /** Tell whether it stood in a place on some day of a time. */
        boolean stood(String place, String from, String to) {
            for (int at = 0; at < stays.size(); at++) {
                String until = at + 1 < stays.size() ? stays.get(at + 1)[1] : gone;
                String end = until.compareTo(gone) < 0 ? until : gone;
                boolean there = stays.get(at)[0].equals(place);
                if (there && stays.get(at)[1].compareTo(to) <= 0 && end.compareTo(from) >= 0) {
                    return true;
                }
            }
            return false;
        }

        /** Tell whether on some day of a time it was there and nobody had said where. */
        boolean nowhere(String from, String to) {
            String start = layer ? severed : begun;
            String until = stays.isEmpty() ? "9999" : stays.get(0)[1];
            String end = until.compareTo(gone) < 0 ? until : gone;
            boolean apart = !sport && (!layer || !severed.isEmpty());
            // on the day on which it is severed it stands where its mother does, on that of its first place in that
            boolean some = layer ? start.compareTo(to) < 0 : start.compareTo(to) <= 0;
            boolean still = until.equals(end) ? end.compareTo(from) > 0 : end.compareTo(from) >= 0;
            return apart && some && still && start.compareTo(until) < 0 && (!layer || start.compareTo(end) < 0);
        }
    }

    /** Read up to a day what becomes of each tag; days known to the month or year alone come first in the file. */
    private static Map<Tag, Track> tracks(String upTo) {
        Map<Tag, Track> tracks = new HashMap<>();
        Set<String> begin = Set.of(
                "acquired",
                "layer-set",
                "cuttings-struck",
                "graft-worked",
                "seed-sown",
                "divided",
                "sport-found",
                "drawn",
                "split",
                "merged",
                "found-untagged");
        for (NamedCsvRecord row : rows) {
            String day = row.getField("day");
            if (day.compareTo(upTo) > 0) {
                continue;
            }
            String kind = row.getField("kind");
            int count = row.getField("count").isEmpty() ? 0 : Integer.parseInt(row.getField("count"));
            for (Tag tag : tags(row)) {
                Track track = tracks.computeIfAbsent(tag, one -> new Track());
                if (begin.contains(kind)) {
                    track.begun = day;
                    track.count = Math.max(1, count);
                    track.mother = row.getField("mother");
                    track.layer = kind.equals("layer-set");
                    track.sport = kind.equals("sport-found");
                }
                boolean none = kind.equals("severed") && row.getField("roots").equals("none");
                if (kind.equals("severed") && !none) {
                    track.severed = day;
                }
                if (!row.getField("place").isEmpty() && !none) {
                    track.stays.add(new String[] {row.getField("place"), day});
                }
                boolean all = none
                        || kind.equals("merged")
                        || kind.equals("closed") && !row.getField("rest").equals("still-on");
                if (all && !begin.contains(kind)) {
                    leave(track, track.count, day);
                } else if (Set.of("sold", "lost", "culled", "failed").contains(kind)) {
                    leave(track, count == 0 ? track.count : count, day);
                } else if (kind.equals("checked") && row.getField("findings").equals("dead")) {
                    leave(track, 1, day);
                }
            }
            if (kind.equals("drawn") || kind.equals("split")) {
                Track source = tracks.get(new Tag(row.getField("source")));
                leave(source, tags(row).size() * Math.max(1, count), day);
            }
            if (kind.equals("graft-worked") && !row.getField("stock").isEmpty()) {
                Track stock = tracks.get(new Tag(row.getField("stock")));
                leave(stock, tags(row).size() * Math.max(1, count), day);
            }
            if (kind.equals("divided") && row.getField("remainder").equals("used-up")) {
                leave(tracks.get(new Tag(row.getField("mother"))), 1, day);
            }
        }
        return tracks;
    }

    private static void leave(Track track, int count, String day) {
        track.count -= count;
        if (track.count <= 0) {
            track.gone = day;
        }
    }

    @Test
    void namesWhatStoodBesideThemUntilItWasSeen() {
        Map<Tag, Track> tracks = tracks(SEEN);
        String came = "2019-02-12";
        Set<Tag> beside = new TreeSet<>();
        Set<Tag> nowhere = new TreeSet<>();
        tracks.forEach((tag, track) -> {
            boolean bench = track.stood(BENCH, came, SEEN) || track.stood("House 2", came, SEEN);
            boolean pen = track.stood(PEN, SEEN, SEEN) || track.stood("Yard", SEEN, SEEN);
            if (bench || pen) {
                beside.add(tag);
            } else if (track.nowhere(came, SEEN)) {
                nowhere.add(tag);
            }
        });
        assertTrue(beside.containsAll(consignment()));
        // whatever was raised from them, or was on them, since they stood there
        Set<Tag> raised = new HashSet<>();
        tracks.forEach((tag, track) -> {
            boolean since = track.begun.compareTo(came) >= 0
                    || track.layer
                            && (track.severed.isEmpty() || track.severed.compareTo(came) >= 0)
                            && track.gone.compareTo(came) >= 0;
            if (!track.mother.isEmpty() && since) {
                if (beside.contains(new Tag(track.mother))) {
                    raised.add(tag);
                } else if (nowhere.contains(new Tag(track.mother))) {
                    nowhere.add(tag);
                }
            }
        });
        assertEquals(Set.of(), Set.copyOf(raised), "no mother stood among them");
        Recall recall = recall(1, SEEN);
        assertEquals(beside, found(recall.implicated()));
        nowhere.removeAll(beside);
        assertEquals(nowhere, found(recall.notRuledOut()));
        assertEquals(55, beside.size());
        assertEquals(20, nowhere.size());
    }
}
