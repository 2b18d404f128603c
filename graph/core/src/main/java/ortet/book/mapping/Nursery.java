package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import ortet.book.BookView;
import ortet.book.Progress;
import ortet.entry.EntryKind;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/**
 * All rows of one import, and the plants, layers and batches that they tell of.
 *
 * <p>Tags are matched whatever their case, since the book lets no two differ in nothing else; the spelling of the row
 * that begins the unit counts, or that of the book.
 */
final class Nursery {
    /** The fields that name units from which others come. */
    private static final Set<String> PARENTS =
            Set.of(Meaning.MOTHER, Meaning.MOTHERS, "scion", "stock", "seed_parent", "pollen_parent");

    /** The other fields that name units. */
    private static final Set<String> OTHERS = Set.of("source", "sources", "candidates", "above", "below");

    private static final String NEW_TAG = "new_tag";
    private static final int PROGRESS_EVERY = 4096;
    private static final long COMPARISONS = 20_000_000;

    private record Named(Unit unit, String text) {}

    private final List<SheetRow> rows = new ArrayList<>();
    private final List<SheetRow> repeated = new ArrayList<>();
    private final Map<String, Named> named = new LinkedHashMap<>();
    private final Map<Unit, List<SheetRow>> claims = new HashMap<>();
    private final BookView book;
    private final boolean hasBook;
    private final Map<String, String> lookalikes = new HashMap<>();
    private long compared;

    /** Gather rows, in order, beside a book. */
    Nursery(List<SheetRow> all, BookView book, Progress progress) {
        this.book = book;
        this.hasBook = book.head().lastUnit() > 0;
        for (SheetRow row : all) {
            if (!repeats(row)) {
                rows.add(row);
                claim(row);
            }
        }
        retags();
        acquire();
        int done = 0;
        for (SheetRow row : rows) {
            if (++done % PROGRESS_EVERY == 0) {
                progress.at("linking rows", done, rows.size());
            }
            row.link(this::linked);
        }
        for (SheetRow row : rows) {
            for (String tag : row.names()) {
                Named unit = named.get(Folded.of(tag));
                if (unit != null) {
                    unit.unit().rows().add(row);
                }
            }
        }
    }

    /** Return the rows that are not repeated. */
    List<SheetRow> rows() {
        return rows;
    }

    /** Return the rows about plants that say the same as one before. */
    List<SheetRow> repeated() {
        return repeated;
    }

    /** Return every unit, in the order of rows. */
    Collection<Unit> units() {
        return named.values().stream().map(Named::unit).distinct().toList();
    }

    /** Return the rows that begin a unit, or would if they could be read. */
    List<SheetRow> rowsOf(Unit unit) {
        return claims.getOrDefault(unit, List.of());
    }

    // ---- units ----

    private boolean repeats(SheetRow row) {
        boolean isPlant = row.file().rules().shape().sort() == Shape.Sort.PLANT;
        if (!isPlant || row.claims().isEmpty() || !row.file().rules().settings().takesRepeatedOnce()) {
            return false;
        }
        Named before = named.get(Folded.of(row.claims().get(0)));
        if (before == null) {
            return false;
        }
        boolean same = rowsOf(before.unit()).stream().anyMatch(other -> saysTheSame(other, row));
        if (same) {
            repeated.add(row);
        }
        return same;
    }

    private static boolean saysTheSame(SheetRow one, SheetRow other) {
        if (!one.faults().isEmpty()
                || !other.faults().isEmpty()
                || one.deeds().size() != other.deeds().size()) {
            return false;
        }
        for (int at = 0; at < one.deeds().size(); at++) {
            Deed mine = one.deeds().get(at);
            Deed theirs = other.deeds().get(at);
            boolean same = mine.kind() == theirs.kind()
                    && mine.turn() == theirs.turn()
                    && mine.day().equals(theirs.day())
                    && mine.relativeDay().equals(theirs.relativeDay())
                    && mine.by().equals(theirs.by())
                    && mine.said().equals(theirs.said())
                    && spelled(mine.texts()).equals(spelled(theirs.texts()));
            if (!same) {
                return false;
            }
        }
        return true;
    }

    /** Return texts with the spelling of tags left out of account. */
    private static Texts spelled(Texts texts) {
        Texts.Builder folded = new Texts.Builder();
        texts.each((field, text) -> folded.put(field, isOfTags(field) ? Folded.of(text) : text));
        return folded.build();
    }

    private static boolean isOfTags(String field) {
        return field.equals(Meaning.TAGS) || PARENTS.contains(field) || OTHERS.contains(field);
    }

    /** Tell whether a field names units other than those that the entry is about. */
    static boolean isOfOthers(String field) {
        return PARENTS.contains(field) || OTHERS.contains(field);
    }

    private void claim(SheetRow row) {
        for (String tag : row.claims()) {
            Named known = named.computeIfAbsent(Folded.of(tag), key -> new Named(new Unit(tag), tag));
            known.unit().claim();
            List<SheetRow> others = claims.computeIfAbsent(known.unit(), key -> new ArrayList<>(1));
            if (!others.isEmpty()) {
                contradict(row, others.get(0), tag);
                if (others.size() == 1) {
                    contradict(others.get(0), row, tag);
                }
            }
            others.add(row);
        }
    }

    /** Complain that two rows begin the same plant and do not say the same. */
    private static void contradict(SheetRow row, SheetRow other, String tag) {
        row.complain(new Fault(
                "told-twice",
                Optional.of(row.where("", Meaning.TAGS)),
                tag + " has another row, " + other.where() + ", that does not say the same" + difference(row, other)
                        + "; expected one row for a plant",
                Optional.empty()));
    }

    private static String difference(SheetRow row, SheetRow other) {
        if (row.deeds().isEmpty() || other.deeds().isEmpty()) {
            return "";
        }
        List<String> differences = new ArrayList<>();
        Deed mine = row.deeds().get(0);
        Deed theirs = other.deeds().get(0);
        if (mine.kind() != theirs.kind()) {
            differences.add(mine.kind().word() + " here, " + theirs.kind().word() + " there");
        } else {
            if (!mine.day().equals(theirs.day())) {
                differences.add("day " + shown(mine) + " here, " + shown(theirs) + " there");
            }
            Set<String> fields = new TreeSet<>(mine.texts().fields());
            fields.addAll(theirs.texts().fields());
            for (String field : fields) {
                String here = mine.texts().get(field);
                String there = theirs.texts().get(field);
                if (!isOfTags(field) && !here.equals(there) || isOfTags(field) && !here.equalsIgnoreCase(there)) {
                    differences.add(field.replace('_', ' ') + " \"" + here + "\" here, \"" + there + "\" there");
                }
            }
        }
        return differences.isEmpty() ? "" : " (" + differences.get(0) + ")";
    }

    private static String shown(Deed deed) {
        return deed.day().map(Object::toString).orElse("none");
    }

    /** Make new tags known as those of the units that had another before, whatever the order of their rows. */
    private void retags() {
        List<Deed> open = rows.stream()
                .flatMap(row -> row.deeds().stream())
                .filter(deed -> deed.kind() == EntryKind.RETAGGED)
                .collect(Collectors.toCollection(ArrayList::new));
        boolean isMore = true;
        while (isMore) {
            isMore = open.removeIf(deed -> {
                Optional<Named> old = known(deed.texts().get(Meaning.TAGS));
                String fresh = deed.texts().get(NEW_TAG);
                old.ifPresent(known -> named.putIfAbsent(Folded.of(fresh), new Named(known.unit(), fresh)));
                return old.isPresent();
            });
        }
    }

    /**
     * Make known the plants that never had a row, where the mapping lets them be acquired; before anything is tied to
     * them, so that it does not matter which row names them first. Of several spellings the first by the alphabet counts.
     */
    private void acquire() {
        Map<String, String> spellings = new LinkedHashMap<>();
        for (SheetRow row : rows) {
            Settings settings = row.file().rules().settings();
            for (Deed deed : row.deeds()) {
                deed.texts().each((field, text) -> {
                    boolean may = PARENTS.contains(field)
                            ? settings.acquiresMothers()
                            : field.equals(Meaning.TAGS) && settings.acquiresPlants() && !deed.begins();
                    if (may) {
                        for (String word : text.split(" ")) {
                            String tag = tag(field, word);
                            if (known(tag).isEmpty()) {
                                spellings.merge(
                                        Folded.of(tag), tag, (one, other) -> one.compareTo(other) <= 0 ? one : other);
                            }
                        }
                    }
                });
            }
        }
        spellings.forEach((folded, tag) -> {
            Unit unit = new Unit(tag);
            unit.acquire();
            named.put(folded, new Named(unit, tag));
        });
    }

    /** Return the tag in a word of a field: mothers may have a count behind them. */
    private static String tag(String field, String word) {
        int colon = field.equals(Meaning.MOTHERS) ? word.indexOf(':') : -1;
        return colon < 0 ? word : word.substring(0, colon);
    }

    private Optional<Named> known(String tag) {
        String folded = Folded.of(tag);
        Named known = named.get(folded);
        if (known == null && hasBook) {
            Tag wanted = new Tag(tag);
            Optional<Tag> inBook = book.unit(wanted).isPresent() ? Optional.of(wanted) : book.alikeButForCase(wanted);
            if (inBook.isPresent()) {
                UnitNumber number = book.unit(inBook.get()).orElseThrow();
                Unit unit = new Unit(inBook.get().text());
                unit.inBook(number);
                known = new Named(unit, inBook.get().text());
                named.put(folded, known);
            }
        }
        return Optional.ofNullable(known);
    }

    // ---- what rows name ----

    /** Return a deed with its tags as they are spelled, tied to its units; what is unknown is complained of. */
    private Deed linked(Deed deed) {
        Texts.Builder texts = new Texts.Builder();
        List<Unit> subjects = new ArrayList<>(1);
        List<Unit> parents = new ArrayList<>(1);
        List<Unit> others = new ArrayList<>(0);
        deed.texts().each((field, text) -> {
            if (field.equals(Meaning.TAGS)) {
                texts.put(field, spelled(deed, field, text, subjects));
            } else if (PARENTS.contains(field)) {
                texts.put(field, spelled(deed, field, text, parents));
            } else if (OTHERS.contains(field)) {
                texts.put(field, spelled(deed, field, text, others));
            } else {
                texts.put(field, text);
            }
        });
        Texts spelled = texts.build();
        Deed linked = deed.but()
                .texts(spelled.isSameAs(deed.texts()) ? deed.texts() : spelled)
                .units(subjects, parents, others)
                .build();
        for (Unit unit : subjects) {
            (linked.begins() ? unit.beginnings() : unit.about()).add(linked);
        }
        parents.forEach(unit -> unit.children().add(linked));
        others.forEach(unit -> unit.others().add(linked));
        return linked;
    }

    private String spelled(Deed deed, String field, String text, List<Unit> units) {
        StringBuilder spelled = new StringBuilder(text.length());
        for (String word : text.split(" ")) {
            String tag = tag(field, word);
            Optional<Named> found = known(tag);
            if (found.isEmpty()) {
                unknown(deed, field, tag);
            }
            found.ifPresent(named -> units.add(named.unit()));
            spelled.append(spelled.length() > 0 ? " " : "")
                    .append(found.map(Named::text).orElse(tag))
                    .append(word.substring(tag.length()));
        }
        return spelled.toString();
    }

    private void unknown(Deed deed, String field, String tag) {
        SheetRow row = deed.row();
        row.complain(new Fault(
                "unknown-tag",
                Optional.of(field.equals(Meaning.TAGS) ? row.where("", field) : row.where(deed.act(), field)),
                "no plant or batch " + tag + " in the rows or in the book",
                nearest(tag)));
    }

    /** Return a tag with a row that looks like another, such as {@code K-12} like {@code K-l2} or {@code K012}. */
    Optional<String> lookalike(String tag) {
        if (lookalikes.isEmpty()) {
            named.values().stream()
                    .filter(other -> !other.unit().isAcquired())
                    .forEach(other -> lookalikes.putIfAbsent(looks(other.text()), other.text()));
        }
        return Optional.ofNullable(lookalikes.get(looks(tag)));
    }

    /** Return how a tag looks to somebody who misreads it: letters like figures, no marks, no leading zeros. */
    private static String looks(String tag) {
        return Folded.of(tag)
                .replace('o', '0')
                .replace('l', '1')
                .replace('i', '1')
                .replaceAll("[^\\p{L}\\p{N}]", "")
                .replaceAll("(?<![1-9])0+(?=\\d)", "");
    }

    /** Return known tags near one, as long as looking for them takes no noticeable time. */
    Optional<String> nearest(String tag) {
        compared += named.size();
        if (compared > COMPARISONS) {
            return Optional.empty();
        }
        Set<String> known = new LinkedHashSet<>();
        named.values().stream().filter(other -> !other.unit().isAcquired()).forEach(other -> known.add(other.text()));
        if (hasBook) {
            try {
                known.addAll(book.nearest(new Tag(tag)));
            } catch (Refused noTag) {
                return Nearest.of(tag, known);
            }
        }
        return Nearest.of(tag, known);
    }
}
